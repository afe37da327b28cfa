package calc_test

import (
	"math"
	"testing"

	"borewalk/calc"
	"borewalk/model/handbook"
	"borewalk/model/quantity"
)

// TestDemosAgreeWithAnIndependentComputation holds the figures of both demo plans to numbers that were computed without
// this program; how is said at the head of each file.
func TestDemosAgreeWithAnIndependentComputation(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		known := handbook.Load[struct {
			Source, Seen string
			Figure       []struct {
				Section                  int
				Key, Value, Within, Note string
			}
		}](t, "testdata/"+name+".toml")
		if len(known.Figure) < 100 {
			t.Fatalf("only %d figures are known", len(known.Figure))
		}
		r := calc.Evaluate(demo(t, name))
		for _, k := range known.Figure {
			f := figure(t, r, k.Section, k.Key)
			if !f.OK {
				t.Errorf("section %d %s is blank: %s", k.Section, k.Key, f.Why)
				continue
			}
			want, err := quantity.Parse(k.Value, f.Kind, 0)
			if err != nil {
				t.Fatalf("%s: %v", k.Key, err)
			}
			within, err := quantity.Parse(k.Within, f.Kind, 0)
			if err != nil {
				t.Fatalf("%s: %v", k.Key, err)
			}
			if off := math.Abs(f.Value - want.SI); !(off <= within.SI) {
				t.Errorf("section %d %s = %.8g %s, want %s within %s %s", k.Section, k.Key, want.Unit.FromSI(f.Value),
					want.Unit.ASCII(), k.Value, k.Within, k.Note)
			}
		}
	})
}

// TestFiguresOfTheTeachingCases holds a few figures to those that the teaching cases state in the trade's roundings.
func TestFiguresOfTheTeachingCases(t *testing.T) {
	for _, c := range []struct {
		plan          string
		section       int
		key           string
		value, within string
	}{
		{"ottermast-2", 0, "datum.mudline", "368 m", "1 mm"},
		{"ottermast-2", 0, "line.riser", "67.8 m3", "0.1 m3"},
		{"ottermast-2", 4, "string.passes.bit", "0 in", "0.0001 in"}, // 12 1/4 in bit, special drift of the 13 5/8 in
		{"ottermast-2", 3, "casing.collar", "2124.6 m", "1 mm"},
		{"ottermast-2", 4, "casing.collar", "3219.4 m", "1 mm"},
		{"ottermast-2", 5, "casing.collar", "3662 m", "1 mm"},
		{"ottermast-2", 4, "hole.td.tvd", "2962 m", "0.1 m"},
		{"ottermast-2", 3, "hole.td.tvd", "2034 m", "1 m"},
		{"saltlantern-1", 0, "datum.mudline", "5322 ft", "0.001 ft"},
		{"saltlantern-1", 0, "line.riser", "1894 bbl", "1 bbl"},
		{"saltlantern-1", 4, "casing.passes.connector", "0.287 in", "0.001 in"}, // 13 5/8 in coupling in the 16 in drift
		{"saltlantern-1", 3, "hole.rathole", "150 ft", "0.001 ft"},
		{"saltlantern-1", 4, "hole.rathole", "160 ft", "0.001 ft"},
		{"saltlantern-1", 4, "casing.collar", "14515.6 ft", "0.001 ft"},
		{"saltlantern-1", 6, "casing.collar", "19806.7 ft", "0.001 ft"},
	} {
		f := figure(t, calc.Evaluate(demo(t, c.plan)), c.section, c.key)
		want, err := quantity.Parse(c.value, f.Kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		within, err := quantity.Parse(c.within, f.Kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		if !f.OK || math.Abs(f.Value-want.SI) > within.SI {
			t.Errorf("%s section %d %s = %g %s, want %s", c.plan, c.section, c.key, want.Unit.FromSI(f.Value), want.Unit.ASCII(), c.value)
		}
	}
}

// TestStrokesToBumpInTheIntermediateString pumps the 13 5/8 in by with the landing string on top: 141.4 m3, which are
// 8740 strokes of 6 in liners and 10401 of 5 1/2 in.
func TestStrokesToBumpInTheIntermediateString(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, c := range []struct {
		liner string
		want  float64
	}{{"6 in", 8740}, {"5.5 in", 10401}} {
		with(t, plan, "rig.pump[1].liner", c.liner)
		r := calc.Evaluate(plan)
		const landingID = 5.153 * 0.0254
		landing := math.Pi / 4 * landingID * landingID * value(t, r, 3, "casing.top")
		volume := value(t, r, 3, "casing.volume.collar") + landing
		if math.Abs(volume-141.4) > 0.05 {
			t.Errorf("to pump = %.2f m3, want 141.4", volume)
		}
		if got := volume / value(t, r, 0, "pump.1.output"); math.Abs(got-c.want) > 1 {
			t.Errorf("%s liners: %.1f strokes, want %.0f", c.liner, got, c.want)
		}
	}
}

// TestJettedConductorReturnsInside: the jetting string stands in the conductor that goes down with it, and the returns
// rise between the two, so the annulus is that of the conductor's 33 in bore and not of a 36 in hole.
func TestJettedConductorReturnsInside(t *testing.T) {
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	const in, ft = 0.0254, 0.3048
	area := func(d float64) float64 { return math.Pi / 4 * d * d * in * in }
	// From the top of the conductor at 5313 ft: 31.9 ft of 6 5/8 in pipe, 180 ft of 9 1/2 in collars, 75.1 ft of 9 1/2 in tools to
	// the shoe at 5600 ft; below that two feet of 36 in hole, which hardly count.
	inside := 287*area(33) - 31.9*area(6.625) - 255.1*area(9.5)
	want := inside * ft
	if got := value(t, r, 1, "volume.seabed"); got < want || got > want*1.01+area(36)*2*ft {
		t.Errorf("bottoms-up to the seabed = %.2f m3, want %.2f to %.2f", got, want, want*1.01+area(36)*2*ft)
	}
}
