package nozzle

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Nozzles are sold by whole thirty-seconds of an inch.
const (
	thirtySecond = 0.0254 / 32 // m
	Least        = 7           // Least is the smallest size offered, in 32nds of an inch: common practice, from memory.
	Most         = 32          // Most is the largest size offered: as there. A larger one can be read.
	mostRead     = 64          // no nozzle is wider than two inches
	mostOfOne    = 30          // nor has a bit more of them
)

// Group is a number of nozzles of one size, in 32nds of an inch.
type Group struct{ Count, Size int }

// Set is the nozzles of a bit.
type Set []Group

// Read reads nozzles as people write them: "3x16 2x18", "16 16 18" or "3 x 16, 2 x 18", all in 32nds of an inch. Nothing
// written is no nozzles. The error says in one line what was not understood.
func Read(text string) (Set, error) {
	var set Set
	for _, word := range words(text) {
		count, size, several := strings.Cut(word, "x")
		if !several {
			count, size = "1", word
		}
		n, err := strconv.Atoi(count)
		if err != nil || n < 1 || n > mostOfOne {
			return nil, fmt.Errorf("%q is no number of nozzles: write 3x16 for three of 16/32 in", clipped(word))
		}
		d, err := strconv.Atoi(strings.TrimSuffix(size, "/32"))
		if err != nil || d < 1 || d > mostRead {
			return nil, fmt.Errorf("%q is no nozzle: sizes are whole 32nds of an inch, such as 3x16", clipped(word))
		}
		if set = append(set, Group{n, d}); set.Count() > mostOfOne {
			return nil, fmt.Errorf("more than %d nozzles: a bit has fewer", mostOfOne)
		}
	}
	return set, nil
}

// words parts what people write into one word for each size, with a small x within it.
func words(text string) []string {
	list := strings.Fields(strings.Map(func(ch rune) rune {
		switch ch {
		case '×', 'X':
			return 'x'
		case ',', '+':
			return ' '
		}
		return ch
	}, text))
	joined := list[:0]
	for _, word := range list {
		if n := len(joined); n > 0 && (strings.HasPrefix(word, "x") || strings.HasSuffix(joined[n-1], "x")) {
			joined[n-1] += word
			continue
		}
		joined = append(joined, word)
	}
	return joined
}

// clipped keeps a message on its line, whatever was typed.
func clipped(word string) string {
	const most = 20
	if letters := []rune(word); len(letters) > most {
		return string(letters[:most]) + ".."
	}
	return word
}

// String writes the nozzles as [Read] takes them.
func (s Set) String() string {
	list := make([]string, 0, len(s))
	for _, g := range s {
		list = append(list, strconv.Itoa(g.Count)+"x"+strconv.Itoa(g.Size))
	}
	return strings.Join(list, " ")
}

// Count returns how many nozzles there are.
func (s Set) Count() (n int) {
	for _, g := range s {
		n += g.Count
	}
	return n
}

// Area returns the total flow area in m²: the sum of pi/4 × d².
func (s Set) Area() (area float64) {
	for _, g := range s {
		d := float64(g.Size) * thirtySecond
		area += float64(g.Count) * math.Pi / 4 * d * d
	}
	return area
}

// Neighbours returns the sets of n nozzles nearest to an area in m², the largest that is not above it and the smallest that is
// not below it, of at most two sizes that follow each other, from [Least] to [Most]. One that does not exist is nil: no n
// nozzles are so small or so large. Without a nozzle or an area both are.
func Neighbours(n int, area float64) (below, above Set) {
	if n < 1 || n > mostOfOne || !(area > 0) {
		return nil, nil
	}
	// In the order of sizes, and within one of how many are a size larger, the area only grows.
	for size := Least; size <= Most; size++ {
		for larger := range n {
			if larger > 0 && size == Most {
				break
			}
			set := Set{{n - larger, size}}
			if larger > 0 {
				set = append(set, Group{larger, size + 1})
			}
			switch at := set.Area(); {
			case at == area:
				return set, set
			case at > area:
				return below, set
			}
			below = set
		}
	}
	return below, nil
}
