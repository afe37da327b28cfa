package plot

import (
	"borewalk/ui/canvas"
)

// drawAlong draws the panels below each other over one axis that runs to the right, and reports whether a
// curve meets a limit.
func (d *charting) drawAlong(r canvas.Region) (met bool) {
	marks := d.inRange()
	head := 0
	if len(marks) > 0 || d.HasCursor {
		head = 1
	}
	const foot = 2 // the axis and its numbers
	rows := r.H() - head - foot
	panels := d.panels[:max(1, min(len(d.panels), rows/2))]
	values := make([][]Tick, len(panels))
	heights := make([]int, len(panels))
	side := 0
	for i := range panels {
		p := &panels[i]
		heights[i] = rows*(i+1)/len(panels) - rows*i/len(panels) - 1
		values[i] = p.ticks(max(2, heights[i]/2), &d.ChartOptions)
		for _, t := range values[i] {
			side = max(side, canvas.Width(t.Label))
		}
	}
	if side+1 > r.W()/2 {
		side = 0
	}
	y, x, width := head, side+1, r.W()-side-1
	for i := range panels {
		p := &panels[i]
		r.HLine(0, y, r.W(), d.Glyphs.Horizontal, canvas.Faint)
		p.draw(r.Sub(x, y+1, width, heights[i]), marks, &d.Glyphs)
		r.Text(x, y, " "+d.heading(p, p.met)+" ", canvas.Plain)
		met = met || p.met
		d.valueAxis(r.Sub(0, y+1, x, heights[i]), p, values[i])
		if d.HasCursor {
			d.cursor(p)
		}
		y += heights[i] + 1
	}
	d.runningAxis(r.Sub(x, y, width, foot), &panels[0])
	d.markNames(r.Sub(x, 0, width, head), &panels[0])
	return met
}

// valueAxis writes the values at the left of a panel.
func (d *charting) valueAxis(r canvas.Region, p *panel, ticks []Tick) {
	digits := r.W() - 1
	r.VLine(digits, 0, r.H(), d.Glyphs.Vertical, canvas.Plain)
	for _, t := range ticks {
		if row := r.H() - 1 - p.across(t.SI); digits > 0 && row >= 0 && row < r.H() {
			r.TextRight(0, row, digits, t.Label, canvas.Plain)
			r.Put(digits, row, d.Glyphs.TeeRight, canvas.Plain)
		}
	}
}

// runningAxis draws the axis below the panels, with its name at the right and its numbers below.
func (d *charting) runningAxis(r canvas.Region, p *panel) {
	r.HLine(0, 0, r.W(), d.Glyphs.Horizontal, canvas.Plain)
	used := 0 // columns written so far, with a blank after them
	for _, t := range d.Ticks(d.from, d.to, max(2, r.W()/9), d.Along) {
		column, width := p.along(t.SI), canvas.Width(t.Label)
		r.Put(column, 0, d.Glyphs.TeeDown, canvas.Plain)
		if at := max(min(column-width/2, r.W()-width), 0); at >= used {
			r.Text(at, 1, t.Label, canvas.Plain)
			used = at + width + 1
		}
	}
	if d.HasCursor {
		r.Put(p.along(d.Cursor), 0, d.Glyphs.Up, canvas.Focus)
	}
	name := " " + d.axisName() + " "
	if width := canvas.Width(name); width < r.W() {
		r.Text(r.W()-width, 0, name, canvas.Plain)
	}
}

// cursor draws the line of the present place where no curve stands.
func (d *charting) cursor(p *panel) {
	column := p.along(d.Cursor)
	for row := range p.r.H() {
		if column >= 0 && column < p.r.W() && p.cells[row*p.r.W()+column].rank <= shoeLine {
			p.r.Put(column, row, d.Glyphs.Vertical, canvas.Focus)
		}
	}
}

// markNames writes the names of the marks above the panels, those that have room, and points down at the cursor.
func (d *charting) markNames(r canvas.Region, p *panel) {
	taken := make([]bool, r.W()+1)
	fits := func(at, width int) bool {
		for i := max(at-1, 0); i < at+width+1 && i < len(taken); i++ {
			if taken[i] {
				return false
			}
		}
		return at >= 0 && at+width <= r.W()
	}
	take := func(at, width int) {
		for i := at; i < at+width; i++ {
			taken[i] = true
		}
	}
	if at := p.along(d.Cursor); d.HasCursor && fits(at, 1) {
		r.Put(at, 0, d.Glyphs.Down, canvas.Focus)
		take(at, 1)
	}
	for _, m := range d.inRange() {
		text := d.Glyphs.Translate(m.Name)
		width := canvas.Width(text)
		at := max(min(p.along(m.At)-width/2, r.W()-width), 0)
		if width > 0 && fits(at, width) {
			r.Text(at, 0, text, canvas.Steel)
			take(at, width)
		}
	}
}

