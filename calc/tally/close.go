package tally

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
)

// A Closing is a string that is to close: what is fixed, what lies on deck and
// where the shoe is to stand.
type Closing struct {
	Below  []Item      // Below is fixed and stands lowest: shoe, shoe track, collars; or all that has been run already.
	Joints []DeckJoint // Joints on deck in the order in which they are to be run.
	Pups   []DeckPup   // Pups on board; they come to stand above the joints.
	Above  []Item      // Above is fixed and stands topmost: crossovers, the hanger.

	Shoulder   float64 // Shoulder is the measured depth of the landing shoulder, or of a liner's top, in metres.
	Wanted     float64 // Wanted is the measured depth of the shoe in metres: bottom of the hole less the rathole.
	Shallowest float64 // Shallowest is the least depth of the shoe in metres that is accepted.
	Deepest    float64 // Deepest is the depth of the shoe in metres that is never exceeded.

	// Tolerance is the closure error in metres that is as good as none, so that no
	// pup is spent to gain it; zero asks for the nearest that there is.
	Tolerance float64

	// OutOfOrder is how many joints may be left out from below the topmost one, 0 to
	// 2. Zero keeps the order and leaves joints out from the top only.
	OutOfOrder int
}

// A Closed is a string that closes as well as it can.
type Closed struct {
	Run        []int   // Run are the joints to run, bottom up, as places in the list on deck, the first 0.
	Left       []int   // Left are the sound joints that stay on deck.
	Skipped    []int   // Skipped are those of them that lie below the topmost joint run.
	Rejected   []int   // Rejected are the joints that stay on deck because they were rejected.
	Pups       []int   // Pups is how many of each entry of the pups are used.
	PupsUsed   int     // PupsUsed is how many that is together.
	Shoe       float64 // Shoe is the measured depth of the shoe in metres.
	Error      float64 // Error is the closure error in metres: the depth of the shoe less the wanted one.
	Accepted   bool    // Accepted says that the shoe is not above the shallowest depth.
	Items      []Item  // Items is the whole string, bottom up, for [Run].
	OnDeck     int     // OnDeck is the number of joints that stay on deck, rejected ones among them.
	LengthLeft float64 // LengthLeft is the length in metres of the sound joints that stay on deck.
}

// Close chooses how many joints to run, which to leave out and which pups to use,
// so that the shoe stands as near as possible to the wanted depth and never below
// the deepest one. Of strings that are equally near it takes the one with the
// fewest pups, then the one with the fewest joints out of order, then the
// shallower. The search is exact within the joints that may be left out.
//
// Too few joints are no error: the string then ends short and is not accepted. An
// error names an impossible input, or says that the fixed items alone reach below
// the deepest depth.
func Close(c Closing) (Closed, error) {
	if err := c.check(); err != nil {
		return Closed{}, err
	}
	sums, err := pupSums(c.Pups)
	if err != nil {
		return Closed{}, err
	}
	fixed := total(c.Below) + total(c.Above)
	sound, lengths := soundOnes(c.Joints)
	shoulder := nm(c.Shoulder)
	w := wish{
		want: nm(c.Wanted) - shoulder, least: nm(c.Shallowest) - shoulder, most: nm(c.Deepest) - shoulder,
		limit: nm(c.Deepest) - shoulder, tolerance: nm(c.Tolerance), outOfOrder: c.OutOfOrder,
	}
	best, ok := choose(fixed, lengths, sums, w)
	if !ok {
		return Closed{}, fmt.Errorf("shoe track, hanger and what else is fixed are %.2f m, and the deepest shoe leaves %.2f m; fix less or allow the shoe deeper",
			metres(fixed), metres(w.limit))
	}
	return c.closed(best, sound), nil
}

