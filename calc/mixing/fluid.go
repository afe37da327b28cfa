package mixing

import (
	"fmt"
	"math"
)

// A Fluid is a volume of one density.
type Fluid struct {
	Volume  float64 // Volume is its volume in m³.
	Density float64 // Density is its density in kg/m³.
}

// Mass returns its mass in kg.
func (f Fluid) Mass() float64 { return f.Volume * f.Density }

// check reports whether the fluid is usable.
func (f Fluid) check(what string) error {
	if !notNegative(f.Volume) || !positive(f.Density) || !notNegative(f.Mass()) {
		return fmt.Errorf("%s of %g m³ at %g kg/m³; give a volume of 0 or more and a density above zero", what, f.Volume, f.Density)
	}
	return nil
}

// Mix returns the fluid that several make together: volumes and masses summed. An
// error names the fluid that is not usable, counted from 1; without any volume
// there is nothing to mix.
func Mix(fluids ...Fluid) (Fluid, error) {
	var volume, mass float64
	for i, f := range fluids {
		if err := f.check(fmt.Sprintf("mixing: fluid %d", i+1)); err != nil {
			return Fluid{}, err
		}
		volume += f.Volume
		mass += f.Mass()
	}
	density := mass / volume
	if !positive(volume) || !positive(density) {
		return Fluid{}, fmt.Errorf("mixing: %g m³ in all weigh %g kg; give at least one fluid some volume", volume, mass)
	}
	return Fluid{volume, density}, nil
}

// Cut returns the share of the heavy fluid, a fraction of the volume, in a mix of
// wanted density made from a heavy stock and a light fluid, as heavy mud is cut
// with sea water on the fly: (mix - light)/(heavy - light), densities in kg/m³. At
// a flow Q of the mix, share times Q comes from the stock and the rest from the
// light fluid. It is an error unless light is lighter than heavy and the wanted
// density lies between them, ends included.
func Cut(light, heavy, wanted float64) (float64, error) {
	switch {
	case !positive(light) || !positive(heavy) || !positive(wanted):
		return 0, fmt.Errorf("cutting mud: densities %g, %g and %g kg/m³; give all above zero", light, heavy, wanted)
	case !(heavy > light):
		return 0, fmt.Errorf("cutting mud: heavy stock of %.0f kg/m³ is not heavier than the light fluid of %.0f; exchange them", heavy, light)
	case wanted < light || wanted > heavy:
		return 0, fmt.Errorf("cutting mud: %.0f kg/m³ is not between %.0f and %.0f; wish for something between", wanted, light, heavy)
	}
	return (wanted - light) / (heavy - light), nil
}

// positive reports whether x is an ordinary number above zero.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// notNegative reports whether x is an ordinary number of zero or more.
func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 0) }
