package killsheet

import (
	"fmt"

	"borewalk/calc/column"
)

// A GasSand is a shallow sand that holds gas down to the water at its base: depths in m, the gas in kg/m³ as it is there.
type GasSand struct {
	Top, Base, Gas float64
}

// check reports a sand that is none.
func (s GasSand) check() error {
	if err := check("gas sand", positive("top", s.Top, "m"), positive("base", s.Base, "m"), some("gas", s.Gas, "kg/m³")); err != nil {
		return err
	}
	if s.Base < s.Top {
		return fmt.Errorf("gas sand: its base at %.1f m is above its top at %.1f m; exchange them", s.Base, s.Top)
	}
	return nil
}

// TopPressure returns the pressure in Pa at the top of the sand from that of the water at its base: less the gas between. Source:
// the balance of columns.
func (s GasSand) TopPressure(base float64) (float64, error) {
	const topic = "pressure of a gas sand"
	if err := s.check(); err != nil {
		return 0, err
	}
	if err := check(topic, positive("pressure at the base", base, "Pa")); err != nil {
		return 0, err
	}
	return outcome(topic, base-s.Gas*column.G*(s.Base-s.Top))
}
