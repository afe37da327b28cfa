package model_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// everyField returns each field of a plan once, with an entry of it where there is one.
func everyField(plan *model.Plan) (fields []*model.Field, entries []model.Entry) {
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			fields = append(fields, f)
			entries = append(entries, model.Ref{Group: g, Field: f, Place: at}.Get(plan))
		}
		return true
	})
	return fields, entries
}

// TestATrialCanHoldWhateverThePlanHolds: each entry of the demos comes back from the text that a trial has for it.
func TestATrialCanHoldWhateverThePlanHolds(t *testing.T) {
	for _, name := range plans.Names() {
		fields, entries := everyField(demo(t, name))
		for i, f := range fields {
			if !entries[i].IsSet() && f.Type == model.ChoiceField {
				continue
			}
			text := f.TrialText(model.TrialValue{Entry: entries[i]})
			if v, err := f.ParseTrial(text, 0); err != nil || v.Relative || v.Entry != entries[i] {
				t.Errorf("%s: %s holds %+v, written %q, read %+v, %v", name, f.Key, entries[i], text, v, err)
			}
		}
	}
}

func TestWordsThatATrialReadsOtherwise(t *testing.T) {
	field := model.SectionGroup().Field("name")
	for _, text := range []string{"blank", "Blank", "=", "=x", "==", "-5 m", "+x", "\u22121"} {
		e := model.Entry{Text: text}
		if v, err := field.ParseTrial(field.TrialText(model.TrialValue{Entry: e}), 0); err != nil || v != (model.TrialValue{Entry: e}) {
			t.Errorf("%q is written %q, read %+v, %v", text, field.TrialText(model.TrialValue{Entry: e}), v, err)
		}
	}
}

// FuzzParseTrial reads any text for any field: what is refused says so in one clean line, what is accepted is within the range,
// reads back from its own text, and makes of an entry one that the field's own reader takes.
func FuzzParseTrial(f *testing.F) {
	plan := demo(f, plans.Default)
	fields, entries := everyField(plan)
	for _, seed := range []string{"+0.05 sg", "-50 m", "\u221250 m", "1.40 sg", "=-2 degC", "blank", "=", "+", "--5 m", "+-5 m", "+1/8 in", "-13-5/8 in",
		"= blank", "+5", "rig", "-1e9 m", strings.Repeat("+", 70), "+999999999999999 m", "\x1b[0m", "+\x00 m", ""} {
		for at := range 40 {
			f.Add(seed, uint16(at*len(fields)/40), uint16(quantity.Metre))
		}
	}
	f.Fuzz(func(t *testing.T, text string, at, shown uint16) {
		field, was := fields[int(at)%len(fields)], entries[int(at)%len(fields)]
		v, err := field.ParseTrial(text, quantity.Unit(shown))
		if err == nil {
			var again model.TrialValue
			written := field.TrialText(v)
			if again, err = field.ParseTrial(written, 0); err != nil || again != v {
				t.Fatalf("%q for %s is %+v, written %q, read %+v, %v", text, field.Key, v, written, again, err)
			}
			var to model.Entry
			if to, err = v.On(field, was); err == nil {
				if back, err := field.Parse(field.FileText(to), 0); err != nil || back != to {
					t.Fatalf("%q makes %+v of %s, which reads as %+v, %v", text, to, field.Key, back, err)
				}
				return
			}
		}
		if line := err.Error(); line == "" || strings.ContainsAny(line, "\n\r\x1b") {
			t.Fatalf("%q for %s says %q, want one clean line", text, field.Key, line)
		}
	})
}

// trialPlan holds a trial of the third section with changes in three sections and in lists.
func trialPlan(t testing.TB) *model.Plan {
	plan := demo(t, plans.Default)
	plan.Trials = []model.Trial{{Name: "tried", Section: plan.Sections[2].Name}}
	for _, path := range []string{"section[2].td", "section[3].density", "section[3].casing[1].weight", "section[3].string[4].length", "section[4].slurry[1].top", "formation[2].top"} {
		ref, ok := model.Find(plan, model.Path(path))
		if !ok {
			t.Fatalf("no %s", path)
		}
		plan.Trials[0].Changes = append(plan.Trials[0].Changes, model.TrialChange{Path: model.TrialPath(plan, ref), Value: "+0 m"})
	}
	return plan
}

// meant returns the path of each entry that a plan's only trial means, as the plan counts.
func meant(plan *model.Plan) (paths []string) {
	for _, c := range plan.Trials[0].Changes {
		path := "none"
		if ref, ok := model.TrialEntry(plan, c.Path); ok {
			path = string(ref.Path())
		}
		paths = append(paths, path)
	}
	return paths
}

