package killsheet

import (
	"fmt"

	"borewalk/calc/column"
)

// A Seabed is what presses on a wellhead when no riser stands on it: an open sea from the air gap below the rotary down to the
// mudline, m below the rotary, with the sea's density in kg/m³.
type Seabed struct {
	AirGap, Mudline, Sea float64
}

// check reports a seabed that is none.
func (s Seabed) check() error {
	return check("seabed", some("air gap", s.AirGap, "m"), positive("mudline", s.Mudline, "m"), positive("sea", s.Sea, "kg/m³"),
		some("water depth", s.Mudline-s.AirGap, "m"))
}

// below reports a depth that is not below the seabed.
func (s Seabed) below(tvd float64) error {
	if !(tvd > s.Mudline) || !finite(tvd) {
		return fmt.Errorf("seabed: a depth of %g m is not below the mudline at %g m; give one in the hole", tvd, s.Mudline)
	}
	return nil
}

// pressure returns that of the sea at the mudline in Pa.
func (s Seabed) pressure() float64 { return s.Sea * column.G * (s.Mudline - s.AirGap) }

// DensityWithRiserMargin returns the density in kg/m³ of a mud that still balances a pore pressure in Pa at a depth when the
// riser is gone: what the sea does not carry of it, over the hole below the seabed, [column.DensityBelowSea]. In deep water it
// may be more than the hole bears; below nothing, the sea alone presses by more than the pore pressure.
func (s Seabed) DensityWithRiserMargin(pore, tvd float64) (float64, error) {
	const topic = "density with riser margin"
	if err := s.check(); err != nil {
		return 0, err
	}
	if err := s.below(tvd); err != nil {
		return 0, err
	}
	density, ok := column.DensityBelowSea(s.AirGap, s.Mudline, s.Sea, pore, tvd)
	if !ok {
		return 0, fmt.Errorf("%s: no density balances %g Pa at %g m below a seabed at %g m; check pressure and depths",
			topic, pore, tvd, s.Mudline)
	}
	return density, nil
}

// RiserMargin returns the density in kg/m³ that [Seabed.DensityWithRiserMargin] is above the equivalent density of the pore
// pressure, counted from the rotary.
func (s Seabed) RiserMargin(pore, tvd float64) (float64, error) {
	density, err := s.DensityWithRiserMargin(pore, tvd)
	if err != nil {
		return 0, err
	}
	return outcome("riser margin", density-pore/(column.G*tvd))
}

// Lost returns the pressure in Pa that the well loses with its riser: the mud column from the mudline up to the rotary, less the
// sea. It is below nothing where the sea is the heavier.
func (s Seabed) Lost(mud float64) (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	const topic = "pressure lost with the riser"
	if err := check(topic, positive("mud", mud, "kg/m³")); err != nil {
		return 0, err
	}
	return outcome(topic, mud*column.G*s.Mudline-s.pressure())
}

// Left returns by how much in Pa mud and sea are still above a pore pressure at a depth once the riser is gone, below it as less
// than nothing.
func (s Seabed) Left(mud, pore, tvd float64) (float64, error) {
	lost, err := s.Lost(mud)
	if err != nil {
		return 0, err
	}
	if err := s.below(tvd); err != nil {
		return 0, err
	}
	const topic = "overbalance without the riser"
	if err := check(topic, number("pore pressure", pore, "Pa")); err != nil {
		return 0, err
	}
	return outcome(topic, mud*column.G*tvd-lost-pore)
}
