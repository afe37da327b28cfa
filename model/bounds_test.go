package model_test

import (
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/model/jointfile"
	"borewalk/model/pointfile"
)

// TestBoundsAreOfListsThatThereAre: a list that was renamed must not lose its bound, and what is read from a file must fit.
func TestBoundsAreOfListsThatThereAre(t *testing.T) {
	bounded := map[string]bool{}
	var look func(groups []*model.Group)
	look = func(groups []*model.Group) {
		for _, g := range groups {
			if g.List {
				bounded[g.Path()] = true
			}
			look(g.Lists)
		}
	}
	look(model.FileGroups())
	for _, name := range model.BoundedLists() {
		if !bounded[name] {
			t.Errorf("%s is bounded, and there is no such list", name)
		}
	}
	if most := model.JointList().Most(); most < jointfile.MaxJoints {
		t.Errorf("a section takes %d joints, a file gives %d", most, jointfile.MaxJoints)
	}
	if most := model.TestPointList().Most(); most < pointfile.MaxPoints {
		t.Errorf("a section takes %d readings, a file gives %d", most, pointfile.MaxPoints)
	}
}

func TestOverfull(t *testing.T) {
	plan := &model.Plan{Sections: make([]model.Section, 6)}
	sections, joints := model.SectionGroup(), model.JointList()
	add := func(g *model.Group, at model.Place, n int) (edit model.Edit) {
		for range n {
			edit.Changes = append(edit.Changes, model.Adding(g, at))
		}
		return edit
	}
	in := func(section int) model.Place { return model.Place{Outer: section} }
	for i := range 3 {
		plan.Sections[i].Joints = make([]model.Joint, joints.Most())
	}
	plan.Sections[3].Joints = make([]model.Joint, joints.Most()-10)
	away := model.Edit{Changes: append([]model.Change{model.Removing(joints, in(0))}, add(joints, in(0), 2).Changes...)}
	one := model.Edit{Changes: append([]model.Change{model.Removing(joints, in(0))}, add(joints, in(0), 1).Changes...)}
	for _, c := range []struct {
		name string
		edit model.Edit
		want string
	}{
		{"the last section that fits", add(sections, in(0), sections.Most()-6), ""},
		{"one more", add(sections, in(0), sections.Most()-5), "at most 30 rows of Section, and there are 6"},
		{"the last joint that fits", add(joints, in(3), 10), ""},
		{"one more in the section", add(joints, in(3), 11), "at most 2000 rows of Joint, and there are 1990"},
		{"one more in another", add(joints, in(4), 11), "at most 8000 rows of Joint in all"},
		{"one in place of another", one, ""},
		{"two in place of one", away, "at most 2000 rows of Joint, and there are 2000"},
		{"none", model.Edit{}, ""},
	} {
		got := c.edit.Overfull(plan)
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
