package calc_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
)

// TestLandingLoadsByHand does the 13 5/8 in string of the second well, which is vertical, outside this program: 9286.2 ft of
// 88.2 lb/ft on 5313.8 ft of 55 lb/ft, 6 5/8 × 5 in, in 11.2 ppg; S135 carries 2002.9 klbf. The stretch was integrated over
// 20000 slices of wall with the true axial force and the pressures on both sides of the wall.
func TestLandingLoadsByHand(t *testing.T) {
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	const klbf = 4448.2216152605
	for key, want := range map[string]float64{
		"landing.weight": 921.311 * klbf, "landing.load": 1101.311 * klbf, "landing.margin.string": 1081.638 * klbf, "landing.margin.rig": 898.689 * klbf,
		"run.made_up": 859.017 * klbf, "run.made_up.unfilled": 844.986 * klbf, "run.last_shoe": 928.042 * klbf,
		"landing.stretch": 9.44319 * foot, "landing.stretch.casing": 3.39985 * foot,
	} {
		if got := value(t, r, 4, key); !near(got, want, 1e-5*want) {
			t.Errorf("%s = %g, want %g", key, got, want)
		}
	}
}

// TestTheWorkingOfAStretchCanBeDoneByHand does it with the numbers that it shows.
func TestTheWorkingOfAStretchCanBeDoneByHand(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		for i := range plan.Sections {
			for _, key := range []string{"landing.stretch", "landing.stretch.casing"} {
				w, ok := calc.Explain(plan, i, key)
				if !ok {
					continue
				}
				n := map[string]float64{}
				for _, in := range w.Inputs {
					n[in.Symbol] = in.Value
				}
				got := (n["F"]+n["W"]/2)*n["L"]/(n["E"]*math.Pi/4*(n["D"]*n["D"]-n["d"]*n["d"])) - n["squeeze"]
				if !near(got, w.Figure.Value, 1e-9) {
					t.Errorf("section %d %s: %s gives %g, the figure is %g", i+1, key, w.Formula, got, w.Figure.Value)
				}
			}
		}
	})
}

// TestSelfStretchOfTheHandbooks: 10000 ft of pipe in 10 ppg stretch by 53.0 in under their own weight, L²/96.25e6 × (65.44 -
// 1.44 × mud) with L in ft (Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover; from memory). That
// formula has Poisson's ratio 0.28, here it is 0.3.
func TestSelfStretchOfTheHandbooks(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	with(t, plan, "section[4].density", "10 ppg")
	with(t, plan, "section[4].hung", "hanger at depth")
	with(t, plan, "section[4].top", "4600 ft")
	with(t, plan, "well.water_depth", "1000 ft")
	with(t, plan, "section[4].casing[1].linear_mass", "86.75 lb/ft") // the steel of 13 5/8 × 12.375 in
	r := calc.Evaluate(plan)
	longer := value(t, r, 4, "landing.stretch.casing")
	// It hangs from 4600 ft, where the pressure of the mud above comes on top: 0.4 × p/E along it all.
	p := 10 * 119.826427 * 9.80665 * 4600 * foot
	want := 1e8/96.25e6*(65.44-14.4)*0.0254 - 0.4*p*10000*foot/(30e6*6894.757)
	if !near(longer, want, 0.012*want) {
		t.Errorf("stretch %g m, want %g", longer, want)
	}
}

// TestTheRunningListAgreesWithThePage: at the hanger it holds the volumes of the page, at the stick-up the landing load.
func TestTheRunningListAgreesWithThePage(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			list, err := calc.RunningList(plan, i)
			if err != nil {
				if plan.Sections[i].Tally.JointLength.IsSet() {
					t.Errorf("section %d: %v", i+1, err)
				}
				continue
			}
			var hanger, last *calc.RunRow
			for k := range list.Rows {
				if row := &list.Rows[k]; !row.Carrier {
					hanger = row
				}
				last = &list.Rows[k]
			}
			for what, pair := range map[string][2]float64{
				"inside":    {hanger.Inside, value(t, r, i+1, "casing.volume.inside")},
				"displaced": {hanger.Displaced, value(t, r, i+1, "casing.displacement.closed")},
				"made up":   {hanger.HookLoad, value(t, r, i+1, "run.made_up")},
				"landed":    {last.HookLoad, value(t, r, i+1, "landing.load")},
				"stick-up":  {-last.Top, value(t, r, i+1, "landing.stick_up")},
				"shoe":      {last.Shoe, value(t, r, i+1, "casing.shoe")},
				"hanger":    {hanger.Top, value(t, r, i+1, "casing.top")},
			} {
				if !near(pair[0], pair[1], 1e-6*max(1, math.Abs(pair[1]))) {
					t.Errorf("section %d %s: %g in the list, %g on the page", i+1, what, pair[0], pair[1])
				}
			}
			if last.Length <= 0 || !last.Carrier || list.Unspaced != "" || list.Unweighed != "" {
				t.Errorf("section %d ends with %+v, %q, %q", i+1, last, list.Unspaced, list.Unweighed)
			}
		}
	})
}

// TestFillingByHand: after five joints of 13 5/8 in with shoe track all of it hangs empty, and is lighter by its mud: 85.8 m of
// 12.375 in bore in 1.25 sg are 8.32 t.
func TestFillingByHand(t *testing.T) {
	list, err := calc.RunningList(demo(t, "ottermast-2"), 2)
	if err != nil {
		t.Fatal(err)
	}
	bore := math.Pi / 4 * 12.375 * 12.375 * 0.0254 * 0.0254
	for _, row := range list.Rows {
		want := 0.0
		switch row.Piece + row.Number {
		case "joint5":
			want = 85.8
		case "joint6":
			want = 12.08
		case "joint10":
			want = 60.4
		default:
			continue
		}
		if got := row.HookLoad - row.Unfilled; !near(got, want*bore*1250*9.80665, 1) {
			t.Errorf("joint %s: %g N lighter, want %g", row.Number, got, want*bore*1250*9.80665)
		}
	}
}

