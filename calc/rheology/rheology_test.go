package rheology

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/handbook"
)

var fits = map[string]func([]Reading) (Law, error){"Bingham": Bingham, "power law": PowerLaw, "Herschel-Bulkley": HerschelBulkley}

type published struct {
	Fit []struct {
		ID, Law                        string
		Speeds, Dials                  []float64
		Yield, Consistency, Index, RMS float64
	}
	Example []struct {
		ID, Source, Where, Note string
		Seen                    bool
		TolerancePct            float64 `toml:"tolerance_pct"`
		Dial600                 float64 `toml:"dial_600"`
		Dial300                 float64 `toml:"dial_300"`
		Expected                map[string]float64
	}
}

func readings(speeds, dials []float64) (list []Reading) {
	for k := range speeds {
		list = append(list, Reading{speeds[k], dials[k]})
	}
	return list
}

// TestAgainstRecordedFits compares with least squares found by another method, to the digits that were recorded.
func TestAgainstRecordedFits(t *testing.T) {
	list := handbook.Load[published](t, "testdata/rheology.toml").Fit
	if len(list) < 15 {
		t.Fatalf("%d fits", len(list))
	}
	for _, c := range list {
		given := readings(c.Speeds, c.Dials)
		law, err := fits[c.Law](given)
		if err != nil {
			t.Errorf("%s: %v", c.ID, err)
			continue
		}
		rms, greatest, at := law.Miss(given)
		for _, x := range []struct {
			what      string
			got, want float64
		}{{"yield", law.Yield, c.Yield}, {"consistency", law.Consistency, c.Consistency}, {"index", law.Index, c.Index}, {"rms", rms, c.RMS}} {
			if !(math.Abs(x.got-x.want) <= 2e-5*math.Abs(x.want)) {
				t.Errorf("%s: %s %.7g, recorded %.7g", c.ID, x.what, x.got, x.want)
			}
		}
		if off := math.Abs(law.Dial(c.Speeds[at]) - c.Dials[at]); off != greatest || greatest < rms {
			t.Errorf("%s: greatest miss %g, at its place %g, rms %g", c.ID, greatest, off, rms)
		}
	}
}

func TestPublishedTwoPointFormulas(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/rheology.toml").Example {
		pv, yp := Field(ex.Dial600, ex.Dial300)
		law, err := PowerLaw([]Reading{{600, ex.Dial600}, {300, ex.Dial300}})
		if err != nil {
			t.Fatal(err)
		}
		// The handbooks take K with n as they round it, log 2 being 1/3.32, at 511 and 1022 1/s.
		at := func(speed, rounded float64) float64 { return law.Dial(speed) / math.Pow(rounded, ex.Expected["n"]) }
		got := map[string]float64{
			"plastic_viscosity_cp": pv * 1000, "yield_point_lb_per_100ft2": yp / 0.4788026, "n": law.Index,
			"k_dial_per_s_n": at(300, 511), "k600_dial_per_s_n": at(600, 1022),
		}
		for name, want := range ex.Expected {
			if value, ok := got[name]; !ok || !(math.Abs(value-want) <= want*ex.TolerancePct/100) {
				t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
}

// TestTwoReadingsByHand: 58 and 40 degrees make 0.018 Pa·s and 22 lbf/100 ft²; the line through the stresses 29.638 and
// 20.44 Pa at 1021.38 and 510.69 1/s has 9.198 / 510.69 = 0.0180109 Pa·s and 20.44 - 9.198 = 11.242 Pa, which is 22 degrees.
func TestTwoReadingsByHand(t *testing.T) {
	pv, yp := Field(58, 40)
	law, err := Bingham([]Reading{{300, 40}, {600, 58}})
	if err != nil || math.Abs(pv-0.018) > 1e-12 || math.Abs(yp-10.5336572) > 1e-6 ||
		math.Abs(law.Consistency-0.0180109) > 1e-7 || math.Abs(law.Yield-11.242) > 1e-9 {
		t.Errorf("field %.6f Pa·s, %.6f Pa; line %+v, %v", pv, yp, law, err)
	}
	if got := LowShear(7, 5.5); math.Abs(got-4*0.511) > 1e-12 {
		t.Errorf("low-shear yield %g", got)
	}
}

// TestGivesTheLawBack: from readings made by a law each fit that holds it gives it back.
func TestGivesTheLawBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"Bingham", "power law", "Herschel-Bulkley"}).Draw(t, "fit")
		law := Law{0, rapid.Float64Range(0.005, 2).Draw(t, "K"), 1}
		if name != "Bingham" {
			law.Index = rapid.Float64Range(0.15, 1.4).Draw(t, "n")
		}
		if name != "power law" {
			law.Yield = rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 20)).Draw(t, "yield")
		}
		speeds := rapid.SampledFrom([][]float64{{600, 300, 200, 100, 6, 3}, {600, 300, 3}, {3, 6, 100, 200}, {300, 100, 6, 600}}).Draw(t, "speeds")
		var given []Reading
		for _, s := range speeds {
			given = append(given, Reading{s, law.Dial(s)})
		}
		got, err := fits[name](given)
		if err != nil {
			t.Fatal(err)
		}
		if rms, _, _ := got.Miss(given); !(rms <= 1e-6*given[0].Dial+1e-9) {
			t.Fatalf("made by %+v, fitted %+v, rms %g degrees", law, got, rms)
		}
		if math.Abs(got.Index-law.Index) > 1e-4 {
			t.Fatalf("made by %+v, fitted %+v", law, got)
		}
	})
}

