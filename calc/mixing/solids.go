package mixing

import "fmt"

// A Retort is what a mud was parted into by boiling it off: shares of its volume, with the densities in kg/m³ of what it
// is made of.
type Retort struct {
	Density    float64 // Density is the mud's.
	Oil, Water float64 // Oil and Water are the liquids collected, as shares of the mud's volume.
	OilDensity float64 // OilDensity may be 0 where there is no oil.
	Salt       Salt    // Salt is what is dissolved in the water, the zero Salt for none.
	Share      float64 // Share is the salt's part of the mass of the brine.
	High, Low  float64 // High and Low are the densities of the weighting material and of the solids that were drilled.
}

// Solids is what the solids of a mud are: shares of its volume, and masses in kg for each m³ of it.
type Solids struct {
	All, High, Low      float64 // All is the sum of High and Low.
	HighMass, LowMass   float64
	Mean                float64 // Mean is the mean density of the solids in kg/m³, 0 where there are none.
	Brine, BrineDensity float64 // Brine is the water with the salt in it, which takes more room than the water collected.
}

// rounding is the share of the volume that the arithmetic may leave.
const rounding = 1e-9

// Part returns how much of a mud is weighting material and how much low-gravity solids: the solids are what oil and brine
// leave of the volume, and the mud's mass says how dense they are. A share below zero says that the readings do not
// belong together; it is returned as it is. Source: API RP 13B-1 and 13B-2, calculations of solids (from memory).
func (r Retort) Part() (Solids, error) {
	switch {
	case !positive(r.Density) || !positive(r.High) || !positive(r.Low):
		return Solids{}, fmt.Errorf("solids: densities %g, %g and %g kg/m³; give all above zero", r.Density, r.High, r.Low)
	case !(r.High > r.Low):
		return Solids{}, fmt.Errorf("solids: weighting material of %.0f kg/m³ is not denser than the drilled solids of %.0f", r.High, r.Low)
	case !notNegative(r.Oil) || !notNegative(r.Water) || r.Oil+r.Water > 1+rounding:
		return Solids{}, fmt.Errorf("solids: %.1f %% of oil and %.1f %% of water; together they are at most 100 %%", r.Oil*100, r.Water*100)
	case r.Oil > 0 && !positive(r.OilDensity):
		return Solids{}, fmt.Errorf("solids: oil of %g kg/m³; give its density", r.OilDensity)
	}
	s := Solids{Brine: r.Water, BrineDensity: freshWater}
	if r.Share > 0 {
		brine, err := r.Salt.Dissolve(1, r.Share)
		if err != nil {
			return Solids{}, fmt.Errorf("solids: %w", err)
		}
		s.Brine, s.BrineDensity = r.Water/brine.Water, brine.Density
	}
	s.All = 1 - r.Oil - s.Brine
	if s.All < -rounding {
		return Solids{}, fmt.Errorf("solids: oil and brine fill %.1f %% of the mud; check the readings", (r.Oil+s.Brine)*100)
	}
	s.All = max(s.All, 0)
	liquid := r.Oil*r.OilDensity + s.Brine*s.BrineDensity
	s.High = (r.Density - liquid - r.Low*s.All) / (r.High - r.Low)
	s.Low = s.All - s.High
	s.HighMass, s.LowMass = s.High*r.High, s.Low*r.Low
	if s.All > 0 {
		s.Mean = (r.Density - liquid) / s.All
	}
	return s, nil
}
