package calc_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// TestCementOfTheDemos compares with figures computed independently for the invented wells, in other code, to their stated
// accuracy: volumes of the 17 1/2 in section leave out the 24 in pocket below the last shoe.
func TestCementOfTheDemos(t *testing.T) {
	const (
		bbl = 0.158987294928 // m3
		ppg = 119.8264273    // kg/m3
	)
	for _, c := range []struct {
		name         string
		section      int
		key          string
		want, within float64
	}{
		{"ottermast-2", 3, "cement.slurry.1.volume", 86.0, 0.5},
		{"ottermast-2", 3, "cement.slurry.2.volume", 17.9, 0.05},
		{"ottermast-2", 3, "cement.displacement", 141.4, 0.05},
		{"ottermast-2", 3, "cement.displacement.strokes", 8740, 1},
		{"ottermast-2", 3, "cement.slurry.1.top.gauge", 514, 1.5},
		{"ottermast-2", 3, "cement.emw.shoe", 1445, 1.5},
		{"ottermast-2", 4, "cement.displacement", 112.5, 0.05},
		{"ottermast-2", 4, "cement.displacement.strokes", 6953, 1},
		{"ottermast-2", 4, "cement.emw.shoe", 1559, 1.5},
		{"ottermast-2", 5, "cement.displacement", 52.1, 0.05},
		{"ottermast-2", 5, "cement.displacement.strokes", 3222, 1},
		{"ottermast-2", 5, "cement.emw.shoe", 1497, 12}, // ours counts the cement above the liner's top with the pipe in
		{"saltlantern-1", 3, "cement.displacement", 1270 * bbl, 0.5 * bbl},
		{"saltlantern-1", 3, "cement.displacement.strokes", 9116, 2},
		{"saltlantern-1", 3, "cement.emw.shoe", 10.51 * ppg, 0.02 * ppg},
		{"saltlantern-1", 4, "cement.displacement", 1498 * bbl, 0.5 * bbl},
		{"saltlantern-1", 4, "cement.displacement.strokes", 10750, 2},
		{"saltlantern-1", 4, "cement.emw.shoe", 11.71 * ppg, 0.02 * ppg},
		{"saltlantern-1", 5, "cement.displacement", 1054 * bbl, 0.5 * bbl},
		{"saltlantern-1", 5, "cement.displacement.strokes", 7566, 2},
		{"saltlantern-1", 5, "cement.emw.shoe", 12.87 * ppg, 0.02 * ppg},
	} {
		r := calc.Evaluate(demo(t, c.name))
		if got := value(t, r, c.section, c.key); !near(got, c.want, c.within) {
			t.Errorf("%s, section %d %s = %.3f, want %.3f within %g", c.name, c.section, c.key, got, c.want, c.within)
		}
	}
}

func TestWhatIfsOfTheCementJob(t *testing.T) {
	for _, c := range []struct {
		path, text, key string
		want, within    float64
	}{
		// The hole 60 % over gauge in place of 30 %: more slurry, the same displacement.
		{"section[3].excess", "60 %", "cement.slurry.1.volume", 104.4, 0.6},
		{"section[3].excess", "60 %", "cement.slurry.2.volume", 21.5, 0.05},
		{"section[3].excess", "60 %", "cement.displacement", 141.4, 0.05},
		{"rig.pump[1].liner", "5.5 in", "cement.displacement.strokes", 10401, 1},
		{"section[3].excess", "0 %", "cement.slurry.1.top.gauge", 850, 1e-6},
		{"section[3].pumping.compressibility", "1 %", "cement.displacement", 141.4 * 1.01, 0.05},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		if got := value(t, calc.Evaluate(plan), 3, c.key); !near(got, c.want, c.within) {
			t.Errorf("%s = %s: %s = %.3f, want %.3f within %g", c.path, c.text, c.key, got, c.want, c.within)
		}
	}
	// A shoe test of 1.40 sg in place of 1.48 takes what the prognosis does not take already: 1.4777 at the shoe.
	before, after := changed(t, "ottermast-2", "section[3].leak_off", "1.40 sg", 3, "cement.margin")
	if !near(before-after, 77.7, 0.5) {
		t.Errorf("the margin falls by %.1f kg/m3, want 77.7", before-after)
	}
}

