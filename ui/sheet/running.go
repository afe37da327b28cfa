package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// runColumn is a column of numbers in a running list.
type runColumn struct {
	key, title string
	kind       quantity.Kind
	value      func(*calc.RunRow) float64
	blank      bool // there is nothing to show in this list
}

// runColumns returns the columns of a running list, those that it has nothing for marked as blank.
func runColumns(list *calc.RunList) []runColumn {
	unweighed := list.Unweighed != ""
	return []runColumn{
		{"length", "length", quantity.TallyLength, func(r *calc.RunRow) float64 { return r.Length }, false},
		{"cumulative", "total", quantity.TallyLength, func(r *calc.RunRow) float64 { return r.Cumulative }, false},
		{"top", "top at", quantity.TallyLength, func(r *calc.RunRow) float64 { return r.Top }, false},
		{"shoe", "shoe at", quantity.TallyLength, func(r *calc.RunRow) float64 { return r.Shoe }, false},
		{"inside", "inside", quantity.Volume, func(r *calc.RunRow) float64 { return r.Inside }, false},
		{"displaced", "out", quantity.Volume, func(r *calc.RunRow) float64 { return r.Displaced }, false},
		{"hook_load", "hook", quantity.Force, func(r *calc.RunRow) float64 { return r.HookLoad }, unweighed},
		{"unfilled", "unfilled", quantity.Force, func(r *calc.RunRow) float64 { return r.Unfilled }, unweighed || list.FillEvery == 0},
	}
}

// runningLists returns the running lists of the chosen sections. None is an error that says why.
func (p *printer) runningLists() ([]calc.RunList, error) {
	var lists []calc.RunList
	why := "the plan has no section"
	for i := range p.plan.Sections {
		if !p.listed(i) {
			continue
		}
		list, err := calc.RunningList(p.plan, i)
		if err != nil {
			why = fmt.Sprintf("section %d: %v", i+1, err)
			continue
		}
		lists = append(lists, list)
	}
	if len(lists) == 0 {
		return nil, fmt.Errorf("there is no running list to print: %s", why)
	}
	return lists, nil
}

// writeRunningLists prints the running lists of the chosen sections.
func (p *printer) writeRunningLists(w io.Writer) error {
	lists, err := p.runningLists()
	if err != nil {
		return err
	}
	switch p.Format {
	case CSV:
		return p.runCSV(w, lists)
	case JSON:
		return p.runJSON(w, lists)
	case Markdown:
		return p.runMarkdown(w, lists)
	}
	for k := range lists {
		if k > 0 {
			if _, err := io.WriteString(w, "\n\n"); err != nil {
				return err
			}
		}
		if err := p.runText(w, &lists[k]); err != nil {
			return err
		}
	}
	return nil
}

// runPage returns what stands round the rows of a running list.
func (p *printer) runPage(list *calc.RunList) page {
	section := &p.plan.Sections[list.Section]
	length := func(m float64) string {
		return quantity.FormatUnit(m, quantity.TallyLength, p.System.Unit(quantity.TallyLength))
	}
	left := "not known"
	if list.Counted {
		left = strconv.Itoa(list.Left)
	}
	joints := "at the average length"
	if list.Measured {
		joints = "measured"
	}
	s := page{title: fmt.Sprintf("Running list, section %d: %s", list.Section+1, dash(section.Name)), foot: standing}
	s.head = append([]pair{{"Well", p.wellName()}, {"Rig", dash(p.plan.Rig.Name)}, {"Revision", dash(p.plan.Well.Revision)}, {"Date", dash(p.plan.Well.Date)}}, p.origin()...)
	printed := map[quantity.Kind]bool{}
	for _, c := range shown(list) {
		printed[c.kind] = true
	}
	s.parts = []part{{title: "The string", pairs: []pair{
		{"Lands at", length(list.Top)}, {"Shoe wanted", length(list.Wanted)}, {"Shoe as tallied", length(list.Shoe)},
		{"Off the wanted", length(list.Shoe - list.Wanted)}, {"Off bottom", length(list.Hole - list.Shoe)},
		{"Joints", joints}, {"Joints run", strconv.Itoa(list.Joints)}, {"Joints left on deck", left}}}, {title: "How to read it", remarks: p.runRemarks(list)}, {title: "Cautions", remarks: p.cautionsOn(list.Section, printed)}}
	return s
}

