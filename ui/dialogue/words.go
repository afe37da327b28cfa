package dialogue

import (
	"fmt"
	"strings"

	"borewalk/model"
	"borewalk/model/tomldoc"
)

// word is the single declaration of something that can be said first on a line.
type word struct {
	name  string
	takes string // what follows it, for the help; empty for nothing
	help  string
	act   func(s *Session, rest string)
}

// words returns every word, in the order of the help.
func words() []word {
	return append([]word{
		{"where", "", "section, page, and how many findings", func(s *Session, _ string) { s.where() }},
		{"page", "NAME", "go to a page; its name alone does too; without a name: the pages", (*Session).goPage},
		{"section", "NUMBER", "go to a section; without a number: the sections", (*Session).goSection},
		{"next", "", "the next section", func(s *Session, _ string) { s.step(1) }},
		{"previous", "", "the section above", func(s *Session, _ string) { s.step(-1) }},
		{"entries", "[all] [LINES]", "entries of the page that are set or needed, or all, with their numbers", (*Session).entries},
		{"figures", "[LINES]", "figures of the page, with numbers", (*Session).figures},
		{"findings", "[all] [LINES]", "stops and cautions, worst first, or all", (*Session).findings},
		{"what", "ENTRY", "what an entry, figure or finding means: range, help, path", (*Session).what},
		{"set", "ENTRY VALUE", "give an entry a value; 7 2085 m, shoe depth 2085 m and section[3].shoe = 2085 m do too", (*Session).setWord},
		{"blank", "ENTRY", "empty an entry", (*Session).blankWord},
		{"add", "LIST [NUMBER]", "add a row to a list of the page, or a section; without a name: the lists", (*Session).add},
		{"remove", "LIST NUMBER", "remove a row, or a section", (*Session).remove},
		{"moved", "[LINES]", "what the last edit moved on this page", (*Session).movedWord},
		{"undo", "", "take the last edit back", func(s *Session, _ string) { s.undo() }},
		{"redo", "", "do again what was undone", func(s *Session, _ string) { s.redo() }},
		{"working", "FIGURE", "how a figure was got: formula, numbers, source", (*Session).working},
		{"find", "WORDS", "entries and figures of this section and the well that hold all the words", (*Session).find},
		{"go", "NUMBER", "go to what a number of the last list means", (*Session).goTo},
		{"changes", "[opened|saved]", "what changed since the baseline, the opening, the last save", (*Session).changes},
		{"baseline", "", "count changes from here", func(s *Session, _ string) { s.takeBaseline() }},
		{"proposals", "", "limits worked out for entries of the page; take enters one", func(s *Session, _ string) { s.proposals() }},
		{"take", "NUMBER|over", "enter a proposal; take over takes the plan from another who has it open", (*Session).take},
		{"units", "[metric|field|si|plan]", "units that are said; nothing stored changes", (*Session).units},
		{"print", "PAPER [as FORMAT] [to FILE]", "print a paper here, or to a file; without a name: the papers", (*Session).print},
		{"copy", "[NUMBER|page|working FIGURE]", "write something to a file, to be taken elsewhere", (*Session).copy},
		{"why", "TEXT", "the reason for the last edit, for the log", (*Session).why},
		{"notices", "", "what the file holds that no entry is known for", func(s *Session, _ string) { s.notices() }},
		{"save", "[as FILE]", "save the plan", (*Session).save},
		{"new", "", "start a new plan from a few questions", func(s *Session, _ string) { s.startNew() }},
		{"more", "[LINES|all]", "the rest of a long answer", (*Session).more},
		{"lines", "NUMBER|all", "how many lines an answer has at most", (*Session).lines},
		{"help", "[WORD]", "the words, or one of them", (*Session).helpWord},
		{"quit", "", "leave; asks when something is not saved", func(s *Session, _ string) { s.quit() }},
	}, leftovers()...)
}

