package calc

import (
	"math"

	"borewalk/model/quantity"
)

// roundedPressure cuts a pressure that is not to be passed to a tenth of a bar or one psi.
func (e *evaluation) roundedPressure(pressure float64) float64 {
	return e.roundedDown(pressure, quantity.Pressure, 0.1)
}

// roundedDown returns a value cut to a share of the step in which its kind is planned, in the unit that the plan shows: 0.1 ppg or
// 0.01 sg is the whole step of an equivalent density.
func (e *evaluation) roundedDown(value float64, kind quantity.Kind, share float64) float64 {
	unit := e.units.Unit(kind)
	step := share * quantity.Step(kind, unit)
	const nearly = 1e-6 // of a step, for what is whole but for the last bit
	return unit.ToSI(math.Floor(unit.FromSI(value)/step+nearly) * step)
}

// roundedUp returns a density taken up to the step in which mud is mixed: 0.01 sg or 0.1 ppg.
func (e *evaluation) roundedUp(density float64) float64 {
	return -e.roundedDown(-density, quantity.Density, 1)
}

// roundedVolume cuts a volume to a tenth of a cubic metre or barrel.
func (e *evaluation) roundedVolume(volume float64) float64 {
	return e.roundedDown(volume, quantity.Volume, 0.1)
}
