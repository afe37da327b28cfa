package ui

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// stopMark stands before a stop point, ifMark before what is done when it does not go as planned.
const (
	stopMark = "STOP "
	ifMark   = "IF   "
)

// draw draws the step: its head, how far it is, the figures of the moment, and the text of it.
func (u *walking) draw(p *Planner, r canvas.Region) {
	r.Fill(' ', canvas.Plain)
	y := u.drawHead(p, r)
	y += u.drawMoment(p, r.Sub(0, y, r.W(), r.H()-y))
	r.HLine(0, y, r.W(), p.glyphs.Horizontal, canvas.Faint)
	u.drawText(p, r.Sub(0, y+1, r.W(), max(0, r.H()-y-1)))
}

// drawHead draws number, name, who does it and how long it takes, and returns the rows used.
func (u *walking) drawHead(p *Planner, r canvas.Region) int {
	s := u.step()
	style, state := canvas.Title, u.duration(p, s)
	if s.Struck {
		style, state = canvas.Faint, "struck"
	}
	r.Text(1, 0, canvas.Cut(fmt.Sprintf("%d of %d  %s", u.at+1, len(u.steps), p.glyphs.Translate(s.Name)), r.W()-3-canvas.Width(state)), style)
	r.TextRight(0, 0, r.W()-1, state, canvas.Plain)
	r.Text(1, 1, canvas.Clip(p.glyphs.Translate(s.Who), r.W()-2), canvas.Faint)
	return 2
}

// duration returns the likely duration with its range.
func (u *walking) duration(p *Planner, s *calc.Step) string {
	if !s.Timed {
		return "- h"
	}
	return p.show(s.Likely, quantity.Hours) + " (" + p.amount(s.Low, quantity.Hours) + " to " + p.amount(s.High, quantity.Hours) + ")"
}

// drawMoment draws how far the step is and the figures of the moment, and returns the rows used.
func (u *walking) drawMoment(p *Planner, r canvas.Region) int {
	f := u.moment()
	if f == nil {
		r.Text(1, 0, canvas.Cut(p.glyphs.Translate(u.why), r.W()-2), canvas.Caution)
		return 1
	}
	frames := u.job().Frames
	when := p.show(f.Time, quantity.Hours)
	right := "at " + when
	if f.Pumped > 0 && u.step().Kind != calc.Drilling { // there it is the hours that count
		right += ", pumped " + p.show(f.Pumped, quantity.Volume)
		if f.Strokes > 0 {
			right += " " + p.show(f.Strokes, quantity.Strokes)
		}
	}
	r.TextRight(0, 0, r.W()-1, right, canvas.Plain)
	r.Text(1, 0, bar(p, u.frame, len(frames)-1, min(24, r.W()-4-canvas.Width(right))), canvas.Plain)
	return 1 + u.drawGauges(p, r.Sub(0, 1, r.W(), max(0, r.H()-1)), f.At)
}

// bar returns how far something is, of so many moments, as a bar of a width.
func bar(p *Planner, at, of, width int) string {
	if width < 3 {
		return ""
	}
	done := width - 2
	if of > 0 {
		done = (width - 2) * at / of
	}
	return p.glyphs.Translate("[" + strings.Repeat("=", done) + strings.Repeat(".", width-2-done) + "]")
}

// gaugeWidth is the room that a figure of the moment takes at least.
const gaugeWidth = 29

// drawGauges draws the figures of a moment in columns, and returns the rows used.
func (u *walking) drawGauges(p *Planner, r canvas.Region, at *calc.WalkAt) int {
	list := append([]calc.JobGauge{{Name: "Hole", Kind: quantity.Length, Value: at.Hole}}, at.Gauges...)
	columns := max(1, r.W()/gaugeWidth)
	width := r.W() / columns
	for k, g := range list {
		x, y := k%columns*width, k/columns
		value := p.show(g.Value, g.Kind)
		r.Text(x+1, y, canvas.Squeeze(p.glyphs.Translate(g.Name), width-3-canvas.Width(value)), canvas.Faint)
		r.TextRight(x, y, width-1, value, canvas.Plain)
	}
	return (len(list) + columns - 1) / columns
}

// walkLine is a line of a step's text.
type walkLine struct {
	text  string
	style canvas.Style
}

// drawText draws what is done, the stop points, the numbers and the contingencies, from the line scrolled to.
func (u *walking) drawText(p *Planner, r canvas.Region) {
	lines := u.lines(p, r.W()-2)
	u.scroll = max(0, min(u.scroll, len(lines)-r.H()))
	for y := 0; y < r.H() && u.scroll+y < len(lines); y++ {
		l := lines[u.scroll+y]
		r.Text(1, y, l.text, l.style)
	}
	if u.scroll > 0 {
		r.Put(r.W()-1, 0, p.glyphs.Up, canvas.Heading)
	}
	if u.scroll+r.H() < len(lines) {
		r.Put(r.W()-1, r.H()-1, p.glyphs.Down, canvas.Heading)
	}
}

// lines returns the text of the step in lines of a width.
func (u *walking) lines(p *Planner, width int) (lines []walkLine) {
	s := u.step()
	add := func(mark, text string, style canvas.Style) {
		for k, part := range wrap(p.glyphs.Translate(text), width-len(mark)) {
			if k > 0 {
				mark = strings.Repeat(" ", len(mark))
			}
			lines = append(lines, walkLine{mark + part, style})
		}
	}
	if s.Note != "" {
		add("NOTE ", s.Note, canvas.Changed)
	}
	add("", s.Do, canvas.Plain)
	for _, stop := range s.Stops {
		add(stopMark, stop, canvas.Caution)
	}
	lines = append(lines, u.numbers(p, width)...)
	for _, what := range s.Contingency {
		add(ifMark, what, canvas.Plain)
	}
	if s.By != "" {
		add("TIME ", s.By, canvas.Faint)
	}
	add("", "Order, stop points and contingencies are common practice; approved procedures and the supervisor rule.", canvas.Faint)
	if !s.Timed && s.Why != "" {
		add("TIME ", s.Why, canvas.Caution)
	}
	return lines
}

// numbers returns the step's numbers in one or two columns.
func (u *walking) numbers(p *Planner, width int) (lines []walkLine) {
	columns := max(1, width/gaugeWidth)
	room := width / columns
	line := ""
	list := u.step().Numbers
	for k, n := range list {
		value := "-"
		if n.OK {
			value = p.show(n.Value, n.Kind)
		}
		name := canvas.Squeeze(p.glyphs.Translate(n.Name), room-2-canvas.Width(value))
		line += pad(name, room-1-canvas.Width(value)) + value + " "
		if (k+1)%columns == 0 || k == len(list)-1 {
			lines = append(lines, walkLine{strings.TrimRight(line, " "), canvas.Heading})
			line = ""
		}
	}
	return lines
}
