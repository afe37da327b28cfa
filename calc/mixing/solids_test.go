package mixing

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/handbook"
)

func TestPublishedSolids(t *testing.T) {
	data := handbook.Load[struct{ Example []example }](t, "testdata/solids.toml")
	if len(data.Example) != 1 {
		t.Fatalf("%d examples", len(data.Example))
	}
	for _, ex := range data.Example {
		salt := SodiumChloride()
		// The share of salt that gives the chloride of a litre of filtrate, found by steps.
		share, grams := 0.1, ex.Given["chloride_mg_per_l"]*1.6485/1000
		for range 50 {
			b, err := salt.Dissolve(1, share)
			if err != nil {
				t.Fatal(err)
			}
			share = grams / b.Density
		}
		s, err := Retort{
			Density: ex.Given["mud_weight_ppg"] * 12 * 10, Oil: ex.Given["oil_pct"] / 100, Water: ex.Given["water_pct"] / 100,
			OilDensity: ex.Given["oil_sg"] * 1000, Salt: salt, Share: share, High: ex.Given["barite_sg"] * 1000, Low: ex.Given["low_gravity_sg"] * 1000,
		}.Part()
		if err != nil {
			t.Fatal(err)
		}
		got := map[string]float64{
			"salt_water_pct": s.Brine * 100, "salt_water_sg": s.BrineDensity / 1000, "suspended_pct": s.All * 100,
			"mean_sg": s.Mean / 1000, "low_gravity_pct": s.Low * 100, "barite_pct": s.High * 100,
		}
		for name, want := range ex.Expected {
			value, ok := got[name]
			if !ok || math.Abs(value-want) > ex.TolerancePct {
				t.Errorf("%s: %s = %v, want %v within %v points (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
}

// A mud put together from known parts is parted into them again.
func TestPartsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := func(name string, most float64) float64 { return rapid.Float64Range(0, most).Draw(t, name) }
		high, low, oil := part("high", 0.3), part("low", 0.2), part("oil", 0.4)
		share := part("share", 0.2)
		brine, err := CalciumChloride().Dissolve(1-high-low-oil, share)
		if err != nil {
			t.Fatal(err)
		}
		mud, err := Mix(brine.Fluid, Fluid{high, Barite}, Fluid{low, 2600}, Fluid{oil, 800})
		if err != nil {
			t.Fatal(err)
		}
		same(t, "volume", mud.Volume, 1)
		s, err := Retort{mud.Density, oil, brine.Water, 800, CalciumChloride(), share, Barite, 2600}.Part()
		if err != nil {
			t.Fatal(err)
		}
		same(t, "high", s.High, high)
		same(t, "low", s.Low, low)
		same(t, "high by mass", s.HighMass, high*Barite)
		same(t, "low by mass", s.LowMass, low*2600)
		same(t, "brine", s.Brine, brine.Volume)
		if s.All > 1e-6 {
			same(t, "mean", s.Mean*s.All, s.HighMass+s.LowMass)
		}
	})
}

func TestFaultsOfRetortsAreNamed(t *testing.T) {
	good := Retort{Density: 1400, Oil: 0.1, Water: 0.6, OilDensity: 800, High: 4200, Low: 2600}
	for i, c := range []struct {
		change func(*Retort)
		want   string
	}{
		{func(r *Retort) { r.Density = math.NaN() }, "above zero"},
		{func(r *Retort) { r.High = 2600 }, "not denser"},
		{func(r *Retort) { r.Oil = -0.1 }, "at most 100"},
		{func(r *Retort) { r.Water = 0.95 }, "at most 100"},
		{func(r *Retort) { r.OilDensity = 0 }, "give its density"},
		{func(r *Retort) { r.Salt, r.Share = SodiumChloride(), 0.5 }, "0 to 26 %"},
		{func(r *Retort) { r.Water, r.Salt, r.Share = 0.895, SodiumChloride(), 0.25 }, "check the readings"},
	} {
		r := good
		c.change(&r)
		if _, err := r.Part(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("case %d: %v, want %q", i, err, c.want)
		}
	}
	if _, err := good.Part(); err != nil {
		t.Error(err)
	}
}
