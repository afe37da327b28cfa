package model_test

import (
	"fmt"
	"maps"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// picture is everything that a plan holds: the entries by path and the lengths of the lists.
func picture(plan *model.Plan) map[string]string {
	all := map[string]string{}
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			r := model.Ref{Group: g, Field: f, Place: at}
			e := r.Get(plan)
			all[string(r.Path())] = fmt.Sprintf("%q %v %v", e.Text, e.Quantity.SI, e.Quantity.Unit)
		}
		for _, list := range g.Lists {
			all[fmt.Sprintf("%s%v %s", g.Path(), at, list.Name)] = fmt.Sprint(list.Len(plan, at))
		}
		if g.List {
			all[fmt.Sprintf("%s%v origin", g.Path(), at)] = fmt.Sprint(*g.Origin(plan, at))
		}
		return true
	})
	for _, g := range model.Groups() {
		all[g.Name] = fmt.Sprint(g.Len(plan, model.Place{}))
	}
	return all
}

// anyEdit draws an edit of one to four changes that the plan can take, and applies it with the history. Changes of one
// edit must each fit the plan as the ones before leave it, so they are drawn against a copy.
func anyEdit(t *rapid.T, plan *model.Plan, h *model.History) {
	kind := rapid.SampledFrom([]string{"set", "set", "set", "add", "remove", "section", "several"}).Draw(t, "edit")
	var changes []model.Change
	switch kind {
	case "add":
		if g, at, n := anyList(t, plan); g != nil {
			changes = append(changes, model.Adding(g, g.At(at, rapid.IntRange(0, n).Draw(t, "row"))))
		}
	case "remove":
		if g, at, n := anyList(t, plan); g != nil && n > 0 {
			changes = append(changes, model.Removing(g, g.At(at, rapid.IntRange(0, n-1).Draw(t, "row"))))
		}
	case "section":
		s := model.Section{Name: "new", Casing: make([]model.CasingPart, rapid.IntRange(0, 2).Draw(t, "parts"))}
		changes = append(changes, model.AddingSection(rapid.IntRange(0, len(plan.Sections)).Draw(t, "row"), s))
	case "several":
		for range rapid.IntRange(2, 4).Draw(t, "changes") {
			changes = append(changes, anySetting(t, plan))
		}
		if n := len(plan.Sections); n > 1 {
			changes = append(changes, model.Removing(model.SectionGroup(), model.Place{Outer: n - 1}))
		}
	default:
		changes = append(changes, anySetting(t, plan))
	}
	h.Do(plan, model.Edit{Name: kind, Changes: changes})
}

func anySetting(t *rapid.T, plan *model.Plan) model.Change {
	var refs []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			refs = append(refs, model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
	ref := refs[rapid.IntRange(0, len(refs)-1).Draw(t, "entry")]
	e := model.Entry{Text: rapid.StringN(0, 5, -1).Draw(t, "text")}
	if ref.Field.Type == model.QuantityField {
		e = model.Entry{Quantity: quantity.Value{SI: rapid.Float64Range(0, 5000).Draw(t, "SI"), Unit: quantity.Metre}}
	}
	return model.Setting(plan, ref, e)
}

// anyList draws a list of the plan and the place of the row that holds it.
func anyList(t *rapid.T, plan *model.Plan) (g *model.Group, at model.Place, n int) {
	type found struct {
		g  *model.Group
		at model.Place
	}
	var lists []found
	for _, top := range model.Groups() {
		if top.List {
			lists = append(lists, found{top, model.Place{}})
		}
	}
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, list := range g.Lists {
			if list.List {
				lists = append(lists, found{list, at})
			}
		}
		return true
	})
	f := lists[rapid.IntRange(0, len(lists)-1).Draw(t, "list")]
	return f.g, f.at, f.g.Len(plan, f.at)
}

