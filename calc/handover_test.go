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

// standsAt says that a section, counted from 1, is in work with its hole at a depth in m.
func standsAt(t testing.TB, plan *model.Plan, section int, hole float64) {
	t.Helper()
	with(t, plan, "status.section", fmt.Sprint(section))
	with(t, plan, "status.hole", fmt.Sprintf("%.9f m", hole))
}

// nowOf lists figures of the handover with those of the section that they are at TD.
var nowOf = map[string]string{
	"mud.most": "control.mud.most", "maasp": "control.maasp", "maasp.circulating": "control.maasp.circulating", "ecd": "hydraulics.ecd.td", "ecd.margin": "hydraulics.margin",
	"tolerance": "control.tolerance", "tolerance.swabbed": "control.tolerance.swabbed", "trip.out": "swab.limit.out.least", "trip.in": "swab.limit.in.least",
	"overpull": "drag.overpull", "standpipe": "hydraulics.standpipe", "standpipe.limit": "hydraulics.liner.fitted.limit", "primary": "mud.margin.pore",
	"shoe_stands": "control.shoe", "rams": "control.stack.rams", "slow": "control.kill.slow", "line": "control.line", "trapped": "control.trapped",
	"column.bit": "mud.emw.td.pressure", "column.bit.emw": "mud.emw.td", "string.hook": "string.hook_load", "dynamic": "control.dynamic.flow",
}

// TestAtTDTheLimitsAreTheSections: with the hole at TD the figures of the handover are those of the section's pages.
func TestAtTDTheLimitsAreTheSections(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		planned := calc.Evaluate(plan)
		for i := range plan.Sections {
			standsAt(t, plan, i+1, figure(t, planned, i+1, "hole.td").Value)
			r, compared := calc.Evaluate(plan), 0
			for now, key := range nowOf {
				want, ok := planned.Sheet(i).Find(key)
				got, also := r.Well.Find("handover." + now)
				if ok != also {
					t.Errorf("section %d: %s is there %v, of the handover %v", i+1, key, ok, also)
				}
				if !ok || !also {
					continue
				}
				if compared++; want.OK != got.OK || math.Abs(want.Value-got.Value) > 1e-6*math.Max(1, math.Abs(want.Value)) {
					t.Errorf("section %d: %s is %g (%v), of the handover %g (%v, %s)", i+1, key, want.Value, want.OK, got.Value, got.OK, got.Why)
				}
			}
			if compared < 6 {
				t.Errorf("section %d: only %d figures", i+1, compared)
			}
		}
	})
}

// TestToleranceNowIsTheCharts: with the hole on its way down the tolerance is what the chart of tolerance against depth shows there.
func TestToleranceNowIsTheCharts(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		compared := 0
		for i := range plan.Sections {
			for _, chart := range calc.Charts(plan, i, model.TopicControl) {
				if chart.Key != "control.tolerance.depth" {
					continue
				}
				own := plan.Clone()
				for _, n := range []int{7, 15} {
					at := chart.Curves[0].Points[n]
					if math.IsNaN(at.Value) {
						continue
					}
					standsAt(t, own, i+1, at.At)
					got := figure(t, calc.Evaluate(own), 0, "handover.tolerance")
					const rounded = 0.1 // m3, down
					if compared++; !got.OK || got.Value > at.Value+1e-6 || got.Value < at.Value-rounded-1e-6 {
						t.Errorf("section %d at %g m: %g (%s), the chart has %g", i+1, at.At, got.Value, got.Why, at.Value)
					}
				}
			}
		}
		if compared < 3 {
			t.Errorf("only %d points", compared)
		}
	})
}

