package rheology

import "math"

// What speed and dial of the viscometer mean: a shear rate in 1/s for each revolution a minute, and a shear stress in Pa for
// each degree, which is 1.067 lbf/100 ft². Source: API RP 13B-1 and RP 13D, for R1, B1 and F1; from memory. The trade rounds
// the first to 511 1/s at 300, and reads a degree as 1 lbf/100 ft².
const (
	RatePerSpeed    = 1.7023
	StressPerDegree = 0.511
)

// A Reading is what the dial shows at a speed.
type Reading struct {
	Speed float64 // Speed is in revolutions a minute.
	Dial  float64 // Dial is in degrees.
}

// Rate returns the shear rate in 1/s.
func (r Reading) Rate() float64 { return RatePerSpeed * r.Speed }

// Stress returns the shear stress in Pa.
func (r Reading) Stress() float64 { return StressPerDegree * r.Dial }

// A Law is the law of Herschel and Bulkley, stress = Yield + Consistency × rate^Index, in Pa, Pa·sⁿ and 1.
type Law struct {
	Yield, Consistency, Index float64
}

// Stress returns the shear stress in Pa at a shear rate in 1/s.
func (l Law) Stress(rate float64) float64 { return l.Yield + l.Consistency*math.Pow(rate, l.Index) }

// Dial returns the reading in degrees that a fluid of the law gives at a speed in revolutions a minute.
func (l Law) Dial(speed float64) float64 { return l.Stress(RatePerSpeed*speed) / StressPerDegree }

// Miss returns by how many degrees a law misses readings: the root of the mean square, and the greatest with its place among
// them. Without readings all are zero.
func (l Law) Miss(readings []Reading) (rms, greatest float64, at int) {
	if len(readings) == 0 {
		return 0, 0, 0
	}
	sum := 0.0
	for k, r := range readings {
		off := math.Abs(l.Dial(r.Speed) - r.Dial)
		sum += off * off
		if off > greatest {
			greatest, at = off, k
		}
	}
	return math.Sqrt(sum / float64(len(readings))), greatest, at
}

// Field returns what the trade reports of the readings at 600 and 300 revolutions a minute: the plastic viscosity in Pa·s,
// one centipoise a degree of their difference, and the yield point in Pa, one lbf/100 ft² for each degree by which the 300
// reading exceeds that. Since a degree is 1.067 lbf/100 ft², the yield point so reported is 6 % less than what the straight
// line through the two stresses has.
//
// Source: API RP 13B-1; Bourgoyne and others, Applied Drilling Engineering (1986), chapter 2.
func Field(r600, r300 float64) (plastic, yield float64) {
	const perDegree = 0.45359237 * 9.80665 / (0.3048 * 0.3048) / 100 // 1 lbf/100 ft² in Pa
	return (r600 - r300) / 1000, (2*r300 - r600) * perDegree
}

// LowShear returns the low-shear yield in Pa of the readings at 6 and 3 revolutions a minute: where a straight line through
// them meets the speed zero. Source: API RP 13D, from memory.
func LowShear(r6, r3 float64) float64 { return (2*r3 - r6) * StressPerDegree }
