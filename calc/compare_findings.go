package calc

import (
	"cmp"
	"slices"
)

// FindingChange is a finding that only one of two plans has, or that is met in one and missed in the other, or of another severity.
type FindingChange struct {
	Had, Has      bool // whether the earlier, the later plan has it
	Before, After Finding
}

// Finding returns the finding as the later plan has it, or the earlier one where that does not.
func (f *FindingChange) Finding() *Finding {
	if f.Has {
		return &f.After
	}
	return &f.Before
}

// Worst returns the higher severity of the two.
func (f *FindingChange) Worst() Severity { return max(f.Before.Severity, f.After.Severity) }

// worse ranks a change: what has come or got worse before what has gone or got better.
func (f *FindingChange) worse() int {
	switch {
	case f.Has && (!f.Had || f.After.Severity > f.Before.Severity):
		return 0
	case f.Had && f.Has && f.After.Severity == f.Before.Severity:
		return 1
	}
	return 2
}

// differs reports whether a finding that both plans have is another now: of another severity, met where it was missed, or missed
// at something else.
func (f *FindingChange) differs() bool {
	return f.Before.Severity != f.After.Severity || (f.Before.Margin < 0) != (f.After.Margin < 0) || f.Before.Text != f.After.Text && f.Worst() > OK
}

// findings returns what has changed among the findings: the worst first, and of those what has got worse.
func (c *comparing) findings() (list []FindingChange) {
	was, is := c.sectioned(c.was.Findings, true), c.sectioned(c.is.Findings, false)
	for _, p := range pairFindings(was, is) {
		f := FindingChange{Had: p[0] >= 0, Has: p[1] >= 0}
		if f.Had {
			f.Before = c.was.Findings[p[0]]
		}
		if f.Has {
			f.After = c.is.Findings[p[1]]
		}
		if !f.Had || !f.Has || f.differs() {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b FindingChange) int {
		return cmp.Or(cmp.Compare(b.Worst(), a.Worst()), cmp.Compare(a.worse(), b.worse()))
	})
	return list
}

// sectioned returns copies of findings whose sections are numbered alike in both plans: by their pair, from zero.
func (c *comparing) sectioned(findings []Finding, before bool) []Finding {
	list := slices.Clone(findings)
	for i := range list {
		list[i].Section = slices.IndexFunc(c.pairs, func(p SectionPair) bool {
			return list[i].Section >= 0 && (before && p.Before == list[i].Section || !before && p.After == list[i].Section)
		})
	}
	return list
}

// pairFindings pairs findings by what they look at, then those that are left by their rule, since what was looked at may name a
// size that has changed. Several that look at the same are paired in their order. A pair holds indices, -1 for none.
func pairFindings(was, is []Finding) (pairs [][2]int) {
	free := make([]bool, len(was))
	for i := range free {
		free[i] = true
	}
	for j := range is {
		pairs = append(pairs, [2]int{-1, j})
	}
	rule := func(f *Finding) question {
		if f.Key == faultKey { // of no rule: each entry stands for itself
			return f.question()
		}
		return question{f.Section, f.Key, ""}
	}
	for _, asked := range []func(*Finding) question{(*Finding).question, rule} {
		open := map[question][]int{}
		for i := range was {
			if q := asked(&was[i]); free[i] {
				open[q] = append(open[q], i)
			}
		}
		for j := range is {
			q := asked(&is[j])
			if same := open[q]; pairs[j][0] < 0 && len(same) > 0 {
				pairs[j][0], free[same[0]], open[q] = same[0], false, same[1:]
			}
		}
	}
	for i := range was {
		if free[i] {
			pairs = append(pairs, [2]int{i, -1})
		}
	}
	return pairs
}
