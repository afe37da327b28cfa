package slurry

import (
	"fmt"
	"math"
)

// ImpliedDensity returns the slurry density in kg/m³ that follows from yield and
// mix fluid: what goes in, a dry blend and m cubic metres of fluid of density
// rho_m per kilogram of cement, comes out as so much slurry,
//
//	rho = (dry + m rho_m) / yield.
//
// It reports false where a figure is missing or not a number.
func (s Slurry) ImpliedDensity() (float64, bool) {
	if !positive(s.Yield) || !notNegative(s.MixFluid) || !positive(s.Dry) || (s.MixFluid > 0 && !positive(s.FluidDensity)) {
		return 0, false
	}
	density := (s.Dry + s.MixFluid*s.FluidDensity) / s.Yield
	return density, positive(density)
}

// Check reports whether the figures of a slurry sheet belong together: the density
// given may differ from [Slurry.ImpliedDensity] by the tolerance, a fraction of
// it, and the slurry must have more room than its fluid. A sheet printed to two
// decimals of a cubic foot and one of a pound per gallon agrees within some 0.01
// (its rounding alone); more than that says that one figure is from another
// recipe, or that the yield is counted per sack of blend instead of cement.
func (s Slurry) Check(tolerance float64) error {
	if !notNegative(tolerance) {
		return fmt.Errorf("slurry sheet: tolerance %g; give a fraction of 0 or more", tolerance)
	}
	if !positive(s.Density) {
		return fmt.Errorf("slurry sheet: density %g kg/m³; give one above zero", s.Density)
	}
	implied, ok := s.ImpliedDensity()
	if !ok {
		return fmt.Errorf("slurry sheet: yield %g m³/kg, mix fluid %g m³/kg of %g kg/m³, dry blend %g kg/kg; give all of them",
			s.Yield, s.MixFluid, s.FluidDensity, s.Dry)
	}
	if s.Yield <= s.MixFluid {
		return fmt.Errorf("slurry sheet: yield %.3g m³/kg is not more than its mix fluid of %.3g m³/kg; check both units", s.Yield, s.MixFluid)
	}
	if off := math.Abs(s.Density - implied); off > tolerance*s.Density {
		return fmt.Errorf("slurry sheet: yield and mix fluid make %.0f kg/m³, the sheet says %.0f; ask which figure is right", implied, s.Density)
	}
	return nil
}
