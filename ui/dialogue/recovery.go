package dialogue

import (
	"cmp"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/quantity"
	"borewalk/ui/wording"
)

// sayLeft says in one line what an earlier run left that was not saved, and what can be done about it. Nothing needs to be answered: what
// is left alone lies there at the next start too.
func (s *Session) sayLeft() {
	if len(s.unsaved) == 0 {
		return
	}
	f := s.unsaved[0]
	s.say(strings.Join(wording.Unsaved(f, s.file, len(s.differing(f))), " ") + " Say recover, differs, discard, or later.")
}

func (s *Session) differing(f *journal.Found) []calc.EntryChange {
	return calc.CompareEntries(s.plan, f.File.Plan)
}

// about calls act with what an earlier run left, or says that there is nothing.
func (s *Session) about(act func(f *journal.Found)) {
	if len(s.unsaved) == 0 {
		s.refuse("nothing was left unsaved by an earlier run")
		return
	}
	act(s.unsaved[0])
}

// seenTo goes on to what another run left.
func (s *Session) seenTo() {
	s.unsaved = s.unsaved[1:]
	s.sayLeft()
}

// recover makes the plan what an earlier run left. It counts as not saved.
func (s *Session) recover(f *journal.Found) {
	if s.history.Dirty() {
		s.refuse("not recovered: it would take the place of what you have entered since; undo that, or save it first")
		return
	}
	s.options.Journal.Adopt(f)
	s.file = s.file.Recovered(f.File, f.Same(s.file.Text()))
	s.plan, s.before = s.file.Plan, nil
	s.history.Resume(s.plan, f.Pending)
	if s.options.Path == "" { // the plan that is open is another one
		s.options.Title = f.Title
		s.opened = s.plan.Clone()
		s.base = s.opened
	}
	s.set, _ = quantity.ParseSet(cmp.Or(s.options.Units, s.plan.Well.UnitSet))
	s.named.stale, s.handed = true, notHanded
	s.evaluate()
	s.say("recovered what was not saved; save saves it")
	if f.Typing != "" {
		s.say(wording.Typed(f) + " was being typed: it is not set")
	}
	s.seenTo()
}

// discard throws away what an earlier run left, after asking who can answer.
func (s *Session) discard(f *journal.Found) {
	drop := func() {
		if err := f.Discard(); err != nil {
			s.refuse("not discarded: " + model.Clean(err.Error()))
			return
		}
		s.say("discarded what was not saved")
		s.seenTo()
	}
	if s.options.Script {
		drop()
		return
	}
	s.confirm("discard "+wording.CountOf(len(s.differing(f)), "changed entry", "changed entries")+" for good? yes or no", drop)
}

// differs says in what the plan differs from what an earlier run left.
func (s *Session) differs(f *journal.Found) {
	changes := s.differing(f)
	if len(changes) == 0 {
		s.say(wording.NoEntryDiffers)
		return
	}
	s.say("when the program ended, and what it is now:")
	for _, e := range changes {
		s.say(s.entryAgainst(e, "now"))
	}
}

// later leaves what an earlier run left for the next start, and goes on to what another run left. It can still be taken up.
func (s *Session) later(f *journal.Found) {
	s.say("left as it is; you are asked again at the next start")
	if len(s.unsaved) > 1 {
		s.unsaved = append(s.unsaved[1:], f)
		s.sayLeft()
	}
}

// leftovers are the words about what an earlier run left.
func leftovers() []word {
	on := func(act func(*Session, *journal.Found)) func(*Session, string) {
		return func(s *Session, _ string) { s.about(func(f *journal.Found) { act(s, f) }) }
	}
	return []word{
		{"recover", "", "take up the changes that an earlier run left unsaved", on((*Session).recover)},
		{"differs", "", "in what they differ from the plan", on((*Session).differs)},
		{"discard", "", "throw them away", on((*Session).discard)},
		{"later", "", "leave them for the next start", on((*Session).later)},
	}
}
