package calc

import (
	"math"
	"strings"

	"borewalk/calc/chance"
	"borewalk/model"
	"borewalk/model/quantity"
)

// OddsRow is an outcome over all trials: how it spreads and, where a rule asks, in how many of them its limit is met.
type OddsRow struct {
	Name   string // short, 18 columns at most
	Text   string // what is looked at, as findings have it
	Kind   quantity.Kind
	Likely float64 // with everything as it is likely; not a number for blank
	Spread chance.Spread

	HasLimit    bool
	Key         string // of the rule
	Limit       float64
	Least, Own  bool
	Source      string
	Odds        chance.Odds
	Unanswered  int  // trials without the outcome: they do not meet the limit
	Conditional bool // asked in some of the trials only; in the others the rule is met
}

// asked is an outcome that every trial is asked for.
type asked struct {
	what outcome
	text string
	rule model.RuleID
}

type outcome uint8

const (
	topOfCement outcome = iota
	kickTolerance
	heldAgainst
)

// ask lists what the trials are asked for: top of cement, kick tolerance, and what is judged with everything as it is likely, or with
// every range at one of its ends, since a rule may ask only when things go one way.
func (o *Odds) ask() {
	plan := o.plan.Clone()
	low, high := o.planned(), o.planned()
	for k := range low {
		low[k], high[k] = o.ranges[k].Low, o.ranges[k].High
	}
	for n, drawn := range [][rangeCount]float64{o.planned(), low, high} {
		t := o.workOut(plan, drawn)
		if n == 0 {
			if len(o.meant) > 0 {
				o.asked = append(o.asked, asked{what: topOfCement, text: "Top of cement, along hole"})
			}
			if !t.kick.missing.open() {
				o.asked = append(o.asked, asked{what: kickTolerance, text: "Kick tolerance at TD, exact"})
			}
		}
		for f := range t.judgements(o.Section) {
			if o.find(f) < 0 {
				o.asked = append(o.asked, asked{heldAgainst, plainText(f), ruleOf(f.Key)})
			}
		}
	}
}

// judgements yields the findings of a section that compare a value with a limit.
func (e *evaluation) judgements(section int) func(func(*Finding) bool) {
	return func(yield func(*Finding) bool) {
		for k := range e.result.Findings {
			if f := &e.result.Findings[k]; f.HasLimit && f.Section == section && !yield(f) {
				return
			}
		}
	}
}

// plainText returns what a finding looks at, whatever it finds.
func plainText(f *Finding) string { return strings.TrimSuffix(f.Text, relaxedText) }

// ruleOf returns the rule of a key.
func ruleOf(key string) model.RuleID {
	for _, r := range model.Rules() {
		if r.Key == key {
			return r.ID
		}
	}
	panic("calc: internal error: no rule " + key)
}

// find returns which question a finding answers; -1 for none.
func (o *Odds) find(f *Finding) int {
	for k := range o.asked {
		if q := &o.asked[k]; q.what == heldAgainst && q.text == plainText(f) && model.Rules()[q.rule].Key == f.Key {
			return k
		}
	}
	return -1
}

// answer reads the outcomes of a trial; of several values that answer one question, the worst.
func (o *Odds) answer(t tried, outcomes []float64) {
	for k := range o.asked {
		outcomes[k] = o.unjudged(&t, &o.asked[k])
	}
	for f := range t.judgements(o.Section) {
		k := o.find(f)
		if k < 0 {
			continue
		}
		switch x := outcomes[k]; {
		case math.IsNaN(x):
			outcomes[k] = f.Measured
		case f.Least:
			outcomes[k] = min(x, f.Measured)
		default:
			outcomes[k] = max(x, f.Measured)
		}
	}
}

