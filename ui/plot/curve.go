package plot

import (
	"sort"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// curve is a line of the plot: a letter over depth.
type curve struct {
	letter rune
	style  canvas.Style
	rank   rank
	n      int
	point  func(i int) (tvd, emw float64)
}

// rank decides what happens where two curves fall on one cell. Two lower limits may: the more critical is drawn. Mud on
// a limit, or the limits on each other, are drawn as a crossing.
type rank int

const (
	empty rank = iota
	band
	shoeLine
	shoeTest
	lowerLimit
	mud
	upperLimit
	crossing
)

// The letters of the curves.
const (
	poreLetter      = 'p'
	stabilityLetter = 's'
	fractureLetter  = 'f'
	mudLetter       = 'm'
	workedMudLetter = 'M'
	pumpedLetter    = 'e'
	swabLetter      = 'w'
	surgeLetter     = 'u'
	testLetter      = 't'
	crossingLetter  = 'X'
)

// curves returns the lines of the plot, the more critical of two lower limits last.
func (w *Window) curves() []curve {
	limit := func(letter rune, style canvas.Style, r rank, value func(p *calc.WindowPoint) float64) curve {
		return curve{letter, style, r, len(w.Points), func(i int) (float64, float64) {
			return w.Points[i].TVD, value(&w.Points[i])
		}}
	}
	all := []curve{
		limit(stabilityLetter, canvas.Stability, lowerLimit, func(p *calc.WindowPoint) float64 { return p.Stability }),
		limit(poreLetter, canvas.Pore, lowerLimit, func(p *calc.WindowPoint) float64 { return p.Pore }),
		limit(fractureLetter, canvas.Fracture, upperLimit, func(p *calc.WindowPoint) float64 { return p.Fracture }),
	}
	all = append(all, w.swab(), w.surge(), curve{pumpedLetter, canvas.Mud, mud, len(w.Pumped), func(i int) (float64, float64) {
		return w.Pumped[i].TVD, w.Pumped[i].EMW
	}})
	for k := range w.Mud {
		m := &w.Mud[k]
		letter := mudLetter
		if m.Section == w.Section {
			letter = workedMudLetter
		}
		all = append(all, curve{letter, canvas.Mud, mud, len(m.Points), func(i int) (float64, float64) {
			return m.Points[i].TVD, m.Points[i].EMW
		}})
	}
	return all
}

// swab and surge return the edges of the band that a trip takes the mud to.
func (w *Window) swab() curve {
	return curve{swabLetter, canvas.Mud, mud, len(w.Moved), func(i int) (float64, float64) { return w.Moved[i].TVD, w.Moved[i].Swab }}
}

func (w *Window) surge() curve {
	return curve{surgeLetter, canvas.Mud, mud, len(w.Moved), func(i int) (float64, float64) { return w.Moved[i].TVD, w.Moved[i].Surge }}
}

// at returns the equivalent density at a depth, linear between the points, and false above the first, below the last
// and where there is none. Of two points at one depth the shallower ends there and the deeper begins.
func (c *curve) at(tvd float64) (emw float64, ok bool) {
	below := sort.Search(c.n, func(i int) bool { depth, _ := c.point(i); return depth >= tvd })
	for i := max(0, below-1); i < c.n; i++ { // the point above the depth and those from it on
		depth, value := c.point(i)
		if depth > tvd {
			break
		}
		if !(value > 0) || !known(value) || !known(depth) {
			continue
		}
		if depth == tvd {
			return value, true
		}
		if i+1 == c.n {
			break
		}
		nextDepth, next := c.point(i + 1)
		if depth < tvd && tvd < nextDepth && next > 0 && known(next) {
			emw = value + (next-value)*(tvd-depth)/(nextDepth-depth)
			return emw, known(emw)
		}
	}
	return 0, false
}
