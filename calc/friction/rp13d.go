package friction

import "math"

// RP13D is the [Correlation] of API RP 13D for a fluid of Herschel and Bulkley, as its editions of 2006 and later have it.
//
// The shear rate at the wall is that of a Newtonian fluid times a factor of geometry, and the stress there follows from the
// law, its yield raised by another, with n the index:
//
//	pipe     rate = 8 v / d  × (3n + 1) / (4n)     stress = (4/3)ⁿ yield + K rateⁿ
//	annulus  rate = 12 v / D × (2n + 1) / (3n)     stress = (3/2)ⁿ yield + K rateⁿ     D = outer - inner
//
// That is exact without yield, and the same as [BinghamSlot] for n = 1. With a yield it is from 3 % below the exact stress up
// to those factors times it, to which it tends at no flow. The annulus is taken as a slot as wide as the gap.
//
// The Reynolds number is generalised, Re = 8 rho v² / stress, and the Fanning factor a blend of three:
//
//	laminar     16 / Re
//	transition  16 Re / Rc²                    Rc = 3470 - 1370 m
//	turbulent   a / Re^b                       a = (log m + 3.93) / 50     b = (1.75 - log m) / 7
//	between     (transition^-8 + turbulent^-8)^(-1/8)
//	all         (between^12 + laminar^12)^(1/12)
//
// m is the index of the power law through the stresses at 511 and 1022 1/s: n itself without yield. A fluid that is nearly
// all yield has an m below [LeastIndex], which is taken for it. The loss is 4 stress / d when laminar, else 2 f rho v² / d,
// with D in the place of d.
//
// The wall is smooth. For water the turbulent factor keeps within 4 % of Colebrook's from a Reynolds number of 4000 to
// 100000; at a million it is 14 % low.
//
// Source: API RP 13D, Rheology and hydraulics of oil-well drilling fluids, 5th and later editions, section 7, from memory;
// turbulence of power-law fluids: Schuh 1964 after Dodge and Metzner 1959; the blend: Churchill and Usagi 1972.
type RP13D struct{}

// Name is the name to pick it by.
func (RP13D) Name() string { return "RP 13D" }

// Source is what stands behind it.
func (RP13D) Source() string {
	return "API RP 13D (2006 and later), generalised Herschel-Bulkley in pipe and slot, smooth wall; from memory"
}

// turbulence returns the factors of the turbulent Fanning factor a / Re^b for a slope m of stress over rate in logarithms.
func turbulence(m float64) (a, b float64) {
	log := math.Log10(m)
	return (log + 3.93) / 50, (1.75 - log) / 7
}

// Pipe is the loss in Pa/m in a pipe; see [RP13D].
func (c RP13D) Pipe(f Fluid, flow, diameter float64) float64 {
	return c.InPipe(f, flow, diameter).Loss
}

// Annulus is the loss in Pa/m in an annulus; see [RP13D]. Without a body inside it is the loss in a pipe.
func (c RP13D) Annulus(f Fluid, flow, outer, inner float64) float64 {
	return c.InAnnulus(f, flow, outer, inner).Loss
}

// InPipe is the flow in a pipe; see [RP13D].
func (RP13D) InPipe(f Fluid, flow, diameter float64) Flow {
	v := math.Abs(Velocity(flow, diameter, 0))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	n := f.law.index
	return f.blend(v, diameter, f.law.pipeYield+f.law.viscous(8*v/diameter*(3*n+1)/(4*n)))
}

// InAnnulus is the flow in an annulus; see [RP13D].
func (c RP13D) InAnnulus(f Fluid, flow, outer, inner float64) Flow {
	if !(inner > 0) {
		return c.InPipe(f, flow, outer)
	}
	v := math.Abs(Velocity(flow, outer, inner))
	if v == 0 || !f.rubs() {
		return Flow{}
	}
	n, gap := f.law.index, outer-inner
	return f.blend(v, gap, f.law.gapYield+f.law.viscous(12*v/gap*(2*n+1)/(3*n)))
}

// blend returns the flow at a mean velocity in m/s, given its laminar stress at the wall in Pa, d being the diameter or gap.
//
// It counts in factors over the laminar one, so that no power of a Fanning factor overflows.
func (f Fluid) blend(v, d, wall float64) Flow {
	flow := Flow{Loss: bounded(4 * wall / d), Velocity: v, Reynolds: generalised(f.Density, v, wall), Regime: Laminar}
	crossing := flow.Reynolds / (3470 - 1370*f.law.slope)
	if crossing < 0.2 { // its square to the twelfth power is less than a float64 can add to 1
		return flow
	}
	transition := crossing * crossing
	turbulent := f.law.a / 16 * flow.Reynolds
	if f.law.b == 0.25 {
		turbulent /= math.Sqrt(math.Sqrt(flow.Reynolds))
	} else {
		turbulent /= math.Pow(flow.Reynolds, f.law.b)
	}
	between := lesser(transition, turbulent)
	switch {
	case between < 1:
	case transition < turbulent:
		flow.Regime = Transition
	default:
		flow.Regime = Turbulent
	}
	flow.Loss = bounded(flow.Loss * greater(1, between))
	return flow
}

// lesser returns (x^-8 + y^-8)^(-1/8), somewhat less than the lesser of two numbers above zero.
func lesser(x, y float64) float64 {
	low, high := min(x, y), max(x, y)
	r := low / high
	r *= r
	r *= r
	return low / math.Sqrt(math.Sqrt(math.Sqrt(1+r*r)))
}

// greater returns (x^12 + y^12)^(1/12), somewhat more than the greater of two numbers above zero.
func greater(x, y float64) float64 {
	low, high := min(x, y), max(x, y)
	r := low / high
	r *= r * r
	r *= r
	return high * math.Cbrt(math.Sqrt(math.Sqrt(1+r*r)))
}