// TestNoNeighbourFitsBetter: whatever the readings, a step of any parameter leaves more.
func TestNoNeighbourFitsBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var given []Reading
		dial := 0.0
		for _, s := range []float64{3, 6, 100, 200, 300, 600} {
			dial += rapid.Float64Range(0, 30).Draw(t, "more")
			given = append(given, Reading{s, dial})
		}
		for name, fit := range fits {
			law, err := fit(given)
			if err != nil {
				continue
			}
			if law.Yield < 0 || law.Consistency <= 0 || law.Index < leastIndex || law.Index > mostIndex {
				t.Fatalf("%s: %+v", name, law)
			}
			rms, _, _ := law.Miss(given)
			for _, by := range []float64{1 - 1e-3, 1 + 1e-3} {
				near := []Law{{law.Yield, law.Consistency * by, law.Index}}
				if name != "power law" {
					near = append(near, Law{law.Yield * by, law.Consistency, law.Index}, Law{law.Yield + 1e-3, law.Consistency, law.Index})
				}
				if name != "Bingham" {
					near = append(near, Law{law.Yield, law.Consistency, law.Index * by})
				}
				for _, other := range near {
					if less, _, _ := other.Miss(given); less < rms*(1-1e-9)-1e-12 {
						t.Fatalf("%s: %+v leaves %.12g, %+v only %.12g", name, law, rms, other, less)
					}
				}
			}
		}
	})
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		name, fit, says string
		given           []Reading
	}{
		{"nothing", "Bingham", "2 speeds, there are 0", nil},
		{"one", "power law", "2 speeds, there are 1", []Reading{{600, 20}}},
		{"one speed twice", "Bingham", "there are 1", []Reading{{600, 20}, {600, 21}}},
		{"two for three", "Herschel-Bulkley", "3 speeds, there are 2", []Reading{{600, 20}, {300, 12}}},
		{"falling", "Bingham", "do not rise from 300 to 600", []Reading{{600, 12}, {300, 20}}},
		{"level", "Herschel-Bulkley", "do not rise", []Reading{{600, 12}, {300, 12}, {3, 12}}},
		{"below zero", "Bingham", "above zero", []Reading{{600, 12}, {300, -2}}},
		{"no number", "power law", "above zero", []Reading{{600, math.NaN()}, {300, 2}}},
		{"no speed", "power law", "above zero", []Reading{{0, 3}, {300, 2}}},
		{"too flat", "power law", "no index", []Reading{{600, 100}, {300, 99}, {6, 97}}},
		{"too steep", "power law", "no index", []Reading{{600, 100}, {300, 20}}},
	} {
		if law, err := fits[c.fit](c.given); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %+v, %v", c.name, law, err)
		}
	}
	if rms, greatest, at := (Law{1, 1, 1}).Miss(nil); rms != 0 || greatest != 0 || at != 0 {
		t.Error("a miss of no readings")
	}
}

func BenchmarkHerschelBulkley(b *testing.B) {
	given := readings([]float64{600, 300, 200, 100, 6, 3}, []float64{58, 40, 32, 23, 7, 5.5})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := HerschelBulkley(given); err != nil {
			b.Fatal(err)
		}
	}
}
