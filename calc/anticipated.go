package calc

import (
	"borewalk/calc/gas"
	"borewalk/calc/killsheet"
	"borewalk/model"
)

// gasGiven reports whether the plan says how heavy gas is taken in the hole of section i.
func (e *evaluation) gasGiven(i int) bool {
	s := &e.plan.Sections[i]
	return s.StackTest.GasGradient.IsSet() || s.Loads.GasGradient.IsSet()
}

// underRealGas returns the pressure in Pa at the wellhead under the gas that section i is planned for, on a pressure at a TVD.
func (e *evaluation) underRealGas(i int, pore, from float64) (float64, bool) {
	g, missing := e.kickGas(i)
	if first(missing, e.heat.rock, e.heat.sea).open() {
		return 0, false
	}
	pressure, err := killsheet.MASP(pore, from, e.datum.Wellhead, func(pressure, tvd float64) (float64, error) {
		return g.Density(gas.State{Pressure: pressure + killsheet.Atmosphere, Temperature: e.heat.at(tvd)})
	})
	return pressure, err == nil
}

// anticipated returns the highest pressure anticipated at the wellhead of section i, gauge, inside: pore pressure below less a column
// of gas, and what it is worked out from.
func (e *evaluation) anticipated(i int) (pressure, pore, from, gas float64, missing gap) {
	pore, from, missing = e.gasSource(i)
	missing = first(missing, e.gaps.wellhead)
	gas = e.gasDensity(i)
	if own := e.plan.Sections[i].StackTest.GasGradient; own.IsSet() {
		gas = own.SI / gravity
	}
	if missing.open() {
		return 0, 0, 0, gas, missing
	}
	pressure, gas, missing = e.underGas(i, pore, from, gas)
	// What has shown itself counts beside the prognosis.
	if in := &e.killOf(i).in; in.measured && !in.missing.open() && !missing.open() {
		if read, weighs, bad := e.underGas(i, in.pressure(), in.tvd, gas); !bad.open() && read > pressure {
			return read, in.pressure(), in.tvd, weighs, gap{}
		}
	}
	return pressure, pore, from, gas, missing
}

// underGas returns the pressure at the wellhead of section i under a column of gas on a pressure at a TVD: of a density, or of the gas
// that the section is planned for where that is lighter and the plan gives none, and that column's density.
func (e *evaluation) underGas(i int, pore, from, gas float64) (pressure, weighs float64, missing gap) {
	pressure, err := killsheet.MASP(pore, from, e.datum.Wellhead, killsheet.Steady(gas))
	if err != nil {
		return 0, gas, gap{model.PathOf(i, "bop_test.gas"), err.Error()}
	}
	if lighter, ok := e.underRealGas(i, pore, from); ok && !e.gasGiven(i) && lighter > pressure {
		return lighter, (pore - lighter) / (gravity * (from - e.datum.Wellhead)), gap{}
	}
	return pressure, gas, gap{}
}
