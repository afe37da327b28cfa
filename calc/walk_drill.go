package calc

import (
	"borewalk/calc/state"
	"borewalk/model"
)

// clear is how far in m below the outlet the end of a string is when the well begins to feel it.
const clear = 1.0

// entry returns the depth at which the well begins to feel a string.
func (w *walker) entry() float64 { return w.outlet(w.bores()).MD + clear }

// trip brings the drill string in or out.
func (w *walker) trip(s *Step) {
	from, to := s.From, s.To
	for k := 1; k <= moves && !w.fault.open(); k++ {
		share := float64(k) / moves
		w.bitTo(from + (to-from)*share)
		w.take(moments{time: s.Likely * share, gauges: w.hanging()})
	}
}

// bitTo moves the drill string so that the bit is at a depth. In open water and above it the well feels nothing.
func (w *walker) bitTo(md float64) {
	entry := w.entry()
	switch {
	case w.well == nil && md <= entry:
	case w.well == nil:
		if w.hang(w.bores(), w.drillString(entry), nil, w.floats(), w.mud(w.at.Hole)); !w.fault.open() {
			w.move(md - entry)
		}
	case md <= entry:
		w.move(entry - w.well.End() - clear)
		w.out()
	default:
		w.move(md - w.well.End())
	}
	w.at.Pipe = md
}

// floats reports whether the drill string has a float.
func (w *walker) floats() bool { return w.e.plan.Sections[w.i].Trip.Float != model.NoFloat }

// move lowers or raises what hangs; a string that comes in empty is filled with the section's mud.
func (w *walker) move(by float64) {
	var err error
	if by < 0 {
		_, err = w.well.Raise(-by)
	} else {
		_, err = w.well.Lower(by)
	}
	if err == nil {
		_, err = w.well.Fill(w.well.Empty(), w.here(w.filling()))
	}
	if err != nil {
		w.fail(err)
	}
}

// filling returns what a string is filled with on its way in.
func (w *walker) filling() int {
	s := &w.e.plan.Sections[w.i]
	if w.casing && s.Cement.Filled.IsSet() {
		return w.fluid("fluid in the casing", s.Cement.Filled.SI, MudRole)
	}
	if w.casing {
		return w.leftBehind()
	}
	return w.mud(w.at.Hole)
}

// drill deepens the hole, or drills what stands in the last string, moment by moment.
func (w *walker) drill(s *Step) {
	if w.e.plan.Sections[w.i].Method != model.Cemented && w.e.strings[w.i].present {
		w.sink(s)
		return
	}
	from, to := s.From, s.To
	if !s.Flat() {
		from = max(from, s.HoleFrom) // back on bottom first
	}
	pumped := 0.0
	for k := 1; k <= moves && !w.fault.open(); k++ {
		share := float64(k) / moves
		md := from + (to-from)*share
		pumped += w.deepen(md, s.Likely/moves)
		w.take(moments{time: s.Likely * share, pumped: pumped, gauges: w.bottomGauges(md)})
	}
}

// deepen drills on down to a depth in so many seconds at the section's flow, and returns what was pumped, in m3. More than a few
// times what the well holds changes nothing any more.
func (w *walker) deepen(md, seconds float64) float64 {
	annulus, inside := w.stands(state.Annulus), w.stands(state.Inside)
	w.at.Hole = max(w.at.Hole, md)
	w.solid = standIn(w.solid, md, w.at.Hole)
	mud := w.mud(md)
	if w.hang(w.bores(), w.drillString(md), nil, w.floats(), mud); w.fault.open() {
		return 0
	}
	w.lay(state.Inside, inside)
	w.lay(state.Annulus, annulus)
	volume := w.e.plan.Sections[w.i].Flow.SI * seconds
	held := w.well.Capacity(state.Inside) + w.well.Capacity(state.Annulus)
	if _, err := w.well.Pump(min(volume, 3*held), w.here(mud)); err != nil {
		w.fail(err)
	}
	w.at.Pipe = md
	return volume
}

// sink jets or drives the section's own string in together with its hole.
func (w *walker) sink(s *Step) {
	c := &w.e.strings[w.i]
	for k := 1; k <= moves; k++ {
		share := float64(k) / moves
		md := s.HoleFrom + (s.HoleTo-s.HoleFrom)*share
		up := w.e.sections[w.i].td - md
		w.at.Hole, w.at.Pipe = md, md
		w.at.Top, w.at.Shoe = max(c.top-up, 0), c.shoe-up
		if k == moves {
			w.at.Set = true
			w.open = []JobStand{{c.top, md, w.sea()}}
		}
		w.take(moments{time: s.Likely * share, gauges: w.bottomGauges(md)})
	}
}
