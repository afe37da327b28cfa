package trajectory

import "math"

// sharpestTurn is the largest angle between two stations, in radians, that is
// still taken as one arc. Half a turn (pi) has no single arc, and close to it
// the plane of the arc hangs on the last digits of the survey.
const sharpestTurn = 3.0

// A vector is a direction or a displacement: down, north, east.
type vector struct{ down, north, east float64 }

// direction returns the unit vector of a station.
func direction(s Station) vector {
	sinInc, cosInc := math.Sincos(s.Inclination)
	sinAzi, cosAzi := math.Sincos(s.Azimuth)
	return vector{down: cosInc, north: sinInc * cosAzi, east: sinInc * sinAzi}
}

// angles returns inclination (0 to pi) and azimuth (0 to 2 pi) of a direction
// of any length, in radians.
func (v vector) angles() (inclination, azimuth float64) {
	inclination = math.Atan2(math.Hypot(v.north, v.east), v.down)
	return inclination, turnOnce(math.Atan2(v.east, v.north))
}

// turnOnce brings an angle in radians into 0 <= angle < 2 pi. An angle that is
// there already comes back unchanged to the last digit.
func turnOnce(angle float64) float64 {
	if angle >= 0 && angle < 2*math.Pi {
		return angle
	}
	angle = math.Mod(angle, 2*math.Pi)
	if angle < 0 {
		angle += 2 * math.Pi
	}
	if angle >= 2*math.Pi { // a tiny negative angle rounds up to the full turn
		return 0
	}
	return angle
}

// Dogleg returns the angle in radians between the directions of two stations,
// 0 to pi, whatever their depths.
//
// The usual arccosine loses half its digits where the hole is nearly straight,
// which is nearly everywhere; the haversine form used here does not. It is the
// same angle: 2 asin sqrt(sin²(dI/2) + sin I1 sin I2 sin²(dA/2)).
func Dogleg(a, b Station) float64 {
	build := math.Sin((b.Inclination - a.Inclination) / 2)
	turn := math.Sin((b.Azimuth - a.Azimuth) / 2)
	h := build*build + math.Sin(a.Inclination)*math.Sin(b.Inclination)*turn*turn
	return 2 * math.Asin(math.Sqrt(max(0, min(h, 1))))
}

// RatioFactor returns the factor of the minimum-curvature method, tan(d/2)/(d/2)
// for a dogleg d in radians, 0 <= d < pi. It is 1 for a straight interval, and
// near that it is taken from its series, which is exact to the last digit
// there: d²/12, d⁴/120 and 17 d⁶/20160 beyond 1; the next term is below 1e-17.
func RatioFactor(dogleg float64) float64 {
	if d2 := dogleg * dogleg; d2 < 4e-4 {
		return 1 + d2*(1.0/12+d2*(1.0/120+d2*17/20160))
	}
	return math.Tan(dogleg/2) / (dogleg / 2)
}

// A node is a station that has been placed, with the arc that leaves it.
type node struct {
	Point
	tangent vector  // unit direction at the station
	dogleg  float64 // rad, to the next station; 0 for a straight interval and for the last node
	sine    float64 // sin(dogleg)
	deepest float64 // greatest TVD in metres on the path from the rotary to here
}

// shares returns how the direction and the displacement at distance x below
// the node follow from the tangents t1 and t2 at the two ends of the interval:
// direction = a t1 + b t2 (spherical interpolation, a unit vector) and
// displacement = half (t1 + direction).
func (n *node) shares(x, length float64) (a, b, half float64) {
	if n.dogleg == 0 {
		return 1, 0, x / 2
	}
	angle := n.dogleg * (x / length)
	a = math.Sin(n.dogleg-angle) / n.sine
	b = math.Sin(angle) / n.sine
	return a, b, x / 2 * RatioFactor(angle)
}

// down returns the vertical depth gained at distance x below the node, in
// metres, and the rate at which it is being gained there.
func (n *node) down(x float64, next *node) (gained, rate float64) {
	a, b, half := n.shares(x, next.MD-n.MD)
	rate = a*n.tangent.down + b*next.tangent.down
	return half * (n.tangent.down + rate), rate
}

// level returns the distance below the node at which the arc runs level, and
// whether it does so inside the interval: there the hole turns from going down
// to going up, or the other way round.
func (n *node) level(next *node) (x float64, ok bool) {
	v1, v2 := n.tangent.down, next.tangent.down
	if n.dogleg == 0 || v1*v2 >= 0 {
		return 0, false
	}
	across := v1*math.Cos(n.dogleg) - v2
	angle := math.Atan2(math.Abs(v1)*n.sine, math.Copysign(1, v1)*across)
	return (next.MD - n.MD) * min(angle/n.dogleg, 1), true
}
