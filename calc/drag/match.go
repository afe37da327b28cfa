package drag

import (
	"math"

	"borewalk/calc/root"
)

// Friction factors outside 0 to mostFriction are not looked for, and the search ends when the load is met to a newton or a
// newton metre.
const (
	mostFriction = 1.0
	nearEnough   = 1.0
)

// MatchTension returns the one friction factor of the elements from one up to but not another with which an operation
// gives a tension in N at the top, the other elements keeping theirs. It reports false where none from 0 to 1 does, and
// for an operation whose tension does not hang on friction.
func (s String) MatchTension(op Operation, from, to int, wanted float64) (friction float64, ok bool) {
	return match(func(mu float64) float64 {
		tension, _ := s.top(op, span{from, to, mu})
		return tension - wanted
	})
}

// MatchTorque is MatchTension for a torque in N m at the top.
func (s String) MatchTorque(op Operation, from, to int, wanted float64) (friction float64, ok bool) {
	return match(func(mu float64) float64 {
		_, torque := s.top(op, span{from, to, mu})
		return torque - wanted
	})
}

// match looks for the friction factor at which a miss is zero, and reports false where friction makes no difference or none
// from nothing to the most meets it.
func match(miss func(float64) float64) (friction float64, ok bool) {
	atLow, atHigh := miss(0), miss(mostFriction)
	if math.Abs(atLow) <= nearEnough && math.Abs(atHigh) <= nearEnough {
		return 0, false
	}
	rises := math.Copysign(1, atHigh-atLow)
	return root.Crossing(func(mu float64) float64 { return rises * miss(mu) }, 0, mostFriction, nearEnough)
}
