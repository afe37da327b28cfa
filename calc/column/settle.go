package column

import "math"

// Settle returns the gauge pressure in Pa at the bottom of a fluid at rest between two
// true vertical depths in metres, from that at its top, where its density in kg/m³
// depends on depth and pressure: seawater, or a mud in the heat of a well. It goes down
// in equal steps of the classical Runge-Kutta method of fourth order, which needs few
// where the density is smooth; a corner, as in a table of temperatures, should be an end.
// What the density says is not a number makes the pressure none either.
func Settle(pressure, top, bottom float64, steps int, density func(tvd, pressure float64) float64) float64 {
	if steps < 1 || !(bottom >= top) {
		return math.NaN()
	}
	h := (bottom - top) / float64(steps)
	for k := range steps {
		z := top + h*float64(k)
		a := G * density(z, pressure)
		b := G * density(z+h/2, pressure+h/2*a)
		c := G * density(z+h/2, pressure+h/2*b)
		d := G * density(z+h, pressure+h*c)
		pressure += h / 6 * (a + 2*b + 2*c + d)
	}
	return pressure
}
