package model_test

import (
	"maps"
	"reflect"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// TestACloneSharesNothing: a copy is equal, and whatever is done to each of its entries and lists leaves the plan as it was.
func TestACloneSharesNothing(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		if len(plan.Sections[2].Joints) == 0 {
			plan.Sections[2].Joints = []model.Joint{{}}
		}
		before, trial := picture(plan), plan.Clone()
		if !reflect.DeepEqual(plan, trial) {
			t.Fatalf("%s: the copy differs", name)
		}
		var lists []model.Change
		entries := 0
		model.Walk(trial, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				r := model.Ref{Group: g, Field: f, Place: at}
				r.Set(trial, model.Entry{Quantity: quantity.Value{SI: 12345, Unit: 1}, Text: "other"})
				entries++
			}
			if g.List {
				lists = append(lists, model.Removing(g, at))
			}
			return true
		})
		for k := len(lists) - 1; k >= 0; k-- {
			var h model.History
			h.Do(trial, model.Edit{Changes: lists[k : k+1]})
		}
		if !maps.Equal(picture(plan), before) {
			t.Errorf("%s: the plan changed with its copy", name)
		}
		if maps.Equal(picture(trial), before) || entries < 500 {
			t.Errorf("%s: only %d entries of the copy were changed", name, entries)
		}
	}
}

func TestACloneOfNothing(t *testing.T) {
	if c := new(model.Plan).Clone(); !reflect.DeepEqual(c, new(model.Plan)) {
		t.Errorf("%+v", c)
	}
}

func BenchmarkClone(b *testing.B) {
	plan := demo(b, plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		plan.Clone()
	}
}
