package calc

import (
	"slices"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/state"
	"borewalk/model"
)

// rises reports whether returns reach the rig just now: the section has a riser, and it is on the wellhead.
func (w *walker) rises() bool { return w.e.sections[w.i].rig && w.at.Stack >= w.e.datum.Wellhead }

// bores returns the open well round what hangs in it, down to what can be reached: riser and stack where they are there, the
// strings that are set, and open hole.
func (w *walker) bores() bore.Profile {
	e, i := w.e, w.i
	profile := e.casedAbove(i)
	if e.sections[i].rig && !w.rises() {
		profile = slices.DeleteFunc(profile, func(s bore.Span) bool { return s.Bottom <= e.datum.Wellhead })
	}
	from := e.datum.Mudline
	if len(profile) > 0 {
		from = profile[len(profile)-1].Bottom
	}
	bottom := w.bottom()
	drilled := i
	if w.at.Hole <= e.sections[i].start && i > 0 {
		drilled = i - 1 // this section's opener has not been there
	}
	if bottom > from {
		profile = append(profile, e.openHole(drilled, from, bottom)...)
	}
	for k := range profile {
		if profile[k].Bottom > bottom {
			profile[k].Bottom = bottom
		}
	}
	return slices.DeleteFunc(profile, func(s bore.Span) bool { return s.Bottom-s.Top < 1e-6 })
}

// bottom returns how deep the well can be reached: to cement that stands in it, or to the bottom of the hole.
func (w *walker) bottom() float64 {
	if len(w.solid) > 0 {
		return w.solid[0].Top
	}
	return w.at.Hole
}

// outlet returns where what comes up the annulus leaves the well.
func (w *walker) outlet(profile bore.Profile) state.Return {
	if w.rises() {
		return state.ToRig(w.here(w.mud(w.at.Hole)))
	}
	top := w.e.datum.Mudline
	if len(profile) > 0 {
		top = min(profile[0].Top, top)
	}
	return state.ToSea(top, top-w.e.datum.MSL, w.e.seawater(), w.here(w.sea()))
}

// here returns the number that a fluid has in the well that hangs; without one it is the fluid's own.
func (w *walker) here(fluid int) int {
	if k := slices.Index(w.local, fluid); k >= 0 {
		return k
	}
	return fluid
}

// hang makes the well with a string in the given bores: full of one fluid inside, with what stood in the open well round it
// and below it.
func (w *walker) hang(profile bore.Profile, bodies, inner []bore.Body, float bool, inside int) {
	w.local = nil
	fluids := make([]state.Fluid, len(w.fluids))
	for k, f := range w.fluids {
		w.local = append(w.local, k)
		fluids[k] = state.Fluid{Name: f.Name, Fluid: friction.Newton(f.Density, 0)}
	}
	w.hangIn(state.Layout{Bore: profile, String: bodies, Inner: inner, Float: float, TVD: w.e.path.TVD, Return: w.outlet(profile)}, fluids, w.here(inside))
}

// hangIn makes the well of a layout, and lays what stood in the open well into it.
func (w *walker) hangIn(layout state.Layout, fluids []state.Fluid, inside int) {
	well, err := state.New(layout, fluids, inside)
	if err != nil {
		w.fail(err)
		return
	}
	w.well = well
	w.lay(state.Annulus, w.open)
	w.lay(state.Pocket, w.open)
	w.open = nil
}

// lay puts what stands in a length of well into a conduit. What is lowest reaches to its end, whatever rounding leaves.
func (w *walker) lay(c state.Conduit, stands []JobStand) {
	for k, s := range stands {
		if s.Fluid < 0 {
			continue
		}
		if k == len(stands)-1 {
			s.Bottom++
		}
		if err := w.well.Spot(c, s.Top, s.Bottom, w.here(s.Fluid)); err != nil {
			w.fail(err)
			return
		}
	}
}

// fail keeps what keeps the walk from going on.
func (w *walker) fail(err error) {
	if !w.fault.open() {
		w.fault = gap{model.PathOf(w.i, "hole"), err.Error()}
	}
}

// stands returns what stands in a conduit of the well that hangs, by the walk's fluids.
func (w *walker) stands(c state.Conduit) (list []JobStand) {
	if w.well == nil {
		return nil
	}
	for _, l := range w.well.AppendLayers(nil, c) {
		if l.Bottom-l.Top < 1e-6 {
			continue
		}
		fluid := l.Fluid
		if fluid >= 0 {
			fluid = w.local[fluid]
		}
		list = append(list, JobStand{Top: l.Top, Bottom: l.Bottom, Fluid: fluid})
	}
	return list
}

// out takes the string out of the well: what stood round it and below it stands in the open well.
func (w *walker) out() {
	w.open = joinedStands(append(w.stands(state.Annulus), w.stands(state.Pocket)...))
	w.well, w.local, w.at.Pipe = nil, nil, 0
}

// joinedStands joins neighbours of one fluid.
func joinedStands(list []JobStand) (joined []JobStand) {
	for _, s := range list {
		if n := len(joined); n > 0 && joined[n-1].Fluid == s.Fluid && s.Top-joined[n-1].Bottom < 1e-3 {
			joined[n-1].Bottom = s.Bottom
			continue
		}
		joined = append(joined, s)
	}
	return joined
}

// standIn returns what of a list stands between two depths.
func standIn(list []JobStand, top, bottom float64) (cut []JobStand) {
	for _, s := range list {
		if s.Top, s.Bottom = max(s.Top, top), min(s.Bottom, bottom); s.Bottom-s.Top > 1e-6 {
			cut = append(cut, s)
		}
	}
	return cut
}

// drillString returns the drill string with the bit at a depth, without gaps; what is above the rotary comes in as it is
// lowered.
func (w *walker) drillString(bit float64) []bore.Body {
	bodies := slices.Clone(w.e.drills[w.i].bodies)
	up := w.e.sections[w.i].td - bit
	for k := range bodies {
		bodies[k].Top -= up
		bodies[k].Bottom -= up
	}
	for k := range bodies {
		if bodies[k].Bottom = bit; k+1 < len(bodies) {
			bodies[k].Bottom = bodies[k+1].Top
		}
	}
	return bodies
}
