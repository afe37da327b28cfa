package calc

import "borewalk/calc/friction"

// drillingFluid returns the fluid that section i is drilled with when the bit is at a depth along hole, as friction sees it,
// and what is missing for it.
func (e *evaluation) drillingFluid(i int, bit float64) (friction.Fluid, gap) {
	missing := first(e.columnGap(i), e.rheologyGap(i))
	if missing.open() {
		return friction.Fluid{}, missing
	}
	s := &e.plan.Sections[i]
	return friction.Fluid{Density: e.density(i, bit), PlasticViscosity: s.PV.SI, YieldPoint: s.YP.SI}, gap{}
}

// rubbing returns the model of friction that section i is worked out with.
func (e *evaluation) rubbing(int) friction.Model { return friction.Bingham{} }
