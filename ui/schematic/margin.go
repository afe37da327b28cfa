package schematic

import (
	"cmp"
	"math"
	"slices"

	"borewalk/ui/canvas"
)

// label is a depth in the margin.
type label struct {
	row        int
	text       string
	importance importance
}

// importance decides which of the depths that fall on one row is written.
type importance int

const (
	marked importance = iota
	moving            // a plug or the fluid's level at a job
	workedEnd
	seabed
	otherShoe
	datum
	linerTop
	holeEnd
)

const (
	usualMargin = 5 // columns of digits, before the column of the mark
	leastWidth  = 5 // columns that the picture needs beside a margin
)

// readLabels collects the depths that the margin can show.
func (d *drawing) readLabels() {
	add := func(md float64, how importance) {
		if d.Depth != nil && !math.IsNaN(md) && !math.IsInf(md, 0) {
			d.labels = append(d.labels, label{d.scale.Row(md), d.Glyphs.Translate(d.Depth(md)), how})
		}
	}
	if d.HasMark {
		add(d.Mark, marked)
	}
	if d.State != nil {
		for _, md := range d.State.moving() {
			add(md, moving)
		}
	}
	add(0, datum)
	add(d.Datum.MSL, datum)
	add(d.Datum.Mudline, seabed)
	for i := range d.Sections {
		x := &d.Sections[i]
		if !x.OK {
			continue
		}
		shoe, td := otherShoe, holeEnd
		if d.phase(i) == worked {
			shoe, td = workedEnd, workedEnd
		}
		if x.String {
			add(x.Shoe, shoe)
		} else {
			td = shoe
		}
		add(x.TD, td)
		if hungDeep(d.Datum, x) && d.phase(i) != later {
			add(x.Top, linerTop)
		}
	}
	slices.SortStableFunc(d.labels, func(a, b label) int { return cmp.Compare(a.importance, b.importance) })
}

// marginWidth returns the columns for depths and mark: the usual ones unless a depth is longer, none where the picture
// would have no room left.
func (d *drawing) marginWidth(width int) int {
	digits := usualMargin
	for i := range d.labels {
		digits = max(digits, canvas.Width(d.labels[i].text))
	}
	if digits+1+leastWidth > width {
		return 0
	}
	return digits + 1
}

// margin writes the depths, on each row the most important, and the mark beside the depth that is being edited.
func (d *drawing) margin() {
	taken := make([]bool, d.r.H())
	digits := d.left.W() - 1
	for _, l := range d.labels {
		if digits <= 0 || taken[l.row] {
			continue
		}
		taken[l.row] = true
		style := canvas.Plain
		if l.importance == marked {
			style = canvas.Focus
		}
		d.left.TextRight(0, l.row, digits, l.text, style)
	}
	if !d.HasMark {
		return
	}
	row := d.scale.Row(d.Mark)
	if digits > 0 {
		d.left.Put(digits, row, d.Glyphs.Mark, canvas.Focus)
	} else {
		d.r.Put(0, row, d.Glyphs.Mark, canvas.Focus)
	}
}
