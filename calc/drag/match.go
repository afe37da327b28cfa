package drag

import "math"

// Friction factors outside 0 to mostFriction are not looked for, and the search ends when the load is met to a newton or a
// newton metre, or after mostLooks looks.
const (
	mostFriction = 1.0
	nearEnough   = 1.0
	mostLooks    = 40
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

// match looks for the friction factor at which a miss is zero, by false position inside a bracket; where one end is kept
// twice its miss counts half, so that the bracket closes from both sides (Illinois method, Dowell and Jarratt 1971).
func match(miss func(float64) float64) (friction float64, ok bool) {
	low, high := 0.0, mostFriction
	atLow, atHigh := miss(low), miss(high)
	if math.Abs(atLow) <= nearEnough && math.Abs(atHigh) <= nearEnough {
		return 0, false // friction makes no difference
	}
	if !(atLow*atHigh <= 0) {
		return 0, false
	}
	kept := 0
	for range mostLooks {
		friction = low - atLow*(high-low)/(atHigh-atLow)
		at := miss(friction)
		switch {
		case math.Abs(at) <= nearEnough:
			return friction, true
		case math.IsNaN(at):
			return 0, false
		case at*atLow > 0:
			low, atLow = friction, at
			if kept == 1 {
				atHigh /= 2
			}
			kept = 1
		default:
			high, atHigh = friction, at
			if kept == -1 {
				atLow /= 2
			}
			kept = -1
		}
	}
	return friction, math.Abs(miss(friction)) <= nearEnough*mostLooks
}
