package state

import (
	"fmt"
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
)

// A Conduit is one of the spaces of a well that hold fluid; see the package comment.
type Conduit int

// The conduits of a well.
const (
	Inside Conduit = iota
	Annulus
	Pocket
	Between
	conduits = int(Between) + 1
)

// String returns the conduit's name.
func (c Conduit) String() string {
	switch c {
	case Inside:
		return "inside"
	case Annulus:
		return "annulus"
	case Pocket:
		return "pocket"
	case Between:
		return "between the strings"
	}
	return "no conduit"
}

// A run is a length of conduit in which no diameter changes. Inner is zero where
// nothing hangs inside.
type run struct {
	top, bottom  float64 // MD in m
	outer, inner float64 // m
	area         float64 // m²
	above        float64 // volume in m³ of the runs above
	share        float64 // of the flow that goes through one: less than 1 where equal lines stand side by side
	rub          float64 // friction over what the model gives
}

// loss returns the friction in Pa/m of a fluid at a flow in m³/s through the whole conduit.
func (r *run) loss(model friction.Model, fluid friction.Fluid, flow float64) float64 {
	if r.inner > 0 {
		return model.Annulus(fluid, flow, r.outer, r.inner)
	}
	return r.rub * model.Pipe(fluid, flow*r.share, r.outer)
}

// A channel is one conduit's geometry: runs from the top down.
type channel struct {
	runs        []run
	top, bottom float64 // MD in m, also where there are no runs
	capacity    float64 // m³
}

// empty leaves a channel without runs between two depths in m.
func (c *channel) empty(top, bottom float64) {
	c.runs, c.top, c.bottom, c.capacity = c.runs[:0], top, bottom, 0
}

// lay fills the channel from intervals, which must have room, and reports the first
// that has none.
func (c *channel) lay(what Conduit, top, bottom float64, cuts []bore.Interval) error {
	c.empty(top, bottom)
	return c.add(what, cuts, 1, 1)
}

// add lays further intervals below, each of them a number of equal ones side by side,
// with a factor on friction.
func (c *channel) add(what Conduit, cuts []bore.Interval, lines, rub float64) error {
	for i := range cuts {
		cut := &cuts[i]
		area := lines * cut.Capacity()
		if !(area > 0) {
			return fmt.Errorf("well: %s at %.2f m: %.4f m does not fit into %.4f m; take a smaller string or a wider bore",
				what, cut.Top, cut.Inner, cut.Outer)
		}
		c.runs = append(c.runs, run{cut.Top, cut.Bottom, cut.Outer, cut.Inner, area, c.capacity, 1 / lines, rub})
		c.capacity += area * (cut.Bottom - cut.Top)
	}
	return nil
}

// depth returns the depth in m down to which a volume in m³ reaches from the top.
func (c *channel) depth(volume float64) float64 {
	if !(volume > 0) {
		return c.top
	}
	for i := range c.runs {
		r := &c.runs[i]
		if md := r.top + (volume-r.above)/r.area; md < r.bottom {
			return md
		}
	}
	return c.bottom
}

// above returns the volume in m³ from the top of the channel down to a depth in m,
// nothing above the channel and its capacity below it.
func (c *channel) above(md float64) float64 {
	for i := range c.runs {
		r := &c.runs[i]
		if md < r.bottom {
			return r.above + max(md-r.top, 0)*r.area
		}
	}
	return c.capacity
}

// A shape is the geometry of a whole well with the string at one depth.
type shape struct {
	str, inner []bore.Body
	channels   [conduits]channel

	cuts  []bore.Interval // scratch
	spans bore.Profile    // scratch: the bore of the string, around the inner one
}

// end returns the depth in m of the end of the string.
func (s *shape) end() float64 { return s.str[len(s.str)-1].Bottom }

// form takes over the bodies of another shape, moved down by a distance in m, and
// lays its own channels. On an error it is not to be used.
func (s *shape) form(l *Layout, from *shape, down float64) error {
	s.str = append(s.str[:0], from.str...)
	s.inner = append(s.inner[:0], from.inner...)
	for i := range s.str {
		s.str[i].Top += down
		s.str[i].Bottom += down
	}
	for i := range s.inner {
		s.inner[i].Top += down
		s.inner[i].Bottom += down
	}
	s.str[0].Top = min(s.str[0].Top, 0)
	return s.cut(l)
}

// cut lays the channels.
func (s *shape) cut(l *Layout) error {
	end, bottom := s.end(), l.Bore[len(l.Bore)-1].Bottom
	if math.Abs(bottom-end) <= joined {
		bottom = end
	}
	inside, annulus := &s.channels[Inside], &s.channels[Annulus]
	pocket, between := &s.channels[Pocket], &s.channels[Between]

	top, foot := end, end // of the inner string
	if len(s.inner) > 0 {
		top, foot = s.inner[0].Top, min(s.inner[len(s.inner)-1].Bottom, end)
	}
	s.cuts = bore.AppendInside(s.cuts[:0], s.str, 0, top)
	s.cuts = bore.AppendInside(s.cuts, s.inner, top, foot)
	s.cuts = bore.AppendInside(s.cuts, s.str, foot, end)
	if err := inside.lay(Inside, 0, end, s.cuts); err != nil {
		return err
	}

	s.spans = s.spans[:0]
	for i := range s.str {
		s.spans = append(s.spans, bore.Span{Top: s.str[i].Top, Bottom: s.str[i].Bottom, Diameter: s.str[i].ID})
	}
	s.cuts = bore.AppendIntervals(s.cuts[:0], s.spans, s.inner, top, foot)
	if err := between.lay(Between, top, foot, s.cuts); err != nil {
		return err
	}

	s.cuts = s.cuts[:0]
	outlet := l.Return.MD
	for i := range l.Return.Line {
		span := &l.Return.Line[i]
		s.cuts = append(s.cuts, bore.Interval{Top: span.Top, Bottom: span.Bottom, Outer: span.Diameter})
		outlet = min(outlet, span.Top)
	}
	annulus.empty(outlet, end)
	if err := annulus.add(Annulus, s.cuts, l.Return.lines(), l.Return.rub()); err != nil {
		return err
	}
	s.cuts = bore.AppendIntervals(s.cuts[:0], l.Bore, s.str, l.Return.MD, end)
	if err := annulus.add(Annulus, s.cuts, 1, 1); err != nil {
		return err
	}

	s.cuts = bore.AppendIntervals(s.cuts[:0], l.Bore, nil, end, bottom)
	return pocket.lay(Pocket, end, bottom, s.cuts)
}
