package plot

import (
	"math"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// panel is the curves of one kind of quantity, on a scale of their own.
type panel struct {
	kind      quantity.Kind
	down      bool
	curves    []series
	from, to  float64 // of the axis
	low, high float64 // of the values
	same      bool    // they are all written alike
	value     float64 // then
	r         canvas.Region
	cells     []mark // row by row
	met       bool   // a curve meets a limit
}

// round lets the scale begin at zero when the values come near it, but for equivalent densities, of which none does, and gives some
// room to values that are all written alike.
func (p *panel) round(text func(si float64, k quantity.Kind) string) {
	if p.low > 0 && p.low < p.high/2 && p.kind != quantity.EMW {
		p.low = 0
	}
	if p.same = p.high == p.low || text(p.low, p.kind) == text(p.high, p.kind); p.same {
		p.value = (p.low + p.high) / 2
		room := max(math.Abs(p.value)/10, 10*(p.high-p.low), 1e-9)
		p.low, p.high = p.value-room, p.value+room
	}
}

// ticks returns about n round values for the scale.
func (p *panel) ticks(n int, o *ChartOptions) []Tick {
	if p.same {
		return []Tick{{p.value, o.Value(p.value, p.kind)}}
	}
	return o.Ticks(p.low, p.high, n, p.kind)
}

// size returns the cells along the axis and across it.
func (p *panel) size() (along, across int) {
	if p.down {
		return p.r.H(), p.r.W()
	}
	return p.r.W(), p.r.H()
}

// along returns the cell of a place on the axis.
func (p *panel) along(place float64) int {
	n, _ := p.size()
	return int(math.Round(float64(n-1) * (place - p.from) / (p.to - p.from)))
}

// place returns what lies at a cell along the axis; half cells too.
func (p *panel) place(cell float64) float64 {
	n, _ := p.size()
	return p.from + (p.to-p.from)*cell/float64(max(n-1, 1))
}

// across returns the cell of a value, from the left or from below.
func (p *panel) across(value float64) int {
	_, n := p.size()
	return int(math.Round(float64(n-1) * (value - p.low) / (p.high - p.low)))
}

// xy returns the column and the row of a cell.
func (p *panel) xy(along, across int) (x, y int) {
	if p.down {
		return across, along
	}
	return along, p.r.H() - 1 - across
}

// draw draws marks and curves into a region.
func (p *panel) draw(r canvas.Region, marks []calc.ChartMark, g *canvas.Glyphs) {
	p.r = r
	p.cells = make([]mark, r.W()*r.H())
	n, width := p.size()
	for _, m := range marks {
		line := mark{g.WallPlanned, canvas.Steel, shoeLine}
		if p.down {
			line.ch = g.Horizontal
		}
		for across := range width {
			p.put(p.along(m.At), across, line)
		}
	}
	for _, s := range p.curves {
		for along := range n {
			from, to := p.place(float64(along)-0.5), p.place(float64(along)+0.5)
			for _, v := range s.between(from, to) {
				p.put(along, p.across(v), mark{s.letter, s.style, s.rank})
			}
			if low, high, ok := s.reach(from, to); ok && s.level {
				for across := p.across(low); across <= p.across(high); across++ {
					p.put(along, across, mark{s.letter, s.style, shoeTest}) // other curves go before it
				}
			}
		}
	}
	for i, m := range p.cells {
		if m.rank != empty {
			r.Put(i%r.W(), i/r.W(), m.ch, m.style)
		}
	}
}

// put sets a mark where none of more weight stands. A curve on a limit becomes a crossing; what runs together
// otherwise takes turns.
func (p *panel) put(along, across int, m mark) {
	x, y := p.xy(along, across)
	if x < 0 || y < 0 || x >= p.r.W() || y >= p.r.H() {
		return
	}
	at := &p.cells[y*p.r.W()+x]
	switch {
	case at.rank == crossing:
	case at.rank >= lowerLimit && m.rank >= lowerLimit && at.rank != m.rank && p.fine():
		*at = mark{crossingLetter, canvas.Stop, crossing}
		p.met = true
	case at.rank >= lowerLimit && m.rank >= lowerLimit && along%2 == 0:
	case m.rank >= at.rank || at.rank >= lowerLimit:
		*at = m
	}
}

// fine reports whether the panel has cells enough across to tell whether a curve is near a limit.
func (p *panel) fine() bool {
	_, across := p.size()
	return across >= leastFine
}

// leastFine is the least number of cells across a panel in which curves and limits are told apart.
const leastFine = 5
