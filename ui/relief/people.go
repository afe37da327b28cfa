package relief

import (
	"cmp"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
)

// abnormal returns what the relief would not expect, as entered.
func (p page) abnormal() Row {
	r := Row{Label: "Abnormal"}
	for k := range p.plan.Status.Abnormal {
		r.Items = append(r.Items, Item{p.plan.Status.Abnormal[k].Text, calc.Caution})
	}
	if len(r.Items) == 0 {
		r.Items = items([]string{"nothing entered"})
	}
	return r
}

// signed returns who relieved whom, and what he worked out.
func (p page) signed() Row {
	r := p.row(rowLayout{label: "Relief", says: relieved()})
	if _, ok := p.plan.InWork(); !ok {
		return r
	}
	h, _, ok := p.plan.LastHandover()
	if !ok {
		return r
	}
	who := Item{Text: cmp.Or(h.From, "-") + " to " + cmp.Or(h.To, "-") + ", " + cmp.Or(h.Time, "no time")}
	r.Items = append([]Item{who}, r.Items...)
	if h.Remarks != "" {
		r.Items = append(r.Items, Item{Text: h.Remarks})
	}
	return r
}

// Ahead is how far ahead a relief is told what comes.
const Ahead = 24 * 3600 // s

// ahead returns what comes in the next 24 h, with its stop points.
func (p page) ahead() Row {
	r := Row{Label: "Next 24 h"}
	list, why := p.result.StepsAhead(p.plan, Ahead)
	if why != "" {
		r.Items = items([]string{"blank: " + why})
	}
	for _, a := range list {
		text := a.Step.Name
		if a.Timed {
			text += " till " + quantity.FormatUnit(a.To, quantity.Hours, p.system.Unit(quantity.Hours))
		} else {
			text += ", blank: " + a.Step.Why
		}
		if len(a.Step.Stops) > 0 {
			text += ", stop: " + strings.Join(a.Step.Stops, " ")
		}
		r.Items = append(r.Items, Item{Text: text})
	}
	return r
}
