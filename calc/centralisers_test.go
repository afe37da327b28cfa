package calc_test

import (
	"math"
	"testing"

	"borewalk/calc"
)

// TestStandoffByHand: 9 7/8 in, 93.5 kg/m in 1.42 sg on a slant of 32°, bows 12 m apart in a 12 1/4 in hole. Where nothing
// hangs, at the shoe, each carries 0.487 tf of the 0.570 tf at which API Spec 10D asks 67 % (40 ft of casing, halved), and the
// pipe sags 1.28 mm between them.
func TestStandoffByHand(t *testing.T) {
	side := 93.5 * g * (1 - 1.42/7.85) * math.Sin(32*math.Pi/180)
	second := math.Pi / 64 * (math.Pow(9.875*inch, 4) - math.Pow(8.625*inch, 4))
	sag := side * math.Pow(12, 4) / (384 * 30e6 * psi * second)
	kept := 1 - 0.33*side*12/(93.5*40*foot*g/2)
	want := kept - sag/((12.25-9.875)/2*inch)
	r := calc.Evaluate(demo(t, "ottermast-2"))
	if got := value(t, r, 4, "casing.centralisers.open.standoff"); !near(got, want, 1e-4) {
		t.Errorf("standoff %.4f, by hand %.4f", got, want)
	}
	if got := value(t, r, 4, "casing.centralisers.open.standoff.load"); !near(got, side*12, 1) {
		t.Errorf("load %.4f tf, by hand %.4f", got/tf, side*12/tf)
	}
	// From 2155 to 3245 m: the lowest 6 m above the shoe, and 90 spacings of 12 m above it.
	if got := value(t, r, 4, "casing.centralisers.open"); got != 91 {
		t.Errorf("%g centralisers", got)
	}
	if got := value(t, r, 4, "casing.centralisers.open.lowest"); !near(got, 3239, 1e-6) {
		t.Errorf("lowest at %.2f m", got)
	}
}

// TestRigidCentralisersByHand: 8 1/4 in blades on 7 in liner in an 8 1/2 in hole keep 1.25 of 1.5 in.
func TestRigidCentralisersByHand(t *testing.T) {
	w, ok := calc.Explain(demo(t, "ottermast-2"), 4, "casing.centralisers.open.standoff")
	if !ok {
		t.Fatal("no working")
	}
	for _, in := range w.Inputs {
		if in.Symbol == "kept" && !near(in.Value, 1.25/1.5, 1e-9) {
			t.Errorf("kept %.4f", in.Value)
		}
	}
}

// TestSparseCentralisersAreToldOf: with bows 36 m apart each is overloaded and the pipe lies on the wall.
func TestSparseCentralisersAreToldOf(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].centralisers.open", "36 m")
	f := worst(t, calc.Evaluate(plan), 4, "standoff")
	if f.Severity != calc.Caution || f.Mend != "section[4].centralisers.open" || f.Measured > 0.1 {
		t.Errorf("%+v", f)
	}
}