// unjudged returns the outcome of a question that no finding answers: not a number where it is not known, endless where the rule has
// nothing to ask.
func (o *Odds) unjudged(t *tried, q *asked) float64 {
	switch {
	case q.what == topOfCement:
		if job := t.cementOf(o.Section); !job.missing.open() {
			return job.topOfCement()
		}
	case q.what == kickTolerance:
		if !t.kick.missing.open() {
			return t.kick.Volume
		}
	case conditional(q.rule) && !t.cementOf(o.Section).missing.open():
		return math.Inf(1)
	}
	return none()
}

// conditional reports whether a rule asks only where the cement does not reach the last string.
func conditional(id model.RuleID) bool { return id == model.RuleCementInflow }

// Rows returns the outcomes of trials, in the order of the pages.
func (o *Odds) Rows(outcomes [][]float64) []OddsRow {
	likely := make([]float64, len(o.asked))
	o.answer(o.workOut(o.plan.Clone(), o.planned()), likely)
	rows := make([]OddsRow, len(o.asked))
	for k := range o.asked {
		rows[k] = o.row(&o.asked[k], outcomes[k], likely[k])
	}
	return rows
}

// row returns one outcome of trials.
func (o *Odds) row(q *asked, values []float64, likely float64) OddsRow {
	r := OddsRow{Name: shortName(q.text), Text: q.text, Likely: likely, Spread: chance.SpreadOf(values)}
	r.Unanswered = len(values) - r.Spread.Known
	switch q.what {
	case topOfCement:
		r.Kind = quantity.Length
	case kickTolerance:
		r.Kind = quantity.Volume
	case heldAgainst:
		rule := model.Rules()[q.rule]
		limit, own := o.plan.Limit(rule)
		r.HasLimit, r.Key, r.Kind, r.Least, r.Limit, r.Own, r.Source = true, rule.Key, rule.Measure, rule.Least, limit.SI, own, rule.Source
		r.Conditional = conditional(q.rule)
		if rule.Least {
			r.Odds = chance.AtLeast(values, limit.SI-slack(rule.Measure))
		} else {
			r.Odds = chance.AtMost(values, limit.SI+slack(rule.Measure))
		}
	}
	return r
}

// shortName names what is looked at in no more columns than a table has for it.
func shortName(text string) string {
	switch text {
	case "Top of cement, along hole":
		return "Top of cement"
	case "Kick tolerance at TD, exact":
		return "Kick tolerance"
	case "Riserless fluid over pore":
		return "Fluid over pore"
	case "Light fluid over pore, before weighted mud":
		return "Light mud, pore"
	case "Mud over stability limit":
		return "Mud, stability"
	case "Riser off, mud and sea over pore":
		return "Riser off, pore"
	case "Planned shoe test over fracture at the shoe":
		return "Shoe test, rock"
	case "Mud below fracture and shoe test":
		return "Mud, fracture"
	case "Safe drilling margin, static":
		return "Margin, static"
	case "ECD below fracture and shoe test":
		return "ECD, fracture"
	case "Safe drilling margin, circulating":
		return "Margin, ECD"
	case "Cement job below fracture":
		return "Job, fracture"
	case "Cement job below fracture, hole in gauge":
		return "Job, in gauge"
	case "Cement job over pore":
		return "Job, pore"
	case "Cement above the shoe":
		return "Cement over shoe"
	case "Conductor cemented to the seabed", "Surface string cemented to the seabed":
		return "Cement to seabed"
	case "Cement above the conductor's shoe":
		return "Cement, last shoe"
	case "Top of cement below the hanger":
		return "Cement, hanger"
	case "Cement below the hanger, hole in gauge":
		return "Hanger, in gauge"
	case "Cement above the liner's top":
		return "Cement over liner"
	case "Cement above a zone to be isolated":
		return "Cement over zone"
	case "Top of cement below the last shoe, annulus left open":
		return "Annulus left open"
	case "Kick tolerance at TD over the least wanted":
		return "Kick over least"
	case "Kick tolerance at TD":
		return "Kick, by hole size"
	case "Kick tolerance over the gain that is noticed":
		return "Kick, times gain"
	}
	return text
}
