package downhole

import "math"

// Base is the base oil of a mud, whose law its oil follows.
type Base uint8

// The bases. Their correlations are from memory.
const (
	NoOil   Base = iota
	Diesel       // Sorelle et al., SPE 11118 (1982): No. 2 diesel
	Mineral      // API RP 13D (2006), coefficients for a mineral oil
	Olefin       // API RP 13D (2006), coefficients for an internal olefin
)

// The domain taken for the oils, K and Pa: about what the measurements covered, from
// memory.
const (
	oilColdest = 273.15 - 2
	oilHottest = 273.15 + 180
	oilMost    = 140e6
)

// Oil is an oil whose volume changes with pressure and temperature.
//
// Where Compressibility or Expansion is above zero, those count in place of the base's
// correlation: shares of the volume at the reference for each Pa and each K, in straight
// lines. The density at 15 °C and one atmosphere stays the base's.
type Oil struct {
	Base                       Base
	Compressibility, Expansion float64
}

// own reports whether the oil has a law of its own.
func (o Oil) own() bool { return o.Compressibility > 0 || o.Expansion > 0 }

// Density returns the density in kg/m³ of the oil at a temperature in K and a gauge
// pressure in Pa. It reports false beyond about -2 to 180 °C and 0 to 140 MPa, for no
// oil, and where an entered law leaves no volume.
//
// Sources, both from memory, in ppg, °F and psi: Sorelle et al., SPE 11118, for diesel,
// 7.24032 - 2.84383e-3 t + 2.75660e-5 p; API RP 13D (2006) for mineral oil and internal
// olefin, (a1 + b1 p + c1 p²) + (a2 + b2 p + c2 p²) t. Oils of one name differ by 2 % in
// density and by a tenth in how they change; the maker's data decide.
func (o Oil) Density(temperature, pressure float64) (float64, bool) {
	if !(temperature >= oilColdest && temperature <= oilHottest && pressure >= 0 && pressure <= oilMost) {
		return 0, false
	}
	if !o.own() {
		return o.Base.density(temperature, pressure)
	}
	const standard = 273.15 + 15
	density, ok := o.Base.density(standard, 0)
	volume := 1 + o.Expansion*(temperature-standard) - o.Compressibility*pressure
	if !ok || !(volume > 0) {
		return 0, false
	}
	return density / volume, true
}

// The units of the correlations: exact.
const (
	ppg = 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254)
	psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254)
)

// density returns the correlation of a base.
func (b Base) density(temperature, pressure float64) (float64, bool) {
	t, p := temperature*9/5-459.67, pressure/psi
	var at float64
	switch b {
	case Diesel:
		at = 7.24032 - 2.84383e-3*t + 2.75660e-5*p
	case Mineral:
		at = 6.9912 + p*(2.25e-5-1e-10*p) + t*(-3.28e-3+p*(1.17e-7-3e-12*p))
	case Olefin:
		at = 6.8358 + p*(2.23e-5-2e-10*p) + t*(-3.39e-3+p*(1.12e-7-2e-12*p))
	default:
		return 0, false
	}
	return at * ppg, at > 0 && !math.IsInf(at, 0)
}
