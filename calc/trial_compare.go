package calc

import (
	"cmp"
	"math"
	"slices"

	"borewalk/model"
	"borewalk/model/quantity"
)

// SideBySide holds a section's trials beside the plan as it stands.
type SideBySide struct {
	Section int
	Now     *Result
	Trials  []Trial
}

// ComparedEntry is an entry that some of the trials change; Tried says which of their changes that is, -1 for none.
type ComparedEntry struct {
	Path  string
	Ref   model.Ref // none where the plan has none
	Tried []int
}

// ComparedFigure is a figure of the section in the plan, and then in each trial.
type ComparedFigure struct {
	Figure        // as the plan has it, or the first trial that does
	Label  string // a name that says what it is away from its page
	Moves  bool
	Cells  []FigureCell
}

// FigureCell is a figure with the worst of what is found about it. A figure that is not there is not OK.
type FigureCell struct {
	Figure   Figure
	Severity Severity
}

// ComparedFinding is a finding that is another with some trial: how bad it is in the plan, and then in each trial.
type ComparedFinding struct {
	Finding    // where it is worst
	Severities []Severity
}

// results returns the plan's result and then each trial's, nil where that is not worked out.
func (c *SideBySide) results() []*Result {
	list := []*Result{c.Now}
	for i := range c.Trials {
		list = append(list, c.Trials[i].Result)
	}
	return list
}

// Entries returns the entries that the trials change, in the order in which they come.
func (c *SideBySide) Entries() (list []ComparedEntry) {
	for i := range c.Trials {
		for n, tried := range c.Trials[i].Changes {
			k := slices.IndexFunc(list, func(e ComparedEntry) bool {
				return e.Tried[i] < 0 && e.Ref == tried.Ref && (tried.Ref.Field != nil || e.Path == tried.Path)
			})
			if k < 0 {
				k = len(list)
				list = append(list, ComparedEntry{tried.Path, tried.Ref, slices.Repeat([]int{-1}, len(c.Trials))})
			}
			list[k].Tried[i] = n
		}
	}
	return list
}

// Figures returns the figures that tell the trials apart: those that a section is judged by, and of the others those that move most.
// Those that move with some trial come first.
func (c *SideBySide) Figures() (list []ComparedFigure) {
	var stay []ComparedFigure
	for _, key := range slices.Concat(trialFigures(), mostMoved(c.results(), c.Section)) {
		f, ok := c.figure(key)
		switch {
		case ok && f.Moves:
			list = append(list, f)
		case ok:
			stay = append(stay, f)
		}
	}
	return append(list, stay...)
}

// figure looks a figure up in the plan and in each trial; it reports false when none has it.
func (c *SideBySide) figure(key trialFigure) (f ComparedFigure, there bool) {
	for i, r := range c.results() {
		var cell FigureCell
		if r != nil {
			found, ok := r.Sheet(c.Section).Find(key.key)
			cell = FigureCell{found, r.severity(c.Section, &found, key.rules)}
			if ok && !there {
				f.Figure, f.Label, there = found, cmp.Or(key.name, found.Label()), true
			}
			f.Moves = f.Moves || i > 0 && (found.OK != f.Cells[0].Figure.OK || found.Value != f.Cells[0].Figure.Value)
		}
		f.Cells = append(f.Cells, cell)
	}
	return f, there
}

// severity returns the worst of the findings that measure a figure of a section, or belong to one of the rules.
func (r *Result) severity(section int, figure *Figure, rules []model.RuleID) (worst Severity) {
	for i := range r.Findings {
		f := &r.Findings[i]
		about := f.Section == section && slices.ContainsFunc(rules, func(id model.RuleID) bool { return model.Rules()[id].Key == f.Key })
		if about || f.measures(section, figure) {
			worst = max(worst, f.Severity)
		}
	}
	return worst
}

// How many figures beyond the listed ones are shown, and by which share of itself one moves at least.
const (
	furtherFigures = 6
	leastShare     = 0.01
)

// mostMoved returns the figures that move most with some of the trials, by the share of the greater of the two values, of those that
// are not listed nor say the same as one that is; of a line the first.
func mostMoved(results []*Result, section int) (list []trialFigure) {
	share, was := map[string]float64{}, map[string]float64{}
	now := results[0].Sheet(section).Figures
	for _, f := range now {
		if f.OK && f.Column == "" {
			was[f.Key] = f.Value
		}
	}
	for _, r := range results[1:] {
		if r == nil {
			continue
		}
		for _, then := range r.Sheet(section).Figures {
			if from, ok := was[then.Key]; ok && then.OK {
				share[then.Key] = max(share[then.Key], shareMoved(from, then.Value))
			}
		}
	}
	said := map[number]bool{}
	for _, key := range trialFigures() {
		if f, ok := results[0].Sheet(section).Find(key.key); ok {
			said[number{f.Kind, f.Value}] = true
		}
	}
	for _, f := range now {
		if share[f.Key] >= leastShare && !said[number{f.Kind, f.Value}] {
			list = append(list, trialFigure{key: f.Key})
			said[number{f.Kind, f.Value}] = true
		}
	}
	slices.SortStableFunc(list, func(a, b trialFigure) int { return cmp.Compare(share[b.key], share[a.key]) })
	return list[:min(len(list), furtherFigures)]
}

// number is what a figure says.
type number struct {
	kind  quantity.Kind
	value float64
}

// shareMoved returns by how much a value moves, as a share of the greater of the two.
func shareMoved(from, to float64) float64 {
	if from == to {
		return 0
	}
	return math.Abs(to-from) / max(math.Abs(from), math.Abs(to))
}

// Findings returns what is found beyond limits met with some trial and not in the plan, or the other way round, or worse in one than
// in the other; the worst first.
func (c *SideBySide) Findings() (list []ComparedFinding) {
	results := c.results()
	at := map[question]int{}
	for i, r := range results {
		if r == nil {
			continue
		}
		for _, f := range r.Findings {
			if f.Severity == OK {
				continue
			}
			k, known := at[f.question()]
			if !known {
				k = len(list)
				at[f.question()] = k
				list = append(list, ComparedFinding{f, make([]Severity, len(results))})
			}
			if f.Severity > list[k].Severity {
				list[k].Finding = f
			}
			list[k].Severities[i] = max(list[k].Severities[i], f.Severity)
		}
	}
	list = slices.DeleteFunc(list, func(f ComparedFinding) bool {
		for i, r := range results {
			if r != nil && f.Severities[i] != f.Severities[0] {
				return false
			}
		}
		return true
	})
	slices.SortStableFunc(list, func(a, b ComparedFinding) int {
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(a.Section, b.Section))
	})
	return list
}
