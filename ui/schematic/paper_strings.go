package schematic

import (
	"borewalk/ui/vector"
)

// wallStroke is how the wall of a string is drawn in a phase; the width is the same, the dashes tell.
func wallStroke(ph phase) vector.Stroke {
	switch ph {
	case worked:
		return vector.Stroke{Width: wallWidth, Dash: []float64{2.4, 1}}
	case later:
		return vector.Stroke{Width: wallWidth / 2, Grey: vector.Mid, Dash: []float64{0.5, 0.9}}
	}
	return vector.Stroke{Width: wallWidth}
}

// strings draws the strings: walls first, then what ends them.
func (p *paper) strings() {
	for i := range p.Sections {
		if x := &p.Sections[i]; x.String {
			p.both(wallStroke(p.phase(i)), vector.Point{X: p.radius[i], Y: p.stringTop(i)}, vector.Point{X: p.radius[i], Y: p.y(x.Shoe)})
		}
	}
	for i := range p.Sections {
		if x := &p.Sections[i]; x.String && p.phase(i) <= worked {
			p.shoe(i)
			p.liner(i)
		}
	}
}

// stringTop returns the height at which a string begins, the mudline's for one hung in the wellhead.
func (p *paper) stringTop(i int) float64 {
	if x := &p.Sections[i]; hungDeep(p.Datum, x) {
		return p.y(x.Top)
	}
	return p.y(p.Datum.Mudline)
}

// shoe draws the shoe of a string: black where it is set, white where it is to be.
func (p *paper) shoe(i int) {
	const size = 2.2
	fill := vector.Black
	if p.phase(i) == worked {
		fill = vector.White
	}
	x, y := p.radius[i], p.y(p.Sections[i].Shoe)
	for _, side := range [...]float64{-1, 1} {
		p.to.Area([]vector.Point{{X: p.axis + side*x, Y: y - size}, {X: p.axis + side*x, Y: y}, {X: p.axis + side*(x+size), Y: y}}, fill, vector.Stroke{Width: 0.2})
	}
}

// liner draws the top of a string that hangs in another, reaching out to it.
func (p *paper) liner(i int) {
	x := &p.Sections[i]
	if !hungDeep(p.Datum, x) {
		return
	}
	const high = 1.4
	if outer, ok := p.outer(i, x.Top+together); ok {
		p.ring(p.radius[i], outer, p.y(x.Top), p.y(x.Top)+high, vector.Mid, vector.Stroke{Width: 0.2})
	}
}

// head draws what stands above the well: rotary, riser and BOP or the bare drill string, and the wellhead.
func (p *paper) head() {
	mudline := p.y(p.Datum.Mudline)
	if mudline < p.top+2*p.row { // no water that it could stand in
		return
	}
	riser := p.riserRadius()
	wellhead := mudline - p.row*0.6
	if p.riserRun() {
		stack := min(p.y(p.Datum.BOPTop), wellhead-p.row)
		vector.Box(p.to, p.axis-riser, p.top, 2*riser, stack-p.top, vector.White, vector.Stroke{})
		p.both(vector.Stroke{Width: 0.5}, vector.Point{X: riser, Y: p.top}, vector.Point{X: riser, Y: stack})
		p.stack(riser, stack, wellhead)
	} else {
		vector.Box(p.to, p.axis-pipeRadius, p.top, 2*pipeRadius, wellhead-p.top, vector.White, vector.Stroke{})
		p.both(vector.Stroke{Width: 0.25}, vector.Point{X: pipeRadius, Y: p.top}, vector.Point{X: pipeRadius, Y: wellhead})
	}
	vector.Box(p.to, p.axis-p.floor(), p.top-0.8, 2*p.floor(), 0.8, vector.Black, vector.Stroke{})
	if widest := p.widestLanded(); widest > 0 {
		p.ring(2*pipeRadius, widest+1, wellhead, mudline, vector.Mid, vector.Stroke{Width: 0.2})
	}
}

// riserRadius is narrower than what hangs in the wellhead, so that the stack stands on it.
func (p *paper) riserRadius() float64 { return p.widestLanded() * 0.6 }

// floor is half the width of the rotary's floor.
func (p *paper) floor() float64 { return p.riserRadius() + 4 }

// stack draws the BOP between two heights, wider and narrower by turns as its bodies are.
func (p *paper) stack(riser, top, bottom float64) {
	const bodies = 3
	each := (bottom - top) / bodies
	for k := range bodies {
		half := riser + 2.5
		if k%2 == 0 {
			half = riser + 1
		}
		vector.Box(p.to, p.axis-half, top+each*float64(k), 2*half, each, vector.Light, vector.Stroke{Width: 0.2})
	}
}

// widestLanded returns the radius of the widest string that hangs in the wellhead; with none, that of the bore.
func (p *paper) widestLanded() float64 {
	widest := float64(boreRadius)
	for i := range p.Sections {
		if p.landed(i) {
			widest = max(widest, p.radius[i])
		}
	}
	return widest
}
