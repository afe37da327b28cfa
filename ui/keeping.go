package ui

import (
	"cmp"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/ui/wording"
)

// keeping is what the journal was last given: a revision of the plan, and the entry being typed.
type keeping struct {
	revision int
	typing   model.Path
	typed    string
}

// keep hands what is not saved to the journal when it has changed. It runs after every message, so that whatever ends the program, the
// journal knows all that was typed.
func (p *Planner) keep() {
	if p.options.Journal == nil {
		return
	}
	now := keeping{revision: p.history.Revision()}
	if e := p.edit; e != nil && e.input.Value() != e.shown {
		now.typing, now.typed = e.ref.Path(), e.input.Value()
	}
	if now == p.kept {
		return
	}
	p.kept = now
	if !p.history.Dirty() && now.typing == "" {
		p.options.Journal.Forget()
		return
	}
	d := journal.Draft{
		Path: p.options.Path, Title: p.options.Title, File: p.file.Copy(), Rows: p.history.Pending(), Who: p.options.Name, When: p.now(),
		Typing: now.typing, Typed: now.typed,
	}
	if e := p.edit; e != nil {
		e.ref.Set(d.File.Plan, e.was) // while it is typed an entry is not the plan's yet
	}
	p.options.Journal.Keep(d)
}

// keepUp lets the journal catch up before a save.
func (p *Planner) keepUp() {
	p.keep()
	p.options.Journal.CatchUp()
}

// unkept says why what is not saved cannot be kept, or that it can again.
type unkept struct{ why error }

// hear is the command that waits for trouble with the journal.
func (p *Planner) hear() tea.Cmd {
	if p.options.Journal == nil {
		return nil
	}
	trouble := p.options.Journal.Trouble()
	return func() tea.Msg { return unkept{<-trouble} }
}

// tell shows trouble with the journal, once, and leaves it among the notices and as a word at the top, since the next key takes the
// message away.
func (p *Planner) tell(m unkept) {
	p.unkept = m.why != nil
	if m.why == nil {
		p.message = wording.KeptAgain
		return
	}
	why := model.Clean(m.why.Error())
	p.message = "until saved, changes are not kept against a crash (! says more): " + why
	p.alarm = alarm{p.message, calc.Caution}
	p.file.Notices = append(p.file.Notices, "What is not saved cannot be kept against a crash, so save often. The reason: "+why)
}

// Left reports whether the program is to end because that was asked for, with nothing unsaved or told to lose it.
func (p *Planner) Left() bool { return p.quit }

// Name is what the plan is called in a report of a fault: its file, or else its title.
func (p *Planner) Name() string { return cmp.Or(p.options.Path, p.options.Title) }
