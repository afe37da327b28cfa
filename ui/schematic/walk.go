package schematic

import (
	"slices"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// underway returns the depths of what is on its way in an operation: string ends, and the foot of the BOP.
func (s *State) underway() (depths []float64) {
	at := s.Frame.At
	if at == nil {
		return nil
	}
	for _, md := range [...]float64{at.Pipe, at.Shoe, at.Stack} {
		if md > 0 {
			depths = append(depths, md)
		}
	}
	return depths
}

// at returns where everything is in an operation, nil for another job or none.
func (d *drawing) at() *calc.WalkAt {
	if d.State == nil {
		return nil
	}
	return d.State.Frame.At
}

// reach cuts the hole of the section being worked to what is drilled of it, and brings its string to where it is. The scale is
// that of the whole section, so that nothing jumps while the operation goes on.
func (d *drawing) reach() {
	at := d.at()
	if at == nil {
		return
	}
	d.Sections = slices.Clone(d.Sections)
	x := &d.Sections[d.Section]
	pilot := x.TD - x.Opened
	x.TD = min(x.TD, at.Hole)
	x.Opened = min(x.Opened, max(x.TD-pilot, x.Start))
	x.Top, x.Shoe, x.String = at.Top, at.Shoe, at.Shoe > 0
}

// moved reports whether a section's string is on its way down, so that it hangs in nothing yet.
func (d *drawing) moved(i int) bool {
	at := d.at()
	return at != nil && i == d.Section && !at.Set
}

// aboveLanded reports whether a row is above a string that is left alone: nothing hangs there any more.
func (d *drawing) aboveLanded(row int) bool {
	at := d.at()
	return at != nil && at.Shoe > 0 && row <= d.top(d.Section) && row > d.scale.Row(d.State.RunTo)
}

// bareString draws what hangs in the sea where there is no riser: in an operation down to its end, otherwise to the seabed.
func (d *drawing) bareString() {
	to := d.mudline
	if at := d.at(); at != nil {
		to = min(to, d.scale.Row(at.Pipe))
	}
	if to > 0 {
		d.r.VLine(d.axis, 1, to, d.Glyphs.WallSet, canvas.Steel)
	}
}
