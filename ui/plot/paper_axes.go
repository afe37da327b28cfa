package plot

import (
	"borewalk/calc"
	"borewalk/ui/vector"
)

func gridStroke() vector.Stroke { return vector.Stroke{Width: 0.1, Grey: vector.Light} }

func markStroke() vector.Stroke {
	return vector.Stroke{Width: 0.15, Grey: vector.Dark, Dash: []float64{0.4, 0.8}}
}

// drawDown draws the panels beside each other over an axis that runs down, with the names of the marks at the right.
func (p *paper) drawDown(foot float64) {
	const spacing, tick = 9.0, 1.2 // of round numbers down the axis; and its sign
	top := paperHead + paperDigits + paperRim
	ticks := p.Ticks(p.from, p.to, max(2, int((foot-top)/spacing)), p.Along)
	side := p.widest(ticks) + tick + paperRim
	names := p.markWidth()
	each := (p.w - side - names - paperGap*float64(len(p.panels)-1)) / float64(len(p.panels))
	for i := range p.panels {
		f := &frame{&p.panels[i], side + (each+paperGap)*float64(i), top, each, foot - top}
		for _, t := range ticks {
			y := f.at(t.SI, f.low).Y
			vector.Line(p.on, f.x-tick, y, f.x+f.w, y, gridStroke())
			if i == 0 {
				right := numbers()
				right.Align = vector.Right
				p.on.Text(f.x-tick-paperRim/2, y, t.Label, right)
			}
		}
		p.topNumbers(f)
		p.marksAcross(f)
		p.framed(f, i)
	}
	last := &frame{&p.panels[len(p.panels)-1], p.w - names - each, top, each, foot - top}
	p.markNamesBeside(last, names)
}

// drawAlong draws the panels below each other over an axis that runs to the right, with the names of the marks above.
func (p *paper) drawAlong(foot float64) {
	const spacing = 18.0 // of round numbers along the axis
	const high = 9.0     // and of those up a panel
	top, bottom := 0.0, foot-paperDigits-paperHead
	if len(p.inRange()) > 0 {
		top = paperDigits
	}
	each := (bottom - top - paperHead*float64(len(p.panels))) / float64(len(p.panels))
	values := make([][]Tick, len(p.panels))
	side := 0.0
	for i := range p.panels {
		values[i] = p.panels[i].ticks(max(2, int(each/high)), &p.ChartOptions)
		side = max(side, p.widest(values[i])+2*paperRim)
	}
	along := p.Ticks(p.from, p.to, max(2, int((p.w-side)/spacing)), p.Along)
	for i := range p.panels {
		f := &frame{&p.panels[i], side, top + paperHead + (each+paperHead)*float64(i), p.w - side - 2*paperRim, each}
		right := numbers()
		right.Align = vector.Right
		for _, t := range values[i] {
			y := f.at(f.from, t.SI).Y
			vector.Line(p.on, f.x, y, f.x+f.w, y, gridStroke())
			p.on.Text(f.x-paperRim, y, t.Label, right)
		}
		for _, t := range along {
			x := f.at(t.SI, f.low).X
			vector.Line(p.on, x, f.y, x, f.y+f.h, gridStroke())
		}
		p.marksAcross(f)
		p.framed(f, i)
		if i == 0 {
			p.markNamesAbove(f)
		}
		if i == len(p.panels)-1 {
			p.spaced(along, f.x, f.w, bottom+paperDigits/2, func(t Tick) float64 { return f.at(t.SI, f.low).X })
			end := numbers()
			end.Align = vector.Right
			p.on.Text(f.x+f.w, bottom+paperDigits+paperHead/2, p.axisName(), end)
		}
	}
}

