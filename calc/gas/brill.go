package gas

import "math"

// brillBeggs returns the factor by a fit that needs no solving. It is up to 1 % above the chart at low
// pressures, and up to 5 % off the equation of Dranchuk and Abou-Kassem elsewhere.
//
// Source: J. P. Brill and H. D. Beggs, Two-phase flow in pipes, University of Tulsa (1974), from memory.
func brillBeggs(pressure, temperature float64) float64 {
	a := 1.39*math.Sqrt(temperature-0.92) - 0.36*temperature - 0.101
	b := pressure * (0.62 - 0.23*temperature + pressure*(0.066/(temperature-0.86)-0.037) +
		0.32*math.Pow(pressure, 5)/math.Pow(10, 9*(temperature-1)))
	c := 0.132 - 0.32*math.Log10(temperature)
	d := math.Pow(10, 0.3106+temperature*(-0.49+temperature*0.1824))
	return a + (1-a)*math.Exp(-b) + c*math.Pow(pressure, d)
}
