package tally

import (
	"fmt"
	"math"
	"slices"
)

// Kind says what an item of a running list is.
type Kind int

// The kinds of item. A kind decides where an item may stand and what counts as a
// joint; it does not change the arithmetic.
const (
	Other         Kind = iota // Other is anything else that adds length, a running tool among them.
	Shoe                      // Shoe is the guide or float shoe; it can only stand lowest.
	TrackJoint                // TrackJoint is a joint of the shoe track.
	FloatCollar               // FloatCollar is the collar with the upper valve.
	LandingCollar             // LandingCollar is the collar on which the plugs land, where it is one of its own.
	Joint                     // Joint is a joint of casing above the shoe track.
	MarkerJoint               // MarkerJoint is a short joint that is found again on a log.
	Pup                       // Pup is a short joint that makes the string close.
	Crossover                 // Crossover joins two threads.
	Hanger                    // Hanger is what lands: a hanger with its pup, a housing joint, a liner's hanger assembly.
)

// String returns the trade's word for the kind.
func (k Kind) String() string {
	words := [...]string{"item", "shoe", "shoe-track joint", "float collar", "landing collar", "joint", "marker joint",
		"pup joint", "crossover", "hanger"}
	if k < 0 || int(k) >= len(words) {
		return "item"
	}
	return words[k]
}

// An Item is one line of a running list: a piece, or several of the same length
// that stand one on the other.
type Item struct {
	Kind   Kind    // Kind is what it is.
	Label  string  // Label is its name or the number painted on it.
	Count  int     // Count is how many there are; zero is one.
	Length float64 // Length in metres that each adds to the string; a hanger's from the landing shoulder to its pin.
}

const (
	longest  = 20_000 // longest is a length or depth in metres that no string reaches; more comes from a wrong unit
	mostRows = 10_000 // mostRows is a number of pieces that no string has; more comes from a wrong field
)

// pieces returns how many pieces the item is.
func (i Item) pieces() int { return max(i.Count, 1) }

// named returns what to call the item in a message.
func (i Item) named() string {
	if i.Label == "" {
		return i.Kind.String()
	}
	return fmt.Sprintf("%s %q", i.Kind, i.Label)
}

// checkItems reports the first item that cannot stand in a list where it does.
func checkItems(items []Item) error {
	pieces := 0
	for n, i := range items {
		if i.Count < 0 || i.Count > mostRows {
			return fmt.Errorf("item %d, %s: count %d; give how many there are", n+1, i.named(), i.Count)
		}
		if !(i.Length > 0) || i.Length > longest {
			return fmt.Errorf("item %d, %s: length %g m; give one above zero and check its unit", n+1, i.named(), i.Length)
		}
		if i.Kind == Shoe && (n > 0 || i.pieces() > 1) {
			return fmt.Errorf("item %d, %s: there is something below it; write the list bottom up with one shoe", n+1, i.named())
		}
		if i.Kind == Hanger && (n < len(items)-1 || i.pieces() > 1) {
			return fmt.Errorf("item %d, %s: there is something above it; write the list bottom up with one hanger", n+1, i.named())
		}
		if pieces += i.pieces(); pieces > mostRows {
			return fmt.Errorf("item %d, %s: more than %d pieces; check the counts", n+1, i.named(), mostRows)
		}
	}
	return nil
}

// LeaveOut returns the list without one piece, counted from the bottom with the
// lowest as 0, and the piece that was taken out. The list that was given stays as
// it was. An error says that there is no such piece.
func LeaveOut(items []Item, piece int) ([]Item, Item, error) {
	n, within, err := find(items, piece)
	if err != nil {
		return nil, Item{}, err
	}
	if n == len(items) {
		return nil, Item{}, fmt.Errorf("piece %d of a list of %d; name one that is in it", piece+1, piece)
	}
	out := items[n]
	out.Count = 1
	return splice(items, n, within, nil, 1), out, nil
}

// Add returns the list with an item put in below the piece of that number, counted
// from the bottom with the lowest as 0; the number of pieces puts it on top. The
// list that was given stays as it was, and [Run] will say if the item cannot stand there. Add is the inverse of [LeaveOut]: the two
// lists run to the same depths. An error says that there is no such place.
func Add(items []Item, piece int, item Item) ([]Item, error) {
	n, within, err := find(items, piece)
	if err != nil {
		return nil, err
	}
	return splice(items, n, within, []Item{item}, 0), nil
}

// find returns the item that holds a piece, and the piece's number within it. For
// the piece that would come after the last it returns the number of items.
func find(items []Item, piece int) (n, within int, err error) {
	if err := checkItems(items); err != nil {
		return 0, 0, err
	}
	left := piece
	for n, i := range items {
		if left >= 0 && left < i.pieces() {
			return n, left, nil
		}
		left -= i.pieces()
	}
	if left != 0 {
		return 0, 0, fmt.Errorf("piece %d of a list of %d; name one that is in it", piece+1, piece-left)
	}
	return len(items), 0, nil
}

// splice returns the items with some put in, or pieces dropped, at one piece of
// item n.
func splice(items []Item, n, within int, in []Item, drop int) []Item {
	out := slices.Clone(items[:n])
	if n == len(items) {
		return append(out, in...)
	}
	below, above := items[n], items[n]
	below.Count, above.Count = within, items[n].pieces()-within-drop
	if below.Count > 0 {
		out = append(out, below)
	}
	out = append(out, in...)
	if above.Count > 0 {
		out = append(out, above)
	}
	return append(out, items[n+1:]...)
}

// checkDepth reports a depth that no well has.
func checkDepth(what string, depth float64) error {
	if math.IsNaN(depth) || math.Abs(depth) > longest {
		return fmt.Errorf("%s %g m; give a depth and check its unit", what, depth)
	}
	return nil
}
