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
