package sheet

import (
	"cmp"
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// trialsCard sets a section's trials beside the plan; why says what keeps it from being made.
func (p *printer) trialsCard(i int) (c card, why string) {
	if len(calc.TrialsOf(p.plan, i)) == 0 {
		return card{}, "no trial of it is kept"
	}
	compared := calc.Trials(p.plan, i)
	c = card{section: i, title: "Trials: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	labels := trialLabels(&compared)
	if p.Format == Text { // names would fill its lines
		for k, name := range labels[1:] {
			labels[k+1] = fmt.Sprintf("trial %d", k+1)
			c.also = append(c.also, pair{capital(labels[k+1]), name})
		}
	}
	moving, staying := p.trialFigures(&compared, labels)
	c.tables = filled(p.trialEntries(&compared, labels), moving, staying, p.trialFindings(&compared, labels))
	c.notes = []part{p.trialList(&compared), {title: "Cautions", remarks: []string{
		"Each trial is the plan with its changes and nothing else; what would be re-planned along with them is not.",
		"A sign before a number is the difference from the plan. ! is a caution, !! a stop; none says only that the limits compared were met.",
	}}}
	return c, ""
}

// trialLabels returns the heads of the columns: the plan, and then each trial's name, with its number where another has the same.
func trialLabels(c *calc.SideBySide) []string {
	labels, times := []string{"plan"}, map[string]int{"plan": 1}
	for i := range c.Trials {
		name := cmp.Or(c.Trials[i].Name, "trial")
		if times[name]++; times[name] > 1 {
			name += fmt.Sprintf(" (%d)", c.Trials[i].Number+1)
		}
		labels = append(labels, name)
	}
	return labels
}

// trialEntries lists the entries that are changed and what they come to.
func (p *printer) trialEntries(c *calc.SideBySide, labels []string) table {
	t := table{title: "Changes", rowHead: "Entry"}
	for _, e := range c.Entries() {
		if e.Ref.Field == nil {
			t.add(e.Path, "not in the plan")
			continue
		}
		field, was := e.Ref.Field, e.Ref.Get(p.plan)
		t.add(e.Ref.Words(), "")
		if field.Type == model.QuantityField && was.IsSet() {
			t.set(labels[0], field.Kind, was.Quantity.SI)
		} else {
			t.remark(labels[0] + ": " + cmp.Or(field.ScreenText(was, p.System), "blank"))
		}
		for k, n := range e.Tried {
			if n < 0 {
				continue
			}
			switch tried := c.Trials[k].Changes[n]; {
			case tried.Fault != "":
				t.remark(labels[k+1] + ": !! " + tried.Fault)
			case field.Type == model.QuantityField && tried.To.IsSet():
				t.set(labels[k+1], field.Kind, tried.To.Quantity.SI)
				if tried.Idle != "" {
					t.remark(labels[k+1] + ": does not count, " + tried.Idle)
				}
			default:
				t.remark(labels[k+1] + ": " + cmp.Or(field.ScreenText(tried.To, p.System), "blank"))
			}
		}
	}
	return t
}

// trialFigures lists the figures that move with some trial, with the differences from the plan, and those that stay.
func (p *printer) trialFigures(c *calc.SideBySide, labels []string) (moving, staying table) {
	moving, staying = table{title: "Figures that move", rowHead: "Figure"}, table{title: "Figures that stay", rowHead: "Figure"}
	for _, f := range c.Figures() {
		t := &staying
		if f.Moves {
			t = &moving
		}
		t.add(f.Label, "")
		for k, cell := range f.Cells {
			if cell.Figure.OK && (f.Moves || k == 0) {
				t.set(labels[k], f.Kind, cell.Figure.Value)
			}
			if said := p.cellSaid(&f, k); said != "" && (f.Moves || k == 0) {
				t.remark(labels[k] + " " + said)
			}
		}
	}
	return moving, staying
}

// cellSaid says by how much a figure differs from the plan's, and what is found about it.
func (p *printer) cellSaid(f *calc.ComparedFigure, k int) string {
	was, now, said := f.Cells[0].Figure, f.Cells[k].Figure, ""
	if k > 0 && was.OK && now.OK {
		said = quantity.FormatChange(now.Value-was.Value, f.Kind, p.System.Unit(f.Kind))
	}
	if s := f.Cells[k].Severity; s > calc.OK {
		said += " " + strings.Repeat("!", int(s))
	}
	return strings.TrimSpace(said)
}

// trialFindings lists the findings that come or go with a trial, by how bad they are.
func (p *printer) trialFindings(c *calc.SideBySide, labels []string) table {
	t := table{title: "Findings that come or go: 0 ok, 1 caution, 2 stop", rowHead: "Finding"}
	for _, f := range c.Findings() {
		t.add(capital(sheetName(f.Section))+": "+f.Text, "")
		for k, s := range f.Severities {
			if k > 0 && c.Trials[k-1].Result == nil {
				continue
			}
			t.set(labels[k], quantity.Count, float64(s))
			switch was := f.Severities[0]; {
			case s > was:
				t.remark("+ with " + labels[k])
			case s < was:
				t.remark("- with " + labels[k])
			}
		}
	}
	return t
}

// trialList says what each trial is, in the words in which it is kept, and why one is not worked out.
func (p *printer) trialList(c *calc.SideBySide) part {
	list := part{title: "Trials as kept"}
	for k := range c.Trials {
		t := &c.Trials[k]
		it := item{mark: fmt.Sprint(k + 1), text: dash(t.Name)}
		if t.Note != "" {
			it.lines = append(it.lines, t.Note)
		}
		for _, change := range p.plan.Trials[t.Number].Changes {
			it.lines = append(it.lines, change.Path+": "+dash(change.Value))
		}
		if t.Why != "" {
			it.lines = append(it.lines, "Not worked out: "+t.Why)
		}
		list.items = append(list.items, it)
	}
	return list
}
