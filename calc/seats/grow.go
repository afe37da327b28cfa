package seats

import "slices"

// shortest is the length in m under which a hole is none: no casing is set for it.
const shortest = 1

// parts is in how many parts a piece between two rows is looked at for the further condition.
const parts = 4

// A growing hole keeps one of its ends; the other moves away. Where that is, is told by a depth that grows with the hole: the
// depth of the bottom of a hole that grows downwards, and less the depth of the shoe of one that grows upwards.
type growing struct {
	from float64 // TVD of the end that stays
	up   bool
}

// at returns the depth that tells where the end is that moves.
func (g growing) at(tvd float64) float64 {
	if g.up {
		return -tvd
	}
	return tvd
}

// ends returns shoe and bottom of the hole.
func (g growing) ends(x float64) (shoe, bottom float64) {
	if g.up {
		return -x, g.from
	}
	return g.from, x
}

// looks returns where the moving end meets the rows, in the order in which it does; the last is the top or the bottom of the well.
func (w *well) looks(g growing) []float64 {
	looks := make([]float64, 0, len(w.rows))
	for _, r := range w.rows {
		if x := g.at(r.tvd); x > g.at(g.from) {
			looks = append(looks, x)
		}
	}
	slices.Sort(looks)
	return looks
}

// grow returns the longest hole, up or down from a depth, that can be drilled with all that are shorter. It reports false where
// that is none, with a Stop that says what is in the way.
func (w *well) grow(g growing) (Hole, bool) {
	looks := w.looks(g)
	start, end := g.at(g.from), looks[len(looks)-1]
	x, stop := w.open(g, looks)
	if w.margins.Tolerance != nil {
		if held := w.tolerated(g, looks, x); held < x {
			x, stop = held, Stop{Reason: KickTolerance}
		}
	}
	if x < end && x-start < shortest {
		return Hole{Stop: stop}, false
	}
	hole := w.hole(g.ends(x))
	hole.Stop = stop
	return hole, true
}

// open returns how far a hole may grow until no mud does for all of it. A longer hole needs no less mud and stands no more, so
// there is one such place.
func (w *well) open(g growing, looks []float64) (x float64, stop Stop) {
	does := func(x float64) bool {
		least, most := w.mud(g.ends(x))
		return least.Mud-most.Mud <= near
	}
	closed := func(x float64) Stop {
		least, most := w.mud(g.ends(x))
		return Stop{Closed, least, most}
	}
	held := g.at(g.from)
	if !does(held) {
		return held, closed(held)
	}
	for _, look := range looks {
		if !does(look) {
			x, seen := closeIn(does, held, look, exact)
			return x, closed(seen)
		}
		held = look
	}
	if g.up {
		return held, Stop{Reason: AtTop}
	}
	return held, Stop{Reason: AtBottom}
}

// tolerated returns how far a hole may grow, to at most so far, until the further condition fails.
func (w *well) tolerated(g growing, looks []float64, most float64) float64 {
	tolerates := func(x float64) bool {
		shoe, bottom := g.ends(x)
		least, _ := w.mud(shoe, bottom)
		return w.margins.Tolerance(shoe, bottom, least.Mud)
	}
	held := g.at(g.from)
	for _, look := range looks {
		from, to := held, min(look, most)
		for k := 1; k <= parts && to > from; k++ {
			x := from + (to-from)*float64(k)/parts
			if k == parts {
				x = to
			}
			if !tolerates(x) {
				held, _ = closeIn(tolerates, held, x, closeEnough)
				return held
			}
			held = x
		}
	}
	return held
}
