package schematic

import (
	"borewalk/calc"
	"borewalk/ui/canvas"
)

// hangsDeep is the depth in m below the mudline from which on the top of a string counts as hung in the string outside
// it. Housings, shoulders and hangers in the wellhead end a few metres from the seabed.
const hangsDeep = 20

// hungDeep reports whether a string begins down in the well and not in the wellhead.
func hungDeep(datum calc.Datum, x *calc.SketchSection) bool {
	return x.String && (x.Liner || x.Top > datum.Mudline+hangsDeep)
}

// strings draws walls first, then hangers and shoes over them, so that no wall hides an end.
func (d *drawing) strings() {
	for _, draw := range []func(int){d.walls, d.hanger, d.shoe} {
		for i := range d.Sections {
			if x := &d.Sections[i]; x.String && d.phase(i) <= worked {
				draw(i)
			}
		}
	}
	for i := range d.Sections {
		d.size(i)
	}
}

// top returns the row on which a string begins, the mudline's for one hung in the wellhead.
func (d *drawing) top(i int) int {
	if d.moved(i) {
		return d.scale.Row(d.Sections[i].Top)
	}
	if x := &d.Sections[i]; hungDeep(d.Datum, x) {
		return max(d.scale.Row(x.Top), d.mudline+1)
	}
	return d.mudline
}

func (d *drawing) style(i int) canvas.Style {
	switch d.phase(i) {
	case worked:
		return canvas.Planned
	case later:
		return canvas.Faint
	}
	return canvas.Steel
}

func (d *drawing) walls(i int) {
	wall := d.Glyphs.WallSet
	if d.phase(i) == worked && d.State == nil { // at a job it has been run
		wall = d.Glyphs.WallPlanned
	}
	for row := d.top(i) + 1; row < d.scale.Row(d.Sections[i].Shoe); row++ {
		d.both(row, d.wall[i], wall, wall, d.style(i))
	}
}

// hanger draws the top of a liner, reaching out to the string that it hangs in.
func (d *drawing) hanger(i int) {
	x := &d.Sections[i]
	if !hungDeep(d.Datum, x) || d.moved(i) {
		return
	}
	row, g := d.top(i), &d.Glyphs
	if host, ok := d.host(i); ok {
		for column := d.wall[i] + 1; column < host; column++ {
			d.both(row, column, g.Horizontal, g.Horizontal, d.style(i))
		}
		d.both(row, host, g.HostLeft, g.HostRight, canvas.Steel)
	}
	d.both(row, d.wall[i], g.HangerLeft, g.HangerRight, d.style(i))
}

// host returns the wall next outside the top of a string, and false where there is none.
func (d *drawing) host(i int) (column int, ok bool) {
	row := d.top(i)
	for j := range d.Sections {
		x := &d.Sections[j]
		if j == i || !x.String || d.phase(j) > worked || d.wall[j] <= d.wall[i] {
			continue
		}
		if d.top(j) < row && row < d.scale.Row(x.Shoe) && (!ok || d.wall[j] < column) {
			column, ok = d.wall[j], true
		}
	}
	return column, ok
}

func (d *drawing) shoe(i int) {
	d.both(d.scale.Row(d.Sections[i].Shoe), d.wall[i], d.Glyphs.ShoeLeft, d.Glyphs.ShoeRight, d.style(i))
}

// size writes the size of a string beside its shoe, that of a hole without string beside its bottom, where there is room
// up to the right edge.
func (d *drawing) size(i int) {
	x := &d.Sections[i]
	if !d.wide || d.Size == nil || !x.OK || d.State != nil && i == d.Section { // there the annulus is
		return
	}
	row, at, text := d.scale.Row(x.Shoe), d.axis+d.wall[i]+2, d.Size(x.OD)
	if !x.String {
		row, at, text = d.scale.Row(x.TD), at+1, d.Size(x.Hole)+" hole"
	}
	text = d.Glyphs.Translate(text)
	if row > d.mudline && at+canvas.Width(text) <= d.r.W() {
		d.r.Text(at-1, row, " "+text+" ", d.style(i))
	}
}
