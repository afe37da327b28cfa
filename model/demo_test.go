package model_test

import (
	"testing"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
)

// demo reads one of the embedded demo plans afresh.
func demo(t testing.TB, name string) *model.Plan {
	t.Helper()
	text, ok := plans.Demo(name)
	if !ok {
		t.Fatalf("there is no demo plan %q", name)
	}
	file, err := planfile.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	return file.Plan
}

// everyGroup calls visit for every group of fields, outer ones first.
func everyGroup(visit func(*model.Group)) {
	var down func([]*model.Group)
	down = func(groups []*model.Group) {
		for _, g := range groups {
			visit(g)
			down(g.Lists)
		}
	}
	down(model.Groups())
}
