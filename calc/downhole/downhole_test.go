package downhole

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
	"borewalk/calc/water"
	"borewalk/model/handbook"
)

const zero = 273.15

// TestOilsAreLikeOils holds the recalled correlations against what is known of such oils from elsewhere.
func TestOilsAreLikeOils(t *testing.T) {
	bases := map[string]Base{"diesel": Diesel, "mineral": Mineral, "olefin": Olefin}
	type published struct {
		Case []struct {
			ID, Base, Source string
			TolerancePct     float64 `toml:"tolerance_pct"`
			Given, Expected  map[string]float64
		}
	}
	for _, c := range handbook.Load[published](t, "testdata/oils.toml").Case {
		g := c.Given
		oil := Oil{Base: bases[c.Base]}
		first, ok := oil.Density(zero+g["celsius"], g["bar"]*1e5)
		if !ok {
			t.Fatal(c.ID)
		}
		then, _ := oil.Density(zero+g["to_celsius"], g["to_bar"]*1e5)
		got := map[string]float64{
			"kg_per_m3":               first,
			"expansion_per_k":         (first/then - 1) / (g["to_celsius"] - g["celsius"]),
			"compressibility_per_bar": (1 - first/then) / (g["to_bar"] - g["bar"]),
		}
		for name, want := range c.Expected {
			if !handbook.Within(got[name], want, c.TolerancePct) {
				t.Errorf("%s: %s = %g, want %g within %g %% (%s)", c.ID, name, got[name], want, c.TolerancePct, c.Source)
			}
		}
	}
}

// TestOilsOverTheirDomain: denser under pressure, lighter in heat, everywhere that an answer is given.
func TestOilsOverTheirDomain(t *testing.T) {
	for _, oil := range []Oil{{Base: Diesel}, {Base: Mineral}, {Base: Olefin}, {Base: Mineral, Compressibility: 7e-10, Expansion: 8e-4}} {
		for kelvin := oilColdest; kelvin <= oilHottest-2; kelvin += 4 {
			for p := 0.0; p <= oilMost-2e6; p += 4e6 {
				at, ok := oil.Density(kelvin, p)
				warm, _ := oil.Density(kelvin+1, p)
				pressed, _ := oil.Density(kelvin, p+1e6)
				if !ok || !(warm < at && pressed > at) {
					t.Fatalf("%+v at %v K, %v MPa: %v, warmer %v, pressed %v", oil, kelvin, p/1e6, at, warm, pressed)
				}
			}
		}
	}
	for _, bad := range [][2]float64{{200, 0}, {500, 0}, {300, -1}, {300, 2e8}, {math.NaN(), 0}} {
		if got, ok := (Oil{Base: Diesel}).Density(bad[0], bad[1]); ok || got != 0 {
			t.Errorf("Density(%v) = %v", bad, got)
		}
	}
	if _, ok := (Oil{}).Density(300, 0); ok {
		t.Error("water is an oil")
	}
	if _, ok := (Oil{Base: Diesel, Compressibility: 1e-7}).Density(300, 1e8); ok {
		t.Error("an oil without volume has a density")
	}
}

// anyMud draws a mud of a sound recipe.
func anyMud(t *rapid.T) Mud {
	r := Recipe{Temperature: zero + rapid.Float64Range(5, 60).Draw(t, "weighed at")}
	r.SaltShare = rapid.Float64Range(0, 0.4).Draw(t, "salt")
	r.Brine = 998.2 * (1 + 0.9*r.SaltShare)
	r.Oil.Base = rapid.SampledFrom([]Base{NoOil, Diesel, Mineral, Olefin}).Draw(t, "base")
	solids := rapid.Float64Range(0.02, 0.35).Draw(t, "solids")
	if r.Oil.Base != NoOil {
		r.OilShare = (1 - solids) * rapid.Float64Range(0.5, 0.95).Draw(t, "of the liquid")
	}
	r.BrineShare = 1 - solids - r.OilShare
	brine, _ := water.Brine(r.Brine, r.SaltShare, r.Temperature, 0)
	oil, _ := r.Oil.Density(r.Temperature, 0)
	r.Density = solids*rapid.Float64Range(2400, 4300).Draw(t, "solids weigh") + r.BrineShare*brine + r.OilShare*oil
	m, err := New(r)
	if err != nil {
		t.Fatalf("%+v: %v", r, err)
	}
	return m
}

