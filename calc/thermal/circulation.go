package thermal

import (
	"errors"
	"math"
)

// Cell is a length of the well in which string, annulus and what is outside do not
// change, but for the undisturbed temperature, which runs straight between its ends.
type Cell struct {
	Length      float64 // m along hole
	Top, Bottom float64 // undisturbed temperatures at its ends, K
	Across      float64 // heat passed between string and annulus, W/(m K)
	Outside     float64 // heat passed between annulus and outside, W/(m K); of the string itself if Open
	Warmed      float64 // heat that friction makes in the string, W/m
	Open        bool    // the string hangs in the open, as above the mudline without a riser; uppermost cells only
}

// Circulation is a flow down the string and back up the annulus, or out of its top where
// the uppermost cells are open.
type Circulation struct {
	Capacity float64 // of the flow down the string, W/K: density × flow × heat capacity
	Inlet    float64 // K
	Bit      float64 // what the mud warms by at the bottom, where pressure is spent, K
	Cells    []Cell

	// A second flow that joins the annulus at the top of the cell Joins, as a booster
	// line's does; none where BoostCapacity is zero.
	Joins         int
	BoostCapacity float64 // W/K
	Boost         float64 // K
}

// Profile holds the temperatures in K at the tops of the cells and at the bottom of the
// last. The annulus has none, not a number, where the string is open; where a second flow
// joins, it is that of the first before it.
type Profile struct {
	String, Annulus []float64
}

// Solve returns the temperatures once they have settled to what the cells pass. The error
// says what cannot be.
//
// It is the steady balance of heat of Holmes and Swift (Calculation of circulating mud
// temperatures, J. Pet. Tech., June 1970, from memory) on cells of their own:
//
//	down the string:  w dTs/dz = across (Ta - Ts) + warmed
//	up the annulus:   W dTa/dz = across (Ta - Ts) + outside (Ta - Te)
//
// with both equal at the bottom but for what the bit adds. Each cell is the trapezoid rule
// with its step fitted to the exponential, so that it stays bounded at any flow; from the
// bottom up every node's annulus is written as a share of the string plus a rest, which
// nothing can make overflow as a guess from the top could.
func (c *Circulation) Solve() (Profile, error) {
	if err := c.check(); err != nil {
		return Profile{}, err
	}
	n := len(c.Cells)
	work := make([]float64, 4*(n+1))
	share, rest := work[:n+1], work[n+1:2*(n+1)]
	p := Profile{String: work[2*(n+1) : 3*(n+1)], Annulus: work[3*(n+1):]}
	share[n], rest[n] = 1, c.Bit
	for k := n - 1; k >= 0 && !c.Cells[k].Open; k-- {
		a, b := share[k+1], rest[k+1]
		w := c.Capacity
		if k < c.Joins {
			w += c.BoostCapacity
			if k == c.Joins-1 {
				a, b = a*c.Capacity/w, (b*c.Capacity+c.Boost*c.BoostCapacity)/w
			}
		}
		share[k], rest[k] = c.Cells[k].up(c.Capacity, w, a, b)
	}
	p.String[0] = c.Inlet
	for k := range n {
		cell, ts := &c.Cells[k], p.String[k]
		if cell.Open {
			p.Annulus[k] = math.NaN()
			t := math.Tanh(cell.Outside * cell.Length / (2 * c.Capacity))
			p.String[k+1] = ((1-t)*ts + t*(cell.Top+cell.Bottom) + cell.warming(cell.Outside, t, c.Capacity)) / (1 + t)
			continue
		}
		p.Annulus[k] = share[k]*ts + rest[k]
		a, b := share[k+1], rest[k+1]
		if k == c.Joins-1 {
			w := c.Capacity + c.BoostCapacity
			a, b = a*c.Capacity/w, (b*c.Capacity+c.Boost*c.BoostCapacity)/w
		}
		t := math.Tanh(cell.Across * cell.Length / (2 * c.Capacity))
		p.String[k+1] = ((1-t)*ts + t*(p.Annulus[k]+b) + cell.warming(cell.Across, t, c.Capacity)) / (1 + t*(1-a))
	}
	p.Annulus[n] = p.String[n] + c.Bit
	return p, nil
}

// up carries the annulus, a share of the string plus a rest, from the bottom of a cell to
// its top. down and w are the capacities of the flows in string and annulus.
func (cell *Cell) up(down, w, share, rest float64) (float64, float64) {
	s := math.Tanh(cell.Across * cell.Length / (2 * down))
	var inner, outer float64
	if both := cell.Across + cell.Outside; both > 0 {
		t := math.Tanh(both * cell.Length / (2 * w))
		inner, outer = t*cell.Across/both, t*cell.Outside/both
	}
	t := inner + outer
	d := 1 + s*(1-share)
	c := (1-t)*share + inner
	whole := 1 + t - c*s/d
	warming := cell.warming(cell.Across, s, down)
	return (c*(1-s)/d + inner) / whole, (c*(s*rest+warming)/d + (1-t)*rest + outer*(cell.Top+cell.Bottom)) / whole
}

// warming returns what friction adds along a cell, with its step fitted as that of the wall which the string passes heat
// through: such that a long string stands over its annulus by the heat made over the heat passed.
func (cell *Cell) warming(wall, fitted, capacity float64) float64 {
	if wall == 0 {
		return cell.Warmed * cell.Length / capacity
	}
	return cell.Warmed * 2 * fitted / wall
}

// check reports what of a circulation cannot be.
func (c *Circulation) check() error {
	switch {
	case len(c.Cells) == 0:
		return errors.New("no length of well is given")
	case !(c.Capacity > 0) || math.IsInf(c.Capacity, 0):
		return errors.New("the flow carries no heat; give a flow, a density and a heat capacity above zero")
	case !(c.Inlet > 0) || !(c.Bit >= 0) || !(c.BoostCapacity >= 0) || c.BoostCapacity > 0 && !(c.Boost > 0):
		return errors.New("a temperature at the inlet is not above absolute zero")
	}
	open := true
	for _, cell := range c.Cells {
		if !(cell.Length > 0) || !(cell.Across >= 0) || !(cell.Outside >= 0) || !(cell.Warmed >= 0) || !(cell.Top > 0) || !(cell.Bottom > 0) {
			return errors.New("a cell has no length, no temperature, or passes less than no heat")
		}
		if cell.Open && !open {
			return errors.New("a cell below the annulus is open")
		}
		open = cell.Open
	}
	return nil
}
