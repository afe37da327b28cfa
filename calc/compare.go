package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// Comparison is what differs between two plans, and between what they give.
type Comparison struct {
	Entries  []EntryChange
	Figures  []FigureMove
	Findings []FindingChange
	Pairs    []SectionPair // which section of one plan is which of the other
}

// SectionPair is a section of the plan before and the same section in the plan after; -1 where there is none.
type SectionPair struct{ Before, After int }

// Compare holds a plan against an earlier one, or another. Sections are the same when they have the same name; those that are left,
// when they stand in the same order.
func Compare(before, after *model.Plan) Comparison {
	c := comparing{before: before, after: after, pairs: pairSections(before, after)}
	c.was, c.is = Evaluate(before), Evaluate(after)
	for k, plan := range []*model.Plan{before, after} {
		set, _ := quantity.ParseSet(plan.Well.UnitSet)
		c.units[k] = plan.System(set, true)
	}
	return Comparison{Entries: c.entries(), Figures: c.figures(), Findings: c.findings(), Pairs: c.pairs}
}

// CompareEntries returns only what was entered otherwise, for which nothing has to be worked out.
func CompareEntries(before, after *model.Plan) []EntryChange {
	c := comparing{before: before, after: after, pairs: pairSections(before, after)}
	return c.entries()
}

// Same reports whether nothing differs.
func (c *Comparison) Same() bool { return len(c.Entries)+len(c.Figures)+len(c.Findings) == 0 }

// comparing is the state of one comparison.
type comparing struct {
	before, after *model.Plan
	was, is       *Result
	units         [2]quantity.System // that the plans show
	pairs         []SectionPair
}

// pairSections pairs the sections of two plans, in the order of the later one; those that are gone come last.
func pairSections(before, after *model.Plan) []SectionPair {
	names := func(sections []model.Section) (list []string) {
		for i := range sections {
			list = append(list, sections[i].Name)
		}
		return list
	}
	return pairNames(names(before.Sections), names(after.Sections))
}

// pairNames pairs those of the same name that is not blank, then those that are left in their order.
func pairNames(before, after []string) (pairs []SectionPair) {
	taken := make([]bool, len(before))
	for j := range after {
		pairs = append(pairs, SectionPair{-1, j})
		for i := range before {
			if !taken[i] && after[j] != "" && before[i] == after[j] {
				pairs[j].Before, taken[i] = i, true
				break
			}
		}
	}
	next := 0
	for j := range pairs {
		for next < len(before) && taken[next] {
			next++
		}
		if pairs[j].Before < 0 && next < len(before) {
			pairs[j].Before, taken[next] = next, true
		}
	}
	for i := range before {
		if !taken[i] {
			pairs = append(pairs, SectionPair{i, -1})
		}
	}
	return pairs
}

// both calls visit for the well, -1, and for every section that both plans have.
func (c *comparing) both(visit func(before, after int)) {
	visit(-1, -1)
	for _, pair := range c.pairs {
		if pair.Before >= 0 && pair.After >= 0 {
			visit(pair.Before, pair.After)
		}
	}
}
