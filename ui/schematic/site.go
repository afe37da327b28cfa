package schematic

import "borewalk/ui/canvas"

// site draws what stands above the well: rotary, water, the riser with the BOP or the bare drill string, the seabed and
// the wellhead.
func (d *drawing) site() {
	g, surface := &d.Glyphs, d.scale.Row(d.Datum.MSL)
	if surface > 0 {
		d.r.HLine(0, surface, d.r.W(), g.Sea, canvas.Sea)
	}
	d.r.HLine(0, d.mudline, d.r.W(), g.Seabed, canvas.Rock)
	d.wellhead()
	if d.riserRun() {
		d.riserAndStack()
	} else {
		d.bareString()
	}
	if d.mudline > 0 {
		d.across(0, d.riser+1, g.Horizontal, canvas.Steel)
		d.r.Put(d.axis, 0, g.Rotary, canvas.Steel)
	}
	d.names(surface)
}

// riserRun reports whether returns go to the rig in the state drawn.
func (d *drawing) riserRun() bool {
	if at := d.at(); at != nil {
		return at.Stack > 0
	}
	for i := range d.Sections {
		if d.Sections[i].Riser && (d.Whole || i == d.Section) {
			return true
		}
	}
	return false
}

func (d *drawing) riserAndStack() {
	g, top := &d.Glyphs, d.stackRow()
	for row := 1; row < top && !(d.State != nil && d.State.Gone()); row++ {
		d.across(row, d.riser, ' ', canvas.Plain)
		d.both(row, d.riser, g.WallSet, g.WallSet, canvas.Steel)
	}
	for row := max(top, 1); row < d.stackFoot(); row++ {
		d.across(row, d.stack-1, g.Stack, canvas.Steel)
		d.both(row, d.stack, g.StackLeft, g.StackRight, canvas.Steel)
	}
}

// stackRow returns the row on which the stack begins.
func (d *drawing) stackRow() int {
	row := d.scale.Row(d.Datum.BOPTop)
	if at := d.at(); at != nil && at.Stack < d.Datum.Wellhead {
		row = d.scale.Row(at.Stack - (d.Datum.Wellhead - d.Datum.BOPTop))
	}
	return min(max(row, 1), d.mudline-1)
}

// stackFoot returns the row below the stack: the seabed's, unless it is on its way down.
func (d *drawing) stackFoot() int {
	if at := d.at(); at != nil && at.Stack < d.Datum.Wellhead {
		return min(max(d.scale.Row(at.Stack), d.stackRow()+1), d.mudline)
	}
	return d.mudline
}

// wellhead draws the row of the seabed between the outermost and the innermost string that are landed there, each with
// its hanger, and the bore inside them.
func (d *drawing) wellhead() {
	widest, bore := d.landedBetween()
	if widest < 0 {
		return
	}
	d.across(d.mudline, widest, d.Glyphs.Wellhead, canvas.Steel)
	d.across(d.mudline, bore, ' ', canvas.Plain)
	for i := range d.Sections {
		if d.landed(i) {
			d.both(d.mudline, d.wall[i], d.Glyphs.Landed, d.Glyphs.Landed, canvas.Steel)
		}
	}
}

// landedBetween returns the outermost and the innermost wall of the strings landed in the wellhead, -1 and no bore where
// there is none.
func (d *drawing) landedBetween() (widest, innermost int) {
	widest, innermost = -1, 0
	for i := range d.Sections {
		if !d.landed(i) {
			continue
		}
		if widest < 0 || d.wall[i] < innermost {
			innermost = d.wall[i]
		}
		widest = max(widest, d.wall[i])
	}
	return widest, innermost
}

// landed reports whether a section's string hangs in the wellhead in the state drawn.
func (d *drawing) landed(i int) bool {
	x := &d.Sections[i]
	return d.phase(i) <= worked && x.String && !hungDeep(d.Datum, x) && !d.moved(i)
}

// names writes at the right edge, where there is room, what the rows above the ground are.
func (d *drawing) names(surface int) {
	if !d.wide || d.mudline == 0 {
		return
	}
	name := func(row, used int, text string) {
		if x := d.r.W() - len(text) - 1; x > d.axis+used {
			d.r.Text(x, row, " "+text, canvas.Plain)
		}
	}
	widest, _ := d.landedBetween()
	name(d.mudline, widest, "seabed")
	if d.riserRun() {
		name(d.stackRow(), d.stack, "BOP")
	}
	used := d.riser
	if d.closed() {
		used += lineWidth
	}
	name(surface, used, "sea")
	name(0, d.riser+1, "rotary")
}
