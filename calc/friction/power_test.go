package friction

import (
	"math"
	"testing"

	"borewalk/model/handbook"
)

type powerExamples struct {
	Power []struct {
		ID, Source, Where, Note string
		Seen                    bool
		TolerancePct            float64 `toml:"tolerance_pct"`
		Flow                    float64 `toml:"flow_gpm"`
		Velocity                float64 `toml:"velocity_ft_per_min"`
		Density                 float64 `toml:"density_ppg"`
		KCentipoise             float64 `toml:"k_eq_cp"`
		KDial                   float64 `toml:"k_dial"`
		N                       float64
		Outer                   float64 `toml:"outer_id_in"`
		Inner                   float64 `toml:"inner_od_in"`
		Length                  float64 `toml:"length_ft"`
		Expected, Misprinted    map[string]float64
	}
	EquivalentPipe []struct {
		ID, Source, Where, Note string
		Seen                    bool
		TolerancePct            float64 `toml:"tolerance_pct"`
		Flow                    float64 `toml:"flow_gpm"`
		Density                 float64 `toml:"density_ppg"`
		PV                      float64 `toml:"plastic_viscosity_cp"`
		YP                      float64 `toml:"yield_point_lb_per_100ft2"`
		Outer                   float64 `toml:"outer_id_in"`
		Inner                   float64 `toml:"inner_od_in"`
		Expected                map[string]float64
	} `toml:"equivalent_pipe"`
}

// TestPublishedPowerLaw holds both correlations that take the whole law to worked examples of power-law fluids, and away
// from what is misprinted in them.
func TestPublishedPowerLaw(t *testing.T) {
	list := handbook.Load[powerExamples](t, "testdata/power.toml").Power
	if len(list) != 3 {
		t.Fatalf("%d examples", len(list))
	}
	for _, ex := range list {
		f := PowerLaw(ex.Density*ppg, ex.KCentipoise/1000+ex.KDial*yield, ex.N)
		outer, inner := ex.Outer*inch, ex.Inner*inch
		flow := ex.Flow*gallon/60 + ex.Velocity*foot/60*math.Pi/4*(outer*outer-inner*inner)
		for _, c := range []Correlation{RP13D{}, DodgeMetzner{}} {
			at := c.InAnnulus(f, flow, outer, inner)
			got := map[string]float64{
				"reynolds_slot": at.Reynolds * math.Sqrt(1.5), "gradient_psi_per_ft": at.Loss / psi * foot, "pressure_loss_psi": at.Loss * ex.Length * foot / psi,
			}
			for name, want := range ex.Expected {
				if value, ok := got[name]; !ok || !(math.Abs(value-want) <= want*ex.TolerancePct/100) {
					t.Errorf("%s by %s: %s = %v, want %v within %v %% (%s)", ex.ID, c.Name(), name, value, want, ex.TolerancePct, ex.Source)
				}
			}
			for name, printed := range ex.Misprinted {
				if value := got[name]; math.Abs(value-printed) < printed*0.02 {
					t.Errorf("%s by %s: %s = %v agrees with the misprint (%s)", ex.ID, c.Name(), name, value, ex.Note)
				}
			}
		}
	}
}

func TestPublishedEquivalentPipe(t *testing.T) {
	for _, ex := range handbook.Load[powerExamples](t, "testdata/power.toml").EquivalentPipe {
		f := Bingham(ex.Density*ppg, ex.PV/1000, ex.YP*yield)
		v := Velocity(ex.Flow*gallon/60, ex.Outer*inch, ex.Inner*inch)
		d := SlotDiameter(ex.Outer*inch, ex.Inner*inch)
		apparent := f.ApparentInPipe(v, d)
		got := map[string]float64{
			"velocity_ft_per_s": v / foot, "equivalent_diameter_in": d / inch, "apparent_viscosity_cp": apparent * 1000,
			"reynolds": Reynolds(f.Density, v, d, apparent),
		}
		for name, want := range ex.Expected {
			if value, ok := got[name]; !ok || !(math.Abs(value-want) <= want*ex.TolerancePct/100) {
				t.Errorf("%s: %s = %v, want %v within %v %%", ex.ID, name, value, want, ex.TolerancePct)
			}
		}
	}
}
