package quantity

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// anyKindAndUnit draws a kind and one of its units.
func anyKindAndUnit(t *rapid.T) (Kind, Unit) {
	k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
	return k, rapid.SampledFrom(Units(k)).Draw(t, "unit")
}

// anyNumber draws a decimal as a person may type it, small or with many digits.
func anyNumber(t *rapid.T) string {
	return rapid.OneOf(
		rapid.StringMatching(`-?[0-9]{1,5}(\.[0-9]{1,4})?`),
		rapid.StringMatching(`-?[0-9]{1,15}(\.[0-9]{1,24})?`),
		rapid.StringMatching(`0\.0{0,20}[0-9]{1,4}`),
		rapid.StringMatching(`[0-9]{1,3} (1|3|5|7)/(8|16|32|64)`),
	).Draw(t, "number")
}

// mustReadBack fails if the text of v does not read as v itself, bit for bit.
func mustReadBack(t *rapid.T, v Value, k Kind, shown Unit) {
	t.Helper()
	text := v.Text()
	if len(text) > maxText {
		t.Fatalf("%#v.Text() = %q has %d bytes, want at most %d", v, text, len(text), maxText)
	}
	got, err := Parse(text, k, shown)
	if err != nil {
		t.Fatalf("Parse(%q, %v) failed: %v", text, k, err)
	}
	if math.Float64bits(got.SI) != math.Float64bits(v.SI) || got.Unit != v.Unit {
		t.Fatalf("Parse(%q, %v) = %#v, want %#v", text, k, got, v)
	}
}

// TestTextReadsBack covers all kinds and units; the unit shown at the time of
// reading does not matter, because the text carries its own.
func TestTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		if k == Count {
			k = Number // the same units, with decimals
		}
		v, err := Parse(anyNumber(t)+" "+u.ASCII(), k, 0)
		if errors.Is(err, ErrDigits) {
			t.Skip("one of few drawn numbers that are too large")
		}
		if err != nil {
			t.Fatal(err)
		}
		shown := rapid.SampledFrom(Units(k)).Draw(t, "shown")
		mustReadBack(t, v, k, shown)
	})
}

func TestTextOfEveryUnitReadsBack(t *testing.T) {
	for _, k := range Kinds() {
		if k == Count {
			continue
		}
		for _, u := range Units(k) {
			for _, x := range []float64{0, 1, -1, 0.1, 0.3, 1.0 / 3, 12.415, 1262, 9876.54321, 1e-9, math.Pi, 999999999999999} {
				v := Of(x, u)
				got, err := Parse(v.Text(), k, 0)
				if err != nil || got != v {
					t.Errorf("Parse(%q, %v) = %#v, %v, want %#v", v.Text(), k, got, err, v)
				}
			}
		}
	}
}

func TestOfReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		if k == Count {
			k = Number
		}
		x := rapid.Float64Range(-9e14, 9e14).Draw(t, "x")
		mustReadBack(t, Of(x, u), k, u)
	})
}

// TestOfIsParse holds that a number given in code is one that was typed.
func TestOfIsParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		hundredths := rapid.IntRange(-1e9, 1e9).Draw(t, "hundredths")
		x := float64(hundredths) / 100
		v, err := Parse(big.NewRat(int64(hundredths), 100).FloatString(2)+" "+u.ASCII(), k, 0)
		if k == Count && hundredths%100 != 0 {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if got := Of(x, u); got != v {
			t.Fatalf("Of(%v, %s) = %#v, want %#v", x, u.ASCII(), got, v)
		}
	})
}

// TestShowingDoesNotDrift walks a value through every unit on the screen. The
// Value stays what it is, and what an edit box would hold reads as the same.
func TestShowingDoesNotDrift(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		v := Of(float64(rapid.IntRange(-100000, 100000).Draw(t, "x"))/8, u)
		if k == Count {
			k = Number
		}
		before := v
		for _, shown := range Units(k) {
			FormatValue(v, k, shown)
			FormatUnit(v.SI, k, shown)
			Nudge(v, k, shown, 1)
			mustReadBack(t, v, k, shown)
		}
		if v != before {
			t.Fatalf("value became %#v, was %#v", v, before)
		}
	})
}

