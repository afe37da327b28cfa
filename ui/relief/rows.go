// Package relief puts a handover in rows of words: what a relief reads first, in the order in which he needs it. The screen and the
// printed page show the same rows.
package relief

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Item is one statement of a row, with how bad what is found about it is.
type Item struct {
	Text     string
	Severity calc.Severity
}

// Row is what is said under one label. With Each every item has a line to itself. Least is how many lines it has before others are cut
// for it.
type Row struct {
	Label string
	Items []Item
	Each  bool
	Least int
}

// page is what the rows are made from.
type page struct {
	plan   *model.Plan
	result *calc.Result
	system quantity.System
}

// Rows returns the rows of a handover. Changes are what has changed in the plan since the last one, a line each; without any the
// row is left out.
func Rows(plan *model.Plan, result *calc.Result, system quantity.System, changes []string) []Row {
	p := page{plan, result, system}
	rows := []Row{p.first(), p.abnormal()}
	for _, r := range layout() {
		rows = append(rows, p.row(r))
	}
	rows = append(rows, p.signed())
	if len(changes) > 0 {
		rows = append(rows, Row{Label: "Changes", Items: items(changes)})
	}
	rows = append(rows, p.ahead())
	sayOnce(rows)
	return rows
}

// sayOnce has a row that is blank for the reason of one above it refer to that one.
func sayOnce(rows []Row) {
	first := map[string]string{}
	for i := range rows {
		if len(rows[i].Items) != 1 || !strings.HasPrefix(rows[i].Items[0].Text, "blank: ") {
			continue
		}
		if label, said := first[rows[i].Items[0].Text]; said {
			rows[i].Items = items([]string{"blank, as under " + label})
		} else {
			first[rows[i].Items[0].Text] = rows[i].Label
		}
	}
}

// items returns texts as items.
func items(texts []string) (list []Item) {
	for _, text := range texts {
		list = append(list, Item{Text: text})
	}
	return list
}

// mostFirst is how many findings stand before everything else.
const mostFirst = 3

// first returns what matters most: the worst findings at the present depth, those first on which most hangs.
func (p page) first() Row {
	r := Row{Label: "First", Each: true, Least: mostFirst}
	list := p.beyondMet()
	for k, f := range list[:min(mostFirst, len(list))] {
		text := p.finding(f)
		if more := len(list) - mostFirst; k == mostFirst-1 && more > 0 {
			text = "and " + strconv.Itoa(more) + " more; " + text
		}
		r.Items = append(r.Items, Item{text, f.Severity})
	}
	if len(r.Items) == 0 {
		r.Items = []Item{{Text: "no finding beyond ok at this depth; that says only that the limits compared were met"}}
	}
	return r
}

// Found returns all findings beyond ok at the present depth and about the relief, in the order of the first row.
func Found(plan *model.Plan, result *calc.Result, system quantity.System) (list []Item) {
	p := page{plan, result, system}
	for _, f := range p.beyondMet() {
		list = append(list, Item{p.finding(f), f.Severity})
	}
	return list
}

// beyondMet returns the findings beyond ok, the worst first, then those on which most hangs.
func (p page) beyondMet() (list []calc.Finding) {
	for _, f := range p.findings() {
		if f.Severity > calc.OK {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b calc.Finding) int {
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(weight(a), weight(b)))
	})
	return list
}

// weight orders findings of one severity: what bears on the well first, then on what hangs and falls due, then the rest.
func weight(f calc.Finding) int {
	switch f.Kind {
	case quantity.EMW, quantity.Pressure, quantity.Density, quantity.Volume:
		return 0
	case quantity.Count, quantity.Force, quantity.Velocity:
		return 1
	}
	return 2
}

// findings returns what is found about the well as it stands and about the relief.
func (p page) findings() (list []calc.Finding) {
	section, ok := p.plan.InWork()
	if !ok {
		return nil
	}
	for _, f := range p.result.Present {
		if f.Section == section {
			list = append(list, f)
		}
	}
	for _, f := range p.result.Findings {
		if f.Section == section && strings.HasPrefix(string(f.Mend), "handover[") {
			list = append(list, f)
		}
	}
	return list
}

// finding puts a finding in words.
func (p page) finding(f calc.Finding) string {
	text := f.Text
	if !f.HasLimit {
		return text
	}
	bound := ", least "
	if !f.Least {
		bound = ", most "
	}
	unit := p.system.Unit(f.Kind)
	return text + " " + quantity.FormatUnit(f.Measured, f.Kind, unit) + bound + quantity.Format(f.Limit, f.Kind, unit)
}

// worst returns how bad the worst is that some rules find.
func (p page) worst(rules []model.RuleID) (worst calc.Severity) {
	for _, f := range p.findings() {
		for _, id := range rules {
			if f.Key == model.Rules()[id].Key {
				worst = max(worst, f.Severity)
			}
		}
	}
	return worst
}

// row makes a row of figures and of entries of the status; what is blank is named at its end with the reason.
func (p page) row(l rowLayout) Row {
	r := Row{Label: l.label, Least: l.least}
	var gone blanks
	for _, s := range l.says {
		if text := p.said(s.text, &gone); text != "" {
			r.Items = append(r.Items, Item{text, p.worst(s.rules)})
		}
	}
	r.Items = append(r.Items, gone.items()...)
	if len(r.Items) == 0 {
		r.Items = []Item{{Text: p.nothing()}}
	}
	return r
}

// nothing says why a row is empty.
func (p page) nothing() string {
	for _, key := range []string{"handover.section", "handover.hole", "handover.bit"} {
		if f, ok := p.result.Well.Find(key); ok && !f.OK {
			return "blank: " + f.Why
		}
	}
	i, ok := p.plan.InWork()
	if !ok {
		return "blank: no section is in work: enter its number on the handover page"
	}
	if p.plan.Sections[i].Returns == model.ToSeabed {
		return "returns go to the seabed: nothing can be shut in"
	}
	return "blank: no new hole is drilled yet"
}

// blanks are names of what is blank, by the reason.
type blanks []blank

type blank struct {
	why   string
	names []string
}

func (b *blanks) add(name, why string) {
	for k := range *b {
		if one := &(*b)[k]; one.why == why {
			if !slices.Contains(one.names, name) {
				one.names = append(one.names, name)
			}
			return
		}
	}
	*b = append(*b, blank{why, []string{name}})
}

func (b blanks) items() (list []Item) {
	for _, one := range b {
		list = append(list, Item{Text: one.why + ": " + strings.Join(one.names, ", ")})
	}
	return list
}
