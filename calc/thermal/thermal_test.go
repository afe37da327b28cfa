package thermal

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const zero = 273.15

// even returns a vertical well of even cells over a straight undisturbed temperature.
func even(n int, length, top, gradient, across, outside float64) []Cell {
	cells := make([]Cell, n)
	for k := range cells {
		h := length / float64(n)
		at := top + gradient*h*float64(k)
		cells[k] = Cell{Length: h, Top: at, Bottom: at + gradient*h, Across: across, Outside: outside}
	}
	return cells
}

// closed is the answer of Holmes and Swift for the same heat passed everywhere, from the equations by hand: with a =
// across/w, b = outside/w the two exponents are (b ± √(b² + 4ab))/2, and the string's temperature stands still at the bottom.
func closed(length, top, gradient, a, b, inlet float64) (text, annulus func(z float64) float64) {
	root := math.Sqrt(b*b + 4*a*b)
	l1, l2 := (b+root)/2, (b-root)/2
	e1, e2 := l1*math.Exp(l1*length), l2*math.Exp(l2*length)
	sum := inlet - top + gradient/a
	u1 := (-gradient - sum*e2) / (e1 - e2)
	u2 := sum - u1
	down := func(z float64) float64 {
		return u1*math.Exp(l1*z) + u2*math.Exp(l2*z) + top + gradient*z - gradient/a
	}
	up := func(z float64) float64 {
		return u1*(1+l1/a)*math.Exp(l1*z) + u2*(1+l2/a)*math.Exp(l2*z) + top + gradient*z
	}
	return down, up
}

// TestTheClosedForm holds the cells against Holmes and Swift's own solution. The numbers are those of their example, from
// memory: 15000 ft, 6 5/8 in pipe in 8 3/8 in hole, 10 ppg at 300 gpm, 0.4 Btu/lb °F, 30 and 1 Btu/h ft² °F, 59.5 °F at
// the top and 0.0127 °F/ft, mud at 75 °F.
func TestTheClosedForm(t *testing.T) {
	const (
		foot, inch  = 0.3048, 0.0254
		coefficient = 5.678263 // W/(m² K) in a Btu/(h ft² °F)
		length      = 15000 * foot
		gradient    = 0.0127 / 1.8 / foot
		top         = zero + (59.5-32)/1.8
		inlet       = zero + (75-32)/1.8
		capacity    = 1198.264 * 300 * 6.30902e-5 * 0.4 * 4186.8
		across      = 30 * coefficient * math.Pi * 6.625 * inch
		outside     = 1 * coefficient * math.Pi * 8.375 * inch
	)
	down, up := closed(length, top, gradient, across/capacity, outside/capacity, inlet)
	for n, tolerance := range map[int]float64{24: 0.6, 96: 0.04} {
		c := Circulation{Capacity: capacity, Inlet: inlet, Cells: even(n, length, top, gradient, across, outside)}
		p, err := c.Solve()
		if err != nil {
			t.Fatal(err)
		}
		for k := range n + 1 {
			z := length * float64(k) / float64(n)
			if math.Abs(p.String[k]-down(z)) > tolerance || math.Abs(p.Annulus[k]-up(z)) > tolerance {
				t.Errorf("%d cells, %.0f m: %.3f and %.3f, want %.3f and %.3f", n, z, p.String[k], p.Annulus[k], down(z), up(z))
			}
		}
	}
}

// anyWell draws a well that may have a riser, a booster line, or nothing above the mudline.
func anyWell(t *rapid.T) Circulation {
	n := rapid.IntRange(2, 40).Draw(t, "cells")
	c := Circulation{Capacity: math.Exp(rapid.Float64Range(math.Log(2e3), math.Log(5e5)).Draw(t, "capacity")),
		Inlet: zero + rapid.Float64Range(0, 70).Draw(t, "inlet"), Cells: make([]Cell, n)}
	at := zero + rapid.Float64Range(-2, 30).Draw(t, "top")
	open := rapid.IntRange(0, n-1).Draw(t, "open")
	for k := range c.Cells {
		h := rapid.Float64Range(1, 300).Draw(t, "length")
		next := at + rapid.Float64Range(-3, 12).Draw(t, "rise")
		c.Cells[k] = Cell{Length: h, Top: at, Bottom: next, Across: rapid.Float64Range(0, 200).Draw(t, "across"),
			Outside: rapid.Float64Range(0, 200).Draw(t, "outside"), Open: k < open}
		at = next
	}
	if open == 0 && rapid.Bool().Draw(t, "boosted") {
		c.Joins, c.BoostCapacity, c.Boost = rapid.IntRange(1, n).Draw(t, "joins"), rapid.Float64Range(0, 4e5).Draw(t, "boost"), c.Inlet
	}
	return c
}