func TestTrialsFollowTheirSections(t *testing.T) {
	section, formation := model.SectionGroup(), model.Groups()[6]
	var drill *model.Group
	for _, g := range section.Lists {
		if g.Name == "string" {
			drill = g
		}
	}
	named := func(plan *model.Plan, i int, name string) model.Change {
		return model.Setting(plan, model.Ref{Group: section, Field: section.Field("name"), Place: model.Place{Outer: i}}, model.Entry{Text: name})
	}
	for _, c := range []struct {
		what    string
		changes func(*model.Plan) []model.Change
		section int // that the trial is of afterwards; -1 for none
		want    string
	}{
		{"a section above", func(p *model.Plan) []model.Change { return []model.Change{model.Adding(section, model.Place{})} }, 3,
			"section[3].td section[4].density section[4].casing[1].weight section[4].string[4].length section[5].slurry[1].top formation[2].top"},
		{"the first section gone", func(p *model.Plan) []model.Change { return []model.Change{model.Removing(section, model.Place{})} }, 1,
			"section[1].td section[2].density section[2].casing[1].weight section[2].string[4].length section[3].slurry[1].top formation[2].top"},
		{"its own section gone", func(p *model.Plan) []model.Change {
			return []model.Change{model.Removing(section, model.Place{Outer: 2})}
		}, -1, "section[2].td none none none section[3].slurry[1].top formation[2].top"},
		{"its own section renamed", func(p *model.Plan) []model.Change { return []model.Change{named(p, 2, "other [name].x")} }, 2,
			"section[2].td section[3].density section[3].casing[1].weight section[3].string[4].length section[4].slurry[1].top formation[2].top"},
		{"two sections of one name", func(p *model.Plan) []model.Change { return []model.Change{named(p, 1, p.Sections[2].Name)} }, 2,
			"section[2].td section[3].density section[3].casing[1].weight section[3].string[4].length section[4].slurry[1].top formation[2].top"},
		{"a section without a name", func(p *model.Plan) []model.Change { return []model.Change{named(p, 2, "")} }, 2,
			"section[2].td section[3].density section[3].casing[1].weight section[3].string[4].length section[4].slurry[1].top formation[2].top"},
		{"a part of the string below", func(p *model.Plan) []model.Change {
			return []model.Change{model.Adding(drill, model.Place{Outer: 2, Inner: 1}), model.Adding(drill, model.Place{Outer: 3, Inner: 0})}
		}, 2, "section[2].td section[3].density section[3].casing[1].weight section[3].string[5].length section[4].slurry[1].top formation[2].top"},
		{"a section of a trial that goes by its number gone", func(p *model.Plan) []model.Change {
			p.Trials[0].Section, p.Trials[0].Changes[1].Path = "3", "section[3].density"
			return []model.Change{model.Removing(section, model.Place{Outer: 2})}
		}, -1, "section[2].td none none none section[3].slurry[1].top formation[2].top"},
		{"its part of the string gone, the next in its place", func(p *model.Plan) []model.Change {
			return []model.Change{model.Removing(drill, model.Place{Outer: 2, Inner: 3})}
		}, 2, "section[2].td section[3].density section[3].casing[1].weight none section[4].slurry[1].top formation[2].top"},
		{"its formation gone, the next in its place", func(p *model.Plan) []model.Change {
			return []model.Change{model.Removing(formation, model.Place{Outer: 1})}
		}, 2, "section[2].td section[3].density section[3].casing[1].weight section[3].string[4].length section[4].slurry[1].top none"},
	} {
		plan := trialPlan(t)
		changes := c.changes(plan)
		before := picture(plan)
		edit := model.Edit{Changes: changes}
		edit.Changes = append(model.TrialsFollowing(plan, edit), edit.Changes...)
		var h model.History
		h.Do(plan, edit)
		if i, ok := model.SectionCalled(plan, plan.Trials[0].Section); i != c.section && (ok || c.section >= 0) {
			t.Errorf("%s: the trial is of section %d (%q), want %d", c.what, i, plan.Trials[0].Section, c.section)
		}
		if got := strings.Join(meant(plan), " "); got != c.want {
			t.Errorf("%s: the trial means\n%s, want\n%s", c.what, got, c.want)
		}
		h.Undo(plan)
		for path, text := range picture(plan) {
			if before[path] != text {
				t.Errorf("%s: after undo %s is %v", c.what, path, text)
			}
		}
	}
}

