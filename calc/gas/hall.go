package gas

import "math"

// packed is a reduced density of hard spheres beyond every one in the domain, where the reduced pressure is over 10 000.
const packed = 0.9

// hallYarborough returns the factor by the equation of state of hard spheres with two terms for what draws them.
//
// Source: K. R. Hall and L. Yarborough, A new equation of state for Z-factor calculations, Oil and Gas Journal, 18 June
// 1973, from memory.
func hallYarborough(pressure, temperature float64) float64 {
	t := 1 / temperature
	push := 0.06125 * t * math.Exp(-1.2*(1-t)*(1-t)) * pressure
	b := t * (14.76 + t*(-9.76+t*4.58))
	c := t * (90.7 + t*(-242.2+t*42.4))
	d := 2.18 + 2.82*t
	factor := func(y float64) float64 {
		return (1+y+y*y-y*y*y)/((1-y)*(1-y)*(1-y)) - b*y + c*math.Pow(y, d-1)
	}
	y := crossing(func(y float64) (float64, float64) {
		spheres := (1 + y*(4+y*(4+y*(-4+y)))) / ((1 - y) * (1 - y) * (1 - y) * (1 - y))
		return y*factor(y) - push, spheres - 2*b*y + c*d*math.Pow(y, d-1)
	}, push, packed)
	return factor(y)
}
