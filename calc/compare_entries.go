package calc

import "borewalk/model"

// EntryChange is an entry that has another content, or a row that was added or is gone.
type EntryChange struct {
	Before, After model.Path // its address in either plan; blank for a row that is not there
	Words, Brief  string     // its address in words, in the later plan where it is there; Brief for a narrow screen
	Section       int        // in that plan; -1 for the well
	Field         *model.Field
	Old, New      model.Entry
	Row           []RowEntry // for a row: what it is known by
}

// RowEntry is the content of an entry in the summary of a row.
type RowEntry struct {
	Field *model.Field
	Entry model.Entry
}

// Added and Gone report whether a whole row was added or is gone.
func (e *EntryChange) Added() bool { return e.Field == nil && e.Before == "" }

// Gone is the other of Added.
func (e *EntryChange) Gone() bool { return e.Field == nil && e.After == "" }

// entryPair is a pair of places in the two plans.
type entryPair struct{ before, after model.Place }

// entries returns what was entered otherwise, in the order of the file.
func (c *comparing) entries() (list []EntryChange) {
	for _, g := range model.Groups() {
		if g != model.SectionGroup() {
			list = c.group(list, g, entryPair{})
			continue
		}
		for _, pair := range c.pairs {
			at := entryPair{model.Place{Outer: pair.Before}, model.Place{Outer: pair.After}}
			switch {
			case pair.Before < 0:
				list = append(list, rowChange(c.after, g, at.after, true))
			case pair.After < 0:
				list = append(list, rowChange(c.before, g, at.before, false))
			default:
				list = c.row(list, g, at)
			}
		}
	}
	return list
}

// group adds the changes of a group that stands in the same row of both plans.
func (c *comparing) group(list []EntryChange, g *model.Group, at entryPair) []EntryChange {
	if !g.List {
		return c.row(list, g, at)
	}
	n, m := g.Len(c.before, at.before), g.Len(c.after, at.after)
	same := func(i, j int) bool {
		return len(c.row(nil, g, entryPair{g.At(at.before, i), g.At(at.after, j)})) == 0
	}
	// What is the same above and below the rows that were changed, added or taken away stands for itself.
	top := 0
	for top < min(n, m) && same(top, top) {
		top++
	}
	bottom := 0
	for bottom < min(n, m)-top && same(n-1-bottom, m-1-bottom) {
		bottom++
	}
	for k := top; k < max(n, m)-bottom; k++ {
		switch {
		case k >= n-bottom:
			list = append(list, rowChange(c.after, g, g.At(at.after, k), true))
		case k >= m-bottom:
			list = append(list, rowChange(c.before, g, g.At(at.before, k), false))
		default:
			list = c.row(list, g, entryPair{g.At(at.before, k), g.At(at.after, k)})
		}
	}
	return list
}

// row adds the changes of a row that both plans have, and of what stands in it.
func (c *comparing) row(list []EntryChange, g *model.Group, at entryPair) []EntryChange {
	for _, f := range g.Fields {
		before, after := model.Ref{Group: g, Field: f, Place: at.before}, model.Ref{Group: g, Field: f, Place: at.after}
		old, now := before.Get(c.before), after.Get(c.after)
		if f.Same(old, now) {
			continue
		}
		list = append(list, EntryChange{Before: before.Path(), After: after.Path(), Words: after.Words(), Brief: after.Brief(), Section: sectionOfGroup(g, at.after), Field: f, Old: old, New: now})
	}
	for _, in := range g.Lists {
		list = c.group(list, in, at)
	}
	return list
}

// rowChange returns the change of a row that only one plan has.
func rowChange(plan *model.Plan, g *model.Group, at model.Place, added bool) EntryChange {
	path := g.RowPath(at)
	e := EntryChange{Words: model.PathWords(plan, path), Section: sectionOfGroup(g, at)}
	e.Brief = e.Words
	if added {
		e.After = path
	} else {
		e.Before = path
	}
	for _, f := range g.Fields {
		if entry := (model.Ref{Group: g, Field: f, Place: at}).Get(plan); entry.IsSet() && (f.Brief || f.Key == "name") {
			e.Row = append(e.Row, RowEntry{f, entry})
		}
	}
	return e
}

// sectionOfGroup returns the section that a place of a group lies in; -1 for the well's.
func sectionOfGroup(g *model.Group, at model.Place) int {
	for ; g != nil; g = g.Parent {
		if g == model.SectionGroup() {
			return at.Outer
		}
	}
	return -1
}
