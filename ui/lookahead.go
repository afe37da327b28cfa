package ui

import (
	"fmt"
	"math"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// How far the look-ahead looks, in s: to the next day, and to the next week.
const (
	oneDay  = 24 * 3600
	oneWeek = 7 * oneDay
)

// lookAhead is the list of what is done next, with the stop points. It is worked out when it is opened.
type lookAhead struct {
	menu
	schedule calc.Schedule
	week     bool
}

// showLookAhead opens the look-ahead.
func (p *Planner) showLookAhead() {
	s := calc.ScheduleOf(p.plan)
	switch {
	case len(s.Rows) == 0:
		p.message = "there is nothing to look ahead to: no section has an operation"
		if s.Why != "" {
			p.message = "no look-ahead: " + s.Why + "; see " + p.whereIs(s.Mend)
		}
		return
	case s.Next >= len(s.Rows):
		p.message = "all operations of the plan are done"
		return
	case math.IsNaN(s.Now()):
		p.message = "no look-ahead: " + s.Why + "; see " + p.whereIs(s.Mend)
		return
	}
	u := &lookAhead{schedule: s}
	u.fill(p)
	p.overlay = u
}

func (u *lookAhead) keys(p *Planner) []binding {
	turn := on("L space enter", "L or space", "the next 24 h, or the next 7 days", "L or space 24 h, 7 days", func(p *Planner) {
		u.week = !u.week
		u.fill(p)
	})
	keys := []binding{turn}
	for _, b := range u.menu.keys(p) {
		if b.Help().Key == "page down, space" {
			b = on("pgdown", "page down", "a page down", "", func(p *Planner) { u.step(p.rows() - 3) })
		}
		keys = append(keys, b)
	}
	return keys
}

func (u *lookAhead) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// fill writes the list anew.
func (u *lookAhead) fill(p *Planner) {
	s := &u.schedule
	long, name := float64(oneDay), "24 h"
	if u.week {
		long, name = oneWeek, "7 days"
	}
	u.menu = menu{title: "Next " + name + " from " + u.at(p, s.Now())}
	section := -1
	rows := s.Ahead(0, long)
	for k := range rows {
		row := &rows[k]
		if row.Section != section {
			section = row.Section
			u.say(p, canvas.Heading, fmt.Sprintf("Section %d: %s", section+1, p.plan.Sections[section].Name))
		}
		u.row(p, row)
	}
	if n := len(rows); s.Why != "" && n > 0 && math.IsNaN(rows[n-1].To) {
		u.say(p, canvas.Caution, "Not known from there on: "+s.Why+"; see "+p.whereIs(s.Mend))
	}
	u.say(p, canvas.Plain, "")
	u.end(p, "Section "+itoa(section+1)+" ends", section)
	u.end(p, "Well ends", s.Rows[len(s.Rows)-1].Section)
	u.say(p, canvas.Faint, "By likely durations, weather counted. P10, P90: one in ten is earlier, later than it.")
}

// row writes an operation and its stop points.
func (u *lookAhead) row(p *Planner, row *calc.Planned) {
	mark := "  "
	if row.Progress == calc.GoingOn {
		mark = string(p.glyphs.Mark) + " "
	}
	depth := ""
	if row.Step.To > 0 {
		depth = "  to " + p.depthLabel(row.Step.To) + " " + p.system.Unit(quantity.Length).Symbol()
	}
	text := mark + u.at(p, row.From) + "  " + pad(u.until(p, row), 6) + " " + row.Step.Name + depth
	u.items = append(u.items, item{text: p.glyphs.Translate(text), dead: true})
	for _, stop := range row.Step.Stops {
		for n, l := range wrap(p.glyphs.Translate(stop), p.pageWidth()-12) {
			mark := "      ! "
			if n > 0 {
				mark = "        "
			}
			u.items = append(u.items, item{text: mark + l, style: canvas.Caution, dead: true})
		}
	}
}

// at writes a time of the schedule: as a date, or where the well has no beginning in hours from now.
func (u *lookAhead) at(p *Planner, seconds float64) string {
	if u.schedule.Dated {
		return u.schedule.Begins.After(seconds).Short()
	}
	return pad("in "+quantity.FormatUnit(seconds-u.schedule.Now(), quantity.Hours, p.system.Unit(quantity.Hours)), len(model.Moment(0).Short()))
}

// until writes how long an operation takes.
func (u *lookAhead) until(p *Planner, row *calc.Planned) string {
	if math.IsNaN(row.To) {
		return "?"
	}
	return quantity.FormatUnit(row.To-row.From, quantity.Hours, p.system.Unit(quantity.Hours))
}

// end writes when a section ends, with the band.
func (u *lookAhead) end(p *Planner, what string, section int) {
	row, ok := u.schedule.Ends(section)
	if !ok || math.IsNaN(row.To) {
		return
	}
	u.say(p, canvas.Plain, what+" "+u.at(p, row.To))
	if !math.IsNaN(row.P90) {
		u.say(p, canvas.Plain, "P10 "+u.at(p, row.P10)+"  P90 "+u.at(p, row.P90))
	}
}
