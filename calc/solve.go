package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Proposal is an entry worked out so that a figure just meets its limit. It changes nothing by itself.
type Proposal struct {
	Title string      // what was looked for
	By    string      // what tells it from others for the same entry, such as "for most power"; short
	Ref   model.Ref   // the entry
	Entry model.Entry // its proposed content, rounded to the inner side in the entry's own unit
	OK    bool
	Why   string // when there is none: the reason
	Gives string // the figure that decides, by name
	Kind  quantity.Kind
	Value float64 // what that figure becomes
	Note  string
	More  []Setting // what is to be entered with it

	Cautions, Stops int // how many more findings of each the section then has; less is below zero
}

// Setting is a content for an entry.
type Setting struct {
	Ref   model.Ref
	Entry model.Entry
}

// Proposals works out what can be worked out for a topic of a section; costly, and so only when asked for.
func Proposals(plan *model.Plan, section int, topic model.Topic) []Proposal {
	propose := proposer(topic)
	if section < 0 || section >= len(plan.Sections) || propose == nil {
		return nil
	}
	return propose(plan, section)
}

// Proposes reports whether a topic has anything that can be worked out.
func Proposes(topic model.Topic) bool { return proposer(topic) != nil }

// proposer returns what works out the proposals of a topic, nil where there are none.
func proposer(topic model.Topic) func(*model.Plan, int) []Proposal {
	switch topic {
	case model.TopicHole:
		return seatProposals
	case model.TopicString:
		return func(plan *model.Plan, i int) []Proposal {
			return append(stringProposals(plan, i), dragProposals(plan, i)...)
		}
	case model.TopicHydraulics:
		return hydraulicsProposals
	case model.TopicMud:
		return mudProposals
	case model.TopicCement:
		return cementProposals
	}
	return nil
}

// search is a quest for the value of an entry, between two bounds, that is furthest towards the second of them and keeps
// a condition. The condition must hold up to some value and fail from there on.
type search struct {
	plan     *model.Plan
	section  int
	path     model.Path
	from, to float64            // SI
	keeps    func(*Result) bool // looks at the sheet of the section alone
}

// solve returns the last value that keeps the condition, rounded back towards where the search begins by the natural step
// of the entry's unit, and the result with it.
func (s search) solve() (entry model.Entry, result *Result, ok bool) {
	trial := s.plan.Clone()
	ref, found := model.Find(trial, s.path)
	if !found {
		return entry, nil, false
	}
	unit := s.unit(ref)
	try := func(x float64) *Result {
		ref.Set(trial, model.Entry{Quantity: quantity.Of(unit.FromSI(x), unit)})
		return runPages(trial, s.section, nil).result
	}
	if !s.keeps(try(s.from)) {
		return entry, nil, false
	}
	good, bad := s.from, s.to
	if s.keeps(try(s.to)) {
		good = s.to
	}
	for range 30 {
		if math.Abs(unit.FromSI(good)-unit.FromSI(bad)) < 0.01*quantity.Step(ref.Field.Kind, unit) {
			break
		}
		if middle := (good + bad) / 2; s.keeps(try(middle)) {
			good = middle
		} else {
			bad = middle
		}
	}
	step := quantity.Step(ref.Field.Kind, unit)
	rounded := math.Floor(unit.FromSI(good)/step+1e-9) * step
	if s.to < s.from {
		rounded = math.Ceil(unit.FromSI(good)/step-1e-9) * step
	}
	entry = model.Entry{Quantity: quantity.Of(tidy(rounded), unit)}
	ref.Set(trial, entry)
	result = Evaluate(trial)
	return entry, result, s.keeps(result)
}

// proposed solves a search for section i and fills in what the proposal comes to.
func (e *evaluation) proposed(i int, p Proposal, s search) Proposal {
	s.plan, s.section = e.given, i
	p.Ref, _ = model.Find(e.given, s.path)
	entry, result, ok := s.solve()
	if p.OK = ok; ok {
		figure, _ := result.Sheet(i).Find(p.Gives)
		p.Entry, p.Gives, p.Kind, p.Value = entry, figure.Name, figure.Kind, figure.Value
		e.count(i, &p, result)
	}
	return p
}

// count says how many more findings section i has with a proposal taken, both worked out from the section's pages alone.
func (e *evaluation) count(i int, p *Proposal, taken *Result) {
	_, now := e.result.Worst(i)
	_, then := taken.Worst(i)
	p.Cautions, p.Stops = then[Caution]-now[Caution], then[Stop]-now[Stop]
}

// tidy takes the rounding of a multiple off: 0.30000000000000004 becomes 0.3.
func tidy(x float64) float64 { return math.Round(x*1e6) / 1e6 }

// unit returns the unit that the entry is written in, else the plan's.
func (s search) unit(ref model.Ref) quantity.Unit {
	if v := ref.Get(s.plan).Quantity; v.IsSet() {
		return v.Unit
	}
	set, _ := quantity.ParseSet(s.plan.Well.UnitSet)
	return s.plan.System(set, true).Unit(ref.Field.Kind)
}

// WithFlow returns what a section comes to when it is circulated at another flow in m3/s: its sheet and findings alone.
func WithFlow(plan *model.Plan, section int, flow float64) *Result {
	s := search{plan: plan, section: section, path: model.PathOf(section, "flow")}
	trial := plan.Clone()
	if ref, ok := model.Find(trial, s.path); ok {
		unit := s.unit(ref)
		ref.Set(trial, model.Entry{Quantity: quantity.Of(unit.FromSI(flow), unit)})
	}
	return runPages(trial, section, nil).result
}
