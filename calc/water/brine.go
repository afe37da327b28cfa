package water

import "math"

// reference is the temperature in K at which the density of a brine is given.
const reference = zeroCelsius + 20

// saturated is the share by mass of sodium chloride in a brine that takes no more of it at 20 °C (CRC Handbook of Chemistry
// and Physics, 35.9 g in 100 g of water, from memory).
const saturated = 35.9 / 135.9

// Brine returns the density in kg/m³ of a brine at a temperature in K and a gauge pressure in Pa, from its density at
// 20 °C and one atmosphere and its share of salt by mass; without salt it is [Fresh]. It reports false for a share or
// density that no brine has, and beyond the domain of [Fresh].
//
// How the density changes is the fresh water's with the salt's part of Batzle and Wang, Seismic properties of pore
// fluids, Geophysics 57 (1992), equation 27b, from memory: there for sodium chloride, to 350 °C and 100 MPa. Other salts
// are taken to change as sodium chloride does at their share, or at its own saturation. Against handbook tables of
// sodium chloride the result is up to 0.4 % high at 80 °C.
func Brine(standard, share, temperature, pressure float64) (float64, bool) {
	fresh, ok := Fresh(temperature, pressure)
	if !ok || share == 0 {
		return fresh, ok
	}
	if !(standard > 0) || math.IsInf(standard, 0) || !(share > 0 && share < 1) {
		return 0, false
	}
	share = math.Min(share, saturated)
	still, _ := Fresh(reference, 0)
	return standard * (fresh + dissolved(share, temperature, pressure)) / (still + dissolved(share, reference, 0)), true
}

// dissolved returns what sodium chloride adds to the density of water in kg/m³.
func dissolved(share, temperature, pressure float64) float64 {
	t, p := temperature-zeroCelsius, (pressure+Atmosphere)/1e6
	return 1000 * share * (0.668 + 0.44*share + 1e-6*(300*p-2400*p*share+t*(80+3*t-3300*share-13*p+47*p*share)))
}
