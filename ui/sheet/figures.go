package sheet

import (
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// figureParts returns the figures of one topic of a sheet, a part for each group.
func (p *printer) figureParts(section int, topic model.Topic) []part {
	var parts []part
	var lines [][]calc.Figure
	group := ""
	finish := func() {
		if len(lines) > 0 {
			parts = append(parts, p.figurePart(capital(topic.String())+": "+group, lines))
		}
		lines = nil
	}
	for _, f := range p.result.Sheet(section).Figures {
		if f.Topic != topic {
			continue
		}
		if f.Group != group {
			finish()
			group = f.Group
		}
		if n := len(lines); n > 0 && f.Column != "" && lines[n-1][0].Name == f.Name {
			lines[n-1] = append(lines[n-1], f)
			continue
		}
		lines = append(lines, []calc.Figure{f})
	}
	finish()
	return parts
}

func (p *printer) figurePart(title string, lines [][]calc.Figure) part {
	table := part{title: title, rowHead: "Figure"}
	var blanks gaps
	for _, line := range lines {
		r := row{name: line[0].Name}
		var notes []string
		strokes := false
		for _, f := range line {
			r.cells = append(r.cells, cell{label: f.Column, value: p.figureText(f), number: true})
			strokes = strokes || f.Kind == quantity.Strokes
			if f.Note != "" {
				notes = append(notes, f.Note)
			}
			if !f.OK {
				blanks.add(f, line[0])
			}
		}
		if f := line[0]; strokes && f.OK && f.Kind == quantity.Volume { // what is pumped by strokes
			r.cells = append(r.cells, cell{label: "also", value: p.second(f.Value, f.Kind), number: true})
		}
		if len(notes) > 0 {
			r.cells = append(r.cells, cell{label: "note", value: strings.Join(notes, ", ")})
		}
		table.rows = append(table.rows, r)
	}
	for _, g := range blanks {
		table.remarks = append(table.remarks, g.text(p.plan))
	}
	return table
}

// figureText returns a figure with its unit; a dash when it is blank.
func (p *printer) figureText(f calc.Figure) string {
	if !f.OK {
		return "-"
	}
	return quantity.FormatUnit(f.Value, f.Kind, p.System.Unit(f.Kind))
}

// gaps are the reasons why figures of a group are blank, each with the figures.
type gaps []blank

type blank struct {
	names []string
	why   string
	mend  model.Path
}

// add notes a blank figure of the line that first begins. A line that is blank from its first figure is named once.
func (g *gaps) add(f, first calc.Figure) {
	name := first.Name
	if f.Column != "" && (first.OK || first.Why != f.Why || first.Mend != f.Mend) {
		name += ", " + f.Column
	} else if f.Column != "" {
		return
	}
	for i := range *g {
		if b := &(*g)[i]; b.why == f.Why && b.mend == f.Mend {
			b.names = append(b.names, name)
			return
		}
	}
	*g = append(*g, blank{[]string{name}, f.Why, f.Mend})
}

func (b blank) text(plan *model.Plan) string {
	text := "Blank: " + strings.Join(b.names, "; ") + ". Why: " + b.why
	if b.mend != "" {
		text += ". To mend: " + fieldText(plan, b.mend)
	}
	return text + "."
}

// fieldText names an entry to go to: its name and its path.
func fieldText(plan *model.Plan, path model.Path) string {
	if ref, ok := model.Find(plan, path); ok {
		return ref.Field.Name + " (" + string(path) + ")"
	}
	if list, _, ok := model.FindList(plan, path); ok {
		return "add " + strings.ToLower(list.Title) + " (" + string(path) + ")"
	}
	return string(path)
}

// toMend says why there is nothing, and which entry puts it right.
func (p *printer) toMend(why string, mend model.Path) string {
	if mend == "" {
		return why
	}
	return why + "; " + fieldText(p.plan, mend)
}

// lacking says why a paper cannot be made that hangs on a figure; empty when the figure is there.
func (p *printer) lacking(i int, key, otherwise string) string {
	f, ok := p.result.Sheet(i).Find(key)
	switch {
	case ok && f.OK:
		return ""
	case f.Why == "":
		return otherwise
	}
	return p.toMend(f.Why, f.Mend)
}
