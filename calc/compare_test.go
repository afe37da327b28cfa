package calc_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// put sets an entry of a plan by its path.
func put(t testing.TB, plan *model.Plan, path model.Path, text string) {
	t.Helper()
	ref, ok := model.Find(plan, path)
	if !ok {
		t.Fatalf("no %s", path)
	}
	e, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	ref.Set(plan, e)
}

func TestAComparisonWithItselfIsEmpty(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		if c := calc.Compare(plan, plan.Clone()); !c.Same() || len(c.Pairs) != len(plan.Sections) {
			t.Errorf("%s: %d entries, %d figures, %d findings", name, len(c.Entries), len(c.Figures), len(c.Findings))
		}
	}
	base := demo(t, plans.Default)
	base.Sections = base.Sections[:3]
	rapid.Check(t, func(t *rapid.T) {
		plan := base.Clone()
		disturb(t, plan)
		if c := calc.Compare(plan, plan); !c.Same() {
			t.Errorf("%+v", c)
		}
	})
}

// TestAComparisonIsTheMirrorOfTheOtherWayRound: what is before in one is after in the other, throughout.
func TestAComparisonIsTheMirrorOfTheOtherWayRound(t *testing.T) {
	base := demo(t, plans.Default)
	base.Sections = base.Sections[:3]
	rapid.Check(t, func(t *rapid.T) {
		a := base.Clone()
		b := a.Clone()
		disturb(t, b)
		switch rapid.IntRange(0, 4).Draw(t, "rows") {
		case 0:
			b.Sections = b.Sections[:2]
		case 1:
			a.Sections = append(a.Sections, a.Clone().Sections[1])
		case 2:
			b.Formations = slices.Delete(b.Formations, 1, 2)
		case 3:
			b.Sections[1].Name = "another"
		}
		there, back := calc.Compare(a, b), calc.Compare(b, a)
		var one, other []string
		for _, e := range there.Entries {
			one = append(one, fmt.Sprint("entry ", e.Before, e.After, e.Old, e.New))
		}
		for _, e := range back.Entries {
			other = append(other, fmt.Sprint("entry ", e.After, e.Before, e.New, e.Old))
		}
		for _, m := range there.Figures {
			one = append(one, fmt.Sprint("figure ", m.Before, m.After))
		}
		for _, m := range back.Figures {
			other = append(other, fmt.Sprint("figure ", m.After, m.Before))
		}
		for _, f := range there.Findings {
			one = append(one, fmt.Sprint("finding ", f.Before, f.After))
		}
		for _, f := range back.Findings {
			other = append(other, fmt.Sprint("finding ", f.After, f.Before))
		}
		slices.Sort(one)
		slices.Sort(other)
		if !slices.Equal(one, other) {
			for k := range one {
				if k >= len(other) || one[k] != other[k] {
					t.Fatalf("%d and %d changes; there %s", len(one), len(other), one[k])
				}
			}
			t.Fatalf("%d and %d changes", len(one), len(other))
		}
	})
}

// TestSectionsAreTheSameByNameThenByOrder: a section put in above moves no other.
func TestSectionsAreTheSameByNameThenByOrder(t *testing.T) {
	before := demo(t, plans.Default)
	after := before.Clone()
	after.Sections = slices.Insert(after.Sections, 1, model.Section{Name: "contingency"})
	after.Sections = slices.Delete(after.Sections, 5, 6)
	after.Sections[2].Name = "renamed"
	want := []calc.SectionPair{{0, 0}, {1, 1}, {4, 2}, {2, 3}, {3, 4}}
	if got := calc.Compare(before, after).Pairs; !slices.Equal(got, want) {
		t.Errorf("pairs %v", got)
	}
}