// obey follows a line: a number of the last list, an entry and its value, or a word.
func (s *Session) obey(line string) {
	first, rest, _ := strings.Cut(line, " ")
	if n, ok := number(strings.TrimSuffix(first, ".")); ok {
		s.numbered(n, strings.TrimSpace(strings.TrimPrefix(rest, "=")))
		return
	}
	if left, right, ok := strings.Cut(line, "="); ok {
		if ref, why := s.entryNamed(strings.TrimSpace(left)); why == "" {
			s.put(ref, strings.TrimSpace(right))
			return
		}
	}
	if strings.ContainsAny(first, ".[") && s.obeyPath(first, rest) {
		return
	}
	if found, words := s.labelled(line); len(found) > 0 && words > 1 && s.obeyLabel(line, true) { // "section name" is no section
		return
	}
	for _, w := range s.words {
		if strings.EqualFold(w.name, first) {
			w.act(s, rest)
			return
		}
	}
	if t, ok := pageNamed(line); ok {
		s.turnTo(t)
		return
	}
	if !s.obeyLabel(line, true) && !s.obeyBeginning(first, rest) && !s.obeyLabel(line, false) {
		s.unknown(line, first)
	}
}

// obeyBeginning follows the beginning of a word or of a page, and reports whether there is any with it.
func (s *Session) obeyBeginning(first, rest string) bool {
	var names []string
	var act func()
	for _, w := range s.words {
		if matches(first, w.name) != noMatch {
			names, act = append(names, w.name), func() { w.act(s, rest) }
		}
	}
	for _, t := range model.Topics() {
		if rest == "" && matches(first, t.String()) != noMatch {
			names, act = append(names, t.String()), func() { s.turnTo(t) }
		}
	}
	switch len(names) {
	case 0:
		return false
	case 1:
		act()
	default:
		s.refuse(fmt.Sprintf("%s begins more than one word: %s", first, strings.Join(names, ", ")))
	}
	return true
}

// unknown says that a line means nothing here, and the word that comes nearest.
func (s *Session) unknown(line, first string) {
	var known []string
	for _, w := range s.words {
		known = append(known, w.name)
	}
	for _, t := range model.Topics() {
		known = append(known, t.String())
	}
	for _, e := range s.pageEntries() {
		known = append(known, strings.ToLower(e.Field.Label))
	}
	text := fmt.Sprintf("%q is no word and no entry of this page", first)
	near, ok := tomldoc.Nearest(strings.ToLower(line), known)
	if !ok {
		near, ok = tomldoc.Nearest(strings.ToLower(first), known)
	}
	if ok {
		text += "; the nearest is " + near
	}
	s.refuse(text + "; say help for the words")
}

// helpWord lists the words, or says what one does.
func (s *Session) helpWord(rest string) {
	if rest == "" {
		for _, w := range s.words {
			s.say(w.line())
		}
		s.say("beginnings of words are enough where they are clear; a number means what the last list says; value blank empties an entry")
		return
	}
	found := pick(rest, s.words, func(w word) []string { return []string{w.name} })
	if len(found) == 0 {
		s.what(rest)
		return
	}
	for _, w := range found {
		s.say(w.line())
	}
}

// line puts a word, what it takes and what it does on a line.
func (w word) line() string { return strings.TrimSpace(w.name+" "+w.takes) + ": " + w.help }

// lines sets how long answers are.
func (s *Session) lines(rest string) {
	n, ok := number(rest)
	switch {
	case strings.EqualFold(rest, "all"):
		s.part = 0
		s.say("answers are said as a whole")
	case ok && n >= 2:
		s.part = n
		s.say(fmt.Sprintf("at most %d lines an answer", n))
	default:
		s.refuse("lines takes a number from 2 on, or all")
	}
}

// more says on what an answer has left.
func (s *Session) more(rest string) {
	if len(s.rest) == 0 {
		s.say("that was all")
		return
	}
	if n, ok := number(rest); ok && n >= 1 {
		s.wish = max(n, 2)
	} else if strings.EqualFold(rest, "all") {
		s.wish = 0
	}
	s.sayRest()
}

// asked takes the words all and a number of lines off what follows the word of a list.
func (s *Session) asked(rest string) (all bool, left string) {
	for _, w := range strings.Fields(rest) {
		if n, ok := number(w); ok && n >= 1 {
			s.wish = max(n, 2)
		} else if strings.EqualFold(w, "all") {
			all = true
		} else {
			left += " " + w
		}
	}
	return all, strings.TrimSpace(left)
}
