package calc

import (
	"cmp"
	"slices"

	"borewalk/calc/column"
	"borewalk/calc/nozzle"
	"borewalk/calc/swab"
	"borewalk/model"
)

// moving is the drill string of a section on its way through the open hole, looked at with its bit at a few depths.
type moving struct {
	missing        gap
	rest           column.Stack // the fluid at rest
	out, in        swab.Move    // as planned: up with a speed below zero, and down
	drawn, pressed []swab.Place // with the room that swab has, and surge
	at             []bitAt      // from the top of the open hole down to TD
}

// bitAt is the string with its bit at a depth along hole, and how fast it may be pulled and run there.
type bitAt struct {
	bit     float64
	string  swab.String
	out, in speedLimit
	draws   float64 // what the planned move takes from the pressure at rest at the bit, below zero; in Pa
	presses float64 // what it adds

}

// movingString returns the drill string of section i on its way, worked out once.
func (e *evaluation) movingString(i int) *moving {
	if e.moves == nil {
		e.moves = make([]*moving, len(e.plan.Sections))
	}
	if e.moves[i] == nil {
		e.moves[i] = e.readMoving(i)
	}
	return e.moves[i]
}

func (e *evaluation) readMoving(i int) *moving {
	own := &e.plan.Sections[i].Trip
	m := &moving{missing: first(e.drills[i].missing, e.windowGap(i), e.boreGap(i), e.rheologyGap(i))}
	end := swab.Closed
	if own.Float == model.NoFloat {
		end = swab.Open
	}
	m.out, m.in = swab.Move{Speed: -own.SpeedOut.SI, Pumped: own.FlowOut.SI, End: end}, swab.Move{Speed: own.SpeedIn.SI, Pumped: own.FlowIn.SI, End: end}
	if m.missing.open() {
		return m
	}
	m.rest = e.well(i, e.leftInHole(i))
	margin := e.surgeMargin(i, own.SurgeMargin)
	td := e.sections[i].td
	m.drawn = e.weakPlaces(i, td, e.swabRoom(m.rest, own.SwabMargin.SI))
	m.pressed = e.weakPlaces(i, td, e.surgeRoom(i, m.rest, margin))
	depths := e.bitDepths(i, m)
	m.at = make([]bitAt, len(depths))
	for k, bit := range depths {
		if m.at[k], m.missing = e.bitAt(i, m, bit); m.missing.open() {
			break
		}
	}
	return m
}

// swabRoom returns what swab may take from a column of fluid at rest at a TVD: down to pore pressure and a margin in kg/m3.
func (e *evaluation) swabRoom(rest column.Stack, margin float64) func(tvd float64) (float64, bool) {
	return func(tvd float64) (float64, bool) {
		pore, ok := e.window.pore.At(tvd)
		return pressureAt(rest, tvd) - column.PressureOf(pore+margin, tvd), ok
	}
}

// bitDepths returns where the bit of section i is looked at on its way, along hole and top down: at the top of the open hole;
// where all of the BHA has come into it; where swab and surge have the least room in between, since a place is drawn at and
// pressed on most while the bit is at it; and at TD.
func (e *evaluation) bitDepths(i int, m *moving) []float64 {
	top, td, d := e.openFrom(i), e.sections[i].td, &e.drills[i]
	depths := append(make([]float64, 0, 5), top, td)
	between := func(md float64) {
		if md > top && md < td {
			depths = append(depths, md)
		}
	}
	for k := range d.parts {
		if p := &d.parts[k]; p.row.Item == model.ItemPipe && p.bottom < td {
			between(top + td - p.bottom)
		}
	}
	for _, places := range [...][]swab.Place{m.drawn, m.pressed} {
		if len(places) > 2 {
			inner := places[1 : len(places)-1]
			between(slices.MinFunc(inner, func(a, b swab.Place) int { return cmp.Compare(a.Room, b.Room) }).MD)
		}
	}
	slices.Sort(depths)
	return slices.Compact(depths)
}

