package vector

import (
	"cmp"
	"slices"
)

// Spread moves labels that want to stand at some heights so far that each has a room to itself, as little as may be, within a top and
// a bottom. The heights are those of the middles; their order stays. Where there is room for fewer, those last in the list are
// left out, so give what matters first: ok says which stand.
func Spread(wanted []float64, room, top, bottom float64) (places []float64, ok []bool) {
	places, ok = slices.Clone(wanted), make([]bool, len(wanted))
	fit := min(len(wanted), max(0, int((bottom-top)/room+1e-9)))
	order := make([]int, fit)
	for i := range order {
		order[i], ok[i] = i, true
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(wanted[a], wanted[b]) })
	// Labels that touch form a pile, which stands where its members want to be on average.
	type pile struct {
		sum  float64 // of the wanted places, each less its distance from the first
		n    int
		from float64 // the first one's place
	}
	var piles []pile
	for _, i := range order {
		p := pile{sum: wanted[i], n: 1}
		for {
			p.from = p.sum / float64(p.n)
			p.from = max(top+room/2, min(p.from, bottom-room/2-room*float64(p.n-1)))
			k := len(piles) - 1
			if k < 0 || piles[k].from+room*float64(piles[k].n) <= p.from+1e-9 {
				break
			}
			above := piles[k]
			p.sum = above.sum + p.sum - float64(p.n*above.n)*room
			p.n += above.n
			piles = piles[:k]
		}
		piles = append(piles, p)
	}
	at := 0
	for _, p := range piles {
		for k := range p.n {
			places[order[at]] = p.from + room*float64(k)
			at++
		}
	}
	return places, ok
}
