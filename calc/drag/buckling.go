package drag

import "math"

// A Pipe is what bends when a string buckles.
type Pipe struct {
	Stiffness float64 // E I, N m²
	Weight    float64 // buoyed, N/m
	Clearance float64 // between tool joint and wall, half the difference of the diameters, m
}

// Numbers of the limits in an upright hole, of (E I w²)^(1/3): the compression at the lower end of a long string that its
// own weight alone pulls straight. The wave begins at 1.94 (A. Lubinski, A study of the buckling of rotary drilling strings,
// 1950, from memory; the tests solve his beam anew, which is 7.94 (E I / w)^(1/3) long and free to lean: a longer one leans
// a little earlier, pipe that the wall stops later, at 2.55), the helix at 5.55 (J. Wu, H. C. Juvkam-Wold and R. Lu,
// Helical buckling of pipes in extended reach and horizontal wells, 1993, from memory).
const (
	uprightWave  = 1.94
	uprightHelix = 5.55
)

// helixOverWave is by how much a helix in a slant needs more compression than a wave: Y.-C. Chen, Y.-H. Lin and J. B.
// Cheatham, Tubing and casing buckling in horizontal wells, 1990, from memory. Others find up to 1.83 for a load that
// grows while the helix forms; this is the least.
const helixOverWave = math.Sqrt2

// Limit returns the effective compression in N at which pipe that a force in N/m holds to the low side of its hole begins
// to lie in a wave, and that at which it winds into a helix. The force is w sin I in a straight hole. Near the vertical
// it holds nothing, and the pipe's own weight does; whichever holds more counts.
//
//	wave   2 sqrt(E I q / r), at least 1.94 (E I w²)^(1/3)
//	helix  sqrt(2) times the first, at least 5.55 (E I w²)^(1/3)
//
// Source: R. Dawson and P. R. Paslay, Drill-pipe buckling in inclined holes, 1984 (SPE 11167, from memory): the least
// compression for which a wave takes no work, over all lengths of wave. A pipe without clearance, stiffness or weight
// gives zero.
func (p Pipe) Limit(side float64) (wave, helix float64) {
	if !(p.Stiffness > 0) {
		return 0, 0
	}
	if p.Clearance > 0 && side > 0 {
		wave = 2 * math.Sqrt(p.Stiffness*side/p.Clearance)
	}
	helix = helixOverWave * wave
	if p.Weight > 0 {
		own := math.Cbrt(p.Stiffness * p.Weight * p.Weight)
		wave, helix = max(wave, uprightWave*own), max(helix, uprightHelix*own)
	}
	return wave, helix
}

// Holding returns the force in N/m that holds pipe to the low side for [Pipe.Limit]: its buoyed weight across the hole, or
// what compressed pipe presses on the wall with if that is less, as in a hole that drops. That compression presses pipe to
// the outside of a build, which holds it too, is not counted.
func Holding(weight, inclination float64, at Place) float64 {
	across := max(0, weight*math.Sin(inclination))
	if at.Tension < 0 {
		return min(across, at.Side)
	}
	return across
}
