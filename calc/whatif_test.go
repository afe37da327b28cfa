package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	sg   = 1000.0 // kg/m3
	inch = 0.0254 // m
	foot = 0.3048 // m
)

// near reports whether two numbers agree within a tolerance.
func near(got, want, within float64) bool { return math.Abs(got-want) <= within }

// changed returns a figure before and after one entry is changed in a demo plan.
func changed(t *testing.T, name, path, text string, section int, key string) (before, after float64) {
	t.Helper()
	plan := demo(t, name)
	before = value(t, calc.Evaluate(plan), section, key)
	with(t, plan, path, text)
	return before, value(t, calc.Evaluate(plan), section, key)
}

func TestWhatIfsOfTheIntermediateSection(t *testing.T) {
	for _, c := range []struct {
		path, text string
		section    int
		key        string
		change     float64 // SI
		within     float64
	}{
		// A shoe test 0.08 sg lower takes 0.08 sg off its margin and nothing off the prognosis.
		{"section[3].leak_off", "1.40 sg", 3, "mud.margin.shoe_test", -0.08 * sg, 1e-6},
		{"section[3].leak_off", "1.40 sg", 3, "mud.margin.fracture", 0, 1e-9},
		{"section[3].leak_off", "1.40 sg", 3, "mud.margin.pore", 0, 1e-9},
		// Mud 0.05 sg heavier.
		{"section[3].density", "1.30 sg", 3, "mud.margin.pore", 0.05 * sg, 1e-6},
		{"section[3].density", "1.30 sg", 3, "mud.margin.fracture", -0.05 * sg, 1e-6},
		{"section[3].density", "1.30 sg", 3, "mud.margin.shoe_test", -0.05 * sg, 1e-6},
		{"section[3].density", "1.30 sg", 3, "mud.emw.td", 0.05 * sg, 1e-6},
		// Riser off the sea does not change: 0.05 sg over 1665.4 of 2033.4 m.
		{"section[3].density", "1.30 sg", 3, "mud.riser_off", 0.05 * sg * 1665.4 / 2033.4, 0.01},
		{"section[3].density", "1.30 sg", 3, "volume.bottoms_up", 0, 1e-12},
		// 107.1 tf of string, of which 99.4 tf hang on the fall of the path, loses 50/7850 of that.
		{"section[3].density", "1.30 sg", 3, "string.weight.buoyed", -50.0 / 7850 * 9.80665e3 * 98.8, 2e3},
		// The 18-5/8 in set 70 m high: the window is narrower at the shoe, and 70 m less of it are cased.
		{"section[2].rathole", "71.9 m", 2, "casing.shoe", -70, 1e-9},
		{"section[2].rathole", "71.9 m", 3, "mud.margin.fracture", ((1.41 + 0.07*80/155) - (1.41 + 0.07*150/155)) * sg, 1e-6},
		{"section[2].rathole", "71.9 m", 3, "hole.start", 0, 1e-9},
		// 24 in hole against 17.755 in casing over 70 m.
		{"section[2].rathole", "71.9 m", 3, "volume.bottoms_up", math.Pi / 4 * (24*24 - 17.755*17.755) * inch * inch * 70, 1e-6},
		// Washed out by 60 %: the hole's own volume, not its annulus, grows by 60 %.
		{"section[3].washout", "60 %", 3, "hole.volume", 0.6 * 1200 * math.Pi / 4 * 17.5 * 17.5 * inch * inch, 1e-6},
		{"section[3].washout", "60 %", 3, "hole.volume.gauge", 0, 1e-12},
		{"section[3].washout", "60 %", 3, "casing.volume.annulus.open", 0.6 * 1195 * math.Pi / 4 * 17.5 * 17.5 * inch * inch, 1e-6},
		{"section[3].washout", "60 %", 3, "casing.volume.annulus.cased", 0, 1e-12},
		{"section[3].washout", "60 %", 3, "casing.volume.collar", 0, 1e-12},
		{"section[3].washout", "60 %", 3, "volume.bottoms_up", 0.6 * 1200 * math.Pi / 4 * 17.5 * 17.5 * inch * inch, 1e-6},
		// In the next section five metres of it are left open below the shoe.
		{"section[3].washout", "60 %", 4, "volume.bottoms_up", 0.6 * 5 * math.Pi / 4 * 17.5 * 17.5 * inch * inch, 1e-6},
		// Pumps.
		{"rig.pump[1].liner", "5.5 in", 3, "volume.bottoms_up", 0, 1e-12},
		{"rig.pump[1].efficiency", "90 %", 3, "volume.bottoms_up", 0, 1e-12},
		{"section[3].booster", "0 L/min", 3, "volume.bottoms_up.time", 0, 1e-9},
	} {
		before, after := changed(t, "ottermast-2", c.path, c.text, c.section, c.key)
		if got := after - before; !near(got, c.change, c.within) {
			t.Errorf("%s = %s: section %d %s changes by %g, want %g", c.path, c.text, c.section, c.key, got, c.change)
		}
	}
}

