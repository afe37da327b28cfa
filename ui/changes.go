package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/ui/canvas"
)

// origin is a state that the plan is compared with.
type origin struct {
	name    string // "since the handover of 2026-03-01 06:00"
	plan    *model.Plan
	rows    []model.LogRow // what was done since, as far as it is known
	misfits []model.Misfit
}

// withLog returns the plan with what is not saved yet in its log too.
func (p *Planner) withLog() *model.Plan {
	plan := p.plan.Clone()
	plan.Log = p.logged()
	return plan
}

// back is the state that many rows of the log ago.
func (p *Planner) back(name string, n int) origin {
	plan := p.withLog()
	then, misfits := model.Rewind(plan, n)
	return origin{name: name, plan: then, rows: plan.Log[len(plan.Log)-n:], misfits: misfits}
}

// askChanges asks what the plan is to be held against, shows the log, or sets a mark.
func (p *Planner) askChanges() {
	rows := p.logged()
	u := &menu{title: "What changed, and who changed it"}
	var acts []func(*Planner)
	offer := func(text string, act func(*Planner)) {
		u.items = append(u.items, item{text: text, dead: act == nil})
		acts = append(acts, act)
	}
	since := func(mark, without string) {
		n, ok := model.RowsSince(rows, mark)
		switch {
		case ok && n < len(rows):
			name := "since the " + mark + " marked " + logTime(rows[len(rows)-1-n])
			offer(name, func(p *Planner) { p.showChanges(p.back(name, n)) })
		case ok:
			offer(without, func(p *Planner) { p.showChanges(p.back(without, n)) })
		default:
			offer(without, nil)
		}
	}
	since(model.MarkBaseline, "since the log began"+beganText(rows))
	since(model.MarkHandover, "since a handover: none is signed or marked yet")
	offer("since the plan was opened", func(p *Planner) {
		p.showChanges(origin{name: "since the plan was opened", plan: p.opened, rows: rows[min(len(p.opened.Log), len(rows)):]})
	})
	offer("since it was last saved", func(p *Planner) { p.showChanges(p.back("since it was last saved", len(p.history.Pending()))) })
	offer("from another plan's file", (*Planner).askOther)
	offer("the log: when, who, what, why", func(p *Planner) { p.showLog(0) })
	offer("mark a handover here", func(p *Planner) { p.askMark(model.MarkHandover) })
	offer("mark the baseline here", func(p *Planner) { p.askMark(model.MarkBaseline) })
	u.pick = func(p *Planner, i int) { acts[i](p) }
	p.overlay = u
}

// beganText says when a log began.
func beganText(rows []model.LogRow) string {
	if len(rows) == 0 {
		return ": it is empty"
	}
	return ", " + logTime(rows[0])
}

// askMark sets a mark with a note.
func (p *Planner) askMark(mark string) {
	p.overlay = newPrompt("Mark: "+mark, "A note for the log, such as who takes over. It may be left blank.", "", func(p *Planner, note string) string {
		p.history.Mark(mark, note, p.now())
		p.message = mark + " marked; it is kept when the plan is saved"
		return ""
	})
}

// askOther asks for the file of another plan.
func (p *Planner) askOther() {
	p.overlay = newPrompt("Compare with", "Name of another plan's file: what differs from it is shown.", "", func(p *Planner, path string) string {
		if path == "" {
			return "Type the name of the file, or press esc."
		}
		file, err := planfile.Open(path)
		if err != nil {
			return model.Clean(err.Error())
		}
		p.showChanges(origin{name: "from " + model.Clean(path), plan: file.Plan})
		return ""
	})
}

// reasoned is a list in which lines can be given reasons.
type reasoned struct {
	menu
	explain func(p *Planner, i int) // asks for the reason of a line
}

func (u *reasoned) keys(p *Planner) []binding {
	keys := u.menu.keys(p)
	for i, b := range keys {
		if b.Help().Key == "enter" {
			keys = slices.Insert(keys, i+1, on("Y", "Y", "say why; it stands in the log", "Y says why", func(p *Planner) {
				if u.at < len(u.items) {
					u.explain(p, u.at)
				}
			}))
			break
		}
	}
	return keys
}

