package friction

import "math"

// Clinging returns the share of a pipe's own velocity with which it drags the fluid in the annulus along, on the mean:
// the clinging constant of laminar flow, from the ratio of the pipe's diameter to the bore's.
//
//	K = (a² - 2 a² ln a - 1) / (2 (1 - a²) ln a)
//
// It is the mean velocity between a wall at rest and a cylinder that moves along itself, with no pressure behind it, and
// so exact for a Newtonian fluid; it goes from nothing for a thread to one half for a narrow slot. It is zero for a ratio
// that is not between 0 and 1. Source: J. A. Burkhardt, Wellbore pressure surges produced by pipe movement, 1961 (the
// formula from memory; derived anew in the tests).
func Clinging(ratio float64) float64 {
	const narrow = 1 - 1e-4 // beyond, the formula is a difference of nothings
	switch {
	case !(ratio > 0) || ratio >= 1:
		return 0
	case ratio > narrow:
		return 0.5
	}
	log := math.Log(ratio)
	square := ratio * ratio
	return (square - 2*square*log - 1) / (2 * (1 - square) * log)
}
