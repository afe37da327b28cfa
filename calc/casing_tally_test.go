package calc_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// TestTheTalliesOfTheTeachingCasesClose: joints, pups and collars that the teaching cases state, computed independently.
func TestTheTalliesOfTheTeachingCasesClose(t *testing.T) {
	for _, c := range []struct {
		plan                 string
		section              int
		unit                 float64
		joints, pups         float64
		shoe, float, landing float64
	}{
		{"ottermast-2", 3, 1, 145, 1, 2150, 2124.60, 0},
		{"ottermast-2", 4, 1, 235, 1, 3245, 3219.40, 0},
		{"ottermast-2", 5, 1, 45, 2, 3687, 3662, 3649.8},
		{"saltlantern-1", 2, foot, 70, 1, 8200, 8155, 0},
		{"saltlantern-1", 3, foot, 132, 1, 10800, 10715.8, 0},
		{"saltlantern-1", 4, foot, 229, 1, 14600, 14515.6, 0},
		{"saltlantern-1", 5, foot, 318, 1, 18200, 18116, 0},
		{"saltlantern-1", 6, foot, 48, 1, 19890, 19806.7, 19765.9},
	} {
		r := calc.Evaluate(demo(t, c.plan))
		for key, want := range map[string]float64{"tally.joints": c.joints, "tally.pup.1": c.pups, "tally.shoe": c.shoe * c.unit, "tally.shoe.off": 0,
			"tally.float": c.float * c.unit, "tally.float.off": 0} {
			if got := value(t, r, c.section, key); !near(got, want, 1e-6) {
				t.Errorf("%s section %d: %s = %g, want %g", c.plan, c.section, key, got, want)
			}
		}
		if c.landing > 0 && !near(value(t, r, c.section, "tally.landing_collar"), c.landing*c.unit, 1e-6) {
			t.Errorf("%s section %d: landing collar %g", c.plan, c.section, value(t, r, c.section, "tally.landing_collar"))
		}
	}
}

// TestAClosingDoneByTrying goes through every number of joints and pups in plain arithmetic.
func TestAClosingDoneByTrying(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[2].Pups = nil
	lengths := []float64{1.52, 3.05, 6.1}
	for _, l := range lengths {
		plan.Sections[2].Pups = append(plan.Sections[2].Pups, model.Pup{For: model.ForCasing, Length: quantity.Of(l, quantity.Metre), Count: quantity.Of(1, quantity.Bare)})
	}
	for _, rathole := range []float64{2, 3.3, 5, 7.7, 11} {
		with(t, plan, "section[3].rathole", fmt.Sprintf("%g m", rathole))
		const top, fixed, hole = 365.65, 0.62 + 2*12.10 + 0.58 + 3.50, 2155.0
		best, fewest := math.Inf(1), 0
		for joints := range 200 {
			for set := range 8 {
				shoe, pups := top+fixed+float64(joints)*12.08, 0
				for k, l := range lengths {
					if set>>k&1 == 1 {
						shoe += l
						pups++
					}
				}
				// Closer than 20 mm is as good as hit, and then the fewest pups count.
				off := max(0, math.Abs(shoe-(hole-rathole))-0.02)
				if shoe <= hole && (off < best-1e-9 || math.Abs(off-best) <= 1e-9 && pups < fewest) {
					best, fewest = off, pups
				}
			}
		}
		r := calc.Evaluate(plan)
		used := 0.0
		for k := range lengths {
			used += value(t, r, 3, fmt.Sprintf("tally.pup.%d", k+1))
		}
		if got := max(0, math.Abs(value(t, r, 3, "tally.shoe.off"))-0.02); !near(got, best, 1e-6) || int(used) != fewest {
			t.Errorf("rathole %g m: off by %g m with %g pups, by trying %g with %d", rathole, got, used, best, fewest)
		}
		want := calc.OK
		if math.Abs(value(t, r, 3, "tally.shoe.off")) > 0.15 {
			want = calc.Caution
		}
		if f := worst(t, r, 3, "tally_closure"); f.Severity != want {
			t.Errorf("rathole %g m: %v", rathole, f)
		}
	}
}

// measured gives a section joints of slightly different lengths, so many that the string is as long as at the average.
func measured(t *testing.T, plan *model.Plan, section, count int, average float64) {
	t.Helper()
	s := &plan.Sections[section-1]
	s.Joints = nil
	for k := range count {
		off := 0.03 * float64(k%5-2) // five of them make up for each other
		s.Joints = append(s.Joints, model.Joint{Number: fmt.Sprint(k + 1), Rejected: model.JointSound,
			Length: quantity.Of(math.Round((average+off)*100)/100, quantity.Metre)})
	}
}

// TestARejectedJointMovesTheShoeByItsLength: and without a spare one the string is too short, which stops.
func TestARejectedJointMovesTheShoeByItsLength(t *testing.T) {
	plan := demo(t, "ottermast-2")
	measured(t, plan, 3, 145, 12.08)
	r := calc.Evaluate(plan)
	if off := value(t, r, 3, "tally.shoe.off"); !near(off, 0, 1e-6) || value(t, r, 3, "tally.joints") != 145 || value(t, r, 3, "tally.joints.left") != 0 {
		t.Fatalf("145 measured joints: off by %g m", off)
	}
	if f := worst(t, r, 3, "spare_joints"); f.Severity != calc.Caution || f.Measured != 0 {
		t.Errorf("no spare joint: %+v", f)
	}
	with(t, plan, "section[3].joint[10].rejected", "yes")
	plan.Sections[2].Pups = nil // the pup must not make up for it
	before := value(t, r, 3, "tally.shoe") - 3.85
	r = calc.Evaluate(plan)
	if got, want := value(t, r, 3, "tally.shoe"), before-plan.Sections[2].Joints[9].Length.SI; !near(got, want, 1e-6) {
		t.Errorf("shoe at %g m without joint 10 and the pup, want %g", got, want)
	}
	if value(t, r, 3, "tally.joints.rejected") != 1 {
		t.Error("the rejected joint is not counted")
	}
	if f := worst(t, r, 3, "tally_joints"); f.Severity != calc.Stop || f.Measured != -1 {
		t.Errorf("a joint short: %+v", f)
	}
	measured(t, plan, 3, 150, 12.08)
	with(t, plan, "section[3].joint[10].rejected", "yes")
	if r = calc.Evaluate(plan); worst(t, r, 3, "tally_joints").Severity != calc.OK || value(t, r, 3, "tally.joints.left") != 4 {
		t.Errorf("four spare joints: %+v", worst(t, r, 3, "tally_joints"))
	}
	if note := figure(t, r, 3, "tally.joints").Note; note != "left: 147, 148, 149, 150" {
		t.Errorf("note %q", note)
	}
}

