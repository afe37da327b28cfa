package dialogue

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"borewalk/model"
	"borewalk/model/planfile"
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
	if s.options.Path != "" {
		s.signed(func() { s.saveTo(s.options.Path, false, then) })
		return
	}
	usual := wording.FileName(s.plan.Well.Name) + ".toml"
	s.ask([]string{"save the plan as? a name ending in .toml, nothing for " + usual + ", or stop"}, func(path string) {
		s.saveAs(cmp.Or(path, usual), then)
	})
}

// saveAs saves the plan under another name. An existing file is replaced only after asking.
func (s *Session) saveAs(path string, then func()) {
	if filepath.Ext(path) != ".toml" {
		path += ".toml"
	}
	if path == s.options.Path {
		s.saveThen(then)
		return
	}
	write := func() { s.signed(func() { s.saveTo(path, true, then) }) }
	if s.disk.Exists(path) {
		s.confirm(path+" exists already; replace it? yes or no", write)
		return
	}
	write()
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

// saveTo writes the plan and goes on with what was wanted. A file that was changed by another is asked about.
func (s *Session) saveTo(path string, over bool, then func()) {
	logged := s.plan.Log
	s.history.Enter(s.plan, s.options.Name, s.options.Clock())
	err := s.disk.Save(path, over)
	if err != nil {
		s.plan.Log = logged
	}
	switch {
	case errors.Is(err, planfile.ErrChanged):
		s.confirm("not saved: another program has changed "+path+"; replace what it has written? yes or no", func() { s.saveTo(path, true, then) })
	case err != nil:
		s.refuse(err.Error())
	default:
		s.options.Path = path
		s.history.Saved()
		s.say("saved " + path)
		then()
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

// Lost reports whether the session ended with something that was neither saved nor dropped on purpose.
func (s *Session) Lost() bool { return s.history.Dirty() && !s.dropped }

// Lose ends the session where nothing more can be heard, and names what is lost with it.
func (s *Session) Lose() {
	s.question, s.over, s.wish = nil, true, 0
	if !s.history.Dirty() {
		s.finish()
		return
	}
	rows := s.history.Pending()
	s.say(fmt.Sprintf("the input has ended; changes not saved and lost: %d", len(rows)))
	for i, r := range rows {
		if i == usualPart {
			s.say(fmt.Sprintf("lost beside these: %d", len(rows)-i))
			break
		}
		s.say("lost: " + r.Words(s.plan))
	}
	s.finish()
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