// TestNothingIsWarmerThanItsWarmest: no temperature lies outside those that go in.
func TestNothingIsWarmerThanItsWarmest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyWell(t)
		low, high := c.Inlet, c.Inlet
		for _, cell := range c.Cells {
			low, high = min(low, cell.Top, cell.Bottom), max(high, cell.Top, cell.Bottom)
		}
		p, err := c.Solve()
		if err != nil {
			t.Fatal(err)
		}
		// A step that is long for its flow overshoots by what the outside changes along it, no more.
		for k := range c.Cells {
			high, low = max(high, c.Inlet), min(low, c.Inlet)
			for _, got := range []float64{p.String[k], p.Annulus[k]} {
				if !math.IsNaN(got) && (got < low-12 || got > high+12) {
					t.Errorf("node %d: %v, what goes in lies between %v and %v", k, got, low, high)
				}
			}
		}
		if n := len(c.Cells); p.String[n] != p.Annulus[n] {
			t.Errorf("bottom: %v in the string, %v outside", p.String[n], p.Annulus[n])
		}
	})
}

// TestHeatIsKept: what the mud brings up over what went down is what the outside, friction and bit gave, summed over fine cells.
func TestHeatIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.Float64Range(3e4, 3e5).Draw(t, "capacity")
		boost := rapid.Float64Range(0, 2e5).Draw(t, "boost")
		inlet := zero + rapid.Float64Range(5, 60).Draw(t, "inlet")
		const n = 400
		cells := even(n, 4000, zero+15, 0.03, rapid.Float64Range(1, 120).Draw(t, "across"), rapid.Float64Range(0, 60).Draw(t, "outside"))
		warmed := rapid.Float64Range(0, 200).Draw(t, "warmed")
		for k := range cells {
			cells[k].Warmed = warmed
		}
		c := Circulation{Capacity: capacity, Inlet: inlet, Bit: rapid.Float64Range(0, 5).Draw(t, "bit"), Cells: cells, Joins: n / 4, BoostCapacity: boost, Boost: inlet + 3}
		p, err := c.Solve()
		if err != nil {
			t.Fatal(err)
		}
		given := warmed*4000 + c.Bit*capacity
		for k, cell := range cells {
			bottom := p.Annulus[k+1]
			if k == c.Joins-1 {
				bottom = (bottom*capacity + c.Boost*boost) / (capacity + boost)
			}
			given += cell.Outside * cell.Length * (cell.Top + cell.Bottom - p.Annulus[k] - bottom) / 2
		}
		brought := (capacity+boost)*p.Annulus[0] - capacity*inlet - boost*c.Boost
		if math.Abs(given-brought) > 1e-3*capacity*40 {
			t.Errorf("all gave %v W, the mud brought %v W", given, brought)
		}
	})
}

// TestLimits: walls that pass nothing leave the mud as it went in; a trickle takes the temperature of the rock, but at the
// top, where the string's 20 K pull it up by (3 - √5)/2 of them (from the exponents by hand, both walls alike).
func TestLimits(t *testing.T) {
	still := Circulation{Capacity: 1e5, Inlet: 300, Cells: even(20, 3000, 280, 0.03, 0, 0)}
	p, err := still.Solve()
	if err != nil || p.String[20] != 300 || math.Abs(p.Annulus[0]-300) > 1e-9 {
		t.Errorf("insulated: %v, %v", p, err)
	}
	rock := even(40, 3000, 280, 0.03, 50, 50)
	trickle := Circulation{Capacity: 30, Inlet: 300, Cells: rock}
	if p, err = trickle.Solve(); err != nil || math.Abs(p.Annulus[40]-rock[39].Bottom) > 2 || math.Abs(p.Annulus[0]-287.64) > 1 {
		t.Errorf("trickle: bottom %v, top %v, %v", p.Annulus[40], p.Annulus[0], err)
	}
	flood := Circulation{Capacity: 1e9, Inlet: 300, Cells: rock}
	if p, err = flood.Solve(); err != nil || math.Abs(p.Annulus[0]-300) > 0.1 {
		t.Errorf("flood: top %v, %v", p.Annulus[0], err)
	}
	sea := Circulation{Capacity: 1e5, Inlet: 300, Cells: []Cell{{Length: 500, Top: 280, Bottom: 280, Outside: 100, Open: true}, {Length: 1, Top: 280, Bottom: 280}}}
	if p, err = sea.Solve(); err != nil || math.Abs(p.String[1]-(280+20*math.Exp(-0.5))) > 1e-9 || !math.IsNaN(p.Annulus[0]) {
		t.Errorf("through the sea: %v, %v", p, err)
	}
}

