package friction

import (
	"math"
	"testing"

	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	foot   = 0.3048
	gallon = 231 * inch * inch * inch
	barrel = 42 * gallon
	pound  = 0.45359237
	psi    = pound * 9.80665 / (inch * inch)
	ppg    = pound / gallon
	yield  = pound * 9.80665 / (foot * foot) / 100 // lb/100ft²
)

type published struct {
	Example []struct {
		ID, Source, Where, Note string
		Seen                    bool
		TolerancePct            float64 `toml:"tolerance_pct"`
		Given, Expected         map[string]float64
	}
	System   map[string]any
	Disputed []map[string]any
}

// fluid reads a fluid in field units or in SI.
func fluid(given map[string]float64) Fluid {
	return Bingham(
		given["density_ppg"]*ppg+given["density_kg_per_m3"],
		(given["plastic_viscosity_cp"]+given["viscosity_cp"])/1000+given["viscosity_pa_s"],
		given["yield_point_lb_per_100ft2"]*yield,
	)
}

func TestPublishedExamples(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/friction.toml").Example {
		f := fluid(ex.Given)
		outer := ex.Given["outer_id_in"]*inch + ex.Given["diameter_m"]
		inner := ex.Given["inner_od_in"] * inch
		length := ex.Given["length_ft"]*foot + ex.Given["length_m"]
		flow := ex.Given["flow_gpm"]*gallon/60 + ex.Given["flow_bbl_per_min"]*barrel/60
		if v, ok := ex.Given["velocity_m_per_s"]; ok {
			flow = v * math.Pi / 4 * outer * outer
		}
		v := Velocity(flow, outer, inner)
		loss, apparent, diameter := BinghamSlot{}.Pipe(f, flow, outer), f.ApparentInPipe(v, outer), outer
		if inner > 0 {
			loss, apparent = BinghamSlot{}.Annulus(f, flow, outer, inner), f.ApparentInAnnulus(v, outer, inner)
			diameter = SlotDiameter(outer, inner)
		}
		got := map[string]float64{
			"velocity_ft_per_s":     v / foot,
			"velocity_ft_per_min":   v / foot * 60,
			"apparent_viscosity_cp": apparent * 1000,
			"reynolds":              Reynolds(f.Density, v, diameter, apparent),
			"reynolds_plastic":      Reynolds(f.Density, v, diameter, f.PlasticViscosity()),
			"hedstrom":              f.Hedstrom(diameter),
			"gradient_psi_per_ft":   loss / psi * foot,
			"pressure_loss_psi":     loss * length / psi,
			"pressure_drop_kpa":     loss * length / 1000,
			"darcy_f":               2 * loss * outer / (f.Density * v * v),
		}
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
}

func TestPublishedSystem(t *testing.T) {
	s := handbook.Load[published](t, "testdata/friction.toml").System
	n := func(name string) float64 { return s[name].(float64) }
	f := Bingham(n("density_ppg")*ppg, n("plastic_viscosity_cp")/1000, n("yield_point_lb_per_100ft2")*yield)
	flow := n("flow_gpm") * gallon / 60
	pipe, collar := n("drill_pipe_od_in")*inch, n("collar_od_in")*inch
	cased, hole := n("casing_id_in")*inch, n("hole_in")*inch
	var b BinghamSlot
	total := b.Pipe(f, flow, n("drill_pipe_id_in")*inch)*(n("drill_pipe_ft")+n("surface_equivalent_ft"))*foot +
		b.Pipe(f, flow, n("collar_id_in")*inch)*n("collar_ft")*foot +
		b.Annulus(f, flow, cased, pipe)*n("casing_ft")*foot +
		b.Annulus(f, flow, hole, pipe)*(n("hole_depth_ft")-n("casing_ft")-n("collar_ft"))*foot +
		b.Annulus(f, flow, hole, collar)*n("collar_ft")*foot
	if want := n("total_psi"); math.Abs(total/psi-want) > want*n("tolerance_pct")/100 {
		t.Errorf("whole system = %v psi, want %v (%v)", total/psi, want, s["source"])
	}
	if printed := n("misprinted_kpa"); math.Abs(total/1000-printed) < printed/100 {
		t.Errorf("whole system = %v kPa agrees with the misprint %v", total/1000, printed)
	}
}