func TestStrokesGoWithTheLinerSquared(t *testing.T) {
	before, after := changed(t, "ottermast-2", "rig.pump[1].liner", "5.5 in", 3, "casing.volume.collar.strokes")
	if want := before * 36 / 30.25; !near(after, want, 1e-6) {
		t.Errorf("strokes %g become %g, want %g", before, after, want)
	}
	plan := demo(t, "ottermast-2")
	with(t, plan, "rig.pump[1].liner", "5.5 in")
	f := worst(t, calc.Evaluate(plan), 3, "pumps_give_flow")
	if f.Severity != calc.Stop || f.Margin >= 0 {
		t.Errorf("three pumps of 5 1/2 in liners give flow and booster: %+v", f)
	}
}

// TestTheLowerOfShoeTestAndFractureGoverns lowers the shoe test step by step.
func TestTheLowerOfShoeTestAndFractureGoverns(t *testing.T) {
	for _, c := range []struct {
		test     string
		margin   float64 // sg
		severity calc.Severity
		at       float64 // along hole
	}{
		{"1.60 sg", 1.41 + 0.07*150/155 - 1.25, calc.OK, 950}, // the curve at the shoe: between 800 and 955 m
		{"1.40 sg", 0.15, calc.OK, 950},
		{"1.31 sg", 0.06, calc.OK, 950}, // equality passes
		{"1.30 sg", 0.05, calc.Caution, 950},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "section[3].leak_off", c.test)
		f := worst(t, calc.Evaluate(plan), 3, "static_margin")
		if !near(f.Measured, c.margin*sg, 1e-6) || f.Severity != c.severity {
			t.Errorf("shoe test %s: margin %.4f, %v, want %.4f, %v", c.test, f.Measured/sg, f.Severity, c.margin, c.severity)
		}
		if !near(f.At, c.at, 0.01) {
			t.Errorf("shoe test %s: at %.1f m, want %.1f", c.test, f.At, c.at)
		}
	}
}

// TestMudHeavierThanTheShoeTestStops: losses at the shoe are no matter of taste, whatever the prognosis says.
func TestMudHeavierThanTheShoeTestStops(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].leak_off", "1.20 sg")
	if f := worst(t, calc.Evaluate(plan), 3, "below_breakdown"); f.Severity != calc.Stop {
		t.Errorf("mud of 1.25 sg on a shoe test of 1.20 sg: %v", f.Severity)
	}
}

// TestFindingsStandAtDepthsAlongHole: in a deviated hole the depth of a finding is not its true vertical depth.
func TestFindingsStandAtDepthsAlongHole(t *testing.T) {
	r := calc.Evaluate(demo(t, "ottermast-2"))
	for _, c := range []struct {
		section int
		key     string
		at      float64
	}{
		{4, "static_margin", 2150}, // the 13 5/8 in shoe, 2029.1 m TVD
		{4, "above_inflow", 3250},  // TD, 2962.0 m TVD
		{5, "static_margin", 3245}, // the 9 7/8 in shoe, 2957.8 m TVD
		{5, "shoe_track", 3687},
		{5, "lap_most", 3086},
	} {
		if f := worst(t, r, c.section, c.key); !near(f.At, c.at, 0.5) {
			t.Errorf("section %d %s stands at %.1f m, want %.1f along hole", c.section, c.key, f.At, c.at)
		}
	}
}

