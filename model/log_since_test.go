package model_test

import (
	"slices"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// TestASignedHandoverMarksItself: what was changed since then is what was logged behind the row that was signed; how the well stands is
// no change to the plan.
func TestASignedHandoverMarksItself(t *testing.T) {
	plan := demo(t, plans.Default)
	var h model.History
	set := func(path model.Path, text string, kind quantity.Kind) {
		t.Helper()
		ref, ok := model.Find(plan, path)
		if !ok {
			t.Fatalf("no %s", path)
		}
		v, err := quantity.Parse(text, kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		h.Do(plan, model.Edit{Name: "set", Changes: []model.Change{model.Setting(plan, ref, model.Entry{Quantity: v})}})
	}
	set("section[3].td", "2160 m", quantity.Length)
	list := model.HandoverList()
	at := list.At(model.Place{}, 0)
	from := model.Ref{Group: list, Field: list.Field("from"), Place: at}
	h.Do(plan, model.Edit{Name: "sign", Changes: []model.Change{model.Adding(list, at), {Kind: model.SetEntry, Ref: from, New: model.Entry{Text: "A. Person"}}}})
	if got := model.ChangesSince(plan, h.Pending()); len(got) != 0 {
		t.Errorf("just after the handover: %q", got)
	}
	set("section[3].density", "1.28 sg", quantity.Density)
	set("status.hole", "2000 m", quantity.Length)
	got := model.ChangesSince(plan, h.Pending())
	if want := []string{"section 3: Mud density: 1.25 sg to 1.28 sg"}; !slices.Equal(got, want) {
		t.Errorf("since the handover: %q, want %q", got, want)
	}
	h.Undo(plan)
	h.Undo(plan)
	h.Undo(plan) // of the handover
	if got := model.ChangesSince(plan, h.Pending()); !slices.Equal(got, []string{"section 3: Total depth of the bit, along hole: 2155 m to 2160 m"}) {
		t.Errorf("with the handover taken back: %q", got)
	}
}
