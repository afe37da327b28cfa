package plot

import (
	"math"
	"strconv"

	"borewalk/model/quantity"
)

// RoundTicks returns round places between two values, about n of them, in a unit.
func RoundTicks(low, high float64, n int, unit quantity.Unit) []Tick {
	from, to := unit.FromSI(low), unit.FromSI(high)
	if !(to > from) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10((to-from)/float64(n))))
	for _, f := range []float64{1, 2, 5, 10} {
		if (to-from)/(step*f) <= float64(n) {
			step *= f
			break
		}
	}
	decimals := max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	var list []Tick
	for i := math.Ceil(from / step); i*step <= to+step*1e-9; i++ {
		x := i*step + 0 // a zero without a sign
		list = append(list, Tick{SI: unit.ToSI(x), Label: strconv.FormatFloat(x, 'f', decimals, 64)})
	}
	return list
}
