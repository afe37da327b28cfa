package chance

// Sums returns how the sum of the first part spreads, of the first two, and so on to all of them, in no fewer than so many trials.
// Each part is drawn alone. What is lost on top, such as waiting for weather, is a share of the sum, the same for all parts of one
// trial, drawn once for it: Constant(0) for none.
func Sums(parts []Triangle, lost Triangle, trials int, seed uint64) []Spread {
	columns := Run(seed, 0, Blocks(trials), len(parts), func() Trial {
		return func(d *Draw, sums []float64) {
			longer, sum := 1+d.Triangle(lost), 0.0
			for k, part := range parts {
				sum += d.Triangle(part)
				sums[k] = sum * longer
			}
		}
	})
	spreads := make([]Spread, len(parts))
	shared(len(parts), func() func(int) {
		return func(k int) { spreads[k] = SpreadOf(columns[k]) }
	})
	return spreads
}
