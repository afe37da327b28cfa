package schematic

import (
	"cmp"
	"math"
	"slices"

	"borewalk/ui/vector"
)

// paperLabel is what stands at a depth: its name at the right, beginning at a radius, and the depth at the left.
type paperLabel struct {
	md, radius float64
	name       string
	importance importance
}

func labelType() vector.Type { return vector.Type{Size: 7.5} }

// labelled collects what is labelled, the more important first. What lies at one depth shares a label.
func (p *paper) labelled() (list []paperLabel) {
	add := func(md, radius float64, name string, how importance) {
		if math.IsNaN(md) || math.IsInf(md, 0) || md < 0 {
			return
		}
		if k := slices.IndexFunc(list, func(l paperLabel) bool { return math.Abs(l.md-md) < together }); k >= 0 {
			list[k].name += ", " + name
			list[k].importance = min(list[k].importance, how)
			return
		}
		list = append(list, paperLabel{md, radius, name, how})
	}
	add(0, p.floor(), "rotary", datum)
	if p.Datum.MSL > 0 {
		add(p.Datum.MSL, p.right-p.axis, "mean sea level", datum)
	}
	if p.riserRun() {
		add(p.Datum.BOPTop, p.widestLanded(), "top of BOP", datum)
	}
	add(p.Datum.Mudline, p.widestLanded()+1, "seabed", seabed)
	for i := range p.Sections {
		if p.Sections[i].OK {
			p.labelSection(i, add)
		}
	}
	slices.SortStableFunc(list, func(a, b paperLabel) int { return cmp.Compare(a.importance, b.importance) })
	return list
}

// labelSection adds what a section has.
func (p *paper) labelSection(i int, add func(md, radius float64, name string, how importance)) {
	x := &p.Sections[i]
	end, how := "", otherShoe
	switch p.phase(i) {
	case worked:
		end, how = ", to be set", workedEnd
	case later:
		end = ", to come"
	}
	if !x.String {
		add(x.TD, p.hole(i), p.Size(x.Hole)+" hole"+end, how)
		return
	}
	size := p.Size(x.OD)
	add(x.Shoe, p.radius[i], size+" shoe"+end, how)
	if p.phase(i) == later {
		return
	}
	add(x.TD, p.holeAt(i, x.TD), p.Size(x.Bit)+" hole", holeEnd)
	if x.Opened < x.TD {
		add(x.Opened, p.hole(i), p.Size(x.Hole)+" hole", holeEnd)
	}
	if hungDeep(p.Datum, x) {
		add(x.Top, p.radius[i], size+" top", linerTop)
	}
	if x.Cement > p.Datum.Mudline+together {
		add(x.Cement, p.radius[i], "cement, "+size, linerTop)
	}
}

// labels writes the depths at the left and what is there at the right, each on a line with a leader to its place.
func (p *paper) labels() {
	const corner, gap = 3.0, 0.8
	thin := vector.Stroke{Width: 0.1, Grey: vector.Mid}
	list := p.labelled()
	wanted := make([]float64, len(list))
	for k := range list {
		wanted[k] = p.y(list[k].md)
	}
	places, ok := vector.Spread(wanted, rowHeight, p.top-rowHeight/2, p.foot())
	head, right := labelType(), labelType()
	head.Grey, head.Align, right.Align = vector.Dark, vector.Right, vector.Right
	edge := p.left - 2*corner
	vector.Line(p.to, p.left, p.top, p.left, p.foot(), vector.Stroke{Width: 0.2})
	p.to.Text(edge-gap, p.top-rowHeight*1.1, p.Unit, head)
	for k, l := range list {
		if !ok[k] {
			continue
		}
		y, at := wanted[k], places[k]
		p.to.Polyline([]vector.Point{{X: p.left + 1, Y: y}, {X: p.left - corner/2, Y: y}, {X: edge, Y: at}}, thin)
		p.to.Polyline([]vector.Point{{X: p.axis + l.radius, Y: y}, {X: p.right, Y: y}, {X: p.right + corner, Y: at}}, thin)
		p.to.Text(edge-gap, at, p.Depth(l.md), right)
		from := p.right + corner + gap
		p.to.Text(from, at, vector.Fit(p.to, l.name, labelType(), p.w-from), labelType())
	}
}

// legend explains the lines below the drawing.
func (p *paper) legend() {
	t := vector.Type{Size: 7, Grey: vector.Dark}
	x, y := 0.0, p.h-legendRoom/2
	sample := func(text string, draw func(x float64)) {
		draw(x)
		p.to.Text(x+9, y, text, t)
		x += 9 + p.to.Width(text, t) + 5
	}
	line := func(s vector.Stroke) func(float64) {
		return func(x float64) { vector.Line(p.to, x, y, x+8, y, s) }
	}
	sample("set", line(wallStroke(set)))
	if !p.Whole {
		sample("to be set", line(wallStroke(worked)))
		sample("to come", line(wallStroke(later)))
	}
	sample("cement, planned", func(x float64) { vector.Box(p.to, x, y-1.2, 8, 2.4, vector.Light, vector.Stroke{}) })
	sample("wall of the hole", line(vector.Stroke{Width: 0.2}))
	p.to.Text(0, y+legendRoom/2-1.2, "Depths along hole from the rotary; the scale is stretched, the hole drawn straight.", t)
}
