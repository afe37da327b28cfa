package ui

import (
	"cmp"
	"fmt"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// Columns of the trials, in cells: the plan's, and a trial's with the change from the plan behind the mark of a finding.
const (
	trialSide  = 19 // names with their units, at least
	trialMost  = 34 // and at most
	trialPlan  = 10
	trialCell  = 15
	trialValue = 7
	trialMark  = 2
	trialHead  = 3 // rows
)

// findingSide is the side of a row of findings, which needs no number of the plan.
func findingSide(side int) int { return side + trialPlan - trialMark - 1 }

func (u *trials) draw(p *Planner, r canvas.Region) {
	title := fmt.Sprintf("Trials of section %d", u.compared.Section+1)
	if n := len(u.compared.Trials); u.worked < n {
		title += fmt.Sprintf(", %d of %d worked out", u.worked, n)
	}
	r.Text(1, 0, canvas.Cut(title, r.W()-1), canvas.Heading)
	if len(u.compared.Trials) == 0 {
		for i, l := range wrap("There are none yet. a makes one, to which c adds changes. k keeps as one what was edited in this section since the plan was opened or saved, and takes it out of the plan.", r.W()-2) {
			r.Text(1, 2+i, l, canvas.Plain)
		}
		return
	}
	room := r.W() - 1 // the last column says that there is more
	columns := max(1, min((room-trialSide-trialPlan)/trialCell, len(u.compared.Trials)))
	side := min(trialMost, room-trialPlan-columns*trialCell)
	first := figuresFrom(u.trial, columns, len(u.compared.Trials))
	u.drawHeads(p, r, side, first, columns)
	rows := r.H() - trialHead
	top := figuresFrom(u.at, rows, len(u.rows))
	for y := 0; y < rows && top+y < len(u.rows); y++ {
		line := r.Sub(0, trialHead+y, r.W(), 1)
		u.drawRow(p, line, u.rows[top+y], side, top+y == u.at)
		for k := range columns {
			u.drawCell(p, line.Sub(side+trialPlan+k*trialCell, 0, trialCell, 1), u.rows[top+y], first+k, top+y == u.at)
		}
	}
	more(p, r, top > 0, top+rows < len(u.rows))
}

// drawHeads names the columns; a trial's name has two lines.
func (u *trials) drawHeads(p *Planner, r canvas.Region, side, first, columns int) {
	r.TextRight(side, 1, trialPlan-trialMark-1, "plan", canvas.Heading)
	for k := range columns {
		t, x := &u.compared.Trials[first+k], side+trialPlan+k*trialCell
		style, mark := canvas.Heading, " "
		if first+k == u.trial {
			style, mark = canvas.Focus, string(p.glyphs.Mark)
		}
		name := cmp.Or(t.Name, "(no name)")
		if t.Why != "" {
			name = "!! " + name
		}
		lines := wrap(p.glyphs.Translate(name), trialCell-2)
		lines[0] = mark + lines[0]
		for y, l := range lines[:min(len(lines), trialHead-1)] {
			if y > 0 {
				l = " " + l
			}
			r.Text(x, 1+y, canvas.Cut(l, trialCell-1), style)
		}
	}
	left, right := "", ""
	if first > 0 {
		left = fmt.Sprintf("< %d more ", first)
	}
	if n := len(u.compared.Trials) - first - columns; n > 0 {
		right = fmt.Sprintf(" %d more >", n)
	}
	r.TextRight(r.W()/2, 0, r.W()-r.W()/2-1, left+right, canvas.Heading)
}

// drawRow draws the side of a row and the plan's column.
func (u *trials) drawRow(p *Planner, r canvas.Region, row trialRow, side int, focused bool) {
	style, mark := canvas.Plain, " "
	if focused {
		style, mark = canvas.Focus, string(p.glyphs.Mark)
	}
	name, unit := row.text, ""
	switch row.kind {
	case rowHeading:
		style, side = canvas.Heading, r.W()
	case rowEntry:
		name = u.entryName(row.entry)
		if ref := row.entry.Ref; ref.Field != nil {
			value := "blank"
			if e := ref.Get(u.plan); ref.Field.Type == model.QuantityField {
				unit = p.system.Unit(ref.Field.Kind).Symbol()
				value = cmp.Or(quantity.FormatValue(e.Quantity, ref.Field.Kind, p.system.Unit(ref.Field.Kind)), value)
			} else {
				value = cmp.Or(e.Text, value)
			}
			r.TextRight(side, 0, trialPlan-trialMark-1, canvas.Cut(p.glyphs.Translate(value), trialPlan-trialMark-1), canvas.Plain)
		}
	case rowFigure:
		name, unit = row.figure.Label, p.system.Unit(row.figure.Kind).Symbol()
		u.drawValue(p, r.Sub(side, 0, trialPlan-1, 1), row.figure.Cells[0], canvas.Plain)
	case rowFinding:
		name, side = sectionWord(row.finding.Section)+row.finding.Text, findingSide(side)
		r.Text(side, 0, p.findingMark(row.finding.Severities[0]), severityStyle(row.finding.Severities[0]))
	}
	unit = p.glyphs.Translate(unit)
	if unit != "" {
		unit = " " + unit
	}
	shorten := canvas.Squeeze
	if row.kind == rowFinding { // a sentence
		shorten = canvas.Cut
	}
	r.Text(0, 0, mark+shorten(p.glyphs.Translate(name), side-2-canvas.Width(unit))+unit, style)
}

// sectionWord says in a few columns which section something is of.
func sectionWord(section int) string {
	if section < 0 {
		return "well: "
	}
	return fmt.Sprintf("%d: ", section+1)
}

// findingMark marks a finding beyond a limit met; one that is met has no mark.
func (p *Planner) findingMark(s calc.Severity) string {
	if s == calc.OK {
		return ""
	}
	return p.severityMark(s)
}

// drawValue draws a figure and the mark of what is found about it.
func (u *trials) drawValue(p *Planner, r canvas.Region, cell calc.FigureCell, style canvas.Style) {
	if cell.Severity > calc.OK {
		r.Text(trialValue, 0, p.severityMark(cell.Severity), severityStyle(cell.Severity))
		if style == canvas.Plain {
			style = severityStyle(cell.Severity)
		}
	}
	r.TextRight(0, 0, trialValue, p.number(cell.Figure), style)
}

// drawCell draws what a row has of a trial.
func (u *trials) drawCell(p *Planner, r canvas.Region, row trialRow, trial int, focused bool) {
	t, style := &u.compared.Trials[trial], canvas.Plain
	if focused = focused && trial == u.trial; focused {
		style = canvas.Focus
	}
	room := r.W() - 1
	switch row.kind {
	case rowNote:
		r.Text(1, 0, canvas.Cut(p.glyphs.Translate(t.Note), room), style)
	case rowEntry:
		u.drawTried(p, r, row.entry, trial, style)
	case rowFinding:
		if text := u.findingChange(p, row, trial+1); text != "" {
			if !focused {
				style = severityStyle(max(row.finding.Severities[0], row.finding.Severities[trial+1]))
			}
			r.Text(1, 0, canvas.Cut(text, room), style)
		}
	case rowFigure:
		if t.Result == nil {
			r.TextRight(0, 0, trialValue, "-", style)
			return
		}
		u.drawValue(p, r, row.figure.Cells[trial+1], style)
		r.TextRight(trialValue+trialMark, 0, r.W()-trialValue-trialMark, p.figureChange(row.figure, trial+1), canvas.Changed)
	}
}

// drawTried draws what a trial makes of an entry.
func (u *trials) drawTried(p *Planner, r canvas.Region, e calc.ComparedEntry, trial int, style canvas.Style) {
	if e.Tried[trial] < 0 {
		if style == canvas.Focus {
			r.TextRight(0, 0, trialValue, "-", style)
		}
		return
	}
	c := &u.compared.Trials[trial].Changes[e.Tried[trial]]
	if c.Fault != "" {
		r.Text(1, 0, canvas.Cut("!! "+c.Fault, r.W()-1), cmp.Or(style, canvas.Stop))
		return
	}
	field := c.Ref.Field
	if field.Type != model.QuantityField || !c.To.IsSet() {
		r.Text(1, 0, canvas.Cut(p.glyphs.Translate(cmp.Or(field.ScreenText(c.To, p.system), "blank")), r.W()-1), style)
		return
	}
	unit, change := p.system.Unit(field.Kind), ""
	if c.Was.IsSet() {
		change = quantity.FormatChange(c.To.Quantity.SI-c.Was.Quantity.SI, field.Kind, unit)
	}
	if c.Idle != "" {
		change = "! idle"
	}
	r.TextRight(0, 0, trialValue, quantity.FormatValue(c.To.Quantity, field.Kind, unit), style)
	r.TextRight(trialValue+trialMark, 0, r.W()-trialValue-trialMark, change, canvas.Changed)
}
