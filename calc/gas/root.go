package gas

import "math"

// crossing returns where a function goes through nothing between 0, where it is not above, and high, where it is above.
// The function returns its value and its slope. Newton's step is taken where it stays between the ends and halves what is
// left; where it does not, the middle is: the ends close in on the crossing at every step, so that it cannot run away.
func crossing(f func(float64) (value, slope float64), guess, high float64) float64 {
	const most, narrow = 200, 1e-14
	low, x, last := 0.0, math.Min(guess, high/2), high
	for range most {
		value, slope := f(x)
		if value == 0 {
			return x
		}
		if value < 0 {
			low = x
		} else {
			high = x
		}
		step := -value / slope
		if next := x + step; !(next > low && next < high && math.Abs(step) <= last/2) {
			step = (low+high)/2 - x
		}
		x, last = x+step, math.Abs(step)
		if last <= narrow*x {
			break
		}
	}
	return x
}
