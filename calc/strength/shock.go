package strength

import "math"

// density is that of pipe steel in kg/m³.
const density = 7850

// Shock returns the force in N that stopping a moving string at once adds to its
// tension just above the stop: the speed in m/s before the stop times the impedance
// of the wall, area sqrt(E density), with the area in m². It is the front of the wave
// that runs up the steel when slips are set in motion or a joint hits a ledge. A wave
// reflected at an end may double it there and is not counted. The speed to take is
// the highest; common practice is 1.5 times the average.
//
// It reports false for values that are below zero or no numbers. Source: elastic wave
// in a bar, T. Vreeland, Dynamic stresses in long drill pipe strings, 1961; common
// practice 1780 v A in lbf, ft/s, in² (both from memory).
func Shock(area, speed float64) (float64, bool) {
	if !(area >= 0) || !(speed >= 0) {
		return 0, false
	}
	return finite(math.Sqrt(Modulus*density) * speed * area)
}
