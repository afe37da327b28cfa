package model_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// noTime is for what does not say when.
var noTime time.Time

// entries is what a plan holds, but for where its rows stood in a file.
func entries(plan *model.Plan) map[string]string {
	all := picture(plan)
	maps.DeleteFunc(all, func(key, _ string) bool { return strings.HasSuffix(key, " origin") })
	return all
}

// anyEntry draws a content that the field takes, as typed.
func anyEntry(t *rapid.T, f *model.Field) model.Entry {
	text := ""
	switch f.Type {
	case model.TextField:
		text = rapid.String().Draw(t, "text")
	case model.ChoiceField:
		text = rapid.SampledFrom(f.Choices).Draw(t, "choice")
	default:
		unit := quantity.NewSystem(rapid.SampledFrom(quantity.Sets()).Draw(t, "set"), nil).Unit(f.Kind)
		least, most := f.Min.SI, f.Max.SI
		if !f.Min.IsSet() && !f.Max.IsSet() {
			least, most = 0, 1000
		}
		if rapid.Bool().Draw(t, "filled") {
			text = quantity.Of(unit.FromSI(rapid.Float64Range(least, most).Draw(t, "value")), unit).Text()
		}
	}
	e, err := f.Parse(text, 0)
	if err != nil { // rounded beyond its range, or a count with decimals
		e = f.DefaultEntry()
	}
	return e
}

// anySet draws the setting of an entry to what it takes.
func anySet(t *rapid.T, plan *model.Plan) model.Change {
	var refs []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			refs = append(refs, model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
	ref := refs[rapid.IntRange(0, len(refs)-1).Draw(t, "entry")]
	return model.Setting(plan, ref, anyEntry(t, ref.Field))
}

// anyLoggedEdit draws an edit as people make them.
func anyLoggedEdit(t *rapid.T, plan *model.Plan) model.Edit {
	edit := model.Edit{When: time.Unix(rapid.Int64Range(0, 1<<31).Draw(t, "when"), 0)}
	switch kind := rapid.SampledFrom([]string{"set", "nudge", "add", "remove", "section", "several", "joints"}).Draw(t, "edit"); kind {
	case "add", "remove":
		g, at, n := anyList(t, plan)
		if kind == "add" {
			edit.Changes = append(edit.Changes, model.Adding(g, g.At(at, rapid.IntRange(0, n).Draw(t, "row"))))
		} else if n > 0 {
			edit.Changes = append(edit.Changes, model.Removing(g, g.At(at, rapid.IntRange(0, n-1).Draw(t, "row"))))
		}
	case "section":
		if n := len(plan.Sections); n > 0 {
			s := plan.Clone().Sections[rapid.IntRange(0, n-1).Draw(t, "like")]
			edit.Changes = append(edit.Changes, model.AddingSection(rapid.IntRange(0, n).Draw(t, "row"), s))
		}
	case "joints":
		if len(plan.Sections) > 0 {
			joints := []model.Joint{{Length: quantity.Of(12.03, quantity.Metre), Rejected: "no"}, {Rejected: "yes"}, {Number: "7", Rejected: "no"}}
			edit.Changes = model.ReplacingJoints(plan, 0, joints[:rapid.IntRange(0, 3).Draw(t, "joints")])
		}
	case "nudge":
		ref, _ := model.Find(plan, "well.air_gap")
		edit.Changes = append(edit.Changes, model.Setting(plan, ref, anyEntry(t, ref.Field)))
	default:
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			edit.Changes = append(edit.Changes, anySet(t, plan))
		}
	}
	return edit
}

// TestTheLogRunsBackwardsAndForwards: whatever is done, undone, redone, marked and saved, the log rewound gives the plan as opened and
// as at each save, and replayed the present one, to the last bit of every value.
func TestTheLogRunsBackwardsAndForwards(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, rapid.SampledFrom(plans.Names()).Draw(rt, "plan"))
		plan.Sections = plan.Sections[:2] // a whole plan takes its time
		opened := plan.Clone()
		var h model.History
		var saves []*model.Plan
		save := func() {
			before := entries(plan)
			h.Enter(plan, "A. Person", noTime)
			h.Saved()
			saves = append(saves, plan.Clone())
			if len(h.Pending()) > 0 || !maps.Equal(before, entries(plan)) {
				rt.Fatal("a save leaves rows behind, or changes the plan")
			}
		}
		for range rapid.IntRange(1, 25).Draw(rt, "steps") {
			logged := slices.Clone(plan.Log)
			switch rapid.SampledFrom([]string{"do", "do", "undo", "redo", "save", "mark", "why"}).Draw(rt, "step") {
			case "do":
				h.Do(plan, anyLoggedEdit(rt, plan))
			case "undo":
				h.Undo(plan)
			case "redo":
				h.Redo(plan)
			case "mark":
				h.Mark(model.MarkHandover, "", noTime)
			case "why":
				h.Explain("because")
			case "save":
				save()
				continue
			}
			if !slices.Equal(plan.Log, logged) {
				rt.Fatal("the log changed without a save")
			}
		}
		save()
		present := entries(plan)
		for _, at := range append([]*model.Plan{opened}, saves...) {
			n := len(plan.Log) - len(at.Log)
			then, misfits := model.Rewind(plan, n)
			if len(misfits) > 0 {
				rt.Fatalf("rewound: %v", misfits)
			}
			if got, want := entries(then), entries(at); !maps.Equal(got, want) || model.Hash(then) != model.Hash(at) {
				rt.Fatalf("rewound by %d of %d: %s", n, len(plan.Log), difference(got, want))
			}
			if model.ChangedOutside(then) {
				rt.Fatal("the hash of a save is not that of the plan")
			}
			again, misfits := model.Replay(then, plan.Log[len(plan.Log)-n:])
			if got := entries(again); len(misfits) > 0 || !maps.Equal(got, present) || !slices.Equal(again.Log, plan.Log) {
				rt.Fatalf("replayed: %v %s", misfits, difference(got, present))
			}
		}
		if !maps.Equal(entries(plan), present) {
			rt.Fatal("the plan itself changed")
		}
	})
}

