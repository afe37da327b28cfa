package strength

import (
	"math"
	"testing"

	"borewalk/model/handbook"

	"pgregory.net/rapid"
)

// drawPipe draws casing from heavy wall to thin and through all grades.
func drawPipe(t *rapid.T) Pipe {
	od := rapid.Float64Range(0.1, 0.6).Draw(t, "od")
	return Pipe{OD: od, Wall: od / rapid.Float64Range(5, 70).Draw(t, "D/t"), Yield: rapid.Float64Range(30e3, 155e3).Draw(t, "yield, psi") * psi}
}

func drawLoad(t *rapid.T, p Pipe) Load {
	share := rapid.Float64Range(-1.2, 1.2)
	return Load{
		Depth:       rapid.Float64Range(0, 9000).Draw(t, "depth"),
		Inside:      rapid.Float64Range(0, 150e6).Draw(t, "inside"),
		Outside:     rapid.Float64Range(0, 150e6).Draw(t, "outside"),
		Axial:       share.Draw(t, "axial") * p.Area() * p.Yield,
		Torque:      rapid.Float64Range(-50e3, 50e3).Draw(t, "torque"),
		Temperature: rapid.Float64Range(270, 500).Draw(t, "temperature"),
		Dogleg:      rapid.Float64Range(0, 0.02).Draw(t, "dogleg"),
	}
}

// single returns the four ratings that hold for a pipe alone.
func single(t *rapid.T, p Pipe) [4]float64 {
	collapse, err := Collapse(p)
	if err != nil {
		t.Fatal(err)
	}
	barlow, err := InternalYield(p, WallTolerance)
	if err != nil {
		t.Fatal(err)
	}
	capped, err := CappedEndYield(p, WallTolerance)
	if err != nil {
		t.Fatal(err)
	}
	body, err := BodyYield(p)
	if err != nil {
		t.Fatal(err)
	}
	return [4]float64{collapse.Pressure, barlow, capped, body}
}

func TestRatingsRiseWithWallAndYield(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		thicker, stronger := p, p
		thicker.Wall *= rapid.Float64Range(1.001, 1.5).Draw(t, "thicker")
		stronger.Yield = min(MostYield, p.Yield*rapid.Float64Range(1.001, 1.5).Draw(t, "stronger"))
		base, wall, yield := single(t, p), single(t, thicker), single(t, stronger)
		for i := range base {
			if wall[i] <= base[i] {
				t.Fatalf("rating %d falls from %v to %v with more wall", i, base[i], wall[i])
			}
			// Elastic collapse does not ask for the grade.
			if yield[i] < base[i]*(1-1e-12) || (i > 0 && yield[i] <= base[i]) {
				t.Fatalf("rating %d falls from %v to %v with more yield", i, base[i], yield[i])
			}
		}
	})
}

func TestCollapseFallsWithTension(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		a := rapid.Float64Range(0, 1.1).Draw(t, "share")
		b := a + rapid.Float64Range(1e-4, 0.5).Draw(t, "more")
		less, err := CollapseInTension(p, a*p.Yield)
		if err != nil {
			t.Fatal(err)
		}
		more, err := CollapseInTension(p, b*p.Yield)
		if err != nil {
			t.Fatal(err)
		}
		if more.Pressure > less.Pressure*(1+1e-12) || more.Pressure < 0 || more.Yield > less.Yield {
			t.Fatalf("%v at %v of yield, %v at %v", less, a, more, b)
		}
	})
}

// The pressure has no step where a regime ends, nor where tension leaves the range of
// the polynomials, and the limits stand in order.
func TestCollapseIsContinuous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		yield := rapid.Float64Range(LeastYield, MostYield).Draw(t, "yield")
		c, ok := CoefficientsAt(yield)
		if !ok {
			t.Fatal("no coefficients")
		}
		l := c.Limits()
		if !(leastSlender < l.Yielding && l.Yielding < l.Plastic && l.Plastic < l.Transition) {
			t.Fatalf("limits %+v", l)
		}
		for i, limit := range []float64{l.Yielding, l.Plastic, l.Transition} {
			below, first := c.collapse(limit * (1 - 1e-10))
			above, second := c.collapse(limit * (1 + 1e-10))
			if math.Abs(below-above) > below*1e-8 || first != Regime(i+1) || second != Regime(i+2) {
				t.Fatalf("%v in %v, %v in %v", below, first, above, second)
			}
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		// The tension share at which the yield left is the least, by halving.
		low, high := 0.0, 1.0
		for range 60 {
			mid := (low + high) / 2
			if y, _ := YieldInTension(p.Yield, mid*p.Yield); y > LeastYield {
				low = mid
			} else {
				high = mid
			}
		}
		a, _ := CollapseInTension(p, low*p.Yield*(1-1e-9))
		b, _ := CollapseInTension(p, high*p.Yield*(1+1e-9))
		if math.Abs(a.Pressure-b.Pressure) > a.Pressure*1e-6 {
			t.Fatalf("%v and %v beside the least yield", a, b)
		}
	})
}

func TestPressureInsideHelpsByLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		outside := rapid.Float64Range(0, 150e6).Draw(t, "outside")
		inside := rapid.Float64Range(1e3, 150e6).Draw(t, "inside")
		got, err := EquivalentExternal(p, outside, inside)
		if err != nil || got < outside-inside || got > outside {
			t.Fatalf("EquivalentExternal(%v, %v) = %v, %v", outside, inside, got, err)
		}
	})
}

// Triaxial stress of a single load is that load's own formula.
func TestTriaxialOfSimpleLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		share := rapid.Float64Range(0.875, 1).Draw(t, "share")
		worst := func(l Load) Point {
			l.Temperature = 290
			points, err := Triaxial(p, share, l)
			if err != nil {
				t.Fatal(err)
			}
			return Worst(points)
		}
		force := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "side") * rapid.Float64Range(1, 5e6).Draw(t, "force")
		if got, want := worst(Load{Axial: force}).VonMises, math.Abs(force)/p.Area(); !handbook.Within(got, want, 1e-9) {
			t.Fatalf("pulled %v: %v, want %v", force, got, want)
		}
		dogleg := rapid.Float64Range(1e-4, 0.02).Draw(t, "dogleg")
		if got, want := worst(Load{Dogleg: dogleg}).VonMises, Modulus*dogleg*p.OD/2; !handbook.Within(got, want, 1e-9) {
			t.Fatalf("bent %v: %v, want %v", dogleg, got, want)
		}
		torque := rapid.Float64Range(1, 50e3).Draw(t, "torque")
		shear := 16 * torque * p.OD / (math.Pi * (math.Pow(p.OD, 4) - math.Pow(p.ID(), 4)))
		if got, want := worst(Load{Torque: torque}).VonMises, math.Sqrt(3)*shear; !handbook.Within(got, want, 1e-6) {
			t.Fatalf("twisted %v: %v, want %v", torque, got, want)
		}
		// Pressure at which pipe with open or capped ends begins to yield.
		open, err := OpenEndYield(p, share)
		if err != nil {
			t.Fatal(err)
		}
		if got := worst(Load{Inside: open}); !handbook.Within(got.VonMises, p.Yield, 1e-9) || got.Place != InsideStretched {
			t.Fatalf("open ends at %v: %+v, want %v", open, got, p.Yield)
		}
		capped, err := CappedEndYield(p, share)
		if err != nil {
			t.Fatal(err)
		}
		if got := worst(Load{Inside: capped, Axial: capped * p.Bore()}); !handbook.Within(got.VonMises, p.Yield, 1e-9) {
			t.Fatalf("capped ends at %v: %+v, want %v", capped, got, p.Yield)
		}
		// The same pressure all around, ends too, strains nothing.
		all := rapid.Float64Range(1e5, 150e6).Draw(t, "all around")
		if got := worst(Load{Inside: all, Outside: all, Axial: -all * p.Area()}).VonMises; got > all*1e-6 {
			t.Fatalf("all around %v: %v", all, got)
		}
	})
}

// In a thin wall Lamé's hoop stress is p D/2t.
func TestThinWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		p.Wall = p.OD / 400
		points, err := Triaxial(p, 1, Load{Inside: 1e6, Temperature: 290})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := points[0].Stress.Hoop, 1e6*p.Slenderness()/2; !handbook.Within(got, want, 1) {
			t.Fatalf("hoop stress %v, want %v", got, want)
		}
	})
}