// framed draws the curves of a panel, the line round it, and above it what it shows.
func (p *paper) framed(f *frame, i int) {
	p.curves(f, p.pens[i])
	p.on.Polyline([]vector.Point{{X: f.x, Y: f.y}, {X: f.x + f.w, Y: f.y}, {X: f.x + f.w, Y: f.y + f.h}, {X: f.x, Y: f.y + f.h}, {X: f.x, Y: f.y}}, vector.Stroke{Width: 0.25})
	bold, at := numbers(), f.y-paperHead/2
	bold.Bold = true
	if f.down {
		at -= paperDigits + paperRim
	}
	text := p.heading(f.panel, false)
	if f.down && i == 0 {
		text += ", " + p.axisName()
	}
	p.on.Text(f.x, at, vector.Fit(p.on, text, bold, f.w), bold)
}

// topNumbers writes the values above a panel, and lines down from them.
func (p *paper) topNumbers(f *frame) {
	const spacing = 16.0
	ticks := f.ticks(max(2, int(f.w/spacing)), &p.ChartOptions)
	for _, t := range ticks {
		x := f.at(f.from, t.SI).X
		vector.Line(p.on, x, f.y, x, f.y+f.h, gridStroke())
	}
	p.spaced(ticks, f.x, f.w, f.y-paperDigits/2, func(t Tick) float64 { return f.at(f.from, t.SI).X })
}

// spaced writes numbers beside each other, those that have room.
func (p *paper) spaced(ticks []Tick, left, width, y float64, x func(Tick) float64) {
	used := left - paperRim
	for _, t := range ticks {
		half := p.on.Width(t.Label, numbers()) / 2
		at := max(left+half, min(x(t), left+width-half))
		if at-half >= used {
			middle := numbers()
			middle.Align = vector.Middle
			p.on.Text(at, y, t.Label, middle)
			used = at + half + paperRim
		}
	}
}

// widest returns the width of the widest label.
func (p *paper) widest(ticks []Tick) (width float64) {
	for _, t := range ticks {
		width = max(width, p.on.Width(t.Label, numbers()))
	}
	return width
}

// marksAcross draws the line of each mark across a panel.
func (p *paper) marksAcross(f *frame) {
	for _, m := range p.inRange() {
		vector.Line(p.on, f.at(m.At, f.low).X, f.at(m.At, f.low).Y, f.at(m.At, f.high).X, f.at(m.At, f.high).Y, markStroke())
	}
}

// markText is what stands at a mark: its name, and its place on an axis that runs down.
func (p *paper) markText(m calc.ChartMark) string { return m.Name + "  " + p.Place(m.At) }

// markWidth returns the room that the names of marks take at the right.
func (p *paper) markWidth() (width float64) {
	const leader, most = 5.0, 0.3 // of the width of the drawing
	for _, m := range p.inRange() {
		width = max(width, leader+p.on.Width(p.markText(m), numbers()))
	}
	return min(width+paperRim, p.w*most)
}

// markNamesBeside writes the names of the marks at the right of the last panel.
func (p *paper) markNamesBeside(f *frame, width float64) {
	const leader = 5.0
	marks := p.inRange()
	wanted := make([]float64, len(marks))
	for i, m := range marks {
		wanted[i] = f.at(m.At, f.low).Y
	}
	places, ok := vector.Spread(wanted, numbers().Height(), f.y, f.y+f.h)
	for i, m := range marks {
		if ok[i] {
			x := f.x + f.w
			p.on.Polyline([]vector.Point{{X: x, Y: wanted[i]}, {X: x + leader - paperRim, Y: places[i]}}, vector.Stroke{Width: 0.1, Grey: vector.Mid})
			p.on.Text(x+leader, places[i], vector.Fit(p.on, p.markText(m), numbers(), width-leader), numbers())
		}
	}
}

// markNamesAbove writes the names of the marks above the first panel, those that have room.
func (p *paper) markNamesAbove(f *frame) {
	var names []Tick
	for _, m := range p.inRange() {
		names = append(names, Tick{m.At, m.Name})
	}
	p.spaced(names, f.x, f.w, paperDigits/2, func(t Tick) float64 { return f.at(t.SI, f.low).X })
}
