package friction

import "math"

// slot is the diameter of the pipe that has the laminar pressure loss of a narrow slot of unit gap: the square root of 2/3
// (Bourgoyne, Chenevert, Millheim and Young, Applied Drilling Engineering, chapter 4, where it is rounded to 0.816; from
// memory). [BinghamSlot] uses it in Reynolds numbers of an annulus and in its turbulent loss.
const slot = 0.816496580927726

// A Flow is what a correlation finds for a flow through pipe or annulus.
type Flow struct {
	Loss     float64 // Loss is the friction pressure in Pa/m.
	Velocity float64 // Velocity is the mean velocity in m/s, without direction.
	Reynolds float64 // Reynolds is the Reynolds number as the correlation counts it; zero where there is none.
	Regime   Regime
}

// A Regime is how a fluid flows.
type Regime uint8

// The regimes. Still is a fluid that does not flow, or cannot be reckoned with.
const (
	Still Regime = iota
	Laminar
	Transition
	Turbulent
)

// String returns the trade's word.
func (r Regime) String() string {
	return [...]string{"at rest", "laminar", "transition", "turbulent"}[r]
}

// Velocity returns the mean velocity in m/s of a flow in m³/s through a pipe of diameter outer in metres, or through the
// annulus around a body of diameter inner where that is above zero. It is zero where there is no room, and where an
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

// Reynolds returns the Reynolds number rho v d / mu of a density in kg/m³, a velocity in m/s, a diameter in metres and a
// viscosity in Pa·s. It is zero for a viscosity that is not above zero, where the number has no meaning.
func Reynolds(density, velocity, diameter, viscosity float64) float64 {
	if !(viscosity > 0) {
		return 0
	}
	return density * velocity * diameter / viscosity
}

// SlotDiameter returns the diameter in metres of the pipe that stands for an annulus in Reynolds numbers: 0.816 times the
// gap between the diameters. It is zero where there is no gap.
func SlotDiameter(outer, inner float64) float64 {
	if !(outer > inner) {
		return 0
	}
	return slot * (outer - inner)
}

// generalised returns the Reynolds number that goes with a laminar wall stress in Pa, so that the Fanning factor of
// laminar flow is 16 over it in any fluid: 8 rho v² / stress (Metzner and Reed 1955).
func generalised(density, v, wall float64) float64 {
	if !(wall > 0) {
		return 0
	}
	return bounded(8 * density * v * v / wall)
}

// bounded returns a number that is one, and zero for one that is none.
func bounded(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return x
}