// Half the loads leave twice the factors, but for collapse, whose rating also gains.
func TestFactorsScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		casing := NewCasing(drawPipe(t))
		whole := drawLoad(t, casing.Pipe)
		whole.Temperature = 290
		share := rapid.Float64Range(0.1, 0.99).Draw(t, "share")
		part := whole
		part.Inside, part.Outside, part.Axial, part.Torque, part.Dogleg = share*whole.Inside, share*whole.Outside, share*whole.Axial, share*whole.Torque, share*whole.Dogleg
		a, err := casing.Ratings(whole)
		if err != nil {
			t.Fatal(err)
		}
		b, err := casing.Ratings(part)
		if err != nil {
			t.Fatal(err)
		}
		f, g := a.Factors(), b.Factors()
		for i, pair := range [][2]Factor{{f.Burst, g.Burst}, {f.Tension, g.Tension}, {f.Compression, g.Compression}, {f.Triaxial, g.Triaxial}} {
			if pair[0].Loaded && pair[1].Loaded && !handbook.Within(pair[1].Value, pair[0].Value/share, 1e-6) {
				t.Fatalf("factor %d: %v, at %v of the load %v", i, pair[0], share, pair[1])
			}
		}
		if f.Collapse.Loaded && g.Collapse.Loaded && g.Collapse.Value < f.Collapse.Value/share*(1-1e-9) {
			t.Fatalf("collapse factor %v, at %v of the load %v", f.Collapse, share, g.Collapse)
		}
	})
}

// Wear, heat and a weak joint never add strength.
func TestNothingIsGained(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fresh := NewCasing(drawPipe(t))
		used := fresh
		used.Lost = rapid.Float64Range(0, 0.5).Draw(t, "lost")
		used.Connection = Connection{
			Burst:       rapid.Float64Range(0.5, 1.5).Draw(t, "burst"),
			Collapse:    rapid.Float64Range(0.5, 1.5).Draw(t, "collapse"),
			Tension:     rapid.Float64Range(0.5, 1.5).Draw(t, "tension"),
			Compression: rapid.Float64Range(0.5, 1.5).Draw(t, "compression"),
		}
		load := drawLoad(t, fresh.Pipe)
		load.Temperature, load.Axial = 290, math.Abs(load.Axial)
		a, err := fresh.Ratings(load)
		if err != nil {
			t.Fatal(err)
		}
		load.Temperature = rapid.Float64Range(290, 500).Draw(t, "hot")
		b, err := used.Ratings(load)
		if err != nil {
			t.Fatal(err)
		}
		for i, pair := range [][2]Rating{{a.Burst, b.Burst}, {a.Collapse, b.Collapse}, {a.Tension, b.Tension}, {a.Compression, b.Compression}} {
			if pair[1].Value > pair[0].Value*(1+1e-9) {
				t.Fatalf("rating %d: %v when new, %v when used", i, pair[0], pair[1])
			}
		}
	})
}

// Whatever is put in, an answer is a number or an error.
func TestNoAnswerIsNoNumber(t *testing.T) {
	// Some of what nobody would draw, some of what all would.
	wild := func(t *rapid.T, name string, usual float64) float64 {
		return rapid.OneOf(rapid.Just(usual), rapid.Just(usual), rapid.Just(usual), rapid.Just(usual),
			rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64}),
			rapid.Float64()).Draw(t, name)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := Pipe{wild(t, "od", 0.24), wild(t, "wall", 0.012), wild(t, "yield", 5.5e8)}
		c := NewCasing(p)
		c.Lost = wild(t, "lost", 0.1)
		c.TriaxialShare = wild(t, "share", 0.875)
		c.Connection.Tension = wild(t, "tension", 0.8)
		l := Load{wild(t, "depth", 1000), wild(t, "inside", 5e7), wild(t, "outside", 3e7), wild(t, "axial", 1e6),
			wild(t, "torque", 1e4), wild(t, "temperature", 350), wild(t, "dogleg", 0.001)}
		r, err := c.Ratings(l)
		if err != nil {
			return
		}
		f := r.Factors()
		s := r.Worst.Stress
		for i, v := range []float64{r.Burst.Value, r.Collapse.Value, r.Tension.Value, r.Compression.Value, r.External, r.BendingPull, r.CollapseYield,
			s.Radial, s.Hoop, s.Axial, s.Shear, r.Worst.VonMises, f.Burst.Value, f.Collapse.Value, f.Tension.Value, f.Compression.Value, f.Triaxial.Value} {
			if _, ok := finite(v); !ok {
				t.Fatalf("value %d is %v: %+v", i, v, r)
			}
		}
	})
}
