package friction

import "math"

// Flow is laminar below the first and turbulent above the second of these Reynolds numbers, counted with the apparent
// viscosity. Source: Guo and Liu, Applied Drilling Circulation Systems (2011), example 2.1.
const (
	LaminarBelow   = 2100.0
	TurbulentAbove = 4000.0
)

// BinghamSlot is the [Correlation] of a fluid with a yield point and a constant plastic viscosity. Of a fluid with another
// law it takes [Fluid.PlasticViscosity] and [Fluid.YieldPoint], the straight line through its stresses at 511 and 1022 1/s,
// as if they had been read from a viscometer at 300 and 600 revolutions a minute.
//
// Laminar, with v the mean velocity:
//
//	pipe     32 mu v / d² + 16 tau / (3 d)
//	annulus  48 mu v / D² +  6 tau / D          D = outer - inner
//
// These leave out the cubic term of Buckingham and Reiner (pipe) and of the exact slot. That is nothing at high flow;
// towards no flow they tend to 4/3 and 3/2 of what the yield point can really hold. The annulus is taken as a slot as wide
// as the gap, good for a ratio of diameters above 0.3; below that it loses too much.
//
// Turbulent, smooth wall, with the fanning factor of Blasius on the plastic viscosity and d the pipe's diameter or the
// [SlotDiameter]:
//
//	2 f rho v² / d     f = 0.0791 / Re^0.25     Re = rho v d / mu
//
// Blasius holds from a Reynolds number of some 4000 to 100000. Above that it gives too little: 15 % at a million.
//
// Up to [LaminarBelow], the Reynolds number being counted with the apparent viscosity, the loss is the laminar one. From
// [TurbulentAbove] on it is the larger of the two, since the turbulent loss of a fluid with much yield cannot be less than
// the laminar one. Between, it goes from one to the other in a straight line of the Reynolds number: a convention, without
// a source, that leaves no jump.
//
// Sources: Guo and Liu, Applied Drilling Circulation Systems (2011), chapter 2; Bourgoyne, Chenevert, Millheim and Young,
// Applied Drilling Engineering (1986), chapter 4, from memory.
type BinghamSlot struct{}

// Name is the name to pick it by.
func (BinghamSlot) Name() string { return "Bingham slot" }

// Source is what stands behind it.
func (BinghamSlot) Source() string {
	return "Bingham in pipe and slot, Blasius on the plastic viscosity: Guo and Liu, Applied Drilling Circulation Systems (2011), chapter 2"
}

// Pipe is the loss in Pa/m in a pipe; see [BinghamSlot].
func (c BinghamSlot) Pipe(f Fluid, flow, diameter float64) float64 {
	return c.InPipe(f, flow, diameter).Loss
}

// Annulus is the loss in Pa/m in an annulus; see [BinghamSlot]. Without a body inside it is the loss in a pipe.
func (c BinghamSlot) Annulus(f Fluid, flow, outer, inner float64) float64 {
	return c.InAnnulus(f, flow, outer, inner).Loss
}

// InPipe is the flow in a pipe; see [BinghamSlot].
func (BinghamSlot) InPipe(f Fluid, flow, diameter float64) Flow {
	v := math.Abs(Velocity(flow, diameter, 0))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	l := f.law
	laminar := 32*l.plastic*v/(diameter*diameter) + 16*l.point/(3*diameter)
	return f.pass(laminar, v, diameter, l.plastic+l.point*diameter/(6*v))
}

// InAnnulus is the flow in an annulus; see [BinghamSlot].
func (c BinghamSlot) InAnnulus(f Fluid, flow, outer, inner float64) Flow {
	if !(inner > 0) {
		return c.InPipe(f, flow, outer)
	}
	v := math.Abs(Velocity(flow, outer, inner))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	l, gap := f.law, outer-inner
	laminar := 48*l.plastic*v/(gap*gap) + 6*l.point/gap
	return f.pass(laminar, v, slot*gap, l.plastic+l.point*gap/(8*v))
}

// pass returns the flow, given its laminar loss in Pa/m: with that, the turbulent one, or what lies between.
func (f Fluid) pass(laminar, v, d, apparent float64) Flow {
	inertia := f.Density * v * d // Reynolds number times viscosity
	flow := Flow{Loss: bounded(laminar), Velocity: v, Regime: Laminar}
	if apparent > 0 {
		flow.Reynolds = bounded(inertia / apparent)
	}
	if !(inertia > LaminarBelow*apparent) {
		return flow
	}
	// The fourth root by two square roots is several times as fast as math.Pow.
	turbulent := 2 * 0.0791 * f.Density * v * v / d * math.Sqrt(math.Sqrt(f.law.plastic/inertia))
	if !(turbulent > laminar) {
		return flow
	}
	share := 1.0
	flow.Regime = Turbulent
	if inertia < TurbulentAbove*apparent {
		share = (inertia/apparent - LaminarBelow) / (TurbulentAbove - LaminarBelow)
		flow.Regime = Transition
	}
	flow.Loss = bounded(laminar + share*(turbulent-laminar))
	return flow
}