// TestOneCementJobByHand reckons the 13 5/8 in job of Ottermast-2 anew from diameters and depths, in plain arithmetic that
// shares nothing with the program: volumes, cement, displacement, and the columns at the shoe.
func TestOneCementJobByHand(t *testing.T) {
	area := func(outer, inner float64) float64 { return math.Pi / 4 * (outer*outer - inner*inner) * inch * inch }
	const (
		pipeOD, casingOD, casingID = 5.875, 13.625, 12.375
		hostID, hole, pocket       = 17.755, 17.5, 24.0
		lastShoe, opened           = 950.0, 955 - 3.1 // the pilot below is as wide as this section's hole
		shoe, collar               = 2150.0, 2150.0 - 25.4
		leadTop, tailTop           = 850.0, 1950.0
		top                        = 364.8 + 0.85
		pipeID                     = 5.153
	)
	excess := 1.3
	lead := area(hostID, casingOD)*(lastShoe-leadTop) + excess*(area(pocket, casingOD)*(opened-lastShoe)+area(hole, casingOD)*(tailTop-opened))
	tail := excess*area(hole, casingOD)*(shoe-tailTop) + area(casingID, 0)*(shoe-collar)
	displacement := area(pipeID, 0)*top + area(casingID, 0)*(collar-top)
	stroke := 3 * area(6, 0) * 12 * inch * 0.97

	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{
		"cement.slurry.1.volume":      lead,
		"cement.slurry.2.volume":      tail,
		"cement.slurry.1.dry":         lead / 136.51e-5,
		"cement.slurry.1.mix":         lead / 136.51e-5 * 104.76e-5,
		"cement.slurry.2.sacks":       math.Ceil(tail / 75.84e-5 / (94 * 0.45359237)),
		"cement.displacement":         displacement,
		"cement.displacement.strokes": displacement / stroke,
		"cement.displacement.most":    displacement + area(casingID, 0)*25.4/2,
		"cement.time":                 (16+lead+tail)/0.95*60 + 0.4*3600 + (displacement-5)/2.4*60 + 5/0.8*60,
	} {
		if got := value(t, r, 3, key); !near(got, want, 1e-3*want) {
			t.Errorf("%s = %.4f, by hand %.4f", key, got, want)
		}
	}
	// The spacer stands above the lead, in the annulus of the 18 5/8 in string.
	spacerTop := leadTop - 16/area(hostID, casingOD)
	if got := value(t, r, 3, "cement.spacer.1.top"); !near(got, spacerTop, 0.5) {
		t.Errorf("spacer top = %.2f, by hand %.2f", got, spacerTop)
	}
	// Columns on the true vertical depths that the program shows for its own tops, which other tests check.
	tvd := func(key string) float64 { return value(t, r, 3, key+".tvd") }
	shoeTVD := tvd("casing.shoe")
	mass := 1250*spacerTop + 1380*(leadTop-spacerTop) + 1500*(tvd("cement.slurry.2.top")-leadTop) + 1900*(shoeTVD-tvd("cement.slurry.2.top"))
	if got := value(t, r, 3, "cement.emw.shoe"); !near(got, mass/shoeTVD, 0.05) {
		t.Errorf("EMW at the shoe = %.3f, by hand %.3f", got, mass/shoeTVD)
	}
	// Inside stands mud down to the collar and tail below it; all that is held is the difference.
	collarTVD := tvd("cement.tag")
	held := 9.80665 * (mass - 1250*collarTVD - 1900*(shoeTVD-collarTVD))
	if got := value(t, r, 3, "cement.float"); !near(got, held, 2e3) {
		t.Errorf("float holds %.0f Pa, by hand %.0f", got, held)
	}
}