// TestMassIsKept: the parts of a cubic metre of mud, each at its density down there, take the volume that the mud's
// density says, whatever they were before; at the reference it is what was weighed.
func TestMassIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMud(t)
		r := m.Recipe()
		kelvin, p := zero+rapid.Float64Range(0, 150).Draw(t, "temperature"), rapid.Float64Range(0, 90e6).Draw(t, "pressure")
		if got := m.Density(r.Temperature, 0); math.Abs(got-r.Density) > 1e-9*r.Density {
			t.Errorf("at the reference %v, want %v", got, r.Density)
		}
		brine, _ := water.Brine(r.Brine, r.SaltShare, kelvin, p)
		was, _ := water.Brine(r.Brine, r.SaltShare, r.Temperature, 0)
		volume := r.BrineShare*was/brine + m.Solids()
		mass := r.BrineShare*was + m.Solids()*m.SolidsDensity()
		if r.OilShare > 0 {
			oil, _ := r.Oil.Density(kelvin, p)
			before, _ := r.Oil.Density(r.Temperature, 0)
			volume += r.OilShare * before / oil
			mass += r.OilShare * before
		}
		if got := m.Density(kelvin, p); math.Abs(got-mass/volume) > 1e-9*got {
			t.Errorf("%v, the parts give %v", got, mass/volume)
		}
		if pressed := m.Density(kelvin, p+1e6); !(pressed > m.Density(kelvin, p)) {
			t.Errorf("pressed from %v to %v", m.Density(kelvin, p), pressed)
		}
		if kelvin > zero+15 && !(m.Density(kelvin+1, p) < m.Density(kelvin, p)) {
			t.Errorf("warmed from %v to %v", m.Density(kelvin, p), m.Density(kelvin+1, p))
		}
		if c := m.HeatCapacity(); !(c > 600 && c < 4200) {
			t.Errorf("heat capacity %v", c)
		}
	})
}

// TestSolidsAloneDoNotGive: the less of a mud is liquid, the less it changes; without liquid the column is the plain one.
func TestSolidsAloneDoNotGive(t *testing.T) {
	last := math.Inf(1)
	for _, liquid := range []float64{0.95, 0.7, 0.4, 0.1, 0} {
		r := Recipe{Density: liquid*998 + (1-liquid)*4200, Temperature: zero + 20, BrineShare: liquid}
		m, err := New(r)
		if err != nil {
			t.Fatal(err)
		}
		over := m.Density(zero+20, 5e7)/r.Density - 1
		if !(over >= 0 && over < last) {
			t.Errorf("liquid %v: %v denser at 50 MPa, with more liquid %v", liquid, over, last)
		}
		last = over
		if liquid > 0 {
			continue
		}
		p := column.Settle(0, 0, 2000, 4, func(z, p float64) float64 { return m.Density(zero+20+0.03*z, p) })
		if plain := column.G * 2000 * r.Density; math.Abs(p-plain) > 1e-9*plain {
			t.Errorf("solids alone: %v, the plain column gives %v", p, plain)
		}
	}
}

