package trajectory

import (
	"errors"
	"fmt"
	"math"
	"sort"
)

// A Path is the line of a hole. The zero Path is vertical. A Path is not
// changed after it has been made and may be shared freely.
type Path struct {
	nodes []node // none: vertical
}

// Vertical returns a path that goes straight down from the rotary.
func Vertical() Path { return Path{} }

// New returns the path through the given stations, by minimum curvature.
//
// Measured depths must increase and inclinations lie within 0 to pi. Azimuths
// may be any angle up to a full turn either way. Above the first station the path is vertical, so that a
// list may start at the seabed; a first station that is inclined and lies below
// the rotary leaves a kink there. Below the last station the path goes straight
// on. The list is copied. An error names the row, counted from 1, and what to
// do about it.
func New(stations []Station) (Path, error) {
	if len(stations) == 0 {
		return Path{}, errors.New("no stations; give at least one, or take a vertical path")
	}
	vertical := true
	for i := range stations {
		var before *Station
		if i > 0 {
			before = &stations[i-1]
		}
		if err := stations[i].check(i+1, before); err != nil {
			return Path{}, err
		}
		vertical = vertical && stations[i].Inclination == 0
	}
	if vertical {
		return Path{}, nil
	}
	nodes := make([]node, len(stations))
	for i, s := range stations {
		nodes[i].Point = Point{MD: s.MD, TVD: s.MD, Inclination: s.Inclination, Azimuth: turnOnce(s.Azimuth)}
		nodes[i].tangent = direction(s)
		nodes[i].deepest = s.MD
		if i > 0 {
			place(&nodes[i-1], &nodes[i], Dogleg(stations[i-1], s))
		}
	}
	return Path{nodes}, nil
}

// place puts next at the lower end of the arc that leaves n.
func place(n, next *node, dogleg float64) {
	length := next.MD - n.MD
	n.dogleg = dogleg
	n.sine = math.Sin(dogleg)
	half := length / 2 * RatioFactor(dogleg)
	next.TVD = n.TVD + half*(n.tangent.down+next.tangent.down)
	next.North = n.North + half*(n.tangent.north+next.tangent.north)
	next.East = n.East + half*(n.tangent.east+next.tangent.east)
	next.Dogleg = dogleg / length
	next.deepest = max(n.deepest, next.TVD)
	if x, ok := n.level(next); ok && n.tangent.down > 0 {
		gained, _ := n.down(x, next)
		next.deepest = max(next.deepest, n.TVD+gained)
	}
}

// BuildAndHold returns the commonest planned path: vertical to the kick-off
// depth in metres, then building inclination at a constant rate in rad/m along
// one azimuth until the given inclination in radians is reached, then straight
// on. An inclination of zero gives a vertical path, whatever the rate.
func BuildAndHold(kickoffMD, buildRate, inclination, azimuth float64) (Path, error) {
	switch {
	case !finite(kickoffMD) || !finite(buildRate) || !finite(inclination) || !finite(azimuth):
		return Path{}, errors.New("build and hold: a value is missing or not a number; give kick-off, build rate, inclination and azimuth")
	case kickoffMD < 0:
		return Path{}, fmt.Errorf("build and hold: kick-off at %.2f m lies above the rotary; give a depth below it", kickoffMD)
	case inclination < 0 || inclination > sharpestTurn:
		return Path{}, fmt.Errorf("build and hold: inclination %.4f rad is outside 0 to %.1f; give the angle from straight down", inclination, sharpestTurn)
	case math.Abs(azimuth) > 2*math.Pi:
		return Path{}, fmt.Errorf("build and hold: azimuth %.4f rad is more than a full turn; check the unit", azimuth)
	case inclination == 0:
		return Vertical(), nil
	case buildRate <= 0:
		return Path{}, fmt.Errorf("build and hold: build rate %g rad/m never reaches the inclination; give a rate above zero", buildRate)
	}
	endOfBuild := kickoffMD + inclination/buildRate
	if endOfBuild > deepestHole {
		return Path{}, fmt.Errorf("build and hold: the build ends at %.4g m, deeper than any hole; check kick-off %.2f m and build rate %g rad/m",
			endOfBuild, kickoffMD, buildRate)
	}
	return New([]Station{
		{MD: kickoffMD, Azimuth: azimuth},
		{MD: endOfBuild, Inclination: inclination, Azimuth: azimuth},
	})
}

