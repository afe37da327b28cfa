package model

import (
	"strconv"
	"strings"
)

// removedRow stands in a trial's path for a row that is not there any more, so that none that takes its place is changed instead.
const removedRow = "removed"

// SectionLabel returns what trials call a section: its name where no other section has it, else its number, which does not
// survive sections that come and go.
func SectionLabel(plan *Plan, i int) string {
	if i < 0 || i >= len(plan.Sections) {
		return removedRow
	}
	name := plan.Sections[i].Name
	if k, ok := SectionCalled(plan, name); ok && k == i {
		return name
	}
	return strconv.Itoa(i + 1)
}

// SectionCalled returns the section that a label means, and whether there is just one. A number counts sections from one, even
// where a section has it for a name.
func SectionCalled(plan *Plan, label string) (int, bool) {
	if n, err := strconv.Atoi(label); err == nil {
		return n - 1, n >= 1 && n <= len(plan.Sections)
	}
	found := -1
	for i := range plan.Sections {
		if label == "" || plan.Sections[i].Name != label {
			continue
		}
		if found >= 0 {
			return -1, false
		}
		found = i
	}
	return found, found >= 0
}

const sectionOpen = "section["

// TrialPath returns the path of an entry as a trial holds it, with the section by its label.
func TrialPath(plan *Plan, ref Ref) string {
	path := strings.Replace(string(ref.Path()), "[0]", "["+removedRow+"]", 1)
	if _, rest, in := strings.Cut(path, "]"); in && strings.HasPrefix(path, sectionOpen) {
		path = sectionOpen + SectionLabel(plan, ref.Place.Outer) + "]" + rest
	}
	return path
}

// TrialEntry returns the entry that a trial's path means, and whether the plan has it. Trials do not change trials.
func TrialEntry(plan *Plan, path string) (Ref, bool) {
	if rest, in := strings.CutPrefix(path, sectionOpen); in {
		for i := range plan.Sections {
			after, named := strings.CutPrefix(rest, plan.Sections[i].Name+"].")
			if !named || SectionLabel(plan, i) != plan.Sections[i].Name {
				continue
			}
			if ref, ok := Find(plan, PathOf(i, after)); ok {
				return ref, true
			}
		}
	}
	ref, ok := Find(plan, Path(path))
	if !ok || ref.Field.Topic == TopicTrial {
		return Ref{}, false
	}
	return ref, true
}

// TrialsFollowing returns the changes that keep trials on their sections and entries through an edit that adds or removes rows or
// renames sections. One whose section is gone keeps its name, so that a person can tell. They are to stand before the edit's own, since they count trials as the plan has them now.
func TrialsFollowing(plan *Plan, edit Edit) (changes []Change) {
	if len(plan.Trials) == 0 || !edit.movesRows() {
		return nil
	}
	then := plan.Clone()
	for _, c := range edit.Changes {
		apply(then, &c)
	}
	setting := func(g *Group, key string, at Place, text string) {
		ref := Ref{Group: g, Field: g.Field(key), Place: at}
		if ref.Get(plan).Text != text {
			changes = append(changes, Setting(plan, ref, Entry{Text: text}))
		}
	}
	for k := range plan.Trials {
		t := &plan.Trials[k]
		if i, ok := SectionCalled(plan, t.Section); ok {
			to := edit.carries(Ref{Group: SectionGroup(), Place: Place{Outer: i}}).Place.Outer
			if now, ok := SectionCalled(then, t.Section); now != to && (ok || to >= 0) {
				setting(TrialGroup(), "section", Place{Outer: k}, SectionLabel(then, to))
			}
		}
		for n := range t.Changes {
			ref, ok := TrialEntry(plan, t.Changes[n].Path)
			if !ok {
				continue
			}
			to := edit.carries(ref)
			if now, ok := TrialEntry(then, t.Changes[n].Path); now != to && (ok || to.Place.Outer >= 0) {
				setting(TrialChangeList(), "path", Place{Outer: k, Inner: n}, TrialPath(then, to))
			}
		}
	}
	return changes
}

// movesRows reports whether rows of the plan come or go, trials apart, or a section gets another name.
func (e Edit) movesRows() bool {
	for _, c := range e.Changes {
		switch {
		case c.Ref.Group.Topic == TopicTrial:
		case c.Kind != SetEntry, c.Ref.Group == SectionGroup() && c.Ref.Field.Key == "name":
			return true
		}
	}
	return false
}

// carries returns the entry as it is found after the edit. A row that was removed has no place: it counts as one before the first.
func (e Edit) carries(ref Ref) Ref {
	for _, c := range e.Changes {
		g := c.Ref.Group
		if c.Kind == SetEntry || !ref.Group.under(g) || g.Nested() && c.Ref.Place.Outer != ref.Place.Outer {
			continue
		}
		here, at := &ref.Place.Outer, g.Index(c.Ref.Place)
		if g.Nested() {
			here = &ref.Place.Inner
		}
		switch {
		case *here < 0:
		case c.Kind == AddRow && at <= *here:
			*here++
		case c.Kind == RemoveRow && at == *here:
			*here = -1
		case c.Kind == RemoveRow && at < *here:
			*here--
		}
	}
	return ref
}

// under reports whether the group is another one or stands within it.
func (g *Group) under(other *Group) bool {
	for ; g != nil; g = g.Parent {
		if g == other {
			return true
		}
	}
	return false
}
