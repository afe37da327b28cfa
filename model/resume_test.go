package model_test

import (
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/plans"
)

// TestWhatIsResumedIsLoggedAsIfNothingHadHappened: whatever is done, a plan whose rows were entered for safekeeping, and taken out
// again by another run of the program, comes to the same plan and the same log when it is saved.
func TestWhatIsResumedIsLoggedAsIfNothingHadHappened(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, rapid.SampledFrom(plans.Names()).Draw(rt, "plan"))
		plan.Sections = plan.Sections[:1] // a whole plan takes its time
		var h model.History
		work := func(most int) {
			for range rapid.IntRange(0, most).Draw(rt, "steps") {
				switch rapid.SampledFrom([]string{"do", "do", "undo", "mark", "why", "save"}).Draw(rt, "step") {
				case "do":
					h.Do(plan, anyLoggedEdit(rt, plan))
				case "undo":
					h.Undo(plan)
				case "mark":
					h.Mark(model.MarkHandover, "", noTime)
				case "why":
					h.Explain("because")
				case "save":
					h.Enter(plan, "A. Person", noTime)
					h.Saved()
				}
			}
		}
		work(12)
		if rapid.Bool().Draw(rt, "outside") {
			ref, _ := model.Find(plan, "well.author")
			ref.Set(plan, model.Entry{Text: "somebody else"})
		}
		kept := plan.Clone()
		n := model.EnterRows(kept, h.Pending(), "", noTime)
		var again model.History
		again.Resume(kept, n)
		if !again.Dirty() || !slices.Equal(again.Pending(), h.Pending()) || !slices.Equal(kept.Log, plan.Log) {
			rt.Fatalf("pending %v\nwant %v", again.Pending(), h.Pending())
		}
		edit := anyLoggedEdit(rt, plan)
		h.Do(plan, edit)
		again.Do(kept, edit)
		h.Enter(plan, "B. Person", noTime)
		again.Enter(kept, "B. Person", noTime)
		if !slices.Equal(kept.Log, plan.Log) || !maps.Equal(entries(kept), entries(plan)) {
			rt.Fatalf("log %v\nwant %v", kept.Log, plan.Log)
		}
	})
}

// TestEveryChangeOfWhatASaveWritesIsANewRevision, or it would not be kept against a crash.
func TestEveryChangeOfWhatASaveWritesIsANewRevision(t *testing.T) {
	plan := demo(t, plans.Default)
	var h model.History
	seen := map[int]string{h.Revision(): "at first"}
	step := func(name string, act func()) {
		act()
		if before, ok := seen[h.Revision()]; ok {
			t.Errorf("%s is the revision of %s", name, before)
		}
		seen[h.Revision()] = name
	}
	step("do", func() { h.Do(plan, set(t, plan, "well.air_gap", "31 m")) })
	step("undo", func() { h.Undo(plan) })
	step("redo", func() { h.Redo(plan) })
	step("explain", func() { h.Explain("because") })
	step("explain a row", func() { h.ExplainRow(h.Pending()[0], "for a reason") })
	step("mark", func() { h.Mark(model.MarkBaseline, "", noTime) })
	step("save", func() { h.Enter(plan, "A. Person", noTime); h.Saved() })
	step("explain what is logged", func() { h.ExplainLogged(plan, 0, 1, "again") })
	step("unsaved", func() { h.Unsaved() })
	step("resume", func() { h.Resume(plan, 1) })
}