// TestWhatAHeavierMudChanges: the entry is named with both contents, figures that are held against a limit come first by how near they
// are to it, and findings say what was met and is no more.
func TestWhatAHeavierMudChanges(t *testing.T) {
	before := demo(t, "ottermast-2")
	after := before.Clone()
	put(t, after, "section[4].density", "1.85 sg")
	put(t, after, "well.author", "A. Person")
	c := calc.Compare(before, after)
	if len(c.Entries) != 2 {
		t.Fatalf("entries %+v", c.Entries)
	}
	if e := c.Entries[1]; e.After != "section[4].density" || e.Words != "section 4: Mud density" || e.Section != 3 || e.New.Quantity.Text() != "1.85 sg" {
		t.Errorf("entry %+v", e)
	}
	limited := slices.IndexFunc(c.Figures, func(m calc.FigureMove) bool { return !m.HadLimit })
	if limited < 5 || !slices.IsSortedFunc(c.Figures[:limited], func(a, b calc.FigureMove) int { return cmp.Compare(a.Room(), b.Room()) }) {
		t.Errorf("%d of %d figures have a limit and stand first", limited, len(c.Figures))
	}
	if !slices.IsSortedFunc(c.Figures[limited:], func(a, b calc.FigureMove) int { return cmp.Compare(b.Relative(), a.Relative()) }) {
		t.Error("the others are not by how far they moved")
	}
	if !slices.ContainsFunc(c.Figures, func(m calc.FigureMove) bool {
		return m.After.OK && m.After.Value == 0 && m.HadLimit && m.Limit.Measured == 0 && m.Limit.Severity > calc.OK
	}) {
		t.Error("no running speed is left, and it is held against nothing")
	}
	for _, m := range c.Figures {
		if m.Section >= 0 && m.Section < 3 && strings.HasPrefix(m.Figure().Key, "hole.") {
			t.Errorf("%s of section %d moved", m.Figure().Key, m.Section+1)
		}
		if m.Before.OK && m.After.OK && m.Before.Value == m.After.Value {
			t.Errorf("%s did not move", m.Figure().Key)
		}
	}
	if len(c.Findings) == 0 || c.Findings[0].After.Severity == calc.OK {
		t.Errorf("a mud above the fracture is found nowhere: %+v", c.Findings)
	}
	for _, f := range c.Findings {
		if f.Had && f.Has && f.Before.Severity == f.After.Severity && (f.Before.Margin < 0) == (f.After.Margin < 0) && f.Before.Text == f.After.Text {
			t.Errorf("nothing changed: %+v", f)
		}
	}
}

// TestRowsThatComeAndGo: of a list only what differs is named, wherever it was put in.
func TestRowsThatComeAndGo(t *testing.T) {
	before := demo(t, "ottermast-2")
	after := before.Clone()
	after.Formations = slices.Insert(after.Formations, 1, model.Formation{Name: "Grit", Isolate: model.NoZone})
	after.Sections = after.Sections[:4]
	c := calc.Compare(before, after)
	if len(c.Entries) != 2 {
		t.Fatalf("entries %+v", c.Entries)
	}
	if e := c.Entries[0]; !e.Added() || e.After != "formation[2]" || len(e.Row) != 1 || e.Row[0].Entry.Text != "Grit" {
		t.Errorf("%+v", e)
	}
	if e := c.Entries[1]; !e.Gone() || e.Before != "section[5]" || e.Words != "section 5" {
		t.Errorf("%+v", e)
	}
	for _, f := range c.Findings {
		if f.Had && !f.Has && f.Before.Section == 4 {
			return
		}
	}
	t.Error("the findings of a section that is gone are not gone")
}

// TestAnotherUnitIsNoChange: the same length in other words is the same length.
func TestAnotherUnitIsNoChange(t *testing.T) {
	before := demo(t, "ottermast-2")
	after := before.Clone()
	td := &after.Sections[2].TD
	*td = quantity.Value{SI: td.SI, Unit: quantity.Foot}
	if c := calc.Compare(before, after); !c.Same() {
		t.Errorf("%+v", c.Entries)
	}
}

// BenchmarkCompare holds one demo against another: two evaluations and what it takes to pair all there is.
func BenchmarkCompare(b *testing.B) {
	before, after := demo(b, "ottermast-2"), demo(b, "saltlantern-1")
	b.ReportAllocs()
	for b.Loop() {
		calc.Compare(before, after)
	}
}

func BenchmarkCompareAnEdit(b *testing.B) {
	before := demo(b, "ottermast-2")
	after := before.Clone()
	put(b, after, "section[3].td", "2170 m")
	for b.Loop() {
		calc.Compare(before, after)
	}
}
