package kill

import (
	"cmp"
	"slices"

	"borewalk/calc/state"
)

// A waypoint is a volume in m³, pumped in all, at which to look. What lies between pump and gas bottom does not give way, so
// that gas bottom and kill mud are known to come by when as much has been pumped as there is room before them.
type waypoint struct {
	pumped float64
	mark   Mark
}

// waypoints returns all of them in order: the steps, gas bottom where the annulus changes and at the choke, kill mud on its way.
func (c *course) waypoints() []waypoint {
	inside, annulus := c.well.Capacity(state.Inside), c.well.Capacity(state.Annulus)
	open := annulus - c.well.Above(state.Annulus, c.job.Layout.Return.MD)
	atBit := c.killFrom + inside
	list := []waypoint{{annulus, GasOut}, {atBit, KillMudAtBit}, {atBit + open, KillMudAtStack}, {atBit + annulus, KillMudAtChoke}}
	for _, md := range c.job.changes() {
		if volume := annulus - c.well.Above(state.Annulus, md); volume > 0 && volume < annulus {
			list = append(list, waypoint{volume, NoMark})
		}
	}
	step := (atBit + annulus) / float64(c.job.Steps)
	for i := 1; i < c.job.Steps; i++ {
		list = append(list, waypoint{step * float64(i), NoMark})
	}
	slices.SortFunc(list, func(a, b waypoint) int { return cmp.Compare(a.pumped, b.pumped) })
	return list
}

// A gasTop is a place that the gas top comes to when so many m³ of annulus lie below it, the gas that has left counted in.
type gasTop struct {
	risen float64
	mark  Mark
	place int
}

// gasTops returns those that the gas top has not come to, the nearest first.
func (c *course) gasTops() []gasTop {
	annulus := c.well.Capacity(state.Annulus)
	var list []gasTop
	add := func(md float64, mark Mark, place int) {
		list = append(list, gasTop{annulus - c.well.Above(state.Annulus, md), mark, place})
	}
	for _, md := range c.job.changes() {
		add(md, NoMark, 0)
	}
	for i, md := range c.job.Places {
		add(md, GasAtPlace, i)
	}
	add(c.job.Layout.Return.MD, GasAtStack, 0)
	list = append(list, gasTop{annulus, GasAtChoke, 0})
	risen := c.risen(c.well)
	list = slices.DeleteFunc(list, func(t gasTop) bool { return t.risen <= risen })
	slices.SortStableFunc(list, func(a, b gasTop) int { return cmp.Compare(a.risen, b.risen) })
	return list
}

// risen returns the m³ of annulus that lie below the gas top. When that is at the choke, what has left is counted on.
func (c *course) risen(w *state.Well) float64 {
	above, below := 0.0, w.Capacity(state.Annulus)
	c.layers = w.AppendLayers(c.layers[:0], state.Annulus)
	for _, l := range c.layers {
		if l.Fluid >= FirstGas {
			below -= above
			break
		}
		above += l.Volume
	}
	for i := range c.job.parcels() {
		below += w.Account(FirstGas + i).Returned
	}
	return below
}

// changes returns the depths in metres at which the annulus changes its size, but for the stack: what passes there changes its
// slope.
func (j *Job) changes() []float64 {
	var list []float64
	l := &j.Layout
	for i := 1; i < len(l.Bore); i++ {
		if l.Bore[i].Diameter != l.Bore[i-1].Diameter {
			list = append(list, l.Bore[i].Top)
		}
	}
	for i := 1; i < len(l.String); i++ {
		if l.String[i].OD != l.String[i-1].OD {
			list = append(list, l.String[i].Top)
		}
	}
	list = slices.DeleteFunc(list, func(md float64) bool { return md <= l.Return.MD })
	for i := 1; i < len(l.Return.Line); i++ {
		if l.Return.Line[i].Diameter != l.Return.Line[i-1].Diameter {
			list = append(list, l.Return.Line[i].Top)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
