package plot

import "borewalk/ui/canvas"

// depthLabels returns the depths to write at the left, the more important first: shoes, then the ends, then round ones.
func (d *drawing) depthLabels() []Tick {
	var labels []Tick
	if depth := d.w.Depth; depth != nil {
		for _, s := range d.w.Shoes {
			if s.TVD >= d.top && s.TVD <= d.bottom {
				labels = append(labels, Tick{s.TVD, depth(s.TVD)})
			}
		}
		labels = append(labels, Tick{d.top, depth(d.top)}, Tick{d.bottom, depth(d.bottom)})
	}
	return append(labels, d.w.DepthTicks...)
}

// sideWidth returns the columns for the depths and the axis, the axis alone where the depths would take more than half.
func (d *drawing) sideWidth(width int) int {
	side := 0
	for _, l := range d.depthLabels() {
		side = max(side, canvas.Width(d.g.Translate(l.Label)))
	}
	if side+1 > width/2 {
		return 1
	}
	return side + 1
}

func (d *drawing) depthAxis() {
	digits := d.side.W() - 1
	d.side.VLine(digits, 0, d.side.H(), d.g.Vertical, canvas.Plain)
	taken := make([]bool, d.r.H())
	for _, l := range d.depthLabels() {
		row, ok := d.row(l.SI)
		if !ok || taken[row] || digits == 0 {
			continue
		}
		taken[row] = true
		d.side.TextRight(0, row, digits, d.g.Translate(l.Label), canvas.Plain)
		d.side.Put(digits, row, d.g.TeeRight, canvas.Plain)
	}
}

// densityAxis writes the ticks that have room above the plot, and under them the line of the axis.
func (d *drawing) densityAxis() {
	ticks := d.w.Ticks
	if len(ticks) == 0 && d.w.EMW != nil {
		ticks = []Tick{{d.low, d.w.EMW(d.low)}, {d.high, d.w.EMW(d.high)}}
	}
	d.head.HLine(0, 1, d.head.W(), d.g.Horizontal, canvas.Plain)
	used := 0 // columns written so far, with a blank after them
	for _, t := range ticks {
		if !known(t.SI) {
			continue
		}
		text := d.g.Translate(t.Label)
		width, column := canvas.Width(text), d.column(t.SI)
		d.head.Put(column, 1, d.g.TeeDown, canvas.Plain)
		if at := max(min(column-width/2, d.head.W()-width), 0); at >= used {
			d.head.Text(at, 0, text, canvas.Plain)
			used = at + width + 1
		}
	}
}

// legend explains the letters that the plot shows, in words as long as there is room for; those that do not fit are left
// out, the last first.
func (d *drawing) legend(r canvas.Region) {
	signs := []struct {
		letter      rune
		long, short string
	}{
		{poreLetter, "pore", "pore"},
		{stabilityLetter, "stability", "stab"},
		{fractureLetter, "fracture", "frac"},
		{mudLetter, "mud", "mud"},
		{workedMudLetter, "mud, this section", "this"},
		{pumpedLetter, "circulating", "ECD"},
		{swabLetter, "swab", "swab"},
		{surgeLetter, "surge", "surge"},
		{crossingLetter, "two meet", "meet"},
		{testLetter, "shoe test", "test"},
		{seatUp, "seat from below", "seat up"},
		{seatDown, "seat from above", "down"},
	}
	write := func(gap string, short bool) (text string, all bool) {
		for _, sign := range signs {
			if !d.seen[sign.letter] {
				continue
			}
			word := sign.long
			if short {
				word = sign.short
			}
			more := text + string(sign.letter) + " " + word
			if canvas.Width(more) > r.W() {
				return text, false
			}
			text = more + gap
		}
		return text, true
	}
	text, all := write("   ", false)
	if !all {
		text, all = write("  ", true)
	}
	if !all {
		text, _ = write(" ", true)
	}
	r.Text(0, 0, text, canvas.Plain)
}
