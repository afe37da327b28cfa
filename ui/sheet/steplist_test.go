package sheet_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/sheet"
)

// TestStepLists holds the step list of every section of both demos: they are read as a drilling supervisor would read them.
func TestStepLists(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		plan := demo(t, name)
		o := options(plan)
		o.Paper = sheet.StepList
		for i := range plan.Sections {
			o.Section = i
			golden(t, filepath.Join("steps", fmt.Sprintf("%s_%d.txt", name, i+1)), write(t, plan, o))
		}
	}
}

// TestEveryStepHasItsBox: each operation stands on the list once with what is done, by whom and when somebody is called, and has a box
// to tick unless it is struck.
func TestEveryStepHasItsBox(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[2].Steps = append(plan.Sections[2].Steps, model.StepRow{Step: "pull_out", Struck: model.Struck})
	o := options(plan)
	o.Section, o.Paper = 2, sheet.StepList
	text := write(t, plan, o)
	steps := calc.Evaluate(plan).Steps[2]
	if got, want := strings.Count(text, "[ ] done"), len(steps)-1; got != want {
		t.Errorf("%d boxes, want %d", got, want)
	}
	if !strings.Contains(text, "struck: Pull out") || !strings.Contains(text, "not done, by the plan") {
		t.Error("a struck step is not marked")
	}
	for _, s := range steps {
		if len(s.Stops) == 0 || len(s.Contingency) == 0 || s.Do == "" || s.Who == "" {
			t.Errorf("%s lacks what is done, by whom, a stop point or a contingency", s.Key)
		}
	}
}
