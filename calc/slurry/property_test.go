package slurry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawRecipe(t *rapid.T) Recipe {
	r := Recipe{
		CementDensity: rapid.Float64Range(2900, 3250).Draw(t, "cement"),
		Water:         rapid.Float64Range(2e-4, 1e-3).Draw(t, "water"),
		WaterDensity:  rapid.Float64Range(990, 1200).Draw(t, "water density"),
	}
	for range rapid.IntRange(0, 3).Draw(t, "powders") {
		r.Powders = append(r.Powders, Powder{
			Share:   rapid.Float64Range(0, 0.5).Draw(t, "share"),
			Density: rapid.Float64Range(600, 5300).Draw(t, "powder"),
			Water:   rapid.SampledFrom([]float64{0, HematiteWater, SilicaWater, BentoniteWater}).Draw(t, "extra"),
		})
	}
	for range rapid.IntRange(0, 2).Draw(t, "liquids") {
		r.Liquids = append(r.Liquids, Liquid{Dose: rapid.Float64Range(0, 1e-4).Draw(t, "dose"), Density: rapid.Float64Range(800, 1500).Draw(t, "liquid")})
	}
	return r
}

func same(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 5*trace*math.Max(1, math.Abs(want))) {
		t.Fatalf("%s = %v, want %v", what, got, want)
	}
}

func TestRecipeConservesMassAndVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRecipe(t)
		s, err := r.Slurry()
		if err != nil {
			t.Fatal(err)
		}
		parts, err := r.PerVolume()
		if err != nil {
			t.Fatal(err)
		}
		var mass, volume float64
		for _, p := range parts {
			mass += p.Mass
			volume += p.Volume
		}
		same(t, "volume of a cubic metre", volume, 1)
		same(t, "mass of a cubic metre", mass, s.Density)
		same(t, "cement in it times yield", parts[0].Mass*s.Yield, 1)
		implied, ok := s.ImpliedDensity()
		if !ok {
			t.Fatal("no implied density")
		}
		same(t, "implied density", implied, s.Density)
		if err := s.Check(1e-9); err != nil {
			t.Fatal(err)
		}

		// What a batch takes weighs and fills what is mixed.
		b, err := s.Batch(Job{Volume: rapid.Float64Range(0.1, 300).Draw(t, "volume")})
		if err != nil {
			t.Fatal(err)
		}
		needs, err := r.Needs(b)
		if err != nil {
			t.Fatal(err)
		}
		mass, volume = 0, 0
		for _, n := range needs {
			mass += n.Mass
			volume += n.Volume
		}
		same(t, "volume of the batch", volume, b.Mixed)
		same(t, "mass of the batch", mass, b.Mixed*s.Density)
		back, ok := s.Volume(b.Sacks * Sack)
		if !ok || back < b.Mixed-1e-6*Sack*s.Yield || back >= b.Mixed+Sack*s.Yield {
			t.Fatalf("%v sacks make %v m³ of %v", b.Sacks, back, b.Mixed)
		}
	})
}

func TestWaterForIsTheWayBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRecipe(t)
		s, _ := r.Slurry()
		if math.Abs(s.Density-r.WaterDensity) < 50 {
			t.Skip("as light as water")
		}
		again, err := r.WithWaterFor(s.Density)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "water in l/kg", again.Water*1000, r.Water*1000)
		// Heavier than water, a slurry gets lighter with more of it.
		if s.Density > r.WaterDensity {
			less, err := r.WithWaterFor(s.Density - 0.1)
			if err != nil {
				t.Fatal(err)
			}
			if less.Water <= again.Water {
				t.Fatalf("a lighter slurry takes %v m³/kg, a heavier %v", less.Water, again.Water)
			}
		}
	})
}

func TestPowderForIsTheWayBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRecipe(t)
		heavy := Powder{Label: "hematite", Share: rapid.Float64Range(0, 1).Draw(t, "hematite"), Density: HematiteDensity, Water: HematiteWater}
		r.Powders = append(r.Powders, heavy)
		row := len(r.Powders) - 1
		s, _ := r.Slurry()
		again, err := r.WithPowderFor(row, s.Density)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "share", again.Powders[row].Share, heavy.Share)
		if r.Powders[row] != heavy {
			t.Fatal("the recipe given was changed")
		}
		more, err := r.WithPowderFor(row, s.Density+1)
		if err != nil {
			t.Fatal(err)
		}
		if more.Powders[row].Share <= again.Powders[row].Share {
			t.Fatalf("a heavier slurry takes %v kg/kg, a lighter %v", more.Powders[row].Share, again.Powders[row].Share)
		}
	})
}

// drawHole draws a tapered string in a hole of several sizes.
func drawHole(t *rapid.T) []Stretch {
	var hole []Stretch
	md := rapid.Float64Range(0, 50).Draw(t, "top")
	for range rapid.IntRange(1, 5).Draw(t, "stretches") {
		s := Stretch{Top: md, Inside: rapid.Float64Range(0.002, 0.02).Draw(t, "inside"), Annulus: rapid.Float64Range(0.005, 0.1).Draw(t, "annulus")}
		s.Bottom = md + rapid.Float64Range(100, 1500).Draw(t, "length")
		s.Hole = s.Inside + s.Annulus + rapid.Float64Range(0.001, 0.01).Draw(t, "steel")
		hole, md = append(hole, s), s.Bottom
	}
	return hole
}

func TestBalancedPlugConservesVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hole := drawHole(t)
		top, end := hole[0].Top, hole[len(hole)-1].Bottom
		p := Plug{Base: top + (end-top)*rapid.Float64Range(0.5, 1).Draw(t, "base"), Slurry: rapid.Float64Range(0, 6).Draw(t, "slurry"), Ahead: rapid.Float64Range(0, 6).Draw(t, "ahead")}
		b, err := Balance(hole, p)
		if err != nil {
			t.Skip("does not fit") // a short and narrow hole
		}
		inside := rooms(hole, func(s Stretch) float64 { return s.Inside })
		outside := rooms(hole, func(s Stretch) float64 { return s.Annulus })
		empty := rooms(hole, func(s Stretch) float64 { return s.Hole })

		same(t, "slurry with the pipe in", held(inside, b.TopIn, p.Base)+held(outside, b.TopIn, p.Base), p.Slurry)
		same(t, "spacer outside", held(outside, b.SpacerIn, b.TopIn), p.Ahead)
		same(t, "spacer inside", held(inside, b.SpacerIn, b.TopIn), b.Behind)
		same(t, "pipe", b.Displacement+b.Behind+held(inside, b.TopIn, p.Base), held(inside, top, p.Base))
		same(t, "slurry with the pipe out", held(empty, b.TopOut, p.Base), p.Slurry)
		same(t, "spacers with the pipe out", held(empty, b.SpacerOut, b.TopOut), p.Ahead+b.Behind)
		if b.TopOut < b.TopIn-1e-9 || b.SpacerOut < b.SpacerIn-1e-9 {
			t.Fatalf("tops rise when the pipe leaves: %+v", b)
		}
		volume, err := PlugVolume(hole, b.TopOut, p.Base)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "the plug asked for by its length", volume, p.Slurry)

		// Stopped short, the slurry is the same, more of it inside.
		p.Under = rapid.Float64Range(0, 0.9).Draw(t, "under") * min(b.Displacement, held(outside, b.TopIn, p.Base))
		short, err := Balance(hole, p)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "slurry when pumping stops", held(inside, short.StopInside, p.Base)+held(outside, short.StopOutside, p.Base), p.Slurry)
		same(t, "displacement", short.Displacement, b.Displacement-p.Under)
		if short.TopIn != b.TopIn || short.TopOut != b.TopOut {
			t.Fatalf("stopping short moves the balance: %+v, %+v", short, b)
		}
	})
}

// Whatever is put in, what comes out without an error is a number.
func TestNothingUnmarkedComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string) float64 {
			return rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, 1, 1000, math.NaN(), math.Inf(1), math.MaxFloat64, 5e-324}),
				rapid.Float64Range(0, 5000)).Draw(t, name)
		}
		numbers := func(err error, values ...float64) {
			t.Helper()
			for _, v := range values {
				if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
					t.Fatalf("values %v without an error", values)
				}
			}
		}
		r := Recipe{
			CementDensity: number("cement"), Water: number("water"), WaterDensity: number("water density"),
			Powders: []Powder{{"p", number("share"), number("powder"), number("extra")}},
			Liquids: []Liquid{{"l", number("dose"), number("liquid")}},
		}
		s, err := r.Slurry()
		numbers(err, s.Density, s.Yield, s.MixFluid, s.FluidDensity, s.Dry)
		parts, err := r.PerVolume()
		for _, p := range parts {
			numbers(err, p.Mass, p.Volume)
		}
		for _, solve := range []func(float64) (Recipe, error){r.WithWaterFor, func(d float64) (Recipe, error) { return r.WithPowderFor(0, d) }} {
			solved, err := solve(number("wanted"))
			numbers(err, solved.Water)
			if err == nil {
				numbers(nil, solved.Powders[0].Share)
			}
		}
		b, err := s.Batch(Job{number("volume"), number("tub"), number("tank"), number("reserve")})
		numbers(err, b.Mixed, b.Cement, b.Sacks, b.Aboard, b.MixFluid, b.Prepared)
		needs, err := r.Needs(b)
		for _, n := range needs {
			numbers(err, n.Mass, n.Volume, n.Aboard)
		}
		hole := []Stretch{{number("top"), number("bottom"), number("inside"), number("annulus"), number("hole")}}
		p, err := Balance(hole, Plug{number("base"), number("slurry"), number("ahead"), number("under")})
		numbers(err, p.Behind, p.Displacement, p.TopIn, p.SpacerIn, p.TopOut, p.SpacerOut, p.StopInside, p.StopOutside)
		volume, err := PlugVolume(hole, number("plug top"), number("plug base"))
		numbers(err, volume)
	})
}
