package calc

import (
	"borewalk/calc/state"
	"borewalk/model/quantity"
)

// pumping is a volume in m3 of one fluid.
type pumping struct {
	volume float64
	fluid  int
}

// pump plays an operation that pumps, with the string where it is.
func (w *walker) pump(s *Step) {
	if s.Key == "reverse_out" {
		w.reverse(s)
		return
	}
	if s.From != s.To && !w.casing { // the bit is pulled into the casing when all is even
		defer func() {
			w.bitTo(s.To)
			w.take(moments{time: s.Likely, gauges: w.hanging()})
		}()
	}
	if w.well == nil {
		w.take(moments{time: s.Likely})
		return
	}
	list := w.pumped(s)
	whole, done := 0.0, 0.0
	for _, x := range list {
		whole += x.volume
	}
	for _, x := range list {
		n := max(1, int(moves*x.volume/whole))
		for range n {
			part := x.volume / float64(n)
			if _, err := w.well.Pump(part, w.here(x.fluid)); err != nil {
				w.fail(err)
				return
			}
			done += part
			w.take(moments{time: s.Likely * min(done/whole, 1), pumped: done, gauges: w.columns()})
		}
	}
}

// pumped returns what an operation pumps, in order.
func (w *walker) pumped(s *Step) []pumping {
	e, i := w.e, w.i
	string, annulus := w.well.Capacity(state.Inside), w.well.Capacity(state.Annulus)
	mud := w.mud(w.at.Hole)
	switch s.Key {
	case "spot":
		fluid := w.leftBehind()
		volume := e.readDumping(i).spot
		return []pumping{{volume, fluid}, {string, mud}}
	case "clean_up":
		if sweep := e.plan.Sections[i].Riserless.Sweep; !e.sections[i].rig && sweep.SI > 0 {
			return []pumping{{sweep.SI, w.fluid("sweep", e.density(i, w.at.Hole), SpacerRole)}, {string + annulus, mud}}
		}
	case "circulate_casing":
		mud = w.leftBehind()
	}
	return []pumping{{string + annulus, mud}}
}

// declare makes all fluids known that the section will use, so that a well which hangs knows them.
func (w *walker) declare() {
	e, i := w.e, w.i
	h, s := &e.sections[i], &e.plan.Sections[i]
	w.sea()
	w.mud(h.start)
	w.mud(h.td)
	w.leftBehind()
	if s.Riserless.Sweep.SI > 0 {
		w.fluid("sweep", e.density(i, h.td), SpacerRole)
	}
	if s.Cement.Filled.IsSet() {
		w.fluid("fluid in the casing", s.Cement.Filled.SI, MudRole)
	}
}

// reverse pumps down the annulus what stands above the top of a liner up the string and out, until nothing but mud is left in
// either.
func (w *walker) reverse(s *Step) {
	if w.well == nil {
		w.take(moments{time: s.Likely})
		return
	}
	volume := w.well.Capacity(state.Inside)
	for k, fluid := range w.local {
		if role := w.fluids[fluid].Role; role == SpacerRole || role == CementRole {
			volume += w.well.Volume(state.Annulus, k)
		}
	}
	mud := w.here(w.mud(w.at.Hole))
	for k := 1; k <= moves; k++ {
		if _, err := w.well.Reverse(volume/moves, mud); err != nil {
			w.fail(err)
			return
		}
		share := float64(k) / moves
		w.take(moments{time: s.Likely * share, pumped: volume * share, gauges: w.columns()})
	}
}

// lowerStack brings BOP and riser down to the wellhead, or lands them there. What stands in the well has the sea above it.
func (w *walker) lowerStack(s *Step) {
	foot := w.e.datum.Wellhead
	if s.Key == "run_stack" {
		const over = 5 // m above the wellhead, until it is landed
		for k := 1; k <= moves; k++ {
			share := float64(k) / moves
			w.at.Stack = max((foot-over)*share, 0.1)
			w.take(moments{time: s.Likely * share, gauges: []JobGauge{{"BOP at", quantity.Length, w.at.Stack}}})
		}
		return
	}
	w.at.Stack = foot
	if len(w.open) > 0 && w.open[0].Top > 0 { // the riser came down full of sea water
		w.open = joinedStands(append([]JobStand{{0, w.open[0].Top, w.sea()}}, w.open...))
	}
	w.take(moments{time: s.Likely, gauges: []JobGauge{{"BOP at", quantity.Length, foot}}})
}
