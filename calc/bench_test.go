package calc_test

import (
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// BenchmarkEvaluate computes the five-section demo. The budget is 6 ms on a small machine: it runs on every key that
// changes an entry, and a sweep runs it a hundred times.
func BenchmarkEvaluate(b *testing.B) {
	plan := demo(b, plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		calc.Evaluate(plan)
	}
}

// BenchmarkExplain computes the working of one figure, which is a whole run with one working written out.
func BenchmarkExplain(b *testing.B) {
	plan := demo(b, plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		calc.Explain(plan, 2, "mud.margin.pore")
	}
}

// BenchmarkEvaluateBuilt computes the demo with a section that came to be otherwise than planned: beside the run the plan as it was
// is worked out as far as the page needs it.
func BenchmarkEvaluateBuilt(b *testing.B) {
	plan := demo(b, plans.Default)
	with(b, plan, "section[3].built.td", "2161 m")
	with(b, plan, "section[3].built.shoe", "2134 m")
	with(b, plan, "section[3].built.bump_pressure", "95 bar")
	b.ReportAllocs()
	for b.Loop() {
		calc.Evaluate(plan)
	}
}

// BenchmarkEvaluateAtTheBounds computes the demo with as many survey stations, formations, measured diameters and drag readings as a plan
// may have. The budget is half a second: a keystroke must stay bearable.
func BenchmarkEvaluateAtTheBounds(b *testing.B) {
	plan := demo(b, plans.Default)
	group := func(path model.Path) *model.Group {
		g, _, ok := model.FindList(plan, path)
		if !ok {
			b.Fatalf("no list %s", path)
		}
		return g
	}
	plan.Trajectory.Method, plan.Surveys = model.SurveyList, nil
	most := group("trajectory.survey").Most()
	for k := range most {
		m := quantity.Value{SI: 400 + 4000*float64(k)/float64(most), Unit: quantity.Metre}
		slant := quantity.Value{SI: min(0.5, m.SI*1e-4), Unit: quantity.Degree}
		plan.Surveys = append(plan.Surveys, model.Survey{Depth: m, Inclination: slant, Azimuth: slant})
	}
	for len(plan.Formations) < group("formation").Most() {
		plan.Formations = append(plan.Formations, plan.Formations[0])
	}
	last := &plan.Sections[len(plan.Sections)-1]
	for k := range group("section[1].caliper").Most() {
		at := quantity.Value{SI: 3260 + 0.2*float64(k), Unit: quantity.Metre}
		last.Caliper = append(last.Caliper, model.CaliperRow{Depth: at, Diameter: last.Hole})
	}
	for len(last.DragReadings) < group("section[1].drag_reading").Most() {
		last.DragReadings = append(last.DragReadings, last.DragReadings...)
	}
	last.DragReadings = last.DragReadings[:group("section[1].drag_reading").Most()]
	for b.Loop() {
		calc.Evaluate(plan)
	}
}
