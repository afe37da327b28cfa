package dialogue

import (
	"errors"
	"time"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
)

// glanced is what a glance at the plan's file found. What it glanced at may have been saved or left meanwhile.
type glanced struct {
	watch *planfile.Watch
	lock  *planlock.Lock
	file  error
	mine  error // what is wrong with the lock
}

// glanceWait is how long an answer waits for a glance. A file on a network may take longer, and is spoken of with a later answer.
const glanceWait = 100 * time.Millisecond

// glance looks, after an edit, whether another has done something to the plan's file.
func (s *Session) glance() {
	edited := s.edited
	s.edited = false
	if s.options.Path == "" || !edited && s.glances == nil {
		return
	}
	if s.glances == nil {
		watch, lock, computer := s.file.Watch(), s.lock, s.options.Computer
		found := make(chan glanced, 1)
		go func() { found <- glanced{watch, lock, watch.Look(), lock.Check(computer)} }()
		s.glances = found
	}
	select {
	case g := <-s.glances:
		s.glances = nil
		s.noticed(g)
	case <-time.After(glanceWait):
	}
}

// noticed takes what a glance found, and says it once.
func (s *Session) noticed(g glanced) {
	if g.watch != s.file.Watch() || g.lock != s.lock {
		return
	}
	if errors.Is(g.mine, planlock.ErrNone) {
		_ = g.lock.Mend() // whether it is one's own again is asked before the next save
	}
	happened := ""
	var held *planlock.Held
	switch {
	case errors.As(g.mine, &held):
		happened = "another has taken the plan over: " + sentences(held)
	case g.file != nil:
		happened = model.Clean(g.file.Error()) + "; save asks what to do"
	}
	if happened != "" && happened != s.happened {
		s.say("! " + happened)
	}
	s.happened = happened
}
