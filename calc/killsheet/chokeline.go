package killsheet

import (
	"math"

	"borewalk/calc/bore"
)

// Units of the empirical loss in a choke line, exact.
const (
	inch           = 0.0254
	foot           = 12 * inch
	gallon         = 231 * inch * inch * inch
	pound          = 0.45359237
	poundPerGallon = pound / gallon
	psi            = pound * 9.80665 / (inch * inch)
)

// A ChokeLine is the way from the stack up to the choke: its length and its bore in m.
type ChokeLine struct {
	Length, Diameter float64
}

// check reports a line that is none.
func (c ChokeLine) check() error {
	return check("choke line", positive("length", c.Length, "m"), positive("bore", c.Diameter, "m"))
}

// Loss returns the pressure in Pa that a flow in m³/s of a density in kg/m³ loses in the line: 0.000061 rho L Q^1.86/d^4.86 in
// psi, lb/gal, ft, gal/min and in. It is for turbulent water-based mud and knows no thickness: a measured loss is better. Source:
// Lapeyrouse, chapter 4, subsea considerations (from memory; the formula as in Formulas and Calculations for Petroleum
// Engineering, page 170).
func (c ChokeLine) Loss(density, flow float64) (float64, error) {
	const topic = "choke line loss"
	if err := c.check(); err != nil {
		return 0, err
	}
	if err := check(topic, positive("fluid", density, "kg/m³"), some("flow", flow, "m³/s")); err != nil {
		return 0, err
	}
	const coefficient = 0.000061
	loss := coefficient * (density / poundPerGallon) * (c.Length / foot) * math.Pow(flow/(gallon/60), Turbulent) /
		math.Pow(c.Diameter/inch, 3+Turbulent)
	return outcome(topic, loss*psi)
}

// Velocity returns the mean velocity of a flow in m³/s in the line, in m/s.
func (c ChokeLine) Velocity(flow float64) (float64, error) {
	const topic = "choke line velocity"
	if err := c.check(); err != nil {
		return 0, err
	}
	if err := check(topic, some("flow", flow, "m³/s")); err != nil {
		return 0, err
	}
	return outcome(topic, flow/bore.Area(c.Diameter))
}
