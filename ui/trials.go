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

func (u *trials) hint() string {
	if len(u.compared.Trials) == 0 {
		return "a new trial · k keep what was edited · u undo · esc"
	}
	return "arrows · enter value · c change · a new · k keep · p promote · d remove · esc"
}

func (u *trials) update(p *Planner, m tea.KeyMsg) {
	p.message = ""
	switch m.String() {
	case "esc", "q", "ctrl+c", "T":
		p.overlay = nil
		return
	case "up":
		u.step(-1)
	case "down":
		u.step(1)
	case "pgup":
		u.step(-10)
	case "pgdown":
		u.step(10)
	case "home":
		u.step(-len(u.rows))
	case "end":
		u.step(len(u.rows))
	case "left", "h":
		u.trial = max(0, u.trial-1)
	case "right", "l":
		u.trial = max(0, min(u.trial+1, len(u.compared.Trials)-1))
	case "a":
		u.askNew(p)
	case "k":
		u.askKeep(p)
	case "u":
		u.walkBack(p, p.nothingToUndo(), (*Planner).undo)
	case "r", "ctrl+r":
		u.walkBack(p, p.nothingToRedo(), (*Planner).redo)
	default:
		u.updateTrial(p, m.String())
	}
	u.say(p)
}

// updateTrial gives a key to the trial in focus.
func (u *trials) updateTrial(p *Planner, key string) {
	act := map[string]func(*trials, *Planner, *calc.Trial){
		"enter": (*trials).enter, "c": (*trials).askEntry, "n": (*trials).askName, "p": (*trials).askPromote, "d": (*trials).askRemove,
	}[key]
	if act == nil {
		return
	}
	if t, ok := u.focused(); ok {
		act(u, p, t)
	} else {
		p.message = "there is no trial of this section yet; a makes one"
	}
}

// walkBack undoes or redoes, and shows what there is then.
func (u *trials) walkBack(p *Planner, blocked string, walk func(*Planner)) {
	if blocked != "" {
		p.message = blocked
		return
	}
	section, topic := p.section, p.topic
	walk(p)
	p.topic, p.section = topic, min(section, len(p.plan.Sections)-1)
	if p.overlay = nil; p.section >= 0 {
		u.again(p)
	}
}