func TestDisputedExamples(t *testing.T) {
	for _, d := range handbook.Load[published](t, "testdata/friction.toml").Disputed {
		n := func(name string) float64 { return d[name].(float64) }
		f := Newton(n("density_ppg")*ppg, n("plastic_viscosity_cp")/1000)
		got := BinghamSlot{}.Pipe(f, n("flow_gpm")*gallon/60, n("outer_id_in")*inch) * n("length_ft") * foot / psi
		within := n("tolerance_pct") / 100
		if want := n("blasius_psi"); math.Abs(got-want) > want*within {
			t.Errorf("%v = %v psi, want %v", d["id"], got, want)
		}
		if printed := n("printed_psi"); math.Abs(got-printed) < printed*within {
			t.Errorf("%v = %v psi agrees with the printed %v, which it should not (%v)", d["id"], got, printed, d["note"])
		}
	}
}

// TestPassage holds the three regimes to their formulas, and the ends of the
// passage between them to each other.
func TestPassage(t *testing.T) {
	const d = 0.1
	water := Newton(1000, 0.001)
	at := func(re float64) float64 { return re * 0.001 / (1000 * d) * math.Pi / 4 * d * d }
	for _, c := range []struct{ re, fanning float64 }{
		{100, 0.16}, {2100, 16 / 2100.0}, {4000, 0.0791 / math.Pow(4000, 0.25)}, {1e5, 0.0791 / math.Pow(1e5, 0.25)},
		{3050, (16/3050.0 + 0.0791/math.Pow(3050, 0.25)) / 2}, // half way
	} {
		v := c.re * 0.001 / (1000 * d)
		want := 2 * c.fanning * 1000 * v * v / d
		if got := (BinghamSlot{}).Pipe(water, at(c.re), d); math.Abs(got-want) > 1e-12*want+1e-12 {
			t.Errorf("Reynolds number %v: %v Pa/m, want %v", c.re, got, want)
		}
	}
	thick := Bingham(1900, 0.05, 30)
	flow := 0.03
	v := Velocity(flow, 0.3, 0.28)
	if re := Reynolds(1900, v, SlotDiameter(0.3, 0.28), thick.ApparentInAnnulus(v, 0.3, 0.28)); re > LaminarBelow {
		t.Fatalf("thick fluid: Reynolds number %v is no laminar case", re)
	}
	if got, want := (BinghamSlot{}).Annulus(thick, flow, 0.3, 0.28), 48*0.05*v/(0.02*0.02)+6*30/0.02; math.Abs(got-want) > 1e-9*want {
		t.Errorf("thick fluid in a narrow annulus: %v Pa/m, want %v", got, want)
	}
}

func TestOutsideTheDomain(t *testing.T) {
	mud := Bingham(1250, 0.018, 10)
	nan, inf := math.NaN(), math.Inf(1)
	var b BinghamSlot
	for name, got := range map[string]float64{
		"no flow in a pipe":       b.Pipe(mud, 0, 0.1),
		"no flow in an annulus":   b.Annulus(mud, 0, 0.3, 0.1),
		"no pipe":                 b.Pipe(mud, 0.01, 0),
		"no gap":                  b.Annulus(mud, 0.01, 0.1, 0.1),
		"flow no number":          b.Pipe(mud, nan, 0.1),
		"flow endless":            b.Pipe(mud, inf, 0.1),
		"flow beyond all numbers": b.Pipe(mud, 1e300, 0.1),
		"diameter no number":      b.Annulus(mud, 0.01, nan, 0.1),
		"viscosity below zero":    b.Pipe(Bingham(1250, -1, 10), 0.01, 0.1),
		"density no number":       b.Pipe(Bingham(nan, 0.02, 10), 0.01, 0.1),
		"slot without gap":        SlotDiameter(0.1, 0.2),
		"Reynolds, no viscosity":  Reynolds(1000, 1, 0.1, 0),
		"Hedstrom, no viscosity":  Bingham(1000, 0, 10).Hedstrom(0.1),
		"velocity without room":   Velocity(1, 0.1, 0.2),
	} {
		if got != 0 {
			t.Errorf("%s: %v, want 0", name, got)
		}
	}
	if got, want := mud.ApparentInPipe(0, 0.1), 0.018; got != want {
		t.Errorf("apparent viscosity at rest = %v, want %v", got, want)
	}
	if got, want := mud.ApparentInAnnulus(0, 0.2, 0.1), 0.018; got != want {
		t.Errorf("apparent viscosity at rest in the annulus = %v, want %v", got, want)
	}
	if got := b.Annulus(mud, 0.01, 0.2, 0); got != b.Pipe(mud, 0.01, 0.2) {
		t.Errorf("annulus without a body = %v, want that of the pipe", got)
	}
}
