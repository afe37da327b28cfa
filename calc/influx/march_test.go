package influx

import (
	"math"
	"testing"

	"borewalk/calc/gas"
)

// piece is a metre of hole, or what is left of a cell.
type piece struct{ md, tvd, length, down, area, temperature float64 }

// metres cuts a well below a depth into pieces of about a length, from the top down.
func metres(w *Well, from, length float64) (list []piece) {
	for _, c := range w.Cells {
		top := max(c.Top, from)
		if top >= c.Bottom {
			continue
		}
		n := math.Ceil((c.Bottom - top) / length)
		along := (c.Bottom - top) / n
		share := func(a, b, md float64) float64 { return a + (b-a)*(md-c.Top)/(c.Bottom-c.Top) }
		for i := range int(n) {
			md := top + along*float64(i)
			list = append(list, piece{md, share(c.TopTVD, c.BottomTVD, md), along, share(0, c.BottomTVD-c.TopTVD, c.Top+along), c.Area,
				share(c.TopTemperature, c.BottomTemperature, md+along/2)})
		}
	}
	return list
}

// marched is what a plain march finds: m³ at the bottom by either case, and the foot of the bubble with its top at the place.
type marched struct{ byBottom, byPlace, foot float64 }

// march goes through a hole in short pieces, with the gas of each at the pressure that it begins with: down from the place, along
// the line of gas until that has met the line of mud; up from the bottom, for the mass that was passed; and up again until
// the mud above would press on the place with more than it stands.
func march(t *testing.T, w *Well, g gas.Gas, formation float64, at Place, loss float64) (m marched) {
	pieces := metres(w, at.MD, 1)
	end := w.Cells[len(w.Cells)-1]
	weighs := func(p float64, x piece) float64 {
		d, err := g.Density(gas.State{Pressure: p + 101325, Temperature: x.temperature})
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	mass, line := 0.0, at.Stands-loss
	m.foot = end.Bottom
	for _, x := range pieces {
		if formation-w.Mud*gravity*(end.BottomTVD-x.tvd) >= line {
			m.foot = x.md
			break
		}
		d := weighs(line, x)
		mass += d * x.area * x.length
		line += d * gravity * x.down
	}
	line = formation
	for i := len(pieces) - 1; i >= 0; i-- {
		x := pieces[i]
		full := line+w.Mud*gravity*(pieces[0].tvd-x.tvd-x.down) >= at.Stands
		if mass <= 0 && full {
			break
		}
		d := weighs(line, x)
		line -= d * gravity * x.down
		if mass > 0 {
			m.byPlace += x.area * x.length
			mass -= d * x.area * x.length
		}
		if !full {
			m.byBottom += x.area * x.length
		}
	}
	return m
}

// TestPlainMarch: the tolerance against short steps of another making, for both cases, on a slant and straight down, cold and hot.
func TestPlainMarch(t *testing.T) {
	for _, gravity := range []float64{0.57, 0.65, 0.9} {
		g := natural(t, gravity)
		straight := &Well{Mud: 1750, Fluid: Gas(g), Cells: laid(leg{3000, 0, 0.05}, leg{1400, 0, ring(8.5, 5)}, leg{150, 0, ring(8.5, 6.5)})}
		for _, c := range []struct {
			w         *Well
			formation float64
			at        Place
			loss      float64
		}{
			{slanted(Gas(g)), 38e6, Place{1800, 30e6}, 5e5},
			{slanted(Gas(g)), 40.5e6, Place{1800, 30e6}, 0},
			{slanted(Gas(g)), 41.5e6, Place{2000, 31e6}, 2e5},
			{straight, 80e6, Place{3000, 60e6}, 1e6},
			{straight, 80e6, Place{3000, 54e6}, 0},
			{straight, 80e6, Place{3100, 56e6}, 0},
		} {
			got, err := c.w.Tolerance(c.formation, c.at, c.loss)
			want := march(t, c.w, g, c.formation, c.at, c.loss)
			const metre = 0.06 // m³, what a piece holds at most, and a little more
			if err != nil || math.Abs(got.ByBottom-want.byBottom) > metre+2e-4*want.byBottom || math.Abs(got.ByPlace-want.byPlace) > 2*metre+2e-4*want.byPlace {
				t.Errorf("%v Pa: %.3f m³ by the bottom, %.3f by the place, %v; in short steps %+v", c.formation, got.ByBottom, got.ByPlace, err, want)
			}
			if got.Case == AtPlace && math.Abs(got.Worst.Bottom-want.foot) > 1.5 {
				t.Errorf("%v Pa: down to %.1f m, in short steps to %.1f m", c.formation, got.Worst.Bottom, want.foot)
			}
		}
	}
}
