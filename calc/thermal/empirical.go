package thermal

import "errors"

// The domain of the measurements behind Empirical.
const (
	leastStatic   = 273.15 + 74
	mostStatic    = 273.15 + 212
	leastGradient = 0.0151
	mostGradient  = 0.0445
)

// Empirical returns the circulating temperature in K at the bottom of a hole, from the
// static temperature there in K and the gradient in K/m of the rock. Outside the
// measurements, 74 to 212 °C and 1.51 to 4.45 °C/100 m, it returns an error.
//
// Source: I. M. Kutasov and A. K. Targhi, Better deep-hole BHCT estimations possible, Oil
// and Gas Journal, 25 May 1987 (from memory): T = d1 + d2 G + (d3 - d4 G) Ts with -50.64
// °C, 804.9 m, 1.342, 12.22 m/°C; from 79 wells. Taken with the gradient of the rock alone
// it stands for a well on land of the same static temperature, which is how a well under
// cold sea is made equal to it (I. M. Kutasov, Applied Geothermics for Petroleum
// Engineers, 1999, from memory). It knows no flow, no time and no riser.
func Empirical(static, gradient float64) (float64, error) {
	switch {
	case !(static >= leastStatic):
		return 0, errors.New("the wells measured are hotter, from 74 °C static up")
	case !(static <= mostStatic):
		return 0, errors.New("the wells measured are cooler, up to 212 °C static")
	case !(gradient >= leastGradient && gradient <= mostGradient):
		return 0, errors.New("the wells measured have 1.51 to 4.45 °C/100 m")
	}
	const zero = 273.15
	return zero - 50.64 + 804.9*gradient + (1.342-12.22*gradient)*(static-zero), nil
}
