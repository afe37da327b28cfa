package ui

import (
	"cmp"
	"errors"
	"strings"

	"borewalk/model"
	"borewalk/model/planlock"
	"borewalk/ui/wording"
)

// hold makes the lock on the file of the plan that is opened. When another has it, the plan is read-only until the question about
// that is answered otherwise.
func (p *Planner) hold() {
	switch {
	case p.options.Path == "":
		return
	case p.options.ReadOnly:
		p.readOnly = "the plan was opened with -read-only"
		return
	}
	if err := p.file.Watch().Writable(); err != nil {
		p.readOnly = model.Clean(err.Error())
		p.message = "read-only: " + p.readOnly
		return
	}
	if p.options.Computer == nil {
		return
	}
	p.holdBy(p.options.Computer.Take)
}

// holdBy makes the lock in one of the ways there are.
func (p *Planner) holdBy(take func(plan, name string) (*planlock.Lock, error)) {
	lock, err := take(p.options.Path, p.options.Name)
	var held *planlock.Held
	switch {
	case errors.As(err, &held):
		p.readOnly = "another had the plan open when it was opened here"
		p.overlay = newHeld(held)
	case err != nil:
		p.message = wording.NoLock(err)
	default:
		p.lock, p.readOnly = lock, ""
		if was := lock.After; was != nil {
			p.message = wording.ReleasedBy(was)
		}
	}
}

// Close gives the lock on the plan's file back; the planner is not used after it.
func (p *Planner) Close() {
	p.lock.Release(p.options.Computer)
	p.lock = nil
}

// offered is something that can be chosen in a question.
type offered struct {
	text, more string // more stands below the page
	do         func(p *Planner)
}

// newQuestion says something and offers what can be done about it.
func newQuestion(title, says string, offers ...offered) *menu {
	const width = 56 // of the page in the smallest window
	u := &menu{title: title, small: true, leaves: "does not save"}
	if says != "" {
		for _, line := range wrap(says, width) {
			u.items = append(u.items, item{text: line, dead: true})
		}
	}
	u.at = len(u.items)
	for _, o := range offers {
		u.items = append(u.items, item{text: o.text, full: cmp.Or(o.more, o.text)})
	}
	first := len(u.items) - len(offers)
	u.pick = func(p *Planner, i int) { offers[i-first].do(p) }
	return u
}

// newHeld asks what to do about a plan that another has open. Closing the question leaves the plan read-only.
func newHeld(held *planlock.Held) overlay {
	u := newQuestion("Another has this plan open", holder(held),
		offered{"look and try, read-only: saved under another name only", "Everything is worked out and can be edited as a trial; s does not save here, and offers another name.", stay},
		offered{"open all the same: the other learns it at the next save", "Takes the plan over. The other is told at the next edit or save, and neither overwrites what the other has saved without being asked.",
			func(p *Planner) {
				p.holdBy(p.options.Computer.TakeOver)
				p.rereadIfChanged()
			}},
		offered{text: "quit", do: func(p *Planner) { p.quit = true }})
	u.leaves = "looks and tries"
	return u
}

// newReadOnly says why a plan is not saved under its name.
func (p *Planner) newReadOnly(then func(*Planner)) overlay {
	offers := []offered{{text: "save under another name", do: func(p *Planner) { p.saveAs(then) }}, p.rereading()}
	if !p.options.ReadOnly && p.options.Computer != nil {
		offers = append(offers, offered{text: "save here after all, if that may be done by now", do: func(p *Planner) { p.saveAfterAll(then) }})
	}
	return newQuestion("Not saved: read-only", wording.Upper(p.readOnly)+".", append(offers, offered{text: "do not save now", do: stay})...)
}

// saveAfterAll saves a plan that was opened read-only, when its file may be written and nobody else has it by now.
func (p *Planner) saveAfterAll(then func(*Planner)) {
	p.hold()
	if p.readOnly == "" {
		p.saveTo(p.options.Path, p.file.Save, then)
	}
}

// newTaken asks what to do about a plan that another has taken over.
func newTaken(held *planlock.Held, path string, then func(*Planner)) overlay {
	return newQuestion("Not saved: another has taken the plan over", holder(held),
		offered{text: "save under another name", do: func(p *Planner) { p.saveAs(then) }},
		offered{text: "save over it: take the plan back", do: func(p *Planner) {
			p.holdBy(p.options.Computer.TakeOver)
			if p.overlay == nil {
				p.saveTo(path, p.file.Save, then)
			}
		}},
		offered{text: "do not save now", do: stay})
}

// guard returns what is asked just before a plan is written: whether the lock is still this planner's own.
func (p *Planner) guard(lock *planlock.Lock) func() error {
	return func() error { return lock.Assure(p.options.Computer) }
}

// lockFor makes the lock for a plan that is saved under another name: over whoever has it when that is wanted. It returns what is
// wrong, or a remark to go with the save.
func (p *Planner) lockFor(path string, over bool) (lock *planlock.Lock, remark, wrong string) {
	if p.options.Computer == nil || p.lock.On(path) {
		return p.lock, "", ""
	}
	take := p.options.Computer.Take
	if over {
		take = p.options.Computer.TakeOver
	}
	lock, err := take(path, p.options.Name)
	var held *planlock.Held
	switch {
	case errors.As(err, &held):
		return nil, "", wording.HolderName(&held.Owner) + " has that plan open. Choose another name."
	case err != nil:
		return nil, wording.NoLock(err), ""
	}
	return lock, "", ""
}

// heldBy says who has a plan open that is to be saved over; empty for nobody.
func (p *Planner) heldBy(path string) string {
	if p.options.Computer == nil {
		return ""
	}
	if held := p.options.Computer.Holder(path, p.lock); held != nil {
		return wording.HolderName(&held.Owner) + " has that plan open."
	}
	return ""
}

// holder says who has a plan open.
func holder(held *planlock.Held) string { return strings.Join(wording.Holder(held), "\n") }
