package strength

import (
	"fmt"
	"math"
)

// A Regime is the way in which pipe collapses.
type Regime int

// The regimes, from the thickest wall to the thinnest.
const (
	Yielding   Regime = iota + 1 // The inside of a thick wall yields.
	Plastic                      // Fitted to tests; most casing.
	Transition                   // A straight line from plastic to elastic.
	Elastic                      // A thin wall buckles, whatever its grade.
)

// String names the regime, and is empty for none.
func (r Regime) String() string {
	switch r {
	case Yielding:
		return "yield"
	case Plastic:
		return "plastic"
	case Transition:
		return "transition"
	case Elastic:
		return "elastic"
	}
	return ""
}

// A CollapsePressure is what pipe withstands from outside.
type CollapsePressure struct {
	Pressure float64 // Pressure is the least collapse pressure in Pa with nothing inside.
	Regime   Regime  // Regime is the formula that it comes from.
	Yield    float64 // Yield is the yield in Pa that was put in: the steel's, or what tension leaves of it.
}

// Collapse returns the collapse pressure of pipe without axial load and without
// pressure inside:
//
//	yield        2 Y (D/t - 1)/(D/t)²
//	plastic      Y (A/(D/t) - B) - C
//	transition   Y (F/(D/t) - G)
//	elastic      46.95 10⁶ psi/((D/t)(D/t - 1)²)
//
// Tables print it to 10 psi. Source: API Bulletin 5C3, minimum collapse; called
// historical in API TR 5C3 and ISO 10400. It returns an error for a pipe that cannot
// be.
func Collapse(p Pipe) (CollapsePressure, error) { return CollapseInTension(p, 0) }

// CollapseInTension returns the collapse pressure of pipe whose wall carries the
// given axial stress in Pa, bending left out: the yield is lowered to
// [YieldInTension] and the regime found anew. Where that falls below [LeastYield],
// out of the polynomials' range, the pressure there is taken down in proportion to
// the yield, as yield collapse does, down to nothing when tension alone yields the
// pipe; this end is not the bulletin's. Compression counts as no load, which is the
// careful side.
//
// Source: API Bulletin 5C3, collapse under axial tension stress. It
// returns an error for a pipe that cannot be and a stress that is no number.
func CollapseInTension(p Pipe, axial float64) (CollapsePressure, error) {
	if err := p.Check(); err != nil {
		return CollapsePressure{}, err
	}
	yield, ok := YieldInTension(p.Yield, axial)
	if !ok {
		return CollapsePressure{}, fmt.Errorf("axial stress %g Pa is not a number; mend the axial load", axial)
	}
	inRange := max(yield, LeastYield)
	c, _ := CoefficientsAt(inRange) // in range by Check, which bounds the yield above
	pressure, regime := c.collapse(p.Slenderness())
	return CollapsePressure{Pressure: pressure * yield / inRange, Regime: regime, Yield: yield}, nil
}

// collapse returns the collapse pressure in Pa at a ratio of diameter to wall.
func (c Coefficients) collapse(slender float64) (float64, Regime) {
	limits := c.Limits()
	switch {
	case slender <= limits.Yielding:
		return 2 * c.Yield * (slender - 1) / (slender * slender), Yielding
	case slender <= limits.Plastic:
		return c.Yield*(c.A/slender-c.B) - c.C, Plastic
	case slender <= limits.Transition:
		return c.Yield * (c.F/slender - c.G), Transition
	}
	return elastic / (slender * (slender - 1) * (slender - 1)), Elastic
}

// YieldInTension returns what axial tension leaves of the yield for pressure from
// outside, [sqrt(1 - 0.75 (s/Y)²) - 0.5 s/Y] Y, yield and axial stress in Pa: the
// whole yield without tension or in compression, nothing from the stress at which
// tension alone yields the pipe. It reports false for a yield that is not above zero
// and for values that are not numbers.
//
// Source: API Bulletin 5C3, axial stress equivalent grade; von Mises ellipse without
// pressure inside. The addendum of 2015 to API TR 5C3 puts the axial stress plus the
// pressure inside in place of s and the difference of pressures in place of
// [EquivalentExternal]; it gives other numbers and is not used here.
func YieldInTension(yield, axial float64) (float64, bool) {
	_, number := finite(axial)
	if _, ok := finite(yield); !ok || !number || !(yield > 0) {
		return 0, false
	}
	share := axial / yield
	switch {
	case !(share > 0):
		return yield, true
	case share >= 1:
		return 0, true
	}
	return max(0, math.Sqrt(1-0.75*share*share)-0.5*share) * yield, true
}

// EquivalentExternal returns the pressure in Pa from outside that would load an empty
// pipe towards collapse as much as the given pressures outside and inside do, in Pa:
// outside - (1 - 2/(D/t)) inside. Pressure inside helps by a little less than its own
// size, since it acts on the smaller circle. It is below zero where the pipe is not
// loaded towards collapse. Compare it with [CollapseInTension].
//
// Source: API Bulletin 5C3, effect of internal pressure on collapse. The addendum of
// 2015 to API TR 5C3 replaces it, see [YieldInTension]. It returns an error for a
// pipe that cannot be and pressures that are not numbers.
func EquivalentExternal(p Pipe, outside, inside float64) (float64, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	equivalent, ok := finite(outside - (1-2/p.Slenderness())*inside)
	if !ok {
		return 0, fmt.Errorf("pressures %g Pa outside and %g Pa inside; give two numbers", outside, inside)
	}
	return equivalent, nil
}
