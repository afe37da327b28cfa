package calc_test

import (
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/plans"
)

// demo returns one of the embedded demo plans, to be changed at will.
func demo(t testing.TB, name string) *model.Plan {
	t.Helper()
	return calc.Demo(t, name)
}

// entry finds an entry of the plan by its path.
func entry(t testing.TB, plan *model.Plan, path string) model.Ref {
	t.Helper()
	ref, ok := model.Find(plan, model.Path(path))
	if !ok {
		t.Fatalf("the plan has no entry %s", path)
	}
	return ref
}

// with enters text at a path; an empty text blanks the entry.
func with(t testing.TB, plan *model.Plan, path, text string) {
	t.Helper()
	ref := entry(t, plan, path)
	e, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatalf("%s = %q: %v", path, text, err)
	}
	ref.Set(plan, e)
}

// figure returns a figure of a section, counted from 1, or of the well for 0; it must be there.
func figure(t testing.TB, r *calc.Result, section int, key string) calc.Figure {
	t.Helper()
	f, ok := r.Sheet(section - 1).Find(key)
	if !ok {
		t.Fatalf("section %d has no figure %s", section, key)
	}
	return f
}

// value returns the value of a figure of a section, counted from 1, that must have been computed.
func value(t testing.TB, r *calc.Result, section int, key string) float64 {
	t.Helper()
	f := figure(t, r, section, key)
	if !f.OK {
		t.Fatalf("section %d %s is blank: %s (%s)", section, key, f.Why, f.Mend)
	}
	return f.Value
}

// valueOn is value on one sheet.
func valueOn(t testing.TB, sheet *calc.Sheet, key string) float64 {
	t.Helper()
	f, ok := sheet.Find(key)
	if !ok || !f.OK {
		t.Fatalf("%s is not there or blank: %s (%s)", key, f.Why, f.Mend)
	}
	return f.Value
}

// findings returns the findings of a section, counted from 1, with a rule's key.
func findings(r *calc.Result, section int, key string) (list []calc.Finding) {
	for _, f := range r.Findings {
		if f.Section == section-1 && f.Key == key {
			list = append(list, f)
		}
	}
	return list
}

// worst returns the most severe finding of a section with a rule's key; there must be one.
func worst(t testing.TB, r *calc.Result, section int, key string) calc.Finding {
	t.Helper()
	list := findings(r, section, key)
	if len(list) == 0 {
		t.Fatalf("section %d has no finding %s", section, key)
	}
	at := list[0]
	for _, f := range list {
		if f.Severity > at.Severity {
			at = f
		}
	}
	return at
}

// eachDemo runs a test on each demo plan.
func eachDemo(t *testing.T, run func(t *testing.T, name string)) {
	t.Helper()
	for _, name := range plans.Names() {
		t.Run(name, func(t *testing.T) { run(t, name) })
	}
}
