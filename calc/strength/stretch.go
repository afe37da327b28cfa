package strength

// The elastic and thermal figures of pipe steel used here.
const (
	Modulus   = 30e6 * psi   // Modulus is Young's modulus in Pa: 30 million psi, as in the API formulas.
	Poisson   = 0.3          // Poisson is Poisson's ratio, as in the API formulas.
	Expansion = 6.9e-6 * 1.8 // Expansion is the lengthening per K: 6.9e-6 per °F, common practice, from memory.
)

// Stretch returns by how much in m a length in m of wall of the given area in m²
// lengthens under an axial force in N, F L/(E A); it is below zero in compression.
// Source: Hooke's law, as in API RP 7G. It reports false for an area not above zero,
// a length below zero and values that are no numbers.
func Stretch(force, length, area float64) (float64, bool) {
	if !(area > 0) || !(length >= 0) {
		return 0, false
	}
	return finite(force * length / (Modulus * area))
}

// FreeLength returns the length in m of pipe that is free above a stuck point, from
// the stretch in m that an additional pull in N gives with a wall of the given area
// in m²: stretch E A/pull. It reports false for values that are below zero or no
// numbers, and without a pull. Source: Hooke's law; Lapeyrouse, Formulas and
// Calculations for Drilling, Production and Workover, chapter 4.
func FreeLength(stretch, pull, area float64) (float64, bool) {
	if !(stretch >= 0) || !(pull > 0) || !(area > 0) {
		return 0, false
	}
	return finite(stretch * Modulus * area / pull)
}

// Warming returns by how much in m a length in m lengthens when it becomes warmer by
// the given number of kelvin; it is below zero when it cools. It reports false for a
// length below zero and values that are no numbers. Source: [Expansion].
func Warming(length, kelvin float64) (float64, bool) {
	if !(length >= 0) {
		return 0, false
	}
	return finite(Expansion * length * kelvin)
}

// Ballooning returns by how much in m a length in m of pipe lengthens when the
// pressures inside and outside rise by the given mean amounts in Pa, by the swelling
// alone: -2 nu L (inside Ai - outside Ao)/(E A). Pressure inside makes pipe wider and
// shorter; what it does to the ends comes on top. Source: A. Lubinski et al., Helical
// buckling of tubing sealed in packers, 1962 (from memory). It reports false for a
// pipe that cannot be, a length below zero and values that are no numbers.
func Ballooning(p Pipe, length, inside, outside float64) (float64, bool) {
	if p.Check() != nil || !(length >= 0) {
		return 0, false
	}
	swelling := inside*p.Bore() - outside*(p.Bore()+p.Area())
	return finite(-2 * Poisson * length * swelling / (Modulus * p.Area()))
}

// Held returns the force in N that comes into a length in m of wall of the given area
// in m² which would lengthen by so much in m but is held at both ends:
// -E A change/L, compression where it would lengthen. It reports false where length
// or area is not above zero and for values that are no numbers. Source: Hooke's law.
func Held(change, length, area float64) (float64, bool) {
	if !(length > 0) || !(area > 0) {
		return 0, false
	}
	return finite(-Modulus * area * change / length)
}
