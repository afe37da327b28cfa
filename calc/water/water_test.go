package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
	"borewalk/model/handbook"
)

type published struct {
	Case []struct {
		ID, Source, Where string
		Seen              bool
		TolerancePct      float64 `toml:"tolerance_pct"`
		Given, Expected   map[string]float64
	}
}

// done does a case with this package; each kind of water has inputs of its own.
func done(t *testing.T, g map[string]float64) map[string]float64 {
	t.Helper()
	got := map[string]float64{}
	take := func(name string, value float64, ok bool) {
		if !ok {
			t.Fatalf("%s of %v has no value", name, g)
		}
		got[name] = value
	}
	if kelvin, ok := g["temperature_k"]; ok {
		density, ok := Fresh(kelvin, g["pressure_mpa"]*1e6-Atmosphere)
		take("specific_volume_m3_per_kg", 1/density, ok)
	}
	if t68, ok := g["temperature_degc_t68"]; ok {
		density, ok := Sea(g["salinity_psu"], zeroCelsius+t68/1.00024, g["pressure_bar"]*1e5)
		take("density_kg_per_m3", density, ok)
		got["secant_bulk_modulus_bar"] = bulkModulus(g["salinity_psu"], t68, g["pressure_bar"])
	}
	if percent, ok := g["salt_pct"]; ok {
		density, ok := Brine(g["standard_kg_per_m3"], percent/100, zeroCelsius+g["temperature_c"], g["pressure_bar"]*1e5)
		take("brine_kg_per_m3", density, ok)
	}
	return got
}

func TestPublishedDensities(t *testing.T) {
	for _, c := range handbook.Load[published](t, "testdata/water.toml").Case {
		t.Run(c.ID, func(t *testing.T) {
			if len(c.Expected) == 0 {
				t.Fatal("nothing expected")
			}
			got := done(t, c.Given)
			for name, want := range c.Expected {
				value, ok := got[name]
				if !ok || !handbook.Within(value, want, c.TolerancePct) {
					t.Errorf("%s = %.9g, want %.9g within %g %% (%s)", name, value, want, c.TolerancePct, c.Source)
				}
			}
		})
	}
}

// TestFreshWaterByTwoEquations: the sea's equation without salt is a second one for fresh water.
func TestFreshWaterByTwoEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kelvin := rapid.Float64Range(zeroCelsius+0.1, zeroCelsius+39.9).Draw(t, "temperature")
		pressure := rapid.Float64Range(0, 95e6).Draw(t, "pressure")
		a, ok := Fresh(kelvin, pressure)
		b, also := Sea(0, kelvin, pressure)
		if !ok || !also || math.Abs(a-b) > 3e-4*a {
			t.Errorf("Fresh = %v, Sea without salt = %v", a, b)
		}
	})
}

// TestDensityRisesWithPressureAndSalt at every temperature, and falls as brine warms above the density maximum.
func TestDensityRisesWithPressureAndSalt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kelvin := rapid.Float64Range(zeroCelsius, zeroCelsius+39).Draw(t, "temperature")
		pressure := rapid.Float64Range(0, 90e6).Draw(t, "pressure")
		salinity := rapid.Float64Range(0, 41).Draw(t, "salinity")
		base, _ := Sea(salinity, kelvin, pressure)
		pressed, _ := Sea(salinity, kelvin, pressure+1e5)
		salted, _ := Sea(salinity+0.1, kelvin, pressure)
		if !(pressed > base && salted > base) {
			t.Errorf("Sea = %v, pressed %v, salted %v", base, pressed, salted)
		}
		share := rapid.Float64Range(0.001, 0.4).Draw(t, "share")
		standard := 998.2 * (1 + 0.9*share)
		hot := rapid.Float64Range(zeroCelsius+15, zeroCelsius+195).Draw(t, "hot")
		brine, ok := Brine(standard, share, hot, pressure)
		pressed, _ = Brine(standard, share, hot, pressure+1e5)
		warmed, _ := Brine(standard, share, hot+1, pressure)
		if !ok || !(pressed > brine && warmed < brine) {
			t.Errorf("Brine = %v, pressed %v, warmed %v", brine, pressed, warmed)
		}
	})
}

// TestBrineAtReference: at 20 °C and one atmosphere a brine is as given; without salt it is the fresh water, whose density
// there the handbooks print as 998.2 kg/m³.
func TestBrineAtReference(t *testing.T) {
	for _, share := range []float64{0.01, 0.05, 0.22, 0.4} {
		if got, ok := Brine(1180, share, reference, 0); !ok || math.Abs(got-1180) > 1e-9 {
			t.Errorf("Brine(%v) = %v, %v, want 1180", share, got, ok)
		}
	}
	fresh, _ := Fresh(reference, 0)
	if got, ok := Brine(0, 0, reference, 0); !ok || got != fresh || math.Abs(fresh-998.2) > 0.05 {
		t.Errorf("fresh water at 20 °C %v, brine without salt %v, want 998.2", fresh, got)
	}
}

// TestTheStandardOcean sums a sea of salinity 35 at 0 °C down to where the pressure is known: Fofonoff and Millard (UNESCO
// 44, 1983, from memory) give the work of lifting through it to p decibars as 9.72659 p - 2.2512e-5 p² + 2.279e-10 p³ -
// 1.82e-15 p⁴ in m²/s².
func TestTheStandardOcean(t *testing.T) {
	for _, p := range []float64{500, 2000, 5000, 9000} {
		depth := (9.72659*p - 2.2512e-5*p*p + 2.279e-10*p*p*p - 1.82e-15*p*p*p*p) / column.G
		got := column.Settle(0, 0, depth, 8, func(_, pressure float64) float64 {
			density, _ := Sea(35, zeroCelsius, pressure)
			return density
		})
		if want := p * 1e4; math.Abs(got-want) > 2e-5*want {
			t.Errorf("at %.2f m: %v Pa, want %v", depth, got, want)
		}
	}
}

func TestOutsideTheDomain(t *testing.T) {
	nan := math.NaN()
	for _, bad := range [][3]float64{{-1, 280, 0}, {43, 280, 0}, {35, 260, 0}, {35, 320, 0}, {35, 280, -1}, {35, 280, 2e8}, {nan, 280, 0}, {35, nan, 0}, {35, 280, nan}} {
		if d, ok := Sea(bad[0], bad[1], bad[2]); ok || d != 0 {
			t.Errorf("Sea(%v) = %v", bad, d)
		}
	}
	for _, bad := range [][2]float64{{260, 0}, {700, 0}, {300, -1}, {300, 1e8}, {nan, 0}, {300, nan}} {
		if d, ok := Fresh(bad[0], bad[1]); ok || d != 0 {
			t.Errorf("Fresh(%v) = %v", bad, d)
		}
		if d, ok := Brine(1070, 0.1, bad[0], bad[1]); ok || d != 0 {
			t.Errorf("Brine(%v) = %v", bad, d)
		}
	}
	for _, bad := range [][2]float64{{1100, -0.01}, {1100, 1}, {1100, nan}, {0, 0.1}, {nan, 0.1}, {math.Inf(1), 0.1}} {
		if d, ok := Brine(bad[0], bad[1], 300, 0); ok || d != 0 {
			t.Errorf("Brine(%v) = %v", bad, d)
		}
	}
}

func BenchmarkBrine(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Brine(1177.5, 0.2, 330, 3e7)
	}
}
