package sheet

import (
	"fmt"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// strengthKeys are how the keys of the figures begin that stand on a strength table.
func strengthKeys() []string {
	return []string{"casing.rating.", "casing.worn.", "casing.collapse.", "casing.burst.", "casing.tension.", "casing.triaxial", "casing.governing."}
}

// depthRows is at about how many even depths loads and ratings are listed, besides the marked ones.
const depthRows = 8

// strengthCard makes the strength table of a string; why says what keeps it from being made.
func (p *printer) strengthCard(i int) (c card, why string) {
	c = card{section: i, title: "Strength table: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	for _, f := range p.result.Sheet(i).Figures {
		if slices.ContainsFunc(strengthKeys(), func(key string) bool { return strings.HasPrefix(f.Key, key) }) {
			c.tables = addFigure(c.tables, f, "factor")
		}
	}
	if len(c.tables) == 0 {
		return c, "no string is set, or none that is loaded"
	}
	for _, chart := range calc.Charts(p.plan, i, model.TopicCasing) {
		if slices.ContainsFunc(strengthKeys(), func(key string) bool { return strings.HasPrefix(chart.Key+".", key) }) {
			c.tables = append(c.tables, depthTable(chart))
		}
	}
	c.notes = p.strengthNotes(i)
	return c, ""
}

// addFigure puts a figure into the table of its group: a line for each name, a column for each of its columns and kinds. A bare
// number stands in a column of the given label.
func addFigure(tables []table, f calc.Figure, number string) []table {
	if n := len(tables); n == 0 || tables[n-1].title != f.Group {
		tables = append(tables, table{title: f.Group, rowHead: "Case"})
	}
	t := &tables[len(tables)-1]
	label := f.Column
	if label == "" && f.Kind == quantity.Number {
		label = number
	}
	column := slices.IndexFunc(t.columns, func(h heading) bool { return h.label == label && h.kind == f.Kind })
	if column < 0 {
		column = len(t.columns)
		t.columns = append(t.columns, heading{label, f.Kind})
		for k := range t.rows {
			t.rows[k].values = append(t.rows[k].values, nothing())
		}
	}
	if n := len(t.rows); n == 0 || t.rows[n-1].name != f.Name || f.Column == "" {
		t.rows = append(t.rows, line{name: f.Name})
	}
	row := &t.rows[len(t.rows)-1]
	for len(row.values) < len(t.columns) {
		row.values = append(row.values, nothing())
	}
	if f.OK {
		row.values[column] = f.Value
	}
	if f.Note != "" {
		row.note = f.Note
	}
	return tables
}

// depthTable lists the curves of a chart at its marks and at even depths between.
func depthTable(chart calc.Chart) table {
	t := table{title: chart.Title, rowHead: chart.Axis}
	t.columns = []heading{{chart.Axis, chart.Along}}
	first, last, known := chart.Ends()
	if !known {
		return t
	}
	depths := []float64{first, last}
	for k := 1; k < depthRows; k++ {
		depths = append(depths, first+(last-first)*float64(k)/depthRows)
	}
	for _, m := range chart.Marks {
		if m.At > first && m.At < last {
			depths = append(depths, m.At)
		}
	}
	slices.Sort(depths)
	for _, c := range chart.Curves {
		t.columns = append(t.columns, heading{c.Name, c.Kind})
	}
	for _, depth := range slices.Compact(depths) {
		l := line{name: "at", values: []float64{depth}}
		for _, m := range chart.Marks {
			if m.At == depth {
				l.name = m.Name
			}
		}
		for _, c := range chart.Curves {
			value, ok := c.At(depth)
			if !ok {
				value = nothing()
			}
			l.values = append(l.values, value)
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// strengthNotes are the findings on the string beyond limits met, and the cautions that go with the table.
func (p *printer) strengthNotes(i int) []part {
	list := p.beyondMet("Findings on the string", i, func(f calc.Finding) bool {
		return f.HasLimit && (f.Kind == quantity.Number || strings.HasSuffix(f.Key, "_test"))
	})
	return []part{list, {title: "Cautions", remarks: []string{
		"Ratings: by formula for the pipe as entered, API TR 5C3; connections as entered. Makers' figures and what is measured on deck go before them.",
		"Loads: those named here and no others. Heat and pressure shut in behind pipe, buckling, wear while drilling and corrosion are not among them.",
		"Subsea: the sea stands outside at the wellhead; the annulus below it may not be bled off.",
		"A string is weakened by the next hole's mud: see the findings of the next section as well.",
	}}}
}
