// Package root finds where a function goes through nothing. It is plain arithmetic that the physics beside it shares: it knows
// no well, no unit and no plan.
package root

import "math"

// rounds is the most looks that a search takes.
const rounds = 100

// narrow is the share of the higher end below which a bracket is a point: a function that is still not near nothing there jumps.
const narrow = 1e-12

// Crossing returns where a function that grows goes through nothing between two ends. There it is within near of nothing, and
// met is true; where the function jumps over nothing, it returns the last place found below the jump, and false. An end at which
// the function is near nothing is met at once. It returns not a number, and false, where the function is on the same side of
// nothing at both ends, or has no value.
//
// It takes the secant that keeps the crossing between its ends (regula falsi), and halves the end that stays, so that both close
// in: the Illinois rule. Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971) 168.
func Crossing(f func(float64) float64, low, high, near float64) (x float64, met bool) {
	below, above := f(low), f(high)
	switch {
	case math.Abs(below) <= near:
		return low, true
	case math.Abs(above) <= near:
		return high, true
	case !(below < 0 && above > 0):
		return math.NaN(), false
	}
	side := 0
	for range rounds {
		x := (low*above - high*below) / (above - below)
		if !(x > low && x < high) {
			x = (low + high) / 2
		}
		y := f(x)
		switch {
		case math.IsNaN(y):
			return math.NaN(), false
		case math.Abs(y) <= near:
			return x, true
		case y < 0:
			if low, below = x, y; side < 0 {
				above /= 2
			}
			side = -1
		default:
			if high, above = x, y; side > 0 {
				below /= 2
			}
			side = 1
		}
		if high-low <= narrow*math.Abs(high) {
			break
		}
	}
	return low, false
}
