package cleaning

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawCutting(t *rapid.T) Cutting {
	return Cutting{
		Diameter:   rapid.Float64Range(0.0005, 0.02).Draw(t, "diameter"),
		Density:    rapid.Float64Range(2200, 2900).Draw(t, "rock"),
		Sphericity: rapid.Float64Range(0.6, 1).Draw(t, "sphericity"),
	}
}

// A coarser cutting falls faster, a thicker or heavier mud holds it up, and nothing falls in a mud as heavy as itself.
func TestSlipFollowsWeightAndViscosity(t *testing.T) {
	for name, slip := range map[string]func(Cutting, float64, float64) float64{"Chien": Chien, "Moore": Moore, "Drag": Drag} {
		rapid.Check(t, func(t *rapid.T) {
			c := drawCutting(t)
			mud, viscosity := rapid.Float64Range(1000, 2000).Draw(t, "mud"), rapid.Float64Range(0.001, 0.3).Draw(t, "viscosity")
			v := slip(c, mud, viscosity)
			if !(v > 0) || math.IsInf(v, 0) {
				t.Fatalf("%s: %v", name, v)
			}
			coarser := c
			coarser.Diameter *= 1.1
			if slip(coarser, mud, viscosity) < v {
				t.Fatalf("%s: a coarser cutting is slower", name)
			}
			if slip(c, mud, viscosity*1.1) > v*(1+1e-9) || slip(c, mud*1.02, viscosity) > v*(1+1e-9) {
				t.Fatalf("%s: a thicker or heavier mud holds less", name)
			}
			if slip(c, c.Density, viscosity) != 0 {
				t.Fatalf("%s: a cutting that floats falls", name)
			}
		})
	}
}

// drag returns the drag coefficient at a Reynolds number, written anew: the parabola, with its two straight ends.
func drag(sphericity, reynolds float64) float64 {
	k, x := curveOf(sphericity), math.Log10(reynolds)
	if x < k.steep {
		return math.Pow(10, k.at(k.steep)-(x-k.steep))
	}
	return math.Pow(10, k.at(min(x, k.level)))
}

// The balance that the drag curve stands for, in thick mud, in thin and between.
func TestDragBalancesTheWeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCutting(t)
		mud, viscosity := rapid.Float64Range(1000, 2000).Draw(t, "mud"), rapid.Float64Range(0.0001, 3).Draw(t, "viscosity")
		v := Drag(c, mud, viscosity)
		volume, front := math.Pi/6*math.Pow(c.Diameter, 3), math.Pi/4*c.Diameter*c.Diameter
		weight := volume * (c.Density - mud) * gravity
		if force := drag(c.Sphericity, mud*v*c.Diameter/viscosity) * front * mud * v * v / 2; math.Abs(force-weight) > 1e-6*weight {
			t.Fatalf("drag %v N, weight %v N", force, weight)
		}
	})
	// A smooth sphere at Re 1000 has a drag of 0.46 to 0.47 (standard drag curve, from memory); the fit is within a fifth.
	if f := drag(1, 1000); math.Abs(f-0.46) > 0.1 {
		t.Errorf("a sphere's drag at Re 1000 is %v", f)
	}
}

// Stokes' law is what Chien's formula tends to in thick mud, but for its factor for flat cuttings; towards thin mud viscosity
// drops out. Both limits by hand from the formula.
func TestChienTendsToItsLimits(t *testing.T) {
	c := Cutting{Diameter: 0.25 * inch, Density: 22 * poundPerGallon}
	thick, thicker := Chien(c, 11*poundPerGallon, 10), Chien(c, 11*poundPerGallon, 20)
	if math.Abs(thick/thicker-2) > 1e-3 {
		t.Errorf("in thick mud the slip does not go with 1 / viscosity: %v, %v", thick, thicker)
	}
	if thin, want := Chien(c, 11*poundPerGallon, 1e-9), 0.0075*math.Sqrt(36800*0.25)*foot; math.Abs(thin/want-1) > 1e-3 {
		t.Errorf("thin mud: %v, want %v", thin, want)
	}
}

// What the bit makes leaves at the top: the cuttings' flow at the concentration found is the feed.
func TestCuttingsAreConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feed := rapid.Float64Range(1e-5, 0.01).Draw(t, "feed")
		flow := rapid.Float64Range(0.005, 0.1).Draw(t, "flow")
		transport := rapid.Float64Range(0.2, 1).Draw(t, "transport")
		share := Concentration(feed, flow, transport)
		if share < 1 && math.Abs(share*transport*(flow+feed)-feed) > 1e-12 {
			t.Fatalf("share %v carries %v of %v", share, share*transport*(flow+feed), feed)
		}
		area := rapid.Float64Range(0.02, 0.2).Draw(t, "area")
		limit := rapid.Float64Range(0.01, 0.1).Draw(t, "limit")
		rop := FastestROP(limit, flow, transport, area)
		if got := Concentration(rop*area, flow, transport); math.Abs(got-limit) > 1e-9 {
			t.Fatalf("at the fastest rate the share is %v, not %v", got, limit)
		}
	})
	if Concentration(0, 0.05, 0.5) != 0 || Concentration(0.001, 0.05, 0) != 1 || Concentration(0.001, 0, 0.5) != 1 {
		t.Error("no feed, no transport or no flow")
	}
}

