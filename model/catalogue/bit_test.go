package catalogue

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// inchesOf reads a label as the trade writes it: "12-1/4" or "6".
func inchesOf(t *testing.T, label string) float64 {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("label %q: %v", label, err)
		}
		return v
	}
	whole, part, mixed := strings.Cut(label, "-")
	if !mixed {
		return number(whole)
	}
	over, under, _ := strings.Cut(part, "/")
	return number(whole) + number(over)/number(under)
}

// Gauge tolerances of API Spec 7, from memory, by size class.
func TestBitFigures(t *testing.T) {
	class := func(size float64, limits, values []float64) float64 {
		for i, limit := range limits {
			if size <= limit {
				return values[i]
			}
		}
		return values[len(limits)]
	}
	last := 0.0
	for _, b := range bits() {
		size := b.Size / inch
		if size <= last {
			t.Errorf("%s is not above the bit before it", b.Label)
		}
		last = size
		if want := inchesOf(t, b.Label); !near(size, want, 0) {
			t.Errorf("%s: size = %g in, want %g", b.Label, size, want)
		}
		over := class(size, []float64{13.75, 17.5}, []float64{1.0 / 32, 1.0 / 16, 3.0 / 32})
		if !near(b.Oversize/inch, over, 0) {
			t.Errorf("%s: oversize = %g in, want %g", b.Label, b.Oversize/inch, over)
		}
		under := class(size, []float64{6.75, 9, 13.75, 17.5}, []float64{0.015, 0.020, 0.030, 0.045, 0.063})
		if !near(b.Undersize/inch, under, 0) {
			t.Errorf("%s: undersize = %g in, want %g", b.Label, b.Undersize/inch, under)
		}
	}
}

// testdata/casing_bit_pass.csv: the largest standard bit under the drift and
// the special drift of each casing of API 5CT and of some trade sizes. The
// first row was read in a bit clearance chart, the others are worked from the
// drifts.
func TestLargestBitThroughCasing(t *testing.T) {
	tab := openTestTable(t, "casing_bit_pass.csv",
		"od_in", "weight_lb_ft", "drift_in", "bit", "special_drift_in", "special_bit", "seen")
	rows, inCatalogue := 0, 0
	for tab.next() {
		rows++
		od, weight := tab.amount("od_in", inch), tab.amount("weight_lb_ft", perFoot)
		drift, special := tab.amount("drift_in", inch), tab.amountIfKnown("special_drift_in", inch)
		if got, _ := LargestBitThrough(drift); got.Label != tab.text("bit") {
			t.Errorf("%.3f in %.2f lb/ft: bit %q, want %q", od/inch, weight/perFoot, got.Label, tab.text("bit"))
		}
		if got, _ := LargestBitThrough(special); got.Label != tab.text("special_bit") {
			t.Errorf("%.3f in %.2f lb/ft, special drift: bit %q, want %q", od/inch, weight/perFoot, got.Label, tab.text("special_bit"))
		}
		// Some of these have no ratings and are not in the catalogue.
		grades := CasingGrades(od, weight)
		if grades == nil {
			continue
		}
		inCatalogue++
		if c := grades[0]; c.Drift != drift || c.SpecialDrift != special {
			t.Errorf("%s: drifts %.3f and %.3f in, want %.3f and %.3f", c.named(), c.Drift/inch, c.SpecialDrift/inch, drift/inch, special/inch)
		}
	}
	if tab.err != nil {
		t.Error(tab.err)
	}
	if rows != 105 || inCatalogue != 82 {
		t.Errorf("%d rows, %d in the catalogue; want 105 and 82", rows, inCatalogue)
	}
}

func TestLargestBitThrough(t *testing.T) {
	for _, c := range []struct {
		what  string
		drift float64
		want  string // empty: none
	}{
		{"drift equal to a bit", 8.5 * inch, "8-1/2"},
		{"the same in mm", 0.2159, "8-1/2"},
		{"a hair below", 8.499 * inch, "8-3/8"},
		{"hole openers left out", 40 * inch, "28"},
		{"below the smallest", 3.7 * inch, ""},
		{"nought", 0, ""},
		{"no number", math.NaN(), ""},
	} {
		got, ok := LargestBitThrough(c.drift)
		if got.Label != c.want || ok != (c.want != "") {
			t.Errorf("%s: LargestBitThrough(%g) = %q %t, want %q", c.what, c.drift, got.Label, ok, c.want)
		}
	}
}

func TestNearestBit(t *testing.T) {
	for _, c := range []struct {
		what     string
		diameter float64
		want     string // empty: none
	}{
		{"exact", 12.25 * inch, "12-1/4"},
		{"in mm", 0.445, "17-1/2"},
		{"tiny", 1e-9, "3-3/4"},
		{"huge", 1e9, "42"},
		{"hole opener", 35 * inch, "36"},
		{"nought", 0, ""},
		{"negative", -1, ""},
		{"endless", math.Inf(1), ""},
		{"no number", math.NaN(), ""},
	} {
		got, ok := NearestBit(c.diameter)
		if got.Label != c.want || ok != (c.want != "") {
			t.Errorf("%s: NearestBit(%g) = %q %t, want %q", c.what, c.diameter, got.Label, ok, c.want)
		}
	}
}

// No bit is nearer than the nearest, and none that passes is larger than the
// largest.
func TestBitSearchLikePlainSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.01, 1.2).Draw(t, "diameter")
		nearest, _ := NearestBit(d)
		largest, _ := LargestBitThrough(d)
		for _, b := range Bits() {
			if math.Abs(b.Size-d) < math.Abs(nearest.Size-d) {
				t.Fatalf("NearestBit(%g) = %s, but %s is nearer", d, nearest.Label, b.Label)
			}
			if b.Kind == DrillBit && b.Size <= d && b.Size > largest.Size {
				t.Fatalf("LargestBitThrough(%g) = %s, but %s passes", d, largest.Label, b.Label)
			}
		}
		if largest.Size > d+driftTolerance {
			t.Fatalf("LargestBitThrough(%g) = %s, which does not pass", d, largest.Label)
		}
	})
}

func BenchmarkLargestBitThrough(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		LargestBitThrough(8.379 * inch)
	}
}