// TestMudOutOfTheWindowStops takes the mud out of either side.
func TestMudOutOfTheWindowStops(t *testing.T) {
	for _, c := range []struct{ density, key string }{{"1.16 sg", "above_inflow"}, {"1.49 sg", "below_breakdown"}} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "section[3].density", c.density)
		if f := worst(t, calc.Evaluate(plan), 3, c.key); f.Severity != calc.Stop || f.Margin >= 0 || f.Mend != "section[3].density" {
			t.Errorf("%s: %+v", c.density, f)
		}
	}
}

// TestOverbalanceIsLeastInPressure: the least pressure over pore need not be where the equivalent densities are nearest.
func TestOverbalanceIsLeastInPressure(t *testing.T) {
	plan := demo(t, "ottermast-2")
	// Pore 1.19 sg just below the 18 5/8 in shoe leaves 0.06 sg over 955 m, 5.6 bar; 0.05 sg are left at 2034 m, 10 bar.
	with(t, plan, "prognosis.row[6].pore", "1.19 sg")
	with(t, plan, "prognosis.row[10].pore", "1.2 sg")
	for i := 7; i <= 9; i++ {
		with(t, plan, "prognosis.row["+string(rune('0'+i))+"].pore", "1.19 sg")
	}
	f := worst(t, calc.Evaluate(plan), 3, "overbalance")
	if want := 0.06 * sg * 9.80665 * 955; f.Measured > want+1 {
		t.Errorf("static overbalance = %.2f bar at %.0f m, but it is %.2f bar at 955 m", f.Measured/1e5, f.At, want/1e5)
	}
}

func TestDriftClassDecidesWhatPasses(t *testing.T) {
	plan := demo(t, "ottermast-2")
	if f := worst(t, calc.Evaluate(plan), 4, "bit_passes"); f.Severity != calc.OK || !near(f.Margin, 0, 1e-9) {
		t.Errorf("12 1/4 in bit in the special drift: %+v", f)
	}
	with(t, plan, "section[3].casing[1].drift_class", "API")
	r := calc.Evaluate(plan)
	f := worst(t, r, 4, "bit_passes")
	// API drift of 13 5/8 in 88.2 lb/ft: 12.375 in less 5/32 in.
	if f.Severity != calc.Stop || !near(f.Margin, -0.03125*inch, 0.001*inch) || f.Where != "drift of section 3 string" {
		t.Errorf("12 1/4 in bit in the API drift: %+v", f)
	}
	if worst(t, r, 5, "bit_passes").Severity != calc.OK {
		t.Error("the 8 1/2 in bit passes the 9 7/8 in as before")
	}
	with(t, plan, "section[4].casing[1].drift_class", "API")
	if worst(t, calc.Evaluate(plan), 5, "bit_passes").Severity != calc.Stop {
		t.Error("the 8 1/2 in bit does not pass the API drift of the 9 7/8 in")
	}
}

func TestTheStringMustPassWhatStandsAbove(t *testing.T) {
	for _, c := range []struct {
		name, path, text string
		section          int
		key              string
	}{
		{"saltlantern-1", "section[4].casing[1].connector_od", "14.75 in", 4, "connector_passes"},
		{"saltlantern-1", "section[3].casing[1].connector_od", "18.6 in", 3, "connector_passes"}, // the housing's 18.51 in
		{"ottermast-2", "section[4].casing[1].connector_od", "12.5 in", 4, "hole_takes_string"},
		{"ottermast-2", "section[2].casing[1].connector_od", "33 in", 2, "connector_passes"}, // the conductor's drift
		{"ottermast-2", "section[3].string[2].size", "18 in", 3, "bit_passes"},               // a tool wider than the drift
		{"ottermast-2", "section[3].hole", "12 in", 3, "hole_takes_string"},
		{"ottermast-2", "section[4].bit", "12.4 in", 4, "bit_passes"},
	} {
		plan := demo(t, c.name)
		if c.key == "bit_passes" && c.section == 4 {
			with(t, plan, "section[4].hole", "12.5 in")
			with(t, plan, "section[4].opener_behind", "5 m")
		}
		with(t, plan, c.path, c.text)
		if f := worst(t, calc.Evaluate(plan), c.section, c.key); f.Severity != calc.Stop || f.Margin >= 0 {
			t.Errorf("%s = %s: %v, margin %g", c.path, c.text, f.Severity, f.Margin)
		}
	}
}

