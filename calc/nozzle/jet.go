package nozzle

import "math"

// Discharge is the usual coefficient of discharge of bit nozzles: common practice, since the tests of Eckel and Bielstein
// (1951); from memory. The older 1.0 gives a tenth less pressure.
const Discharge = 0.95

// Drop returns the pressure loss in Pa of a flow through an area: rho q² / (2 Cd² A²). Source: Bourgoyne, Chenevert, Millheim
// and Young, Applied Drilling Engineering (1986), equation 4.34, from memory. It is not a number without an area.
func Drop(density, flow, area, discharge float64) float64 {
	v := flow / (discharge * area)
	if !(area > 0) || !(discharge > 0) {
		return math.NaN()
	}
	return density * v * v / 2
}

// Area returns the area in m² that takes a pressure loss at a flow: [Drop] turned round. It is not a number without a loss.
func Area(density, flow, drop, discharge float64) float64 {
	if !(drop > 0) || !(discharge > 0) {
		return math.NaN()
	}
	return flow / discharge * math.Sqrt(density/(2*drop))
}

// Velocity returns the mean velocity of the jets in m/s: q / A, without the coefficient, as the trade counts it.
func Velocity(flow, area float64) float64 { return flow / area }

// Power returns the power in W of a flow that loses a pressure.
func Power(drop, flow float64) float64 { return drop * flow }

// Impact returns the force in N of the jets: rho q v with the velocity q / A, as the trade counts it. Some print it with Cd sqrt
// (2 rho drop) q, which is the same times Cd².
func Impact(density, flow, velocity float64) float64 { return density * flow * velocity }
