package dialogue

import (
	"cmp"
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/wording"
)

// proposals lists entries of the page that are worked out so that a figure meets its limit.
func (s *Session) proposals() {
	if !calc.Proposes(s.topic) || s.sheet() < 0 {
		s.refuse("there is nothing to be worked out on this page")
		return
	}
	s.named = list{}
	for _, p := range calc.Proposals(s.plan, s.section, s.topic) {
		s.named.items = append(s.named.items, item{proposal: &p})
		if !p.OK {
			s.say(fmt.Sprintf("%d. %s: none, %s", len(s.named.items), p.Title, p.Why))
			continue
		}
		s.say(fmt.Sprintf("%d. %s: %s", len(s.named.items), p.Title, s.settings(p)))
	}
	if len(s.named.items) == 0 {
		s.say("nothing can be worked out here: an entry is missing, or it is not wanted")
		return
	}
	s.say("limits, no advice; a number says more, take enters one")
}

// settings says what a proposal would enter, and what is entered now.
func (s *Session) settings(p calc.Proposal) string {
	var list []string
	for _, set := range append([]calc.Setting{{Ref: p.Ref, Entry: p.Entry}}, p.More...) {
		now := cmp.Or(set.Ref.Field.ScreenText(set.Ref.Get(s.plan), s.system), "blank")
		list = append(list, fmt.Sprintf("%s %s, now %s", set.Ref.Field.Label, set.Ref.Field.ScreenText(set.Entry, s.system), now))
	}
	if p.By != "" {
		list = append(list, p.By)
	}
	return strings.Join(list, ", ")
}

// sayProposal says all there is to say of a proposal.
func (s *Session) sayProposal(p calc.Proposal) {
	if !p.OK {
		s.say(p.Title + ": none, " + p.Why)
		return
	}
	s.say(p.Title + ": " + s.settings(p))
	s.say(p.Gives + ": " + s.show(p.Value, p.Kind))
	if p.Note != "" {
		s.say(p.Note)
	}
	if p.Stops != 0 || p.Cautions != 0 {
		s.say(fmt.Sprintf("findings: %+d stop, %+d caution", p.Stops, p.Cautions))
	}
}

// take enters a proposal of the last list, or takes the plan over.
func (s *Session) take(rest string) {
	if strings.EqualFold(rest, "over") {
		s.takeOver()
		return
	}
	n, ok := number(rest)
	if !ok {
		s.refuse("take takes the number of a proposal; say proposals first")
		return
	}
	it, why := s.item(n)
	switch {
	case why != "":
		s.refuse(why)
	case it.proposal == nil:
		s.refuse(fmt.Sprintf("%d is no proposal; say proposals first", n))
	case !it.proposal.OK:
		s.refuse(it.proposal.Title + ": none, " + it.proposal.Why)
	default:
		p := it.proposal
		changes := []model.Change{model.Setting(s.plan, p.Ref, p.Entry)}
		for _, more := range p.More {
			changes = append(changes, model.Setting(s.plan, more.Ref, more.Entry))
		}
		edit := model.Edit{Name: wording.EditName(s.plan, p.Ref, p.Entry, s.system), Changes: changes}
		if !edit.Changed() {
			s.say("nothing changed: that is entered already")
			return
		}
		s.do(edit)
		s.named.stale = true // what was worked out held for the plan as it was
	}
}
