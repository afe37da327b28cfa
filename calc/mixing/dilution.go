package mixing

import "fmt"

// A Dilution is what a mud is thinned with, and what becomes of it.
type Dilution struct {
	Discard float64 // Discard is the mud in m³ to be taken out first, 0 where the volume may grow.
	Added   float64 // Added is the thinner liquid in m³.
	Result  Fluid   // Result is the mud that comes out.
}

// Dilute returns how a mud is brought to a lighter density in kg/m³ with a liquid
// of a lighter density still, if its volume may grow: the liquid is
// V (rho1 - rho2)/(rho2 - rho_l). It is an error unless the wanted density lies at
// or below the mud's and above the liquid's. Source: mass and volume balance.
func Dilute(mud Fluid, liquid, density float64) (Dilution, error) {
	if err := lighter(mud, liquid, density); err != nil {
		return Dilution{}, err
	}
	added := mud.Volume * ((mud.Density - density) / (density - liquid))
	d := Dilution{Added: added, Result: Fluid{mud.Volume + added, density}}
	if !notNegative(added) || !notNegative(d.Result.Mass()) {
		return Dilution{}, fmt.Errorf("diluting: %.0f kg/m³ is too close to the %.0f of the liquid; wish for more", density, liquid)
	}
	return d, nil
}

// DiluteKeeping is [Dilute] where tanks are full: as much mud is discarded first as
// liquid is added, V (rho1 - rho2)/(rho1 - rho_l).
func DiluteKeeping(mud Fluid, liquid, density float64) (Dilution, error) {
	if err := lighter(mud, liquid, density); err != nil {
		return Dilution{}, err
	}
	added := mud.Volume * ((mud.Density - density) / (mud.Density - liquid))
	return Dilution{Discard: added, Added: added, Result: Fluid{mud.Volume, density}}, nil
}

// lighter checks the values of a dilution.
func lighter(mud Fluid, liquid, density float64) error {
	if err := mud.check("diluting: mud"); err != nil {
		return err
	}
	if !positive(liquid) {
		return fmt.Errorf("diluting: liquid of %g kg/m³; give a density above zero", liquid)
	}
	if !(density <= mud.Density) || !(density > liquid) {
		return fmt.Errorf("diluting: %.0f kg/m³ is not between the %.0f of the liquid and the %.0f of the mud; wish for something between",
			density, liquid, mud.Density)
	}
	return nil
}
