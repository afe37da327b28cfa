package killsheet

import "borewalk/calc/column"

// KillDensity returns the density in kg/m³ that balances a formation whose pressure shows on the drill pipe, with an overbalance
// in Pa on top: mud + (SIDPP + overbalance)/(g z), z being the true vertical depth in m from which the mud in the string reaches
// up. It is exact: to round it, round up. Source: N. J. Lapeyrouse, Formulas and Calculations for Drilling, Production and
// Workover, chapter 4 (from memory); the balance of two columns.
func KillDensity(mud, sidpp, overbalance, tvd float64) (float64, error) {
	const topic = "kill density"
	if err := check(topic, positive("mud", mud, "kg/m³"), some("SIDPP", sidpp, "Pa"), some("overbalance", overbalance, "Pa"),
		positive("depth", tvd, "m")); err != nil {
		return 0, err
	}
	return outcome(topic, mud+(sidpp+overbalance)/(column.G*tvd))
}

// TripMargin returns the density in kg/m³ that makes up for what a mud of a yield point in Pa draws while pipe is pulled out of a
// hole, diameters in m: 16 tau/(3 g (D - d)). Field units print it as YP/(11.7 (D - d)), from the yield term of a Bingham fluid
// in a pipe of the width of the gap, 225 being exactly what 16/3 is in psi, ft, in and lbf/100 ft². The speed does not come in.
// Source: the trade's formula, common practice, from memory.
func TripMargin(yield, hole, pipe float64) (float64, error) {
	const topic = "trip margin"
	if err := check(topic, some("yield point", yield, "Pa"), some("pipe", pipe, "m"),
		positive("gap between hole and pipe", hole-pipe, "m")); err != nil {
		return 0, err
	}
	return outcome(topic, 16*yield/(3*column.G*(hole-pipe)))
}