// TestACaliperGoesBeforeTheWashout: 18.5 in measured from 1500 to 1700 m, 17.6 in below, gauge and 30 % excess above.
func TestACaliperGoesBeforeTheWashout(t *testing.T) {
	plan := demo(t, "ottermast-2")
	inches := func(text string) quantity.Value { return must(t, text, quantity.Diameter) }
	metres := func(text string) quantity.Value { return must(t, text, quantity.Length) }
	before := value(t, calc.Evaluate(plan), 3, "cement.slurry.1.volume")
	plan.Sections[2].Caliper = []model.CaliperRow{{Depth: metres("1500 m"), Diameter: inches("18.5 in")}, {Depth: metres("1700 m"), Diameter: inches("17.6 in")}}
	r := calc.Evaluate(plan)
	ring := func(a, b, length float64) float64 { return math.Pi / 4 * (a*a - b*b) * inch * inch * length }
	more := 1.3 * (ring(18.5, 17.5, 200) + ring(17.6, 17.5, 250))
	if got := value(t, r, 3, "cement.slurry.1.volume") - before; !near(got, more, 1e-3) {
		t.Errorf("the caliper adds %.3f m3 to the lead, by hand %.3f", got, more)
	}
	if got, want := value(t, r, 3, "hole.volume")-value(t, r, 3, "hole.volume.gauge"), ring(18.5, 17.5, 200)+ring(17.6, 17.5, 2155-1700); !near(got, want, 1e-3) {
		t.Errorf("hole %.3f m3 over gauge, by hand %.3f", got, want)
	}
	// Where it was measured the hole is no gauge hole: what the excess is for is the doubt about the rest.
	gauge := ring(18.5, 13.625, 200) + ring(17.6, 13.625, 450)
	if got := value(t, r, 3, "cement.open") - value(t, r, 3, "cement.open.excess"); got < gauge {
		t.Errorf("annulus in gauge %.3f m3, what was measured holds %.3f", got, gauge)
	}
	plan.Sections[2].Caliper[1].Depth = metres("1400 m")
	if f := figure(t, calc.Evaluate(plan), 3, "cement.volume"); f.OK || f.Mend != "section[3].caliper[2].depth" {
		t.Errorf("a caliper that goes up: %+v", f)
	}
}

func must(t testing.TB, text string, kind quantity.Kind) quantity.Value {
	t.Helper()
	v, err := quantity.Parse(text, kind, 0)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestNothingIsLostWhereTheHoleIsInGauge: what the excess was for stands above the planned top, or has come out.
func TestNothingIsLostWhereTheHoleIsInGauge(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	over := value(t, r, 1, "cement.over")
	if excess := value(t, r, 1, "cement.open.excess"); !near(over, excess, 1e-6) {
		t.Errorf("a riserless job to the seabed returns %.3f m3 of cement in gauge, its excess is %.3f", over, excess)
	}
	if over := value(t, r, 3, "cement.over"); over != 0 {
		t.Errorf("%.3f m3 of cement come to the rig", over)
	}
}

// TestCementAboveALinerFallsWhenThePipeLeaves: 80 m round 5 7/8 in pipe in the 9 7/8 in casing.
func TestCementAboveALinerFallsWhenThePipeLeaves(t *testing.T) {
	r := calc.Evaluate(demo(t, "ottermast-2"))
	host, top := value(t, r, 4, "casing.part.1.id"), value(t, r, 5, "casing.top")
	pipe := 5.875 * inch
	want := top - 80*(host*host-pipe*pipe)/(host*host)
	if got := value(t, r, 5, "cement.top.pulled"); !near(got, want, 0.01) {
		t.Errorf("top %.2f m with the pipe pulled, by hand %.2f", got, want)
	}
}

func TestLostSlurryLowersTheTop(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].losses", "20 %")
	r := calc.Evaluate(plan)
	lost := value(t, r, 3, "cement.slurry.1.top.lost")
	if planned := value(t, r, 3, "cement.slurry.1.top"); !(lost > planned+50) {
		t.Errorf("a fifth of the slurry lost: top %.1f, planned %.1f", lost, planned)
	}
}

// TestCementLaws are what must hold whatever is entered.
func TestCementLaws(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, "ottermast-2")
		section := rapid.IntRange(3, 5).Draw(rt, "section")
		at := func(key string) string { return fmt.Sprintf("section[%d].%s", section, key) }
		with(t, plan, at("excess"), fmt.Sprintf("%d %%", rapid.IntRange(0, 150).Draw(rt, "excess")))
		with(t, plan, at("losses"), fmt.Sprintf("%d %%", rapid.IntRange(1, 60).Draw(rt, "losses")))
		a := calc.Alone(plan, section-1)
		top, gauge, lost := valueOn(t, a, "cement.slurry.1.top"), valueOn(t, a, "cement.slurry.1.top.gauge"), valueOn(t, a, "cement.slurry.1.top.lost")
		if gauge > top+1e-6 || lost < top-1e-6 {
			rt.Errorf("tops: planned %g, in gauge %g, with losses %g", top, gauge, lost)
		}
		if rest, most := valueOn(t, a, "cement.emw.shoe"), valueOn(t, a, "cement.emw.shoe.highest"); most < rest-1e-6 {
			rt.Errorf("EMW at the shoe: %g at rest, at most %g", rest, most)
		}
		// Heavier cement presses harder on the rock and leaves less of the string's weight.
		heavy := fmt.Sprintf("%.2f sg", 1.95+float64(rapid.IntRange(0, 20).Draw(rt, "density"))/100)
		last := "slurry[1].density"
		if section == 3 {
			last = "slurry[2].density"
		}
		with(t, plan, at(last), heavy)
		b := calc.Alone(plan, section-1)
		if light, heavy := valueOn(t, a, "cement.emw.shoe"), valueOn(t, b, "cement.emw.shoe"); heavy <= light {
			rt.Errorf("EMW at the shoe: %g with heavier cement, %g before", heavy, light)
		}
		if light, heavy := valueOn(t, a, "cement.weight"), valueOn(t, b, "cement.weight"); heavy >= light {
			rt.Errorf("weight left: %g with heavier cement, %g before", heavy, light)
		}
	})
}