// bitAt lays out the string of section i with its bit at a depth, and finds how fast it may be moved there.
func (e *evaluation) bitAt(i int, m *moving, bit float64) (at bitAt, missing gap) {
	at.bit = bit
	if at.string, missing = e.moved(i, bit, m.out.End); missing.open() {
		return at, missing
	}
	at.draws, at.presses = at.string.Rise(m.out, bit), at.string.Rise(m.in, bit)
	out, in := m.out, m.in
	out.Speed, in.Speed = -1, 1
	at.out, at.in = limit(&at.string, out, m.drawn), limit(&at.string, in, m.pressed)
	return at, gap{}
}

// moved lays out what section i's drill string moves in with its bit at a depth, and the bore where the end is open.
func (e *evaluation) moved(i int, bit float64, end swab.End) (swab.String, gap) {
	fluid, missing := e.drillingFluid(i, bit)
	if missing.open() {
		return swab.String{}, missing
	}
	s, missing := e.laidOut(i, bit, end == swab.Open)
	fluid.Density = e.leftInHole(i)
	s.Fluid, s.Model = fluid, e.rubbing(i)
	if b := e.nozzles(i); end == swab.Open && !b.missing.open() {
		s.Bit = func(flow float64) float64 { return nozzle.Drop(fluid.Density, flow, b.area, b.discharge) }
	}
	return s, missing
}

// laidOut lays out the annulus of section i's drill string with its bit at a depth, and its bore where that is wanted.
func (e *evaluation) laidOut(i int, bit float64, bores bool) (s swab.String, missing gap) {
	outside, missing := e.outside(i, bit)
	if missing.open() {
		return s, missing
	}
	for k := range outside {
		g := &outside[k]
		r := swab.Reach{Bottom: g.bottom, Length: g.length(), Outer: g.bore}
		if g.part != nil {
			pipe := &g.part.pipe
			r.Inner, r.ID, r.Joint, r.Share = pipe.OD, pipe.ID, pipe.Widest, g.part.jointShare()
		}
		s.Add(r)
	}
	if !bores {
		return s, gap{}
	}
	inside, missing := e.inside(i, bit)
	for k := range inside {
		g := &inside[k]
		s.Bores = append(s.Bores, swab.Bore{Length: g.length(), ID: g.part.pipe.ID, Joint: g.part.pipe.Drift, Share: g.part.jointShare()})
	}
	return s, missing
}

// least returns the depth of the bit at which the string may be pulled, or run, least fast.
func (m *moving) least(of func(*bitAt) speedLimit) *bitAt {
	at := &m.at[0]
	for k := range m.at {
		if of(&m.at[k]).speed < of(at).speed {
			at = &m.at[k]
		}
	}
	return at
}

// swabbed returns the equivalent densities from RKB to which the planned trip of section i draws the hole down and presses it
// up at a depth along hole with the bit there, and false where that is not known. Between the depths of the bit that are
// worked out the pressure is taken to go in a straight line: the annulus grows evenly.
func (e *evaluation) swabbed(i int, md float64) (swabbed, surged float64, ok bool) {
	m, own := e.movingString(i), &e.plan.Sections[i].Trip
	if m.missing.open() || !own.SpeedOut.IsSet() || !own.SpeedIn.IsSet() || md < m.at[0].bit || md > m.at[len(m.at)-1].bit {
		return 0, 0, false
	}
	k := 1
	for k < len(m.at)-1 && m.at[k].bit < md {
		k++
	}
	a, b := &m.at[max(k-1, 0)], &m.at[min(k, len(m.at)-1)]
	share := 0.0
	if b.bit > a.bit {
		share = (md - a.bit) / (b.bit - a.bit)
	}
	tvd := e.path.TVD(md)
	rest := pressureAt(m.rest, tvd)
	swabbed, ok = column.EMW(rest+a.draws+share*(b.draws-a.draws), tvd)
	surged, _ = column.EMW(rest+a.presses+share*(b.presses-a.presses), tvd)
	return swabbed, surged, ok
}
