package leakoff

import "math"

const (
	begin = 3 // points that a line begins with
	build = 5 // tolerances by which a line rises at least
)

// run is a straight part: points in a row, but for some left out, that a straight line passes within their tolerances.
type run struct {
	points             []Point
	may                []float64 // how far off each point may be, Pa
	on                 []int     // points of the run
	flattest, steepest ray       // of the lines that pass them; past the run all others lie between the two
}

// ray is a line through a place.
type ray struct {
	place Point
	slope float64
}

func (r *ray) at(volume float64) float64 { return r.place.Pressure + r.slope*(volume-r.place.Volume) }

// least and most are the ends of the tolerance of a point.
func (r *run) least(k int) Point { return Point{r.points[k].Volume, r.points[k].Pressure - r.may[k]} }
func (r *run) most(k int) Point  { return Point{r.points[k].Volume, r.points[k].Pressure + r.may[k]} }

// below reports whether a point off the run lies below every line of it, later or earlier.
func (r *run) below(k int) bool {
	most, lowest := r.most(k), &r.flattest
	if k < r.on[0] {
		lowest = &r.steepest
	}
	return most.Pressure < lowest.at(most.Volume)
}

// above reports whether a later point lies above every line of the run.
func (r *run) above(k int) bool {
	least := r.least(k)
	return least.Pressure > r.steepest.at(least.Volume)
}

// take lengthens the run by a later point that is neither above nor below it. What it cuts off from the flattest line makes that
// steeper, and the other way round.
func (r *run) take(k int) {
	least, most := r.least(k), r.most(k)
	if len(r.on) < 2 || least.Pressure > r.flattest.at(least.Volume) {
		r.flattest = r.turned(least, r.most, 1)
	}
	if len(r.on) < 2 || most.Pressure < r.steepest.at(most.Volume) {
		r.steepest = r.turned(most, r.least, -1)
	}
	r.on = append(r.on, k)
}

// turned returns the line through a place that just passes under one end of the tolerances of all points of the run, as steep as
// that makes it; with the sign below zero the one that passes over them, as flat as that makes it.
func (r *run) turned(place Point, end func(k int) Point, sign float64) ray {
	line := ray{place, sign * math.Inf(-1)}
	for _, k := range r.on {
		from := end(k)
		if slope := (place.Pressure - from.Pressure) / (place.Volume - from.Volume); sign*slope > sign*line.slope {
			line.slope = slope
		}
	}
	return line
}

// begins starts the run at a point, and reports whether the middle one of the first three lies within its tolerance of the
// straight line between the others. That is half of what later points are allowed: a point that is no good start is no loss, the
// next may be one.
func (r *run) begins(from int) bool {
	first, middle, third := r.points[from], r.points[from+1], r.points[from+2]
	between := ray{first, (third.Pressure - first.Pressure) / (third.Volume - first.Volume)}
	if !(math.Abs(middle.Pressure-between.at(middle.Volume)) <= r.may[from+1]) {
		return false
	}
	for k := range begin {
		r.take(from + k)
	}
	return true
}

// ending is what ends a run.
type ending uint8

const (
	holds    ending = iota // the points do
	falls                  // the last point lies below it
	departs                // two points in a row lie below it
	stiffens               // two points in a row lie above it
)

// follow lengthens the run as far as it goes. A point that is off it alone is left out.
func (r *run) follow() ending {
	end := len(r.points) - 1
	for k := r.last() + 1; k <= end; k++ {
		switch below, above := r.below(k), r.above(k); {
		case !below && !above:
			r.take(k)
		case below && k == end:
			return falls
		case below && r.below(k+1):
			return departs
		case above && k < end && r.above(k+1):
			return stiffens
		}
	}
	return holds
}

// last returns the last point of the run.
func (r *run) last() int { return r.on[len(r.on)-1] }

// retreat takes points off the end of the run that lean the way of the departure.
func (r *run) retreat() {
	on := r.on
	for len(on) > begin && r.leans(on) {
		on = on[:len(on)-1]
	}
	*r = run{points: r.points, may: r.may}
	for _, k := range on {
		r.take(k)
	}
}

// leans reports whether the last of some points is further below the line that fits those before it than any of them strays from
// it; less than a tenth of its tolerance is no leaning.
func (r *run) leans(on []int) bool {
	const least = 0.1
	before, last := on[:len(on)-1], on[len(on)-1]
	l, stray := r.fitted(before), least*r.may[last]
	for _, k := range before {
		stray = max(stray, math.Abs(l.over(r.points[k])))
	}
	return l.over(r.points[last]) < -stray*l.doubt(r.points[last].Volume)
}

// fitted returns the line that fits some points best.
func (r *run) fitted(on []int) (l line) {
	for _, k := range on {
		l.add(r.points[k])
	}
	return l
}

// builds reports whether the run rises enough to be a build-up.
func (r *run) builds() bool {
	l := r.fitted(r.on)
	rise := l.slope() * (r.points[r.last()].Volume - r.points[r.on[0]].Volume)
	return rise > 0 && rise >= build*r.may[r.last()]
}

// flattens returns the first point before the run that lies below every line of it, if there is one. The first of all does not
// count.
func (r *run) flattens() (k int, flat bool) {
	for k := 1; k < r.on[0]; k++ {
		if r.below(k) {
			return k, true
		}
	}
	return 0, false
}

// leftOut lists the points between the first and the last of the run that are not of it.
func (r *run) leftOut() (list []int) {
	for i, k := range r.on[1:] {
		for out := r.on[i] + 1; out < k; out++ {
			list = append(list, out)
		}
	}
	return list
}
