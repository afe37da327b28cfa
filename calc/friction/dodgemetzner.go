package friction

import "math"

// DodgeMetzner is the [Correlation] with the exact laminar flow of a fluid of Herschel and Bulkley, and the turbulence of
// Dodge and Metzner.
//
// Laminar flow is the law added up over the profile of velocity, solved for the stress at the wall: for n = 1 in a pipe the
// equation of Buckingham and Reiner, without yield those of Rabinowitsch, without both that of Hagen and Poiseuille. It
// tends to the very yield stress as the flow dies. The annulus is taken as a slot as wide as the gap.
//
// Turbulent, smooth wall, with Re = 8 rho v² / stress and m the index of the power law through the stresses at 511 and
// 1022 1/s (n itself without yield):
//
//	1 / √f = 4 / m^0.75 × log(Re f^(1 - m/2)) - 0.4 / m^1.2
//
// For m = 1 it is the smooth pipe of Kármán and Nikuradse. It was measured for m from 0.36 to 1 without yield; elsewhere it
// is drawn out. Up to Re = 3470 - 1370 m the loss is laminar, from 800 more on it is the larger of the two, and between it
// goes from one to the other in a straight line of Re, as Schuh has it.
//
// Sources: Herschel and Bulkley 1926; Dodge and Metzner, Turbulent flow of non-Newtonian systems, AIChE Journal 5 (1959),
// p. 189; Schuh 1964; all from memory, the laminar part derived anew and checked against numerical integration.
type DodgeMetzner struct{}

// Name is the name to pick it by.
func (DodgeMetzner) Name() string { return "Dodge-Metzner" }

// Source is what stands behind it.
func (DodgeMetzner) Source() string {
	return "exact laminar Herschel-Bulkley in pipe and slot; turbulent: Dodge and Metzner 1959, smooth wall, from memory"
}

// passage is the width in Reynolds numbers of the change from laminar to turbulent flow.
const passage = 800.0

// Pipe is the loss in Pa/m in a pipe; see [DodgeMetzner].
func (c DodgeMetzner) Pipe(f Fluid, flow, diameter float64) float64 {
	return c.InPipe(f, flow, diameter).Loss
}

// Annulus is the loss in Pa/m in an annulus; see [DodgeMetzner]. Without a body inside it is the loss in a pipe.
func (c DodgeMetzner) Annulus(f Fluid, flow, outer, inner float64) float64 {
	return c.InAnnulus(f, flow, outer, inner).Loss
}

// InPipe is the flow in a pipe; see [DodgeMetzner].
func (DodgeMetzner) InPipe(f Fluid, flow, diameter float64) Flow {
	v := math.Abs(Velocity(flow, diameter, 0))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	return f.turn(v, diameter, f.law.wall(8*v/diameter, pipe))
}

// InAnnulus is the flow in an annulus; see [DodgeMetzner].
func (c DodgeMetzner) InAnnulus(f Fluid, flow, outer, inner float64) Flow {
	if !(inner > 0) {
		return c.InPipe(f, flow, outer)
	}
	v := math.Abs(Velocity(flow, outer, inner))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	gap := outer - inner
	return f.turn(v, gap, f.law.wall(12*v/gap, gapped))
}

// turn returns the flow at a mean velocity in m/s, given its laminar stress at the wall in Pa, d being the diameter or gap.
func (f Fluid) turn(v, d, wall float64) Flow {
	laminar := 4 * wall / d
	flow := Flow{Loss: bounded(laminar), Velocity: v, Reynolds: generalised(f.Density, v, wall), Regime: Laminar}
	over := flow.Reynolds - (3470 - 1370*f.law.slope)
	if !(over > 0) {
		return flow
	}
	turbulent := 2 * f.law.fanning(flow.Reynolds) * f.Density * v * v / d
	if !(turbulent > laminar) {
		return flow
	}
	flow.Regime = Transition
	if over >= passage {
		flow.Regime = Turbulent
	}
	flow.Loss = bounded(laminar + min(over/passage, 1)*(turbulent-laminar))
	return flow
}

// fanning returns the Fanning factor of turbulent flow by Dodge and Metzner. With x = 1/√f it solves
//
//	x + A (2 - m) log x = A log Re - C
//
// by Newton's way. The left side rises with x and bends downwards, so that after the first step the root is come to from
// below, never passing it.
func (l *law) fanning(re float64) float64 {
	m := l.slope
	root := math.Sqrt(math.Sqrt(m))
	scale := 4 / (root * root * root)
	right := scale*math.Log10(re) - 0.4/(m*math.Exp(0.2*math.Log(m)))
	bend := scale * (2 - m)
	x := 10.0
	for range 50 {
		step := (right - x - bend*math.Log10(x)) / (1 + bend*math.Log10E/x)
		if x+step <= 0 {
			x /= 2
			continue
		}
		x += step
		if math.Abs(step) < 1e-8*x {
			break
		}
	}
	return 1 / (x * x)
}
