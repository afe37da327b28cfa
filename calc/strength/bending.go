package strength

// Bending returns the stress in Pa that a hole's curvature in rad/m adds at a
// distance in m from the pipe's axis: E curvature distance, on the outer side of the
// bend in tension and on the inner side in compression. At the outside of the pipe
// the distance is half the diameter. The pipe is taken to follow the hole; between
// couplings that hold it off the wall, pipe in tension bends more than the hole does
// (Lubinski 1961), and a sharp dogleg with a high pull wants a closer look.
//
// It reports false for a curvature or distance that is below zero or no number.
// Source: beam theory; handbooks print 218 psi per in of diameter and °/100 ft (from
// memory).
func Bending(curvature, distance float64) (float64, bool) {
	if !(curvature >= 0) || !(distance >= 0) {
		return 0, false
	}
	return finite(Modulus * curvature * distance)
}

// BendingPull returns the axial force in N that would stress the whole wall as much
// as bending does its most strained fibre: [Bending] at the outside times the area.
// It is added to tension when a pull is compared with the body yield. Source: common
// practice; handbooks print 63 or 64 lbf per in of diameter, lb/ft of weight and
// °/100 ft (from memory). It reports false for a pipe that cannot be and a curvature
// below zero.
func BendingPull(p Pipe, curvature float64) (float64, bool) {
	if p.Check() != nil {
		return 0, false
	}
	stress, ok := Bending(curvature, p.OD/2)
	if !ok {
		return 0, false
	}
	return finite(stress * p.Area())
}
