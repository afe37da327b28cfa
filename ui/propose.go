package ui

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// noProposals says why nothing can be worked out here.
func (p *Planner) noProposals() string {
	if !calc.Proposes(p.topic) {
		return "there is nothing to be worked out on this page"
	}
	if len(p.plan.Sections) == 0 {
		return "there is no section"
	}
	return ""
}

// showProposals offers entries that are worked out so that a figure meets its limit. Taking one is an edit like any other.
func (p *Planner) showProposals() {
	list := calc.Proposals(p.plan, p.section, p.topic)
	if len(list) == 0 {
		p.message = "nothing can be worked out here: an entry is missing, or it is not wanted (f findings)"
		return
	}
	u := &menu{title: "Limits for section " + strconv.Itoa(p.section+1) + ", no advice; enter takes one"}
	for _, proposal := range list {
		u.items = append(u.items, p.proposalItem(proposal))
	}
	u.pick = func(p *Planner, i int) {
		if !list[i].OK {
			p.message = list[i].Title + ": " + list[i].Why
			return
		}
		ref := list[i].Ref
		changes := []model.Change{model.Setting(p.plan, ref, list[i].Entry)}
		for _, more := range list[i].More {
			changes = append(changes, model.Setting(p.plan, more.Ref, more.Entry))
		}
		p.do(model.Edit{Name: p.editName(ref, list[i].Entry), Changes: changes})
		p.goTo(ref.Path())
	}
	p.overlay = u
}

// proposalItem puts a proposal on one line, with all there is to say below the page.
func (p *Planner) proposalItem(proposal calc.Proposal) item {
	if !proposal.OK {
		return item{text: proposal.Title + ": none", full: proposal.Title + ": " + proposal.Why}
	}
	text := p.settingsText(proposal)
	full := proposal.Title + ": " + text + ": " + proposal.Gives + " " +
		quantity.FormatUnit(proposal.Value, proposal.Kind, p.system.Unit(proposal.Kind)) + "; " + proposal.Note
	adds := ""
	for _, more := range []struct {
		count int
		word  string
	}{{proposal.Stops, "stop"}, {proposal.Cautions, "caution"}} {
		if more.count != 0 {
			adds += fmt.Sprintf(" %+d %s", more.count, more.word)
		}
	}
	if adds != "" {
		full += "; findings" + adds
	}
	return item{text: text + adds, full: full}
}

// settingsText writes the proposed contents of entries, with what tells the proposal from others, and what they are now.
func (p *Planner) settingsText(proposal calc.Proposal) string {
	var to, now []string
	for k, s := range append([]calc.Setting{{Ref: proposal.Ref, Entry: proposal.Entry}}, proposal.More...) {
		text := s.Ref.Field.Label + " " + s.Ref.Field.ScreenText(s.Entry, p.system)
		if k == 0 && proposal.By != "" {
			text += " " + proposal.By
		}
		to = append(to, text)
		now = append(now, cmp.Or(s.Ref.Field.ScreenText(s.Ref.Get(p.plan), p.system), "blank"))
	}
	return strings.Join(to, ", ") + " (now " + strings.Join(now, ", ") + ")"
}
