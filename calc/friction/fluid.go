package friction

import (
	"fmt"
	"math"
)

// The shear rates in 1/s of a rotational viscometer at 300 and 600 revolutions a minute, as the trade rounds them. The
// straight line through the stresses there gives plastic viscosity and yield point; the slope between them in logarithms
// gives the index that turbulence is worked out with.
const (
	SlowShear = 511.0
	FastShear = 1022.0
)

// The flow behaviour indices that are worked with. A fluid with another one is none: its friction is zero.
const (
	LeastIndex = 0.1
	MostIndex  = 1.5
)

// A Fluid is what friction needs to know of a fluid: its density, and the law of Herschel and Bulkley between its shear
// stress and its shear rate,
//
//	stress = yield + consistency × rate^index
//
// of which Bingham (index 1), the power law (no yield) and Newton (both) are the limits. It is made by [HerschelBulkley],
// [Bingham], [PowerLaw] or [Newton]; only the density may be changed afterwards. A Fluid that has a density alone rubs
// nowhere.
type Fluid struct {
	Density float64 // Density in kg/m³.
	law     *law    // nil: none; never changed, so that fluids may share it
}

// law is a law of Herschel and Bulkley with what is worked out of it once, since powers and logarithms are dear.
type law struct {
	yield, consistency, index float64
	sound                     bool // it can be reckoned with

	plastic, point      float64 // of the straight line through the stresses at SlowShear and FastShear, in Pa·s and Pa
	slope               float64 // between them, in logarithms
	pipeYield, gapYield float64 // what the yield stress holds at the wall of pipe and slot by RP 13D, in Pa
	a, b                float64 // of turbulence by RP 13D
}

// HerschelBulkley returns the fluid of a density in kg/m³ with a yield stress in Pa, a consistency in Pa·sⁿ and an index n
// between [LeastIndex] and [MostIndex].
func HerschelBulkley(density, yield, consistency, index float64) Fluid {
	l := &law{yield: yield, consistency: consistency, index: index}
	l.sound = consistency >= 0 && yield >= 0 && index >= LeastIndex && index <= MostIndex
	l.plastic, l.point = consistency, yield
	l.pipeYield, l.gapYield = 4*yield/3, 3*yield/2
	if index != 1 {
		l.plastic, l.point = l.line()
		l.pipeYield, l.gapYield = math.Pow(4.0/3, index)*yield, math.Pow(1.5, index)*yield
	}
	l.slope = index
	if yield > 0 {
		l.slope = min(max(math.Log2(l.stress(FastShear)/l.stress(SlowShear)), LeastIndex), MostIndex)
	}
	l.a, l.b = turbulence(l.slope)
	return Fluid{density, l}
}

// Bingham returns the fluid of a density in kg/m³ with a plastic viscosity in Pa·s and a yield point in Pa.
func Bingham(density, viscosity, yield float64) Fluid {
	return HerschelBulkley(density, yield, viscosity, 1)
}

// PowerLaw returns the fluid of a density in kg/m³ without yield, with a consistency in Pa·sⁿ and an index n.
func PowerLaw(density, consistency, index float64) Fluid {
	return HerschelBulkley(density, 0, consistency, index)
}

// Newton returns the fluid of a density in kg/m³ with one viscosity in Pa·s.
func Newton(density, viscosity float64) Fluid { return HerschelBulkley(density, 0, viscosity, 1) }

// of returns the law of a fluid, for one that has none a law without any stress.
func (f Fluid) of() *law {
	if f.law == nil {
		return &law{index: 1}
	}
	return f.law
}

// Yield returns the yield stress in Pa, Consistency the consistency in Pa·sⁿ and Index the flow behaviour index n.
func (f Fluid) Yield() float64       { return f.of().yield }
func (f Fluid) Consistency() float64 { return f.of().consistency }
func (f Fluid) Index() float64       { return f.of().index }

// PlasticViscosity returns the plastic viscosity in Pa·s. That of a fluid that is not Bingham is the slope of the straight
// line through its stresses at [SlowShear] and [FastShear], as the trade takes it from the 300 and 600 readings.
func (f Fluid) PlasticViscosity() float64 { return f.of().plastic }

// YieldPoint returns the yield point in Pa: where the line of [Fluid.PlasticViscosity] meets the rate zero.
func (f Fluid) YieldPoint() float64 { return f.of().point }

// IsBingham reports whether plastic viscosity and yield point say all of the law.
func (f Fluid) IsBingham() bool { return f.of().index == 1 }

// Stress returns the shear stress in Pa at a shear rate in 1/s above zero.
func (f Fluid) Stress(rate float64) float64 { return f.of().stress(rate) }

func (l *law) stress(rate float64) float64 { return l.yield + l.viscous(rate) }

// viscous returns the part of the stress that grows with the rate.
func (l *law) viscous(rate float64) float64 {
	if l.index == 1 {
		return l.consistency * rate
	}
	return l.consistency * math.Pow(rate, l.index)
}

// line returns slope and start of the straight line through the stresses at the two field rates. A law that bends upwards
// (index above 1) may start it below zero: then it is the line from nothing to the faster.
func (l *law) line() (viscosity, yield float64) {
	slow, fast := l.stress(SlowShear), l.stress(FastShear)
	viscosity = (fast - slow) / (FastShear - SlowShear)
	if yield = slow - viscosity*SlowShear; yield < 0 {
		return fast / FastShear, 0
	}
	return viscosity, yield
}

// Check returns what is wrong with the numbers of a fluid. One that has a density alone is right, and rubs nowhere.
func (f Fluid) Check() error {
	l := f.of()
	for _, v := range [...]float64{f.Density, l.consistency, l.yield} {
		if !(v >= 0) || math.IsInf(v, 0) {
			return fmt.Errorf("a density, viscosity or yield of %g; give 0 or more", v)
		}
	}
	if !(l.index >= LeastIndex && l.index <= MostIndex) {
		return fmt.Errorf("a flow behaviour index of %g; give %g to %g", l.index, LeastIndex, MostIndex)
	}
	return nil
}

// rubs reports whether the fluid can be reckoned with.
func (f Fluid) rubs() bool { return f.law != nil && f.law.sound && f.Density >= 0 }

// ApparentInPipe returns the apparent viscosity in Pa·s at a velocity in m/s in a pipe of diameter d metres: that of the
// Newtonian fluid with the same laminar loss, mu + tau d / (6 v), by plastic viscosity and yield point. It is the plastic
// viscosity where the fluid stands. Source: Guo and Liu, Applied Drilling Circulation Systems (2011), example 2.5.
func (f Fluid) ApparentInPipe(velocity, d float64) float64 {
	l := f.of()
	if !(velocity > 0) {
		return l.plastic
	}
	return l.plastic + l.point*d/(6*velocity)
}

// ApparentInAnnulus is [Fluid.ApparentInPipe] for an annulus taken as a slot: mu + tau (outer - inner) / (8 v). Source: as
// there.
func (f Fluid) ApparentInAnnulus(velocity, outer, inner float64) float64 {
	l := f.of()
	if !(velocity > 0) {
		return l.plastic
	}
	return l.plastic + l.point*(outer-inner)/(8*velocity)
}

// Hedstrom returns the Hedström number rho tau d² / mu² for a pipe, or with the [SlotDiameter] for an annulus: how much the
// yield point delays turbulence. It is zero for a viscosity that is not above zero.
func (f Fluid) Hedstrom(d float64) float64 {
	l := f.of()
	if !(l.plastic > 0) {
		return 0
	}
	return f.Density * l.point * d * d / (l.plastic * l.plastic)
}
