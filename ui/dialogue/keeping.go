package dialogue

import (
	"fmt"

	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/ui/wording"
)

// handOver hands what is not saved to the journal when it has changed. It runs before a line is answered, so that whatever was answered
// is kept, however the program ends.
func (s *Session) handOver() {
	now := s.history.Revision()
	if s.options.Journal == nil || now == s.handed {
		return
	}
	s.handed = now
	if !s.history.Dirty() {
		s.options.Journal.Forget()
		return
	}
	s.options.Journal.Keep(journal.Draft{
		Path: s.options.Path, Title: s.options.Title, File: s.file.Copy(), Rows: s.history.Pending(), Who: s.options.Name, When: s.options.Clock(),
	})
}

// notHanded is the revision of a plan of which the journal has heard nothing.
const notHanded = -1

// sayTrouble says that changes cannot be kept, or can again. It waits for a line to answer: nothing is said to who is typing.
func (s *Session) sayTrouble() {
	select {
	case why := <-s.options.Journal.Trouble():
		if why == nil {
			s.say(wording.KeptAgain)
			return
		}
		s.say("until saved, changes are not kept against a crash, so save often: " + model.Clean(why.Error()))
	default:
	}
}

// settle is the journal's last word: when the session was left, what is not saved is given up, and otherwise kept.
func (s *Session) settle() {
	if s.settled {
		return
	}
	s.settled = true
	s.kept, s.unkept = s.options.Journal.Finish(s.left())
}

// left reports whether the session was left on purpose, with nothing unsaved or told to lose it.
func (s *Session) left() bool { return s.over && !s.Lost() }

// Lost reports whether the session ended with something that was neither saved nor dropped on purpose, even where it is kept for the
// next start.
func (s *Session) Lost() bool { return s.history.Dirty() && !s.dropped }

// Lose ends the session where nothing more can be heard, and names what is not saved.
func (s *Session) Lose() { s.lose("the input has ended") }

func (s *Session) lose(why string) {
	s.question, s.over, s.wish = nil, true, 0
	s.handOver()
	s.settle()
	if !s.history.Dirty() {
		s.finish()
		return
	}
	rows := s.history.Pending()
	what, each := "changes not saved and lost", "lost"
	if s.kept {
		what, each = "changes not saved, kept for the next start", "not saved"
	}
	s.say(fmt.Sprintf("%s; %s: %d", why, what, len(rows)))
	for i, r := range rows {
		if i == usualPart {
			s.say(fmt.Sprintf("%s beside these: %d", each, len(rows)-i))
			break
		}
		s.say(each + ": " + r.Words(s.plan))
	}
	s.finish()
}
