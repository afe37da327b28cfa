package dialogue

import (
	"cmp"
	"fmt"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/wording"
)

// sayEntriesMoved says which entries an edit has changed: what each is, and what it was. The name of the edit is said where that is
// only another way to write the same.
func (s *Session) sayEntriesMoved(c calc.Comparison, name string) {
	for _, e := range c.Entries {
		if e.After != "" && e.Field != nil {
			if ref, ok := model.Find(s.plan, e.After); ok && ref.AsBuilt(s.plan) == "" && ref.Idle(s.plan) != "" {
				s.say(s.entryMoved(e) + "; it does not count now: " + ref.Idle(s.plan))
				continue
			}
		}
		s.say(s.entryMoved(e))
	}
	if len(c.Entries) == 0 {
		s.say(name)
	}
}

// entryMoved says what an entry is and was, or that a row came or went.
func (s *Session) entryMoved(e calc.EntryChange) string { return s.entryAgainst(e, "was") }

// entryAgainst is entryMoved with another word before what the entry is in the first of two plans.
func (s *Session) entryAgainst(e calc.EntryChange, before string) string {
	if e.Field == nil {
		did := " removed"
		if e.Added() {
			did = " added"
		}
		text := e.Words + did
		for _, r := range e.Row {
			text += ", " + r.Field.Label + " " + r.Field.ScreenText(r.Entry, s.system)
		}
		return text
	}
	show := func(entry model.Entry) string { return cmp.Or(e.Field.ScreenText(entry, s.system), "blank") }
	return e.Words + ": " + show(e.New) + ", " + before + " " + show(e.Old)
}

// sayMoved says which findings came, went or changed, which figures of the page moved, and how many others did.
func (s *Session) sayMoved(c calc.Comparison) {
	if s.renamed {
		s.say("other entries of the page count now: say entries to hear them")
		s.renamed = false
	}
	known := s.sayFindingsMoved(c)
	here, elsewhere := 0, 0
	for _, m := range c.Figures {
		if m.Section != s.sheet() || m.Figure().Topic != s.topic {
			elsewhere++
			continue
		}
		here++
		s.say(s.figureMoved(m))
	}
	switch {
	case here+elsewhere+known == 0:
		s.say("no figure moved, no finding changed")
	case elsewhere > 0 && here > 0:
		s.say(fmt.Sprintf("figures moved on other pages: %d", elsewhere))
	case elsewhere > 0:
		s.say(fmt.Sprintf("no figure of this page moved; on other pages: %d", elsewhere))
	}
}

// sayFindingsMoved says the findings that changed and are, or were, more than a limit that is met; those that read alike, as of several
// rows of a list, once. It returns how many changed at all.
func (s *Session) sayFindingsMoved(c calc.Comparison) int {
	times := map[string]int{}
	var texts []string
	for _, f := range c.Findings {
		if f.Worst() == calc.OK {
			continue
		}
		text := s.findingMoved(f)
		if times[text]++; times[text] == 1 {
			texts = append(texts, text)
		}
	}
	for _, text := range texts {
		if n := times[text]; n > 1 {
			text += fmt.Sprintf(", %d times", n)
		}
		s.say(text)
	}
	return len(c.Findings)
}

// findingMoved says what has become of a finding.
func (s *Session) findingMoved(f calc.FindingChange) string {
	text := wording.Finding(*f.Finding(), s.system)
	switch {
	case !f.Had:
		return "new: " + text
	case !f.Has:
		return "gone: " + text
	case f.Before.Severity != f.After.Severity:
		return "was " + f.Before.Severity.String() + ", now " + text
	}
	return "still " + text
}

// figureMoved says what a figure is and was.
func (s *Session) figureMoved(m calc.FigureMove) string {
	f := m.Figure()
	return f.Label() + ": " + wording.Value(m.After, s.system) + ", was " + wording.Value(m.Before, s.system)
}

// movedWord says again, on whatever page, what the last edit moved there.
func (s *Session) movedWord(rest string) {
	s.asked(rest)
	if s.before == nil {
		s.say("nothing was edited yet")
		return
	}
	s.sayMoved(calc.Compare(s.before, s.plan))
}

// changes says what differs from an earlier state of the plan.
func (s *Session) changes(rest string) {
	_, left := s.asked(rest)
	since, from := "since the baseline", s.base
	if left != "" {
		states := []string{"baseline", "opened", "saved"}
		switch i := chosen(left, states); i {
		case 0:
		case 1:
			since, from = "since it was opened", s.opened
		case 2:
			plan := s.withLog()
			from, _ = model.Rewind(plan, len(s.history.Pending()))
			since = "since it was last saved"
		default:
			s.refuse("changes takes baseline, opened or saved")
			return
		}
	}
	c := calc.Compare(from, s.plan)
	if c.Same() {
		s.say("nothing differs " + since)
		return
	}
	s.say(fmt.Sprintf("changed %s: entries %d, findings %d, figures %d", since, len(c.Entries), len(c.Findings), len(c.Figures)))
	for _, e := range c.Entries {
		s.say(s.entryMoved(e))
	}
	s.sayFindingsMoved(c)
	for _, m := range c.Figures {
		s.say(place(m.Section) + ", " + m.Figure().Topic.String() + ": " + s.figureMoved(m))
	}
}

// place names a section, or the well.
func place(section int) string {
	if section < 0 {
		return "well"
	}
	return fmt.Sprintf("section %d", section+1)
}

// withLog returns the plan with what is not saved yet in its log too.
func (s *Session) withLog() *model.Plan {
	plan := s.plan.Clone()
	plan.Log = append(plan.Log, s.history.Pending()...)
	return plan
}

// takeBaseline counts changes from here.
func (s *Session) takeBaseline() {
	s.base = s.plan.Clone()
	s.say("changes are now counted from here")
}

// show formats a quantity with its unit.
func (s *Session) show(si float64, kind quantity.Kind) string {
	return quantity.FormatUnit(si, kind, s.system.Unit(kind))
}
