package seats

import (
	"fmt"
	"slices"
)

// mostHoles is more holes with mud than a well has. A window that is nearly closed takes ever shorter holes.
const mostHoles = 20

// A Proposal is holes one below the other, from the top down. The bottom of each is the seat of the next casing and the shoe of
// the hole below it.
type Proposal struct {
	Holes []Hole

	// Reached is the TVD in m as far as which there are holes: going up from the bottom the top of the well, going down from a
	// shoe its TD, unless something is in the way. Then Stop says what, for the hole that would come next.
	Reached float64
	Whole   bool
	Stop    Stop
}

// BottomUp proposes the shallowest shoes, from the bottom of the well up: a shoe stands where it does because its hole could
// not be drilled from any shallower one. Of shoes that a further condition allows it takes the shallowest below which all are
// allowed. It ends with the hole that the riserless fluid does for, or with a shoe at the top.
func BottomUp(w Window, m Margins) (Proposal, error) {
	well, err := read(w, m)
	if err != nil {
		return Proposal{}, err
	}
	p := Proposal{Reached: w.Bottom}
	open, any := well.riserless()
	for p.Reached > w.Top {
		hole, ok := Hole{Shoe: w.Top, Bottom: p.Reached, Riserless: true, Stop: Stop{Reason: AtTop}}, true
		if !any || p.Reached > open.Bottom {
			hole, ok = well.grow(growing{from: p.Reached, up: true})
		}
		if !p.add(hole, ok) {
			break
		}
		p.Reached = hole.Shoe
	}
	p.Whole = p.Reached == w.Top
	slices.Reverse(p.Holes)
	return p, nil
}

// TopDown proposes the deepest holes, from a shoe at a depth down: a hole ends where it does because a deeper one could not be
// drilled from its shoe. The hole above the shoe is not looked at. From the top of the well the first hole is the riserless one,
// if the fluid for it does at all.
func TopDown(w Window, m Margins, from float64) (Proposal, error) {
	well, err := read(w, m)
	if err != nil {
		return Proposal{}, err
	}
	if !(from >= w.Top) || !(from < w.Bottom) {
		return Proposal{}, fmt.Errorf("casing seats: the first shoe at %.2f m is not within the well from %.2f m to %.2f m; give one that is",
			from, w.Top, w.Bottom)
	}
	p := Proposal{Reached: from}
	for p.Reached < w.Bottom {
		hole, ok := Hole{}, false
		if p.Reached == w.Top {
			hole, ok = well.riserless()
		}
		if !ok {
			hole, ok = well.grow(growing{from: p.Reached})
		}
		if !p.add(hole, ok) {
			break
		}
		p.Reached = hole.Bottom
	}
	p.Whole = p.Reached == w.Bottom
	return p, nil
}

// withMud returns the holes but for the riserless one, while it stands first.
func (p *Proposal) withMud() []Hole {
	if len(p.Holes) > 0 && p.Holes[0].Riserless {
		return p.Holes[1:]
	}
	return p.Holes
}

// add takes a hole that was found, or says why there is none.
func (p *Proposal) add(hole Hole, ok bool) bool {
	switch {
	case !ok:
		p.Stop = hole.Stop
	case !hole.Riserless && len(p.withMud()) == mostHoles:
		p.Stop, ok = Stop{Reason: TooMany}, false
	default:
		p.Holes = append(p.Holes, hole)
	}
	return ok
}
