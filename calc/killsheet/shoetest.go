package killsheet

import "borewalk/calc/column"

// A ShoeTest is a leak-off or an integrity test below a shoe. The fluid above the shoe reaches from it up to the gauge, not to
// the rotary: the depth from the gauge to the shoe is that of the shoe and the height of the gauge above the rotary. The
// equivalent density is counted from the rotary all the same, as the mud's is that it will be held against.
type ShoeTest struct {
	Mud      float64 // Mud is what the hole is full of up to the rotary, in kg/m³.
	Shoe     float64 // Shoe is the true vertical depth of the shoe in m.
	Height   float64 // Height is that of the gauge above the rotary in m, less than nothing below it.
	Line     float64 // Line is the fluid in the line between the rotary and the gauge, in kg/m³.
	Breaking float64 // Breaking is what of the gauge's pressure in Pa breaks the gel on the way to the shoe and never gets there.
}

const shoeTopic = "shoe test"

// check reports a test that is none.
func (s ShoeTest) check() error {
	return check(shoeTopic, positive("mud", s.Mud, "kg/m³"), positive("shoe", s.Shoe, "m"),
		number("height of the gauge", s.Height, "m"), some("depth of the shoe below the gauge", s.Shoe+s.Height, "m"),
		some("fluid in the line", s.Line, "kg/m³"),
		some("pressure that breaks the gel", s.Breaking, "Pa"))
}

// standing returns what stands on the shoe besides the gauge, in Pa.
func (s ShoeTest) standing() float64 {
	return column.G*(s.Mud*s.Shoe+s.Line*s.Height) - s.Breaking
}

// Pressure returns the pressure in Pa at the shoe while the gauge shows one: gauge - breaking + g (mud × shoe + line × height).
// Source: the balance of columns.
func (s ShoeTest) Pressure(gauge float64) (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if err := check(shoeTopic, some("gauge", gauge, "Pa")); err != nil {
		return 0, err
	}
	return outcome(shoeTopic, gauge+s.standing())
}

// Gauge returns the pressure in Pa that the gauge shows when an equivalent density in kg/m³, counted from the rotary, is reached
// at the shoe: [ShoeTest.Pressure] the other way round. Below nothing, what stands on the shoe is more already.
func (s ShoeTest) Gauge(emw float64) (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if err := check(shoeTopic, positive("equivalent density", emw, "kg/m³")); err != nil {
		return 0, err
	}
	return outcome(shoeTopic, emw*column.G*s.Shoe-s.standing())
}