// TestTheProgramsOwnIsHiddenUntilTheReliefHasEnteredHis, and then compared by the rules.
func TestTheProgramsOwnIsHiddenUntilTheReliefHasEnteredHis(t *testing.T) {
	plan := demo(t, "ottermast-2")
	standsAt(t, plan, 4, 2900)
	own := calc.Evaluate(plan)
	for _, key := range []string{"to_bit", "bottoms_up", "kill_mud", "icp"} {
		for _, column := range []string{"", ".program", ".differs"} {
			if f := figure(t, own, 0, "handover.check."+key+column); f.OK || f.Why == "" || f.Mend != "handover" {
				t.Errorf("no handover: %s is %+v", f.Key, f)
			}
		}
	}
	plan.Handovers = []model.Handover{{From: "A. Merrow", To: "B. Tansy"}}
	r := calc.Evaluate(plan)
	if f := figure(t, r, 0, "handover.check.to_bit.program"); f.OK || !strings.Contains(f.Why, "shown then") || f.Mend != "handover[1].to_bit" {
		t.Errorf("nothing entered: %+v", f)
	}
	if n := foundBy(r, model.RuleReliefChecks, calc.Caution); n != 2 {
		t.Errorf("%d findings on what the relief did not work out, want one on strokes and one on the kill", n)
	}
	with(t, plan, "handover[1].to_bit", "2100 stk")
	r = calc.Evaluate(plan)
	program := figure(t, r, 0, "handover.check.to_bit.program")
	if !program.OK || math.Abs(program.Value-figure(t, atTD(t, plan, 4, 2900), 4, "volume.string.strokes").Value) > 1e-6 {
		t.Errorf("entered: %+v", program)
	}
	if figure(t, r, 0, "handover.check.icp.program").OK {
		t.Error("the pressure is shown before it is entered")
	}
	for _, c := range []struct {
		key  string
		rule model.RuleID
		off  float64
		unit string
		want calc.Severity
	}{
		{"to_bit", model.RuleReliefStrokes, 0.009 * program.Value, "stk", calc.OK}, {"to_bit", model.RuleReliefStrokes, -0.011 * program.Value, "stk", calc.Caution},
		{"kill_mud", model.RuleReliefMud, 9, "kg/m3", calc.OK}, {"kill_mud", model.RuleReliefMud, 12, "kg/m3", calc.Caution},
		{"icp", model.RuleReliefPressure, -4.5e5, "Pa", calc.OK}, {"icp", model.RuleReliefPressure, 5.5e5, "Pa", calc.Caution},
	} {
		with(t, plan, "handover[1]."+c.key, map[string]string{"stk": "2100 stk", "kg/m3": "1.5 sg", "Pa": "20 bar"}[c.unit])
		mine := figure(t, calc.Evaluate(plan), 0, "handover.check."+c.key+".program").Value
		with(t, plan, "handover[1]."+c.key, fmt.Sprintf("%.6f %s", mine+c.off, c.unit))
		if foundBy(calc.Evaluate(plan), c.rule, c.want) == 0 {
			t.Errorf("%s off by %g %s: not %v", c.key, c.off, c.unit, c.want)
		}
	}
}

// atTD evaluates a copy whose section ends at a depth in m.
func atTD(t *testing.T, plan *model.Plan, section int, td float64) *calc.Result {
	own := plan.Clone()
	own.Sections[section-1].DepthBy = model.ByTD
	own.Sections[section-1].TD = quantity.Of(td, quantity.Metre)
	return calc.Evaluate(own)
}

// found counts the findings of a rule with a severity.
func foundBy(r *calc.Result, id model.RuleID, severity calc.Severity) (n int) {
	for _, f := range r.Findings {
		if f.Key == model.Rules()[id].Key && f.Severity == severity {
			n++
		}
	}
	return n
}

// TestBlanksOfAHandoverSayWhatIsMissing: every blank figure names an entry or says why.
func TestBlanksOfAHandoverSayWhatIsMissing(t *testing.T) {
	for _, c := range []struct{ path, text, figure, why string }{
		{"status.weather", "calm", "handover.section", "no section is in work"},
		{"status.section", "9", "handover.section", "no section of the number"},
		{"status.section", "3", "handover.hole", "hole depth now is blank"},
		{"status.hole", "900 m", "handover.hole", ""},
		{"status.step", "fly", "handover.step", "no operation \"fly\""},
		{"status.hole", "1500 m", "handover.maasp", ""},
		{"status.bit", "1600 m", "handover.bit", "deeper than the hole"},
	} {
		plan := demo(t, "ottermast-2")
		if c.path != "status.weather" && c.path != "status.section" {
			with(t, plan, "status.section", "3")
		}
		if c.path == "status.bit" {
			with(t, plan, "status.hole", "1500 m")
		}
		with(t, plan, c.path, c.text)
		f := figure(t, calc.Evaluate(plan), 0, c.figure)
		if f.OK != (c.why == "") || !strings.Contains(f.Why, c.why) || !f.OK && f.Mend == "" {
			t.Errorf("%s = %q: %+v", c.path, c.text, f)
		}
	}
}

