package sheet

import (
	"slices"
	"strconv"

	"borewalk/calc"
	"borewalk/model/quantity"
)

// A table that is built line by line finds the column of each value by its label and kind, and adds the column where there is none.

// shown is a figure of a line, by its key, and what its column is called.
type shown struct{ label, key string }

// add begins a line that has no values yet.
func (t *table) add(name, note string) {
	t.rows = append(t.rows, line{name: name, note: note})
	t.even()
}

// even gives every line a value for every column, blank where it has none.
func (t *table) even() {
	for k := range t.rows {
		for len(t.rows[k].values) < len(t.columns) {
			t.rows[k].values = append(t.rows[k].values, nothing())
		}
	}
}

// set puts a value into the last line, in the column of its label and kind.
func (t *table) set(label string, kind quantity.Kind, value float64) {
	h := heading{label, kind}
	column := slices.Index(t.columns, h)
	if column < 0 {
		column, t.columns = len(t.columns), append(t.columns, h)
		t.even()
	}
	t.rows[len(t.rows)-1].values[column] = value
}

// remark notes something with the last line, if there is one.
func (t *table) remark(text string) {
	if n := len(t.rows); n > 0 {
		t.rows[n-1].note = joined(t.rows[n-1].note, text)
	}
}

// filled returns the tables that have lines.
func filled(tables ...table) []table {
	return slices.DeleteFunc(tables, func(t table) bool { return len(t.rows) == 0 })
}

// told says that nothing is written by hand beside the last line.
func (t *table) told() { t.rows[len(t.rows)-1].told = true }

// entry adds a line for an entry; a blank one adds nothing.
func (t *table) entry(name string, v quantity.Value, kind quantity.Kind, note string) {
	if v.IsSet() {
		t.add(name, note)
		t.set("", kind, v.SI)
	}
}

// figures adds a line of figures, with what is noted of the first, and why it is blank if it is. A sheet that has none of them adds
// nothing.
func (t *table) figures(s *calc.Sheet, name string, list ...shown) {
	begun := false
	for k, x := range list {
		f, ok := s.Find(x.key)
		if !ok {
			continue
		}
		if !begun {
			t.add(name, "")
			begun = true
		}
		if k == 0 {
			t.remark(f.Note)
		}
		if f.OK {
			t.set(x.label, f.Kind, f.Value)
		} else if k == 0 {
			t.remark("blank: " + f.Why)
		}
	}
}

// series adds a line for each of the figures that are numbered behind a prefix, as long as there are any; with each go others,
// found by what stands behind the number. Where the first is blank, so are the rest for the same reason, and they are left out.
func (t *table) series(s *calc.Sheet, prefix string, list ...shown) {
	for n := 0; ; n++ {
		key := prefix + strconv.Itoa(n)
		f, ok := s.Find(key)
		if !ok {
			return
		}
		each := slices.Clone(list)
		for k := range each {
			each[k].key = key + each[k].key
		}
		if t.figures(s, f.Name, each...); !f.OK {
			return
		}
	}
}

// joined puts two remarks in one; either may be empty.
func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}
