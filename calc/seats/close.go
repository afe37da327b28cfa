package seats

// near is how far in kg/m³ what a hole needs may be over what it stands, for the rounding of numbers.
const near = 1e-9

// How near in m is closed in on what ends a hole: on where no mud is left, which costs little, and on the further condition.
const (
	exact       = 1e-9
	closeEnough = 0.01
	rounds      = 80 // more than it takes; depths of no well cannot be told apart so closely
)

// closeIn returns two depths within so much of each other, between one at which something holds and one at which it does not: it
// holds at the first, and at the second is seen why it does not go further.
func closeIn(holds func(x float64) bool, held, failed, within float64) (last, seen float64) {
	for range rounds {
		if failed-held <= within {
			break
		}
		if x := held + (failed-held)/2; holds(x) {
			held = x
		} else {
			failed = x
		}
	}
	return held, failed
}