// drawDown draws the panels beside each other over one axis that runs down, and reports whether a curve meets a
// limit.
func (d *charting) drawDown(r canvas.Region) (met bool) {
	const head = 3 // what it shows, the numbers, the axis
	labels := d.placeLabels(r.H() - head)
	side := 0
	for _, l := range labels {
		side = max(side, canvas.Width(l.Label))
	}
	if side+1 > r.W()/2 {
		side = 0
	}
	x := side + 1
	panels := d.panels[:max(1, min(len(d.panels), (r.W()-x)/leastColumns))]
	marks := d.inRange()
	for i := range panels {
		p := &panels[i]
		left, right := x+(r.W()-x)*i/len(panels), x+(r.W()-x)*(i+1)/len(panels)
		if i+1 < len(panels) {
			right-- // a line between them
		}
		at := r.Sub(left, 0, right-left, r.H())
		p.draw(at.Sub(0, head, at.W(), at.H()-head), marks, &d.Glyphs)
		met = met || p.met
		if i == 0 {
			d.lineNames(p)
			r.Text(1, 0, canvas.Clip(d.heading(p, false)+", "+d.axisName(), right-1), canvas.Plain)
		} else {
			r.VLine(left-1, 1, r.H()-1, d.Glyphs.Vertical, canvas.Faint)
			at.Text(0, 0, d.heading(p, false), canvas.Plain)
		}
		d.topAxis(at.Sub(0, 1, at.W(), 2), p)
	}
	d.placeAxis(r.Sub(0, head, x, r.H()-head), &panels[0], labels)
	return met
}

// topAxis writes the values above a panel.
func (d *charting) topAxis(r canvas.Region, p *panel) {
	r.HLine(0, 1, r.W(), d.Glyphs.Horizontal, canvas.Plain)
	used := 0
	for _, t := range p.ticks(max(2, r.W()/9), &d.ChartOptions) {
		column, width := p.across(t.SI), canvas.Width(t.Label)
		r.Put(column, 1, d.Glyphs.TeeDown, canvas.Plain)
		if at := max(min(column-width/2, r.W()-width), 0); at >= used {
			r.Text(at, 0, t.Label, canvas.Plain)
			used = at + width + 1
		}
	}
}

// placeLabels returns the places to write at the left, the more important first: marks, then the ends, then round ones.
func (d *charting) placeLabels(rows int) (labels []Tick) {
	for _, m := range d.inRange() {
		labels = append(labels, Tick{m.At, d.Place(m.At)})
	}
	labels = append(labels, Tick{d.from, d.Place(d.from)}, Tick{d.to, d.Place(d.to)})
	return append(labels, d.Ticks(d.from, d.to, max(2, rows/3), d.Along)...)
}

func (d *charting) placeAxis(r canvas.Region, p *panel, labels []Tick) {
	digits := r.W() - 1
	r.VLine(digits, 0, r.H(), d.Glyphs.Vertical, canvas.Plain)
	taken := make([]bool, r.H())
	for _, l := range labels {
		row := p.along(l.SI)
		if digits == 0 || row < 0 || row >= r.H() || taken[row] {
			continue
		}
		taken[row] = true
		r.TextRight(0, row, digits, l.Label, canvas.Plain)
		r.Put(digits, row, d.Glyphs.TeeRight, canvas.Plain)
	}
}

// lineNames writes each mark's name into its line, as far right as it hides no curve.
func (d *charting) lineNames(p *panel) {
	width := p.r.W()
	for _, m := range d.inRange() {
		text, row, run := " "+d.Glyphs.Translate(m.Name)+" ", p.along(m.At), 0
		if row < 0 || row >= p.r.H() {
			continue
		}
		for column := width - 1; column >= 0 && m.Name != ""; column-- {
			if run++; p.cells[row*width+column].rank > shoeLine {
				run = 0
			}
			if run == canvas.Width(text) {
				p.r.Text(column, row, text, canvas.Steel)
				for i := column; i < column+run; i++ {
					p.cells[row*width+i].rank = upperLimit // taken
				}
				break
			}
		}
	}
}
