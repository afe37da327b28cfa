package mixing

import (
	"fmt"
	"math"
)

// A Salt is a salt that is dissolved in fresh water to make a brine. The zero Salt is none.
type Salt struct {
	Name           string
	Most           float64 // Most is the highest share of it by mass that is treated, about what dissolves at 20 °C.
	c0, c1, c2, c3 float64 // of the correlation that Density uses
	c4             float64 // °C
}

// freshWater is the density of pure water at 20 °C and one atmosphere in kg/m³ (998.2, handbooks).
const freshWater = 998.2

// cellar is the temperature in °C at which brines are worked out: that of the handbooks' tables.
const cellar = 20

// The salts, with the coefficients of Laliberté and Cooper, J. Chem. Eng. Data 49 (2004) 1141, table 3 (from memory,
// held against handbook tables).
func SodiumChloride() Salt {
	return Salt{"NaCl", 0.26, -0.00433, 0.06471, 1.01660, 0.014624, 3315.6}
}

// PotassiumChloride is KCl; see [SodiumChloride].
func PotassiumChloride() Salt {
	return Salt{"KCl", 0.24, -0.46782, 4.30800, 2.37800, 0.022044, 2714.0}
}

// CalciumChloride is CaCl2 without crystal water; see [SodiumChloride].
func CalciumChloride() Salt {
	return Salt{"CaCl2", 0.40, -0.63254, 0.93995, 4.2785, 0.048319, 3180.9}
}

// A Brine is what a volume of brine is made of, at 20 °C.
type Brine struct {
	Fluid
	Share float64 // Share is the salt's part of the mass.
	Salt  float64 // Salt is the salt in kg, pure and dry.
	Water float64 // Water is the fresh water in m³ that it is dissolved in.
}

// Gain returns by what part of its own volume the water grows as the salt dissolves.
func (b Brine) Gain() float64 { return b.Volume/b.Water - 1 }

// density returns the density in kg/m³ of a brine with a share of salt by mass: water and dissolved salt take the volumes
// that they take beside each other, with the salt's apparent density (c0 w + c1) e^(10^-6 (t + c4)²)/(w + c2 + c3 t).
// Within 0.1 % of handbook tables, 0.2 % at the end of CaCl2.
func (s Salt) density(share float64) float64 {
	t := cellar + s.c4
	apparent := (s.c0*share + s.c1) * math.Exp(1e-6*t*t) / (share + s.c2 + s.c3*cellar)
	return 1 / ((1-share)/freshWater + share/apparent)
}

// Dissolve returns a volume in m³ of brine with a share of salt by mass. It is an error where the share is none that
// dissolves.
func (s Salt) Dissolve(volume, share float64) (Brine, error) {
	switch {
	case !notNegative(volume):
		return Brine{}, fmt.Errorf("brine of %g m³; give a volume of 0 or more", volume)
	case !(share >= 0) || share > s.Most:
		return Brine{}, fmt.Errorf("brine with %.1f %% of %s; give 0 to %.0f %% by mass", share*100, s.Name, s.Most*100)
	}
	density := s.density(share)
	mass := volume * density
	b := Brine{Fluid{volume, density}, share, mass * share, mass * (1 - share) / freshWater}
	if !notNegative(mass) {
		return Brine{}, fmt.Errorf("brine of %g m³; check the units", volume)
	}
	return b, nil
}

// DissolveTo is [Salt.Dissolve] for a wanted density in kg/m³.
func (s Salt) DissolveTo(volume, density float64) (Brine, error) {
	if !(density >= freshWater) || density > s.density(s.Most) {
		return Brine{}, fmt.Errorf("brine of %.0f kg/m³ with %s; wish for %.0f to %.0f", density, s.Name, freshWater, s.density(s.Most))
	}
	low, high := 0.0, s.Most // the density rises all the way with the share
	for range 60 {
		if middle := (low + high) / 2; s.density(middle) < density {
			low = middle
		} else {
			high = middle
		}
	}
	return s.Dissolve(volume, (low+high)/2)
}
