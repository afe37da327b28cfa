package ui

import (
	"fmt"
	"strconv"

	"borewalk/calc"
	"borewalk/model"
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
		p.do(model.Edit{Name: p.editName(ref, list[i].Entry), Changes: []model.Change{model.Setting(p.plan, ref, list[i].Entry)}})
		p.goTo(ref.Path())
	}
	p.overlay = u
}

// proposalItem puts a proposal on one line, with all there is to say below the page.
func (p *Planner) proposalItem(proposal calc.Proposal) item {
	if !proposal.OK {
		return item{text: proposal.Title + ": none", full: proposal.Title + ": " + proposal.Why}
	}
	now := proposal.Ref.Field.ScreenText(proposal.Ref.Get(p.plan), p.system)
	if now == "" {
		now = "blank"
	}
	to := proposal.Ref.Field.ScreenText(proposal.Entry, p.system)
	full := proposal.Title + ": " + proposal.Ref.Field.Name + " " + to + ", now " + now + "; " + proposal.Note
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
	by := ""
	if proposal.By != "" {
		by = " by " + proposal.By
	}
	return item{text: proposal.Ref.Field.Label + " " + to + by + " (now " + now + ")" + adds, full: full}
}
