package ui

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
)

// trials is an overlay that shows a section's trials side by side: what each changes, and what becomes of the figures and findings.
// It is made anew whenever the plan changes.
type trials struct {
	plan     *model.Plan // a copy, to work on beside the keys
	compared calc.SideBySide
	worked   int // how many of the trials are worked out
	rows     []trialRow
	at       int // the row in focus
	trial    int // the trial in focus
	detail   string
	busy     bool
}

// trialRowKind says what a row of the overlay is.
type trialRowKind uint8

const (
	rowHeading trialRowKind = iota
	rowNote
	rowEntry
	rowAdd
	rowFigure
	rowFinding
)

// trialRow is a row of the overlay: one of its own, or what it says of each trial.
type trialRow struct {
	kind    trialRowKind
	text    string
	entry   calc.ComparedEntry
	figure  calc.ComparedFigure
	finding calc.ComparedFinding
}

// noTrials says why there is nothing to be tried here.
func (p *Planner) noTrials() string {
	switch {
	case len(p.plan.Sections) == 0:
		return "there is no section"
	case p.topic == model.TopicWell:
		return "trials are of a section; go to one of its pages"
	}
	return ""
}

func (p *Planner) showTrials() tea.Cmd {
	p.openTrials(0, 0)
	p.begin()
	return p.goOn()
}

// openTrials shows the section's trials as the plan has them now, with a row and a trial in focus.
func (p *Planner) openTrials(row, trial int) {
	u := &trials{plan: p.plan.Clone(), at: row}
	u.compared = calc.SideBySide{Section: p.section, Now: p.result, Trials: calc.ReadTrials(u.plan, p.section)}
	u.trial = max(0, min(trial, len(u.compared.Trials)-1))
	u.list(p)
	p.overlay = u
}

// again shows the trials after something was changed, where they were.
func (u *trials) again(p *Planner) { p.openTrials(u.at, u.trial) }

// list makes the rows anew, as far as the trials are worked out.
func (u *trials) list(p *Planner) {
	u.rows = []trialRow{{kind: rowNote, text: "Note"}, {kind: rowHeading, text: "Changes"}}
	for _, e := range u.compared.Entries() {
		u.rows = append(u.rows, trialRow{kind: rowEntry, entry: e})
	}
	u.rows = append(u.rows, trialRow{kind: rowAdd, text: "add a change ..."})
	heading := ""
	for _, f := range u.compared.Figures() {
		under := "Figures that stay"
		if f.Moves {
			under = "Figures that move"
		}
		if under != heading {
			heading = under
			u.rows = append(u.rows, trialRow{kind: rowHeading, text: heading})
		}
		u.rows = append(u.rows, trialRow{kind: rowFigure, figure: f})
	}
	u.rows = append(u.rows, trialRow{kind: rowHeading, text: "Findings that come or go"})
	for _, f := range u.compared.Findings() {
		u.rows = append(u.rows, trialRow{kind: rowFinding, finding: f})
	}
	u.step(0)
	u.say(p)
}

// step moves the focus by n rows, passing over headings.
func (u *trials) step(n int) {
	last := len(u.rows) - 1
	u.at = max(0, min(u.at+n, last))
	by := 1
	if n < 0 {
		by = -1
	}
	for u.rows[u.at].kind == rowHeading {
		if u.at+by < 0 || u.at+by > last {
			by = -by
		}
		u.at += by
	}
}

func (u *trials) waits() *bool { return &u.busy }

func (u *trials) patient() bool { return true }

// more works out the trials that are not yet.
func (u *trials) more() func(time.Time) func(*Planner) {
	if u.worked >= len(u.compared.Trials) {
		return nil
	}
	plan, todo := u.plan, slices.Clone(u.compared.Trials[u.worked:])
	return func(until time.Time) func(*Planner) {
		n := 0
		for n < len(todo) {
			todo[n].WorkOut(plan)
			if n++; !time.Now().Before(until) {
				break
			}
		}
		return func(p *Planner) {
			copy(u.compared.Trials[u.worked:], todo[:n])
			u.worked += n
			u.list(p)
		}
	}
}

// focused returns the trial in focus, and false when there is none.
func (u *trials) focused() (*calc.Trial, bool) {
	if u.trial >= len(u.compared.Trials) {
		return nil, false
	}
	return &u.compared.Trials[u.trial], true
}

func (u *trials) keys(p *Planner) []binding {
	move := func(keys, shown, help, short string, act func()) binding {
		return on(keys, shown, help, short, func(*Planner) { act() })
	}
	page, last := max(1, p.rows()-4), len(u.compared.Trials)-1
	aside := func(by int) func() { return func() { u.trial = max(0, min(u.trial+by, last)) } }
	down := func(by int) func() { return func() { u.step(by) } }
	ofTrial := func(keys, help, short string, act func(*trials, *Planner, *calc.Trial)) binding {
		return on(keys, keys, help, short, func(p *Planner) { act(u, p, &u.compared.Trials[u.trial]) }).unless(func(*Planner) string {
			if _, ok := u.focused(); !ok {
				return "there is no trial of this section yet; a makes one"
			}
			return ""
		})
	}
	return []binding{
		ofTrial("enter", "edit the value or note in focus", "enter value", (*trials).enter),
		ofTrial("c", "add a change to the trial", "c change", (*trials).askEntry),
		on("a", "a", "make a trial", "a new", u.askNew),
		ofTrial("p", "show what the trial changes, and make it the plan's", "p promote", (*trials).askPromote),
		ofTrial("d", "remove the change in focus, or the trial", "d remove", (*trials).askRemove),
		on("k", "k", "keep as a trial what was edited here since the plan was opened or saved", "k keep", u.askKeep),
		move("down j", "down", "row below", "arrows", down(1)), move("up", "up", "row above", "", down(-1)),
		move("right l", "right", "next trial", "", aside(1)), move("left h", "left", "trial before", "", aside(-1)),
		ofTrial("n", "name of the trial", "", (*trials).askName),
		on("u", "u", "undo", "u undo", func(p *Planner) { u.walkBack(p, (*Planner).undo) }).unless((*Planner).nothingToUndo),
		on("r ctrl+r", "r", "redo", "", func(p *Planner) { u.walkBack(p, (*Planner).redo) }).unless((*Planner).nothingToRedo),
		move("pgdown", "page down", "a page down", "", down(page)), move("pgup", "page up", "a page up", "", down(-page)),
		move("home", "home", "first row", "", down(-len(u.rows))), move("end", "end", "last row", "", down(len(u.rows))),
		closing("T", "closes", func(p *Planner) { p.overlay = nil }).saying("q closes"),
	}
}

func (u *trials) update(p *Planner, m tea.KeyMsg) {
	p.obeyIn(u, m)
	if p.overlay == overlay(u) {
		u.say(p)
	}
}

// walkBack undoes or redoes, and shows what there is then.
func (u *trials) walkBack(p *Planner, walk func(*Planner)) {
	section, topic := p.section, p.topic
	walk(p)
	p.topic, p.section = topic, min(section, len(p.plan.Sections)-1)
	if p.overlay = nil; p.section >= 0 {
		u.again(p)
	}
}
