package plot

import (
	"math"

	"borewalk/ui/canvas"
)

// The smallest regions in which a plot gets its axis line, and its legend.
const (
	rowsForAxis   = 6
	rowsForLegend = 5
	rowsForPanels = 8 // before the letters of a chart take more than one
	leastRows     = 3
	leastColumns  = 8
)

// Draw draws the window into a region of any size: densities from left to right with the numbers above, depths
// downwards with the numbers at the left, the signs explained below. Without data it says so.
func Draw(r canvas.Region, w Window, g canvas.Glyphs) {
	d, ok := newDrawing(r, &w, g)
	if !ok {
		const nothing = "no prognosis"
		r.Text(max((r.W()-len(nothing))/2, 0), r.H()/2, nothing, canvas.Plain)
		return
	}
	d.band()
	d.curves()
	d.shoes()
	d.show()
	d.shoeLabels()
	d.seatLabels()
	d.depthAxis()
	d.densityAxis()
	if r.H() >= rowsForLegend {
		d.legend(r.Sub(0, r.H()-1, r.W(), 1))
	}
}

// drawing is one plot being drawn.
type drawing struct {
	w           *Window
	g           canvas.Glyphs
	head, side  canvas.Region // the numbers above and at the left
	r           canvas.Region // the plot itself
	cells       []mark        // of the plot, row by row
	seen        map[rune]bool // letters drawn
	top, bottom float64
	low, high   float64
}

// mark is what stands in one cell of the plot.
type mark struct {
	ch    rune
	style canvas.Style
	rank  rank
}

func newDrawing(r canvas.Region, w *Window, g canvas.Glyphs) (*drawing, bool) {
	d := &drawing{w: w, g: g, seen: map[rune]bool{}}
	var ok bool
	if d.top, d.bottom, ok = w.Depths(); !ok {
		return nil, false
	}
	if d.low, d.high, ok = w.Densities(); !ok || r.W() < leastColumns || r.H() < leastRows {
		return nil, false
	}
	for _, t := range w.Ticks {
		if known(t.SI) {
			d.low, d.high = min(d.low, t.SI), max(d.high, t.SI)
		}
	}
	if d.high == d.low {
		d.low, d.high = 0.9*d.low, 1.1*d.high
	}
	head, foot := 1, 0
	if r.H() >= rowsForAxis {
		head = 2
	}
	if r.H() >= rowsForLegend {
		foot = 1
	}
	side := d.sideWidth(r.W())
	d.head = r.Sub(side, 0, r.W()-side, head)
	d.side = r.Sub(0, head, side, r.H()-head-foot)
	d.r = r.Sub(side, head, r.W()-side, r.H()-head-foot)
	d.cells = make([]mark, d.r.W()*d.r.H())
	return d, true
}

// column returns the column of a density, which is on the plot when the density is in its range.
func (d *drawing) column(emw float64) int {
	return int(math.Round(float64(d.r.W()-1) * (emw - d.low) / (d.high - d.low)))
}

// row returns the row of a depth, and false when the depth is not shown.
func (d *drawing) row(tvd float64) (int, bool) {
	if !(tvd >= d.top && tvd <= d.bottom) {
		return 0, false
	}
	return int(math.Round(float64(d.r.H()-1) * (tvd - d.top) / (d.bottom - d.top))), true
}

// depth returns the depth in the middle of a row.
func (d *drawing) depth(row int) float64 {
	return d.top + (d.bottom-d.top)*float64(row)/float64(max(d.r.H()-1, 1))
}

// band fills what lies between swab and surge, behind all else.
func (d *drawing) band() {
	swab, surge := d.w.swab(), d.w.surge()
	for row := range d.r.H() {
		low, ok := swab.at(d.depth(row))
		high, also := surge.at(d.depth(row))
		if !ok || !also {
			continue
		}
		for column := d.column(low); column <= d.column(high); column++ {
			d.put(row, column, mark{d.g.FillMud, canvas.Faint, band})
		}
	}
}

