package dialogue

import (
	"fmt"
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/ui/wording"
)

// find lists the entries and figures of the section being worked and of the well that hold all of some words.
func (s *Session) find(rest string) {
	_, rest = s.asked(rest)
	if rest == "" {
		s.refuse("find takes words")
		return
	}
	s.named = list{}
	seen := map[model.Ref]bool{}
	for _, t := range s.topics() {
		for _, l := range model.Page(s.plan, t, s.section) {
			if l.Kind != model.PageEntry || seen[l.Ref] || !holds(rest, l.Ref.Words()+" "+l.Ref.Field.Label+" "+l.Ref.Group.Title+" "+l.Ref.Field.Key) {
				continue
			}
			seen[l.Ref] = true
			s.found(item{ref: &l.Ref}, t, inPage(l.Ref)+": "+wording.Content(s.plan, l.Ref, s.system))
		}
	}
	sheets := []int{-1}
	if len(s.plan.Sections) > 0 {
		sheets = []int{s.section, -1}
	}
	for _, sheet := range sheets {
		for _, t := range s.topics() {
			for _, l := range wording.FigureLines(s.result.Sheet(sheet), t) {
				if len(l.Figures) > 0 && holds(rest, l.Figures[0].Group+" "+l.Figures[0].Name+" "+l.Figures[0].Key) {
					s.found(item{figures: l.Figures, sheet: sheet}, t, wording.Figures(l.Figures, s.system))
				}
			}
		}
	}
	if len(s.named.items) == 0 {
		s.say(fmt.Sprintf("nothing of this section or the well holds %q", rest))
	}
}

// topics returns the pages in the order in which they are looked through: the one that is open first, the well last.
func (s *Session) topics() []model.Topic {
	order := []model.Topic{s.topic}
	for _, t := range append(slices.Clone(model.Topics()[1:]), model.TopicWell) {
		if t != s.topic {
			order = append(order, t)
		}
	}
	return order
}

// found adds something to the list and says it with its page.
func (s *Session) found(it item, t model.Topic, text string) {
	s.named.items = append(s.named.items, it)
	kind := "figure"
	if it.ref != nil {
		kind = "entry"
	}
	s.say(fmt.Sprintf("%d. %s, %s: %s", len(s.named.items), t, kind, text))
}

// holds reports whether a text holds every one of some words.
func holds(words, text string) bool {
	text = strings.ToLower(text)
	for _, w := range strings.Fields(strings.ToLower(words)) {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// working says how figures were got, column by column.
func (s *Session) working(rest string) {
	it, why := s.figureMeant(rest)
	if why != "" {
		s.refuse(why)
		return
	}
	for _, l := range s.workingOf(it) {
		s.say(l)
	}
}

// workingOf returns the workings of a line of figures.
func (s *Session) workingOf(it item) (lines []string) {
	for _, f := range it.figures {
		lines = append(lines, wording.Working(s.plan, it.sheet, f, s.system)...)
	}
	return lines
}

// figureMeant returns the line of figures that a number of the last list, or a name on the page, means.
func (s *Session) figureMeant(text string) (it item, why string) {
	if n, ok := number(text); ok {
		if it, why = s.item(n); why == "" && it.figures == nil {
			why = fmt.Sprintf("%d is no figure; say figures for their numbers", n)
		}
		return it, why
	}
	found, sheet := s.figuresNamed(text)
	switch len(found) {
	case 0:
		return it, fmt.Sprintf("%q is no figure of this page; say figures to hear them", text)
	case 1:
		return item{figures: found[0], sheet: sheet}, ""
	}
	var names []string
	for _, l := range found[:min(len(found), usualPart)] {
		names = append(names, l[0].Group+" "+l[0].Name)
	}
	return it, fmt.Sprintf("%q may be %s; say figures and take a number", text, strings.Join(names, ", "))
}
