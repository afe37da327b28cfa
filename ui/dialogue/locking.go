package dialogue

import (
	"errors"
	"path/filepath"
	"strings"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/ui/wording"
)

// hold makes the lock on the file of the plan that is opened. When another has it, the plan is read-only until it is taken over. It returns
// what is to be said about that; empty for nothing.
func (s *Session) hold() string {
	switch {
	case s.options.Path == "":
		return ""
	case s.options.ReadOnly:
		s.readOnly = "the plan was opened with -read-only"
		return ""
	}
	if err := s.file.Watch().Writable(); err != nil {
		s.readOnly = model.Clean(err.Error())
		return "read-only: " + s.readOnly
	}
	if s.options.Computer == nil {
		return ""
	}
	return s.holdBy(s.options.Computer.Take)
}

// holdBy makes the lock in one of the ways there are.
func (s *Session) holdBy(take func(plan, name string) (*planlock.Lock, error)) string {
	lock, err := take(s.options.Path, s.options.Name)
	var held *planlock.Held
	switch {
	case errors.As(err, &held):
		s.readOnly = "another had the plan open when it was opened here"
		return sentences(held) + " The plan is read-only here: " + ways
	case err != nil:
		return wording.NoLock(err)
	}
	s.lock, s.readOnly = lock, ""
	if was := lock.After; was != nil {
		return wording.ReleasedBy(was)
	}
	return ""
}

// ways says what can be done about a plan that another has.
const ways = "take over takes it from the other, save as FILE saves under another name"

func sentences(held *planlock.Held) string { return strings.Join(wording.Holder(held), " ") }

// takeOver takes the plan from who has it; he learns of it at his next edit or save.
func (s *Session) takeOver() {
	switch {
	case s.options.ReadOnly && s.readOnly != "":
		s.refuse("not taken over: " + s.readOnly)
		return
	case s.readOnly == "" || s.options.Computer == nil:
		s.refuse("nobody else has the plan open")
		return
	}
	if err := s.file.Watch().Writable(); err != nil {
		s.refuse("not taken over: " + model.Clean(err.Error()))
		return
	}
	if trouble := s.holdBy(s.options.Computer.TakeOver); trouble != "" {
		s.say(trouble)
	}
	if s.readOnly == "" {
		s.say("the plan is taken over; who had it reads that at his next edit or save")
		s.rereadIfChanged()
	}
}

// rereadIfChanged reads the plan's file anew when it was changed since it was read and nothing is lost by that.
func (s *Session) rereadIfChanged() {
	if s.history.Dirty() || !errors.Is(s.file.Watch().Look(), planfile.ErrChanged) {
		return
	}
	file, err := planfile.Open(s.options.Path)
	if err != nil {
		s.refuse("not read: " + model.Clean(err.Error()))
		return
	}
	s.begin(file, model.History{})
	s.say("the file was changed meanwhile and is read anew")
}

// Close gives the lock on the plan's file back.
func (s *Session) Close() {
	s.lock.Release(s.options.Computer)
	s.lock = nil
}

// lockFor makes the lock for a plan that is saved under another name: over whoever has it when that is wanted. It returns what is
// wrong, or a remark to go with the save.
func (s *Session) lockFor(path string, over bool) (lock *planlock.Lock, remark, wrong string) {
	if s.options.Computer == nil {
		return nil, "", ""
	}
	take := s.options.Computer.Take
	if over {
		take = s.options.Computer.TakeOver
	}
	lock, err := take(path, s.options.Name)
	var held *planlock.Held
	switch {
	case errors.As(err, &held):
		return nil, "", wording.HolderName(&held.Owner) + " has " + path + " open"
	case err != nil:
		return nil, wording.NoLock(err), ""
	}
	return lock, "", ""
}

// heldBy says who has a plan open that is to be saved over; empty for nobody.
func (s *Session) heldBy(path string) string {
	if s.options.Computer == nil {
		return ""
	}
	if held := s.options.Computer.Holder(path, s.lock); held != nil {
		return wording.HolderName(&held.Owner) + " has " + path + " open"
	}
	return ""
}

// ownFile reports whether a path is the plan's own file, by this name or another.
func (s *Session) ownFile(path string) bool {
	own := s.options.Path
	return own != "" && (filepath.Clean(path) == filepath.Clean(own) || s.lock.On(path))
}
