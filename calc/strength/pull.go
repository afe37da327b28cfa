package strength

import "math"

// Overpull returns the force in N that may be pulled above a hanging load in N when
// the strength in N is used no further than over the given factor: strength/factor -
// load. It is below zero where the load is already too much. It reports false for a
// strength below zero, a factor not above zero, and values that are no numbers.
// Source: common practice.
func Overpull(strength, factor, load float64) (float64, bool) {
	if !(strength >= 0) || !(factor > 0) {
		return 0, false
	}
	return finite(strength/factor - load)
}

// EndLoad returns the tension in N that a pressure in Pa inside adds to a string
// above a plug: pressure times the area of the bore, whose diameter is in m. It holds
// for a string that is free below, as when the plug has bumped and the cement is
// wet; a string that is held takes up the load otherwise. For a test against a seat
// of another size give that size. It reports false for values that are below zero or
// no numbers. Source: common practice in casing design.
func EndLoad(pressure, bore float64) (float64, bool) {
	if !(pressure >= 0) || !(bore >= 0) {
		return 0, false
	}
	return finite(pressure * math.Pi / 4 * bore * bore)
}
