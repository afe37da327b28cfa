package friction

import "math"

// shape is what a fluid flows through when laminar flow is worked out exactly.
type shape uint8

const (
	pipe   shape = iota
	gapped       // a slot, for an annulus
)

// wall returns the stress in Pa at the wall of the exact laminar flow, given the rate in 1/s that a Newtonian fluid would
// have there: 8 v / d in a pipe, 12 v / D in an annulus.
//
// Added up over the profile, the rate r at the wall, where stress = yield + K rⁿ, belongs to the Newtonian rate
//
//	pipe  4 r x (x² / (m+3) + 2 x y / (m+2) + y² / (m+1))     x = K rⁿ / stress, y = yield / stress, m = 1/n
//	slot  3 r x (x / (m+2) + y / (m+1))
//
// In logarithms that is a curve bent downwards, with a slope from 1 + n at rest to 1, so that Newton's way comes to the root
// from below without ever passing it, starting from the rate without yield.
func (l *law) wall(newtonian float64, in shape) float64 {
	m := 1 / l.index
	r := newtonian * (m + 3) / 4
	if in == gapped {
		r = newtonian * (m + 2) / 3
	}
	if l.yield == 0 {
		return l.viscous(r)
	}
	if l.consistency == 0 {
		return l.yield
	}
	for range 60 {
		viscous := l.viscous(r)
		x := viscous / (l.yield + viscous)
		y := 1 - x
		var have, slope float64 // slope is d ln have / d ln r, by Rabinowitsch
		if in == pipe {
			have = 4 * r * x * (x*x/(m+3) + 2*x*y/(m+2) + y*y/(m+1))
			slope = (4*r/have - 3) * l.index * x
		} else {
			have = 3 * r * x * (x/(m+2) + y/(m+1))
			slope = (3*r/have - 2) * l.index * x
		}
		step := math.Log(newtonian/have) / slope
		if !(math.Abs(step) < 700) { // a flow so slow that it is none
			return l.yield
		}
		r *= math.Exp(step)
		if math.Abs(step) < 1e-8 { // the next one would be its square
			break
		}
	}
	return l.stress(r)
}
