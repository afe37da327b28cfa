package schematic

import (
	"borewalk/calc"
	"borewalk/ui/vector"
)

// PaperOptions say what of the well is drawn on paper, and how its labels are written.
type PaperOptions struct {
	Section int                    // being worked, from 0: earlier strings are set, its own is to be set, later ones are to come
	Whole   bool                   // draw every section as set
	Depth   func(m float64) string // a depth in the unit shown, without the unit
	Unit    string                 // of depths
	Size    func(m float64) string // a diameter with its unit
}

// Drawing returns the well as a drawing of a size in mm. On the same stretched scale as on a screen, depths are written at the left,
// and at the right what is there. Where there is nothing to draw it is false.
func Drawing(s calc.Sketch, o PaperOptions, w, h float64) (vector.Drawing, bool) {
	if !s.Datum.OK {
		return vector.Drawing{}, false
	}
	return vector.Drawing{W: w, H: h, Draw: func(to vector.Surface) {
		p := newPaper(to, s, o, w, h)
		p.rock()
		p.holes()
		p.cements()
		p.water()
		p.strings()
		p.head()
		p.labels()
		p.legend()
	}}, true
}

// Measures in mm.
const (
	rowHeight   = 3.6 // of a row of the scale: so much a landmark gets, and a label takes
	legendRoom  = 9
	paperTop    = 6   // above the rotary: what the depths are
	depthsWidth = 25  // left of the well
	namesWidth  = 62  // right of it
	boreRadius  = 3   // at least, within the innermost string
	mostPitch   = 6.5 // from one string to the next, at most
	pipeRadius  = 0.7
	wallWidth   = 0.8
	holeShare   = 0.55 // of the room outside a string that its hole takes
)

// paper is one drawing on its way.
type paper struct {
	*drawing
	PaperOptions
	to          vector.Surface
	w, h        float64
	left, right float64 // edges of the rock
	axis, pitch float64
	radius      []float64 // of each section's string, or of its hole where it has no string
	top, row    float64   // height of the rotary, and of a row
}

func newPaper(to vector.Surface, s calc.Sketch, o PaperOptions, w, h float64) *paper {
	p := &paper{PaperOptions: o, to: to, w: w, h: h, left: depthsWidth, right: w - namesWidth, top: paperTop}
	rows := max(2, int((h-paperTop-legendRoom)/rowHeight))
	p.drawing = &drawing{Sketch: s, Options: Options{Section: o.Section, Whole: o.Whole}, scale: NewScale(s, rows, false)}
	p.row = (h - paperTop - legendRoom) / float64(rows)
	p.axis = (p.left + p.right) / 2
	order := nested(s)
	p.pitch = min(mostPitch, ((p.right-p.left)/2-boreRadius-2)/float64(max(len(order), 1)+1))
	p.radius = make([]float64, len(s.Sections))
	for k, i := range order {
		p.radius[i] = boreRadius + p.pitch*float64(len(order)-k)
	}
	return p
}

// y returns the height of a depth along hole.
func (p *paper) y(md float64) float64 { return p.top + p.row*p.scale.Between(md) }

// foot is the height of the lower edge of the rock.
func (p *paper) foot() float64 { return p.h - legendRoom }

// hole returns the radius of a section's hole at full size.
func (p *paper) hole(i int) float64 {
	if x := &p.Sections[i]; x.Filled || !x.String {
		return p.radius[i]
	}
	return p.radius[i] + p.pitch*holeShare
}

// holeAt returns the radius of a section's hole at a depth within it: below the opener it is the pilot hole.
func (p *paper) holeAt(i int, md float64) float64 {
	if x := &p.Sections[i]; x.Bit < x.Hole && md > x.Opened {
		return p.radius[i] - p.pitch/3
	}
	return p.hole(i)
}

// outer returns the radius of what lies next outside the string of a section at a depth in the ground: a string, or the wall of
// the hole.
func (p *paper) outer(i int, md float64) (radius float64, ok bool) {
	for j := range p.Sections {
		if x := &p.Sections[j]; x.OK && p.phase(j) <= worked && x.Start <= md && md <= x.TD {
			radius, ok = max(radius, p.holeAt(j, md)), true
		}
	}
	for j := range p.Sections {
		if x := &p.Sections[j]; j != i && x.String && p.phase(j) <= worked && x.Top <= md && md <= x.Shoe && p.radius[j] > p.radius[i] {
			radius, ok = min(radius, p.radius[j]), true
		}
	}
	return radius, ok && radius > p.radius[i]
}

// both draws a line on both sides of the axis.
func (p *paper) both(stroke vector.Stroke, points ...vector.Point) {
	for _, side := range [...]float64{-1, 1} {
		line := make([]vector.Point, len(points))
		for k, at := range points {
			line[k] = vector.Point{X: p.axis + side*at.X, Y: at.Y}
		}
		p.to.Polyline(line, stroke)
	}
}

// ring fills what lies between two radii on both sides of the axis.
func (p *paper) ring(inner, outer, top, bottom float64, fill vector.Grey, stroke vector.Stroke) {
	vector.Box(p.to, p.axis-outer, top, outer-inner, bottom-top, fill, stroke)
	vector.Box(p.to, p.axis+inner, top, outer-inner, bottom-top, fill, stroke)
}