func TestTransportAndLoad(t *testing.T) {
	if got := Transport(1, 0.25); got != 0.75 {
		t.Errorf("transport %v", got)
	}
	if Transport(1, 2) != 0 || Transport(0, 0) != 0 {
		t.Error("cuttings rise where they fall faster than the mud rises")
	}
	if got := Loaded(1200, 2600, 0.05); math.Abs(got-1270) > 1e-9 {
		t.Errorf("loaded %v", got)
	}
	if got, want := Feed(0.01, 0.3, 0.2), 0.01*math.Pi/4*0.05; math.Abs(got-want) > 1e-15 {
		t.Errorf("feed %v, want %v", got, want)
	}
}

func slant(angle float64) Slant {
	return Slant{Inclination: angle * math.Pi / 180, Hole: 12.25 * inch, Pipe: 5 * inch, ROP: 20.0 / 3600, Turning: 120 * 2 * math.Pi / 60,
		Density: 1250, Viscosity: 0.03, Cutting: Cutting{Diameter: 0.25 * inch, Density: 2600, Sphericity: 0.8}}
}

// By hand, in the units of the papers: 12 1/4 in hole, 5 in pipe, 65.617 ft/h, 120 rpm, 10.432 ppg, slip 0.5 ft/s. Lift is
// 65.617 / (36 x 0.83340 x (0.01778 x 65.617 + 0.505)) = 1.3080 ft/s; at 30 degrees the slip is stretched by
// 1 + 30 x 480 x 13.432 / 202500 = 1.95516. Larsen at 60 degrees, 30 cP: slip 3.1608, angle 1.0002, size 1.026, weight 0.94232.
func TestSlantedHolesByHand(t *testing.T) {
	s := slant(30)
	if got, want := s.Rubiandini(0.5*foot)/foot, 1.3080+0.5*1.95516; math.Abs(got-want) > 1e-3 {
		t.Errorf("Rubiandini: %v ft/s, by hand %v", got, want)
	}
	if got, want := slant(60).Larsen()/foot, 1.3080+3.1608*1.0002*1.026*0.94232; math.Abs(got-want) > 2e-3 {
		t.Errorf("Larsen: %v ft/s, by hand %v", got, want)
	}
	if slant(54).Larsen() != 0 {
		t.Error("Larsen's trials began at 55 degrees")
	}
}

// More slant up to 45 degrees, a faster bit and slower turning ask for more velocity; from 45 degrees on it stays.
func TestSlantAsksForMore(t *testing.T) {
	last := 0.0
	for angle := 0.0; angle <= 90; angle += 5 {
		v := slant(angle).Rubiandini(0.15)
		if v < last-1e-12 || angle > 45 && math.Abs(v-last) > 1e-12 {
			t.Errorf("%v degrees: %v after %v", angle, v, last)
		}
		last = v
	}
	faster, slower := slant(30), slant(30)
	faster.ROP *= 2
	slower.Turning /= 2
	if v := slant(30).Rubiandini(0.15); faster.Rubiandini(0.15) <= v || slower.Rubiandini(0.15) <= v {
		t.Error("a faster bit or slower turning asks for no more")
	}
}

// Moore's three laws in the field units of the books: 82.87 d² (rs - rf) / mu, 2.90 d (rs - rf)^0.667 / (rf^0.333 mu^0.333) and
// 1.54 sqrt(d (rs - rf) / rf), in ft/s, in, ppg and cP (Bourgoyne and others, chapter 4, from memory).
func TestMooreInFieldUnits(t *testing.T) {
	c := Cutting{Diameter: 0.25 * inch, Density: 21 * poundPerGallon}
	for _, x := range []struct{ cp, want float64 }{
		{20000, 82.87 * 0.25 * 0.25 * 11 / 20000},
		{50, 2.90 * 0.25 * math.Pow(11, 2.0/3) / math.Cbrt(10*50)},
		{1, 1.54 * math.Sqrt(0.25*11/10)},
	} {
		if got := Moore(c, 10*poundPerGallon, x.cp*centipoise) / foot; math.Abs(got/x.want-1) > 0.01 {
			t.Errorf("%g cP: %g ft/s, by the books %g", x.cp, got, x.want)
		}
	}
}

// By hand: PV 20 cP, YP 15 lbf/100ft2, a quarter-inch cutting in mud at 2 ft/s feels 20 + 5 x 15 x 0.25 / 2 = 29.4 cP.
func TestWhatACuttingFeels(t *testing.T) {
	c := Cutting{Diameter: 0.25 * inch}
	if got := Effective(0.020, 15*poundPer100SquareFoot, c, 2*foot) / centipoise; math.Abs(got-29.375) > 1e-9 {
		t.Errorf("%g cP", got)
	}
	if got := Effective(0.020, 5, c, 0); got != 0.020 {
		t.Errorf("at rest %g", got)
	}
	// A power law of index 1 is Newton's: its viscosity everywhere.
	if got := InGap(1, 0.03, 0.7, 0.05); math.Abs(got-0.03) > 1e-15 {
		t.Errorf("Newtonian: %g", got)
	}
}
