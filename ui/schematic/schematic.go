// Package schematic draws the wellbore: rotary, water, riser and BOP, the seabed, and below it each string nested in the
// one before, with the section being worked among them. Start at Draw.
//
// It draws what calc.Sketch says and works nothing out but rows and columns. Depths are along hole, so a deviated well
// is drawn straight.
package schematic

import (
	"borewalk/calc"
	"borewalk/ui/canvas"
)

// Options say which state of the well is drawn, and how.
type Options struct {
	Section   int     // being worked, from 0: earlier strings are set, its own is planned in its hole, later ones are dotted
	Whole     bool    // draw every section as set
	TrueScale bool    // linear in depth below the mudline; otherwise stretched so that every section is legible
	Mark      float64 // depth of the field being edited, in m; drawn when HasMark is set
	HasMark   bool
	Depth     func(m float64) string // a depth in the unit shown, without the unit; nil for no depths
	Size      func(m float64) string // a diameter in the unit shown, without the unit; nil for no sizes
	State     *State                 // a moment of the job on the string of Section; nil for none
	Glyphs    canvas.Glyphs
}

// narrow is the widest region in which strings stand one column apart, without room for annuli, sizes and names.
const narrow = 24

// nothing is written where there is nothing to draw yet.
const nothing = "no depth yet"

// Draw draws the well into a region of any size. Where the water depth is unknown, or the section being worked cannot be
// drawn, it says so.
func Draw(r canvas.Region, s calc.Sketch, o Options) {
	if !s.Datum.OK {
		r.Text(max((r.W()-len(nothing))/2, 0), r.H()/2, nothing, canvas.Plain)
		return
	}
	if r.W() == 0 || r.H() == 0 {
		return
	}
	d := newDrawing(r, s, o)
	d.ground()
	d.site()
	d.fluids()
	d.strings()
	d.plugs()
	d.margin()
	if !d.Whole && (o.Section < 0 || o.Section >= len(s.Sections) || !s.Sections[o.Section].OK) {
		d.r.Text(max(d.axis-len(nothing)/2-1, 0), d.scale.Row(s.Bottom)+1, " "+nothing+" ", canvas.Plain)
	}
}

// drawing is one picture being drawn. Columns are counted from the axis of the well outwards.
type drawing struct {
	calc.Sketch
	Options
	columns
	scale   Scale
	r, left canvas.Region // the picture, and the margin with the depths
	labels  []label
	mudline int // its row
}

func newDrawing(r canvas.Region, s calc.Sketch, o Options) *drawing {
	if o.State != nil {
		s, o = atJob(s, o, r.H())
	}
	d := &drawing{Sketch: s, Options: o, scale: NewScale(s, r.H(), o.TrueScale)}
	d.mudline = d.scale.Row(s.Datum.Mudline)
	d.reach()
	d.readLabels()
	margin := d.marginWidth(r.W())
	d.left, d.r = r.Sub(0, 0, margin, r.H()), r.Sub(margin, 0, r.W()-margin, r.H())
	d.columns = newColumns(s, r.W() > narrow, d.r.W())
	if d.State != nil {
		d.columns = jobColumns(s, o.Section, d.State.drilling(), r.W() > narrow, d.r.W())
	}
	return d
}

// phase is what has become of a section by the time that is drawn.
type phase int

const (
	set     phase = iota // drilled, its string in place
	worked               // drilled, its string to be run
	later                // not drilled
	unknown              // cannot be drawn
)

func (d *drawing) phase(i int) phase {
	switch {
	case !d.Sections[i].OK:
		return unknown
	case d.Whole || i < d.Section:
		return set
	case i == d.Section:
		return worked
	}
	return later
}

// both puts a character at the same distance on both sides of the axis.
func (d *drawing) both(row, column int, left, right rune, s canvas.Style) {
	d.r.Put(d.axis-column, row, left, s)
	d.r.Put(d.axis+column, row, right, s)
}

// across fills a row from the axis out to a column on both sides.
func (d *drawing) across(row, column int, ch rune, s canvas.Style) {
	d.r.HLine(d.axis-column, row, 2*column+1, ch, s)
}