// TestRecipes: a neat class G slurry comes out as API Spec 10A prints it, 15.8 lb/gal, 1.15 ft3/sk, 5.0 gal/sk (handbooks,
// from memory).
func TestRecipes(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for key, text := range map[string]string{"given_by": "recipe", "density": "", "class": "G"} {
		with(t, plan, "section[3].slurry[2]."+key, text)
	}
	r := calc.Evaluate(plan)
	for key, want := range map[string][2]float64{
		"density":   {15.8 * 119.8264, 0.05 * 119.8264},
		"yield":     {1.15 * 0.028316846592 / 42.63768, 0.005 * 0.028316846592 / 42.63768},
		"mix_fluid": {5.0 * 0.003785411784 / 42.63768, 0.05 * 0.003785411784 / 42.63768},
	} {
		if got := value(t, r, 3, "cement.slurry.2."+key); !near(got, want[0], want[1]) {
			t.Errorf("%s = %g, want %g", key, got, want[0])
		}
	}
	// An impossible density says so and blanks the dry cement, not the volume.
	with(t, plan, "section[3].slurry[2].density", "0.95 sg")
	r = calc.Evaluate(plan)
	if f := figure(t, r, 3, "cement.slurry.2.dry"); f.OK || f.Mend != "section[3].slurry[2].density" {
		t.Errorf("0.95 sg of cement and water: %+v", f)
	}
	value(t, r, 3, "cement.slurry.2.volume")
}

// TestTopOfCementAgainstTheRules moves the top and looks at what the rule sets say.
func TestTopOfCementAgainstTheRules(t *testing.T) {
	for _, c := range []struct {
		set, top, key string
		severity      calc.Severity
	}{
		{"us-ocs", "850 m", "us_cement_height", calc.OK},
		{"us-ocs", "2010 m", "us_cement_height", calc.Stop}, // 140 m are 459 ft
		{"norway", "2010 m", "cement_height", calc.OK},
		{"norway", "2060 m", "cement_height", calc.Stop},
		{"common practice", "850 m", "trapped_annulus", calc.Caution},
		{"common practice", "960 m", "trapped_annulus", calc.OK},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "well.rules", c.set)
		with(t, plan, "section[3].slurry[2].top", "2100 m")
		with(t, plan, "section[3].slurry[1].top", c.top)
		if got := worst(t, calc.Evaluate(plan), 3, c.key); got.Severity != c.severity {
			t.Errorf("%s, top at %s: %s is %v, want %v", c.set, c.top, c.key, got.Severity, c.severity)
		}
	}
}

// TestCementAboveAZoneToBeIsolated: the reservoir of Ottermast-2 at 3010 m TVD lies behind the liner. 100 m of cement above it
// are short of 500 ft; 40 m, not into the last string, are short of 200 m as well.
func TestCementAboveAZoneToBeIsolated(t *testing.T) {
	zone := 3245.0
	for buildTVD(zone) < 3010 {
		zone += 0.01
	}
	for _, c := range []struct {
		set, key string
		above    float64
		severity calc.Severity
	}{
		{"us-ocs", "us_cement_zone", 100, calc.Stop}, {"us-ocs", "us_cement_zone", 160, calc.OK}, {"norway", "cement_inflow", 40, calc.Stop},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "well.rules", c.set)
		with(t, plan, "section[5].slurry[1].top", fmt.Sprintf("%.1f m", zone-c.above))
		if f := worst(t, calc.Evaluate(plan), 5, c.key); f.Severity != c.severity || !near(f.Measured, c.above, 0.2) {
			t.Errorf("%s, %g m: %+v", c.set, c.above, f)
		}
	}
	plan := demo(t, "ottermast-2")
	with(t, plan, "well.rules", "norway")
	if list := findings(calc.Evaluate(plan), 5, "cement_inflow"); len(list) > 0 {
		t.Errorf("cement in the last string: %+v", list[0])
	}
}
