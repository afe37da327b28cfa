package ui

import (
	"borewalk/model"
	"borewalk/ui/canvas"
)

// drawFields draws the fields pane, the focus in view.
func (p *Planner) drawFields(r canvas.Region) {
	lines, at := p.focusedLine()
	first := max(0, min(at-r.H()/2, len(lines)-r.H()))
	for y := 0; y < r.H() && first+y < len(lines); y++ {
		p.drawLine(r.Sub(0, y, r.W(), 1), lines[first+y], first+y == at && !p.figures)
	}
	if first > 0 {
		r.Put(r.W()-1, 0, p.glyphs.Up, canvas.Heading)
	}
	if first+r.H() < len(lines) {
		r.Put(r.W()-1, r.H()-1, p.glyphs.Down, canvas.Heading)
	}
}

// drawLine draws one line of the fields pane: a mark for focus, change or finding, a label, and the content.
func (p *Planner) drawLine(r canvas.Region, l line, focused bool) {
	mark, style := " ", canvas.Plain
	if focused {
		mark, style = string(p.glyphs.Mark), canvas.Focus
	}
	switch l.kind {
	case lineField:
		p.drawField(r, l, mark, style, focused)
	case lineAdd:
		r.Text(0, 0, mark+" add "+l.group.Title+" ...", style)
	default:
		p.drawRow(r, l, mark, style)
	}
}

// rowMark is how many columns the marks before a row take.
const rowMark = 3

// drawRow draws a heading or a row of a list, with a sign that says whether it opens.
func (p *Planner) drawRow(r canvas.Region, l line, mark string, style canvas.Style) {
	sign := "+ "
	if l.open {
		sign = "- "
	}
	text := l.group.Title
	if l.kind == lineRow && !l.open {
		text = p.summary(l, r.W()-rowMark)
	} else if l.kind == lineRow {
		text = l.group.Title + " " + itoa(l.group.Index(l.place)+1)
	}
	if style == canvas.Plain && l.kind == lineHeading {
		style = canvas.Heading
	}
	r.Text(0, 0, mark+sign+p.glyphs.Translate(text), style)
}

func (p *Planner) drawField(r canvas.Region, l line, mark string, style canvas.Style, focused bool) {
	entry := l.ref.Get(p.plan)
	value := p.glyphs.Translate(l.ref.Field.ScreenText(entry, p.system))
	valueStyle := canvas.Plain // the label alone is reversed in focus: what keeps its look is not sent again
	typed := p.edit != nil && p.edit.ref == l.ref
	switch {
	case typed:
		value, valueStyle = "["+p.withCursor(p.edit.input, r.W()/2)+"]", canvas.Entry
	case value == "" && l.ref.Field.Required:
		value, valueStyle = "needed", canvas.Caution
	case value == "":
		value = "-"
	case l.ref.AsBuilt(p.plan) != "":
		value = "(" + value + ")" // planned, and as built otherwise
	}
	if !typed {
		mark, valueStyle = p.fieldMark(l.ref, mark, focused, valueStyle)
	}
	label := l.ref.Field.Label
	const least = 5 // columns that a label is recognised by
	room := r.W() - 3
	valueRoom := min(canvas.Width(value), max(room-canvas.Width(label)-1, room/2))
	if l.ref.Field.Type == model.QuantityField || typed { // no number is cut
		valueRoom = min(canvas.Width(value), room-least-1)
	}
	r.Text(0, 0, mark, style)
	r.Text(2, 0, canvas.Squeeze(label, room-valueRoom-1), style)
	if typed && p.edit.fault != "" {
		r.Put(1, 0, '!', canvas.Stop)
	}
	if l.ref.Field.Type != model.QuantityField {
		value = canvas.Cut(value, valueRoom)
	}
	r.TextRight(r.W()-1-valueRoom, 0, valueRoom, value, valueStyle)
}

// fieldMark marks a field that a finding points at, one in focus behind the mark of that.
func (p *Planner) fieldMark(ref model.Ref, mark string, focused bool, style canvas.Style) (string, canvas.Style) {
	worst, found := p.marks[ref.Path()]
	switch {
	case !found:
		return mark, style
	case focused:
		return mark + "!", severityStyle(worst)
	}
	return p.severityMark(worst), severityStyle(worst)
}
