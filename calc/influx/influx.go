package influx

import (
	"errors"
	"fmt"

	"borewalk/calc/gas"
)

// atmosphere is what a gauge leaves out, in Pa: the standard atmosphere.
const atmosphere = 101325

// Influx is what flows in. The zero value is nothing.
type Influx struct {
	law     law
	density float64
	gas     gas.Gas
}

// law is how an influx gives.
type law uint8

const (
	nothing law = iota
	realGas
	boyleAtEnds
	boyleInTheMiddle
	liquid
)

// Boyle is where the pressures are taken by which Boyle's law takes a bubble of one density to the bottom of the hole.
type Boyle uint8

// The published ways. Both take gauge pressures.
const (
	// AtEnds: the pressure at the top of the bubble when that is at the place, over that of the formation.
	AtEnds Boyle = iota
	// InTheMiddle: the mean pressure of the bubble at the place over that at the bottom, which in a plain annulus is that in
	// its middle; where it is spread over several cells each part counts with its volume. Devereux, appendix 1, takes for
	// the middle at the bottom half the height that the bubble has at the shoe, which makes a thousandth.
	InTheMiddle
)

// Gas returns a real gas as influx: its density goes by pressure and temperature, its mass is kept.
func Gas(g gas.Gas) Influx { return Influx{law: realGas, gas: g} }

// Simple returns the influx of handbooks: one density in kg/m³ for its weight, Boyle's law for its volume.
func Simple(density float64, by Boyle) Influx {
	switch by {
	case AtEnds:
		return Influx{law: boyleAtEnds, density: density}
	case InTheMiddle:
		return Influx{law: boyleInTheMiddle, density: density}
	}
	return Influx{}
}

// Liquid returns an influx of one density in kg/m³ that does not grow.
func Liquid(density float64) Influx { return Influx{law: liquid, density: density} }

// check reports what makes an influx none in a mud. A liquid may weigh more than the mud.
func (f Influx) check(mud float64) error {
	switch f.law {
	case nothing:
		return errors.New("influx: nothing flows in; give a gas or a liquid by one of the ways named")
	case liquid:
		if !(f.density >= 0 && f.density <= heaviest) {
			return fmt.Errorf("influx: a liquid of %g kg/m³; give one from 0 to %g", f.density, heaviest)
		}
	case boyleAtEnds, boyleInTheMiddle:
		if !(f.density >= 0 && f.density < mud) {
			return fmt.Errorf("influx: a gas of %g kg/m³ in mud of %g kg/m³; give one that is lighter", f.density, mud)
		}
	}
	return nil
}

// weighs returns the density in kg/m³ at a gauge pressure and a temperature.
func (f Influx) weighs(pressure, temperature float64) (float64, error) {
	if f.law != realGas {
		return f.density, nil
	}
	return f.gas.Density(gas.State{Pressure: pressure + atmosphere, Temperature: temperature})
}

// keeps returns what a volume holds, per m³, of that which stays the same along the way: mass, pressure times volume, or
// volume.
func (f Influx) keeps(pressure, density float64) float64 {
	switch f.law {
	case realGas:
		return density
	case boyleInTheMiddle:
		return pressure
	}
	return 1
}

// scale returns what the content of a whole bubble is to be taken times to stay the same along the way: where Boyle's law is
// taken at the ends, the pressure at the end.
func (f Influx) scale(end float64) float64 {
	if f.law == boyleAtEnds {
		return end
	}
	return 1
}
