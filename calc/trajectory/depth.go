package trajectory

import (
	"math"
	"sort"
)

// The search for a measured depth ends when its vertical depth is met within
// nearEnough metres, far below anything measured, and in any case after
// mostSteps steps; the bracket is halved whenever a faster step would leave it.
const (
	nearEnough = 1e-9
	mostSteps  = 100
)

// levelHole is the rate of going down, in metres per metre, below which a hole
// beyond its last station counts as level: cos(pi/2) is not quite zero.
const levelHole = 1e-9

// MDAtTVD returns the first measured depth in metres, counted from the rotary,
// at which the path reaches a true vertical depth in metres. It reports false
// where the path never gets so deep, above the rotary, below 1000 km, and for a
// depth that is not a number. Depths below the last station are found on its straight
// continuation.
//
// Newton's method inside a bracket, which is kept throughout; accurate to
// 1e-9 m of vertical depth.
func (p Path) MDAtTVD(tvd float64) (md float64, ok bool) {
	if !(tvd >= 0 && tvd <= deepestHole) {
		return 0, false
	}
	if len(p.nodes) == 0 || tvd <= p.nodes[0].TVD {
		return tvd, true
	}
	i := sort.Search(len(p.nodes), func(i int) bool { return p.nodes[i].deepest >= tvd })
	if i < len(p.nodes) {
		n := &p.nodes[i-1]
		return n.MD + n.distanceDown(tvd-n.TVD, &p.nodes[i]), true
	}
	last := &p.nodes[i-1]
	if last.tangent.down < levelHole {
		return 0, false
	}
	return last.MD + (tvd-last.TVD)/last.tangent.down, true
}

// distanceDown returns the first distance below the node, in metres, at which
// the wanted vertical depth below it has been gained. The caller knows that the
// interval gets there and that nothing above it does.
func (n *node) distanceDown(wanted float64, next *node) float64 {
	low, high := 0.0, next.MD-n.MD
	if x, ok := n.level(next); ok {
		if n.tangent.down > 0 {
			high = x // down to the lowest point, then up again
		} else {
			low = x // up to the highest point, then down
		}
	}
	x := low + (high-low)/2
	for range mostSteps {
		gained, rate := n.down(x, next)
		short := wanted - gained
		if math.Abs(short) <= nearEnough {
			return x
		}
		if short > 0 {
			low = x
		} else {
			high = x
		}
		x += short / rate
		if !(x >= low && x <= high) {
			x = low + (high-low)/2
		}
	}
	return x
}
