// Package water gives the density of the waters of a subsea well: of the sea,
// of fresh water, and of the brines that muds are made of.
//
// Start with [Sea], [Fresh] and [Brine]. Temperatures are in K, densities in
// kg/m³. Pressures are gauge, in Pa above one standard atmosphere, as they are
// everywhere in the columns of a well. What lies outside the domain of a formula
// is not stretched: the second result says so.
//
// The package knows no well. A column of such a fluid is summed in calc/column.
package water

// Atmosphere is the standard atmosphere in Pa (10th CGPM, 1954).
const Atmosphere = 101325

// zeroCelsius is 0 °C in K.
const zeroCelsius = 273.15
