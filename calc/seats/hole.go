package seats

import "fmt"

// Reason is why a hole goes no further.
type Reason uint8

// The reasons.
const (
	Free          Reason = iota // nothing is in its way
	Closed                      // no mud does for more of it: what it needs would be over what it stands
	KickTolerance               // the further condition on it fails
	FluidEnds                   // the riserless fluid is too light below, or too heavy
	AtTop                       // it reaches the top from which the well is judged
	AtBottom                    // it reaches the well's TD
	TooMany                     // there are too many holes already for a well
)

// String returns what it is called.
func (r Reason) String() string {
	switch r {
	case Free:
		return "free"
	case Closed:
		return "window closed"
	case KickTolerance:
		return "kick tolerance"
	case FluidEnds:
		return "riserless fluid"
	case AtTop:
		return "top"
	case AtBottom:
		return "TD"
	}
	return "too many holes"
}

// A Stop is what ends a hole. For [Closed] and [FluidEnds] it says what the hole would need, what it stands, and where.
type Stop struct {
	Reason        Reason
	Needs, Stands Bound
}

// A Hole is drilled below a shoe down to the seat of the next casing. The first hole of a well that is drilled open to the sea
// has no shoe but the top of the well; it is judged by the riserless fluid, and has no least and most mud.
type Hole struct {
	Shoe, Bottom float64 // TVD in m
	Riserless    bool
	Least, Most  Bound // mud
	Stop         Stop  // why its shoe is no shallower, or its bottom no deeper
}

// Between returns the mud that a hole from a shoe to a bottom needs and stands, both within the well. Its Stop says whether it
// can be drilled: Free, or else what keeps it from that.
func Between(w Window, m Margins, shoe, bottom float64) (Hole, error) {
	read, err := read(w, m)
	if err != nil {
		return Hole{}, err
	}
	if !(shoe >= w.Top) || !(bottom > shoe) || !(bottom <= w.Bottom) {
		return Hole{}, fmt.Errorf("casing seats: a hole from %.2f m to %.2f m is not within the well from %.2f m to %.2f m; give one that is",
			shoe, bottom, w.Top, w.Bottom)
	}
	return read.hole(shoe, bottom), nil
}

// hole returns a hole with its muds, and whether it can be drilled.
func (w *well) hole(shoe, bottom float64) Hole {
	h := Hole{Shoe: shoe, Bottom: bottom}
	h.Least, h.Most = w.mud(shoe, bottom)
	switch {
	case h.Most.Mud-h.Least.Mud < -near:
		h.Stop = Stop{Closed, h.Least, h.Most}
	case w.margins.Tolerance != nil && !w.margins.Tolerance(shoe, bottom, h.Least.Mud):
		h.Stop.Reason = KickTolerance
	}
	return h
}
