package ui

import (
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
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
	lines := p.planLines()
	if p.topic == model.TopicWell || p.topic == model.TopicHandover {
		return lines
	}
	if len(p.plan.Sections) == 0 {
		return append(lines, line{kind: lineAdd, group: model.SectionGroup()})
	}
	at := model.Place{Outer: p.section}
	section := model.SectionGroup()
	lines = p.appendFields(lines, section, at)
	for _, g := range section.Lists {
		if g.Topic == p.topic {
			lines = p.appendNested(lines, g, at)
		}
	}
	return lines
}

// appendNested adds a list of a section, or a single table of it, closed until it is opened. What would not count is left out, but for
// rows that are there.
func (p *Planner) appendNested(lines []line, g *model.Group, at model.Place) []line {
	if g.List {
		if g.Len(p.plan, at) == 0 && g.Idle(p.plan, at) != "" {
			return lines
		}
		return p.appendList(lines, g, at)
	}
	fields := p.appendFields(nil, g, at)
	if len(fields) == 0 {
		return lines
	}
	open := p.isOpen(g, model.Place{}, len(lines) == 0) // what a page begins with is not hidden
	lines = append(lines, line{kind: lineHeading, group: g, open: open})
	if open {
		lines = append(lines, fields...)
	}
	return lines
}

// planLines returns the fields of the page that the plan has once, whatever section is open.
func (p *Planner) planLines() []line {
	var lines []line
	for _, g := range model.Groups() {
		switch {
		case g == model.SectionGroup() || !g.On(p.topic):
			continue
		case g.List:
			lines = p.appendList(lines, g, model.Place{})
			continue
		}
		open := p.isOpen(g, model.Place{}, g.Name != "units" && g.Name != "limits")
		lines = append(lines, line{kind: lineHeading, group: g, open: open})
		if open {
			lines = p.appendFields(lines, g, model.Place{})
			for _, list := range g.Lists {
				if listShown(p.plan, list) {
					lines = p.appendList(lines, list, model.Place{})
				}
			}
		}
	}
	return lines
}

// listShown leaves out the survey list while the well path is not given by one.
func listShown(plan *model.Plan, g *model.Group) bool {
	return g.Path() != "trajectory.survey" || plan.Trajectory.Method == model.SurveyList
}

// appendFields adds the fields that count just now, and the planned ones that something as built counts in place of.
func (p *Planner) appendFields(lines []line, g *model.Group, at model.Place) []line {
	for _, f := range g.Fields {
		ref := model.Ref{Group: g, Field: f, Place: at}
		if shown := ref.Idle(p.plan) == "" || ref.AsBuilt(p.plan) != ""; f.Topic == p.topic && shown {
			lines = append(lines, line{kind: lineField, ref: ref, group: g, place: at})
		}
	}
	return lines
}

func (p *Planner) appendList(lines []line, g *model.Group, at model.Place) []line {
	n := g.Len(p.plan, at)
	for i := range n {
		place := g.At(at, i)
		open := p.isOpen(g, place, n == 1)
		lines = append(lines, line{kind: lineRow, group: g, place: place, open: open})
		if open {
			lines = p.appendFields(lines, g, place)
		}
	}
	return append(lines, line{kind: lineAdd, group: g, place: g.At(at, n)})
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
func (p *Planner) whereIs(path model.Path) string {
	if ref, ok := model.Find(p.plan, path); ok {
		return ref.Words()
	}
	if list, _, ok := model.FindList(p.plan, path); ok {
		return "add " + strings.ToLower(list.Title)
	}
	return string(path)
}

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
