package gas

// R is the molar gas constant in J/(mol K), exact in the SI of 2019.
const R = 8.31446261815324

// airMass is the molar mass of dry air in kg/mol (U.S. Standard Atmosphere 1976).
const airMass = 0.0289644

// The domain of the curves for the pseudo-critical point. They were drawn from a gravity of 0.57 on; they are followed
// down to pure methane, 0.554, whose critical temperature they meet within 1 % and critical pressure within 3 %.
const (
	lightest = 0.55
	heaviest = 1.68
)

// Gas is a natural gas without impurities. The zero value has no state.
type Gas struct {
	equation            Equation
	mass                float64 // kg/mol
	criticalPressure    float64 // Pa
	criticalTemperature float64 // K
}

// Natural returns the gas of a gravity, its density over that of air when both are thin, with the equation that its
// compressibility factor comes from. It refuses a gravity beyond 0.55 to 1.68 and an equation that is none.
//
// Source of the pseudo-critical point: R. P. Sutton, Compressibility factors for high-molecular-weight reservoir gases,
// SPE 14265 (1985), from memory: 756.8 - 131.0 γ - 3.6 γ² in psia and 169.2 + 349.5 γ - 74.0 γ² in °R.
func Natural(gravity float64, by Equation) (Gas, error) {
	if _, err := by.domain(); err != nil {
		return Gas{}, err
	}
	if err := within("gas gravity", gravity, lightest, heaviest, "the pseudo-critical curves of Sutton"); err != nil {
		return Gas{}, err
	}
	const (
		psi     = 6894.757293168361
		rankine = 5.0 / 9
	)
	return Gas{
		equation:            by,
		mass:                gravity * airMass,
		criticalPressure:    psi * (756.8 - 131.0*gravity - 3.6*gravity*gravity),
		criticalTemperature: rankine * (169.2 + 349.5*gravity - 74.0*gravity*gravity),
	}, nil
}

// Critical returns the pseudo-critical pressure in Pa, absolute, and temperature in K.
func (g Gas) Critical() (pressure, temperature float64) {
	return g.criticalPressure, g.criticalTemperature
}
