package model_test

import (
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// TestEveryEntryIsInTheHash: to change, blank or remove anything changes it, and to put it back brings it back.
func TestEveryEntryIsInTheHash(t *testing.T) {
	plan := demo(t, plans.Default)
	plan.Sections = plan.Sections[2:3] // one has every kind of row, and five take five times as long
	was, seen, rows := model.Hash(plan), map[string]string{}, 0
	differs := func(what string) {
		now := model.Hash(plan)
		if other, ok := seen[now]; ok || now == was {
			t.Errorf("%s: the hash is that of %q", what, other)
		}
		seen[now] = what
	}
	var lists []model.Change
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			if g.List && g.Index(at) > 0 {
				continue // as in the first
			}
			ref := model.Ref{Group: g, Field: f, Place: at}
			entry := ref.Get(plan)
			other := model.Entry{Text: entry.Text + "x"}
			if f.Type == model.QuantityField {
				other = model.Entry{Quantity: quantity.Value{SI: entry.Quantity.SI + 1, Unit: 1}}
			}
			ref.Set(plan, other)
			differs(string(ref.Path()) + " changed")
			if entry.IsSet() && (f.Type != model.ChoiceField || entry.Text != f.Default) { // a choice left blank is its default
				ref.Set(plan, model.Entry{})
				differs(string(ref.Path()) + " blanked")
			}
			ref.Set(plan, entry)
		}
		if g.List {
			lists = append(lists, model.Removing(g, at))
		}
		return true
	})
	for _, change := range lists {
		rows++
		trial := plan.Clone()
		var h model.History
		h.Do(trial, model.Edit{Changes: []model.Change{change}})
		if model.Hash(trial) == was {
			t.Errorf("a row taken away leaves the hash as it was: %+v", change)
		}
	}
	if model.Hash(plan) != was || len(seen) < 200 || rows < 20 {
		t.Errorf("%d changes and %d rows were tried, and the hash of the plan as it was is %t", len(seen), rows, model.Hash(plan) == was)
	}
}

// TestTheUnitOfAnEntryIsInTheHash: 12 in is not 1 ft on a paper, nor in the hash.
func TestTheUnitOfAnEntryIsInTheHash(t *testing.T) {
	one, other := new(model.Plan), new(model.Plan)
	one.Well.AirGap = quantity.Of(12, quantity.Inch)
	other.Well.AirGap = quantity.Of(1, quantity.Foot)
	if one.Well.AirGap.SI != other.Well.AirGap.SI || model.Hash(one) == model.Hash(other) {
		t.Error("the unit is not in the hash")
	}
}