func TestFindingsOfATally(t *testing.T) {
	for _, c := range []struct {
		path, text, key string
		severity        calc.Severity
		measured        float64
	}{
		{"section[3].tally.aboard", "140", "tally_joints", calc.Stop, -5},
		{"section[3].tally.aboard", "147", "spare_joints", calc.Caution, 2},
		{"section[3].shoe_track", "26 m", "tally_closure", calc.Caution, 0.6},
		{"section[3].pup[1].count", "0", "tally_closure", calc.OK, 0}, // nothing to close with: the joints only count
		{"section[3].tally.hanger", "4.5 m", "tally_closure", calc.Caution, 1},
		{"section[3].landing.rating", "190 tf", "landing_string", calc.Stop, -5.7 * 9806.65},
		{"section[3].loads.overpull", "190 tf", "landing_overpull", calc.Caution, -2.8 * 9806.65},
		{"section[3].landing.stick_up_most", "3 m", "stick_up", calc.Caution, -0.2},
		{"well.tide_high", "3 m", "stick_up", calc.Caution, -1.7},
		{"section[5].top", "3092 m", "hanger_coupling", calc.Caution, 0.3},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		section := int(c.path[8] - '0')
		if strings.HasPrefix(c.path, "well") {
			section = 3
		}
		r := calc.Evaluate(plan)
		f := worst(t, r, section, c.key)
		for _, other := range findings(r, section, c.key) {
			if other.Severity == f.Severity && other.Margin < f.Margin {
				f = other
			}
		}
		within := 0.005
		if f.Kind == quantity.Force {
			within = 0.06 * 9806.65
		}
		if f.Severity != c.severity || !near(f.Measured, c.measured, within) {
			t.Errorf("%s = %s: %s %v, measured %g, want %v and %g", c.path, c.text, c.key, f.Severity, f.Measured, c.severity, c.measured)
		}
	}
}

func TestATallyThatCannotBe(t *testing.T) {
	for _, c := range []struct{ path, text, mend, why string }{
		{"section[5].tally.above_joints", "10", "section[5].tally.hanger", ""},
		{"section[3].pup[1].length", "", "section[3].pup[1].length", "length of a pup joint is blank"},
	} {
		plan := demo(t, "ottermast-2")
		if c.mend == "section[5].tally.hanger" {
			with(t, plan, "section[5].tally.track_joints", "10")
			with(t, plan, "section[5].tally.above_length", "18 m")
			with(t, plan, "section[5].top", "3400 m")
		}
		with(t, plan, c.path, c.text)
		section := int(c.path[8] - '0')
		r := calc.Evaluate(plan)
		f := figure(t, r, section, "tally.shoe")
		if f.OK || string(f.Mend) != c.mend || !strings.Contains(f.Why, c.why) {
			t.Errorf("%s = %q: %+v", c.path, c.text, f)
		}
		if _, err := calc.RunningList(plan, section-1); err == nil || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s = %q: running list with %v", c.path, c.text, err)
		}
	}
	plan := demo(t, "ottermast-2")
	s := &plan.Sections[2]
	for k := range 13 {
		s.Pups = append(s.Pups, model.Pup{For: model.ForCasing, Length: quantity.Of(0.5+float64(k)/10, quantity.Metre), Count: quantity.Of(1, quantity.Bare)})
	}
	if f := figure(t, calc.Evaluate(plan), 3, "tally.shoe"); f.OK || !strings.Contains(f.Why, "4096 ways") {
		t.Errorf("a search without end: %+v", f)
	}
}

// TestTheMarkerStandsAtTheNearestJoint: moved from joint to joint, it is never further from where it is wanted than half of the
// joint beside it, and the shoe stays where it is.
func TestTheMarkerStandsAtTheNearestJoint(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].tally.marker", "3.85 m") // in place of the pup
	with(t, plan, "section[3].pup[1].count", "0")
	for _, wanted := range []string{"600 m", "1404 m", "1999.9 m", "2050 m"} {
		with(t, plan, "section[3].tally.marker_depth", wanted)
		r := calc.Evaluate(plan)
		if off := value(t, r, 3, "tally.marker.off"); math.Abs(off) > 12.08/2+1e-6 {
			t.Errorf("wanted at %s, off by %g m", wanted, off)
		}
		if off := value(t, r, 3, "tally.shoe.off"); !near(off, 0, 1e-6) {
			t.Errorf("wanted at %s: shoe off by %g m", wanted, off)
		}
		list, err := calc.RunningList(plan, 2)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range list.Rows {
			if row.Piece == "marker joint" && !near(row.Top, value(t, r, 3, "tally.marker"), 1e-6) {
				t.Errorf("in the list at %g m, on the page at %g", row.Top, value(t, r, 3, "tally.marker"))
			}
		}
	}
}
