package killsheet

import (
	"math"

	"borewalk/calc/column"
)

// MigrationRate returns how fast gas rises in a well that stays shut in, in m/s of true vertical height, from the rise of a
// shut-in pressure in Pa within a time in s: rise/(g mud time). The gas keeps its pressure and carries it up. Hole that gives,
// losses and mud that is pressed together make it look slower. Source: common practice; the worked examples of Drilling Formulas.
func MigrationRate(mud, rise, time float64) (float64, error) {
	const topic = "migration rate"
	if err := check(topic, positive("mud", mud, "kg/m³"), some("rise of pressure", rise, "Pa"),
		positive("time", time, "s")); err != nil {
		return 0, err
	}
	return outcome(topic, rise/(column.G*mud*time))
}

// EmpiricalRise returns how fast gas is expected to rise in a well that is shut in, in m/s: 12 exp(-0.37 lb/gal) ft/s. It goes by
// the mud's density alone; hole size, slant, thickness and gels are not in it, and bubbles in a large hole have been seen to rise
// several times as fast. Source: as worked by Drilling Formulas; constants and the warning from memory.
func EmpiricalRise(mud float64) (float64, error) {
	const topic = "rise of gas"
	if err := check(topic, positive("mud", mud, "kg/m³")); err != nil {
		return 0, err
	}
	return outcome(topic, 12*foot*math.Exp(-0.37*mud/poundPerGallon))
}