func TestWhatCannotCirculate(t *testing.T) {
	good := even(2, 100, 280, 0.03, 1, 1)
	bad := even(2, 100, 280, 0.03, 1, 1)
	bad[1].Open = true
	for _, c := range []Circulation{{}, {Capacity: 1, Inlet: 280}, {Inlet: 280, Cells: good}, {Capacity: 1, Cells: good}, {Capacity: math.Inf(1), Inlet: 280, Cells: good},
		{Capacity: 1, Inlet: 280, Cells: bad}, {Capacity: 1, Inlet: 280, Cells: []Cell{{}}}, {Capacity: 1, Inlet: 280, Cells: good, BoostCapacity: 1},
		{Capacity: 1, Inlet: 280, Cells: []Cell{{Length: 1, Top: math.NaN(), Bottom: 1}}}} {
		if _, err := c.Solve(); err == nil {
			t.Errorf("%+v is solved", c)
		}
	}
}

// TestRockKnowsItsLimits: soon after the start heat goes into a flat wall, 2 √(t/π), long after it into a line source,
// (ln t + 0.80907)/2 (Carslaw and Jaeger, Conduction of Heat in Solids, from memory).
func TestRockKnowsItsLimits(t *testing.T) {
	const k, a, d = 2.5, 1e-6, 0.3
	at := func(dimensionless float64) float64 {
		return Rock(k, a, d, dimensionless*d*d/4/a) * 2 * math.Pi * k
	}
	if got, want := at(1e-4), 2*math.Sqrt(1e-4/math.Pi); math.Abs(got-want) > 0.01*want {
		t.Errorf("early: %v, want %v", got, want)
	}
	if got, want := at(1e4), (math.Log(1e4)+0.80907)/2; math.Abs(got-want) > 0.002*want {
		t.Errorf("late: %v, want %v", got, want)
	}
	if below, above := at(1.5), at(1.5000001); math.Abs(below-above) > 0.03*above { // the source's two pieces do not meet better
		t.Errorf("at 1.5 from %v to %v", below, above)
	}
	if got := Shell(0.12, 0.5, 0.5); got != 0 {
		t.Errorf("no foam resists by %v", got)
	}
}

// TestEmpiricalInBothUnits: the source gives its constants twice, -102.1 °F, 3354 ft, 1.342 and 22.28 ft/°F, from memory.
func TestEmpiricalInBothUnits(t *testing.T) {
	for _, static := range []float64{180, 230, 300, 400} { // °F
		for _, g := range []float64{0.009, 0.0135, 0.02, 0.024} { // °F/ft
			want := -102.1 + 3354*g + (1.342-22.28*g)*static
			got, err := Empirical(zero+(static-32)/1.8, g/1.8/0.3048)
			if fahrenheit := (got-zero)*1.8 + 32; err != nil || math.Abs(fahrenheit-want) > 0.15 {
				t.Errorf("%v °F, %v °F/ft: %v, want %v", static, g, fahrenheit, want)
			}
		}
	}
	for _, bad := range [][2]float64{{300, 0.03}, {500, 0.03}, {380, 0.01}, {380, 0.06}, {math.NaN(), 0.03}} {
		if got, err := Empirical(bad[0], bad[1]); err == nil || got != 0 {
			t.Errorf("Empirical(%v) = %v", bad, got)
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	c := Circulation{Capacity: 1e5, Inlet: 300, Cells: even(32, 3000, 280, 0.03, 50, 50)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}
