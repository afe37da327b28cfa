package friction

import "math"

// A Model gives friction pressure per length along the hole in Pa/m.
//
// Whoever solves for a flow relies on three promises: the answer is finite and not
// below zero, it is zero without flow, and it does not fall when the flow grows.
// A fluid with a yield point may jump up from zero as soon as it moves. Only the
// size of the flow counts, not its direction.
type Model interface {
	// Pipe is the loss in Pa/m of a flow in m³/s through a pipe of the given
	// inside diameter in metres.
	Pipe(f Fluid, flow, diameter float64) float64

	// Annulus is the loss in Pa/m of a flow in m³/s between a bore of diameter
	// outer and a body of diameter inner, both in metres.
	Annulus(f Fluid, flow, outer, inner float64) float64
}

// Flow is laminar below the first and turbulent above the second of these Reynolds
// numbers, counted with the apparent viscosity. Source: Guo and Liu, Applied
// Drilling Circulation Systems (2011), example 2.1.
const (
	LaminarBelow   = 2100.0
	TurbulentAbove = 4000.0
)

// Bingham is the [Model] of a fluid with a yield point and a constant plastic
// viscosity.
//
// Laminar, with v the mean velocity:
//
//	pipe     32 mu v / d² + 16 tau / (3 d)
//	annulus  48 mu v / D² +  6 tau / D          D = outer - inner
//
// These leave out the cubic term of Buckingham and Reiner (pipe) and of the exact
// slot. That is nothing at high flow; towards no flow they tend to 4/3 and 3/2 of
// what the yield point can really hold. The annulus is taken as a slot as wide as
// the gap, good for a ratio of diameters above 0.3; below that it loses too much.
//
// Turbulent, smooth wall, with the fanning factor of Blasius on the plastic
// viscosity and d the pipe's diameter or the [SlotDiameter]:
//
//	2 f rho v² / d     f = 0.0791 / Re^0.25     Re = rho v d / mu
//
// Blasius holds from a Reynolds number of some 4000 to 100000. Above that it gives
// too little: 15 % at a million.
//
// Up to [LaminarBelow], the Reynolds number being counted with the apparent
// viscosity, the loss is the laminar one. From [TurbulentAbove] on it is the larger
// of the two, since the turbulent loss of a fluid with much yield cannot be less
// than the laminar one. Between, it goes from one to the other in a straight line
// of the Reynolds number: a convention, without a source, that leaves no jump.
//
// Sources: Guo and Liu, Applied Drilling Circulation Systems (2011), chapter 2;
// Bourgoyne, Chenevert, Millheim and Young, Applied Drilling Engineering (1986),
// chapter 4, from memory.
//
// Arguments that make no sense (no room, no number, a fluid with values below
// zero) give zero.
type Bingham struct{}

// Pipe is the loss in Pa/m in a pipe; see [Bingham].
func (Bingham) Pipe(f Fluid, flow, diameter float64) float64 {
	v := math.Abs(Velocity(flow, diameter, 0))
	if v == 0 || !f.sound() {
		return 0
	}
	laminar := 32*f.PlasticViscosity*v/(diameter*diameter) + 16*f.YieldPoint/(3*diameter)
	return f.pass(laminar, v, diameter, f.ApparentInPipe(v, diameter))
}

// Annulus is the loss in Pa/m in an annulus; see [Bingham]. Without a body inside
// it is the loss in a pipe.
func (b Bingham) Annulus(f Fluid, flow, outer, inner float64) float64 {
	if !(inner > 0) {
		return b.Pipe(f, flow, outer)
	}
	v := math.Abs(Velocity(flow, outer, inner))
	if v == 0 || !f.sound() {
		return 0
	}
	gap := outer - inner
	laminar := 48*f.PlasticViscosity*v/(gap*gap) + 6*f.YieldPoint/gap
	return f.pass(laminar, v, slot*gap, f.ApparentInAnnulus(v, outer, inner))
}

// sound reports whether the fluid can be reckoned with.
func (f Fluid) sound() bool { return f.Density >= 0 && f.PlasticViscosity >= 0 && f.YieldPoint >= 0 }

// pass returns the loss in Pa/m, given the laminar one: that, the turbulent one,
// or what lies between.
func (f Fluid) pass(laminar, v, d, apparent float64) float64 {
	inertia := f.Density * v * d // Reynolds number times viscosity
	if !(inertia > LaminarBelow*apparent) {
		return bounded(laminar)
	}
	// The fourth root by two square roots is several times as fast as math.Pow.
	turbulent := 2 * 0.0791 * f.Density * v * v / d * math.Sqrt(math.Sqrt(f.PlasticViscosity/inertia))
	if !(turbulent > laminar) {
		return bounded(laminar)
	}
	share := 1.0
	if inertia < TurbulentAbove*apparent {
		share = (inertia/apparent - LaminarBelow) / (TurbulentAbove - LaminarBelow)
	}
	return bounded(laminar + share*(turbulent-laminar))
}

// bounded returns a loss that is a number, and zero for one that is none.
func bounded(loss float64) float64 {
	if math.IsNaN(loss) || math.IsInf(loss, 0) {
		return 0
	}
	return loss
}
