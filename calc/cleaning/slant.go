package cleaning

import "math"

// A Slant is a length of slanted hole with pipe in it.
type Slant struct {
	Inclination float64 // Inclination from vertical, rad.
	Hole, Pipe  float64 // Hole and Pipe are diameters in m.
	ROP         float64 // ROP is the penetration rate, m/s.
	Turning     float64 // Turning is the rotary speed, rad/s.
	Density     float64 // Density of the mud, kg/m³.
	Viscosity   float64 // Viscosity is the effective one of the mud in this annulus, Pa·s.
	Cutting     Cutting
}

// What the correlations below were fitted to.
const (
	LarsenFrom = 55 * math.Pi / 180 // least inclination of Larsen's trials, rad
	bend       = 45 * math.Pi / 180 // from here on Rubiandini's correction stays level, rad
	mostTurns  = 600.0              // rpm at which Rubiandini's correction has worn off
)

// lift returns the velocity in m/s that carries the cuttings made, without slip, at the concentration of Larsen and others:
//
//	v = ROP / (36 (1 - (pipe / hole)²) C)     C = 0.01778 ROP + 0.505
//
// in ft/s, ft/h and per cent.
func (s Slant) lift() float64 {
	rop := s.ROP / foot * 3600
	free := 1 - s.Pipe*s.Pipe/(s.Hole*s.Hole)
	if !(rop > 0) || !(free > 0) {
		return 0
	}
	return foot * rop / (36 * free * (0.01778*rop + 0.505))
}

// Rubiandini returns the least mean velocity in m/s that keeps a slanted hole clean, from the slip velocity in m/s that the
// cutting has in an upright one: the lift of the cuttings made and the slip, stretched for the slant, the mud and the slow
// turning of the pipe:
//
//	v = lift + slip (1 + angle (600 - rpm) (3 + W) / 202500)     up to 45 degrees, level from there on
//
// with degrees and ppg. Source: R. Rubiandini, Equation for estimating mud minimum rate for cuttings transport in an
// inclined-until-horizontal well, SPE 57541, 1999 (from memory); the lift from T. I. Larsen, A. A. Pilehvari and J. J. Azar,
// SPE 25872, 1997 (from memory). It is zero where an entry makes no sense.
func (s Slant) Rubiandini(slip float64) float64 {
	if !(slip > 0) || !(s.Density > 0) || !(s.Inclination >= 0) {
		return 0
	}
	angle := min(s.Inclination, bend) * 180 / math.Pi
	turns := min(max(s.Turning, 0)*60/(2*math.Pi), mostTurns)
	return s.lift() + slip*(1+angle*(mostTurns-turns)*(3+s.Density/poundPerGallon)/202500)
}

// Larsen returns the least mean velocity in m/s that keeps cuttings from settling in a hole of 55 to 90 degrees:
//
//	v = lift + slip Ca Cs Cw
//	slip = 0.00516 m + 3.006 up to m = 53 cP, 0.02554 (m - 53) + 3.28 above
//	Ca = 0.0342 a - 0.000233 a² - 0.213     Cs = 1.286 - 1.04 d     Cw = 1 - 0.0333 (W - 8.7), 1 in lighter mud
//
// in ft/s, cP, degrees, in and ppg. It is zero outside that range. Source: T. I. Larsen, A. A. Pilehvari and J. J. Azar,
// Development of a new cuttings-transport model for high-angle wellbores including horizontal wells, SPE 25872, 1997 (from
// memory); trials in 5 in hole.
func (s Slant) Larsen() float64 {
	if s.Inclination < LarsenFrom-1e-9 || s.Inclination > math.Pi/2+1e-9 || !(s.Viscosity > 0) || !(s.Density > 0) {
		return 0
	}
	m, a, w := s.Viscosity/centipoise, s.Inclination*180/math.Pi, s.Density/poundPerGallon
	slip := 0.00516*m + 3.006
	if m > 53 {
		slip = 0.02554*(m-53) + 3.28
	}
	angle := 0.0342*a - 0.000233*a*a - 0.213
	size := 1.286 - 1.04*s.Cutting.Diameter/inch
	weight := 1 - 0.0333*max(w-8.7, 0)
	return s.lift() + foot*slip*angle*max(size, 0)*max(weight, 0)
}
