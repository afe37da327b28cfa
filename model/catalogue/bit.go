package catalogue

import (
	"cmp"
	"math"
	"slices"
)

// The words in the Kind of a [Bit].
const (
	DrillBit   = "bit"
	HoleOpener = "hole opener"
)

// Bit is one size of drill bit or hole opener. Lengths are in m.
type Bit struct {
	Size  float64 // nominal diameter, m
	Label string  // the size as the trade writes it, in inches: "12-1/4"
	Kind  string  // [DrillBit] or [HoleOpener]

	Oversize  float64 // how much above Size a roller bit may be made, m
	Undersize float64 // how much below Size a fixed-cutter bit may be made, m

	Source          string // keys of [Sources] for the size
	Seen            string // [Seen] or [Memory], for the size
	ToleranceSource string // keys of [Sources] for Oversize and Undersize
	ToleranceSeen   string // [Seen] or [Memory], for Oversize and Undersize
}

// A drift turned from millimetres may fall short of the same drift in inches by
// a rounding; no bit is made to this length.
const driftTolerance = 1e-6 // m

var bits = loadOnce("bits.csv", parseBit)

// Bits returns all bits and hole openers, smallest first.
func Bits() []Bit { return slices.Clone(bits()) }

// NearestBit returns the bit or hole opener whose size is nearest to a diameter
// (m), the smaller of two that are equally near. It reports false unless the
// diameter is a number above zero.
func NearestBit(diameter float64) (Bit, bool) {
	if !(diameter > 0) || math.IsInf(diameter, 0) {
		return Bit{}, false
	}
	rows := bits()
	above, _ := slices.BinarySearchFunc(rows, diameter, bySize)
	switch {
	case above == len(rows):
		return rows[len(rows)-1], true
	case above > 0 && diameter-rows[above-1].Size <= rows[above].Size-diameter:
		return rows[above-1], true
	}
	return rows[above], true
}

// LargestBitThrough returns the largest bit whose nominal size is not above a
// drift diameter (m): the drift is the bore that is guaranteed, the inside
// diameter is not. Hole openers are left out, and what a roller bit may be
// oversize is not counted. It reports false if no bit passes.
func LargestBitThrough(drift float64) (Bit, bool) {
	rows := bits()
	above, equal := slices.BinarySearchFunc(rows, drift+driftTolerance, bySize)
	if equal {
		above++
	}
	for i := above - 1; i >= 0; i-- {
		if rows[i].Kind == DrillBit {
			return rows[i], true
		}
	}
	return Bit{}, false
}

// bySize compares a bit with a diameter, for a search.
func bySize(b Bit, diameter float64) int { return cmp.Compare(b.Size, diameter) }

// parseBit reads bits.csv and sorts it.
func parseBit(name, text string) ([]Bit, error) {
	t := openTable(name, text,
		"size", "size_in", "kind", "oversize_in", "undersize_in",
		"source", "seen", "tolerance_source", "tolerance_seen")
	var rows []Bit
	for t.next() {
		rows = append(rows, Bit{
			Size:            t.amount("size_in", inch),
			Label:           t.word("size"),
			Kind:            t.choice("kind", DrillBit, HoleOpener),
			Oversize:        t.amount("oversize_in", inch),
			Undersize:       t.amount("undersize_in", inch),
			Source:          t.word("source"),
			Seen:            t.choice("seen", Seen, Memory),
			ToleranceSource: t.word("tolerance_source"),
			ToleranceSeen:   t.choice("tolerance_seen", Seen, Memory),
		})
	}
	slices.SortStableFunc(rows, func(a, b Bit) int { return cmp.Compare(a.Size, b.Size) })
	return rows, t.err
}
