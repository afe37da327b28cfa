package friction

import "math"

// slot is the diameter of the pipe that has the laminar pressure loss of a narrow
// slot of unit gap: the square root of 2/3 (Bourgoyne, Chenevert, Millheim and
// Young, Applied Drilling Engineering, chapter 4, where it is rounded to 0.816;
// from memory). Here it is used in Reynolds numbers of an annulus and in its
// turbulent loss.
const slot = 0.816496580927726

// A Fluid is what friction needs to know of a fluid. A yield point of zero makes
// it Newtonian, with the plastic viscosity as its viscosity.
type Fluid struct {
	Density          float64 // Density in kg/m³.
	PlasticViscosity float64 // PlasticViscosity is the slope of shear stress over shear rate, in Pa·s.
	YieldPoint       float64 // YieldPoint is the shear stress at rest, drawn out from the straight line, in Pa.
}

// Velocity returns the mean velocity in m/s of a flow in m³/s through a pipe of
// diameter outer in metres, or through the annulus around a body of diameter inner
// where that is above zero. It is zero where there is no room, and where an
// argument is no number.
func Velocity(flow, outer, inner float64) float64 {
	inner = max(inner, 0)
	if !(outer > inner) {
		return 0
	}
	v := flow / (math.Pi / 4 * (outer - inner) * (outer + inner))
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

// Reynolds returns the Reynolds number rho v d / mu of a density in kg/m³, a
// velocity in m/s, a diameter in metres and a viscosity in Pa·s. It is zero for a
// viscosity that is not above zero, where the number has no meaning.
func Reynolds(density, velocity, diameter, viscosity float64) float64 {
	if !(viscosity > 0) {
		return 0
	}
	return density * velocity * diameter / viscosity
}

// SlotDiameter returns the diameter in metres of the pipe that stands for an
// annulus in Reynolds numbers: 0.816 times the gap between the diameters. It is
// zero where there is no gap.
func SlotDiameter(outer, inner float64) float64 {
	if !(outer > inner) {
		return 0
	}
	return slot * (outer - inner)
}

// ApparentInPipe returns the apparent viscosity in Pa·s at a velocity in m/s in a
// pipe of diameter d metres: that of the Newtonian fluid with the same laminar
// loss, mu + tau d / (6 v). It is the plastic viscosity where the fluid stands.
// Source: Guo and Liu, Applied Drilling Circulation Systems (2011), example 2.5.
func (f Fluid) ApparentInPipe(velocity, d float64) float64 {
	if !(velocity > 0) {
		return f.PlasticViscosity
	}
	return f.PlasticViscosity + f.YieldPoint*d/(6*velocity)
}

// ApparentInAnnulus is [Fluid.ApparentInPipe] for an annulus taken as a slot: mu +
// tau (outer - inner) / (8 v). Source: as there.
func (f Fluid) ApparentInAnnulus(velocity, outer, inner float64) float64 {
	if !(velocity > 0) {
		return f.PlasticViscosity
	}
	return f.PlasticViscosity + f.YieldPoint*(outer-inner)/(8*velocity)
}

// Hedstrom returns the Hedström number rho tau d² / mu² for a pipe, or with the
// [SlotDiameter] for an annulus: how much the yield point delays turbulence. It is
// zero for a viscosity that is not above zero.
func (f Fluid) Hedstrom(d float64) float64 {
	if !(f.PlasticViscosity > 0) {
		return 0
	}
	return f.Density * f.YieldPoint * d * d / (f.PlasticViscosity * f.PlasticViscosity)
}
