package mixing

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/handbook"
)

func salts() map[string]Salt {
	return map[string]Salt{"NaCl": SodiumChloride(), "KCl": PotassiumChloride(), "CaCl2": CalciumChloride()}
}

func TestPublishedBrines(t *testing.T) {
	data := handbook.Load[struct {
		Table []struct {
			Salt, Source     string
			Seen             bool
			TolerancePct     float64 `toml:"tolerance_pct"`
			Percent, Density []float64
		}
	}](t, "testdata/brines.toml")
	if len(data.Table) != len(salts()) {
		t.Fatalf("%d tables", len(data.Table))
	}
	for _, table := range data.Table {
		for k, percent := range table.Percent {
			b, err := salts()[table.Salt].Dissolve(1, percent/100)
			if want := table.Density[k]; err != nil || math.Abs(b.Density-want) > want*table.TolerancePct/100 {
				t.Errorf("%s %v %%: %v, %v, want %v within %v %% (%s)", table.Salt, percent, b.Density, err, want, table.TolerancePct, table.Source)
			}
		}
	}
}

func TestABrineIsItsWaterAndItsSalt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		salt := salts()[rapid.SampledFrom([]string{"NaCl", "KCl", "CaCl2"}).Draw(t, "salt")]
		share, volume := rapid.Float64Range(0, salt.Most).Draw(t, "share"), rapid.Float64Range(0.1, 500).Draw(t, "volume")
		b, err := salt.Dissolve(volume, share)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "mass", b.Salt+b.Water*freshWater, b.Mass())
		same(t, "share", b.Salt/b.Mass(), share)
		if b.Gain() < -1e-4 || b.Water > volume*(1+1e-4) {
			t.Fatalf("%v m³ of water make %v m³ of brine", b.Water, volume)
		}
		back, err := salt.DissolveTo(volume, b.Density)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "share again", back.Share, share)
		more, err := salt.Dissolve(volume, min(share+0.001, salt.Most))
		if err != nil || more.Density < b.Density {
			t.Fatalf("%v at %v, %v with more salt, %v", b.Density, share, more.Density, err)
		}
	})
}

func TestFaultsOfBrinesAreNamed(t *testing.T) {
	salt := SodiumChloride()
	for i, c := range []struct {
		volume, share, density float64
		want                   string
	}{
		{-1, 0.1, 0, "brine of -1"}, {math.Inf(1), 0.1, 0, "brine of +Inf"}, {1, -0.1, 0, "0 to 26 %"}, {1, 0.27, 0, "NaCl"},
		{1, math.NaN(), 0, "NaN"}, {1, 0, 900, "wish for 998"}, {1, 0, 1300, "1196"}, {1, 0, math.NaN(), "NaN"},
	} {
		_, err := salt.Dissolve(c.volume, c.share)
		if c.density != 0 {
			_, err = salt.DissolveTo(c.volume, c.density)
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("case %d: %v, want %q", i, err, c.want)
		}
	}
}
