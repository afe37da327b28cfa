package column

import "math"

// G is the standard acceleration of free fall in m/s², exact by definition (3rd
// General Conference on Weights and Measures, 1901).
const G = 9.80665

// EMW returns the equivalent density in kg/m³ of a gauge pressure in Pa at a true
// vertical depth in metres: the density of one fluid, filled up to the rotary,
// that would give the same pressure. It reports false at and above the rotary,
// and where an argument is not a finite number.
//
// With an open sea above the hole the fluid does not reach the rotary, and the
// equivalent density is less than the sea's own near the seabed. That is no
// error, but densities counted from sea level are not comparable with it.
func EMW(pressure, tvd float64) (float64, bool) {
	if !(tvd > 0) || math.IsInf(tvd, 0) {
		return 0, false
	}
	emw := pressure / (G * tvd)
	if !finite(emw) {
		return 0, false
	}
	return emw, true
}

// PressureOf returns the gauge pressure in Pa of an equivalent density in kg/m³ at
// a true vertical depth in metres. It is zero at the rotary and above it, and
// where an argument is not a finite number.
func PressureOf(emw, tvd float64) float64 {
	pressure := emw * G * tvd
	if !(tvd > 0) || !finite(pressure) {
		return 0
	}
	return pressure
}

// finite reports whether x is an ordinary number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
