package state

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	foot   = 0.3048
	gallon = 231 * inch * inch * inch
	pound  = 0.45359237
	psi    = pound * gravity / (inch * inch)
	ppg    = pound / gallon
)

type example struct {
	ID, Source, Where string
	Seen              bool
	TolerancePct      float64 `toml:"tolerance_pct"`
	Given, Expected   map[string]float64
}

// check fails the test unless every printed answer is met.
func (ex example) check(t *testing.T, got map[string]float64) {
	t.Helper()
	if len(ex.Expected) == 0 {
		t.Errorf("%s: nothing expected", ex.ID)
	}
	for name, want := range ex.Expected {
		value, ok := got[name]
		if !ok || !(math.Abs(value-want) <= want*ex.TolerancePct/100) {
			t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
		}
	}
}

type published struct{ Differential, Lift []example }

const (
	boreArea = 0.05 // m² of the annulus of the plain well
	pipeArea = 0.03 // m² of its string's bore
)

// plain is a vertical well of one bore and one string down to its bottom, returns
// at the rotary, full of the first of the fluids.
func plain(t *testing.T, depth float64, fluids ...Fluid) *Well {
	t.Helper()
	const od = 0.25
	hole := math.Sqrt(od*od + boreArea*4/math.Pi)
	id := math.Sqrt(pipeArea * 4 / math.Pi)
	w, err := New(Layout{
		Bore:   bore.Profile{{Top: 0, Bottom: depth, Diameter: hole}},
		String: []bore.Body{{Top: 0, Bottom: depth, OD: od, ID: id}},
		TVD:    func(md float64) float64 { return md },
	}, fluids, 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// of is a fluid of a density without viscosity.
func of(name string, density float64) Fluid {
	return Fluid{name, friction.Fluid{Density: density}}
}

// must pumps a volume that has to go in.
func must(t *testing.T, w *Well, volume float64, fluid int) {
	t.Helper()
	if pumped, err := w.Pump(volume, fluid); err != nil || math.Abs(pumped-volume) > 1e-9 {
		t.Fatalf("Pump(%v, %d) = %v, %v", volume, fluid, pumped, err)
	}
}

func pressure(t *testing.T, w *Well, c Conduit, md float64) float64 {
	t.Helper()
	p, ok := w.Pressure(c, md)
	if !ok {
		t.Fatalf("no pressure %v at %v", c, md)
	}
	return p
}

func TestPublishedDifferential(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/cementing.toml").Differential {
		g := ex.Given
		depth := g["well_depth_ft"] * foot
		lead, tail := g["lead_length_ft"]*foot, g["tail_length_ft"]*foot
		track := g["shoe_track_ft"] * foot
		w := plain(t, depth, of("mud", g["mud_weight_ppg"]*ppg), of("lead", g["lead_ppg"]*ppg), of("tail", g["tail_ppg"]*ppg))
		must(t, w, lead*boreArea, 1)
		must(t, w, tail*boreArea+track*pipeArea, 2)
		must(t, w, (depth-track)*pipeArea, 0)
		topOfLead, topOfTail := depth-tail-lead, depth-tail
		mud := pressure(t, w, Annulus, topOfLead)
		cement := pressure(t, w, Annulus, topOfTail)
		total := pressure(t, w, Annulus, depth)
		collar := pressure(t, w, Inside, depth-track) - w.Balance()
		ex.check(t, map[string]float64{
			"mud_psi":           mud / psi,
			"lead_psi":          (cement - mud) / psi,
			"tail_psi":          (total - cement) / psi,
			"annulus_total_psi": total / psi,
			"casing_mud_psi":    collar / psi,
			"casing_total_psi":  (pressure(t, w, Inside, depth) - w.Balance()) / psi,
			"differential_psi":  w.Differential() / psi,
		})
	}
}

func TestPublishedLiftPressure(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/cementing.toml").Lift {
		g := ex.Given
		depth := g["depth_ft"] * foot
		w := plain(t, depth, of("mud", g["mud_ppg"]*ppg), of("flush", g["flush_ppg"]*ppg),
			of("lead", g["lead_ppg"]*ppg), of("tail", g["tail_ppg"]*ppg), of("brine", g["brine_ppg"]*ppg))
		must(t, w, g["flush_length_ft"]*foot*boreArea, 1)
		must(t, w, g["lead_length_ft"]*foot*boreArea, 2)
		must(t, w, g["tail_length_ft"]*foot*boreArea, 3)
		must(t, w, depth*pipeArea, 4)
		if top, ok := w.Top(Annulus, 1); !ok || math.Abs(top-g["mud_length_ft"]*foot) > 1e-6 {
			t.Errorf("%s: top of flush %v m, want %v", ex.ID, top, g["mud_length_ft"]*foot)
		}
		ex.check(t, map[string]float64{"pump_pressure_psi": w.PumpPressure() / psi})
	}
}
