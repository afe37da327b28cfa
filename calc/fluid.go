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

// mud returns the drilling fluid of section i at a density, where nothing is missing for its rheology.
func (e *evaluation) mud(i int, density float64) friction.Fluid {
	s := &e.plan.Sections[i]
	return friction.Bingham(density, s.PV.SI, s.YP.SI)
}

// rheologyGap says what is missing for the friction of section i's fluid.
func (e *evaluation) rheologyGap(i int) gap {
	s := &e.plan.Sections[i]
	return first(lacks(s.PV, i, "pv", "plastic viscosity"), lacks(s.YP, i, "yp", "yield point"))
}

// conditioned returns the mud in the hole of section i when its cement job begins, at a density.
func (e *evaluation) conditioned(i int, density float64) friction.Fluid {
	c := &e.plan.Sections[i].Cement
	return thinned(e.mud(i, density), c.MudPV, c.MudYP)
}

// thinned returns a fluid with another plastic viscosity, yield point or both, where they are given: then a Bingham fluid.
func thinned(f friction.Fluid, pv, yp quantity.Value) friction.Fluid {
	if !pv.IsSet() && !yp.IsSet() {
		return f
	}
	viscosity, yield := f.PlasticViscosity(), f.YieldPoint()
	if pv.IsSet() {
		viscosity = pv.SI
	}
	if yp.IsSet() {
		yield = yp.SI
	}
	return friction.Bingham(f.Density, viscosity, yield)
}

// rubbing returns the correlation of friction that section i is worked out with.
func (e *evaluation) rubbing(int) friction.Correlation { return friction.BinghamSlot{} }

// by names a correlation in the source of a working.
func by(c friction.Correlation) string { return c.Name() + " (" + c.Source() + ")" }

// fluid adds density and law of a fluid to the working.
func (w *Working) fluid(f friction.Fluid) {
	w.in("rho", "fluid in the hole", quantity.Density, f.Density)
	w.in("PV", "plastic viscosity", quantity.Viscosity, f.PlasticViscosity())
	w.in("YP", "yield point", quantity.YieldPoint, f.YieldPoint())
}