// TestColumnAgainstSmallSteps: the few steps that are used agree with ten thousand of the plainest kind.
func TestColumnAgainstSmallSteps(t *testing.T) {
	m, err := New(Recipe{Density: 1420, Temperature: zero + 20, Oil: Oil{Base: Mineral}, OilShare: 0.58, BrineShare: 0.2, Brine: 1177.5, SaltShare: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	warm := func(z float64) float64 { return zero + 6 + 0.034*z }
	got := column.Settle(0, 0, 3000, 5, func(z, p float64) float64 { return m.Density(warm(z), p) })
	const steps = 10000
	want := 0.0
	for k := range steps {
		z := 3000.0 / steps * (float64(k) + 0.5)
		want += m.Density(warm(z), want) * column.G * 3000 / steps
	}
	if math.Abs(got-want) > 5e-6*want {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestHotWellsThinOilMudMore: in a well of a common gradient heat wins over pressure at depth, in oil mud by more than in
// water-based mud (Hoberock et al. 1982 and McMordie, Bland and Hauser, SPE 11114, 1982; the sense only, from memory).
func TestHotWellsThinOilMudMore(t *testing.T) {
	left := func(r Recipe) float64 {
		m, err := New(r)
		if err != nil {
			t.Fatal(err)
		}
		p := column.Settle(0, 0, 4500, 8, func(z, p float64) float64 { return m.Density(zero+20+0.03*z, p) })
		return p/(column.G*4500) - r.Density
	}
	aqueous := left(Recipe{Density: 1400, Temperature: zero + 20, BrineShare: 0.85})
	oily := left(Recipe{Density: 1400, Temperature: zero + 20, Oil: Oil{Base: Diesel}, OilShare: 0.6, BrineShare: 0.16})
	if !(aqueous < 0 && oily < aqueous && aqueous > -30 && oily > -40) {
		t.Errorf("water-based %+.1f kg/m3, oil-based %+.1f", aqueous, oily)
	}
}

func TestWhatIsNoMud(t *testing.T) {
	good := Recipe{Density: 1400, Temperature: zero + 20, Oil: Oil{Base: Mineral}, OilShare: 0.58, BrineShare: 0.2}
	for _, c := range []struct {
		change func(*Recipe)
		says   string
	}{
		{func(r *Recipe) { r.SaltShare = 0.1 }, "no brine"},
		{func(r *Recipe) { r.Brine, r.SaltShare = 1100, -0.1 }, "-10.0 %"},
		{func(r *Recipe) { r.Oil.Base = NoOil }, "choose the oil"},
		{func(r *Recipe) { r.BrineShare = 0.5 }, "more than the mud"},
		{func(r *Recipe) { r.BrineShare = -0.1 }, "more than the mud"},
		{func(r *Recipe) { r.Density = 3000 }, "solids would weigh"},
		{func(r *Recipe) { r.Density = 900 }, "solids would weigh"},
		{func(r *Recipe) { r.BrineShare = 0.42 }, "do not weigh"},
	} {
		r := good
		c.change(&r)
		if _, err := New(r); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, want %q", r, err, c.says)
		}
	}
}

// TestComplete: the share of water found makes the solids weigh what was asked for.
func TestComplete(t *testing.T) {
	for _, r := range []Recipe{{Density: 1250, Temperature: zero + 20}, {Density: 1420, Temperature: zero + 20, Oil: Oil{Base: Olefin}, OilShare: 0.6}} {
		full, ok := r.Complete(3500)
		m, err := New(full)
		if !ok || err != nil || math.Abs(m.SolidsDensity()-3500) > 1e-6 {
			t.Errorf("%+v: %v, solids %v, %v", full, ok, m.SolidsDensity(), err)
		}
	}
	for _, solids := range []float64{900, 1200, math.NaN()} {
		if full, ok := (Recipe{Density: 1250, Temperature: zero + 20}).Complete(solids); ok {
			t.Errorf("solids of %v: %+v", solids, full)
		}
	}
}

func BenchmarkDensity(b *testing.B) {
	m, err := New(Recipe{Density: 1420, Temperature: zero + 20, Oil: Oil{Base: Mineral}, OilShare: 0.58, BrineShare: 0.2, Brine: 1177.5, SaltShare: 0.2})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		m.Density(350, 4e7)
	}
}
