package drillpipe

import "math"

// shear is the share of the yield strength at which steel yields in shear. API RP 7G takes 57.7 %, so that its 0.096167
// in in² lbf/in² to ft lbf is 0.577 × 2 / 12; the distortion energy theory has 1/sqrt(3), 0.06 % more.
const shear = 0.577

// Tension returns the pull in N at which the body yields: wall area times yield strength. Zero where there is no wall.
// Source: API RP 7G, tensile data of drill pipe.
func Tension(od, id, yield float64) float64 { return area(od, id) * strength(yield) }

// Torsion returns the torque in N·m at which the body yields at its outside, without a pull:
//
//	T = 0.577 yield × 2 J / OD,  J = pi/32 (OD⁴ - ID⁴)
//
// Zero where there is no wall. Source: API RP 7G, appendix A, torsional strength of the pipe body (T = 0.096167 J Y / D in
// ft·lbf, in⁴, psi and in).
func Torsion(od, id, yield float64) float64 {
	return shear * strength(yield) * SectionModulus(od, id) * 2
}

// TorsionUnder returns the torque in N·m at which the body yields while it is pulled with a force in N; zero where the
// pull alone reaches yield.
//
//	T = 0.577 × 2 J / OD × sqrt(yield² - (pull / area)²)
//
// Source: API RP 7G, appendix A, drill pipe under torsion and tension.
func TorsionUnder(pull, od, id, yield float64) float64 {
	return Torsion(od, id, yield) * left(pull, Tension(od, id, yield))
}

// TensionUnder returns the pull in N at which the body yields while a torque in N·m turns it; zero where the torque alone
// reaches yield. It is [TorsionUnder] solved for the pull.
func TensionUnder(torque, od, id, yield float64) float64 {
	return Tension(od, id, yield) * left(torque, Torsion(od, id, yield))
}

// left returns what share of one strength a load leaves that takes its part of the other: sqrt(1 - (load / limit)²).
func left(load, limit float64) float64 {
	share := load / limit
	if !(math.Abs(share) < 1) {
		return 0
	}
	return math.Sqrt((1 - share) * (1 + share))
}

// Equivalent returns the von Mises stress in Pa at the outside of the body under a pull in N and a torque in N·m, without
// pressure or bending: sqrt(sigma² + 3 tau²). It reports false where there is no wall.
func Equivalent(pull, torque, od, id float64) (float64, bool) {
	if !walled(od, id) {
		return 0, false
	}
	stress := math.Hypot(pull/area(od, id), math.Sqrt(3)*torque/(2*SectionModulus(od, id)))
	return stress, !math.IsNaN(stress) && !math.IsInf(stress, 0)
}

// SectionModulus returns how much a body withstands in bending for its stress at the outside, in m³:
// pi/32 (OD⁴ - ID⁴) / OD; zero where there is no wall. Source: beam theory.
func SectionModulus(od, id float64) float64 {
	if !walled(od, id) {
		return 0
	}
	return math.Pi / 32 * (od*od + id*id) * (od - id) * (od + id) / od
}

// BendingRatio returns by how much the stiffer of two bodies that follow one another is stiffer, as the ratio of their
// section moduli, at least 1; false where one of them has no wall. What bends is bent most where the stiffness steps.
func BendingRatio(od1, id1, od2, id2 float64) (float64, bool) {
	a, b := SectionModulus(od1, id1), SectionModulus(od2, id2)
	if a == 0 || b == 0 {
		return 0, false
	}
	return max(a/b, b/a), true
}

func area(od, id float64) float64 {
	if !walled(od, id) {
		return 0
	}
	return math.Pi / 4 * (od - id) * (od + id)
}

// walled reports whether the diameters leave a wall.
func walled(od, id float64) bool { return id >= 0 && od > id && !math.IsInf(od, 0) }

// strength returns a yield strength, zero for what is none.
func strength(yield float64) float64 {
	if !(yield > 0) || math.IsInf(yield, 0) {
		return 0
	}
	return yield
}
