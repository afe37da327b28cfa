package plot

import (
	"borewalk/calc"
	"borewalk/ui/vector"
)

// Measures of a chart on paper, in mm.
const (
	paperGap    = 6.0 // between panels
	paperHead   = 4.5 // of the line that says what a panel shows
	paperDigits = 4.0 // of a line of numbers
	paperLine   = 4.0 // of the legend
	paperRim    = 1.0
)

// numbers is the type of the numbers and names of a chart.
func numbers() vector.Type { return vector.Type{Size: 7} }

// ChartDrawing returns a chart as a drawing of a size in mm: a panel for each kind of quantity, the axis that they share, marks, and
// the lines explained below. Where there is nothing to draw it is false.
func ChartDrawing(c calc.Chart, o ChartOptions, w, h float64) (vector.Drawing, bool) {
	d := &charting{Chart: c, ChartOptions: o}
	if !d.read() {
		return vector.Drawing{}, false
	}
	return vector.Drawing{W: w, H: h, Draw: func(to vector.Surface) {
		p := &paper{charting: d, on: to, w: w, h: h, pens: pens(d.panels)}
		foot := h - p.legend()
		if d.Down {
			p.drawDown(foot)
		} else {
			p.drawAlong(foot)
		}
	}}, true
}

// paper is one chart being drawn on paper.
type paper struct {
	*charting
	on   vector.Surface
	w, h float64
	pens [][]vector.Stroke // of each curve of each panel
}

// frame is where the curves of a panel are drawn, with its left upper corner.
type frame struct {
	*panel
	x, y, w, h float64
}

// at returns where a value at a place along the axis stands.
func (f *frame) at(place, value float64) vector.Point {
	along, across := (place-f.from)/(f.to-f.from), (value-f.low)/(f.high-f.low)
	if f.down {
		return vector.Point{X: f.x + f.w*across, Y: f.y + f.h*along}
	}
	return vector.Point{X: f.x + f.w*along, Y: f.y + f.h*(1-across)}
}

// pens chooses a stroke for each curve: limits are dashed, all others begin with whole lines, and no two of the first in a panel
// are alike.
func pens(panels []panel) (list [][]vector.Stroke) {
	whole := []vector.Stroke{{Width: 0.25}, {Width: 0.7}, {Width: 0.4, Dash: []float64{0.6, 0.8}}, {Width: 0.6, Grey: vector.Mid},
		{Width: 0.25, Dash: []float64{3, 0.8, 0.4, 0.8}}, {Width: 0.25, Dash: []float64{1, 1.4}}}
	dashed := []vector.Stroke{{Width: 0.5, Dash: []float64{4, 1.2}}, {Width: 0.35, Dash: []float64{1.6, 1}},
		{Width: 0.5, Dash: []float64{4, 1, 0.6, 1}}, {Width: 0.5, Grey: vector.Mid, Dash: []float64{4, 1.2}}, {Width: 0.25, Dash: []float64{6, 2}}}
	limits, others := 0, 0
	for i := range panels {
		var strokes []vector.Stroke
		for _, c := range panels[i].curves {
			if c.rank == upperLimit {
				strokes = append(strokes, dashed[limits%len(dashed)])
				limits++
			} else {
				strokes = append(strokes, whole[others%len(whole)])
				others++
			}
		}
		list = append(list, strokes)
	}
	return list
}

// curves draws the curves of a panel.
func (p *paper) curves(f *frame, strokes []vector.Stroke) {
	for k := range f.panel.curves {
		s := &f.panel.curves[k]
		if s.single {
			for _, at := range s.points {
				if known(at.At) && known(at.Value) {
					p.reading(f.at(at.At, at.Value), s.rank == upperLimit)
				}
			}
			continue
		}
		var line []vector.Point
		for _, at := range s.points {
			if known(at.At) && known(at.Value) {
				line = append(line, f.at(at.At, at.Value))
				continue
			}
			p.on.Polyline(line, strokes[k])
			line = nil
		}
		p.on.Polyline(line, strokes[k])
	}
}

// reading draws a single point: a diamond, hollow for a limit.
func (p *paper) reading(at vector.Point, limit bool) {
	const half = 1.0
	fill := vector.Black
	if limit {
		fill = vector.White
	}
	p.on.Area([]vector.Point{{X: at.X, Y: at.Y - half}, {X: at.X + half, Y: at.Y}, {X: at.X, Y: at.Y + half}, {X: at.X - half, Y: at.Y}}, fill, vector.Stroke{Width: 0.25})
}

// legend explains the lines at the foot of the drawing, on as many lines as it takes, and returns how high it is.
func (p *paper) legend() float64 {
	const sample, space, gap = 8.5, 1.2, 3.8
	type entry struct {
		x    float64
		line int
		s    *series
		pen  vector.Stroke
	}
	var entries []entry
	x, line := 0.0, 0
	for i := range p.panels {
		for k := range p.panels[i].curves {
			s := &p.panels[i].curves[k]
			width := sample + space + p.on.Width(s.name, numbers())
			if x > 0 && x+width > p.w {
				x, line = 0, line+1
			}
			entries = append(entries, entry{x, line, s, p.pens[i][k]})
			x += width + gap
		}
	}
	height := paperLine*float64(line+1) + paperRim
	for _, e := range entries {
		y := p.h - height + paperRim + paperLine*(float64(e.line)+0.5)
		if e.s.single {
			p.reading(vector.Point{X: e.x + sample/2, Y: y}, e.s.rank == upperLimit)
		} else {
			vector.Line(p.on, e.x, y, e.x+sample, y, e.pen)
		}
		p.on.Text(e.x+sample+space, y, vector.Fit(p.on, e.s.name, numbers(), p.w-e.x-sample-space), numbers())
	}
	return height
}
