package model_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
)

// TestTheLogFollowsAnEntryThroughRowsThatMove: whatever sections come and go above it, what was done to an entry is found.
func TestTheLogFollowsAnEntryThroughRowsThatMove(t *testing.T) {
	base := demo(t, "ottermast-2")
	rapid.Check(t, func(rt *rapid.T) {
		plan := base.Clone()
		var h model.History
		at, seen := 2, 0
		for range rapid.IntRange(1, 8).Draw(rt, "steps") {
			n := len(plan.Sections)
			switch rapid.SampledFrom([]string{"set", "add", "remove"}).Draw(rt, "step") {
			case "set":
				h.Do(plan, model.Edit{Why: "because", Changes: []model.Change{anyOther(plan, at, seen)}})
				seen++
			case "add":
				i := rapid.IntRange(0, n).Draw(rt, "row")
				h.Do(plan, model.Edit{Changes: []model.Change{model.Adding(model.SectionGroup(), model.Place{Outer: i})}})
				if i <= at {
					at++
				}
			case "remove":
				if i := rapid.IntRange(0, n-1).Draw(rt, "row"); i != at {
					h.Do(plan, model.Edit{Changes: []model.Change{model.Removing(model.SectionGroup(), model.Place{Outer: i})}})
					if i < at {
						at--
					}
				}
			}
			h.Enter(plan, "A. Person", noTime) // a save each, so that no rows are joined
			h.Saved()
		}
		got := model.LoggedFor(plan.Log, model.PathOf(at, "hazards_noted"))
		if len(got) != 0 {
			rt.Fatalf("rows for what is no entry: %+v", got)
		}
		got = model.LoggedFor(plan.Log, model.PathOf(at, "name"))
		if len(got) != seen || !slices.IsSortedFunc(got, func(a, b model.LogRow) int { return len(b.New) - len(a.New) }) {
			rt.Fatalf("%d rows of %d: %+v", len(got), seen, got)
		}
		if want := map[bool]string{true: "because"}[seen > 0]; model.Whys(got) != want {
			rt.Fatalf("why: %q", model.Whys(got))
		}
	})
}

// anyOther names a section by one letter more than before.
func anyOther(plan *model.Plan, section, n int) model.Change {
	ref, _ := model.Find(plan, model.PathOf(section, "name"))
	return model.Setting(plan, ref, model.Entry{Text: "name" + string(slices.Repeat([]byte{'x'}, n+1))})
}

// TestALogEndsWhereARowBegan: what an earlier row of the same number was given is not this one's.
func TestALogEndsWhereARowBegan(t *testing.T) {
	rows := []model.LogRow{
		{What: model.LogSet, Path: "formation[2].name", New: "old"},
		{What: model.LogRemove, Path: "formation[2]"},
		{What: model.LogAdd, Path: "formation[2]"},
		{What: model.LogSet, Path: "formation[2].name", New: "new"},
	}
	if got := model.LoggedFor(rows, "formation[2].name"); len(got) != 1 || got[0].New != "new" {
		t.Errorf("%+v", got)
	}
	if got := model.LoggedFor(rows, "formation[2]"); len(got) != 1 || got[0].What != model.LogAdd {
		t.Errorf("%+v", got)
	}
	if got := model.LoggedFor(rows[:2], "formation[2].name"); len(got) != 0 {
		t.Errorf("the next row has moved up and was never set: %+v", got)
	}
}
