package influx

import (
	"errors"
	"fmt"
	"math"
)

// A Cell is a straight length of annulus of one area. TVD and temperature go evenly along it.
type Cell struct {
	Top, Bottom                       float64 // along hole in m
	TopTVD, BottomTVD                 float64 // in m
	Area                              float64 // of the annulus in m²
	TopTemperature, BottomTemperature float64 // in K; a real gas alone asks for them
}

// Well is an annulus from the top down to the bottom of the hole, in cells that touch, with its mud in kg/m³ and what flows in.
// Where the path bends, more cells follow it more closely; a place that counts to the metre should be the end of one.
type Well struct {
	Cells []Cell
	Mud   float64
	Fluid Influx
}

// Place is a depth along hole in m on the way out, and the gauge pressure in Pa that rock or shoe stands there. Its TVD is that of
// its cell.
type Place struct {
	MD, Stands float64
}

// Bounds beyond which an entry is in another unit or no well's.
const (
	deepest  = 1e5  // m
	widest   = 1e3  // m²
	heaviest = 1e4  // kg/m³
	hardest  = 1e10 // Pa
)

// joined is the gap in m that cells may show and still touch.
const joined = 1e-6

// slope returns the TVD gained per length along hole, below zero where the hole climbs.
func (c *Cell) slope() float64 { return (c.BottomTVD - c.TopTVD) / (c.Bottom - c.Top) }

func (c *Cell) tvd(md float64) float64 { return c.TopTVD + c.slope()*(md-c.Top) }

func (c *Cell) temperature(md float64) float64 {
	return c.TopTemperature + (c.BottomTemperature-c.TopTemperature)*(md-c.Top)/(c.Bottom-c.Top)
}

// bottom returns the last cell.
func (w *Well) bottom() *Cell { return &w.Cells[len(w.Cells)-1] }

// below returns the volume in m³ of the annulus below a depth along hole.
func (w *Well) below(md float64) (sum float64) {
	for i := range w.Cells {
		c := &w.Cells[i]
		sum += c.Area * max(0, c.Bottom-max(c.Top, md))
	}
	return sum
}

// holds returns the number of the cell that holds a depth along hole, the lower of two that meet there.
func (w *Well) holds(md float64) int {
	for i := range w.Cells {
		if md < w.Cells[i].Bottom {
			return i
		}
	}
	return len(w.Cells) - 1
}

// check reports the first thing in the well that cannot be.
func (w *Well) check() error {
	if len(w.Cells) == 0 {
		return errors.New("influx: the annulus has no cells; give at least one")
	}
	if !(w.Mud > 0 && w.Mud <= heaviest) {
		return fmt.Errorf("influx: mud of %g kg/m³; give one from 0 to %g", w.Mud, heaviest)
	}
	for i := range w.Cells {
		if err := w.Cells[i].check(i + 1); err != nil {
			return err
		}
		if i == 0 {
			continue
		}
		above, c := &w.Cells[i-1], &w.Cells[i]
		if math.Abs(c.Top-above.Bottom) > joined || math.Abs(c.TopTVD-above.BottomTVD) > joined {
			return fmt.Errorf("influx: cell %d begins at %.2f m, TVD %.2f m, but the one above ends at %.2f m, TVD %.2f m; let them meet",
				i+1, c.Top, c.TopTVD, above.Bottom, above.BottomTVD)
		}
	}
	return w.Fluid.check(w.Mud)
}

func (c *Cell) check(row int) error {
	for _, depth := range [...]float64{c.Top, c.Bottom, c.TopTVD, c.BottomTVD} {
		if !(math.Abs(depth) <= deepest) {
			return fmt.Errorf("influx: cell %d: a depth of %g m; give one that a hole has", row, depth)
		}
	}
	switch {
	case !(c.Bottom-c.Top > joined):
		return fmt.Errorf("influx: cell %d: its bottom at %.2f m is not below its top at %.2f m; give it a length", row, c.Bottom, c.Top)
	case math.Abs(c.BottomTVD-c.TopTVD) > c.Bottom-c.Top+joined:
		return fmt.Errorf("influx: cell %d at %.2f m gains %.2f m of TVD over %.2f m of hole; check its depths",
			row, c.Top, c.BottomTVD-c.TopTVD, c.Bottom-c.Top)
	case !(c.Area > 0 && c.Area <= widest):
		return fmt.Errorf("influx: cell %d at %.2f m: an annulus of %g m²; give one above zero", row, c.Top, c.Area)
	}
	return nil
}
