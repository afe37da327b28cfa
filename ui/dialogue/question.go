package dialogue

import (
	"strconv"
	"strings"
)

// question is something asked that the next line answers.
type question struct {
	lines []string          // the question, and what can be answered
	take  func(line string) // may ask the next one
	quits func()            // what giving up does; nil says that nothing was done
	said  bool
}

// ask asks a question after what is being said.
func (s *Session) ask(lines []string, take func(string)) {
	s.question = &question{lines: lines, take: take}
}

// choose asks which of several things is to be done; an answer is a number, or the beginning of one of the words.
func (s *Session) choose(title string, choices []string, take func(i int)) {
	lines := []string{title}
	for i, c := range choices {
		lines = append(lines, strconv.Itoa(i+1)+". "+c)
	}
	s.ask(lines, func(line string) {
		i := chosen(line, choices)
		if i < 0 {
			s.refuse("answer with a number from 1 to " + strconv.Itoa(len(choices)))
			s.choose(title, choices, take)
			s.question.said = true
			return
		}
		take(i)
	})
}

// chosen returns which of several choices is meant; -1 for none or more than one.
func chosen(line string, choices []string) int {
	if n, ok := number(line); ok && n >= 1 && n <= len(choices) {
		return n - 1
	}
	found := -1
	for i, c := range choices {
		if matches(line, c) != noMatch && line != "" {
			if found >= 0 {
				return -1
			}
			found = i
		}
	}
	return found
}

// reply gives a line to the question that is open.
func (s *Session) reply(line string) {
	q := s.question
	s.question = nil
	if strings.EqualFold(line, "stop") {
		s.giveUp(q)
		return
	}
	q.take(line)
}

// giveUp leaves a question without an answer.
func (s *Session) giveUp(q *question) {
	s.question = nil
	if q.quits != nil {
		q.quits()
		return
	}
	s.say("given up; nothing was changed")
}

// confirm asks whether something is to be done; whatever is no yes leaves it.
func (s *Session) confirm(text string, act func()) {
	s.ask([]string{text}, func(line string) {
		if chosen(line, []string{"yes"}) != 0 {
			s.say("left as it is")
			return
		}
		act()
	})
}
