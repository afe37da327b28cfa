package calc_test

import (
	"testing"

	"borewalk/calc"
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
