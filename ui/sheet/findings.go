package sheet

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Check prints the findings as text, the worst first, each with what was measured, the limit, the rule's source and the
// entry to go to. With a section chosen they are that section's and the well's. The format in o does not count.
func Check(w io.Writer, plan *model.Plan, result *calc.Result, o Options) error {
	p, err := newPrinter(plan, result, o)
	if err != nil {
		return err
	}
	findings := p.findings(func(section int) bool { return o.Section < 0 || section < 0 || section == o.Section })
	list := part{title: "Findings: " + countText(count(findings))}
	for _, f := range findings {
		list.items = append(list.items, p.findingItem(f, f.Severity.String()+", "+sheetName(f.Section)))
	}
	list.remarks = noFindings(len(findings))
	s := page{title: "Check of the plan", parts: []part{list}, foot: standing}
	s.head = append([]pair{
		{"Well", p.wellName()}, {"Revision", dash(plan.Well.Revision)}, {"Rule set", dash(plan.Well.RuleSet)},
	}, p.origin(p.shortHash())...)
	s.each(p.plain)
	var t textSheet
	t.page(s)
	_, err = io.WriteString(w, t.String())
	return err
}

// findings returns the findings of the sheets that are wanted, the worst first, then by section.
func (p *printer) findings(wanted func(section int) bool) []calc.Finding {
	var list []calc.Finding
	for _, f := range p.result.Findings {
		if wanted(f.Section) {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b calc.Finding) int {
		if a.Severity != b.Severity {
			return int(b.Severity) - int(a.Severity)
		}
		return a.Section - b.Section
	})
	return list
}

// findingsPart returns the findings of one sheet: those beyond ok in full, the others by name.
func (p *printer) findingsPart(section int) part {
	findings := p.findings(func(s int) bool { return s == section })
	list := part{title: "Findings: " + countText(count(findings))}
	times := map[string]int{}
	for _, f := range findings {
		times[f.Text]++
	}
	var met []string
	for _, f := range findings {
		name := f.Text
		if times[name] > 1 && f.HasLimit {
			name += " (" + p.boundText(f) + ")"
		}
		if f.Severity != calc.OK {
			list.items = append(list.items, p.findingItem(f, f.Severity.String()))
		} else if !slices.Contains(met, name) {
			met = append(met, name)
		}
	}
	list.remarks = noFindings(len(findings))
	if len(met) > 0 {
		list.remarks = append(list.remarks, "Limits met: "+strings.Join(met, "; ")+".")
	}
	if section >= 0 {
		well := count(p.findings(func(s int) bool { return s < 0 }))
		if well[calc.Stop]+well[calc.Caution] > 0 {
			list.remarks = append(list.remarks, "Of the well itself, on the well sheet: "+countText(well)+".")
		}
	}
	return list
}

// beyondMet returns the findings of a section beyond limits met, of those that belong on a sheet.
func (p *printer) beyondMet(title string, section int, belongs func(calc.Finding) bool) part {
	list := part{title: title}
	for _, f := range p.findings(func(s int) bool { return s == section }) {
		if f.Severity != calc.OK && belongs(f) {
			list.items = append(list.items, p.findingItem(f, f.Severity.String()))
		}
	}
	if len(list.items) == 0 {
		list.remarks = []string{"None beyond limits met. A limit met is that limit met, and no more."}
	}
	return list
}

// byRules tells the findings of some rules.
func byRules(rules ...model.RuleID) func(calc.Finding) bool {
	return func(f calc.Finding) bool {
		return slices.ContainsFunc(rules, func(id model.RuleID) bool { return model.Rules()[id].Key == f.Key })
	}
}

// entersIn tells the findings whose entry stands on a topic's page.
func (p *printer) entersIn(topic model.Topic) func(calc.Finding) bool {
	return func(f calc.Finding) bool {
		ref, ok := model.Find(p.plan, f.Mend)
		return ok && ref.Field.Topic == topic
	}
}

// either tells the findings that one of two tells.
func either(one, other func(calc.Finding) bool) func(calc.Finding) bool {
	return func(f calc.Finding) bool { return one(f) || other(f) }
}

// noFindings is the remark for a sheet with nothing to compare.
func noFindings(n int) []string {
	if n > 0 {
		return nil
	}
	return []string{"No limit was compared."}
}

// overview counts the findings of each section.
func (p *printer) overview() part {
	table := part{title: "Findings by section", rowHead: "Section"}
	for i, s := range p.plan.Sections {
		n := count(p.findings(func(k int) bool { return k == i }))
		r := row{name: fmt.Sprintf("Section %d", i+1)}
		for _, severity := range severities() {
			r.cells = append(r.cells, cell{label: severity.String(), value: strconv.Itoa(n[severity]), number: true})
		}
		r.cells = append(r.cells, cell{label: "name", value: dash(s.Name)})
		table.rows = append(table.rows, r)
	}
	return table
}

// severities lists the severities, the worst first.
func severities() []calc.Severity { return []calc.Severity{calc.Stop, calc.Caution, calc.OK} }

func count(findings []calc.Finding) map[calc.Severity]int {
	n := map[calc.Severity]int{}
	for _, f := range findings {
		n[f.Severity]++
	}
	return n
}

func countText(n map[calc.Severity]int) string {
	var words []string
	for _, s := range severities() {
		words = append(words, fmt.Sprintf("%s %d", s, n[s]))
	}
	return strings.Join(words, ", ")
}

// findingItem puts a finding in words.
func (p *printer) findingItem(f calc.Finding, mark string) item {
	it := item{mark: mark, text: f.Text}
	if f.HasLimit {
		it.lines = append(it.lines, p.limitText(f))
	}
	var where []string
	if f.Where != "" {
		where = append(where, f.Where)
	}
	if f.At > 0 {
		where = append(where, "at depth "+quantity.FormatUnit(f.At, quantity.Length, p.System.Unit(quantity.Length)))
	}
	if len(where) > 0 {
		it.lines = append(it.lines, "Where: "+strings.Join(where, ", "))
	}
	it.lines = append(it.lines, "Rule: "+dash(f.Source))
	if f.Mend != "" {
		it.lines = append(it.lines, "Go to: "+fieldText(p.plan, f.Mend))
	}
	return it
}

func (p *printer) limitText(f calc.Finding) string {
	unit := p.System.Unit(f.Kind)
	text := "Measured " + quantity.FormatUnit(f.Measured, f.Kind, unit) + ", limit " + p.boundText(f)
	if f.Own {
		text += " (the plan's own limit)"
	}
	return text + ", margin " + marginText(f, unit)
}

// boundText returns a limit with the way round it holds.
func (p *printer) boundText(f calc.Finding) string {
	bound := "at most "
	if f.Least {
		bound = "at least "
	}
	return bound + quantity.FormatUnit(f.Limit, f.Kind, p.System.Unit(f.Kind))
}

// marginText returns how far inside the limit a finding is, with its sign and unit. A limit that is missed by less than
// the digits shown is still said to be missed.
func marginText(f calc.Finding, unit quantity.Unit) string {
	change := quantity.FormatChange(f.Margin, f.Kind, unit)
	switch {
	case change == "" && f.Severity != calc.OK && f.Margin < 0:
		return "negative, less than the digits shown"
	case change == "":
		change = "0"
	case change == "-" || math.IsNaN(f.Margin):
		return "-"
	}
	return strings.TrimSpace(change + " " + unit.Symbol())
}
