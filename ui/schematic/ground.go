package schematic

import "borewalk/ui/canvas"

// ground draws the rock, the holes drilled into it and, dotted, those still to be drilled.
func (d *drawing) ground() {
	for row := d.mudline + 1; row < d.r.H(); row++ {
		d.r.HLine(0, row, d.r.W(), d.Glyphs.Rock, canvas.Rock)
	}
	for i := range d.Sections {
		switch d.phase(i) {
		case set, worked:
			d.drilled(i)
		case later:
			d.outline(i)
		}
	}
}

// drilled opens the hole of a section: full size as far as it was opened, then the pilot hole.
func (d *drawing) drilled(i int) {
	x := &d.Sections[i]
	opened := d.scale.Row(x.Opened)
	washed := x.Washout > 0 && !x.Filled && (d.phase(i) == worked || !x.String)
	for row := d.scale.Row(x.Start) + 1; row <= d.scale.Row(x.TD); row++ {
		open := d.hole(i)
		if row > opened && x.Bit < x.Hole {
			open = d.pilot(i)
		}
		d.across(row, open, ' ', canvas.Plain)
		if washed {
			d.both(row, open+1, d.Glyphs.Washout, d.Glyphs.Washout, canvas.Rock)
		}
	}
}

// outline dots the place of a string still to come, in the rock that its section will drill.
func (d *drawing) outline(i int) {
	x := &d.Sections[i]
	for row := d.scale.Row(x.Start) + 1; row <= d.scale.Row(x.TD); row++ {
		d.both(row, d.wall[i], d.Glyphs.WallLater, d.Glyphs.WallLater, canvas.Faint)
	}
}
