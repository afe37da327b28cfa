package dialogue

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/wording"
)

// item is one thing of a list that a number means: an entry, a line of figures of a sheet, a finding or a proposal.
type item struct {
	ref      *model.Ref
	figures  []calc.Figure
	sheet    int
	finding  *calc.Finding
	proposal *calc.Proposal
}

// list is what numbers mean: what was listed last, or the entries of the page that was gone to.
type list struct {
	items []item
	stale bool // rows have come or gone since
}

// item returns what a number means, or why it means nothing.
func (s *Session) item(n int) (it item, why string) {
	switch {
	case s.named.stale:
		return it, "rows have come or gone since the numbers were said: say entries for the new ones"
	case n < 1 || n > len(s.named.items):
		return it, fmt.Sprintf("there is no number %d: the last list goes to %d", n, len(s.named.items))
	}
	return s.named.items[n-1], ""
}

// numbered says what a number means, or gives the entry that it means a value.
func (s *Session) numbered(n int, value string) {
	it, why := s.item(n)
	switch {
	case why != "":
		s.refuse(why)
	case it.ref != nil && value != "":
		s.put(*it.ref, value)
	case value != "":
		s.refuse(fmt.Sprintf("%d is no entry: what is computed cannot be set; say entries for the numbers of entries", n))
	case it.ref != nil:
		s.sayEntry(*it.ref)
	default:
		s.sayItem(it)
	}
}

// sayEntry says what an entry holds and may hold.
func (s *Session) sayEntry(ref model.Ref) {
	text := ref.Words() + ": " + wording.Content(s.plan, ref, s.system)
	if r := ref.Field.RangeText(s.system); r != "" {
		text += "; range " + r
	}
	s.say(text)
}

// sayItem says all there is to say of something that is no entry.
func (s *Session) sayItem(it item) {
	switch {
	case it.figures != nil:
		s.say(wording.Figures(it.figures, s.system))
	case it.finding != nil:
		s.say(wording.Finding(*it.finding, s.system))
		s.say("source: " + it.finding.Source)
		if it.finding.Mend != "" {
			s.say("entry to mend: " + wording.WhereIs(s.plan, it.finding.Mend) + ", " + string(it.finding.Mend))
		}
	case it.proposal != nil:
		s.sayProposal(*it.proposal)
	}
}

// what says what something means.
func (s *Session) what(rest string) {
	if n, ok := number(rest); ok {
		it, why := s.item(n)
		if why != "" {
			s.refuse(why)
			return
		}
		if it.ref == nil {
			s.sayItem(it)
			return
		}
		s.explain(*it.ref)
		return
	}
	ref, why := s.entryNamed(rest)
	if why == "" {
		s.explain(ref)
		return
	}
	if lines, at := s.figuresNamed(rest); len(lines) == 1 {
		s.sayItem(item{figures: lines[0], sheet: at})
		return
	}
	s.refuse(why)
}

// explain says all that is declared of an entry.
func (s *Session) explain(ref model.Ref) {
	s.sayEntry(ref)
	if help := ref.Field.Help; help != "" {
		s.say(help)
	}
	if why := ref.Idle(s.plan); why != "" && ref.AsBuilt(s.plan) == "" {
		s.say("it does not count now: " + why)
	}
	if ref.Field.Type != model.QuantityField && ref.Field.Default != "" {
		s.say("left blank it means " + ref.Field.Default)
	}
	s.say("path: " + string(ref.Path()))
}

// goTo goes to the page of what a number means.
func (s *Session) goTo(rest string) {
	n, ok := number(rest)
	if !ok {
		if t, named := pageNamed(rest); named {
			s.turnTo(t)
			return
		}
		s.refuse("go takes a number of the last list, or the name of a page")
		return
	}
	it, why := s.item(n)
	switch {
	case why != "":
		s.refuse(why)
	case it.ref != nil:
		s.goToEntry(*it.ref)
	case it.figures != nil:
		if it.sheet >= 0 {
			s.section = it.sheet
		}
		s.turnTo(it.figures[0].Topic)
	case it.proposal != nil:
		s.goToEntry(it.proposal.Ref)
	default:
		s.goToPath(it.finding.Mend)
	}
}

// goToEntry goes to the page of an entry and says it with its number there.
func (s *Session) goToEntry(ref model.Ref) {
	if wording.InSection(ref) {
		s.section = ref.Place.Outer
	}
	s.turnTo(ref.Field.Topic)
	for i, r := range s.pageEntries() {
		if r == ref {
			s.say(fmt.Sprintf("%d. %s: %s", i+1, label(ref), wording.Content(s.plan, ref, s.system)))
		}
	}
}

// goToPath goes to the page of an entry, or of a list, that a path means.
func (s *Session) goToPath(path model.Path) {
	if ref, ok := model.Find(s.plan, path); ok {
		s.goToEntry(ref)
		return
	}
	list, at, ok := model.FindList(s.plan, path)
	if !ok {
		s.refuse("there is no single entry behind this finding")
		return
	}
	if strings.HasPrefix(string(path), "section[") {
		s.section = at.Outer
	}
	s.turnTo(list.Topic)
	s.say("rows are added here: add " + strings.ToLower(list.Title))
}
