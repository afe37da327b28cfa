package influx

import (
	"math"

	"borewalk/calc/column"
)

// MAASP returns the maximum allowable annular surface pressure in Pa, that at which a shoe at a TVD in m with the hole full of
// mud meets its limit. Limit, an equivalent density, and mud are in kg/m³. It reports false for a shoe that is not below the
// rotary or what is no number; below zero the mud alone is too heavy.
//
//	(limit - mud) g TVD
//
// Source: N. J. Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, chapter 4 (from memory).
func MAASP(limit, mud, tvd float64) (float64, bool) {
	return number((limit-mud)*column.G*tvd, tvd > 0)
}

// Factor returns the kick tolerance factor in kg/m³: by how much the formation at a TVD may be above the mud, as an
// equivalent density, with no influx in the hole. It reports false as [MAASP] does, and where the bottom is not below the
// rotary.
//
//	shoe / TVD × (limit - mud)
//
// Source: as [MAASP].
func Factor(limit, mud, shoe, tvd float64) (float64, bool) {
	return number(shoe/tvd*(limit-mud), shoe > 0 && tvd > 0)
}

// ShoeEMW returns the equivalent density in kg/m³ at a shoe with the well shut in on a formation that is above the mud by an
// equivalent density, the kick, at a TVD, with no influx in the hole: [Factor] the other way round. It reports false as that
// does.
//
//	mud + kick × TVD / shoe
//
// Source: as [MAASP].
func ShoeEMW(mud, kick, shoe, tvd float64) (float64, bool) {
	return number(mud+kick*tvd/shoe, shoe > 0 && tvd > 0)
}

// Height returns the height in m of an influx of one density in mud, both in kg/m³, that adds a pressure in Pa above it. It
// reports false for an influx that is no lighter than the mud and what is no number.
//
//	pressure / ((mud - influx) g)
//
// Source: as [MAASP].
func Height(pressure, mud, influx float64) (float64, bool) {
	return number(pressure/((mud-influx)*column.G), mud > influx)
}

// number passes on a value that is one, if it counts.
func number(value float64, counts bool) (float64, bool) {
	if !counts || math.IsNaN(value) || math.IsInf(value, 0) {
		return 0, false
	}
	return value, true
}
