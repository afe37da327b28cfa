package centring

// Kept is the standoff at which API Spec 10D states the force of a bow centraliser, and that is asked of a string.
const Kept = 0.67

// Force returns the least force in N with which a bow centraliser pushes at a standoff of [Kept], for casing of an outside
// diameter in m and a mass per length in kg/m: the weight of 40 ft of it up to 9 5/8 in, half of that for larger casing.
// Source: API Spec 10D, whose table is for medium weights (from memory). The maker's centralisers may push harder.
func Force(od, mass float64) float64 {
	const joint, gravity, largest = 40 * 0.3048, 9.80665, 9.625 * 0.0254
	force := mass * joint * gravity
	if od > largest+1e-6 {
		force /= 2
	}
	return force
}

// Bow returns the standoff that a bow centraliser keeps under a side load in N, when it pushes with a force in N at a
// standoff of [Kept]: all of the clearance without load, and along a straight line from there, down to the wall. A maker's
// curve is stiffer at its end (common practice, from memory). It is zero for a force that is not above zero.
func Bow(load, force float64) float64 {
	if !(force > 0) {
		return 0
	}
	return min(1, max(0, 1-(1-Kept)*load/force))
}

// Rigid returns the standoff that a rigid centraliser of an outside diameter in m keeps on a pipe in a hole, whatever the
// load. It is no more than 1, and zero where there is no clearance or the centraliser is no larger than the pipe.
func Rigid(centraliser, pipe, hole float64) float64 {
	if !(hole > pipe) || !(centraliser > pipe) {
		return 0
	}
	return min(1, (centraliser-pipe)/(hole-pipe))
}

// Standoff returns the standoff in the middle of a span: what its centralisers keep less what the pipe sags, in m, over the
// clearance between pipe and hole of diameters in m. It is no less than zero: the pipe lies on the wall. Source: API RP
// 10D-2 / ISO 10427-2, standoff (from memory).
func Standoff(kept, sag, pipe, hole float64) float64 {
	clearance := (hole - pipe) / 2
	if !(clearance > 0) {
		return 0
	}
	return max(0, kept-sag/clearance)
}
