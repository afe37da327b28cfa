package ui

import (
	"cmp"
	"strings"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// drawFooter draws what is known of the focus, the worst finding or a message, and the keys that act here.
func (p *Planner) drawFooter(r canvas.Region, l layout) {
	y := l.footer
	// No line behind the title: each move of the focus would send it anew.
	if title := p.focusTitle(); title != "" {
		r.HLine(0, y, 2, p.glyphs.Horizontal, canvas.Faint)
		r.Text(3, y, canvas.Cut(p.glyphs.Translate(title), r.W()-4), canvas.Heading)
	}
	room := r.Sub(1, y+1, r.W()-2, detailRows)
	if p.edit != nil && p.overlay == nil {
		room = p.drawEntry(room)
	}
	text, style := p.focusDetail()
	said, saidStyle := p.statusLine()
	detail, status := wrap(p.glyphs.Translate(text), room.W()), wrap(p.glyphs.Translate(said), r.W()-2)
	// A message that needs two lines takes one of the detail's; the worst finding does so only where that is free.
	rows := 1
	if len(status) > 1 && (p.message != "" && p.edit == nil || p.onField() || len(detail) < detailRows) {
		rows = 2
	}
	most := detailRows + 1 - rows
	if p.onField() { // one line, so that what stands below keeps its place from field to field
		most = 1
	}
	for i, part := range cutTo(detail, most) {
		room.Text(0, i, canvas.Cut(part, room.W()), style)
	}
	for i, part := range cutTo(status, rows) {
		r.Text(1, y+2+detailRows-rows+i, canvas.Cut(part, r.W()-2), saidStyle)
	}
	r.Text(1, y+2+detailRows, p.keyLine(r.W()-2), canvas.Faint)
}

// onField reports whether the foot tells of a line of the fields pane.
func (p *Planner) onField() bool { return p.overlay == nil && p.edit == nil && !p.figures }

// cutTo returns the first lines of a text, so many at most; two points at the end of the last say that there is more.
func cutTo(lines []string, n int) []string {
	if len(lines) <= n {
		return lines
	}
	lines[n-1] += " .."
	return lines[:n]
}

// drawEntry draws the entry being typed and returns the room beside it, which moves only where the entry grows over a step: what
// stands there stays in its place from key to key.
func (p *Planner) drawEntry(r canvas.Region) canvas.Region {
	const step, most = 16, 40
	entry := "[" + p.withCursor(p.edit.input, most) + "]"
	room := (canvas.Width(entry)/step + 1) * step
	r.Text(0, 0, entry, canvas.Entry)
	return r.Sub(room, 0, r.W(), r.H())
}

// focusTitle names what has the focus in full.
func (p *Planner) focusTitle() string {
	if p.overlay != nil {
		title, _ := p.below()
		return title
	}
	if p.edit != nil {
		return "typing: " + p.edit.ref.Field.Name
	}
	if p.figures {
		if f, ok := p.focusedFigure(); ok {
			return f.Name
		}
		return "figures"
	}
	l := p.focused()
	switch l.kind {
	case lineField:
		return l.ref.Field.Name
	case lineAdd:
		return "add " + strings.ToLower(l.group.Title)
	}
	return l.group.Title
}

// below is what the overlay says below the page, but for what stands whole in its box.
func (p *Planner) below() (title, detail string) {
	title, detail = p.overlay.below()
	u, ok := p.overlay.(boxed)
	if !ok {
		return title, detail
	}
	above, text := u.inBox()
	if title == above && canvas.Width(p.glyphs.Translate(title)) <= p.pageWidth()-6 {
		title = ""
	}
	if detail == text && canvas.Width(p.glyphs.Translate(detail)) <= p.pageWidth()-4 {
		detail = ""
	}
	return title, detail
}

// focusDetail says more of the focus: what the entry being typed may be, what a field is, where a figure holds, or the
// whole of a line that an overlay had to cut.
func (p *Planner) focusDetail() (string, canvas.Style) {
	if u, ok := p.overlay.(teller); ok {
		return u.inWords(p), canvas.Plain
	}
	if p.overlay != nil {
		_, detail := p.below()
		return detail, canvas.Plain
	}
	if p.edit != nil {
		return p.editHint(), canvas.Plain
	}
	if p.figures {
		f, ok := p.focusedFigure()
		switch {
		case !ok:
			return "", canvas.Plain
		case !f.OK:
			return "blank: " + f.Why + "; see " + p.whereIs(f.Mend), canvas.Caution
		}
		return p.inWords(p.focusedFigures()), canvas.Plain
	}
	l := p.focused()
	switch l.kind {
	case lineField:
		text := brief(l.ref.Field.Help)
		if why := l.ref.AsBuilt(p.plan); why != "" {
			text = why + ". " + text
		}
		if p.view != viewFields { // the field itself is out of sight
			text = "[" + cmp.Or(l.ref.Field.ScreenText(l.ref.Get(p.plan), p.system), "blank") + "]  " + text
		}
		return text, canvas.Plain
	}
	return brief(l.group.Help), canvas.Plain
}

// focusInFull says all of what has the focus among the fields: its name, and its range and help, of which the foot has the beginning.
func (p *Planner) focusInFull() (title, text string) {
	l := p.focused()
	switch {
	case p.figures || l.group == nil && l.ref.Field == nil:
		return "", ""
	case l.kind != lineField:
		return l.group.Title, l.group.Help
	}
	text = l.ref.Field.Help
	if r := l.ref.Field.RangeText(p.system); r != "" {
		text = r + ". " + text
	}
	return l.ref.Field.Name, text
}

// brief is the first sentence of a help, which is sent with each move of the focus; two points say that ? has more of it.
func brief(help string) string {
	if first, _, more := strings.Cut(help, ". "); more {
		return first + " .."
	}
	return help
}

// editHint says what the entry being typed may be, or what is wrong with it.
func (p *Planner) editHint() string {
	if p.edit.fault != "" {
		return "! " + p.edit.fault
	}
	if r := p.edit.ref.Field.RangeText(p.system); r != "" {
		return r
	}
	return brief(p.edit.ref.Field.Help)
}

// statusLine shows the last message, else the worst finding, of several as bad the one that the page in view mends.
func (p *Planner) statusLine() (string, canvas.Style) {
	if p.message != "" {
		if p.alarm.message == p.message {
			return p.message, severityStyle(p.alarm.severity)
		}
		return p.message, canvas.Plain
	}
	if u, ok := p.overlay.(teller); ok {
		return u.found(p)
	}
	if p.edit != nil && p.edit.fault != "" {
		return "until it is right the figures follow what stood before: " + cmp.Or(p.edit.ref.Field.ScreenText(p.edit.ref.Get(p.plan), p.system), "blank"), canvas.Caution
	}
	if list := p.sortedFindings(calc.Caution); len(list) > 0 {
		return p.findingText(list[0]), severityStyle(list[0].Severity)
	}
	return "no finding beyond ok; that says only that the limits compared were met", canvas.OK
}
