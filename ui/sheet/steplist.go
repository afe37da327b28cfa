package sheet

import (
	"cmp"
	"fmt"
	"math"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// stepListCard makes the step list of a section: a row for each operation, then each with what the crew needs for it. why says what
// keeps it from being made.
func (p *printer) stepListCard(i int) (c card, why string) {
	steps := p.result.Steps[i]
	if len(steps) == 0 {
		return card{}, p.lacking(i, "hole.td", "it has no operations")
	}
	c = card{section: i, title: "Step list: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	order := p.stepOrder(i)
	c.tables = append(c.tables, order)
	c.laid = append(c.laid, p.tablePart(&order), part{title: "How to read it", remarks: stepRemarks()})
	for k := range steps {
		c.laid = append(c.laid, p.stepPart(i, k))
		if t := numbersTable(k, &steps[k]); len(t.rows) > 0 {
			c.tables = append(c.tables, t)
		}
	}
	c.laid = append(c.laid, part{title: "Cautions", remarks: stepCautions()}, signed())
	return c, ""
}

// stepRemarks says what the columns are and what they leave out.
func stepRemarks() []string {
	return []string{
		"likely, low, high: hours of work, without weather. begins: days from the beginning of the well, weather counted. hole, end: how deep the hole is and the end of what hangs in it when the step is done, along hole from the rotary. A box is ticked, initialled and timed by hand when its step is done.",
	}
}

// stepCautions is what goes wrong when a list of operations is taken for a procedure.
func stepCautions() []string {
	return []string{
		"Order of work, who does what, stop points and contingencies: common practice, from memory. The operator's and the contractor's approved procedures rule, and so do the makers' for their tools.",
		"Numbers: for the plan as entered. What is measured on the rig goes before them; two people reproduce what is pumped, pressed or landed.",
		"Anybody may stop the work.",
	}
}

// stepOrder lists the operations of a section, a line each.
func (p *printer) stepOrder(i int) table {
	t := table{title: "Operations in order", rowHead: "operation", tall: true, byHand: []string{"done", "initials"},
		columns: []heading{{"likely", quantity.Hours}, {"low", quantity.Hours}, {"high", quantity.Hours}, {"begins", quantity.Days}, {"hole", quantity.Length}, {"end", quantity.Length}}}
	for k := range p.result.Steps[i] {
		s := &p.result.Steps[i][k]
		l := line{name: stepName(k, s), values: []float64{s.Likely, s.Low, s.High, nothing(), s.HoleTo, s.To}}
		if !s.Timed || s.Struck {
			l.values[0], l.values[1], l.values[2] = nothing(), nothing(), nothing()
		}
		if row := p.planned(i, s.Key); row != nil {
			l.values[3] = row.From
			l.of = p.dayOf(row.From)
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// stepName numbers an operation as its list does, and says when it is struck.
func stepName(k int, s *calc.Step) string {
	if s.Struck {
		return fmt.Sprintf("%d struck: %s", k+1, s.Name)
	}
	return fmt.Sprintf("%d %s", k+1, s.Name)
}

// planned returns an operation of a section on the well's clock; nil where it is struck or not there.
func (p *printer) planned(i int, key string) *calc.Planned {
	s := p.scheduled()
	for k := range s.Rows {
		if row := &s.Rows[k]; row.Section == i && row.Step.Key == key {
			return row
		}
	}
	return nil
}

// dayOf returns the day at so many s from the beginning of the well; empty where the well has no beginning or the time is not known.
func (p *printer) dayOf(at float64) string {
	s := p.scheduled()
	if !s.Dated || math.IsNaN(at) {
		return ""
	}
	return s.Begins.After(at).Day().String()
}

// stepPart sets one operation: what is done, by whom, when, with which numbers, when somebody is called, and what is done when it does
// not go as planned; then the box that is ticked by hand.
func (p *printer) stepPart(i, k int) part {
	s := &p.result.Steps[i][k]
	set := part{title: stepName(k, s), rowHead: "Number"}
	say := func(label, text string) {
		if text != "" {
			set.pairs = append(set.pairs, pair{label, text})
		}
	}
	say("Struck", map[bool]string{true: "not done, by the plan"}[s.Struck])
	say("Do", s.Do)
	say("Who", s.Who)
	say("Takes", p.stepTime(i, s))
	say("Depth", p.stepDepth(s))
	say("Note", s.Note)
	for _, n := range s.Numbers {
		r := row{name: n.Name, cells: []cell{{value: p.numberText(n), number: true}}}
		if !n.OK {
			r.cells = append(r.cells, cell{label: "blank", value: cmp.Or(n.Why, "not known")})
		}
		set.rows = append(set.rows, r)
	}
	for _, stop := range s.Stops {
		set.items = append(set.items, item{mark: "Stop", text: stop})
	}
	for _, other := range s.Contingency {
		set.items = append(set.items, item{mark: "Contingency", text: other})
	}
	if !s.Struck {
		set.remarks = append(set.remarks, "[ ] done   initials ________   day and hour ____________________")
	}
	return set
}

// numberText returns a number of a step with its unit; a dash when it is blank.
func (p *printer) numberText(n calc.StepNumber) string {
	if !n.OK {
		return "-"
	}
	return quantity.FormatUnit(n.Value, n.Kind, p.System.Unit(n.Kind))
}

// stepTime says how long an operation takes, and when it begins where the well has a beginning.
func (p *printer) stepTime(i int, s *calc.Step) string {
	if s.Struck {
		return ""
	}
	if !s.Timed {
		return "- (" + p.toMend(cmp.Or(s.Why, "not known"), model.Path(s.Mend)) + ")"
	}
	took := func(t float64) string { return quantity.FormatUnit(t, quantity.Hours, p.System.Unit(quantity.Hours)) }
	text := "likely " + took(s.Likely) + ", low " + took(s.Low) + ", high " + took(s.High)
	if row := p.planned(i, s.Key); row != nil && p.scheduled().Dated && !math.IsNaN(row.From) {
		text += "; begins " + p.scheduled().Begins.After(row.From).String()
	}
	return text
}

// stepDepth says where the end of what hangs in the hole, and the hole, are when the operation is done.
func (p *printer) stepDepth(s *calc.Step) string {
	deep := func(m float64) string { return quantity.FormatUnit(m, quantity.Length, p.System.Unit(quantity.Length)) }
	text := "string end at " + deep(s.To)
	switch {
	case s.To == 0 && s.From == 0:
		text = "nothing in the hole"
	case s.Kind == calc.ToolOut:
		text = "running string out, what was run stays"
	case s.To == 0:
		text = "string end from " + deep(s.From) + " to the rotary"
	case s.From != s.To:
		text = "string end from " + deep(s.From) + " to " + deep(s.To)
	}
	if !s.Flat() {
		return text + "; hole from " + deep(s.HoleFrom) + " to " + deep(s.HoleTo)
	}
	return text + "; hole at " + deep(s.HoleTo)
}

// numbersTable lists the numbers of an operation for a program.
func numbersTable(k int, s *calc.Step) table {
	t := table{title: stepName(k, s), rowHead: "Number"}
	for _, n := range s.Numbers {
		t.add(n.Name, "")
		if n.OK {
			t.set("", n.Kind, n.Value)
		} else {
			t.remark("blank: " + cmp.Or(n.Why, "not known"))
		}
	}
	return t
}
