package swab

import "math"

// crossing returns where a function that grows goes through nothing between two places, where it is below and above, to
// within near of nothing. It takes the secant that keeps the root between its ends (regula falsi), and halves the end that
// stays (the Illinois rule), so that it gets there over a jump as well, which it closes in on from below.
func crossing(f func(float64) float64, low, high, below, above, near float64) float64 {
	const most, narrow = 100, 1e-9
	side := 0
	for range most {
		x := (low*above - high*below) / (above - below)
		y := f(x)
		if math.Abs(y) < near {
			return x
		}
		if y < 0 {
			if low, below = x, y; side < 0 {
				above /= 2
			}
			side = -1
		} else {
			if high, above = x, y; side > 0 {
				below /= 2
			}
			side = 1
		}
		if high-low < narrow*high {
			break
		}
	}
	return low
}
