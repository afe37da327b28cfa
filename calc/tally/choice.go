package tally

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// A wish is what to put together from sticks of pipe and pups: all lengths in nm.
// The window holds the wanted length.
type wish struct {
	want, least, most int64 // most is the upper end of the window
	limit             int64 // limit is never exceeded
	tolerance         int64 // tolerance is how far off still counts as hit
	outOfOrder        int   // outOfOrder is how many sticks below the topmost may be left out
}

// A choice is what was found. The search keeps the choice that is best by these
// rules, in this order: in the window before out of it, least error beyond the
// tolerance, fewest pups, fewest sticks out of order, least error, the shorter
// string.
type choice struct {
	reach int                 // sticks 0 to reach-1 are run
	left  [mostOutOfOrder]int // but for these
	lefts int
	pups  *pupSum
	cost  int64
	err   int64 // length less wanted length
}

// mostOutOfOrder bounds the search: with two out of some hundred joints there are
// tens of thousands of sums a few hundredths of a millimetre apart, so a third can
// gain nothing.
const mostOutOfOrder = 2

// outside is added to the error of a length that is not in the window.
const outside = math.MaxInt64 / 4

// A shelf is lengths that pups can make, shortest first.
type shelf struct {
	sums []*pupSum
	at   int // where the last look-up ended, for the next is often near
}

// around returns the longest sum below a length and the shortest that is not
// below it, nil where there is none.
func (s *shelf) around(length int64) (below, above *pupSum) {
	if s.at > 0 && s.sums[s.at-1].length >= length {
		s.at = sort.Search(s.at, func(n int) bool { return s.sums[n].length >= length })
	}
	for s.at < len(s.sums) && s.sums[s.at].length < length {
		s.at++
	}
	if s.at > 0 {
		below = s.sums[s.at-1]
	}
	if s.at < len(s.sums) {
		above = s.sums[s.at]
	}
	return below, above
}

// A search goes through the ways to leave out sticks in order of how many are out
// of order, and for each takes the pups that fit best. Ways that cannot be better
// than the best one so far are passed over by the span of lengths that they reach.
type search struct {
	wish
	sticks  []int64 // lengths in the order of running
	order   []int   // sticks by length, of equal ones the topmost first
	all     shelf   // every sum of pups
	by      []shelf // the sums by their number of pups
	longest int64   // the longest sum
	found   bool
	best    choice
}

// newSearch lays out sticks and sums.
func newSearch(w wish, sticks []int64, sums []pupSum) search {
	s := search{wish: w, sticks: sticks, order: make([]int, len(sticks)), longest: sums[len(sums)-1].length}
	for i := range s.order {
		s.order[i] = i
	}
	slices.SortFunc(s.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(sticks[a], sticks[b]), cmp.Compare(b, a))
	})
	s.all.sums = make([]*pupSum, len(sums))
	for i := range sums {
		sum := &sums[i]
		s.all.sums[i] = sum
		for len(s.by) <= sum.pieces {
			s.by = append(s.by, shelf{})
		}
		s.by[sum.pieces].sums = append(s.by[sum.pieces].sums, sum)
	}
	return s
}

// choose puts a string together on top of a base length. It reports false if even
// nothing on the base exceeds the limit.
func choose(base int64, sticks []int64, sums []pupSum, w wish) (choice, bool) {
	s := newSearch(w, sticks, sums)
	for lefts := 0; lefts <= w.outOfOrder; lefts++ {
		if s.found && s.best.cost == 0 && s.best.pups.pieces == 0 {
			break // more out of order cannot be better
		}
		length := base
		for reach := 0; ; reach++ {
			if reach > lefts || lefts == 0 { // the topmost of them is run
				s.leave(choice{reach: reach}, lefts, 0, length)
			}
			if reach == len(sticks) {
				break
			}
			length += sticks[reach]
		}
	}
	return s.best, s.found
}

// leave takes some more sticks out of a choice, of those from one place in the
// order on, and tries what remains.
func (s *search) leave(c choice, more, from int, length int64) {
	if more == 0 {
		s.try(c, length)
		return
	}
	n := int64(more)
	shortest, longest := s.sticks[s.order[0]], s.sticks[s.order[len(s.order)-1]]
	if s.hopeless(length-n*longest, length-n*shortest) {
		return
	}
	last := int64(-1)
	for at := from; at < len(s.order); at++ {
		i := s.order[at]
		if i >= c.reach-1 || s.sticks[i] == last { // not out of order; or as long as the one before
			continue
		}
		last = s.sticks[i]
		c.left[c.lefts] = i
		c.lefts++
		s.leave(c, more-1, at+1, length-s.sticks[i])
		c.lefts--
	}
}

// hopeless reports whether no string from the shortest length without pups to the
// longest one can be as good as the best found.
func (s *search) hopeless(shortest, longest int64) bool {
	if !s.found {
		return shortest > s.limit
	}
	longest += s.longest
	off := max(0, shortest-s.want, s.want-longest)
	if shortest > s.most || longest < s.least {
		return off+outside > s.best.cost
	}
	return off-s.tolerance > s.best.cost
}

// try looks for the pups that go best with the sticks of a choice. Those nearest
// in length are best unless they are within the tolerance; then fewer pups may do,
// and of each number of pups the nearest are best.
func (s *search) try(c choice, length int64) {
	lack := s.want - length
	below, above := s.all.around(lack)
	hit := s.offer(c, length, below)
	hit = s.offer(c, length, above) || hit
	if !hit || s.tolerance == 0 {
		return
	}
	for pieces := 0; pieces < len(s.by) && pieces <= s.best.pups.pieces; pieces++ {
		below, above := s.by[pieces].around(lack)
		s.offer(c, length, below)
		s.offer(c, length, above)
	}
}

// offer takes a choice with some pups if it is better than the best, and reports
// whether its length is as good as the wanted one.
func (s *search) offer(c choice, length int64, pups *pupSum) bool {
	if pups == nil || length+pups.length > s.limit {
		return false
	}
	length += pups.length
	c.pups, c.err = pups, length-s.want
	off := max(c.err, -c.err)
	if c.cost = max(0, off-s.tolerance); length < s.least || length > s.most {
		c.cost = off + outside
	}
	if !s.found || better(&c, &s.best) {
		s.best, s.found = c, true
	}
	return c.cost == 0
}

// better reports whether one choice comes before another. Between two that are
// alike the one that was found first stays, so that the answer is always the same.
func better(a, b *choice) bool {
	if a.cost != b.cost {
		return a.cost < b.cost
	}
	return cmp.Or(
		cmp.Compare(a.pups.pieces, b.pups.pieces),
		cmp.Compare(a.lefts, b.lefts),
		cmp.Compare(max(a.err, -a.err), max(b.err, -b.err)),
		cmp.Compare(a.err, b.err),
	) < 0
}
