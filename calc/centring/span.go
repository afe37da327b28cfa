package centring

import "math"

// modulus is Young's modulus of pipe steel in Pa: 30 million psi, as in the API formulas.
const modulus = 30e6 * 6894.757293168361

// Side returns the load per length in N/m that pushes a string against the wall: its buoyed weight per length in N/m on
// the slant, and its effective tension in N in a curved hole. Inclination is in rad from vertical; build and turn are the
// changes of inclination and of azimuth downwards, in rad/m. Tension pulls the string to the high side of a build, against
// its weight, and to the low side of a drop, with it:
//
//	sqrt((w sin I - T build)² + (T sin I turn)²)
//
// Source: C. A. Johancsik, D. B. Friesen and R. Dawson, Torque and drag in directional wells, 1984, SPE 11380 (from
// memory), per length.
func Side(weight, tension, inclination, build, turn float64) float64 {
	sin := math.Sin(inclination)
	return math.Hypot(weight*sin-tension*build, tension*sin*turn)
}

// A Span is pipe between two centralisers: its length and its diameters in m.
type Span struct {
	Length, OD, ID float64
}

// stiffness returns E I in N m².
func (s Span) stiffness() float64 {
	od, id := s.OD*s.OD, s.ID*s.ID
	return modulus * math.Pi / 64 * (od*od - id*id)
}

// Sag returns how far in m the pipe bends to the side in the middle of the span, under a load per length in N/m and an
// effective tension in N. Its ends are held straight by the neighbouring spans, which sag alike:
//
//	w L⁴ / (384 E I) × 24/u⁴ × (u²/2 - u (cosh u - 1)/sinh u)      u² = T L² / (4 E I)
//
// In compression the functions become tan and the sag grows; it reports false where the span would buckle, for a span that
// cannot be, and for values that are no numbers. Source: API RP 10D-2 / ISO 10427-2 (from memory); a beam clamped at
// both ends.
func (s Span) Sag(load, tension float64) (float64, bool) {
	stiff := s.stiffness()
	if !(s.Length > 0) || !(stiff > 0) || !(load >= 0) {
		return 0, false
	}
	square := s.Length * s.Length
	free := load * square * square / (384 * stiff)
	x := tension * square / (4 * stiff) // u²
	const little = 1e-3                 // below it the functions are their own series
	var factor float64
	switch u := math.Sqrt(math.Abs(x)); {
	case math.Abs(x) < little:
		factor = 1 - x/10
	case x > 0:
		factor = 12 / x * (1 - 2/u*math.Tanh(u/2))
	case u < math.Pi:
		factor = 12 / x * (1 - 2/u*math.Tan(u/2))
	default:
		return 0, false
	}
	sag := free * factor
	return sag, !math.IsNaN(sag) && !math.IsInf(sag, 0)
}
