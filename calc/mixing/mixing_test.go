package mixing

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	gallon = 231 * inch * inch * inch
	barrel = 42 * gallon
	pound  = 0.45359237
	ppg    = pound / gallon
)

type example struct {
	ID, Source, Where, Note string
	Seen                    bool
	TolerancePct            float64 `toml:"tolerance_pct"`
	Given, Expected         map[string]float64
}

func TestPublishedWeightUps(t *testing.T) {
	data := handbook.Load[struct{ Example []example }](t, "testdata/weightup.toml")
	if len(data.Example) != 4 {
		t.Fatalf("%d examples", len(data.Example))
	}
	for _, ex := range data.Example {
		mud := Fluid{ex.Given["volume_bbl"] * barrel, ex.Given["mud_weight_start_ppg"] * ppg}
		material := Material{
			Density:       ex.Given["weight_material_ppg"] * ppg,
			Wetting:       ex.Given["water_gal_per_100lb"] * gallon / (100 * pound),
			LiquidDensity: ex.Given["water_weight_ppg"] * ppg,
		}
		end := ex.Given["mud_weight_end_ppg"] * ppg
		grows, err := WeightUp(mud, material, end)
		if err != nil {
			t.Fatal(err)
		}
		keeps, err := WeightUpKeeping(mud, material, end)
		if err != nil {
			t.Fatal(err)
		}
		got := map[string]float64{
			"sacks_100lb":                    grows.Mass / (100 * pound),
			"mass_lb":                        grows.Mass / pound,
			"volume_increase_bbl":            grows.Gain / barrel,
			"volume_increase_bbl_per_100bbl": grows.Gain / mud.Volume * 100,
			"final_volume_bbl":               grows.Result.Volume / barrel,
			"start_volume_kept_bbl":          keeps.Treated / barrel,
			"discard_bbl":                    keeps.Discard / barrel,
		}
		if len(ex.Expected) == 0 {
			t.Errorf("%s: nothing expected", ex.ID)
		}
		for name, want := range ex.Expected {
			value, ok := got[name]
			if !ok || math.Abs(value-want) > want*ex.TolerancePct/100 {
				t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
}

// Worked by hand from the two balances.
func TestCutMixAndDilute(t *testing.T) {
	// 16 ppg mud cut with 8.6 ppg sea water to 11.5 ppg: 2.9 of 7.4 parts.
	share, err := Cut(8.6*ppg, 16*ppg, 11.5*ppg)
	if err != nil || math.Abs(share-2.9/7.4) > 1e-12 {
		t.Errorf("Cut = %v, %v, want %v", share, err, 2.9/7.4)
	}
	mix, err := Mix(Fluid{30, 1000}, Fluid{10, 1800}, Fluid{0, 3000})
	if err != nil || mix != (Fluid{40, 1200}) {
		t.Errorf("Mix = %v, %v, want 40 m³ at 1200", mix, err)
	}
	d, err := Dilute(Fluid{100, 1500}, 1000, 1250)
	if err != nil || d.Added != 100 || d.Discard != 0 || d.Result != (Fluid{200, 1250}) {
		t.Errorf("Dilute = %+v, %v", d, err)
	}
	d, err = DiluteKeeping(Fluid{100, 1500}, 1000, 1250)
	if err != nil || d.Added != 50 || d.Discard != 50 || d.Result != (Fluid{100, 1250}) {
		t.Errorf("DiluteKeeping = %+v, %v", d, err)
	}
	for _, c := range []struct{ wanted, share float64 }{{1000, 0}, {1800, 1}} {
		if got, err := Cut(1000, 1800, c.wanted); err != nil || got != c.share {
			t.Errorf("Cut to %v = %v, %v, want %v", c.wanted, got, err, c.share)
		}
	}
}

func TestFaultsAreNamed(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	mud := Fluid{100, 1200}
	barite := Material{Density: Barite}
	weigh := func(f Fluid, m Material, density float64) error {
		_, err := WeightUp(f, m, density)
		_, other := WeightUpKeeping(f, m, density)
		if (err == nil) != (other == nil) {
			t.Errorf("WeightUp says %v, WeightUpKeeping %v", err, other)
		}
		return err
	}
	thin := func(f Fluid, liquid, density float64) error {
		_, err := Dilute(f, liquid, density)
		_, other := DiluteKeeping(f, liquid, density)
		if (err == nil) != (other == nil) {
			t.Errorf("Dilute says %v, DiluteKeeping %v", err, other)
		}
		return err
	}
	cut := func(light, heavy, wanted float64) error { _, err := Cut(light, heavy, wanted); return err }
	mix := func(f ...Fluid) error { _, err := Mix(f...); return err }
	cases := []struct {
		err  error
		want string
	}{
		{weigh(mud, barite, 1100), "not between"},
		{weigh(mud, barite, 4200), "not between"},
		{weigh(mud, barite, nan), "not between"},
		{weigh(mud, Material{Density: Barite, Wetting: 0.01, LiquidDensity: 1000}, 1300), "not between the 1200 of the mud and the 1074"},
		{weigh(Fluid{-1, 1200}, barite, 1300), "mud of -1 m³"},
		{weigh(Fluid{1, 0}, barite, 1300), "density above zero"},
		{weigh(Fluid{inf, 1200}, barite, 1300), "mud of +Inf"},
		{weigh(mud, Material{}, 1300), "absolute density"},
		{weigh(mud, Material{Density: Barite, Wetting: 1}, 1300), "give a density with the volume"},
		{weigh(mud, Material{Density: Barite, Wetting: -1}, 1300), "wetting -1"},
		{weigh(mud, Material{Density: 1e-320}, 1300), "check the units"},
		{thin(mud, 1000, 1300), "not between"},
		{thin(mud, 1000, 1000), "not between"},
		{thin(mud, nan, 1100), "liquid of NaN"},
		{thin(Fluid{1, nan}, 1000, 1100), "mud of 1 m³"},
		{cut(1000, 1000, 1000), "not heavier"},
		{cut(1000, 1500, 1600), "not between"},
		{cut(nan, 1500, 1200), "NaN"},
		{mix(), "some volume"},
		{mix(mud, Fluid{1, nan}), "fluid 2"},
		{mix(Fluid{0, 1000}), "some volume"},
	}
	for i, c := range cases {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("case %d: error %v, want it to hold %q", i, c.err, c.want)
		}
	}
}
