package ui

import (
	"cmp"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// newRecovery asks what to do with the changes that the first of some journals holds, then about the next, and goes on to another
// overlay. A journal that is left alone lies there at the next start too.
func newRecovery(p *Planner, left []*journal.Found, then overlay) overlay {
	if len(left) == 0 {
		return then
	}
	f := left[0]
	next := newRecovery(p, left[1:], then)
	changes := calc.CompareEntries(p.plan, f.File.Plan)
	u := &menu{title: "Changes that were not saved", back: next, small: true, leaves: "leaves them alone"}
	for _, line := range append(wording.Unsaved(f, p.file, len(changes)), "") {
		u.say(p, canvas.Plain, line)
	}
	u.at = len(u.items)
	u.items = append(u.items,
		item{text: "recover them", full: "The plan is as it was when the program ended; nothing is written to its file before you save."},
		item{text: "look at the difference", full: "Each entry that differs: what it is in the file, and what it was when the program ended."},
		item{text: "discard them", full: "The changes are lost; the plan is as its file has it."},
		item{text: "leave them alone for now", full: "The plan is as its file has it, and you are asked again at the next start."})
	first := u.at
	u.pick = func(p *Planner, i int) {
		switch i - first {
		case 0:
			p.takeUp(f)
		case 1:
			p.overlay = p.newDifference(changes, u)
		case 2:
			p.overlay = newDiscard(f, len(changes), u, next)
		default:
			p.overlay = next
		}
	}
	return u
}

// newDifference lists entries that differ, for reading.
func (p *Planner) newDifference(changes []calc.EntryChange, back overlay) overlay {
	u := &menu{title: "In the file, and when the program ended", back: back, leaves: "goes back"}
	for i := range changes {
		u.items = append(u.items, p.entryItem(&changes[i], nil))
	}
	if len(changes) > 0 {
		u.does, u.pick = "goes back", func(p *Planner, i int) { p.overlay = back }
	} else {
		u.say(p, canvas.Plain, wording.NoEntryDiffers)
	}
	return u
}

// newDiscard asks once more before work is thrown away.
func newDiscard(f *journal.Found, changes int, back, next overlay) overlay {
	return &menu{
		title: "Discard " + wording.CountOf(changes, "changed entry", "changed entries") + " for good?", small: true, back: back,
		items: []item{{text: "keep them"}, {text: "discard them"}},
		pick: func(p *Planner, i int) {
			if i == 0 {
				p.overlay = back
				return
			}
			p.overlay = next
			p.message = "discarded what was not saved"
			if err := f.Discard(); err != nil {
				p.message = "not discarded: " + model.Clean(err.Error())
			}
		},
	}
}

// takeUp makes the plan what a journal holds. It counts as not saved, and the entry that was being typed is open again.
func (p *Planner) takeUp(f *journal.Found) {
	p.options.Journal.Adopt(f)
	p.file = p.file.Recovered(f.File, f.Same(p.file.Text()))
	p.plan = p.file.Plan
	p.history.Resume(p.plan, f.Pending)
	if p.options.Path == "" { // the plan that is open is another one
		p.options.Title, p.opened = f.Title, p.plan.Clone()
		p.openPlan()
	}
	p.set, _ = quantity.ParseSet(cmp.Or(p.options.Units, p.plan.Well.UnitSet))
	p.evaluate()
	p.message = "recovered what was not saved; s saves it"
	ref, ok := model.Find(p.plan, f.Typing)
	if !ok || ref.Field.Type == model.ChoiceField || !p.goTo(f.Typing) {
		return
	}
	p.startTyping(ref, f.Typed)
	p.tryEntry()
	p.message = "recovered what was not saved; this entry was being typed"
}