// IsVertical reports whether the path goes straight down all the way, so that
// TVD equals measured depth.
func (p Path) IsVertical() bool { return len(p.nodes) == 0 }

// Stations returns the placed stations of the path, in order of depth: the rows
// of a survey listing. A vertical path has none. The slice is the caller's.
func (p Path) Stations() []Point {
	points := make([]Point, len(p.nodes))
	for i := range p.nodes {
		points[i] = p.nodes[i].Point
	}
	return points
}

// below returns the number of the first node at or below a measured depth, or
// the number of nodes if there is none.
func (p Path) below(md float64) int {
	return sort.Search(len(p.nodes), func(i int) bool { return p.nodes[i].MD >= md })
}

// TVD returns the true vertical depth in metres at a measured depth in metres.
// Above the rotary (negative depths) the vertical line is continued. A depth
// that is not a finite number gives 0, the rotary, where no column has weight.
func (p Path) TVD(md float64) float64 {
	if !finite(md) {
		return 0
	}
	if len(p.nodes) == 0 || md <= p.nodes[0].MD {
		return md
	}
	i := p.below(md)
	if i == len(p.nodes) {
		last := &p.nodes[i-1]
		return last.TVD + (md-last.MD)*last.tangent.down
	}
	next := &p.nodes[i]
	if next.MD == md {
		return next.TVD
	}
	n := &p.nodes[i-1]
	gained, _ := n.down(md-n.MD, next)
	return n.TVD + gained
}

// At returns the point of the path at a measured depth in metres: at a station
// the station itself, between stations a point on the minimum-curvature arc,
// beyond the last station a point straight on, above the first a point
// vertically below the rotary. Above the rotary (negative depths) the vertical
// line is continued. A depth that is not a finite number gives the rotary.
func (p Path) At(md float64) Point {
	if !finite(md) {
		return Point{}
	}
	if len(p.nodes) == 0 || md < p.nodes[0].MD {
		return Point{MD: md, TVD: md}
	}
	i := p.below(md)
	if i == len(p.nodes) {
		return p.nodes[i-1].straightOn(md)
	}
	if p.nodes[i].MD == md {
		return p.nodes[i].Point
	}
	return p.nodes[i-1].between(md, &p.nodes[i])
}

// straightOn returns the point at a measured depth below the last node.
func (n *node) straightOn(md float64) Point {
	x := md - n.MD
	at := n.Point
	at.MD = md
	at.TVD += x * n.tangent.down
	at.North += x * n.tangent.north
	at.East += x * n.tangent.east
	at.Dogleg = 0
	return at
}

// between returns the point at a measured depth between the node and the next.
func (n *node) between(md float64, next *node) Point {
	if n.dogleg == 0 {
		at := n.straightOn(md)
		at.Dogleg = next.Dogleg
		return at
	}
	a, b, half := n.shares(md-n.MD, next.MD-n.MD)
	t1, t2 := n.tangent, next.tangent
	t := vector{a*t1.down + b*t2.down, a*t1.north + b*t2.north, a*t1.east + b*t2.east}
	at := Point{
		MD:     md,
		TVD:    n.TVD + half*(t1.down+t.down),
		North:  n.North + half*(t1.north+t.north),
		East:   n.East + half*(t1.east+t.east),
		Dogleg: next.Dogleg,
	}
	at.Inclination, at.Azimuth = t.angles()
	return at
}