// set is an edit of one entry.
func set(t *testing.T, plan *model.Plan, path model.Path, text string) model.Edit {
	t.Helper()
	ref, ok := model.Find(plan, path)
	if !ok {
		t.Fatalf("no %s", path)
	}
	e, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	return model.Edit{Changes: []model.Change{model.Setting(plan, ref, e)}}
}

// TestWhatIsMovedStepByStepIsOneRow: steps on one entry become one row, and what comes back to where it began is none.
func TestWhatIsMovedStepByStepIsOneRow(t *testing.T) {
	plan := demo(t, "ottermast-2")
	td := plan.Sections[2].TD.Text()
	var h model.History
	do := func(path model.Path, texts ...string) {
		for _, text := range texts {
			h.Do(plan, set(t, plan, path, text))
		}
	}
	do("section[3].td", "2160 m", "2165 m", "2170 m")
	do("well.air_gap", "30 m", plan.Well.AirGap.Text())
	do("section[3].td", "2180 m")
	if !h.Explain("deeper sand") {
		t.Fatal("nothing to explain")
	}
	want := model.LogRow{What: model.LogSet, Path: "section[3].td", Old: td, New: "2180 m", Why: "deeper sand"}
	if got := h.Pending(); len(got) != 1 || got[0] != want {
		t.Errorf("pending %+v", got)
	}
	h.Mark(model.MarkHandover, "night to day", time.Date(2026, 3, 1, 7, 0, 0, 0, time.FixedZone("", 3600)))
	do("section[3].td", "2190 m")
	got := h.Pending()
	if len(got) != 3 || got[1].New != model.MarkHandover || got[1].Why != "night to day" || got[1].When != "2026-03-01T06:00:00Z" || got[2].Old != "2180 m" {
		t.Errorf("pending %+v", got)
	}
	if n, ok := model.RowsSince(got, model.MarkHandover); n != 1 || !ok {
		t.Errorf("%d rows since the handover, %v", n, ok)
	}
	if n, ok := model.RowsSince(got, model.MarkBaseline); n != 3 || !ok {
		t.Errorf("%d rows since the log began, %v", n, ok)
	}
	if _, ok := model.RowsSince(got[2:], model.MarkHandover); ok {
		t.Error("a handover that never was")
	}
}

// TestUndoneBeforeASaveLeavesNoTrace: undo before a save takes the rows out, after one it is an edit of its own.
func TestUndoneBeforeASaveLeavesNoTrace(t *testing.T) {
	plan := demo(t, "ottermast-2")
	var h model.History
	h.Do(plan, set(t, plan, "section[3].td", "2170 m"))
	h.Do(plan, set(t, plan, "section[3].rathole", "7 m"))
	h.Undo(plan)
	if got := h.Pending(); len(got) != 1 || got[0].Path != "section[3].td" {
		t.Fatalf("pending %+v", got)
	}
	h.Enter(plan, "A. Person", noTime)
	h.Saved()
	h.Undo(plan)
	if got := h.Pending(); len(got) != 1 || got[0].Old != "2170 m" || got[0].New != "2155 m" {
		t.Fatalf("pending %+v", got)
	}
	h.Redo(plan)
	if got := h.Pending(); len(got) != 0 || h.Dirty() {
		t.Fatalf("pending %+v", got)
	}
	h.Undo(plan)
	h.Enter(plan, "B. Person", noTime)
	if got := plan.Log; len(got) != 2 || got[0].Who != "A. Person" || got[1].Who != "B. Person" || got[0].Hash == "" || got[1].Hash != model.Hash(plan) {
		t.Fatalf("log %+v", got)
	}
}

