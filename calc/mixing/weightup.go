package mixing

import "fmt"

// Absolute densities of weighting materials in kg/m³, as they are bought.
const (
	Barite           = 4200 // Barite is the least that API Spec 13A accepts, 4.20 sg; handbooks calculate with 35 lb/gal, 4194 kg/m³.
	CalciumCarbonate = 2700 // CalciumCarbonate is ground marble or limestone, 2.7 sg (handbooks, from memory).
	Hematite         = 5050 // Hematite is the least that API Spec 13A accepts, 5.05 sg (from memory).
)

// A Material is a weighting powder, with the liquid that is poured in with it to
// keep the mud from thickening.
type Material struct {
	Density       float64 // Density is its absolute density in kg/m³.
	Wetting       float64 // Wetting is the liquid in m³ for each kg of it, 0 for none.
	LiquidDensity float64 // LiquidDensity is the density of that liquid in kg/m³; it may be 0 without one.
}

// wet returns mass and volume of one kilogram of the material with its liquid.
func (m Material) wet() (mass, volume float64, err error) {
	mass, volume = 1+m.Wetting*m.LiquidDensity, 1/m.Density+m.Wetting
	switch {
	case !positive(m.Density):
		err = fmt.Errorf("weight material of %g kg/m³; give its absolute density", m.Density)
	case !notNegative(m.Wetting) || m.Wetting > 0 && !positive(m.LiquidDensity):
		err = fmt.Errorf("wetting %g m³/kg of %g kg/m³; give a density with the volume", m.Wetting, m.LiquidDensity)
	case !positive(mass) || !positive(volume) || !positive(mass/volume):
		err = fmt.Errorf("weight material of %g kg/m³ with %g m³/kg of liquid; check the units", m.Density, m.Wetting)
	}
	return mass, volume, err
}

// An Addition is what a mud is treated with, and what becomes of it.
type Addition struct {
	Discard float64 // Discard is the mud in m³ to be taken out first, 0 where the volume may grow.
	Treated float64 // Treated is the mud in m³ that is weighted up.
	Mass    float64 // Mass is the weight material in kg.
	Wetting float64 // Wetting is the liquid added with it in m³.
	Gain    float64 // Gain is the volume in m³ that material and liquid add to the mud.
	Result  Fluid   // Result is the mud that comes out.
}

// WeightUp returns how a mud is brought to a heavier density in kg/m³ if its volume
// may grow. With rho_a the density of the material, wetted, the volume that is
// added is V (rho2 - rho1)/(rho_a - rho2). It is an error unless the wanted density
// lies at or above the mud's and below that of the wetted material. Source:
// Bourgoyne et al., Applied Drilling Engineering, chapter 2 (from memory).
func WeightUp(mud Fluid, material Material, density float64) (Addition, error) {
	mass, volume, err := heavier(mud, material, density)
	if err != nil {
		return Addition{}, err
	}
	a := Addition{Treated: mud.Volume}
	a.Mass = mud.Volume * ((density - mud.Density) / (mass - density*volume))
	a.Wetting, a.Gain = a.Mass*material.Wetting, a.Mass*volume
	a.Result = Fluid{mud.Volume + a.Gain, density}
	if !notNegative(a.Mass) || !notNegative(a.Wetting) || !notNegative(a.Result.Mass()) {
		return Addition{}, fmt.Errorf("weighting up: %.0f kg/m³ is too close to the %.0f of the wetted material; wish for less", density, mass/volume)
	}
	return a, nil
}

// WeightUpKeeping is [WeightUp] where tanks are full: so much mud is discarded
// first that the volume afterwards is what it was, V (rho2 - rho1)/(rho_a - rho1).
func WeightUpKeeping(mud Fluid, material Material, density float64) (Addition, error) {
	mass, volume, err := heavier(mud, material, density)
	if err != nil {
		return Addition{}, err
	}
	a := Addition{Discard: mud.Volume * ((density - mud.Density) / (mass/volume - mud.Density))}
	a.Treated = mud.Volume - a.Discard
	a.Mass = a.Discard / volume
	a.Wetting, a.Gain = a.Mass*material.Wetting, a.Discard
	a.Result = Fluid{mud.Volume, density}
	if !notNegative(a.Treated) || !notNegative(a.Mass) || !notNegative(a.Result.Mass()) {
		return Addition{}, fmt.Errorf("weighting up: %g kg of material; check the units of volume and density", a.Mass)
	}
	return a, nil
}

// heavier checks the values of a weight-up and returns mass and volume of one
// kilogram of wetted material.
func heavier(mud Fluid, material Material, density float64) (mass, volume float64, err error) {
	if err = mud.check("weighting up: mud"); err != nil {
		return 0, 0, err
	}
	if mass, volume, err = material.wet(); err != nil {
		return 0, 0, fmt.Errorf("weighting up: %w", err)
	}
	if !(density >= mud.Density) || !(density*volume < mass) {
		return 0, 0, fmt.Errorf("weighting up: %.0f kg/m³ is not between the %.0f of the mud and the %.0f of the wetted material; wish for something between",
			density, mud.Density, mass/volume)
	}
	return mass, volume, nil
}
