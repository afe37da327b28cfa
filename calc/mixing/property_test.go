package mixing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawMud(t *rapid.T) Fluid {
	return Fluid{rapid.Float64Range(0.1, 1000).Draw(t, "volume"), rapid.Float64Range(900, 1900).Draw(t, "density")}
}

func drawMaterial(t *rapid.T) Material {
	m := Material{Density: rapid.Float64Range(2600, 5300).Draw(t, "material")}
	if rapid.Bool().Draw(t, "wetted") {
		m.Wetting = rapid.Float64Range(0, 1e-4).Draw(t, "wetting")
		m.LiquidDensity = rapid.Float64Range(800, 1200).Draw(t, "liquid")
	}
	return m
}

func same(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*(1+math.Abs(want))) {
		t.Fatalf("%s = %v, want %v", what, got, want)
	}
}

// together mixes mud, powder and liquid one by one, by Mix alone.
func together(t *rapid.T, mud Fluid, m Material, a Addition) Fluid {
	t.Helper()
	parts := []Fluid{mud, {a.Mass / m.Density, m.Density}}
	if a.Wetting > 0 {
		parts = append(parts, Fluid{a.Wetting, m.LiquidDensity})
	}
	mix, err := Mix(parts...)
	if err != nil {
		t.Fatal(err)
	}
	return mix
}

func TestWeightUpConservesMassAndVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mud, m := drawMud(t), drawMaterial(t)
		density := mud.Density + rapid.Float64Range(0, 300).Draw(t, "more")
		a, err := WeightUp(mud, m, density)
		if err != nil {
			t.Fatal(err)
		}
		mix := together(t, mud, m, a)
		same(t, "volume", a.Result.Volume, mix.Volume)
		same(t, "density", density, mix.Density)
		same(t, "gain", a.Gain, mix.Volume-mud.Volume)

		k, err := WeightUpKeeping(mud, m, density)
		if err != nil {
			t.Fatal(err)
		}
		mix = together(t, Fluid{k.Treated, mud.Density}, m, k)
		same(t, "kept volume", mud.Volume, mix.Volume)
		same(t, "kept density", density, mix.Density)
		same(t, "mud in all", k.Treated+k.Discard, mud.Volume)

		// What is kept, weighted up freely, is the same job.
		again, err := WeightUp(Fluid{k.Treated, mud.Density}, m, density)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "mass", again.Mass, k.Mass)
		same(t, "volume again", again.Result.Volume, mud.Volume)
	})
}

func TestDilutionConservesMassAndVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mud := drawMud(t)
		liquid := mud.Density * rapid.Float64Range(0.5, 0.9).Draw(t, "liquid")
		density := liquid + (mud.Density-liquid)*rapid.Float64Range(0.05, 1).Draw(t, "part")
		d, err := Dilute(mud, liquid, density)
		if err != nil {
			t.Fatal(err)
		}
		mix, err := Mix(mud, Fluid{d.Added, liquid})
		if err != nil {
			t.Fatal(err)
		}
		same(t, "volume", d.Result.Volume, mix.Volume)
		same(t, "density", density, mix.Density)

		k, err := DiluteKeeping(mud, liquid, density)
		if err != nil {
			t.Fatal(err)
		}
		mix, err = Mix(Fluid{mud.Volume - k.Discard, mud.Density}, Fluid{k.Added, liquid})
		if err != nil {
			t.Fatal(err)
		}
		same(t, "kept volume", k.Result.Volume, mix.Volume)
		same(t, "kept density", density, mix.Density)

		// The mud's own share in the mix is the cut of it.
		share, err := Cut(liquid, mud.Density, density)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "share of mud", share, (mud.Volume-k.Discard)/mud.Volume)
	})
}

// Thinned and weighted up again to where it was, a mud holds its own mass, the
// liquid and the powder.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mud, m := drawMud(t), drawMaterial(t)
		liquid := mud.Density * 0.7
		thin, err := Dilute(mud, liquid, mud.Density*rapid.Float64Range(0.85, 1).Draw(t, "part"))
		if err != nil {
			t.Fatal(err)
		}
		back, err := WeightUp(thin.Result, m, mud.Density)
		if err != nil {
			t.Fatal(err)
		}
		mass := mud.Mass() + thin.Added*liquid + back.Mass + back.Wetting*m.LiquidDensity
		same(t, "mass", back.Result.Mass(), mass)
		same(t, "density", back.Result.Density, mud.Density)
	})
}

func TestMoreDensityTakesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mud, m := drawMud(t), drawMaterial(t)
		low := mud.Density + rapid.Float64Range(0, 150).Draw(t, "low")
		high := low + rapid.Float64Range(0.01, 150).Draw(t, "step")
		for _, weigh := range []func(Fluid, Material, float64) (Addition, error){WeightUp, WeightUpKeeping} {
			a, err1 := weigh(mud, m, low)
			b, err2 := weigh(mud, m, high)
			if err1 != nil || err2 != nil {
				t.Fatal(err1, err2)
			}
			if !(b.Mass > a.Mass) {
				t.Fatalf("%v kg to %v, %v kg to %v", a.Mass, low, b.Mass, high)
			}
		}
		a, _ := Cut(mud.Density*0.9, high, mud.Density)
		b, _ := Cut(mud.Density*0.9, high, low)
		if b < a {
			t.Fatalf("share %v for %v, %v for %v", a, mud.Density, b, low)
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
		mud, density := Fluid{number("volume"), number("density")}, number("wanted")
		m := Material{number("material"), number("wetting"), number("liquid")}
		check := func(err error, values ...float64) {
			for _, v := range values {
				if err == nil && !notNegative(v) {
					t.Fatalf("values %v without an error", values)
				}
			}
		}
		for _, weigh := range []func(Fluid, Material, float64) (Addition, error){WeightUp, WeightUpKeeping} {
			a, err := weigh(mud, m, density)
			check(err, a.Discard, a.Treated, a.Mass, a.Wetting, a.Gain, a.Result.Volume, a.Result.Density)
		}
		for _, thin := range []func(Fluid, float64, float64) (Dilution, error){Dilute, DiluteKeeping} {
			d, err := thin(mud, m.LiquidDensity, density)
			check(err, d.Discard, d.Added, d.Result.Volume, d.Result.Density)
		}
		share, err := Cut(mud.Density, m.Density, density)
		check(err, share)
		mix, err := Mix(mud, Fluid{m.Wetting, m.LiquidDensity})
		check(err, mix.Volume, mix.Density)
	})
}
