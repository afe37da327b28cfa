package schematic

import (
	"math"
	"slices"

	"borewalk/ui/vector"
)

// rock shades the ground.
func (p *paper) rock() {
	top := p.y(p.Datum.Mudline)
	vector.Box(p.to, p.left, top, p.right-p.left, p.foot()-top, vector.Pale, vector.Stroke{})
	vector.Line(p.to, p.left, top, p.right, top, vector.Stroke{Width: 0.5})
}

// holes opens what is drilled, and dots the place of what is not.
func (p *paper) holes() {
	for i := range p.Sections {
		if x := &p.Sections[i]; x.OK && p.phase(i) <= worked {
			vector.Box(p.to, p.axis-p.hole(i), p.y(x.Start), 2*p.hole(i), p.y(min(x.Opened, x.TD))-p.y(x.Start), vector.White, vector.Stroke{})
			if x.Opened < x.TD {
				pilot := p.holeAt(i, x.TD)
				vector.Box(p.to, p.axis-pilot, p.y(x.Opened), 2*pilot, p.y(x.TD)-p.y(x.Opened), vector.White, vector.Stroke{})
			}
		}
	}
	for i := range p.Sections {
		if x := &p.Sections[i]; x.OK && p.phase(i) <= worked && !x.Filled {
			p.wallOf(i)
		}
	}
}

// wallOf draws the wall of a section's hole, with waves where it is washed out.
func (p *paper) wallOf(i int) {
	x := &p.Sections[i]
	thin := vector.Stroke{Width: 0.2}
	full, pilot := p.hole(i), p.holeAt(i, x.TD)
	top, opened, bottom := p.y(x.Start), p.y(min(x.Opened, x.TD)), p.y(x.TD)
	if x.Washout > 0 {
		p.both(thin, waves(full, top, opened)...)
	} else {
		p.both(thin, vector.Point{X: full, Y: top}, vector.Point{X: full, Y: opened})
	}
	p.both(thin, vector.Point{X: full, Y: opened}, vector.Point{X: pilot, Y: opened}, vector.Point{X: pilot, Y: bottom}, vector.Point{X: min(p.deeper(x.TD), pilot), Y: bottom})
}

// deeper returns the radius of the hole that goes on below a depth, none at the bottom.
func (p *paper) deeper(md float64) (radius float64) {
	for i := range p.Sections {
		if x := &p.Sections[i]; x.OK && p.phase(i) <= worked && x.Start <= md+together && x.TD > md+together {
			radius = max(radius, p.holeAt(i, md+2*together))
		}
	}
	return radius
}

// waves returns a wavy line down from one height to another.
func waves(x, from, to float64) (points []vector.Point) {
	const length, depth, steps = 3.2, 0.35, 6.0 // steps to a wave
	for y := from; y < to; y += length / steps {
		points = append(points, vector.Point{X: x + depth*(1-math.Cos(2*math.Pi*(y-from)/length)), Y: y})
	}
	return append(points, vector.Point{X: x, Y: to})
}

// cements fills the annulus of every string that is cemented, from the planned top to the shoe.
func (p *paper) cements() {
	for i := range p.Sections {
		x := &p.Sections[i]
		if !x.String || !(x.Cement > 0) || p.phase(i) > worked {
			continue
		}
		top := max(x.Cement, p.Datum.Mudline)
		ends := append(p.changes(top, x.Shoe), x.Shoe)
		for _, end := range ends {
			inner := p.radius[i]
			if end <= x.Top { // round the pipe that a liner is run on
				inner = pipeRadius
			}
			if outer, ok := p.outer(i, (top+end)/2); ok {
				p.ring(inner, outer, p.y(top), p.y(end), vector.Light, vector.Stroke{})
			}
			top = end
		}
	}
}

// changes returns the depths between two at which something begins or ends.
func (p *paper) changes(from, to float64) (depths []float64) {
	for i := range p.Sections {
		x := &p.Sections[i]
		if !x.OK {
			continue
		}
		for _, md := range [...]float64{x.Start, x.Opened, x.TD, x.Top, x.Shoe} {
			if md > from && md < to {
				depths = append(depths, md)
			}
		}
	}
	slices.Sort(depths)
	return slices.Compact(depths)
}

// water draws the surface of the sea.
func (p *paper) water() {
	if !(p.Datum.MSL > 0) {
		return
	}
	const length, height = 6.0, 0.5
	var points []vector.Point
	for x := p.left; x <= p.right; x += length / 8 {
		points = append(points, vector.Point{X: x, Y: p.y(p.Datum.MSL) + height*math.Sin(2*math.Pi*(x-p.left)/length)})
	}
	p.to.Polyline(points, vector.Stroke{Width: 0.25, Grey: vector.Dark})
}
