package sheet

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// runColumn is a column of a running list.
type runColumn struct {
	heading
	value func(*calc.RunRow) float64
	known bool // there is something to show in this list
}

func runColumns(list *calc.RunList) []runColumn {
	weighed := list.Unweighed == ""
	return []runColumn{
		{heading{"length", quantity.TallyLength}, func(r *calc.RunRow) float64 { return r.Length }, true},
		{heading{"total", quantity.TallyLength}, func(r *calc.RunRow) float64 { return r.Cumulative }, true},
		{heading{"top at", quantity.TallyLength}, func(r *calc.RunRow) float64 { return r.Top }, true},
		{heading{"shoe at", quantity.TallyLength}, func(r *calc.RunRow) float64 { return r.Shoe }, true},
		{heading{"inside", quantity.Volume}, func(r *calc.RunRow) float64 { return r.Inside }, true},
		{heading{"out", quantity.Volume}, func(r *calc.RunRow) float64 { return r.Displaced }, true},
		{heading{"hook", quantity.Force}, func(r *calc.RunRow) float64 { return r.HookLoad }, weighed},
		{heading{"unfilled", quantity.Force}, func(r *calc.RunRow) float64 { return r.Unfilled }, weighed && list.FillEvery > 0},
	}
}

// runningCard makes the running list of a string; why says what keeps it from being made.
func (p *printer) runningCard(i int) (c card, why string) {
	list, err := calc.RunningList(p.plan, i)
	if err != nil {
		return card{}, err.Error()
	}
	c = card{section: i, title: "Running list: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = []table{runEnds(&list), p.runPieces(&list)}
	printed := map[quantity.Kind]bool{}
	for _, column := range runColumns(&list) {
		printed[column.kind] = printed[column.kind] || column.known
	}
	c.notes = []part{{title: "How to read it", remarks: runRemarks(&list)}, {title: "Cautions", remarks: p.cautionsOn(i, printed)}}
	return c, ""
}

// runEnds lists where a string ends and what is left of its joints.
func runEnds(list *calc.RunList) table {
	t := table{title: "The string", rowHead: "What", columns: []heading{{"", quantity.TallyLength}, {"count", quantity.Count}}}
	length := func(name string, m float64) {
		t.rows = append(t.rows, line{name: name, values: []float64{m, nothing()}})
	}
	length("Lands at", list.Top)
	length("Shoe wanted", list.Wanted)
	length("Shoe as tallied", list.Shoe)
	length("Off the wanted", list.Shoe-list.Wanted)
	length("Off bottom", list.Hole-list.Shoe)
	count := func(name string, n int, note string) {
		t.rows = append(t.rows, line{name: name, values: []float64{nothing(), float64(n)}, note: note})
	}
	joints := "at the average length"
	if list.Measured {
		joints = "measured"
	}
	count("Joints run", list.Joints, joints)
	if list.Counted {
		count("Joints left on deck", list.Left, "")
	}
	return t
}

// runPieces lists every piece from the shoe up.
func (p *printer) runPieces(list *calc.RunList) table {
	t := table{title: "Pieces, shoe up", rowHead: "piece", tall: true}
	columns := runColumns(list)
	for _, c := range columns {
		t.columns = append(t.columns, c.heading)
	}
	for k := range list.Rows {
		r := &list.Rows[k]
		l := line{name: strings.TrimSpace(r.Piece + " " + r.Number), of: p.pipeOf(list, r)}
		for _, c := range columns {
			value := nothing()
			if c.known {
				value = c.value(r)
			}
			l.values = append(l.values, value)
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// pipeOf names the pipe that a piece is of: the casing's size, weight and grade, or the landing string.
func (p *printer) pipeOf(list *calc.RunList, r *calc.RunRow) string {
	if r.Part == 0 {
		return "landing string"
	}
	part := &p.plan.Sections[list.Section].Casing[r.Part-1]
	return strings.TrimSpace(quantity.FormatUnit(part.Size.SI, quantity.Diameter, p.System.Unit(quantity.Diameter)) + " " +
		quantity.FormatUnit(part.Weight.SI, quantity.LinearMass, p.System.Unit(quantity.LinearMass)) + " " + model.Clean(part.Grade))
}

// runRemarks says what the columns are and what they leave out.
func runRemarks(list *calc.RunList) []string {
	remarks := []string{
		"From the shoe up. Depths are along hole from the rotary. top at: upper end of the piece when the string has landed. " +
			"shoe at: depth of the shoe with the top of the piece at the rotary. inside, out: volume inside the string and displaced by it so far; couplings count as plain pipe. " +
			"The last pieces land the shoe and go no deeper: what of them stands above the rotary is the stick-up, with a minus under top at.",
	}
	if list.Holds {
		remarks = append(remarks, "The float holds: the string displaces its whole outside and is filled from the top.")
	} else {
		remarks = append(remarks, "The float fills by itself: the string displaces its steel.")
	}
	if list.Unweighed != "" {
		remarks = append(remarks, "No hook loads: "+list.Unweighed+".")
	} else {
		remarks = append(remarks, "hook: load with blocks and top drive, string full of what surrounds it, in its fluid, without friction.")
	}
	if list.FillEvery > 0 {
		remarks = append(remarks, fmt.Sprintf("unfilled: the same with air in what was run since the last filling, every %d joints; full before the landing string.", list.FillEvery))
	}
	if list.Unspaced != "" {
		remarks = append(remarks, "The landing string is not in the list: "+list.Unspaced+".")
	}
	return remarks
}
