package tally

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// A DeckJoint is a joint or a stand of pipe on board, measured or taken at the
// average.
type DeckJoint struct {
	Number   string  // Number is what is painted on it; it may be empty.
	Length   float64 // Length is what it adds to the string in metres.
	Rejected bool    // Rejected says that it is not to be run: drift, thread, damage.
}

// A DeckPup is a length of pup joint on board.
type DeckPup struct {
	Label  string  // Label is its name.
	Length float64 // Length is what each adds to the string in metres.
	Count  int     // Count is how many there are; zero is none.
}

// Average returns a number of joints on deck that are all taken to have the
// average length in metres. A negative number gives none.
func Average(count int, length float64) []DeckJoint {
	joints := make([]DeckJoint, max(0, min(count, mostRows)))
	for i := range joints {
		joints[i].Length = length
	}
	return joints
}

const (
	longestJoint = 60      // longestJoint in metres is more than any joint, and more than any stand of four joints
	mostJoints   = 2000    // mostJoints is more than lie on any deck
	mostPups     = 64      // mostPups bounds the pieces among which to choose
	mostKinds    = 16      // mostKinds bounds the different lengths among them
	mostSums     = 1 << 16 // mostSums bounds the lengths that they make together: 16 pieces, all different
)

// nm returns a length in whole nanometres. It is exact for millimetres, for
// hundredths of a foot and for 64ths of an inch, and leaves room to add a million
// of the longest strings.
func nm(metres float64) int64 { return int64(math.Round(metres * 1e9)) }

// metres is the way back from nm.
func metres(nm int64) float64 { return float64(nm) / 1e9 }

// checkDeck reports the first joint or pup that cannot be.
func checkDeck(joints []DeckJoint, pups []DeckPup) error {
	if len(joints) > mostJoints {
		return fmt.Errorf("%d joints on deck; give at most %d", len(joints), mostJoints)
	}
	seen := map[string]int{}
	for i, j := range joints {
		if !(j.Length > 0) || j.Length > longestJoint {
			return fmt.Errorf("joint %d, number %q: length %g m; give one above zero and check its unit", i+1, j.Number, j.Length)
		}
		if before, ok := seen[j.Number]; ok && j.Number != "" {
			return fmt.Errorf("joint %d has the number %q of joint %d; strike out the one that was counted twice", i+1, j.Number, before)
		}
		seen[j.Number] = i + 1
	}
	if len(pups) > mostKinds {
		return fmt.Errorf("%d lengths of pup joint; give at most %d", len(pups), mostKinds)
	}
	pieces := 0
	for i, p := range pups {
		if !(p.Length > 0) || p.Length > longestJoint {
			return fmt.Errorf("pup %d, %q: length %g m; give one above zero and check its unit", i+1, p.Label, p.Length)
		}
		if p.Count < 0 || p.Count > mostPups {
			return fmt.Errorf("pup %d, %q: count %d; give how many there are, at most %d", i+1, p.Label, p.Count, mostPups)
		}
		pieces += p.Count
	}
	if pieces > mostPups {
		return fmt.Errorf("%d pup joints; give at most %d", pieces, mostPups)
	}
	return nil
}

// A pupSum is one length that pups can be put together to.
type pupSum struct {
	length int64 // in nm
	pieces int
	counts [mostKinds]uint8 // how many of each entry on deck
}

// pupSums returns every length that the pups on deck can make, shortest first,
// each in the way that takes the fewest pieces. An error says that there are more
// lengths than can be searched.
func pupSums(pups []DeckPup) ([]pupSum, error) {
	sums := []pupSum{{}}
	for kind, p := range pups {
		without := len(sums)
		if without*(p.Count+1) > 4*mostSums {
			return nil, tooMany()
		}
		for n := 1; n <= p.Count; n++ {
			for _, s := range sums[:without] {
				s.length += int64(n) * nm(p.Length)
				s.pieces += n
				s.counts[kind] = uint8(n)
				sums = append(sums, s)
			}
		}
		slices.SortStableFunc(sums, func(a, b pupSum) int {
			return cmp.Or(cmp.Compare(a.length, b.length), cmp.Compare(a.pieces, b.pieces))
		})
		sums = slices.CompactFunc(sums, func(a, b pupSum) bool { return a.length == b.length })
		if len(sums) > mostSums {
			return nil, tooMany()
		}
	}
	return sums, nil
}

// tooMany is the error of a search that would not end soon.
func tooMany() error {
	return fmt.Errorf("the pup joints make more than %d lengths; leave some of them out of the choice", mostSums)
}
