package influx

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/gas"
)

const (
	inch    = 0.0254
	foot    = 0.3048
	barrel  = 42 * 231 * inch * inch * inch
	pound   = 0.45359237
	ppg     = pound / (231 * inch * inch * inch)
	gravity = 9.80665
	psi     = pound * gravity / (inch * inch)
)

// natural returns a gas of a gravity.
func natural(tb testing.TB, gravity float64) gas.Gas {
	tb.Helper()
	g, err := gas.Natural(gravity, gas.DranchukAbouKassem)
	if err != nil {
		tb.Fatal(err)
	}
	return g
}

// ring returns the area between a hole and a pipe, both in inches.
func ring(hole, pipe float64) float64 {
	return bore.Interval{Outer: hole * inch, Inner: pipe * inch}.Capacity()
}

// warm lays the temperature over cells: 8 °C at 400 m of TVD and 0.032 K/m below.
func warm(cells []Cell) []Cell {
	at := func(tvd float64) float64 { return 281.15 + 0.032*max(0, tvd-400) }
	for i := range cells {
		cells[i].TopTemperature, cells[i].BottomTemperature = at(cells[i].TopTVD), at(cells[i].BottomTVD)
	}
	return cells
}

// a leg is a length of hole at an inclination in degrees with an area.
type leg struct{ length, inclination, area float64 }

// laid lays legs below each other from the rotary.
func laid(legs ...leg) []Cell {
	cells := make([]Cell, len(legs))
	md, tvd := 0.0, 0.0
	for i, l := range legs {
		c := Cell{Top: md, TopTVD: tvd, Area: l.area}
		md += l.length
		tvd += l.length * math.Cos(l.inclination*math.Pi/180)
		c.Bottom, c.BottomTVD = md, tvd
		cells[i] = c
	}
	return warm(cells)
}

// slanted is a hole of 12 1/4 in below a shoe at 1800 m, built to 40 degrees.
func slanted(f Influx) *Well {
	dp, hw, dc := ring(12.25, 5.5), ring(12.25, 5.5), ring(12.25, 8.25)
	return &Well{Mud: 1350, Fluid: f, Cells: laid(
		leg{380, 0, ring(19.5, 5.5)}, leg{1220, 0, ring(12.415, 5.5)}, leg{200, 26, ring(12.415, 5.5)}, leg{150, 33, dp}, leg{250, 40, dp}, leg{500, 40, dp}, leg{400, 40, dp},
		leg{100, 40, hw}, leg{55, 40, dc}, leg{30, 40, ring(12.25, 9.5)},
	)}
}
