package dialogue

import (
	"cmp"
	"errors"
	"path/filepath"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/ui/wording"
)

// save writes the plan to its file, or to another.
func (s *Session) save(rest string) {
	first, path, _ := strings.Cut(rest, " ")
	switch {
	case rest == "":
		s.saveThen(func() {})
	case strings.EqualFold(first, "as") && path != "":
		s.saveAs(path, func() {})
	default:
		s.refuse("save takes nothing, or as and the name of a file")
	}
}

// saveThen saves the plan and goes on with what was wanted; a plan that came from no file asks for one.
func (s *Session) saveThen(then func()) {
	switch {
	case s.readOnly != "":
		s.refuse("not saved: read-only, " + s.readOnly + "; " + s.waysOut())
		return
	case s.options.Path != "":
		s.signed(func() { s.saveTo(s.options.Path, false, then) })
		return
	}
	usual := wording.FileName(s.plan.Well.Name) + ".toml"
	s.ask([]string{"save the plan as? a name ending in .toml, nothing for " + usual + ", or stop"}, func(path string) {
		s.saveAs(cmp.Or(path, usual), then)
	})
}

// waysOut says how a plan that is read-only is saved.
func (s *Session) waysOut() string {
	if s.options.ReadOnly || s.options.Computer == nil || s.file.Watch().Writable() != nil {
		return "save as FILE saves under another name"
	}
	return ways
}

// saveAs saves the plan under another name. An existing file, and one that another has open, is replaced only after asking, and the
// latter not where nobody is there to answer.
func (s *Session) saveAs(path string, then func()) {
	if filepath.Ext(path) != ".toml" {
		path += ".toml"
	}
	if s.ownFile(path) {
		s.saveThen(then)
		return
	}
	held := s.heldBy(path)
	write := func() { s.signed(func() { s.saveElsewhere(path, held != "", then) }) }
	switch {
	case held != "" && s.options.Script:
		s.refuse("not saved: " + held + "; choose another name")
	case held != "":
		s.confirm(held+"; replace it all the same? yes or no", write)
	case s.disk.Exists(path):
		s.confirm(path+" exists already; replace it? yes or no", write)
	default:
		write()
	}
}

// saveElsewhere saves the plan under another name, with the lock of that file, over whoever has it when that is wanted.
func (s *Session) saveElsewhere(path string, over bool, then func()) {
	lock, remark, wrong := s.lockFor(path, over)
	if wrong != "" {
		s.refuse("not saved: " + wrong + "; choose another name")
		return
	}
	s.saveUnder(lock, path, true, func() {
		if remark != "" {
			s.say(remark)
		}
		then()
	})
}

// signed asks once who works here, where something is to be logged and nobody has said, and then goes on.
func (s *Session) signed(then func()) {
	if s.options.Name != "" || len(s.history.Pending()) == 0 {
		then()
		return
	}
	s.ask([]string{"your name or initials, for the log? asked once"}, func(name string) {
		if name == "" {
			s.refuse("without a name nothing is saved")
			return
		}
		s.options.Name = name
		then()
	})
}

// saveTo writes the plan to its own file and goes on with what was wanted.
func (s *Session) saveTo(path string, over bool, then func()) { s.saveUnder(s.lock, path, over, then) }

// saveUnder is saveTo with the lock of the file that is written, which becomes the plan's.
func (s *Session) saveUnder(lock *planlock.Lock, path string, over bool, then func()) {
	s.handOver()
	s.options.Journal.CatchUp()
	s.file.Guard = func() error { return lock.Assure(s.options.Computer) }
	write := func() error { return s.disk.Save(s.file, path, over) }
	if err := s.history.Save(s.plan, s.options.Name, s.options.Clock(), write); err != nil {
		if lock != s.lock {
			lock.Release(s.options.Computer)
		}
		s.notSaved(err, path, then)
		return
	}
	if lock != s.lock {
		s.lock.Release(s.options.Computer)
	}
	s.lock, s.readOnly, s.happened = lock, "", ""
	s.options.Path, s.options.ReadOnly = path, false
	s.say("saved " + path)
	if s.file.Parted {
		s.say("its other names on the disk, hard links, keep what it held before")
	}
	then()
}

// notSaved says why a save came to nothing. What another has done to the plan's own file is asked about where somebody can answer.
func (s *Session) notSaved(err error, path string, then func()) {
	var held *planlock.Held
	asks := !s.options.Script && s.ownFile(path)
	switch {
	case errors.As(err, &held):
		s.readOnly = "another has taken the plan over"
		s.refuse("not saved: " + s.readOnly + ". " + sentences(held) + " " + ways)
	case asks && (errors.Is(err, planfile.ErrChanged) || errors.Is(err, planfile.ErrLinked)):
		s.refuse(err.Error() + "; save as FILE saves under another name")
		s.askOver(path, then)
	case asks && errors.Is(err, planfile.ErrRemoved):
		s.confirm(err.Error()+"; write it anew under its name? yes or no", func() { s.saveTo(path, true, then) })
	default:
		s.refuse(err.Error() + "; save as FILE saves under another name")
	}
}

// askOver asks what to do about a file that another has changed.
func (s *Session) askOver(path string, then func()) {
	s.choose("what to do? a number, or stop", []string{"replace what the other has written", "hear what differs", "do not save now"}, func(i int) {
		switch i {
		case 0:
			s.saveTo(path, true, then)
		case 1:
			s.sayDiffering(path)
			s.askOver(path, then)
		default:
			s.say("left as it is")
		}
	})
}

// sayDiffering says in what the plan differs from its file as it is now.
func (s *Session) sayDiffering(path string) {
	theirs, err := planfile.Open(path)
	if err != nil {
		s.refuse(model.Clean(err.Error()))
		return
	}
	changes := calc.CompareEntries(theirs.Plan, s.plan)
	s.say(wording.CountOf(len(changes), "entry differs", "entries differ") + " from the file as it is now")
	for _, e := range changes {
		s.say(s.entryAgainst(e, "in the file"))
	}
}

// quit leaves, after asking when something would be lost.
func (s *Session) quit() {
	if !s.history.Dirty() {
		s.over = true
		return
	}
	s.choose("the plan has changes that are not saved: a number, or stop", []string{"save and quit", "quit and lose the changes", "stay"}, func(i int) {
		switch i {
		case 0:
			s.saveThen(func() { s.over = true })
		case 1:
			s.over, s.dropped = true, true
		default:
			s.say("still here")
		}
	})
}

// why notes the reason for the last edit.
func (s *Session) why(rest string) {
	rest = strings.TrimSpace(model.Clean(rest))
	if rest == "" {
		s.refuse("why takes the reason for the last edit")
		return
	}
	if !s.history.Explain(rest) {
		s.refuse("nothing was edited since the last save")
		return
	}
	s.say("why is noted")
}
