package swab

import (
	"math"

	"borewalk/calc/root"
)

// Place is a depth along hole with the pressure in Pa by which the hole there may be pressed on, or drawn at, on top of the
// fluid at rest.
type Place struct {
	MD, Room float64
}

// excess returns the most by which a move goes beyond the room of a place, in Pa, and which place that is. Places stand
// from the top down.
func (s *String) excess(m Move, places []Place) (over float64, at int) {
	over = math.Inf(-1)
	sign := math.Copysign(1, m.Speed)
	through, rise, n := s.through(m), 0.0, 0
	look := func(rise float64) {
		if x := sign*rise - places[n].Room; x > over {
			over, at = x, n
		}
		n++
	}
	for k := range s.reaches {
		r := &s.reaches[k]
		loss := s.loss(r, m, through)
		for top := r.Bottom - r.Length; n < len(places) && places[n].MD <= r.Bottom; {
			look(rise + loss*max(places[n].MD-top, 0))
		}
		rise += loss * r.Length
	}
	for n < len(places) {
		look(rise)
	}
	return over, at
}

// Limit returns the speed in m/s, above zero either way, at which a move takes all the room of a place, and which place that
// is: none where a crawl is too fast, fastest where that is slow enough. The sign of m.Speed says which way.
//
// Between, the excess grows with the speed.
func (s *String) Limit(m Move, places []Place, fastest float64) (speed float64, at int) {
	const crawl, near = 1e-6, 100 // m/s; Pa: far below what a gauge shows
	if len(places) == 0 {
		return fastest, 0
	}
	sign := math.Copysign(1, m.Speed)
	over := func(speed float64) (over float64) {
		m.Speed = sign * speed
		over, at = s.excess(m, places)
		return over
	}
	if over(crawl) >= 0 {
		return 0, at
	}
	if over(fastest) <= 0 {
		return fastest, at
	}
	speed, _ = root.Crossing(over, crawl, fastest, near)
	over(speed) // what takes its room there
	return speed, at
}
