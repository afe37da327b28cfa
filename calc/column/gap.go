package column

import "math"

// A Gap is the least distance found between two functions of depth.
type Gap struct {
	Value float64 // Value is upper minus lower there, in their unit; below zero where they cross.
	TVD   float64 // TVD is the true vertical depth in metres.
}

// How the search in [LeastGap] goes. Between two breaks the difference is looked
// at in parts equal steps; around the lowest of these the least is closed in on,
// by golden section, until the bracket is closeEnough metres wide.
const (
	parts       = 4
	closeEnough = 1e-3
	mostSteps   = 80
	golden      = 0.6180339887498949 // (sqrt(5)-1)/2
)

// LeastGap returns the least value of upper minus lower between two true vertical
// depths in metres, and the depth at which it is found, the uppermost of equals.
//
// Breaks are the depths at which either function has a corner, in any order; those
// outside the stretch are ignored, and without any the stretch is one piece. What
// makes them needed is this: a curve is straight between its rows, but a fluid
// column that does not begin at the rotary has an equivalent density of the form
// a + c/z, hyperbolic in depth. The difference between breaks is then
// a + b z + c/z, which turns at most once. So it is least at a break or at one
// depth between two, and that depth can be closed in on.
//
// For functions of that kind, given all their breaks, the value is right to a
// millionth of a kg/m³; the depth is one at which the gap is that close to the
// least, and where the gap is flat that can be centimetres away. Other smooth
// functions do as well as long as they turn once between breaks; of several dips
// between two breaks one narrower than a quarter of their distance can be missed.
//
// It reports false where the stretch is upside down or not a number, and where
// either function has no value at a depth that was looked at: a margin over half
// the hole is not the margin of the hole.
func LeastGap(upper, lower func(tvd float64) (float64, bool), from, to float64, breaks []float64) (Gap, bool) {
	if !finite(from) || !finite(to) || from > to {
		return Gap{}, false
	}
	s := search{upper: upper, lower: lower, least: Gap{Value: math.Inf(1)}}
	top := s.at(from)
	for from < to && !s.undefined {
		bottom := to
		for _, depth := range breaks {
			if depth > from && depth < bottom {
				bottom = depth
			}
		}
		top = s.piece(from, bottom, top)
		from = bottom
	}
	if s.undefined {
		return Gap{}, false
	}
	return s.least, true
}

// A search is one run of LeastGap.
type search struct {
	upper, lower func(float64) (float64, bool)
	least        Gap
	undefined    bool // a function had no value somewhere
}

// at returns the gap at a depth and remembers the least.
func (s *search) at(tvd float64) float64 {
	u, ok1 := s.upper(tvd)
	l, ok2 := s.lower(tvd)
	gap := u - l
	if !ok1 || !ok2 || !finite(gap) {
		s.undefined = true
		return 0
	}
	if gap < s.least.Value || gap == s.least.Value && tvd < s.least.TVD {
		s.least = Gap{gap, tvd}
	}
	return gap
}

// piece searches between two neighbouring breaks, given the gap at the upper one,
// and returns the gap at the lower one.
func (s *search) piece(from, to, top float64) float64 {
	step := (to - from) / parts
	lowest, value, last := 0, top, top
	for i := 1; i <= parts; i++ {
		tvd := from + float64(i)*step
		if i == parts {
			tvd = to
		}
		last = s.at(tvd)
		if last < value {
			lowest, value = i, last
		}
	}
	if s.undefined {
		return 0
	}
	// Where an end of the piece is the lowest, it nearly always is the least. One
	// look a little inside tells: if the gap does not fall from there inwards, it
	// does not turn.
	probe := min(step/100, closeEnough)
	switch {
	case lowest == 0 && s.at(from+probe) >= value:
	case lowest == parts && s.at(to-probe) >= value:
	default:
		s.closeIn(max(from, from+float64(lowest-1)*step), min(to, from+float64(lowest+1)*step))
	}
	return last
}

// closeIn narrows a bracket around a least value by golden section.
func (s *search) closeIn(a, b float64) {
	c, d := b-golden*(b-a), a+golden*(b-a)
	atC, atD := s.at(c), s.at(d)
	for range mostSteps {
		if b-a <= closeEnough || s.undefined {
			return
		}
		if atC <= atD {
			b, d, atD = d, c, atC
			c = b - golden*(b-a)
			atC = s.at(c)
		} else {
			a, c, atC = c, d, atD
			d = a + golden*(b-a)
			atD = s.at(d)
		}
	}
}
