package gas

import "math"

// densest is a reduced density beyond every one in the domain, where the reduced pressure is over 800.
const densest = 4

// dranchukAbouKassem returns the factor by the equation of state of Starling and Carnahan's form with eleven constants.
//
// Source: P. M. Dranchuk and J. H. Abou-Kassem, Calculation of Z factors for natural gases using equations of state,
// Journal of Canadian Petroleum Technology 14 (1975), from memory. The reduced density is 0.27 of the reduced pressure
// over z and the reduced temperature.
func dranchukAbouKassem(pressure, temperature float64) float64 {
	const (
		a1, a2, a3, a4, a5 = 0.3265, -1.0700, -0.5339, 0.01569, -0.05165
		a6, a7, a8, a9     = 0.5475, -0.7361, 0.1844, 0.1056
		a10, a11           = 0.6134, 0.7210
	)
	t := 1 / temperature
	first := a1 + t*(a2+t*t*(a3+t*(a4+t*a5)))
	drawn := t * (a7 + t*a8)
	second, fifth, last := a6+drawn, -a9*drawn, a10*t*t*t
	factor := func(r float64) (z, slope float64) {
		s := r * r
		damp := last * math.Exp(-a11*s)
		z = 1 + first*r + second*s + fifth*s*s*r + damp*(1+a11*s)*s
		slope = first + 2*second*r + 5*fifth*s*s + 2*damp*r*(1+a11*s-a11*a11*s*s)
		return z, slope
	}
	push := 0.27 * pressure * t
	r := crossing(func(r float64) (float64, float64) {
		z, slope := factor(r)
		return r*z - push, z + r*slope
	}, push, densest)
	if r == 0 {
		return 1
	}
	return push / r // since r z is push there
}
