package steel

import (
	"errors"
	"fmt"
)

// A Force is the axial force in the steel at both ends of a section, in N: above
// zero in tension, below in compression.
type Force struct {
	Top    float64 // Top is the force just below the upper end.
	Bottom float64 // Bottom is the force just above the lower end.
}

// Forces returns the true axial force at both ends of every section of a string that
// hangs freely, by the pressure-area method. It begins at the lower end, which the
// pressure outside pushes up and the pressure inside pushes down, goes up by the
// weight of the steel in air, and adds the pressure on each shoulder where the
// diameters change:
//
//	lower end       - outside Ao + inside Ai
//	along a section + mass g fall
//	at a shoulder   + outside (Ao below - Ao above) + inside (Ai above - Ai below)
//
// What hangs on the hook is the force at the top of the first section.
//
// Inside and outside give the gauge pressure in Pa at a true vertical depth in
// metres, and false where there is no fluid. Above the fluid that counts as no
// pressure; once there is fluid it must go on, and an error names the depth at which
// it does not. Sections must pass [Check]. The force is that of the diameters given:
// where the mass includes tool joints that the diameters do not, the top force is a
// little more than [Buoyed] gives.
//
// Source: pressure-area method, common practice in casing design; A. Lubinski and
// others (from memory). Example in the tests.
func Forces(sections []Section, inside, outside func(tvd float64) (float64, bool)) ([]Force, error) {
	if len(sections) == 0 {
		return nil, errors.New("string has no sections; give at least one")
	}
	if err := Check(sections); err != nil {
		return nil, err
	}
	in, err := pressures(sections, inside, "inside")
	if err != nil {
		return nil, err
	}
	out, err := pressures(sections, outside, "outside")
	if err != nil {
		return nil, err
	}
	forces := make([]Force, len(sections))
	var below Section // nothing hangs on the last section
	hanging := 0.0
	for i := len(sections) - 1; i >= 0; i-- {
		s := &sections[i]
		shoulder := out[i]*(Area(below.OD, 0)-Area(s.OD, 0)) + in[i]*(Area(s.ID, 0)-Area(below.ID, 0))
		bottom := hanging + shoulder
		hanging = bottom + s.LinearMass*gravity*s.fall()
		if _, ok := finite(hanging); !ok {
			return nil, fmt.Errorf("string section %d: the force grows beyond all numbers; check the units", i+1)
		}
		forces[i] = Force{Top: hanging, Bottom: bottom}
		below = *s
	}
	return forces, nil
}

// pressures returns the pressure at the lower end of every section, in Pa.
func pressures(sections []Section, at func(float64) (float64, bool), side string) ([]float64, error) {
	out := make([]float64, len(sections))
	_, begun := at(sections[0].Top)
	for i := range sections {
		p, ok := at(sections[i].Bottom)
		if _, number := finite(p); !number {
			return nil, fmt.Errorf("string section %d: the pressure %s at %.2f m is not a number; mend the fluid column", i+1, side, sections[i].Bottom)
		}
		if begun && !ok {
			return nil, fmt.Errorf("string section %d: there is no fluid %s at %.2f m, but there is above; make the fluid column reach it",
				i+1, side, sections[i].Bottom)
		}
		if ok {
			out[i], begun = p, true
		}
	}
	return out, nil
}
