package schematic

import (
	"slices"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// State is the well at one moment of a job, with fluids inside, around and below what is in the hole: at a cement job the string of
// the section being worked, at depth on the running string; otherwise the drill string.
type State struct {
	Job   *calc.Job
	Frame *calc.JobFrame                       // the moment of it
	RunTo float64                              // depth in m down to which the fluids inside stand in the running string, or the drill string
	Fill  func(fluid int) (rune, canvas.Style) // how a fluid of the job is drawn
}

// moving returns the depths to write in the margin: plugs, the level of the fluid inside when the string is not full, and the
// ends of the gas.
func (s *State) moving() (depths []float64) {
	for _, p := range s.Frame.Plugs {
		depths = append(depths, p.MD)
	}
	if s.Frame.Level > 0 {
		depths = append(depths, s.Frame.Level)
	}
	depths = append(depths, s.underway()...)
	for _, stand := range s.Frame.Annulus {
		if s.is(stand.Fluid, calc.GasRole) {
			depths = append(depths, stand.Top, stand.Bottom)
		}
	}
	return depths
}

// drilling reports whether the drill string is in the hole.
func (s *State) drilling() bool {
	if at := s.Frame.At; at != nil {
		return at.Shoe == 0
	}
	return s.Job.Kind != calc.CementJob
}

// is reports whether a fluid of the job has a role.
func (s *State) is(fluid int, role calc.JobRole) bool {
	return fluid >= 0 && fluid < len(s.Job.Fluids) && s.Job.Fluids[fluid].Role == role
}

// closed reports whether the stack is closed, with what stands in the riser apart from the well.
func (s *State) closed() bool { return len(s.Frame.Riser) > 0 }

// Gone reports whether the sea is where the riser was.
func (s *State) Gone() bool {
	return slices.ContainsFunc(s.Frame.Riser, func(stand calc.JobStand) bool { return s.is(stand.Fluid, calc.SeaRole) })
}

// atJob returns the well and the options for a job's picture in so many rows: what lies below the section being worked is not
// there yet, nor is its string while it is drilled, and in a low picture the strings that do not bound the annulus leave their rows
// to the fluids. A section without a string to be cemented is drawn without the job.
func atJob(s calc.Sketch, o Options, rows int) (calc.Sketch, Options) {
	if o.Section < 0 || o.Section >= len(s.Sections) || !s.Sections[o.Section].OK || !s.Sections[o.Section].String && !o.State.drilling() {
		o.State = nil
		return s, o
	}
	o.Whole = false
	s.Sections = slices.Clone(s.Sections[:o.Section+1])
	if o.State.drilling() && o.State.Frame.At == nil {
		s.Sections[o.Section].String = false
	}
	if rows < 2*footing {
		leaveOut(&s, o.Section)
	}
	s.Bottom = s.Datum.Mudline
	for i := range s.Sections {
		if x := &s.Sections[i]; x.OK {
			s.Bottom = max(s.Bottom, x.TD)
		}
	}
	return s, o
}

// leaveOut leaves out the strings outside the one that bounds the annulus of a section up to the wellhead.
func leaveOut(s *calc.Sketch, section int) {
	bounded := false
	for i := section - 1; i >= 0; i-- {
		x := &s.Sections[i]
		if bounded {
			*x = calc.SketchSection{Name: x.Name}
			continue
		}
		if bounded = x.OK && x.String && !hungDeep(s.Datum, x); bounded {
			x.Start = s.Datum.Mudline
		}
	}
}

// annulusWidth is the room in columns between the string that is cemented and what is outside it.
const annulusWidth = 2

// jobColumns gives the room to the string of one section and its annulus; the strings outside may share a column. The hole of a
// section that is drilled is as wide, with the drill string in it.
func jobColumns(s calc.Sketch, section int, drilling, wide bool, width int) columns {
	half := max(width-1, 0) / 2
	c := columns{wide: wide, axis: half, wall: make([]int, len(s.Sections)), gap: annulusWidth, most: max(half-1, 0)}
	inner, pitch := 2, 1
	if wide {
		inner, pitch = 3, 2
	}
	c.wall[section] = min(inner, c.most)
	if drilling {
		c.wall[section] = min(inner+annulusWidth, c.most)
	}
	next := inner + annulusWidth + 1
	c.riser = min(next, max(half-2, 0))
	c.stack = c.riser + 1
	for _, i := range slices.Backward(nested(s)) {
		if i != section {
			c.wall[i] = min(next, c.most)
			next += pitch
		}
	}
	return c
}

// fluids fills the running string, the string, the annulus and the pocket below the shoe.
func (d *drawing) fluids() {
	if d.State == nil {
		return
	}
	f, bottom := d.State.Frame, d.scale.Row(d.bottom())
	inside, annulus, between, pocket, riser := d.byRow(f.Inside), d.byRow(f.Annulus), d.byRow(f.Between), d.byRow(f.Pocket), d.byRow(f.Riser)
	for row := 1; row < d.r.H(); row++ {
		if row > bottom {
			d.fill(row, 0, d.outer(row), pocket[row])
			continue
		}
		if d.scale.MD(row) < f.Level {
			inside[row] = none
		}
		if d.aboveLanded(row) {
			d.fill(row, 0, d.outer(row), annulus[row])
			continue
		}
		if d.closed() && row <= d.stackRow() {
			d.overStack(row, inside[row], annulus[row], riser[row])
			continue
		}
		d.fill(row, d.inner(row)+1, d.outer(row), annulus[row])
		d.bore(row, inside[row])
		if d.inner(row) > 1 && row <= d.scale.Row(d.State.RunTo) {
			d.fill(row, 2, d.wall[d.Section]-1, between[row]) // round an inner string
		}
	}
}

// bottom returns the depth down to which fluids stand inside and around the string.
func (d *drawing) bottom() float64 {
	if x := &d.Sections[d.Section]; x.String {
		return x.Shoe
	}
	return d.State.RunTo
}

// closed reports whether a closed stack is drawn.
func (d *drawing) closed() bool { return d.State != nil && d.State.closed() && d.riserRun() }

// overStack fills a row above a closed stack: the string, the riser round it, and beside it the line in which what comes out of the
// annulus goes up. On the row of the stack nothing but the string passes.
func (d *drawing) overStack(row, inside, line, riser int) {
	if row < d.stackRow() {
		open := d.riser - 1
		if d.State.Gone() {
			open = d.riser
		}
		d.fill(row, 0, open, riser)
		d.line(row, line)
	}
	if !d.State.Frame.Parted {
		d.bore(row, inside)
	}
}

// lineWidth is the room in columns that the choke line takes beside the riser, with its outer wall.
const lineWidth = 2

// line draws the choke line beside the riser.
func (d *drawing) line(row, fluid int) {
	if fluid == none {
		return
	}
	ch, style := d.State.Fill(fluid)
	d.r.Put(d.axis+d.riser+1, row, ch, style)
	d.r.Put(d.axis+d.riser+lineWidth, row, d.Glyphs.WallSet, canvas.Steel)
}

// bore fills a row inside the running string, with its wall, or inside the string below it.
func (d *drawing) bore(row, fluid int) {
	if row > d.scale.Row(d.State.RunTo) {
		d.across(row, d.within(row), ' ', canvas.Plain)
		d.fill(row, 0, d.within(row), fluid)
		return
	}
	d.across(row, 0, ' ', canvas.Plain)
	d.fill(row, 0, 0, fluid)
	d.both(row, 1, d.Glyphs.WallSet, d.Glyphs.WallSet, canvas.Planned)
}

// within returns the outermost column inside what the fluid stands in.
func (d *drawing) within(row int) int {
	if row <= d.scale.Row(d.State.RunTo) {
		return 0
	}
	return max(d.wall[d.Section]-1, 0)
}

// inner returns the column of the wall that the annulus lies around.
func (d *drawing) inner(row int) int {
	if d.Sections[d.Section].String && row > d.top(d.Section) {
		return d.wall[d.Section]
	}
	return 1 // the running string
}

// outer returns the outermost column that is open outside the string on a row: up to the next string, the wall of the hole,
// or the riser; none in the sea, nor in the wellhead, where the string's own hanger is.
func (d *drawing) outer(row int) int {
	switch {
	case row == d.mudline:
		if _, innermost := d.landedBetween(); d.State.drilling() {
			return innermost - 1
		}
		return none
	case row < d.mudline && d.riserRun():
		return d.riser - 1
	case row < d.mudline:
		return none
	}
	open := none
	for i := range d.Sections {
		x := &d.Sections[i]
		if !x.OK || row <= d.scale.Row(x.Start) || row > d.scale.Row(x.TD) {
			continue
		}
		hole := d.hole(i)
		if x.Bit < x.Hole && row > d.scale.Row(x.Opened) {
			hole = d.pilot(i)
		}
		open = max(open, hole)
	}
	for i := range d.Sections {
		if x := &d.Sections[i]; i != d.Section && x.OK && x.String && d.top(i) < row && row <= d.scale.Row(x.Shoe) {
			open = min(open, d.wall[i]-1)
		}
	}
	return open
}

// none stands for no fluid, as in an empty length of pipe, and for no column.
const none = -1

// byRow returns the fluid on each row. A stand too short for a row takes one from another that has more.
func (d *drawing) byRow(stands []calc.JobStand) []int {
	rows := make([]int, d.r.H())
	count := map[int]int{}
	for row := range rows {
		rows[row] = none
		if row > d.scale.Row(d.Bottom) {
			continue
		}
		md := d.lookAt(stands, row)
		if i := slices.IndexFunc(stands, func(s calc.JobStand) bool { return s.Top <= md && md <= s.Bottom }); i >= 0 {
			rows[row] = stands[i].Fluid
			count[rows[row]]++
		}
	}
	for _, s := range stands {
		row := d.scale.Row((s.Top + s.Bottom) / 2)
		if was := rows[row]; s.Fluid != none && s.Bottom > s.Top && count[s.Fluid] == 0 && count[was] > 1 {
			rows[row] = s.Fluid
			count[was], count[s.Fluid] = count[was]-1, 1
		}
	}
	return rows
}

// lookAt returns the depth at which a row's fluid is read: the row's own, or the end of the stands where that is on the row.
func (d *drawing) lookAt(stands []calc.JobStand, row int) float64 {
	md := d.scale.MD(row)
	if len(stands) == 0 {
		return md
	}
	if top := stands[0].Top; d.scale.Row(top) == row {
		md = max(md, top)
	}
	if bottom := stands[len(stands)-1].Bottom; d.scale.Row(bottom) == row {
		md = min(md, bottom)
	}
	return md
}

// fill draws a fluid between two columns on both sides of the axis.
func (d *drawing) fill(row, from, to, fluid int) {
	if fluid == none {
		return
	}
	ch, style := d.State.Fill(fluid)
	for column := from; column <= to; column++ {
		d.both(row, column, ch, ch, style)
	}
}

// plugs draws the plugs across what they move in.
func (d *drawing) plugs() {
	if d.State == nil {
		return
	}
	for _, p := range d.State.Frame.Plugs {
		row := max(d.scale.Row(p.MD), 1)
		d.across(row, d.within(row), d.Glyphs.Plug, canvas.Steel)
	}
}
