package catalogue

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// table reads a CSV text with a heading line, row by row. The first fault stops
// it and stays in err, so that a reader of rows checks once, at the end.
type table struct {
	name   string
	places map[string]int // column name to its place in a row
	rows   [][]string     // without the heading
	at     int            // the current row; -1 before the first
	err    error
}

// openTable reads the text and holds its heading to the wanted columns, in
// order. The name is only for messages.
func openTable(name, text string, columns ...string) *table {
	t := &table{name: name, places: make(map[string]int, len(columns)), at: -1}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	switch {
	case err != nil:
		t.err = fmt.Errorf("%s: %w", name, err)
	case len(rows) == 0:
		t.err = fmt.Errorf("%s: no heading line, want %q", name, strings.Join(columns, ","))
	case !slices.Equal(rows[0], columns):
		t.err = fmt.Errorf("%s: heading is %q, want %q", name, strings.Join(rows[0], ","), strings.Join(columns, ","))
	default:
		t.rows = rows[1:]
	}
	for place, column := range columns {
		t.places[column] = place
	}
	return t
}

// next moves to the next row and reports whether there is one.
func (t *table) next() bool {
	if t.err != nil || t.at+1 >= len(t.rows) {
		return false
	}
	t.at++
	return true
}

// text returns the cell as it stands, which may be empty.
func (t *table) text(column string) string {
	place, ok := t.places[column]
	if !ok {
		t.fail(column, "no such column")
		return ""
	}
	return t.rows[t.at][place]
}

// word returns a cell that must not be empty.
func (t *table) word(column string) string {
	s := t.text(column)
	if s == "" {
		t.fail(column, "empty, write a word")
	}
	return s
}

// choice returns a cell that must be one of the allowed words.
func (t *table) choice(column string, allowed ...string) string {
	s := t.text(column)
	if !slices.Contains(allowed, s) {
		t.fail(column, fmt.Sprintf("%q, want one of %q", s, allowed))
	}
	return s
}

// amount returns a number above zero, times the unit in which it is written.
func (t *table) amount(column string, unit float64) float64 {
	s := t.text(column)
	number, err := strconv.ParseFloat(s, 64)
	if value := number * unit; err == nil && value > 0 && !math.IsInf(value, 0) {
		return value
	}
	t.fail(column, fmt.Sprintf("%q, want a number above zero", s))
	return 0
}

// amountIfKnown is amount, but zero for an empty cell.
func (t *table) amountIfKnown(column string, unit float64) float64 {
	if t.text(column) == "" {
		return 0
	}
	return t.amount(column, unit)
}

// fail keeps the first fault, with the line as an editor counts it.
func (t *table) fail(column, fault string) {
	if t.err == nil {
		t.err = fmt.Errorf("%s line %d, column %q: %s", t.name, t.at+2, column, fault)
	}
}
