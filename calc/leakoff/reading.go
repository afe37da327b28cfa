package leakoff

import "fmt"

// Reading is what a test says. Points are named by their index.
type Reading struct {
	From, LeakOff int     // first and last point on the straight line
	LeftOut       []int   // points between them that are off the line, each alone
	Intercept     float64 // pressure on the line where nothing is pumped yet, Pa
	Slope         float64 // of the line, Pa/m³, above zero
	Departed      bool    // what follows LeakOff has departed from the line; if not, it was an integrity test, and held the pressure there
	Unconfirmed   bool    // the last point fell off the line, and none follows to say that it departed
	Highest       int     // point of the highest pressure: where it is after LeakOff and pressures fall from it, the breakdown
}

// Line returns the pressure in Pa on the straight line at a volume in m³.
func (r *Reading) Line(volume float64) float64 { return r.Intercept + r.Slope*volume }

// Compliance returns the volume in m³ that the closed system takes per Pa: fluid, casing and open hole together.
func (r *Reading) Compliance() float64 { return 1 / r.Slope }

// Read finds the straight line of a test and the last point on it, by the rule at the head of the package. Points stand in
// the order of pumping. Readings may be off by within, in Pa: half the smallest division of the gauge, or all of it where the
// needle moves; 0 for pressures that are exact. The error says in one line which point was wrong, the first being reading 1, or
// why there is no straight line.
func Read(points []Point, within float64) (Reading, error) {
	if err := check(points, within); err != nil {
		return Reading{}, err
	}
	may := tolerances(points, within)
	for from := range len(points) - begin + 1 {
		r := run{points: points, may: may}
		if !r.begins(from) {
			continue
		}
		end := r.follow()
		if end == departs || end == falls {
			r.retreat()
		}
		if end == stiffens || !r.builds() {
			continue
		}
		if k, flat := r.flattens(); flat {
			return Reading{}, fmt.Errorf("leakoff: reading %d lies below the line of readings %d to %d, which only slower readings can lead into: "+
				"strike out what was misread or pumped otherwise, or read at smaller steps", k+1, from+1, r.last()+1)
		}
		return r.reading(end)
	}
	return Reading{}, fmt.Errorf("leakoff: no straight line of %d readings rises by %d times what they may be off and then holds or departs: "+
		"strike out what was misread, or read at smaller steps", begin, build)
}

// reading is what the run says when it ended so.
func (r *run) reading(end ending) (Reading, error) {
	l := r.fitted(r.on)
	out := Reading{From: r.on[0], LeakOff: r.last(), LeftOut: r.leftOut(), Intercept: l.at(0), Slope: l.slope(),
		Departed: end == departs, Unconfirmed: end == falls, Highest: highest(r.points)}
	if !finite(out.Intercept) || !finite(out.Slope) || !finite(out.Compliance()) {
		return Reading{}, fmt.Errorf("leakoff: pressures to %g Pa and volumes to %g m3 are out of all proportion: check their units",
			r.points[out.Highest].Pressure, r.points[len(r.points)-1].Volume)
	}
	return out, nil
}
