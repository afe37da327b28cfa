package quantity

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestFactorsAgreeWithGNUUnits compares every factor with the one that GNU
// Units, which has its own table of definitions, printed once.
func TestFactorsAgreeWithGNUUnits(t *testing.T) {
	const relative = 1e-13 // GNU Units computes in float64 and rounds a few times

	kinds := map[string]Kind{}
	for _, k := range Kinds() {
		kinds[k.String()] = k
	}
	compared := map[Unit]bool{Bare: true}
	recorded, err := os.ReadFile("testdata/gnu_units.tsv")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(recorded)) {
		line = strings.TrimSuffix(line, "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		column := strings.Split(line, "\t")
		if len(column) != 5 {
			t.Fatalf("row %q has %d columns, want 5", line, len(column))
		}
		k, ok := kinds[column[0]]
		if !ok {
			t.Fatalf("row %q: no kind %q", line, column[0])
		}
		want, err := strconv.ParseFloat(column[4], 64)
		if err != nil {
			t.Fatalf("row %q: %v", line, err)
		}
		v, err := Parse(column[1], k, 0)
		if err != nil {
			t.Errorf("Parse(%q, %v) failed: %v", column[1], k, err)
			continue
		}
		if math.Abs(v.SI-want) > relative*math.Abs(want) {
			t.Errorf("Parse(%q, %v).SI = %v, GNU Units has %v (%s)", column[1], k, v.SI, want, column[2])
		}
		x := v.Unit.FromSI(v.SI)
		if got := v.Unit.ToSI(x); math.Abs(got-want) > relative*math.Abs(want) {
			t.Errorf("%v.ToSI(%v) = %v, GNU Units has %v", v.Unit.ASCII(), x, got, want)
		}
		compared[v.Unit] = true
	}
	for i := 1; i < unitCount; i++ {
		if u := Unit(i); !compared[u] {
			t.Errorf("unit %d (%s) is not in the recorded table", i, u.ASCII())
		}
	}
}

// TestPublishedFactors compares with the seven digits that NIST Special
// Publication 811 (2008), appendix B.8, prints. Recalled from memory.
func TestPublishedFactors(t *testing.T) {
	tests := []struct {
		unit Unit
		want float64
	}{
		{PSI, 6.894757e3},
		{PoundPerGallon, 1.198264e2},
		{PoundPerCubicFoot, 1.601846e1},
		{Barrel, 1.589873e-1},
		{Gallon, 3.785412e-3},
		{CubicFoot, 2.831685e-2},
		{PoundPerFoot, 1.488164},
		{PoundForce, 4.448222},
		{FootPoundForce, 1.355818},
		{Horsepower, 7.456999e2},
		{GallonPerMinute, 6.309020e-5},
		{SquareInch, 6.4516e-4},
		{KilogramForcePerSquareCentimetre, 9.80665e4},
		{Atmosphere, 1.01325e5},
		{Degree, 1.745329e-2},
	}
	const half = 0.5e-6 // of the leading digit, the last printed being 1e-6
	for _, tt := range tests {
		got := tt.unit.ToSI(1)
		if power := math.Pow(10, math.Floor(math.Log10(tt.want))); math.Abs(got-tt.want) > half*power*1.0001 {
			t.Errorf("%s.ToSI(1) = %v, NIST SP 811 has %v", tt.unit.ASCII(), got, tt.want)
		}
	}
}
