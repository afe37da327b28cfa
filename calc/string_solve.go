package calc

import (
	"math"
	"strconv"

	"borewalk/calc/spaceout"
	"borewalk/model"
	"borewalk/model/quantity"
)

// longestCollars is the greatest length of collars looked at, in m.
const longestCollars = 500

// stringProposals looks for the least collars that give the wanted weight on bit, and for the bit's depth at which no ram can
// close on a tool joint.
func stringProposals(plan *model.Plan, i int) []Proposal {
	e := runPages(plan, i, nil)
	if e.drills[i].missing.open() {
		return nil
	}
	var list []Proposal
	if p, ok := e.collarProposal(i); ok {
		list = append(list, p)
	}
	if p, ok := e.bitProposal(i); ok {
		list = append(list, p)
	}
	return list
}

// collarProposal proposes the length, or where joints are counted the number, of the longest part of collars; false where there
// is none or no weight is wanted.
func (e *evaluation) collarProposal(i int) (p Proposal, ok bool) {
	k, any := e.drills[i].mainCollar()
	if !any || !e.plan.Sections[i].StringLoads.BitWeight.IsSet() {
		return p, false
	}
	part := &e.drills[i].parts[k]
	limit, _ := e.plan.Limit(model.Rules()[model.RuleBitWeight])
	s := search{from: longestCollars, to: 1, keeps: func(r *Result) bool {
		f, found := r.Sheet(i).Find("string.bha.collars.used")
		return found && f.OK && f.Value <= limit.SI
	}}
	s.path = model.PathOf(i, "string["+strconv.Itoa(part.number)+"].length")
	if !part.row.Length.IsSet() {
		s.path, s.from = model.PathOf(i, "string["+strconv.Itoa(part.number)+"].count"), math.Ceil(longestCollars/part.row.JointEvery.SI)
	}
	p = Proposal{Title: "Least collars for the weight on bit", Gives: "string.bha.collars.used", Note: "the longest part of collars; the rest as it is",
		Why: "not even 500 m of collars give that weight, or they do not fit the hole"}
	return e.proposed(i, p, s), true
}

// bitProposal proposes the depth of the bit, picked up from where it is to stand, at which no ram can close on a tool joint;
// false where nothing is spaced out.
func (e *evaluation) bitProposal(i int) (p Proposal, ok bool) {
	if !e.spaced(i) {
		return p, false
	}
	sp := e.space(i, &e.drills[i])
	if sp.missing.open() {
		return p, false
	}
	path := model.PathOf(i, "space_out.bit")
	p = Proposal{Title: "Bit picked up so that no ram meets a tool joint", Note: "over tide and heave; annulars left out",
		Why: "with this tide and heave no position keeps tool joints off all rams"}
	p.Ref, _ = model.Find(e.plan, path)
	clear, _ := e.plan.Limit(model.Rules()[model.RuleRamJoint])
	lift, found := spaceout.Lift(sp.pipes, e.kept(&sp), clear.SI, sp.every)
	if !found {
		return p, true
	}
	s := search{plan: e.plan, section: i, path: path}
	trial := e.plan.Clone()
	ref, _ := model.Find(trial, path)
	unit := s.unit(ref)
	step := quantity.Step(ref.Field.Kind, unit)
	// The next shallower step of the unit may be beyond the clear stretch: then the exact depth.
	for _, depth := range [...]float64{math.Floor(unit.FromSI(sp.bit-lift)/step+1e-9) * step, unit.FromSI(sp.bit - lift)} {
		p.Entry = model.Entry{Quantity: quantity.Of(tidy(depth), unit)}
		ref.Set(trial, p.Entry)
		result := runPages(trial, i, nil).result
		again, done := result.Sheet(i).Find("spaceout.lift")
		if p.OK = done && again.OK && again.Value <= slack(quantity.Length)+1e-5; p.OK {
			figure, _ := result.Sheet(i).Find("spaceout.stick_up")
			p.Gives, p.Kind, p.Value = "Stick-up", figure.Kind, figure.Value
			e.count(i, &p, result)
			break
		}
	}
	return p, true
}
