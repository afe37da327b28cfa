package steel

import (
	"fmt"
	"math"
)

// A Section is a length of string of one size.
type Section struct {
	Top        float64 // Top is the true vertical depth of its upper end in metres.
	Bottom     float64 // Bottom is the true vertical depth of its lower end in metres; above Top where the hole climbs.
	OD         float64 // OD is the outside diameter in metres.
	ID         float64 // ID is the inside diameter in metres, 0 for a solid one.
	LinearMass float64 // LinearMass is the mass per length in kg/m, with joints and couplings.
	Label      string  // Label names it to a person.
}

// fall returns how far the section goes down, in metres.
func (s *Section) fall() float64 { return s.Bottom - s.Top }

// Check reports the first section that is not usable: a value that is no number,
// diameters that leave no wall, a mass below zero, or a top that is not where the
// section above it ends. An empty string is no error. An error names the section,
// counted from 1.
func Check(sections []Section) error {
	for i := range sections {
		s := &sections[i]
		switch {
		case math.IsNaN(s.fall()) || math.IsInf(s.fall(), 0):
			return fmt.Errorf("%s: a depth is missing or not a number; give top and bottom", s.name(i+1))
		case Area(s.OD, s.ID) == 0:
			return fmt.Errorf("%s: outside %g m and inside %g m leave no wall; mend the diameters", s.name(i+1), s.OD, s.ID)
		case !(s.LinearMass >= 0) || math.IsInf(s.LinearMass, 0):
			return fmt.Errorf("%s: mass %g kg/m; give one of 0 or more", s.name(i+1), s.LinearMass)
		case i > 0 && math.Abs(s.Top-sections[i-1].Bottom) > 1e-6:
			return fmt.Errorf("%s begins at %.2f m but the one above ends at %.2f m; let them meet", s.name(i+1), s.Top, sections[i-1].Bottom)
		}
	}
	return nil
}

// name says which section is meant in an error.
func (s *Section) name(row int) string {
	if s.Label == "" {
		return fmt.Sprintf("string section %d", row)
	}
	return fmt.Sprintf("string section %d %q", row, s.Label)
}

// InAir returns the weight in N that hangs from the top of a string in air, without
// friction: the mass per length of each section times its fall times g. It is zero
// where a value is not a number.
func InAir(sections []Section) float64 { return Buoyed(sections, 0, 0) }

// Buoyed returns the weight in N that hangs from the top of a string which is full
// of a fluid of one density and stands in a fluid of another, both in kg/m³ and both
// filled to the top of the first section, without friction:
//
//	sum of g fall [mass (1 - outside/steel) + bore area (inside - outside)]
//
// With the same fluid on both sides this is the buoyancy factor times the weight in
// air. With two it is the pressure-area method with the pressures written out; the
// steel that displaces fluid is taken from the mass per length, so tool joints and
// couplings float as they should, and diameters matter for the bore alone. The lower
// end may be open or shut: with two fluids it must be shut, or they would not stay.
//
// It is below zero for a string that floats, and zero where a value is not a number.
// Source: pressure-area balance, common practice; example in the tests.
func Buoyed(sections []Section, inside, outside float64) float64 {
	weight := 0.0
	for i := range sections {
		s := &sections[i]
		steel := s.LinearMass * (1 - outside/Density)
		weight += gravity * s.fall() * (steel + Area(s.ID, 0)*(inside-outside))
	}
	weight, _ = finite(weight)
	return weight
}
