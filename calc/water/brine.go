package water

import "math"

// Salt is what a brine is made with.
type Salt uint8

// The salts. None is fresh water.
const (
	None Salt = iota
	SodiumChloride
	PotassiumChloride
	CalciumChloride
)

// reference is the temperature in K of the tables of brines.
const reference = zeroCelsius + 20

// Saturation returns the largest share by mass of the salt that dissolves in water
// at 20 °C; zero for none. Source: CRC Handbook of Chemistry and Physics, solubility
// in 100 g of water 35.9, 34.2 and 74.5 g, from memory. Colder water holds less:
// what is near it may fall out at the seabed.
func (s Salt) Saturation() float64 {
	switch s {
	case SodiumChloride:
		return 35.9 / 135.9
	case PotassiumChloride:
		return 34.2 / 134.2
	case CalciumChloride:
		return 74.5 / 174.5
	}
	return 0
}

// Density returns the density in kg/m³ at 20 °C and one atmosphere of a brine with a
// share by mass of the salt, in straight lines between the rows of a table. It reports
// false for a share below zero or beyond saturation.
//
// Source: CRC Handbook of Chemistry and Physics, concentrative properties of aqueous
// solutions, density at 20 °C, from memory; the last row of each is carried on to
// saturation, two hundredths at most.
func (s Salt) Density(share float64) (float64, bool) {
	if !(share >= 0 && share <= s.Saturation()) {
		return 0, false
	}
	rows, last := s.table()
	k := 1
	for k < last && rows[k][0] < 100*share {
		k++
	}
	a, b := rows[k-1], rows[k]
	return 1000 * (a[1] + (b[1]-a[1])*(100*share-a[0])/(b[0]-a[0])), true
}

// table returns per cent by mass and g/cm³, and the number of its last row.
func (s Salt) table() (rows [16][2]float64, last int) {
	switch s {
	case SodiumChloride:
		return [16][2]float64{{0, 0.9982}, {1, 1.0053}, {2, 1.0125}, {4, 1.0268}, {6, 1.0413}, {8, 1.0559}, {10, 1.0707}, {12, 1.0857},
			{14, 1.1008}, {16, 1.1162}, {18, 1.1319}, {20, 1.1478}, {22, 1.1640}, {24, 1.1804}, {26, 1.1972}}, 14
	case PotassiumChloride:
		return [16][2]float64{{0, 0.9982}, {1, 1.0046}, {2, 1.0110}, {4, 1.0239}, {6, 1.0369}, {8, 1.0500}, {10, 1.0633}, {12, 1.0768},
			{14, 1.0905}, {16, 1.1043}, {18, 1.1185}, {20, 1.1328}, {22, 1.1474}, {24, 1.1623}}, 13
	case CalciumChloride:
		return [16][2]float64{{0, 0.9982}, {1, 1.0065}, {2, 1.0148}, {4, 1.0316}, {6, 1.0486}, {8, 1.0659}, {10, 1.0835}, {12, 1.1015},
			{14, 1.1198}, {16, 1.1386}, {18, 1.1578}, {20, 1.1775}, {25, 1.2284}, {30, 1.2816}, {35, 1.3373}, {40, 1.3957}}, 15
	}
	return [16][2]float64{{0, 0.9982}, {1, 0.9982}}, 1
}

// Brine returns the density in kg/m³ of a brine with a share by mass of a salt, at a
// temperature in K and a gauge pressure in Pa. It reports false beyond saturation and
// the domain of [Fresh].
//
// The density at 20 °C is the table's ([Salt.Density]). How it changes is the fresh
// water's ([Fresh]) with the salt's part of Batzle and Wang, Seismic properties of pore
// fluids, Geophysics 57 (1992), equation 27b, from memory: there for sodium chloride,
// to 350 °C and 100 MPa. Other salts are taken to change as sodium chloride does at
// their share, or at its own saturation. Against handbook tables of sodium chloride the
// result is up to 0.4 % high at 80 °C.
func Brine(s Salt, share, temperature, pressure float64) (float64, bool) {
	fresh, ok := Fresh(temperature, pressure)
	if !ok || s == None {
		return fresh, ok && share == 0
	}
	standard, ok := s.Density(share)
	if !ok {
		return 0, false
	}
	share = math.Min(share, SodiumChloride.Saturation())
	still, _ := Fresh(reference, 0)
	return standard * (fresh + dissolved(share, temperature, pressure)) / (still + dissolved(share, reference, 0)), true
}

// dissolved returns what sodium chloride adds to the density of water in kg/m³.
func dissolved(share, temperature, pressure float64) float64 {
	t, p := temperature-zeroCelsius, (pressure+Atmosphere)/1e6
	return 1000 * share * (0.668 + 0.44*share + 1e-6*(300*p-2400*p*share+t*(80+3*t-3300*share-13*p+47*p*share)))
}
