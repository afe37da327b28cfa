package seats

import "borewalk/calc/column"

// riserless returns the deepest hole from the top that the riserless fluid does for: nowhere lighter than pore pressure and
// stability with their margin ask, nowhere heavier than fracture pressure. It reports false where there is none.
func (w *well) riserless() (Hole, bool) {
	hole := Hole{Shoe: w.Top, Bottom: w.Bottom, Riserless: true, Stop: Stop{Reason: AtBottom}}
	if w.Riserless == nil {
		return hole, false
	}
	for i := 1; i < len(w.rows) && hole.Stop.Reason == AtBottom; i++ {
		from, to := w.rows[i-1].tvd, w.rows[i].tvd
		if x, seen, ok := meet(w.fluid, w.asked, from, to); ok {
			hole.Bottom, hole.Stop = x, w.tooLight(seen)
		}
		if x, seen, ok := meet(w.strength, w.fluid, from, to); ok && x < hole.Bottom {
			hole.Bottom, hole.Stop = x, w.tooHeavy(seen)
		}
	}
	return hole, hole.Stop.Reason == AtBottom || hole.Bottom-hole.Shoe >= shortest
}

// fluid returns the riserless fluid at a depth.
func (w *well) fluid(tvd float64) float64 { return w.at(tvd).fluid }

// strength returns fracture pressure at a depth.
func (w *well) strength(tvd float64) float64 { return w.at(tvd).fracture }

// asked returns what pore pressure and stability ask of a riserless fluid at a depth.
func (w *well) asked(tvd float64) float64 {
	r := w.at(tvd)
	return max(r.pore, r.stability) + w.margins.Riserless
}

// tooLight says where a riserless fluid no longer does for pore pressure or stability.
func (w *well) tooLight(tvd float64) Stop {
	r, margin := w.at(tvd), w.margins.Riserless
	needs := Bound{ByPore, tvd, r.pore, r.pore + margin}
	needs.raise(ByStability, tvd, r.stability, r.stability+margin)
	return Stop{FluidEnds, needs, Bound{ByRiserless, tvd, r.fluid, r.fluid}}
}

// tooHeavy says where a riserless fluid is over fracture pressure.
func (w *well) tooHeavy(tvd float64) Stop {
	r := w.at(tvd)
	return Stop{FluidEnds, Bound{ByRiserless, tvd, r.fluid, r.fluid}, Bound{ByFracture, tvd, r.fracture, r.fracture}}
}

// meet returns the depth between two neighbouring rows down to which an upper curve stays over a lower one, and the depth at which
// it is seen that it does not; see closeIn. It reports false where it stays over it all the way.
func meet(upper, lower func(tvd float64) float64, from, to float64) (tvd, seen float64, ok bool) {
	given := func(f func(float64) float64) func(float64) (float64, bool) {
		return func(tvd float64) (float64, bool) { return f(tvd), true }
	}
	gap, ok := column.LeastGap(given(upper), given(lower), from, to, nil)
	if !ok || gap.Value >= -near {
		return 0, 0, false
	}
	over := func(tvd float64) bool { return upper(tvd)-lower(tvd) >= -near }
	if !over(from) {
		return from, from, true
	}
	tvd, seen = closeIn(over, from, gap.TVD, exact)
	return tvd, seen, true
}
