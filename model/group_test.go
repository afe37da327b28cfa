package model_test

import (
	"reflect"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

func TestPathsLeadBack(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		seen := map[model.Path]bool{}
		model.Walk(plan, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				ref := model.Ref{Group: g, Field: f, Place: at}
				if seen[ref.Path()] {
					t.Errorf("%s: %s stands twice", name, ref.Path())
				}
				seen[ref.Path()] = true
				if got, ok := model.Find(plan, ref.Path()); !ok || got != ref {
					t.Errorf("%s: Find(%s) = %+v, %v", name, ref.Path(), got, ok)
				}
			}
			return true
		})
		if len(seen) < 500 {
			t.Errorf("%s: only %d entries", name, len(seen))
		}
	}
}

func TestPathsThatLeadNowhere(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, path := range []model.Path{"", ".", "well", "well.", "well.depth", "wells.name", "section.td", "section[0].td", "section[6].td", "section[-1].td",
		"section[1].casing.size", "section[1].casing[2].size", "section[x].td", "section[99999999999999999999].td", "section[1].casing[1]", "section[1",
		"rig.pump[2].liner", "rig.pump", "prognosis.row[16].depth", "section[1].string[6].size", "section[1].td.td", "[1].td"} {
		if ref, ok := model.Find(plan, path); ok {
			t.Errorf("Find(%q) = %s", path, ref.Path())
		}
	}
	if got := model.PathOf(2, "td"); got != "section[3].td" {
		t.Errorf("PathOf(2, td) = %s", got)
	}
}

func TestPathsOfLists(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for path, at := range map[model.Path]model.Place{"section": {}, "rig.pump": {}, "prognosis.row": {}, "formation": {}, "section[2].casing": {Outer: 1},
		"section[5].string": {Outer: 4}} {
		g, got, ok := model.FindList(plan, path)
		if !ok || got != at || !g.List {
			t.Errorf("FindList(%s) = %v, %v, %v", path, g, got, ok)
		}
	}
	for _, path := range []model.Path{"", "well", "well.name", "section[6].casing", "section[0].casing", "section[1]", "section[1].td", "section.casing", "casing"} {
		if g, _, ok := model.FindList(plan, path); ok {
			t.Errorf("FindList(%q) = %s", path, g.Path())
		}
	}
}

func TestEntriesInWords(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for path, want := range map[model.Path]string{
		"well.air_gap":            "Air gap, rotary above MSL",
		"rig.pump[1].liner":       "pump 1: Liner",
		"section[3].string[2].id": "section 3, string part 2: ID",
	} {
		ref, ok := model.Find(plan, path)
		if got := ref.Words(); !ok || got != want {
			t.Errorf("%s in words is %q, want %q", path, got, want)
		}
	}
}

// TestWalkVisitsEveryLeafOfThePlan counts the quantities and texts of the plan by their types, rather than by what is
// declared: whatever the plan holds must be a field.
func TestWalkVisitsEveryLeafOfThePlan(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		// The choices of unit have room for kinds that have one unit only.
		want := leaves(reflect.ValueOf(*plan)) - len(plan.Units)
		got := 0
		model.Walk(plan, func(g *model.Group, _ model.Place) bool {
			if g.Name != "units" {
				got += len(g.Fields)
			}
			return true
		})
		if got != want {
			t.Errorf("%s: %d fields, the plan has %d leaves", name, got, want)
		}
	}
}

// leaves counts the quantities and texts in a value.
func leaves(v reflect.Value) (n int) {
	if v.Type() == reflect.TypeFor[quantity.Value]() || v.Kind() == reflect.String {
		return 1
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			n += leaves(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			n += leaves(v.Index(i))
		}
	}
	return n
}

// TestEveryLeafIsItsOwn: setting one entry changes that entry and no other.
func TestEveryLeafIsItsOwn(t *testing.T) {
	plan := demo(t, "ottermast-2")
	var refs []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			refs = append(refs, model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
	before := make([]model.Entry, len(refs))
	for i, r := range refs {
		before[i] = r.Get(plan)
	}
	for i, r := range refs {
		mark := model.Entry{Text: "mark"}
		if r.Field.Type == model.QuantityField {
			mark = model.Entry{Quantity: quantity.Value{SI: 12345.678, Unit: quantity.Metre}}
		}
		r.Set(plan, mark)
		if r.Get(plan) != mark {
			t.Errorf("%s does not keep what it is given", r.Path())
		}
		for k, other := range refs {
			if k != i && other.Get(plan) != before[k] {
				t.Errorf("%s changes %s", r.Path(), other.Path())
			}
		}
		r.Set(plan, before[i])
	}
}

func TestWalkStopsWhenTold(t *testing.T) {
	plan := demo(t, "ottermast-2")
	visits := 0
	model.Walk(plan, func(*model.Group, model.Place) bool {
		visits++
		return visits < 7
	})
	if visits != 7 {
		t.Errorf("%d visits, want 7", visits)
	}
}
