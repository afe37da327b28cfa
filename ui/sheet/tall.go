package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// A tall table has more rows than a page of paper: its units stand in the heads of its columns, and the heads come again and
// again. In CSV a running list is a record for each row and has the file to itself; elsewhere a tall table goes with the others,
// value by value.

// tallRows sets the rows of a tall table. A column in which no row has a value is left out, but in a form, which has none.
func (p *printer) tallRows(t table) (rows []row) {
	room := toFillIn
	if t.form {
		room = toFillForm
	}
	for _, l := range t.rows {
		r := row{name: l.name, of: l.of}
		for k, h := range t.columns {
			if !t.form && !slices.ContainsFunc(t.rows, func(other line) bool { return finite(other.values[k]) }) {
				continue
			}
			unit := p.System.Unit(h.kind)
			c := cell{label: h.label, unit: unit.Symbol(), value: "-", number: true}
			switch {
			case t.form:
				c.value = room
			case finite(l.values[k]):
				c.value = quantity.Format(l.values[k], h.kind, unit)
			}
			r.cells = append(r.cells, c)
		}
		for _, label := range t.byHand {
			r.cells = append(r.cells, cell{label: label, value: room})
		}
		rows = append(rows, r)
	}
	return rows
}

// Measures of a tall table as text.
const (
	toFillIn   = "......"       // where a number is written by hand
	toFillForm = "............" // and in a form
	tallName   = 22             // columns for a name, at most
)

// tall writes the rows of a tall table, a line each, and a line where they become part of something else. The heads of the
// columns come again on every page.
func (t *textSheet) tall(head string, rows []row) {
	name, widths := len(head), make([]int, len(rows[0].cells))
	for _, r := range rows {
		name = max(name, min(tallName, canvas.Width(r.name)))
		for k, c := range r.cells {
			widths[k] = max(widths[k], canvas.Width(c.label), canvas.Width(c.unit), canvas.Width(c.value))
		}
	}
	line := func(first string, r row, text func(cell) string) {
		set := pad(canvas.Clip(first, name), name)
		for k, c := range r.cells {
			set += " " + blanks(widths[k]-canvas.Width(text(c))) + text(c)
		}
		t.line(set)
	}
	heads := len(t.pieces)
	t.together(func() {
		line(head, rows[0], func(c cell) string { return c.label })
		line("", rows[0], func(c cell) string { return c.unit })
	})
	t.pieces[heads].hold = true
	for n, r := range rows {
		from := len(t.pieces)
		t.together(func() {
			if r.of != "" && (n == 0 || r.of != rows[n-1].of) {
				t.line("-- from here " + r.of)
			}
			line(r.name, r, func(c cell) string { return c.value })
		})
		t.pieces[from].again = from - heads
	}
}

// tallCSV writes the tall tables of cards that are alike: section, row, name, what it is of, and each column's value, unit and
// SI value.
func (p *printer) tallCSV(w io.Writer, list []card) error {
	var records [][]string
	for _, c := range list {
		for _, t := range c.tables {
			if !t.tall {
				continue
			}
			if records == nil {
				head := []string{"section", "row", t.rowHead, "of"}
				for _, h := range t.columns {
					key := strings.ReplaceAll(h.label, " ", "_")
					head = append(head, key, key+"_unit", key+"_si")
				}
				records = append(records, head)
			}
			for n, l := range t.rows {
				record := []string{strconv.Itoa(c.section + 1), strconv.Itoa(n + 1), p.guarded(l.name), p.guarded(l.of)}
				for k, h := range t.columns {
					if !finite(l.values[k]) {
						record = append(record, "", "", "")
						continue
					}
					unit := p.System.Unit(h.kind)
					record = append(record, plainNumber(l.values[k], h.kind, unit), unit.ASCII(), exact(l.values[k]))
				}
				records = append(records, record)
			}
		}
	}
	if err := csv.NewWriter(w).WriteAll(records); err != nil {
		return fmt.Errorf("the list cannot be written: %w", err)
	}
	return nil
}
