package tally

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// KeepOff is the distance in metres that slips and packers usually keep from the
// couplings of the host string: two metres covers half a coupling and the error of
// both tallies. Common practice.
const KeepOff = 2.0

// A Part is a part of a liner hanger that must not stand at a coupling of the
// host: slips, packer elements. A receptacle's top need not be one: it does not
// touch the host.
type Part struct {
	Name string  // Name is the part's name.
	From float64 // From is where it begins, in metres below the top of the liner.
	To   float64 // To is where it ends, in metres below the top of the liner, not above From.
}

// A Placement is a liner top to be placed in its host string.
type Placement struct {
	Couplings []float64 // Couplings are the measured depths in metres of the host's couplings as run, in any order.
	Parts     []Part    // Parts must keep off the couplings.
	Distance  float64   // Distance in metres that they keep; see [KeepOff].
	HostShoe  float64   // HostShoe is the measured depth of the host's shoe in metres.
	LeastLap  float64   // LeastLap is the least length of liner in the host in metres.
	MostLap   float64   // MostLap is the greatest length of liner in the host in metres.
	Wanted    float64   // Wanted is the measured depth in metres where the liner top would best stand.
}

// A Stretch is a stretch of measured depth in metres, both ends belonging to it.
type Stretch struct{ Top, Bottom float64 }

// A Ban is a stretch of liner tops that one part and one coupling forbid; its ends
// are allowed.
type Ban struct {
	Stretch
	Coupling float64 // Coupling is the measured depth of the coupling in metres.
	Part     int     // Part is the part that would stand at it, as a place in the parts.
}

// A Placed says where the top of a liner may stand.
type Placed struct {
	Range   Stretch   // Range is what the lap leaves.
	Allowed []Stretch // Allowed are the stretches within it in which every part keeps its distance, from the top down.
	Bans    []Ban     // Bans are what reaches into the range, by their upper end.
	Nearest float64   // Nearest is the allowed depth in metres nearest to the wanted one, of two equally near the upper.
	Lap     float64   // Lap is the length in metres of liner in the host at that depth.
	Found   bool      // Found says that there is one.
}

// Place returns where a liner top may stand so that its lap is in range and every
// part is at least the distance away from every coupling. The depths come from
// intervals, not from samples: each part from a to b below the top forbids at each
// coupling c the open interval of tops from c-b-d to c-a+d, d being the distance.
// Without a distance to keep, a part still may not stand across a coupling.
//
// Moving the top moves the shoe with it unless the liner's length is changed by as
// much. That no place is allowed is no error; an error names an impossible input.
func Place(p Placement) (Placed, error) {
	if err := p.check(); err != nil {
		return Placed{}, err
	}
	out := Placed{Range: Stretch{p.HostShoe - p.MostLap, p.HostShoe - p.LeastLap}}
	for _, c := range p.Couplings {
		for n, part := range p.Parts {
			b := Ban{Stretch{c - part.To - p.Distance, c - part.From + p.Distance}, c, n}
			if b.Top < b.Bottom && b.Top < out.Range.Bottom && b.Bottom > out.Range.Top {
				out.Bans = append(out.Bans, b)
			}
		}
	}
	slices.SortStableFunc(out.Bans, func(a, b Ban) int {
		return cmp.Or(cmp.Compare(a.Top, b.Top), cmp.Compare(a.Part, b.Part))
	})
	out.Allowed = gaps(out.Range, out.Bans)
	out.Nearest, out.Found = nearest(out.Allowed, p.Wanted)
	if out.Found {
		out.Lap = p.HostShoe - out.Nearest
	}
	return out, nil
}

// gaps returns what a range has left beside bans, which are sorted by their upper
// end. Two bans that meet leave the point between them.
func gaps(r Stretch, bans []Ban) []Stretch {
	var left []Stretch
	from := r.Top
	for _, b := range bans {
		if b.Top >= from {
			left = append(left, Stretch{from, b.Top})
		}
		from = max(from, b.Bottom)
	}
	if from <= r.Bottom {
		left = append(left, Stretch{from, r.Bottom})
	}
	return left
}

// nearest returns the point of some stretches that is nearest to a depth.
func nearest(stretches []Stretch, wanted float64) (float64, bool) {
	best, found := 0.0, false
	for _, s := range stretches {
		at := min(max(wanted, s.Top), s.Bottom)
		if !found || math.Abs(at-wanted) < math.Abs(best-wanted) {
			best, found = at, true
		}
	}
	return best, found
}

// A Clearance is how far one part stands from the coupling nearest to it.
type Clearance struct {
	Part     int     // Part is the place in the parts.
	Top      float64 // Top is the measured depth in metres at which the part begins.
	Bottom   float64 // Bottom is the measured depth in metres at which it ends.
	Coupling float64 // Coupling is the measured depth in metres of the nearest coupling.
	Distance float64 // Distance in metres between them, negative where the coupling is between the part's ends.
	Kept     bool    // Kept says that the distance is not less than the one to be kept.
}

// Clearances returns for each part how far it stands from the nearest coupling
// with the liner top at a measured depth in metres. Without couplings there are
// none. An error names an impossible input. A distance that is short by less than
// a micrometre, which is rounding, is kept.
func Clearances(p Placement, top float64) ([]Clearance, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if err := checkDepth("liner top", top); err != nil {
		return nil, err
	}
	var out []Clearance
	for n, part := range p.Parts {
		c := Clearance{Part: n, Top: top + part.From, Bottom: top + part.To, Distance: math.Inf(1)}
		for _, at := range p.Couplings {
			if d := max(c.Top-at, at-c.Bottom); d < c.Distance {
				c.Coupling, c.Distance = at, d
			}
		}
		if len(p.Couplings) > 0 {
			c.Kept = c.Distance >= p.Distance-1e-6
			out = append(out, c)
		}
	}
	return out, nil
}

// check reports what cannot be placed.
func (p Placement) check() error {
	if err := checkDepth("host shoe", p.HostShoe); err != nil {
		return err
	}
	if err := checkDepth("wanted liner top", p.Wanted); err != nil {
		return err
	}
	if !(p.LeastLap >= 0) || !(p.LeastLap <= p.MostLap) || p.MostLap > longest {
		return fmt.Errorf("lap from %g to %g m; give the lesser first, zero or more, and check the unit", p.LeastLap, p.MostLap)
	}
	if !(p.Distance >= 0) || p.Distance > longest {
		return fmt.Errorf("distance from couplings %g m; give zero or more", p.Distance)
	}
	if len(p.Couplings) > mostRows {
		return fmt.Errorf("%d couplings; give at most %d", len(p.Couplings), mostRows)
	}
	for n, c := range p.Couplings {
		if err := checkDepth("depth", c); err != nil {
			return fmt.Errorf("coupling %d: %w", n+1, err)
		}
	}
	for n, part := range p.Parts {
		if !(part.From <= part.To) || math.Abs(part.From) > longest || part.To > longest {
			return fmt.Errorf("part %d, %q: from %g to %g m below the liner top; give the upper end first", n+1, part.Name, part.From, part.To)
		}
	}
	return nil
}