// closed writes a choice out.
func (c Closing) closed(best choice, sound []int) Closed {
	out := Closed{
		Shoe: c.Shoulder + metres(nm(c.Wanted)-nm(c.Shoulder)+best.err), Error: metres(best.err),
		Accepted: best.cost < outside, PupsUsed: best.pups.pieces, Pups: make([]int, len(c.Pups)),
		Items: slices.Clone(c.Below),
	}
	for n, i := range sound {
		skipped := slices.Contains(best.left[:best.lefts], n)
		if n < best.reach && !skipped {
			out.Run = append(out.Run, i)
			out.Items = stack(out.Items, Item{Kind: Joint, Label: c.Joints[i].Number, Count: 1, Length: c.Joints[i].Length})
			continue
		}
		if skipped {
			out.Skipped = append(out.Skipped, i)
		}
		out.Left = append(out.Left, i)
		out.LengthLeft += c.Joints[i].Length
	}
	for i, j := range c.Joints {
		if j.Rejected {
			out.Rejected = append(out.Rejected, i)
		}
	}
	out.OnDeck = len(out.Left) + len(out.Rejected)
	out.Items = append(out.Items, usedPups(c.Pups, best.pups, out.Pups)...)
	out.Items = append(out.Items, c.Above...)
	return out
}

// stack puts one more piece on top, in the line of the piece below where that is
// the same and neither has a number.
func stack(items []Item, piece Item) []Item {
	if n := len(items) - 1; n >= 0 && piece.Label == "" {
		if below := &items[n]; below.Label == "" && below.Kind == piece.Kind && below.Length == piece.Length {
			below.Count = below.pieces() + 1
			return items
		}
	}
	return append(items, piece)
}

// usedPups fills in how many of each pup a sum uses and returns them as items, the
// longest lowest.
func usedPups(pups []DeckPup, sum *pupSum, counts []int) []Item {
	var items []Item
	for i, p := range pups {
		if counts[i] = int(sum.counts[i]); counts[i] > 0 {
			items = append(items, Item{Kind: Pup, Label: p.Label, Count: counts[i], Length: p.Length})
		}
	}
	slices.SortStableFunc(items, func(a, b Item) int { return cmp.Compare(b.Length, a.Length) })
	return items
}

// check reports what cannot be closed.
func (c Closing) check() error {
	for _, d := range []struct {
		what  string
		depth float64
	}{{"landing shoulder", c.Shoulder}, {"wanted shoe depth", c.Wanted}, {"shallowest shoe depth", c.Shallowest}, {"deepest shoe depth", c.Deepest}} {
		if err := checkDepth(d.what, d.depth); err != nil {
			return err
		}
	}
	switch {
	case c.Wanted < c.Shallowest || c.Wanted > c.Deepest:
		return fmt.Errorf("wanted shoe depth %.2f m is not between %.2f and %.2f m; move it or them", c.Wanted, c.Shallowest, c.Deepest)
	case c.OutOfOrder < 0 || c.OutOfOrder > mostOutOfOrder:
		return fmt.Errorf("%d joints out of order; give 0 to %d", c.OutOfOrder, mostOutOfOrder)
	}
	if err := checkTolerance(c.Tolerance); err != nil {
		return err
	}
	if slices.ContainsFunc(c.Below, func(i Item) bool { return i.Kind == Hanger }) {
		return errors.New("there is a hanger below the joints; put it among what stands topmost")
	}
	if slices.ContainsFunc(c.Above, func(i Item) bool { return i.Kind == Shoe }) {
		return errors.New("there is a shoe above the joints; put it among what stands lowest")
	}
	if err := checkItems(slices.Concat(c.Below, c.Above)); err != nil {
		return err
	}
	return checkDeck(c.Joints, c.Pups)
}

// checkTolerance reports a tolerance that makes no sense: above a metre everything
// is as good as anything.
func checkTolerance(t float64) error {
	if !(t >= 0) || t > 1 {
		return fmt.Errorf("tolerance %g m; give 0 to 1 m", t)
	}
	return nil
}

// soundOnes returns the places and the lengths of the joints that may be run.
func soundOnes(joints []DeckJoint) (places []int, lengths []int64) {
	for i, j := range joints {
		if !j.Rejected {
			places = append(places, i)
			lengths = append(lengths, nm(j.Length))
		}
	}
	return places, lengths
}

// total returns the length of items in nm.
func total(items []Item) (sum int64) {
	for _, i := range items {
		sum += int64(i.pieces()) * nm(i.Length)
	}
	return sum
}
