package killsheet

import "math"

// Powers of the rate with which a pressure loss of turbulent mud goes.
const (
	Square    = 2    // Square is what kill sheets use to carry a slow pressure to another rate: common practice, from memory.
	Turbulent = 1.86 // Turbulent is the power in the hydraulics of slide rules, and of [ChokeLine.Loss]: common practice, from memory.
)

// Initial returns the standpipe pressure in Pa at which a kill begins: SIDPP, the overbalance that is held, and the slow
// circulating pressure with the mud in the hole. The slow pressure is that through the riser; the choke line's loss is taken off
// at the choke ([BringUp]). Source: Lapeyrouse, chapter 4 (from memory).
func Initial(sidpp, overbalance, slow float64) (float64, error) {
	const topic = "initial circulating pressure"
	if err := check(topic, some("SIDPP", sidpp, "Pa"), some("overbalance", overbalance, "Pa"),
		positive("slow pressure", slow, "Pa")); err != nil {
		return 0, err
	}
	return outcome(topic, sidpp+overbalance+slow)
}

// Final returns the standpipe pressure in Pa once kill mud is at the bit: the slow pressure times kill over mud density.
// Source: as for [Initial].
func Final(slow, kill, mud float64) (float64, error) { return AtDensity(slow, mud, kill) }

// AtDensity returns what a turbulent pressure loss in Pa becomes with a fluid of another density in kg/m³ at the same rate: loss
// × to/from. Thickness does not come in. Source: common practice; Lapeyrouse, chapter 4 (from memory).
func AtDensity(loss, from, to float64) (float64, error) {
	const topic = "pressure loss at another density"
	if err := check(topic, some("loss", loss, "Pa"), positive("density before", from, "kg/m³"),
		positive("density after", to, "kg/m³")); err != nil {
		return 0, err
	}
	return outcome(topic, loss*(to/from))
}

// AtRate returns what a pressure loss in Pa becomes at another rate, in any unit of rate, that of pump strokes too: loss ×
// (to/from)^power, [Square] or [Turbulent]. A slow pressure that was measured is better than one that is carried over. Source:
// common practice, from memory.
func AtRate(loss, from, to, power float64) (float64, error) {
	const topic = "pressure loss at another rate"
	if err := check(topic, some("loss", loss, "Pa"), positive("rate before", from, "m³/s"), some("rate after", to, "m³/s"),
		positive("power of the rate", power, "")); err != nil {
		return 0, err
	}
	return outcome(topic, loss*math.Pow(to/from, power))
}
