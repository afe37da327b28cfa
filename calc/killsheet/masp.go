package killsheet

import (
	"fmt"

	"borewalk/calc/column"
)

// A GasDensity is the density in kg/m³ of gas under a pressure in Pa at a depth in m. The pressure is the one that it is asked
// with, a gauge pressure where those below are: a law of absolute pressures adds an [Atmosphere].
type GasDensity func(pressure, tvd float64) (float64, error)

// Steady is gas of one density in kg/m³ everywhere.
func Steady(density float64) GasDensity {
	return func(_, _ float64) (float64, error) { return density, nil }
}

// MASP returns the pressure in Pa at a wellhead under a column of gas that stands on a pressure at a depth: with the pore
// pressure, the most that is to be expected there. With the pressure that a formation takes, it is what bullheading must bring to
// the wellhead; [PressureTest.Pump] makes of that what the pump shows. A denser gas gives less. Source: the balance of a column
// whose density goes with its own pressure, dp/dz = rho(p, z) g, in steps of Runge and Kutta.
func MASP(pressure, tvd, wellhead float64, density GasDensity) (float64, error) {
	const topic = "pressure under gas at the wellhead"
	if err := check(topic, positive("pressure below", pressure, "Pa"), number("depth", tvd, "m"), number("wellhead", wellhead, "m"),
		some("height of the wellhead above it", tvd-wellhead, "m")); err != nil {
		return 0, err
	}
	if density == nil {
		return 0, fmt.Errorf("%s: no gas; give its density", topic)
	}
	const steps = 16 // to a ten-millionth for the tallest columns
	rise := (tvd - wellhead) / steps
	var fault error
	slope := func(p, z float64) float64 {
		if fault != nil {
			return 0
		}
		rho, err := density(p, z)
		if err == nil {
			err = check(topic, some("gas", rho, "kg/m³"))
		}
		fault = err
		return rho * column.G
	}
	p := pressure
	for k := range steps {
		z := tvd - rise*float64(k)
		a := slope(p, z)
		b := slope(p-a*rise/2, z-rise/2)
		c := slope(p-b*rise/2, z-rise/2)
		p -= rise / 6 * (a + 2*b + 2*c + slope(p-c*rise, z-rise))
		if fault != nil {
			return 0, fault
		}
	}
	if p < 0 {
		return 0, fmt.Errorf("%s: the column weighs more than the %.0f Pa that it stands on; check gas and depths", topic, pressure)
	}
	return outcome(topic, p)
}
