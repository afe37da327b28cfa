package ui

import (
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// lineKind says what a line of the fields pane is.
type lineKind uint8

const (
	lineHeading lineKind = iota // a table, which opens and closes
	lineRow                     // a row of a list, closed to one line or open
	lineField
	lineAdd // adds a row to a list
)

// line is one line of the fields pane.
type line struct {
	kind  lineKind
	ref   model.Ref // the field; for headings and rows Group and Place
	group *model.Group
	place model.Place
	open  bool
}

// makeLines makes what lines returns.
func (p *Planner) makeLines() []line {
	var lines []line
	closed := -1 // the level of the table or row that hides what comes, -1 for none
	for _, l := range model.Page(p.plan, p.topic, p.section) {
		if closed >= 0 && l.Level > closed {
			continue
		}
		closed = -1
		next := p.lineOf(l, len(lines) == 0)
		if (next.kind == lineHeading || next.kind == lineRow) && !next.open {
			closed = l.Level
		}
		lines = append(lines, next)
	}
	return lines
}

// lineOf returns a line of the page as the fields pane has it; first is the one that the page begins with.
func (p *Planner) lineOf(l model.PageLine, first bool) line {
	g, at := l.Ref.Group, l.Ref.Place
	switch l.Kind {
	case model.PageTable:
		usual := g.Name != "units" && g.Name != "limits"
		if g.Parent == model.SectionGroup() {
			usual = first // what a page begins with is not hidden
		}
		return line{kind: lineHeading, group: g, open: p.isOpen(g, model.Place{}, usual)}
	case model.PageRow:
		return line{kind: lineRow, group: g, place: at, open: p.isOpen(g, at, g.Len(p.plan, at) == 1)}
	case model.PageAdd:
		return line{kind: lineAdd, group: g, place: at}
	}
	return line{kind: lineField, ref: l.Ref, group: g, place: at}
}

// isOpen reports whether a heading or row is open; unless told otherwise it is as usual.
func (p *Planner) isOpen(g *model.Group, at model.Place, usual bool) bool {
	if open, said := p.open[openKey(g, at)]; said {
		return open
	}
	return usual
}

func openKey(g *model.Group, at model.Place) string {
	return g.Path() + strconv.Itoa(at.Outer) + "." + strconv.Itoa(at.Inner)
}

// goTo brings the field with a path into focus, opening what hides it, and reports whether there is one.
func (p *Planner) goTo(path model.Path) bool {
	ref, ok := model.Find(p.plan, path)
	if !ok {
		return p.goToList(path)
	}
	p.topic, p.figures, p.view = ref.Field.Topic, false, viewFields
	if strings.HasPrefix(string(path), "section[") {
		p.section = ref.Place.Outer
	}
	for g := ref.Group; g != nil && g != model.SectionGroup(); g = g.Parent {
		at := ref.Place
		if !g.List {
			at = model.Place{}
		}
		p.open[openKey(g, at)] = true
	}
	lines := p.lines()
	for i, l := range lines {
		if l.kind == lineField && l.ref == ref {
			p.focusLine(lines, i)
			return true
		}
	}
	return false
}

// goToList brings the line that adds to a list into focus, and reports whether there is one.
func (p *Planner) goToList(path model.Path) bool {
	list, at, ok := model.FindList(p.plan, path)
	return ok && p.goToRow(list, list.At(at, list.Len(p.plan, at)))
}

// goToRow brings a row of a list into focus, or the line that adds to it when there is no such row, and reports whether
// there is either.
func (p *Planner) goToRow(list *model.Group, at model.Place) bool {
	p.topic, p.figures, p.view = list.Topic, false, viewFields
	if list.Parent == model.SectionGroup() {
		p.section = at.Outer
	}
	if list.Parent != nil {
		p.open[openKey(list.Parent, model.Place{})] = true
	}
	lines := p.lines()
	for i, l := range lines {
		if l.group == list && (l.kind == lineRow && l.place == at || l.kind == lineAdd) {
			p.focusLine(lines, i)
			return true
		}
	}
	return false
}

// whereIs names an entry or a list in words, for a person to go to.
func (p *Planner) whereIs(path model.Path) string { return wording.WhereIs(p.plan, path) }

// summary returns the content of a list's row on one line of a width; numbers that follow each other in one unit share it. What
// has no room is left out, a number as a whole.
func (p *Planner) summary(l line, room int) string {
	const rest = " .."
	fits := func(text string) bool { return canvas.Width(p.glyphs.Translate(text)) <= room+1 } // it begins with a blank
	text, pending := "", ""
	for _, f := range l.group.Fields {
		ref := model.Ref{Group: l.group, Field: f, Place: l.place}
		entry := ref.Get(p.plan)
		if !f.Brief || !entry.IsSet() || ref.Idle(p.plan) != "" {
			continue
		}
		number, unit := f.ScreenText(entry, p.system), ""
		if f.Type == model.QuantityField {
			if symbol := p.system.Unit(f.Kind).Symbol(); symbol != "" {
				number, unit = quantity.Format(entry.Quantity.SI, f.Kind, p.system.Unit(f.Kind)), " "+symbol
			}
		}
		next := text
		if pending != unit {
			next += pending
		}
		if next += " " + number; !fits(next + unit) {
			if text += pending; f.Type != model.QuantityField {
				text = p.words(text, number, room+1)
			}
			if fits(text + rest) {
				text += rest
			}
			return strings.TrimPrefix(text, " ")
		}
		text, pending = next, unit
	}
	if text += pending; text == "" {
		return "(blank)"
	}
	return text[1:]
}

// words adds to a text what of another has room in a width, cut at a blank, or within its first word where nothing stands before.
func (p *Planner) words(text, more string, width int) string {
	for n, word := range strings.Fields(more) {
		next := text + " " + word
		if canvas.Width(p.glyphs.Translate(next)) > width {
			if n == 0 && text == "" {
				return canvas.Clip(p.glyphs.Translate(next), width)
			}
			break
		}
		text = next
	}
	return text
}

// listAt returns the list that adding or removing a row acts on at the focus: the row's own, or on the hole page the
// sections.
func (p *Planner) listAt() *model.Group {
	l := p.focused()
	if l.group != nil && l.group.List && l.group != model.SectionGroup() {
		return l.group
	}
	if p.topic == model.TopicHole {
		return model.SectionGroup()
	}
	return nil
}