// TestStepsAhead: of what is being drilled the rest counts, what follows is laid end to end, and the list ends with the time.
func TestStepsAhead(t *testing.T) {
	plan := demo(t, "ottermast-2")
	standsAt(t, plan, 3, 2000)
	with(t, plan, "status.step", "drill")
	r := calc.Evaluate(plan)
	list, why := r.StepsAhead(plan, 48*3600)
	if why != "" || len(list) < 3 || list[0].Step.Key != "drill" {
		t.Fatalf("%d steps, %s", len(list), why)
	}
	s := list[0].Step
	if want := s.Likely * (s.HoleTo - 2000) / (s.HoleTo - s.HoleFrom); math.Abs(list[0].To-want) > 1e-6 {
		t.Errorf("drilling is over in %g s, want %g", list[0].To, want)
	}
	for k := 1; k < len(list); k++ {
		if list[k].From != list[k-1].To || list[k].From >= 48*3600 {
			t.Errorf("step %d begins at %g", k, list[k].From)
		}
	}
	if _, why := r.StepsAhead(demo(t, "ottermast-2"), 3600); why == "" {
		t.Error("steps ahead of no section")
	}
}

// TestWorkingsOfAHandover: a figure that is taken from the well as it stands shows how it was got there.
func TestWorkingsOfAHandover(t *testing.T) {
	plan := demo(t, "ottermast-2")
	standsAt(t, plan, 4, 2900)
	plan.Handovers = []model.Handover{{From: "A. Merrow", To: "B. Tansy", ToBit: quantity.Of(2000, quantity.Stroke)}}
	for _, f := range calc.Evaluate(plan).Well.Figures {
		if !strings.HasPrefix(f.Key, "handover.") || !f.OK {
			continue
		}
		w, ok := calc.Explain(plan, -1, f.Key)
		if !ok || w.Formula == "" || w.Source == "" || w.Figure.Key != f.Key {
			t.Errorf("%s: %+v", f.Key, w)
		}
	}
}

// TestAtThePresentDepthNothingElseIsMissed: what would be wrong with a section that ended where its hole is now is not found.
func TestAtThePresentDepthNothingElseIsMissed(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		planned := calc.Evaluate(plan)
		for i := range plan.Sections {
			standsAt(t, plan, i+1, figure(t, planned, i+1, "hole.start").Value+3)
			for _, f := range calc.Evaluate(plan).Present {
				if !f.HasLimit {
					t.Errorf("section %d: %s (%s)", i+1, f.Text, f.Mend)
				}
			}
		}
	})
}

// TestStrokesToBumpAreComparedAtTD, for which the job is planned, with those of the cement page.
func TestStrokesToBumpAreComparedAtTD(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Handovers = []model.Handover{{From: "A. Merrow", To: "B. Tansy", ToBump: quantity.Of(6900, quantity.Stroke)}}
	standsAt(t, plan, 4, 3000)
	if f := figure(t, calc.Evaluate(plan), 0, "handover.check.to_bump.program"); f.OK || f.Mend != "status.hole" {
		t.Errorf("off TD: %+v", f)
	}
	standsAt(t, plan, 4, 3250)
	r := calc.Evaluate(plan)
	got, want := figure(t, r, 0, "handover.check.to_bump.program"), figure(t, r, 4, "cement.displacement.strokes")
	if !got.OK || got.Value != want.Value {
		t.Errorf("at TD: %g (%s), the cement page has %g", got.Value, got.Why, want.Value)
	}
	if w, ok := calc.Explain(plan, -1, got.Key); !ok || w.Formula == "" {
		t.Errorf("no working: %+v", w)
	}
}
