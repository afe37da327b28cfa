package calc

import (
	"math"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Severity says how bad a finding is. No severity says that something is safe: OK says that one limit was met.
type Severity uint8

// The severities.
const (
	OK Severity = iota
	Caution
	Stop
)

// String returns the word for the severity.
func (s Severity) String() string { return [...]string{"ok", "caution", "stop"}[s] }

// Finding is the result of one acceptance check, or of an entry that stops the plan from being computed.
type Finding struct {
	Section  int // index of the section; -1 for the well
	Severity Severity
	Key      string  // the rule's, or "entry"
	Text     string  // what was looked at, such as "Bit through 13 5/8 in drift"
	Where    string  // what or where limits it; may be empty
	At       float64 // depth along hole in m for findings that hold at a depth; zero otherwise
	HasLimit bool
	Kind     quantity.Kind
	Measured float64
	Limit    float64
	Least    bool    // the limit is the least allowed
	Own      bool    // the limit is the plan's own
	Margin   float64 // how far inside the limit; negative when it is not met
	Source   string
	Mend     model.Path // entry to go to
}

// judge compares a measured value with a rule's limit and records the finding. A rule that is not in the plan's rule set
// records nothing.
func (e *evaluation) judge(id model.RuleID, section int, measured float64, what, where string, at float64, mend model.Path) {
	rule := model.Rules()[id]
	if !rule.In(e.plan.Well.RuleSet) {
		return
	}
	limit, own := e.plan.Limit(rule)
	f := Finding{
		Section: section, Key: rule.Key, Text: what, Where: where, At: at, HasLimit: true, Kind: rule.Measure,
		Measured: measured, Limit: limit.SI, Least: rule.Least, Own: own, Margin: measured - limit.SI, Source: rule.Source, Mend: mend,
	}
	if !rule.Least {
		f.Margin = -f.Margin
	}
	if f.Margin < -slack(rule.Measure) {
		f.Severity = Caution
		if rule.Kind != model.Practice {
			f.Severity = Stop
		}
	}
	if own && rule.Kind == model.Law && f.Severity == OK {
		f = relaxed(f, rule)
	}
	e.result.Findings = append(e.result.Findings, f)
}

// limit returns what the plan or the rule itself sets as limit, and what asks for nothing where the rule is not in the plan's set.
func (e *evaluation) limit(id model.RuleID, nothing float64) float64 {
	rule := model.Rules()[id]
	if !rule.In(e.plan.Well.RuleSet) {
		return nothing
	}
	limit, _ := e.plan.Limit(rule)
	return limit.SI
}

// relaxed returns the finding that meets the plan's own limit as it stands to the law's: where it is short of that, a
// caution that shows the law's limit.
func relaxed(f Finding, rule model.Rule) Finding {
	margin := f.Measured - rule.Limit.SI
	if !rule.Least {
		margin = -margin
	}
	if margin >= -slack(rule.Measure) {
		return f
	}
	f.Text += relaxedText
	f.Severity, f.Limit, f.Margin, f.Own = Caution, rule.Limit.SI, margin, false
	return f
}

// relaxedText ends the text of a finding that meets the plan's own limit and not the law's.
const relaxedText = ", met by the plan's own limit only"

// judgeMargin is judge for what holds at a true vertical depth in the open hole of a section. What has no value, such as
// the distance from a limit that is given elsewhere in the hole only, is not judged.
func (e *evaluation) judgeMargin(id model.RuleID, section int, measured float64, what string, tvd float64, mend model.Path) {
	if math.IsNaN(measured) {
		return
	}
	md, ok := e.path.MDAtTVD(tvd)
	if !ok {
		md = e.sections[section].td
	}
	e.judge(id, section, measured, what, "", md, mend)
}

// slack is how far a limit may be missed by the rounding of floating-point arithmetic, far below what anyone enters.
func slack(kind quantity.Kind) float64 {
	switch kind {
	case quantity.Length, quantity.Diameter:
		return 1e-9
	case quantity.EMW, quantity.Density:
		return 1e-6
	case quantity.Pressure:
		return 1e-3
	}
	return 1e-9
}

// fault records an entry without which part of the plan cannot be computed, once. It belongs to the section that the
// entry stands in, wherever it was missed.
func (e *evaluation) fault(g gap) {
	e.note(e.sectionOf(g.path), Stop, g)
}

// sectionOf returns the section that an entry or a list stands in; -1 for the well's.
func (e *evaluation) sectionOf(path model.Path) int {
	if !strings.HasPrefix(string(path), "section[") {
		return -1
	}
	if ref, ok := model.Find(e.plan, path); ok {
		return ref.Place.Outer
	}
	if _, at, ok := model.FindList(e.plan, path); ok {
		return at.Outer
	}
	return -1
}

// note records what is wrong with an entry, once.
func (e *evaluation) note(section int, severity Severity, g gap) {
	for i := range e.result.Findings {
		if f := &e.result.Findings[i]; f.Key == faultKey && f.Mend == g.path && f.Text == g.why && f.Section == section {
			return
		}
	}
	e.result.Findings = append(e.result.Findings, Finding{
		Section: section, Severity: severity, Key: faultKey, Text: g.why, Source: "needed for the figures", Mend: g.path,
	})
}

// faultKey is the key of findings about entries that are missing or impossible.
const faultKey = "entry"

// Worst returns the highest severity among the findings of a section, or of the whole plan for section -1, and how many
// findings there are of each severity.
func (r *Result) Worst(section int) (worst Severity, count [3]int) {
	for _, f := range r.Findings {
		if section >= 0 && f.Section != section {
			continue
		}
		count[f.Severity]++
		worst = max(worst, f.Severity)
	}
	return worst, count
}
