package sheet

import (
	"slices"
	"strings"

	"borewalk/model"
)

// operations lists the steps with who does them, when somebody is called and what else may be done, and their time.
func (c *chapter) operations() {
	if len(c.result.Steps[c.section]) == 0 {
		return
	}
	order := c.stepOrder(c.section)
	order.byHand = nil
	c.table("in order", order)
	c.figures("time", "steps.hours")
	c.table("ends, days from the beginning of the well", c.endsTable(c.scheduled(), c.section))
	c.chart(model.TopicTime, "time.depth", windowHeight, windowRows)
	var set part
	for k := range c.result.Steps[c.section] {
		s := &c.result.Steps[c.section][k]
		it := item{mark: stepName(k, s), text: dash(s.Who)}
		for _, stop := range s.Stops {
			it.lines = append(it.lines, "Stop: "+stop)
		}
		for _, other := range s.Contingency {
			it.lines = append(it.lines, "Contingency: "+other)
		}
		if s.Note != "" {
			it.lines = append(it.lines, "Note: "+s.Note)
		}
		set.items = append(set.items, it)
	}
	set.remarks = []string{"The step list has each operation with its numbers and a box to tick. " + stepCautions()[0]}
	c.part("responsibility, stop points, contingency", set)
}

// approvals is where the chapter is signed, and what the plan's log has of its revisions.
func (c *chapter) approvals() {
	sign := func(who string) row {
		return row{name: who, cells: []cell{{label: "name", value: strings.Repeat("_", 18)}, {label: "signed", value: strings.Repeat("_", 14)}, {label: "day", value: strings.Repeat("_", 10)}}}
	}
	c.part("approvals", part{rowHead: "As", rows: []row{sign("Written"), sign("Checked, by hand"), sign("Drilling supervisor"), sign("Toolpusher"), sign("Approved")}})
	marks := part{rowHead: "Mark"}
	for k := range c.plan.Log {
		if l := &c.plan.Log[k]; l.What == model.LogMark {
			marks.rows = append(marks.rows, row{name: dash(l.New), cells: []cell{{label: "when", value: dash(l.When)}, {label: "who", value: dash(l.Who)}, {label: "why", value: dash(l.Why)}}})
		}
	}
	slices.Reverse(marks.rows)
	if len(marks.rows) == 0 {
		marks.pairs = []pair{{"Revision " + dash(c.plan.Well.Revision), dash(c.plan.Well.Date)}}
		marks.remarks = []string{"The plan's log has no mark."}
	}
	c.part("revisions, the last first", marks)
}
