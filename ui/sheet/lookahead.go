package sheet

import (
	"fmt"
	"math"

	"borewalk/calc"
	"borewalk/model/quantity"
)

// lookAheadCard makes the look-ahead of a section: what is to be done, when, and before what somebody is called. why says what keeps
// it from being made.
func (p *printer) lookAheadCard(i int) (c card, why string) {
	s := p.scheduled()
	c = card{section: i, tallest: true, title: "Look-ahead: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	t := table{title: "To be done, by likely durations", rowHead: "operation", tall: true,
		columns: []heading{{"begins", quantity.Days}, {"from now", quantity.Hours}, {"takes", quantity.Hours}, {"bit", quantity.Length}, {"hole", quantity.Length}},
		byHand:  []string{"began", "ended"}}
	stops := part{title: "Stop points"}
	now := s.Now()
	for k := s.Next; k < len(s.Rows); k++ {
		row := &s.Rows[k]
		if row.Section != i {
			continue
		}
		l := line{name: row.Step.Name, values: []float64{row.From, row.From - now, row.To - row.From, row.Step.To, row.Step.HoleTo}}
		when := ""
		if s.Dated && !math.IsNaN(row.From) {
			at := s.Begins.After(row.From)
			l.of = at.Day().String()
			when = at.String() + "  "
		}
		t.rows = append(t.rows, l)
		for _, stop := range row.Step.Stops {
			stops.remarks = append(stops.remarks, when+row.Step.Name+": "+stop)
		}
	}
	switch {
	case len(t.rows) > 0:
	case s.Why != "" && s.Next == 0:
		return card{}, p.toMend(s.Why, s.Mend)
	default:
		return card{}, "nothing of it is still to be done"
	}
	c.tables = append(c.tables, t, p.endsTable(s, i))
	c.notes = []part{stops}
	if chart, ok := s.Chart(); ok {
		c.notes = append(c.notes, p.chartPart(chart, windowHeight, windowRows))
	}
	c.notes = append(c.notes, part{title: "How to read it", remarks: []string{
		"begins: days from the beginning of the well. from now: from the first step that is not done. takes: likely, the share of weather counted. began and ended are filled in by hand and entered as steps done.",
		"P10 and P90: one in ten is earlier, one in ten later, by the low and high durations drawn each by itself and the weather once for the well. The likely durations add up to less than the middle of that band where work can be late by more than it can be early.",
	}})
	return c, ""
}

// scheduled returns the schedule of the plan, worked out once.
func (p *printer) scheduled() *calc.Schedule {
	if p.schedule == nil {
		s := calc.ScheduleOf(p.plan)
		p.schedule = &s
	}
	return p.schedule
}

// endsTable lists when the section and the well end.
func (p *printer) endsTable(s *calc.Schedule, i int) table {
	t := table{title: "Ends, days from the beginning of the well", rowHead: "What"}
	for _, of := range []struct {
		name    string
		section int
	}{{"Section " + fmt.Sprint(i+1), i}, {"Well", len(p.plan.Sections) - 1}} {
		row, ok := s.Ends(of.section)
		if !ok {
			continue
		}
		t.add(of.name, "")
		if s.Dated && !math.IsNaN(row.To) {
			t.remark("likely " + s.Begins.After(row.To).String())
		}
		t.set("likely", quantity.Days, row.To)
		t.set("P10", quantity.Days, row.P10)
		t.set("P50", quantity.Days, row.P50)
		t.set("P90", quantity.Days, row.P90)
	}
	return t
}