// TestTrialsFollowAnyEdit: however rows come and go and names change, a trial's entry is the one that it was, or is not found.
func TestTrialsFollowAnyEdit(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		plan := trialPlan(t)
		section := model.SectionGroup()
		const mark = "here"
		target := rapid.SampledFrom([]string{"section[2]", "section[3]", "section[3].string[4]", "section[4].slurry[1]", "formation[2]"}).Draw(r, "target")
		ref, _ := model.Find(plan, model.Path(target+".name"))
		plan.Trials[0].Changes = []model.TrialChange{{Path: model.TrialPath(plan, ref), Value: "x"}}
		var h model.History
		for range rapid.IntRange(1, 5).Draw(r, "edits") {
			var changes []model.Change
			if len(plan.Sections) > 0 {
				g := rapid.SampledFrom(append([]*model.Group{section}, section.Lists...)).Draw(r, "list")
				if !g.List {
					continue
				}
				at := g.At(model.Place{Outer: rapid.IntRange(0, len(plan.Sections)-1).Draw(r, "section")}, 0)
				if n := g.Len(plan, at); n > 0 && rapid.Bool().Draw(r, "remove") {
					changes = append(changes, model.Removing(g, g.At(at, rapid.IntRange(0, n-1).Draw(r, "row"))))
				} else {
					changes = append(changes, model.Adding(g, g.At(at, rapid.IntRange(0, n).Draw(r, "row"))))
				}
			}
			edit := model.Edit{Changes: changes}
			before, had := model.TrialEntry(plan, plan.Trials[0].Changes[0].Path)
			if had {
				before.Set(plan, model.Entry{Text: mark})
			}
			edit.Changes = append(model.TrialsFollowing(plan, edit), edit.Changes...)
			h.Do(plan, edit)
			after, has := model.TrialEntry(plan, plan.Trials[0].Changes[0].Path)
			if has && (!had || after.Get(plan).Text != mark) {
				r.Fatalf("the trial means %s now", after.Path())
			}
			if has {
				after.Set(plan, model.Entry{Text: "so far"})
			}
		}
	})
}

// TestNetEditsOfASection: what becomes of an entry over several edits is one change back; what went with other things stays.
func TestNetEditsOfASection(t *testing.T) {
	plan := demo(t, plans.Default)
	before := picture(plan)
	var h model.History
	set := func(path, text string) model.Change {
		ref, ok := model.Find(plan, model.Path(path))
		if !ok {
			t.Fatalf("no %s", path)
		}
		e, err := ref.Field.Parse(text, 0)
		if err != nil {
			t.Fatal(err)
		}
		return model.Setting(plan, ref, e)
	}
	do := func(changes ...model.Change) { h.Do(plan, model.Edit{Changes: changes}) }
	casing, at, _ := model.FindList(plan, "section[3].casing")
	do(set("section[3].density", "1.28 sg"))
	do(set("section[3].density", "1.3 sg"))
	do(set("section[3].flow", "3000 L/min"))
	do(set("section[3].flow", "4200 L/min")) // as it was
	do(set("section[3].kick.intensity", ""))
	if back, more := h.Net(plan, 2); len(back) != 2 || more {
		t.Errorf("%d changes back, more %v, want 2", len(back), more)
	}
	do(set("section[3].pv", "20 cP"), set("rig.heave", "1 m")) // in one go with the rig's
	do(set("section[4].density", "1.5 sg"))
	do(set("section[3].casing[1].wear", "5 %"))
	do(model.Adding(casing, at))
	back, more := h.Net(plan, 2)
	if len(back) != 2 || !more {
		t.Fatalf("%d changes back, more %v, want 2 and more", len(back), more)
	}
	do(model.Keeping(plan, 2, "kept", back).Changes...)
	kept := plan.Trials[len(plan.Trials)-1]
	if len(kept.Changes) != 2 || kept.Changes[0].Value != "1.3 sg" || kept.Changes[1].Value != "blank" {
		t.Errorf("kept %+v", kept)
	}
	now := picture(plan)
	for _, path := range []string{"section[3].density", "section[3].kick.intensity"} {
		if now[path] != before[path] {
			t.Errorf("%s is %s, want %s", path, now[path], before[path])
		}
	}
	if now["section[3].pv"] == before["section[3].pv"] || now["section[4].density"] == before["section[4].density"] {
		t.Error("other edits were taken back as well")
	}
	do(model.Adding(model.SectionGroup(), model.Place{}))
	if back, more := h.Net(plan, 3); len(back) != 0 || !more {
		t.Errorf("after sections came: %d changes back, more %v", len(back), more)
	}
	h.Saved()
	if back, more := h.Net(plan, 3); len(back) != 0 || more {
		t.Errorf("after a save: %d changes back, more %v", len(back), more)
	}
}