func (u *reasoned) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// showChanges lists what differs from a state: what was entered, then the findings, then the figures.
func (p *Planner) showChanges(from origin) { p.showChangesAt(from, 0) }

func (p *Planner) showChangesAt(from origin, at int) {
	c := calc.Compare(from.plan, p.plan)
	u := &reasoned{menu: menu{title: "What changed " + from.name, does: "goes there"}}
	goes := map[int]func(*Planner) bool{}
	paths := map[int]model.Path{}
	add := func(it item, goTo func(*Planner) bool) {
		goes[len(u.items)] = goTo
		u.items = append(u.items, it)
	}
	heading := func(text string, n int) {
		u.items = append(u.items, item{text: fmt.Sprintf("%s: %d", text, n), style: canvas.Heading, dead: true})
	}
	for _, m := range from.misfits {
		u.say(p, canvas.Caution, "not as logged: "+m.String())
	}
	heading("Entries", len(c.Entries))
	for _, e := range c.Entries {
		paths[len(u.items)] = e.After
		add(p.entryItem(&e, from.rows), func(p *Planner) bool { return p.goToPath(e.After) })
	}
	known := beyondMet(c.Findings)
	heading("Findings", len(known))
	for _, f := range known {
		add(p.changedFinding(&f), func(p *Planner) bool { return f.Finding().Mend != "" && p.goTo(f.Finding().Mend) })
	}
	if n := len(c.Findings) - len(known); n > 0 {
		u.items = append(u.items, item{text: "and " + strconv.Itoa(n) + " met limits that came or went", dead: true})
	}
	heading("Figures, those near a limit first", len(c.Figures))
	for _, m := range c.Figures {
		add(p.movedItem(&m), func(p *Planner) bool { return p.goToFigure(m.Section, m.Figure()) })
	}
	u.pick = func(p *Planner, i int) {
		if goes[i] == nil || !goes[i](p) {
			p.message = "that is not in the plan as it stands"
		}
	}
	u.explain = func(p *Planner, i int) {
		k := p.lastLogged(paths[i])
		if k < 0 {
			p.message = "Y gives a reason for an entry that is in the log"
			return
		}
		p.askReason(k, func(p *Planner) {
			from.rows = p.logged()[len(p.logged())-len(from.rows):]
			p.showChangesAt(from, i)
		})
	}
	if c.Same() {
		u.say(p, canvas.Plain, "Nothing differs: no entry, no finding, no figure by more than it is shown to.")
	}
	u.at = at
	for u.at < len(u.items)-1 && u.items[u.at].dead {
		u.at++
	}
	p.overlay = u
}

// lastLogged returns the index of the last row of the log about an entry or a row that has a path now; -1 for none.
func (p *Planner) lastLogged(path model.Path) int {
	rows := p.logged()
	about := model.LoggedFor(rows, path)
	if path == "" || len(about) == 0 {
		return -1
	}
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i] == about[0] {
			return i
		}
	}
	return -1
}

// beyondMet returns the findings that are, or were, more than a limit that is met.
func beyondMet(list []calc.FindingChange) (known []calc.FindingChange) {
	for _, f := range list {
		if f.Worst() > calc.OK {
			known = append(known, f)
		}
	}
	return known
}

// goToPath brings an entry, a row or a list into focus, and reports whether the plan has it.
func (p *Planner) goToPath(path model.Path) bool {
	if g, at, ok := model.FindRow(p.plan, path); ok && g.Has(p.plan, at) {
		if g == model.SectionGroup() {
			p.section, p.topic, p.figures, p.view = at.Outer, model.TopicHole, false, viewFields
			p.focusLine(p.lines(), 0)
			return true
		}
		p.topic = g.Topic
		if strings.HasPrefix(string(path), "section[") {
			p.section = at.Outer
		}
		return p.goToRow(g, at)
	}
	return path != "" && p.goTo(path)
}

// goToFigure brings a figure of a sheet into focus.
func (p *Planner) goToFigure(section int, f *calc.Figure) bool {
	p.topic, p.view, p.figures = f.Topic, viewFields, true
	if section >= 0 {
		p.section = section
	}
	lines := p.figureLines()
	for i, l := range lines {
		for k := range l.Figures {
			if l.Figures[k].Key == f.Key {
				p.focusFigure(lines, i)
				return true
			}
		}
	}
	return false
}
