package leakoff

import (
	"fmt"
	"math"
)

// Point is a reading: the volume pumped so far in m³ and the gauge pressure in Pa.
type Point struct {
	Volume, Pressure float64
}

// Share is how far off a reading may be at least, of the highest pressure up to then: half a percent, which is what the
// gauges of a rig floor or a cement unit are good for (from memory).
const Share = 0.005

// fewest is how many readings make a test: those that a line begins with, and one that tells whether it goes on.
const fewest = begin + 1

// check refuses points that are no test.
func check(points []Point, within float64) error {
	if len(points) < fewest {
		return fmt.Errorf("leakoff: %d readings: a test has %d or more", len(points), fewest)
	}
	if !(within >= 0) || !finite(within) {
		return fmt.Errorf("leakoff: readings within %g Pa: give what the gauge can be read to, or 0", within)
	}
	for k, p := range points {
		switch {
		case !finite(p.Volume) || !finite(p.Pressure):
			return fmt.Errorf("leakoff: reading %d is %g m3 and %g Pa: give numbers", k+1, p.Volume, p.Pressure)
		case k > 0 && !(p.Volume > points[k-1].Volume):
			return fmt.Errorf("leakoff: the volume of reading %d, %g m3, does not rise over the %g m3 before it: leave out what was read after the pump stopped",
				k+1, p.Volume, points[k-1].Volume)
		}
	}
	return nil
}

// tolerances returns how far off each reading may be, in Pa, and a billionth more: readings are round numbers, and those just as
// far off as they may be are not left to the rounding of the computer.
func tolerances(points []Point, within float64) []float64 {
	const rounding = 1 + 1e-9
	list, highest := make([]float64, len(points)), 0.0
	for k, p := range points {
		highest = max(highest, p.Pressure)
		list[k] = rounding * max(within, Share*highest)
	}
	return list
}

// highest returns the reading with the highest pressure, the first of several.
func highest(points []Point) (at int) {
	for k, p := range points {
		if p.Pressure > points[at].Pressure {
			at = k
		}
	}
	return at
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