// runRemarks says what the columns are and what they leave out.
func (p *printer) runRemarks(list *calc.RunList) []string {
	remarks := []string{
		"From the shoe up. Depths are along hole from the rotary. top at: upper end of the piece when the string has landed. " +
			"shoe at: depth of the shoe with the top of the piece at the rotary. inside, out: volume inside the string and displaced by it so far; couplings count as plain pipe. The last pieces land the shoe and go no deeper: what of them stands above the rotary is the stick-up, with a minus under top at.",
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

// runName returns what a row calls its piece.
func (p *printer) runName(r *calc.RunRow) string {
	return p.plain(strings.TrimSpace(r.Piece + " " + r.Number))
}

// number returns a column's value of a row without its unit.
func (p *printer) runNumber(c *runColumn, r *calc.RunRow) string {
	return quantity.Format(c.value(r), c.kind, p.System.Unit(c.kind))
}

// shown returns the columns that a list has something for.
func shown(list *calc.RunList) []runColumn {
	var columns []runColumn
	for _, c := range runColumns(list) {
		if !c.blank {
			columns = append(columns, c)
		}
	}
	return columns
}

func (p *printer) runText(w io.Writer, list *calc.RunList) error {
	s := p.runPage(list)
	s.each(p.plain)
	foot := s.foot
	s.foot = ""
	var t textSheet
	t.page(s)
	t.WriteByte('\n')
	columns := shown(list)
	const nameMost = 20
	name := len("piece")
	widths := make([]int, len(columns))
	for k := range columns {
		c := &columns[k]
		widths[k] = max(len(c.title), canvas.Width(p.System.Unit(c.kind).Symbol()))
		for n := range list.Rows {
			widths[k] = max(widths[k], canvas.Width(p.runNumber(c, &list.Rows[n])))
		}
	}
	for n := range list.Rows {
		name = max(name, min(nameMost, canvas.Width(p.runName(&list.Rows[n]))))
	}
	line := func(first string, cell func(*runColumn) string) {
		text := pad(canvas.Clip(first, name), name)
		for k := range columns {
			value := p.plain(cell(&columns[k]))
			text += " " + blanks(widths[k]-canvas.Width(value)) + value
		}
		t.line(text)
	}
	const perHeading = 25 // rows below one heading: half a page of paper
	for n := range list.Rows {
		if n%perHeading == 0 {
			if n > 0 {
				t.WriteByte('\n')
			}
			line("piece", func(c *runColumn) string { return c.title })
			line("", func(c *runColumn) string { return p.System.Unit(c.kind).Symbol() })
		}
		if name := p.partFrom(list, n); name != "" {
			t.line("-- from here " + p.plain(name))
		}
		line(p.runName(&list.Rows[n]), func(c *runColumn) string { return p.runNumber(c, &list.Rows[n]) })
	}
	t.WriteByte('\n')
	t.wrapped(foot, 0, 0)
	_, err := w.Write(t.Bytes())
	return err
}

func (p *printer) runMarkdown(w io.Writer, lists []calc.RunList) error {
	var pages []page
	for k := range lists {
		list := &lists[k]
		s := p.runPage(list)
		s.each(p.plain)
		table := part{title: "Pieces, shoe up", rowHead: "Piece"}
		columns := shown(list)
		for n := range list.Rows {
			r := row{name: p.runName(&list.Rows[n])}
			for k := range columns {
				c := &columns[k]
				title := strings.TrimSpace(c.title + " " + p.System.Unit(c.kind).Symbol())
				r.cells = append(r.cells, cell{label: p.plain(title), value: p.runNumber(c, &list.Rows[n]), number: true})
			}
			table.rows = append(table.rows, r)
		}
		s.parts = append(s.parts, table)
		pages = append(pages, s)
	}
	return writeMarkdown(w, pages)
}

func (p *printer) runCSV(w io.Writer, lists []calc.RunList) error {
	out := csv.NewWriter(w)
	head := []string{"section", "row", "piece", "number", "string", "pipe"}
	for _, c := range runColumns(&lists[0]) {
		head = append(head, c.key, c.key+"_unit", c.key+"_si")
	}
	if err := out.Write(head); err != nil {
		return err
	}
	for k := range lists {
		list := &lists[k]
		columns := runColumns(list)
		for n := range list.Rows {
			r := &list.Rows[n]
			record := []string{strconv.Itoa(list.Section + 1), strconv.Itoa(n + 1), p.guarded(r.Piece), p.guarded(r.Number), stringOf(r), p.guarded(p.pipeOf(list, r))}
			for k := range columns {
				c := &columns[k]
				if c.blank {
					record = append(record, "", "", "")
					continue
				}
				record = append(record, p.runNumber(c, r), p.System.Unit(c.kind).ASCII(), exact(c.value(r)))
			}
			if err := out.Write(record); err != nil {
				return err
			}
		}
	}
	out.Flush()
	return out.Error()
}

// partFrom names the casing that begins with row n of a list, where a string is of more than one.
func (p *printer) partFrom(list *calc.RunList, n int) string {
	if len(p.plan.Sections[list.Section].Casing) < 2 || n > 0 && list.Rows[n].Part == list.Rows[n-1].Part {
		return ""
	}
	return p.pipeOf(list, &list.Rows[n])
}

// pipeOf names the casing that a piece is of: size, weight and grade; nothing for the landing string.
func (p *printer) pipeOf(list *calc.RunList, r *calc.RunRow) string {
	if r.Part == 0 {
		return ""
	}
	part := &p.plan.Sections[list.Section].Casing[r.Part-1]
	return strings.TrimSpace(quantity.FormatUnit(part.Size.SI, quantity.Diameter, p.System.Unit(quantity.Diameter)) + " " +
		quantity.FormatUnit(part.Weight.SI, quantity.LinearMass, p.System.Unit(quantity.LinearMass)) + " " + model.Clean(part.Grade))
}

// stringOf names the string that a piece belongs to.
func stringOf(r *calc.RunRow) string {
	if r.Carrier {
		return "landing string"
	}
	return "casing"
}

type jsonRunFile struct {
	Borewalk jsonProgram   `json:"borewalk"`
	Well     string        `json:"well"`
	Source   string        `json:"source"`
	Hash     string        `json:"hash"`
	Lists    []jsonRunList `json:"lists"`
	Caution  string        `json:"caution"`
}

type jsonRunList struct {
	Section   int             `json:"section"`
	Name      string          `json:"name"`
	TopSI     float64         `json:"top_si"`
	WantedSI  float64         `json:"shoe_wanted_si"`
	ShoeSI    float64         `json:"shoe_si"`
	HoleSI    float64         `json:"hole_si"`
	Joints    int             `json:"joints"`
	Left      *int            `json:"joints_left,omitempty"`
	Measured  bool            `json:"measured"`
	Holds     bool            `json:"float_holds"`
	FillEvery int             `json:"fill_every,omitempty"`
	Unweighed string          `json:"no_hook_loads,omitempty"`
	Unspaced  string          `json:"no_landing_string,omitempty"`
	Units     ordered[string] `json:"units"`
	Rows      []ordered[any]  `json:"rows"`
}

func (p *printer) runJSON(w io.Writer, lists []calc.RunList) error {
	file := jsonRunFile{
		Borewalk: jsonProgram{jsonSchema, p.Version}, Well: model.Clean(p.plan.Well.Name), Source: model.Clean(p.Source), Hash: model.Clean(p.Hash), Caution: standing,
	}
	for k := range lists {
		file.Lists = append(file.Lists, p.jsonRunList(&lists[k]))
	}
	return p.encode(w, file)
}

func (p *printer) jsonRunList(list *calc.RunList) jsonRunList {
	j := jsonRunList{
		Section: list.Section + 1, Name: model.Clean(p.plan.Sections[list.Section].Name), TopSI: list.Top, WantedSI: list.Wanted, ShoeSI: list.Shoe, HoleSI: list.Hole,
		Joints: list.Joints, Measured: list.Measured, Holds: list.Holds, FillEvery: list.FillEvery, Unweighed: list.Unweighed, Unspaced: list.Unspaced,
	}
	if list.Counted {
		j.Left = &list.Left
	}
	columns := shown(list)
	for k := range columns {
		j.Units.add(columns[k].key, p.System.Unit(columns[k].kind).ASCII())
	}
	for n := range list.Rows {
		r := &list.Rows[n]
		var o ordered[any]
		o.add("piece", model.Clean(r.Piece))
		o.add("number", model.Clean(r.Number))
		o.add("string", stringOf(r))
		o.add("pipe", p.plain(p.pipeOf(list, r)))
		for k := range columns {
			c := &columns[k]
			o.add(c.key, number(p.System.Unit(c.kind).FromSI(c.value(r))))
			o.add(c.key+"_si", number(c.value(r)))
		}
		j.Rows = append(j.Rows, o)
	}
	return j
}