// TestTextIsShortest takes a place away: no decimal with fewer places leads to
// the same magnitude. Only the two decimals around the text's can.
func TestTextIsShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, u := anyKindAndUnit(t)
		v := Of(rapid.Float64Range(-1e6, 1e6).Draw(t, "x"), u)
		number, _, _ := strings.Cut(v.Text(), " ")
		whole, places, _ := strings.Cut(number, ".")
		if places == "" {
			return
		}
		d := decimalFromDigits(whole+places[:len(places)-1], "")
		for _, away := range []int64{-1, 0, 1} {
			shorter := decimal{new(big.Int).Add(d.coef, big.NewInt(away)), len(places) - 1}
			if shorter.si(u) == v.SI {
				t.Fatalf("%q reads as %s %s too", v.Text(), shorter.text(), u.ASCII())
			}
		}
	})
}

// TestTextKeepsWhatWasTyped holds for every number of up to 15 significant
// digits, as float64 promises, in units without a zero point far away.
func TestTextKeepsWhatWasTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		if k == Count || k == Temperature {
			return
		}
		number := rapid.StringMatching(`[1-9][0-9]{0,7}(\.[0-9]{0,6}[1-9])?`).Draw(t, "number")
		want := strings.TrimSuffix(number+" "+u.ASCII(), " ")
		v, err := Parse(want, k, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := v.Text(); got != want {
			t.Fatalf("Parse(%q, %v).Text() = %q", want, k, got)
		}
	})
}

// TestConversionsAgree compares plain floating point with the exact path.
func TestConversionsAgree(t *testing.T) {
	const relative = 1e-15 // three roundings of 1.1e-16 each, and their spread
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		x := rapid.Float64Range(-1e6, 1e6).Draw(t, "x")
		if k == Temperature {
			x = math.Abs(x) // below, the sum of zero point and number cancels
		}
		exact, got := Of(x, u).SI, u.ToSI(x)
		const lastPlace = 1e-24 // Of rounds what lies beyond
		if math.Abs(got-exact) > relative*math.Abs(exact)+lastPlace*math.Abs(u.row().scale()) {
			t.Fatalf("%s.ToSI(%v) = %v, exactly %v", u.ASCII(), x, got, exact)
		}
	})
}

func TestOfOutsideItsDomain(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e15, -1e300} {
		if got := Of(x, Metre); got.IsSet() {
			t.Errorf("Of(%v, Metre) = %v, want nothing entered", x, got)
		}
	}
	if got := Of(1, 0); got.IsSet() {
		t.Errorf("Of(1, 0) = %v, want nothing entered", got)
	}
	if got := Of(1e-300, Metre).Text(); got != "0 m" {
		t.Errorf("Of(1e-300, Metre).Text() = %q, want 0 m", got)
	}
}

func TestTextOfComputedValues(t *testing.T) {
	tests := []struct {
		v    Value
		want string
	}{
		{Value{}, ""},
		{Value{SI: 1}, ""},
		{Value{math.NaN(), Metre}, ""},
		{Value{math.Inf(-1), Metre}, ""},
		{Value{1, 65535}, ""},
		{Value{math.Copysign(0, -1), Metre}, "0 m"},
		{Value{1e20, Metre}, "100000000000000000000 m"},
		{Value{1e-40, Metre}, "0 m"},
		{Value{0.125, Bare}, "0.125"},
	}
	for _, tt := range tests {
		if got := tt.v.Text(); got != tt.want {
			t.Errorf("%#v.Text() = %q, want %q", tt.v, got, tt.want)
		}
	}
}