// TestAFloatThatFillsByItself displaces the steel alone and is never empty.
func TestAFloatThatFillsByItself(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].tally.float", "fills by itself")
	r := calc.Evaluate(plan)
	list, err := calc.RunningList(plan, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range list.Rows {
		if row.Piece == "hanger" && !near(row.Displaced, value(t, r, 3, "casing.displacement.open"), 1e-6) || row.Unfilled != row.HookLoad {
			t.Errorf("%+v", row)
		}
	}
	if _, ok := r.Sheet(2).Find("run.made_up.unfilled"); ok {
		t.Error("it hangs unfilled")
	}
}

// TestRunningListsAreSound holds the list of any plan to what must be: lengths that add up to the depths, couplings and loads in
// order, volumes that grow.
func TestRunningListsAreSound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyPlan(rt, t)
		if rapid.Bool().Draw(rt, "measured") {
			measured(t, plan, 3, rapid.IntRange(1, 160).Draw(rt, "joints"), 12.08)
		}
		for i := range plan.Sections {
			list, err := calc.RunningList(plan, i)
			if err != nil {
				continue
			}
			sum, last := 0.0, calc.RunRow{Top: math.Inf(1)}
			for k, row := range list.Rows {
				sum += row.Length
				if !near(sum, row.Cumulative, 1e-6) || !near(list.Shoe-sum, row.Top, 1e-6) || !(row.Top < last.Top) || !(row.Shoe >= last.Shoe) {
					rt.Fatalf("section %d row %d: %+v after %+v, sum %g, shoe at %g", i+1, k+1, row, last, sum, list.Shoe)
				}
				if !(row.Inside >= last.Inside && row.Displaced >= last.Displaced) || row.Unfilled > row.HookLoad+1e-6 || math.IsNaN(row.HookLoad) {
					rt.Fatalf("section %d row %d: %+v after %+v", i+1, k+1, row, last)
				}
				last = row
			}
			if list.Shoe > list.Hole+1e-6 {
				rt.Fatalf("section %d: shoe at %g m in a hole to %g", i+1, list.Shoe, list.Hole)
			}
		}
	})
}

func TestThereIsNoListWithoutATally(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for section, want := range map[int]string{-1: "there is no section", 0: "has no tally", 5: "there is no section 6"} {
		if _, err := calc.RunningList(plan, section); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("section %d: %v", section, err)
		}
	}
	with(t, plan, "section[5].completion", "open hole")
	if _, err := calc.RunningList(plan, 4); err == nil || !strings.Contains(err.Error(), "open hole") {
		t.Errorf("open hole: %v", err)
	}
	with(t, plan, "section[3].density", "")
	if list, err := calc.RunningList(plan, 2); err != nil || list.Unweighed != "mud density is blank" || list.Unspaced == "" || len(list.Rows) < 140 {
		t.Errorf("without mud: %v, %q, %q, %d rows", err, list.Unweighed, list.Unspaced, len(list.Rows))
	}
}

// TestTheChartOfTheRunAgreesWithTheFigures at the ends of its two stretches, and its greatest is the figure's.
func TestTheChartOfTheRunAgreesWithTheFigures(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for section := 2; section <= len(plan.Sections); section++ {
			c := chart(t, plan, section, "casing.run")
			if got, want := valueAt(t, c, "Full", value(t, r, section, "casing.length")), value(t, r, section, "run.made_up"); !near(got, want, 1e-6*want) {
				t.Errorf("section %d made up: %g in the chart, figure %g", section, got, want)
			}
			if got, want := valueAt(t, c, "Full", value(t, r, section, "casing.shoe")), value(t, r, section, "landing.load"); !near(got, want, 1e-6*want) {
				t.Errorf("section %d landed: %g in the chart, figure %g", section, got, want)
			}
			most := 0.0
			for _, p := range c.Curves[0].Points {
				most = max(most, p.Value)
			}
			if got := value(t, r, section, "run.greatest"); !near(got, most, 0.005*most) {
				t.Errorf("section %d greatest: %g in the chart, figure %g", section, most, got)
			}
		}
	})
}

// TestAStringMayHangHeaviestOnItsWay: in a hole that goes level a string weighs most while it still hangs upright.
func TestAStringMayHangHeaviestOnItsWay(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "trajectory.inclination", "88 deg")
	with(t, plan, "trajectory.build_rate", "3 deg/30m")
	r := calc.Evaluate(plan)
	if greatest, landed := value(t, r, 4, "run.greatest"), value(t, r, 4, "landing.load"); greatest < 1.05*landed {
		t.Errorf("greatest %g, landed %g", greatest, landed)
	}
	if at := value(t, r, 4, "run.greatest.shoe"); at > 2950 {
		t.Errorf("greatest with the shoe at %g m", at)
	}
	f := worst(t, r, 4, "hook_load")
	for _, other := range findings(r, 4, "hook_load") {
		if strings.Contains(other.Text, "greatest") {
			f = other
		}
	}
	if want := 650*9806.65 - value(t, r, 4, "run.greatest"); !near(f.Measured, want, 1) {
		t.Errorf("judged %g, want %g", f.Measured, want)
	}
}
