package ui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// walking is an overlay that goes through the operations of a section: the schematic shows the well at each moment, the page what
// is done, by whom, when somebody is called, and what if it goes wrong.
type walking struct {
	section int
	steps   []calc.Step
	jobs    []calc.Job // of the steps; none where the well cannot be walked through, and then why says what keeps it
	why     string
	looks   []look
	at      int // the step
	frame   int // the moment of it
	scroll  int // first line of the text shown
}

func (p *Planner) noWalk() string {
	switch {
	case p.topic == model.TopicWell:
		return "operations belong to a section: go to one of its pages first"
	case len(p.plan.Sections) == 0:
		return "there is no section"
	case len(p.result.Steps[p.section]) == 0:
		return "there are no operations yet: the hole has no depths"
	}
	return ""
}

// openWalk opens the walk at the operation in focus on the steps page, elsewhere at the section's first.
func (p *Planner) openWalk() {
	key := ""
	if f, ok := p.focusedFigure(); ok && p.figures && p.topic == model.TopicSteps {
		key = strings.TrimPrefix(f.Key, "steps.")
	}
	p.walkFrom(key, 0)
}

// walkFrom opens the walk at the operation of a key, the first where there is none.
func (p *Planner) walkFrom(key string, scroll int) {
	u := &walking{section: p.section, steps: p.result.Steps[p.section], scroll: scroll}
	jobs, why, mend := calc.Walk(p.plan, p.section)
	if u.jobs, u.why = jobs, why; why != "" && mend != "" {
		u.why += "; see " + p.whereIs(mend)
	}
	if len(jobs) > 0 {
		u.looks = looksOf(jobs[0].Fluids, p.glyphs)
	}
	u.at = max(0, slices.IndexFunc(u.steps, func(s calc.Step) bool { return s.Key == key }))
	p.overlay = u
}

func (u *walking) step() *calc.Step { return &u.steps[u.at] }

// job returns the moments of the step, nil where there are none.
func (u *walking) job() *calc.Job {
	if u.at >= len(u.jobs) {
		return nil
	}
	return &u.jobs[u.at]
}

// moment returns the moment shown, nil where there is none.
func (u *walking) moment() *calc.JobFrame {
	job := u.job()
	if job == nil {
		return nil
	}
	u.frame = max(0, min(u.frame, len(job.Frames)-1))
	return &job.Frames[u.frame]
}

// state is the moment for the schematic, nil where there is none.
func (u *walking) state() *schematic.State {
	f := u.moment()
	if f == nil {
		return nil
	}
	return &schematic.State{Job: u.job(), Frame: f, RunTo: f.At.Pipe, Fill: u.look}
}

func (u *walking) look(fluid int) (rune, canvas.Style) {
	if fluid < 0 || fluid >= len(u.looks) {
		return ' ', canvas.Plain
	}
	return u.looks[fluid].glyph, u.looks[fluid].style
}

func (u *walking) keys(p *Planner) []binding {
	turn := func(keys, shown, help, short string, by int) binding {
		return on(keys, shown, help, short, func(*Planner) { u.turn(by) })
	}
	scrub := func(keys, shown, help, short string, by int) binding {
		return on(keys, shown, help, short, func(*Planner) { u.scrub(by) })
	}
	keys := []binding{
		turn("n ] tab", "n or ]", "next step", "n p step", 1), turn("p [ shift+tab", "p or [", "step before", "", -1),
		scrub("right", "right", "next moment", "left right moment", 1), scrub("left", "left", "moment before", "", -1),
		scrub("pgdown shift+right", "page down", "five moments on", "", 5), scrub("pgup shift+left", "page up", "five moments back", "", -5),
		on("home", "home", "first moment of the step", "", func(*Planner) { u.frame = 0 }), scrub("end", "end", "last moment of the step", "", 1<<20),
		on("down j", "down", "text down", "up down text", func(*Planner) { u.scroll++ }),
		on("up k", "up", "text up", "", func(*Planner) { u.scroll = max(0, u.scroll-1) }),
	}
	keys = append(keys, u.changes()...)
	return append(keys, on("m", "m", "other units", "", (*Planner).turnUnits), on("u", "u", "undo", "u undo", u.undo).unless((*Planner).nothingToUndo),
		closing("W", "closes", func(p *Planner) { p.overlay = nil }).saying("q closes"))
}

// below names the step and says where in it the moment is.
func (u *walking) below() (title, detail string) {
	s := u.step()
	title = fmt.Sprintf("step %d of %d: %s", u.at+1, len(u.steps), s.Name)
	if u.why != "" {
		return title, "The well is not drawn on its way: " + u.why
	}
	if s.Struck {
		return title, "Struck: it is not done, takes no time and changes nothing in the well. x puts it back."
	}
	return title, fmt.Sprintf("Moment %d of %d. x strikes it, < > move it, a adds one after it, e note, c stop point, t duration.", u.frame+1, len(u.job().Frames))
}

func (u *walking) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// turn goes to another step, to its start; back from the start of one is to the start of the one before.
func (u *walking) turn(by int) {
	u.at = max(0, min(u.at+by, len(u.steps)-1))
	u.frame, u.scroll = 0, 0
}

// scrub goes to another moment of the step; beyond its ends to the neighbouring step.
func (u *walking) scrub(by int) {
	job := u.job()
	if job == nil {
		u.turn(by / max(by, -by))
		return
	}
	to := u.frame + by
	switch {
	case to < 0 && u.at > 0 && u.frame == 0:
		u.turn(-1)
		u.frame = 1 << 20
	case to >= len(job.Frames) && u.at < len(u.steps)-1 && u.frame == len(job.Frames)-1:
		u.turn(1)
	default:
		u.frame = to
	}
	u.moment()
}
