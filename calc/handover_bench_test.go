package calc_test

import (
	"testing"

	"borewalk/calc"
)

// BenchmarkEvaluateOnWatch is the whole of the five-section demo with its fourth section in work: what it takes more than without is
// the well as it stands.
func BenchmarkEvaluateOnWatch(b *testing.B) {
	plan := demo(b, "ottermast-2")
	standsAt(b, plan, 4, 2900)
	for b.Loop() {
		calc.Evaluate(plan)
	}
}
