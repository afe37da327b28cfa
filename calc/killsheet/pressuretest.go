package killsheet

import "borewalk/calc/column"

// A PressureTest is a stack or a casing that is tested with a pump: the fluid in it in kg/m³, and the true vertical depth of the
// pump's gauge in m, less than nothing above the rotary.
type PressureTest struct {
	Fluid, Gauge float64
}

// head returns the column in Pa from the gauge down to a depth.
func (p PressureTest) head(tvd float64) float64 { return p.Fluid * column.G * (tvd - p.Gauge) }

// check reports what makes no test of a depth.
func (p PressureTest) check(tvd, pressure, outside float64) error {
	return check("pressure test", positive("fluid", p.Fluid, "kg/m³"), number("gauge", p.Gauge, "m"), number("depth", tvd, "m"),
		some("depth below the gauge", tvd-p.Gauge, "m"), number("pressure", pressure, "Pa"), number("pressure outside", outside, "Pa"))
}

// Differential returns what bears on a wall at a depth in Pa while the gauge shows a pressure: the gauge and the column below it,
// less what stands outside. With nothing outside it is the pressure there. Source: the balance of columns.
func (p PressureTest) Differential(gauge, tvd, outside float64) (float64, error) {
	if err := p.check(tvd, gauge, outside); err != nil {
		return 0, err
	}
	return outcome("pressure test", gauge+p.head(tvd)-outside)
}

// Pump returns the gauge pressure in Pa at which a wanted differential bears on a wall at a depth: [PressureTest.Differential]
// the other way round. Below nothing, the columns alone bear on it more than is wanted.
func (p PressureTest) Pump(wanted, tvd, outside float64) (float64, error) {
	if err := p.check(tvd, wanted, outside); err != nil {
		return 0, err
	}
	return outcome("pressure test", wanted-p.head(tvd)+outside)
}