// TestAHoleOpenerMustPassToo: unlike an underreamer it does not fold, and neither the bit nor the pipe tells its size.
func TestAHoleOpenerMustPassToo(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[1].casing[1].id", "23.5 in")
	with(t, plan, "section[1].casing[1].drift", "23 in")
	if f := worst(t, calc.Evaluate(plan), 2, "bit_passes"); f.Severity != calc.Stop {
		t.Errorf("a 24 in hole opener through a drift of 23 in: %v", f.Severity)
	}
}

func TestStringsOutOfOrderStop(t *testing.T) {
	stops := func(plan *model.Plan, section int) bool {
		return slices.ContainsFunc(calc.Evaluate(plan).Findings, func(f calc.Finding) bool {
			return f.Section == section-1 && f.Severity == calc.Stop
		})
	}
	for _, c := range []struct {
		what    string
		section int
		edit    func(*model.Plan)
	}{
		{"surface casing larger than the conductor", 2, func(p *model.Plan) {
			p.Sections[0].Casing, p.Sections[1].Casing = p.Sections[1].Casing, p.Sections[0].Casing
		}},
		{"sections drilled in the wrong order", 4, func(p *model.Plan) { p.Sections[2].TD, p.Sections[3].TD = p.Sections[3].TD, p.Sections[2].TD }},
		{"a section that ends where it starts", 3, func(p *model.Plan) { p.Sections[2].TD = p.Sections[1].TD }},
		{"a rathole longer than the section", 3, func(p *model.Plan) { with(t, p, "section[3].rathole", "200 m"); with(t, p, "section[3].td", "1000 m") }},
		{"a highest casing part that does not reach the top", 3, func(p *model.Plan) { with(t, p, "section[3].casing[1].length", "100 m") }},
		{"mud above the shoe test where there is no prognosis", 3, func(p *model.Plan) { p.Window = nil; with(t, p, "section[3].leak_off", "1.2 sg") }},
		{"an open-hole section without a BOP", 5, func(p *model.Plan) {
			with(t, p, "well.rules", "us-ocs")
			with(t, p, "section[5].completion", "open hole")
			with(t, p, "section[5].returns", "seabed")
		}},
		{"a bit larger than its hole", 4, func(p *model.Plan) { with(t, p, "section[4].bit", "12.5 in") }},
		{"a liner top below the last shoe", 5, func(p *model.Plan) { with(t, p, "section[5].top", "3260 m") }},
		{"a liner top above the wellhead", 5, func(p *model.Plan) { with(t, p, "section[5].top", "100 m") }},
		{"a liner without a string above", 1, func(p *model.Plan) {
			with(t, p, "section[1].completion", "liner")
			with(t, p, "section[1].top", "400 m")
		}},
		{"casing parts longer than the string", 3, func(p *model.Plan) {
			p.Sections[2].Casing = append(slices.Clone(p.Sections[2].Casing), p.Sections[2].Casing[0])
			with(t, p, "section[3].casing[1].length", "2000 m")
		}},
		{"a drill string longer than the hole", 5, func(p *model.Plan) { with(t, p, "section[5].string[9].length", "3600 m") }},
		{"a drill string that does not reach the rotary", 5, func(p *model.Plan) { with(t, p, "section[5].string[10].length", "100 m") }},
	} {
		plan := demo(t, "ottermast-2")
		if stops(plan, c.section) {
			t.Fatalf("section %d stops before", c.section)
		}
		c.edit(plan)
		if !stops(plan, c.section) {
			t.Errorf("%s: no finding of section %d stops", c.what, c.section)
		}
	}
}

// TestRatholeOfTheUnderreamerStaysOpenBelow follows 110 ft of 18 1/8 in pilot hole, widened to 17 in no more.
func TestRatholeOfTheUnderreamerStaysOpenBelow(t *testing.T) {
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	var volume float64
	for _, f := range r.Sheet(3).Figures {
		if f.Name == "open hole, drill pipe" && f.Column == "" && f.Topic == model.TopicMud {
			volume += f.Value
		}
	}
	// 10800 to 10840 ft of 21 in, to 10950 ft of 18 1/8 in, to 13988.7 ft of 17 in, all round 6 5/8 in pipe.
	ring := func(d float64) float64 { return math.Pi / 4 * (d*d - 6.625*6.625) * inch * inch * foot }
	if want := 40*ring(21) + 110*ring(18.125) + 3038.7*ring(17); !near(volume, want, 1e-3) {
		t.Errorf("open hole round drill pipe = %.4f m3, want %.4f", volume, want)
	}
}

