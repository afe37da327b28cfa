package calc

import (
	"borewalk/calc/friction"
	"borewalk/model/quantity"
)

// drillingFluid returns the fluid that section i is drilled with when the bit is at a depth along hole, as friction sees it,
// and what is missing for it.
func (e *evaluation) drillingFluid(i int, bit float64) (friction.Fluid, gap) {
	missing := first(e.columnGap(i), e.rheologyGap(i))
	if missing.open() {
		return friction.Fluid{}, missing
	}
	return e.mud(i, e.density(i, bit)), gap{}
}

// mud returns the drilling fluid of section i at a density; where its rheology is missing it has none.
func (e *evaluation) mud(i int, density float64) friction.Fluid {
	f := e.flows[i].fluid
	f.Density = density
	return f
}

// rheologyGap says what is missing for the friction of section i's fluid.
func (e *evaluation) rheologyGap(i int) gap { return e.flows[i].missing }

// rubbing returns the correlation of friction that section i is worked out with.
func (e *evaluation) rubbing(i int) friction.Correlation {
	if c, ok := friction.Named(e.plan.Sections[i].Rheology.Friction); ok {
		return c
	}
	return friction.BinghamSlot{}
}

// conditioned returns the fluid in the hole of section i when its casing is run and its cement job begins, at a density: what
// was spotted, or the mud, as it is thinned for the job.
func (e *evaluation) conditioned(i int, density float64) friction.Fluid {
	s := &e.plan.Sections[i]
	left := e.mud(i, density)
	if !e.sections[i].rig && s.SpotDensity.IsSet() {
		left = thinned(left, s.SpotPV, s.SpotYP)
	}
	return thinned(left, s.Cement.MudPV, s.Cement.MudYP)
}

// thinned returns a fluid with another plastic viscosity, yield point or both, where they are given: then a Bingham fluid.
func thinned(f friction.Fluid, pv, yp quantity.Value) friction.Fluid {
	if !pv.IsSet() && !yp.IsSet() {
		return f
	}
	return friction.Bingham(f.Density, usual(pv, f.PlasticViscosity()), usual(yp, f.YieldPoint()))
}

// by names a correlation in the source of a working.
func by(c friction.Correlation) string { return c.Name() + " (" + c.Source() + ")" }

// fluid adds density and law of a fluid to the working: PV and YP of a Bingham fluid, and of another all of its law, and the
// PV and YP of the line through its stresses at 511 and 1022 1/s, which some correlations take.
func (w *Working) fluid(f friction.Fluid) {
	w.in("rho", "fluid", quantity.Density, f.Density)
	if !f.IsBingham() {
		w.law(f)
	}
	w.in("PV", "plastic viscosity", quantity.Viscosity, f.PlasticViscosity())
	w.in("YP", "yield point", quantity.YieldPoint, f.YieldPoint())
}

// law adds index, consistency and yield stress of a fluid to the working.
func (w *Working) law(f friction.Fluid) {
	w.in("n", "index", quantity.Number, f.Index())
	w.in("K", "consistency", quantity.Consistency, f.Consistency())
	w.in("tau0", "yield stress", quantity.YieldPoint, f.Yield())
}