func (d *drawing) curves() {
	for _, c := range d.w.curves() {
		for row := range d.r.H() {
			if emw, ok := c.at(d.depth(row)); ok {
				d.put(row, d.column(emw), mark{c.letter, c.style, c.rank})
			}
		}
		d.foot(&c)
	}
}

// foot draws the end of a curve that falls a little short of the lowest row, whose depth is the end of the prognosis: a mud
// reaches to TD.
func (d *drawing) foot(c *curve) {
	if c.n == 0 {
		return
	}
	tvd, emw := c.point(c.n - 1)
	row, ok := d.row(tvd)
	if _, drawn := c.at(d.depth(row)); ok && row == d.r.H()-1 && !drawn && emw > 0 && known(emw) {
		d.put(row, d.column(emw), mark{c.letter, c.style, c.rank})
	}
}

// put sets a mark where none of more weight stands. Mud on a limit and a limit on the opposite one become a crossing.
func (d *drawing) put(row, column int, m mark) {
	if column < 0 || column >= d.r.W() {
		return
	}
	at := &d.cells[row*d.r.W()+column]
	switch {
	case at.rank >= lowerLimit && m.rank >= lowerLimit && at.rank != m.rank:
		*at = mark{crossingLetter, canvas.Stop, crossing}
	case m.rank >= at.rank:
		*at = m
	}
}

// shoes draws a line at each shoe behind the curves, and the test at its foot.
func (d *drawing) shoes() {
	for _, s := range d.w.Shoes {
		row, ok := d.row(s.TVD)
		if !ok {
			continue
		}
		for column := range d.r.W() {
			d.put(row, column, mark{d.g.Horizontal, canvas.Steel, shoeLine})
		}
		if s.Test > 0 && known(s.Test) {
			d.put(row, d.column(s.Test), mark{testLetter, canvas.Plain, shoeTest})
		}
	}
}

func (d *drawing) show() {
	for i, m := range d.cells {
		if m.rank == empty {
			continue
		}
		d.seen[m.ch] = true
		d.r.Put(i%d.r.W(), i/d.r.W(), m.ch, m.style)
	}
}

// shoeLabels writes each shoe's label into its line, as far right as it hides no curve.
func (d *drawing) shoeLabels() {
	for _, s := range d.w.Shoes {
		row, ok := d.row(s.TVD)
		if !ok {
			continue
		}
		text := " " + d.g.Translate(s.Label) + " "
		if at, ok := d.free(row, canvas.Width(text)); ok && s.Label != "" {
			d.r.Text(at, row, text, canvas.Steel)
			for column := at; column < at+canvas.Width(text); column++ {
				d.cells[row*d.r.W()+column].rank = upperLimit // taken
			}
		}
	}
}

// Signs of the seats that the prognosis would allow.
const (
	seatUp   = '^'
	seatDown = 'v'
)

// seatLabels writes the sign of each seat into its row, as far right as it hides no curve and no label.
func (d *drawing) seatLabels() {
	for _, s := range d.w.Seats {
		row, ok := d.row(s.TVD)
		if !ok {
			continue
		}
		sign := seatDown
		if s.Up {
			sign = seatUp
		}
		if at, ok := d.free(row, 2); ok {
			d.r.Put(at+1, row, sign, canvas.Faint)
			d.cells[row*d.r.W()+at+1].rank = upperLimit // taken
			d.seen[sign] = true
		}
	}
}

// free returns the rightmost column of a run of so many cells without a curve.
func (d *drawing) free(row, width int) (column int, ok bool) {
	run := 0
	for column := d.r.W() - 1; column >= 0; column-- {
		if d.cells[row*d.r.W()+column].rank > shoeLine {
			run = 0
			continue
		}
		if run++; run == width {
			return column, true
		}
	}
	return 0, false
}
