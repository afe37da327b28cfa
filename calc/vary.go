package calc

import (
	"slices"

	"borewalk/model"
)

// Sweep asks what a figure becomes when one entry, or two, take other contents than the plan's. The plan is not changed by it.
type Sweep struct {
	Spans []Span // one or two
	Sheet int    // of the figure: a section, or -1 for the well
	Key   string

	plan *model.Plan // a copy that nobody else holds
	now  *Result
}

// NewSweep prepares a sweep of a plan's figure over the contents of one or two entries.
func NewSweep(plan *model.Plan, sheet int, key string, spans ...Span) *Sweep {
	own := plan.Clone()
	return &Sweep{Spans: spans, Sheet: sheet, Key: key, plan: own, now: Evaluate(own)}
}

// Outcome is what one content, or one pair of them, gives.
type Outcome struct {
	Figure   Figure
	Limits   []Finding // the comparisons that measure the figure
	Severity Severity  // of Worst
	Worst    Finding   // the worst among Limits and what the plan as it stands does not find, or finds less bad
	Cautions int       // how many more than the plan as it stands has; less is below zero
	Stops    int
}

// Size returns how many outcomes the sweep takes.
func (s *Sweep) Size() int {
	size := 1
	for _, span := range s.Spans {
		size *= len(span.Entries)
	}
	return size
}

// Number returns which outcome belongs to content i of the first entry, and content j of the second where there is one.
func (s *Sweep) Number(i, j int) int { return i + j*len(s.Spans[0].Entries) }

// Try works out the outcomes from one number up to another, the last not counted. Each is a whole run over the plan: two calls do
// not disturb each other.
func (s *Sweep) Try(from, to int) []Outcome {
	plan := s.plan.Clone()
	before := map[question]Severity{}
	for i := range s.now.Findings {
		f := &s.now.Findings[i]
		before[f.question()] = max(before[f.question()], f.Severity)
	}
	outcomes := make([]Outcome, 0, to-from)
	for number := from; number < to; number++ {
		var h model.History
		rest := number
		for _, span := range s.Spans {
			n := len(span.Entries)
			h.Do(plan, model.Edit{Changes: entering(plan, span.Ref, span.Entries[rest%n])})
			rest /= n
		}
		outcomes = append(outcomes, s.outcome(Evaluate(plan), before))
		for range s.Spans {
			h.Undo(plan)
		}
	}
	return outcomes
}

// Changes returns what makes the contents of an outcome the plan's own.
func (s *Sweep) Changes(number int) (changes []model.Change) {
	plan := s.plan.Clone()
	for _, span := range s.Spans {
		n := len(span.Entries)
		step := entering(plan, span.Ref, span.Entries[number%n])
		number /= n
		changes = append(changes, step...)
		var h model.History
		h.Do(plan, model.Edit{Changes: slices.Clone(step)})
	}
	return changes
}

// entering returns the changes that give an entry a content. Air gap and water depth take every depth with them, as when the
// whole well moves with the seabed; which depth of a hole is given carries the depth over.
func entering(plan *model.Plan, ref model.Ref, to model.Entry) []model.Change {
	switch {
	case ref.Group.Name == "well" && (ref.Field.Key == "water_depth" || ref.Field.Key == "air_gap"):
		return MoveDatum(plan, ref, to, MoveAll)
	case ref.Group == model.SectionGroup() && ref.Field.Key == "depth_by":
		return FixDepthBy(plan, ref, to)
	}
	return []model.Change{model.Setting(plan, ref, to)}
}

// question tells findings apart by what they look at, whatever they find.
type question struct {
	section   int
	key, text string
}

func (f *Finding) question() question { return question{f.Section, f.Key, f.Text} }

// outcome reads one result.
func (s *Sweep) outcome(r *Result, before map[question]Severity) (t Outcome) {
	t.Figure, _ = r.Sheet(s.Sheet).Find(s.Key)
	for _, f := range r.Findings {
		limits := f.measures(s.Sheet, &t.Figure)
		if limits {
			t.Limits = append(t.Limits, f)
		}
		if f.Severity > t.Severity && (limits || f.Severity > before[f.question()]) {
			t.Severity, t.Worst = f.Severity, f
		}
	}
	_, now := s.now.Worst(-1)
	_, then := r.Worst(-1)
	t.Cautions, t.Stops = then[Caution]-now[Caution], then[Stop]-now[Stop]
	return t
}

