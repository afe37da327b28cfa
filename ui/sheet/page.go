package sheet

import "borewalk/ui/vector"

// page is the content of one sheet, before it is set as text or Markdown. A blank value is "-" throughout.
type page struct {
	title string
	head  []pair
	parts []part
	foot  string
	whole bool // on one page, though it be a long one
}

// part is what stands under one heading. Any of its lists may be empty.
type part struct {
	title   string
	pairs   []pair
	rowHead string // what the rows' names are
	rows    []row
	tall    bool // more rows than a page has, each with a value for every column
	items   []item
	remarks []string
	drawn   []string        // lines that keep their blanks; clean, and nothing changes them
	drawing *vector.Drawing // what a PDF has in their place
}

// empty reports whether nothing stands under the heading.
func (p *part) empty() bool {
	return len(p.pairs)+len(p.rows)+len(p.items)+len(p.remarks)+len(p.drawn) == 0 && p.drawing == nil
}

// pair is a label and its value on a line of their own.
type pair struct{ label, value string }

// row is a line of a table; its cells are found by their labels, and the first may have none. In a tall table it may say what
// it is of.
type row struct {
	name  string
	cells []cell
	of    string
}

// cell is a value of a row. A spare one is blank without a loss, and is printed where its column is, not in a line. The unit is
// with the value, or by itself where it stands in the column's head.
type cell struct {
	label, value  string
	unit          string
	number, spare bool
}

// item is a statement and what is to be said about it.
type item struct {
	mark, text string
	lines      []string
}

// each replaces every text of the page.
func (p *page) each(change func(string) string) {
	pairs := func(list []pair) {
		for i := range list {
			list[i] = pair{change(list[i].label), change(list[i].value)}
		}
	}
	texts := func(list []string) {
		for i := range list {
			list[i] = change(list[i])
		}
	}
	p.title, p.foot = change(p.title), change(p.foot)
	pairs(p.head)
	for i := range p.parts {
		q := &p.parts[i]
		q.title, q.rowHead = change(q.title), change(q.rowHead)
		pairs(q.pairs)
		for k := range q.rows {
			r := &q.rows[k]
			r.name, r.of = change(r.name), change(r.of)
			for j := range r.cells {
				c := &r.cells[j]
				c.label, c.value, c.unit = change(c.label), change(c.value), change(c.unit)
			}
		}
		for k := range q.items {
			t := &q.items[k]
			t.mark, t.text = change(t.mark), change(t.text)
			texts(t.lines)
		}
		texts(q.remarks)
	}
}
