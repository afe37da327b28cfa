package calc

import (
	"strings"
	"sync"
	"testing"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
)

// What tests of this package and tests beside it share. A test costs what it works out: it takes no more than it looks at.

// opened holds the demo plans as they were read, each once.
var opened sync.Map

// Demo returns one of the embedded demo plans, to be changed at will.
func Demo(t testing.TB, name string) *model.Plan {
	t.Helper()
	read, ok := opened.Load(name)
	if !ok {
		text, known := plans.Demo(name)
		if !known {
			t.Fatalf("there is no demo plan %q", name)
		}
		file, err := planfile.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		read, _ = opened.LoadOrStore(name, file.Plan)
	}
	return read.(*model.Plan).Clone()
}

// Alone returns the sheet of one section, counted from zero, or the well's for -1: the one that [Evaluate] gives, without the
// others.
func Alone(plan *model.Plan, section int) *Sheet {
	return runPages(plan, section, nil).result.Sheet(section)
}

// Workings returns the working of every figure of a sheet, from one run instead of an [Explain] for each.
func Workings(plan *model.Plan, section int) []Working {
	wish := explanation{section: section, wants: func(string) bool { return true }}
	runPages(plan, section, &wish)
	return wish.workings
}

// StepFigures returns the keys of the figures that the texts of operations name, with the operation of each.
func StepFigures() map[string]string {
	keys := map[string]string{}
	for step, text := range stepTexts() {
		for _, figure := range text.figures {
			key, _, _ := strings.Cut(figure, " ")
			keys[key] = step
		}
	}
	return keys
}