// measures reports whether the finding compares this very figure of a sheet with its limit. The two are told by the number, which
// is the same to the last bit, since a rule is handed the value that its figure shows; [Sweep.Chart] rules out chance.
func (f *Finding) measures(sheet int, figure *Figure) bool {
	return figure.OK && f.HasLimit && f.Section == sheet && f.Kind == figure.Kind && f.Measured == figure.Value
}

// limitsOf returns the keys of the rules whose findings measure the figure in every outcome that has it, in their order. Where the
// figure is zero throughout, it may be that another number is zero too, and none counts.
func limitsOf(outcomes []Outcome) (keys []string) {
	count, known, zero := map[string]int{}, 0, true
	for i := range outcomes {
		t := &outcomes[i]
		if !t.Figure.OK {
			continue
		}
		known++
		zero = zero && t.Figure.Value == 0
		seen := map[string]bool{}
		for _, f := range t.Limits {
			if seen[f.Key] {
				continue
			}
			seen[f.Key] = true
			if count[f.Key]++; count[f.Key] == 1 {
				keys = append(keys, f.Key)
			}
		}
	}
	if zero {
		return nil
	}
	kept := keys[:0]
	for _, k := range keys {
		if count[k] == known {
			kept = append(kept, k)
		}
	}
	return kept
}

// Chart draws the figure against the entry, with the limits that it is held against and the places where the findings of the plan
// change. The outcomes are those of a sweep of one entry, from the first; where the figure is blank the curve has a gap.
func (s *Sweep) Chart(outcomes []Outcome) Chart {
	span := s.Spans[0]
	f := s.figure()
	c := Chart{Key: "vary." + s.Key, Title: f.Label() + " against " + span.Ref.Field.Label, Topic: f.Topic,
		Axis: span.Ref.Field.Label, Along: span.Ref.Field.Kind}
	at := func(i int) float64 { return span.Entries[i].Quantity.SI }
	curve := ChartCurve{Name: f.Label(), Kind: f.Kind}
	for i := range outcomes {
		curve.Points = append(curve.Points, ChartPoint{at(i), orGap(&outcomes[i].Figure)})
	}
	c.Curves = append(c.Curves, curve)
	for _, key := range limitsOf(outcomes) {
		limit := ChartCurve{Kind: f.Kind, Limit: true}
		for i := range outcomes {
			for _, l := range outcomes[i].Limits {
				if l.Key == key {
					limit.Name = l.limitName()
					limit.Points = append(limit.Points, ChartPoint{at(i), l.Limit})
					break
				}
			}
		}
		c.Curves = append(c.Curves, limit)
	}
	if span.Now >= 0 {
		c.Marks = append(c.Marks, ChartMark{"now", at(span.Now)})
	}
	for i := 1; i < len(outcomes); i++ {
		if before, then := outcomes[i-1].Severity, outcomes[i].Severity; then > before {
			c.Marks = append(c.Marks, ChartMark{then.String(), at(i)})
		} else if before > then {
			c.Marks = append(c.Marks, ChartMark{before.String(), at(i - 1)})
		}
	}
	return c
}

// figure returns the figure as the plan stands.
func (s *Sweep) figure() Figure {
	f, _ := s.now.Sheet(s.Sheet).Find(s.Key)
	return f
}

// Label names a figure with its column.
func (f *Figure) Label() string {
	if f.Column != "" {
		return f.Name + ", " + f.Column
	}
	return f.Name
}

// limitName says what limit a finding holds.
func (f *Finding) limitName() string {
	for _, r := range model.Rules() {
		if r.Key == f.Key {
			if f.Own {
				return r.Name + ", own limit"
			}
			return r.Name
		}
	}
	return f.Text
}
