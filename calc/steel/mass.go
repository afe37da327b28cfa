package steel

import "math"

// Density is the density of pipe steel in kg/m³ that is used here throughout. The
// API tables rest on 489.5 or 490 lb/ft³ (7841 and 7849 kg/m³), buoyancy tables on
// 65.5 lb/gal (7849 kg/m³): all within 0.12 % of it.
const Density = 7850.0

// gravity is the standard acceleration of free fall in m/s².
const gravity = 9.80665

// SpiralRatio is what a spiral drill collar weighs over a smooth one of the same
// diameters: the rules of thumb 2.56 and 2.66 (OD² - ID²) in lb/ft and inches. An
// average; makers' grooves differ. Source: Lapeyrouse, Formulas and Calculations
// for Drilling, Production and Workover, drill collar weights.
const SpiralRatio = 2.56 / 2.66

// Area returns the cross-section of the wall in m² of a pipe with the given outside
// and inside diameters in metres. It is zero where they leave no wall.
func Area(od, id float64) float64 {
	if !(id >= 0) || !(od > id) || math.IsInf(od, 0) {
		return 0
	}
	return math.Pi / 4 * (od - id) * (od + id)
}

// PlainEnd returns the mass per length in kg/m of a pipe without threads, upsets
// and couplings, for the given outside and inside diameters in metres. It is zero
// where they leave no wall. A pipe's nominal weight is a name and differs by up to
// 5 %. Source: API Spec 5CT, w = 10.69 (D - t) t lb/ft, which is this at 490 lb/ft³.
func PlainEnd(od, id float64) float64 { return Area(od, id) * Density }

// Displacement returns the volume in m³ that a metre of pipe displaces with its bore
// open, from its mass per length in kg/m. Taken from the mass, it counts tool joints
// and couplings as far as the mass does. It is zero for a mass that is not above
// zero.
func Displacement(linearMass float64) float64 {
	if !(linearMass > 0) || math.IsInf(linearMass, 0) {
		return 0
	}
	return linearMass / Density
}

// BuoyancyFactor returns the share of its weight in air that a body of the given
// density keeps in a fluid, 1 - fluid/body, densities in kg/m³. It is below zero
// where the body floats. It holds for pipe when the fluid is the same inside and
// outside. It reports false unless the body's density is above zero and the fluid's
// not below.
func BuoyancyFactor(fluid, body float64) (float64, bool) {
	if !(body > 0) || !(fluid >= 0) || math.IsInf(fluid, 0) || math.IsInf(body, 0) {
		return 0, false
	}
	return finite(1 - fluid/body)
}

// BuoyancyFactorInOut returns the share of its weight in air that a smooth pipe
// keeps when it is full of one fluid and hangs in another, the two levels being
// equal: 1 - (outside Ao - inside Ai)/(body (Ao - Ai)), areas from the diameters in
// metres, densities in kg/m³. A shut, empty pipe has an inside density of zero. It
// is below zero where the pipe floats. It reports false where the diameters leave no
// wall, where the body's density is not above zero, and where another is below.
// Source: B. S. Aadnoy, Modern Well Design (from memory).
func BuoyancyFactorInOut(od, id, inside, outside, body float64) (float64, bool) {
	wall := Area(od, id)
	if !(wall > 0) || !(body > 0) || !(inside >= 0) || !(outside >= 0) {
		return 0, false
	}
	return finite(1 - (outside*Area(od, 0)-inside*Area(id, 0))/(body*wall))
}

// BitWeight returns the weight in N that collars of a given weight in mud, in N, can
// put on the bit in a hole of the given inclination in radians, all of it, without
// friction: W cos(inclination). Keep a share of it back as the design asks. It
// reports false beyond level and for a weight below zero. Source: Lapeyrouse,
// chapter 5.
func BitWeight(buoyed, inclination float64) (float64, bool) {
	if !(buoyed >= 0) || !(inclination >= 0) || !(inclination <= math.Pi/2) {
		return 0, false
	}
	return finite(buoyed * math.Cos(inclination))
}

// finite hands x on unless it is not an ordinary number.
func finite(x float64) (float64, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}
