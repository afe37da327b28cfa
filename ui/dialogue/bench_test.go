package dialogue_test

import (
	"testing"

	"borewalk/plans"
	"borewalk/ui/dialogue"
)

// BenchmarkEdit sets an entry and says what moved: three runs over the plan, and the comparison.
func BenchmarkEdit(b *testing.B) {
	d := open(b, plans.Default, dialogue.Options{})
	lines := []string{"section[3].density = 1.3 sg", "section[3].density = 1.25 sg"}
	for i := 0; b.Loop(); i++ {
		d.hear(lines[i%2])
	}
}
