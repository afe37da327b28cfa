package calc_test

import (
	"strings"
	"testing"

	"borewalk/calc"
)

// deadStepFigures are the figures that operations name and that no section of a demo has, with the reason.
func deadStepFigures() map[string]string {
	return map[string]string{}
}

// TestFiguresOfStepsAreThere: every figure that an operation names is one of some section of some demo, so that a key that was
// renamed does not silently leave a number out.
func TestFiguresOfStepsAreThere(t *testing.T) {
	known := map[string]bool{}
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		for _, s := range calc.Evaluate(demo(t, name)).Sections {
			for _, f := range s.Figures {
				known[f.Key] = true
			}
		}
	}
	dead := deadStepFigures()
	for key, step := range calc.StepFigures() {
		if _, listed := dead[key]; known[key] == listed {
			t.Errorf("%s of %s: there %v, listed as dead %v", key, step, known[key], listed)
		}
	}
}

// TestNumbersOfStepsAreToldApart: no two numbers of an operation have the same name, and none is named as nothing.
func TestNumbersOfStepsAreToldApart(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		for i, list := range calc.Evaluate(demo(t, name)).Steps {
			for _, s := range list {
				seen := map[string]bool{}
				for _, n := range s.Numbers {
					if seen[n.Name] || strings.TrimSpace(n.Name) == "" {
						t.Errorf("%s, section %d, %s: %q twice", name, i+1, s.Key, n.Name)
					}
					seen[n.Name] = true
				}
			}
		}
	}
}
