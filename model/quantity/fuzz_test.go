package quantity

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzParse reads any text as every kind. What is accepted is finite and reads
// back from its own text; what is refused says so in one printable line.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"1262 ft", "13 5/8 in", "13-5/8\"", "-5/8", "7,200", "0,125", "1.234,5", "7 200", "1e5", "NaN", "-inf",
		"10 lbs/gal", "15 lb/100 ft²", "18 mPa·s", "35°", "80 °F", "−3,5 degC", "12 in/32", "5 pgp", "12 per ft", "",
		strings.Repeat("9", 15) + "." + strings.Repeat("9", 24) + " bbl/ft", "\x1b[0m", "\xff", "5\u200b", "1 .", "+.,-/",
		"999999999999999 ft", "999999999999998,99 ft", "999999999999999,9ft", // its magnitude would be sixteen digits of feet
	} {
		f.Add(seed, uint8(Length), uint16(Foot))
		f.Add(seed, uint8(Density), uint16(0))
	}
	f.Fuzz(func(t *testing.T, text string, kind uint8, shown uint16) {
		k, u := Kind(kind), Unit(shown)
		v, err := Parse(text, k, u)
		if err != nil {
			if line := err.Error(); line == "" || strings.ContainsAny(line, "\n\r\x1b") || !utf8.ValidString(line) {
				t.Fatalf("Parse(%q, %v) says %q, want one clean line", text, k, line)
			}
			if v.IsSet() {
				t.Fatalf("Parse(%q, %v) = %v with error %v", text, k, v, err)
			}
			return
		}
		if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) || !v.Unit.Fits(k) {
			t.Fatalf("Parse(%q, %v) = %#v", text, k, v)
		}
		again, err := Parse(v.Text(), k, 0)
		if err != nil || again != v {
			t.Fatalf("Parse(%q, %v) = %#v, its text %q reads as %#v, %v", text, k, v, v.Text(), again, err)
		}
		for _, other := range Units(k) {
			if shown := FormatValue(v, k, other); shown == "" || len(shown) > 48 {
				t.Fatalf("FormatValue(%q, %v, %s) = %q", text, k, other.ASCII(), shown)
			}
		}
		Nudge(v, k, u, 1)
	})
}

// FuzzFormat writes any magnitude: never empty, never long, never NaN.
func FuzzFormat(f *testing.F) {
	f.Add(0.0, uint8(Length), uint16(Foot))
	f.Add(math.Inf(-1), uint8(Temperature), uint16(Fahrenheit))
	f.Add(-1e-300, uint8(Diameter), uint16(Inch))
	f.Fuzz(func(t *testing.T, si float64, kind uint8, unit uint16) {
		k, u := Kind(kind), Unit(unit)
		text := Format(si, k, u)
		if text == "" || len(text) > 32 || strings.Trim(text, "0123456789./ -") != "" {
			t.Fatalf("Format(%v, %v, %s) = %q", si, k, u.ASCII(), text)
		}
		FormatChange(si, k, u)
		_ = Value{si, u}.Text()
		Nudge(Value{si, u}, k, u, -1)
	})
}
