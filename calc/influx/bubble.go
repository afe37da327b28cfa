package influx

import (
	"fmt"
	"math"

	"borewalk/calc/column"
)

// Bubble is an influx in one piece: its ends along hole and in TVD, the gauge pressures at them in Pa without friction, the
// volume in m³ that it has there and the mass in kg that it weighs by. A real gas alone keeps its mass.
type Bubble struct {
	Top, Bottom                 float64
	TopTVD, BottomTVD           float64
	TopPressure, BottomPressure float64
	Volume, Mass                float64
}

// Height returns how high it is in m: the TVD between its ends.
func (b *Bubble) Height() float64 { return b.BottomTVD - b.TopTVD }

// edge is the growing end of a bubble, with what is between it and the end that stays.
type edge struct {
	cell              int
	md, tvd, pressure float64
	density           float64 // of the influx where it was last asked for
	lift              float64 // Pa by which the bubble weighs less than the mud in its stead
	volume, mass      float64
	content           float64 // of what is kept
}

// Measures by which a bubble can be told to be large enough.
func lift(e edge) float64    { return e.lift }
func volume(e edge) float64  { return e.volume }
func content(e edge) float64 { return e.content }

// begin returns a bubble of no size at a depth with a pressure.
func (w *Well) begin(cell int, md, tvd, pressure float64) (edge, error) {
	e := edge{cell: cell, md: md, tvd: tvd, pressure: pressure}
	var err error
	e.density, err = w.ask(&w.Cells[cell], md, pressure)
	return e, err
}

// ask returns the density of the influx at a depth in a cell.
func (w *Well) ask(c *Cell, md, pressure float64) (float64, error) {
	density, err := w.Fluid.weighs(pressure, c.temperature(md))
	if err != nil {
		return 0, fmt.Errorf("influx at %.0f m: %w", md, err)
	}
	return density, nil
}

// longest is how far in m a step goes along hole. The density of a gas changes by a hundredth or so over it, and the weight of
// a bubble comes out right to a hundred-thousandth.
const longest = 100

// grow lets a bubble grow up or down the hole until a measure of it is as wanted, or its edge is at a depth: then met is false.
func (w *Well) grow(e edge, to float64, measure func(edge) float64, wanted float64) (grown edge, met bool, err error) {
	way := 1
	if to < e.md {
		way = -1
	}
	for measure(e) < wanted {
		if e.md == to {
			return e, false, nil
		}
		next, err := w.step(e, w.stride(&e, way, to))
		if err != nil {
			return edge{}, false, err
		}
		if measure(next) >= wanted {
			e, err = w.part(e, next.md, measure, wanted)
			return e, true, err
		}
		e = next
	}
	return e, true, nil
}

// stride moves the edge into the cell that it grows into and returns the depth of the next step: cells, and the way that is left
// in one, are gone through in equal steps.
func (w *Well) stride(e *edge, way int, to float64) float64 {
	end := func() float64 {
		if way > 0 {
			return min(w.Cells[e.cell].Bottom, to)
		}
		return max(w.Cells[e.cell].Top, to)
	}
	for end() == e.md {
		e.cell += way
	}
	if steps := math.Ceil(math.Abs(end()-e.md) / longest); steps > 1 {
		return e.md + (end()-e.md)/steps
	}
	return end()
}

// step lets the edge grow to a depth in its cell, with the density in the middle of the way (the midpoint rule); the pressure there
// follows from the density before.
func (w *Well) step(e edge, to float64) (edge, error) {
	c := &w.Cells[e.cell]
	along := to - e.md
	length, down := math.Abs(along), c.slope()*along
	middle := e.pressure + e.density*column.G*down/2
	density, err := w.ask(c, e.md+along/2, middle)
	if err != nil {
		return edge{}, err
	}
	e.md, e.tvd, e.density = to, e.tvd+down, density
	e.pressure += density * column.G * down
	e.lift += (w.Mud - density) * column.G * c.slope() * length
	e.volume += c.Area * length
	e.mass += density * c.Area * length
	e.content += w.Fluid.keeps(middle, density) * c.Area * length
	return e, nil
}

// part makes the part of a step at the end of which a measure is as wanted. Within a step a measure grows nearly evenly, so that a
// few rules of three find it.
func (w *Well) part(e edge, to float64, measure func(edge) float64, wanted float64) (edge, error) {
	const rounds, near = 8, 1e-12
	from, along, share := measure(e), to-e.md, 1.0
	next := e
	for range rounds {
		var err error
		if next, err = w.step(e, e.md+share*along); err != nil {
			return edge{}, err
		}
		grown := measure(next) - from
		if !(grown > 0) || math.Abs(grown-(wanted-from)) <= near*math.Abs(wanted) {
			break
		}
		share = min(1, share*(wanted-from)/grown)
	}
	return next, nil
}

// between returns the bubble between an end that stays and the one that has grown.
func between(stays, grown *edge) Bubble {
	top, bottom := stays, grown
	if grown.md < stays.md {
		top, bottom = grown, stays
	}
	return Bubble{
		Top: top.md, Bottom: bottom.md, TopTVD: top.tvd, BottomTVD: bottom.tvd,
		TopPressure: top.pressure, BottomPressure: bottom.pressure,
		Volume: grown.volume, Mass: grown.mass,
	}
}