// TestARowIsAddedAndRemovedEntryByEntry: each line of the log can be taken back by itself.
func TestARowIsAddedAndRemovedEntryByEntry(t *testing.T) {
	plan := demo(t, "ottermast-2")
	var h model.History
	h.Do(plan, model.Edit{Changes: []model.Change{model.Removing(model.SectionGroup(), model.Place{Outer: 1})}})
	rows := h.Pending()
	h.Undo(plan)
	last := rows[len(rows)-1]
	if last.What != model.LogRemove || last.Path != "section[2]" || len(rows) < 100 {
		t.Fatalf("%d rows, the last %+v", len(rows), last)
	}
	for n := range rows {
		then, misfits := model.Replay(plan, rows[:n+1])
		if len(misfits) > 0 {
			t.Fatalf("after %d rows: %v", n+1, misfits)
		}
		if n%50 > 0 && n < len(rows)-1 {
			continue // a plan of this size takes its time
		}
		if back, misfits := model.Rewind(then, n+1); len(misfits) > 0 || model.Hash(back) != model.Hash(plan) {
			t.Fatalf("back over %d rows: %v", n+1, misfits)
		}
	}
}

// TestAPlanChangedOutsideIsRewoundAsFarAsItFits: entries that are not as logged are named and set all the same, rows that are not
// there are named, and the next save says that the log has a gap.
func TestAPlanChangedOutsideIsRewoundAsFarAsItFits(t *testing.T) {
	plan := demo(t, "ottermast-2")
	opened := model.Hash(plan)
	var h model.History
	h.Do(plan, set(t, plan, "section[3].td", "2170 m"))
	h.Do(plan, set(t, plan, "section[5].rathole", "7 m"))
	h.Enter(plan, "A. Person", noTime)
	h.Saved()
	if model.ChangedOutside(plan) {
		t.Fatal("changed by nobody")
	}
	set(t, plan, "section[3].td", "2222 m").Changes[0].Ref.Set(plan, model.Entry{Quantity: quantity.Of(2222, quantity.Metre)})
	if !model.ChangedOutside(plan) {
		t.Fatal("the change is not seen")
	}
	then, misfits := model.Rewind(plan, 2)
	if len(misfits) != 1 || misfits[0].String() != "log row 1: section[3].td is 2222 m, and 2170 m by the log" || model.Hash(then) != opened {
		t.Errorf("misfits %v", misfits)
	}
	plan.Sections = plan.Sections[:4]
	if _, misfits = model.Rewind(plan, 2); len(misfits) != 2 || misfits[0].Why != "section[5].rathole is no entry of the plan" {
		t.Errorf("misfits %v", misfits)
	}
	h.Enter(plan, "B. Person", noTime)
	if n := len(plan.Log); n != 3 || plan.Log[2].New != model.MarkOutside || model.ChangedOutside(plan) {
		t.Errorf("log %+v", plan.Log)
	}
}

// TestRowsThatMeanNothingAreMisfits: a log that was written by hand does no harm.
func TestRowsThatMeanNothingAreMisfits(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, r := range []model.LogRow{
		{}, {What: "break"}, {What: model.LogSet}, {What: model.LogSet, Path: "well"}, {What: model.LogSet, Path: "section[0].td"},
		{What: model.LogSet, Path: "section[3].td", Old: "2155 m", New: "12 psi"}, {What: model.LogSet, Path: "section[3].td", Old: "x"},
		{What: model.LogAdd}, {What: model.LogAdd, Path: "well"}, {What: model.LogAdd, Path: "section[9]"}, {What: model.LogAdd, Path: "section[-1]"},
		{What: model.LogAdd, Path: "section[9].joint[1]"}, {What: model.LogRemove, Path: "section[6]"}, {What: model.LogRemove, Path: "section[1]"},
		{What: model.LogAdd, Path: "log[1]"}, {What: model.LogSet, Path: "log[1].who", New: "x"},
	} {
		if _, misfits := model.Replay(plan, []model.LogRow{r}); len(misfits) != 1 {
			t.Errorf("%+v: misfits %v", r, misfits)
		}
	}
}

// TestTheHashKnowsEveryEntry: any other content of any entry gives another hash, and the log gives none.
func TestTheHashKnowsEveryEntry(t *testing.T) {
	plan := demo(t, "ottermast-2")
	hash := model.Hash(plan)
	rapid.Check(t, func(rt *rapid.T) {
		c := anySet(rt, plan)
		was := c.Ref.Get(plan)
		c.Ref.Set(plan, c.New)
		if (model.Hash(plan) == hash) != (was == c.New) {
			rt.Errorf("%s from %+v to %+v: the hash does not tell", c.Ref.Path(), was, c.New)
		}
		c.Ref.Set(plan, was)
	})
	if plan.Log = []model.LogRow{{What: model.LogMark}}; model.Hash(plan) != hash {
		t.Error("the log counts")
	}
	if plan.Sections = append(plan.Sections, model.Section{}); model.Hash(plan) == hash {
		t.Error("a blank row does not count")
	}
}

func BenchmarkHash(b *testing.B) {
	plan := demo(b, plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		model.Hash(plan)
	}
}
