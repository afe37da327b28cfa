package gas

// thinnest is the pressure in Pa below which a bubble is none.
const thinnest = 1

// State is where a gas is: the absolute pressure in Pa and the temperature in K.
type State struct {
	Pressure, Temperature float64
}

// Z returns the compressibility factor at a state: the volume over that of an ideal gas. Outside the domain of its
// equation the error is an [OutsideError].
func (g Gas) Z(at State) (float64, error) {
	return g.equation.Z(at.Pressure/g.criticalPressure, at.Temperature/g.criticalTemperature)
}

// Density returns the density in kg/m³ at a state, p M / (z R T). Its errors are those of [Gas.Z].
func (g Gas) Density(at State) (float64, error) {
	z, err := g.Z(at)
	if err != nil {
		return 0, err
	}
	return at.Pressure * g.mass / (z * R * at.Temperature), nil
}

// Growth returns the volume of a bubble at a second state over that at a first, by the real gas law with the mass kept:
// p₁ z₂ T₂ / (p₂ z₁ T₁). It refuses pressures below 1 Pa; its other errors are those of [Gas.Z].
func (g Gas) Growth(from, to State) (float64, error) {
	a, err := g.room(from)
	if err != nil {
		return 0, err
	}
	b, err := g.room(to)
	if err != nil {
		return 0, err
	}
	return b / a, nil
}

// room returns z T / p, to which the volume of a given mass is proportional.
func (g Gas) room(at State) (float64, error) {
	z, err := g.Z(at)
	if err != nil {
		return 0, err
	}
	d, err := g.equation.domain()
	if err != nil {
		return 0, err
	}
	if err := within("pressure in Pa", at.Pressure, thinnest, d.most*g.criticalPressure, "a bubble"); err != nil {
		return 0, err
	}
	return z * at.Temperature / at.Pressure, nil
}