func TestWhateverIsDoneCanBeUndoneAndRedone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, rapid.SampledFrom(plans.Names()).Draw(rt, "plan"))
		var h model.History
		states := []map[string]string{picture(plan)}
		for range rapid.IntRange(1, 12).Draw(rt, "edits") {
			anyEdit(rt, plan, &h)
			states = append(states, picture(plan))
		}
		for i := len(states) - 2; i >= 0; i-- {
			if _, ok := h.Undo(plan); !ok {
				rt.Fatal("nothing to undo")
			}
			if !maps.Equal(picture(plan), states[i]) {
				rt.Fatalf("undone to state %d: %s", i, difference(picture(plan), states[i]))
			}
		}
		if _, ok := h.Undo(plan); ok {
			rt.Fatal("undone beyond the beginning")
		}
		if h.Dirty() {
			rt.Fatal("a plan with everything undone differs from its file")
		}
		for i := 1; i < len(states); i++ {
			if _, ok := h.Redo(plan); !ok {
				rt.Fatal("nothing to redo")
			}
			if !maps.Equal(picture(plan), states[i]) {
				rt.Fatalf("redone to state %d: %s", i, difference(picture(plan), states[i]))
			}
		}
		if _, ok := h.Redo(plan); ok {
			rt.Fatal("redone beyond the end")
		}
	})
}

// difference names one entry in which two pictures differ.
func difference(got, want map[string]string) string {
	for key := range want {
		if got[key] != want[key] {
			return fmt.Sprintf("%s is %s, want %s", key, got[key], want[key])
		}
	}
	for key := range got {
		if _, ok := want[key]; !ok {
			return key + " is new"
		}
	}
	return ""
}

// TestThePlanIsDirtyUnlessInTheSavedState walks at random and keeps its own account of which state the file holds.
func TestThePlanIsDirtyUnlessInTheSavedState(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, "ottermast-2")
		var h model.History
		next, line, at, saved := 1, []int{0}, 0, 0 // states by number: line is the way from the first to the last redo
		for range rapid.IntRange(1, 40).Draw(rt, "steps") {
			switch rapid.SampledFrom([]string{"do", "undo", "redo", "save"}).Draw(rt, "step") {
			case "do":
				anyEdit(rt, plan, &h)
				line = append(line[:at+1], next)
				at, next = at+1, next+1
			case "undo":
				if _, ok := h.Undo(plan); ok != (at > 0) {
					rt.Fatalf("undo %v with %d edits done", ok, at)
				} else if ok {
					at--
				}
			case "redo":
				if _, ok := h.Redo(plan); ok != (at < len(line)-1) {
					rt.Fatalf("redo %v at %d of %d", ok, at, len(line)-1)
				} else if ok {
					at++
				}
			case "save":
				h.Saved()
				saved = line[at]
			}
			if h.Dirty() != (line[at] != saved) {
				rt.Fatalf("dirty %v in state %d, the file holds %d", h.Dirty(), line[at], saved)
			}
		}
	})
}

// TestAnEditKeepsItsOwnRows: a row taken out, put back and edited is not the one that an earlier state holds.
func TestAnEditKeepsItsOwnRows(t *testing.T) {
	plan := demo(t, "ottermast-2")
	var h model.History
	first := picture(plan)
	h.Do(plan, model.Edit{Changes: []model.Change{model.Removing(model.SectionGroup(), model.Place{Outer: 2})}})
	h.Undo(plan)
	ref, _ := model.Find(plan, "section[3].casing[1].grade")
	ref.Set(plan, model.Entry{Text: "changed"})
	ref.Set(plan, model.Entry{Text: "P110"})
	h.Redo(plan)
	h.Undo(plan)
	if !maps.Equal(picture(plan), first) {
		t.Error(difference(picture(plan), first))
	}
}

func TestNamesOfWhatUndoAndRedoDo(t *testing.T) {
	plan := demo(t, "ottermast-2")
	var h model.History
	ref, _ := model.Find(plan, "well.name")
	for _, name := range []string{"one", "two"} {
		h.Do(plan, model.Edit{Name: name, Changes: []model.Change{model.Setting(plan, ref, model.Entry{Text: name})}})
	}
	h.Undo(plan)
	if undo, redo := h.Last(); undo != "one" || redo != "two" || plan.Well.Name != "one" {
		t.Errorf("undo %q, redo %q, well %q", undo, redo, plan.Well.Name)
	}
	same := model.Edit{Changes: []model.Change{model.Setting(plan, ref, model.Entry{Text: "one"})}}
	if same.Changed() {
		t.Error("an edit to the same content changes nothing")
	}
}
