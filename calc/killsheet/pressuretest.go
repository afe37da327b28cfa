package killsheet

import "borewalk/calc/column"

// A PressureTest is a stack or a casing that is tested with a pump: the fluid in it in kg/m³, and the true vertical depth of the
// pump's gauge in m, less than nothing above the rotary.
type PressureTest struct {
	Fluid, Gauge float64
}

// Pump returns the gauge pressure in Pa at which a wanted differential bears on a wall at a depth in m: what is wanted and what
// stands outside, in Pa, less the column below the gauge. Below nothing, the columns alone bear on it more than is wanted. Source:
// the balance of columns.
func (p PressureTest) Pump(wanted, tvd, outside float64) (float64, error) {
	const topic = "pressure test"
	if err := check(topic, positive("fluid", p.Fluid, "kg/m³"), number("gauge", p.Gauge, "m"), number("depth", tvd, "m"),
		some("depth below the gauge", tvd-p.Gauge, "m"), number("wanted differential", wanted, "Pa"),
		number("pressure outside", outside, "Pa")); err != nil {
		return 0, err
	}
	return outcome(topic, wanted+outside-p.Fluid*column.G*(tvd-p.Gauge))
}