// TestInclinationOfAnOpenHoleSection: the hole has it, cased or not.
func TestInclinationOfAnOpenHoleSection(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[5].completion", "open hole")
	if got := value(t, calc.Evaluate(plan), 5, "hole.inclination"); !near(got, 32*math.Pi/180, 1e-9) {
		t.Errorf("inclination at TD = %g rad", got)
	}
}

// TestAStabilityLimitOverPartOfTheHole: rows without one leave nothing to compare with, and no number may be made of it.
func TestAStabilityLimitOverPartOfTheHole(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "prognosis.row[10].stability", "1.2 sg")
	with(t, plan, "prognosis.row[11].stability", "1.3 sg")
	for _, fault := range sound(plan, calc.Evaluate(plan)) {
		t.Error(fault)
	}
}

// TestAHoleThatClimbs: beyond level the deepest point is not TD.
func TestAHoleThatClimbs(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "trajectory.method", "survey list")
	for _, s := range []struct{ depth, inclination string }{{"1000 m", "0 deg"}, {"2000 m", "80 deg"}, {"3000 m", "100 deg"}, {"3690 m", "110 deg"}} {
		var row model.Survey
		plan.Surveys = append(plan.Surveys, row)
		at := "trajectory.survey[" + string(rune('0'+len(plan.Surveys))) + "]."
		with(t, plan, at+"depth", s.depth)
		with(t, plan, at+"inclination", s.inclination)
		with(t, plan, at+"azimuth", "0 deg")
	}
	r := calc.Evaluate(plan)
	for _, fault := range sound(plan, r) {
		t.Error(fault)
	}
	for _, f := range r.Sheet(4).Figures {
		if !f.OK && f.Mend == "" {
			t.Errorf("%s is blank (%s) and names no entry to mend", f.Key, f.Why)
		}
	}
}

// TestTheLowPressureHousingIsNotAboveTheHighPressureOne: the bores of the two would overlap and count twice.
func TestTheLowPressureHousingIsNotAboveTheHighPressureOne(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "wellhead.datum_above_mudline", "1 m") // the low-pressure housing stands 2.4 m above the mudline
	r := calc.Evaluate(plan)
	total := figure(t, r, 3, "volume.bottoms_up_rig")
	last := 0.0
	for _, f := range r.Sheet(2).Figures {
		if !strings.HasPrefix(f.Key, "volume.annulus.") {
			continue
		}
		if f.Column == "from" && f.Value < last-1e-6 && total.OK {
			t.Errorf("%s begins at %g m, above the end of the last at %g m", f.Key, f.Value, last)
		}
		if f.Column == "to" {
			last = f.Value
		}
	}
	if !slices.ContainsFunc(r.Findings, func(f calc.Finding) bool { return f.Section == -1 && f.Severity == calc.Stop }) {
		t.Error("no finding stops at the wellhead")
	}
}

// TestWhatIsNotKnownIsSaid: a connector that nobody entered, and a prognosis that begins in the water.
func TestWhatIsNotKnownIsSaid(t *testing.T) {
	says := func(plan *model.Plan, section int, path model.Path) bool {
		return slices.ContainsFunc(calc.Evaluate(plan).Findings, func(f calc.Finding) bool {
			return f.Section == section-1 && f.Severity > calc.OK && f.Mend == path
		})
	}
	plan := demo(t, "ottermast-2")
	for _, path := range []model.Path{"section[1].casing[1].connector_od", "prognosis.row[1].depth"} {
		if says(plan, 1, path) || says(plan, 0, path) {
			t.Errorf("%s is found fault with before", path)
		}
	}
	plan.Sections[0].Casing[0].ConnectorOD = quantity.Value{}
	if !says(plan, 1, "section[1].casing[1].connector_od") {
		t.Error("a conductor's connector that is not known is not said")
	}
	with(t, plan, "well.water_depth", "400 m")
	if !says(plan, 0, "prognosis.row[1].depth") {
		t.Error("a prognosis that begins above the seabed is not said")
	}
	with(t, plan, "section[5].td", "4000 m")
	if !says(plan, 5, "prognosis.row[15].depth") {
		t.Error("the section that the prognosis does not reach is not named")
	}
}
