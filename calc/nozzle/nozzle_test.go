package nozzle

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	foot   = 0.3048
	gallon = 231 * inch * inch * inch
	gpm    = gallon / 60
	pound  = 0.45359237
	ppg    = pound / gallon
	lbf    = pound * 9.80665
	psi    = lbf / (inch * inch)
	hp     = 550 * foot * lbf
)

type example struct {
	ID, Source, Where, Note     string
	Seen                        bool
	TolerancePct                float64 `toml:"tolerance_pct"`
	Given, Expected, Recomputed map[string]float64
}

// worked does what an example asks for with the functions of the package.
func worked(g map[string]float64) map[string]float64 {
	set := Set{{int(g["count"]), int(g["size"])}}
	rho, q1, p1 := g["density_ppg"]*ppg, g["flow_gpm"]*gpm, g["pump_pressure_psi"]*psi
	q2, p2 := g["flow_2_gpm"]*gpm, g["pressure_2_psi"]*psi
	area := set.Area()
	drop, v := Drop(rho, q1, area, Discharge), Velocity(q1, area)
	rest1, rest2 := p1-drop, p2-Drop(rho, q2, area, Discharge)
	m := Slope(q1, rest1, q2, rest2)
	hole := math.Pi / 4 * g["bit_in"] * g["bit_in"] // in2
	return map[string]float64{
		"tfa_in2":                 area / (inch * inch),
		"bit_pressure_drop_psi":   drop / psi,
		"bit_loss_2_psi":          (p2 - rest2) / psi,
		"parasitic_1_psi":         rest1 / psi,
		"parasitic_2_psi":         rest2 / psi,
		"pump_power_hp":           Power(p1, q1) / hp,
		"bit_power_hp":            Power(drop, q1) / hp,
		"hsi_hp_per_in2":          Power(drop, q1) / hp / hole,
		"bit_share_pct":           drop / p1 * 100,
		"jet_velocity_ft_per_s":   v / foot,
		"impact_force_qv_lbf":     Impact(rho, q1, v) / lbf,
		"impact_qv_lbf_per_in2":   Impact(rho, q1, v) / lbf / hole,
		"slope_m":                 m,
		"parasitic_opt_power_psi": PowerShare(m) * p1 / psi,
		"bit_opt_power_psi":       (1 - PowerShare(m)) * p1 / psi,
		"parasitic_opt_impact_psi": ImpactShare(m) * p1 /
			psi,
		"bit_opt_impact_psi":  (1 - ImpactShare(m)) * p1 / psi,
		"flow_opt_power_gpm":  FlowFor(PowerShare(m)*p1, q1, rest1, m) / gpm,
		"flow_opt_impact_gpm": FlowFor(ImpactShare(m)*p1, q1, rest1, m) / gpm,
		"bit_divisor_cd_1":    psi / Drop(ppg, gpm, inch*inch, 1),
		"bit_divisor_cd_095":  psi / Drop(ppg, gpm, inch*inch, 0.95),
		"jet_velocity_factor": Velocity(gpm, inch*inch) / foot,
		"power_divisor":       hp / Power(psi, gpm),
		"impact_divisor":      lbf / Impact(ppg, gpm, foot),
	}
}

func TestPublishedBits(t *testing.T) {
	data := handbook.Load[struct{ Example, Disputed []example }](t, "testdata/bit.toml")
	if len(data.Example) != 6 || len(data.Disputed) != 1 {
		t.Fatalf("%d examples, %d disputed", len(data.Example), len(data.Disputed))
	}
	for _, ex := range data.Example {
		got := worked(ex.Given)
		if len(ex.Expected) == 0 {
			t.Errorf("%s: nothing expected", ex.ID)
		}
		for name, want := range ex.Expected {
			if value, ok := got[name]; !ok || !handbook.Within(value, want, ex.TolerancePct) {
				t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
	for _, ex := range data.Disputed {
		got := worked(ex.Given)
		for name, want := range ex.Recomputed {
			if !handbook.Within(got[name], want, 1e-6) {
				t.Errorf("%s: %s = %v, want %v: %s", ex.ID, name, got[name], want, ex.Note)
			}
			if handbook.Within(got[name], ex.Expected[name], ex.TolerancePct) {
				t.Errorf("%s: %s = %v meets the printed %v, which it should not: %s", ex.ID, name, got[name], ex.Expected[name], ex.Note)
			}
		}
	}
}

func TestNozzlesAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"3x16 2x18":       "3x16 2x18",
		"16 16 18":        "1x16 1x16 1x18",
		"3 x 16, 2 X 18":  "3x16 2x18",
		"3×16/32 + 1x9":   "3x16 1x9",
		"":                "",
		"  5x12  ":        "5x12",
		"12/32,12/32":     "1x12 1x12",
		"1x22 7x14\t2x13": "1x22 7x14 2x13",
	} {
		set, err := Read(text)
		if err != nil || set.String() != want {
			t.Errorf("Read(%q) = %q, %v, want %q", text, set, err, want)
		}
	}
	for text, part := range map[string]string{
		"3x": "no nozzle", "x16": "no number", "three": "no nozzle", "0x16": "no number", "3x0": "no nozzle", "3x99": "no nozzle",
		"16.5": "no nozzle", "99x16": "no number", "20x10 20x11": "more than 30", "-3x16": "no number", "3x16x2": "no nozzle",
		"9999999999999999999999": "no nozzle",
	} {
		if set, err := Read(text); err == nil || !strings.Contains(err.Error(), part) || set != nil {
			t.Errorf("Read(%q) = %v, %v, want an error that holds %q", text, set, err, part)
		}
	}
}

// Three 16s: 3 × pi/4 × (1/2 in)², by hand 0.5890 in².
func TestAreaByHand(t *testing.T) {
	if got, want := (Set{{3, 16}}).Area(), 3*math.Pi/16*inch*inch; math.Abs(got-want) > 1e-15 {
		t.Errorf("area of 3x16 = %v, want %v", got, want)
	}
	if got := (Set)(nil).Area(); got != 0 {
		t.Errorf("no nozzle has %v m²", got)
	}
}

func TestOutsideTheDomain(t *testing.T) {
	for name, got := range map[string]float64{
		"drop without an area":      Drop(1000, 0.05, 0, 0.95),
		"drop without a coeff.":     Drop(1000, 0.05, 1e-3, 0),
		"area without a loss":       Area(1000, 0.05, 0, 0.95),
		"area below no loss":        Area(1000, 0.05, -1, 0.95),
		"slope of one rate":         Slope(0.05, 1e7, 0.05, 2e7),
		"slope without a loss":      Slope(0.05, 0, 0.03, 1e6),
		"slope of no flow":          Slope(0, 1e7, 0.03, 1e6),
		"slope of a loss below one": Slope(0.05, 1e7, 0.03, -1e6),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s = %v, want no number", name, got)
		}
	}
	for name, ok := range map[string]bool{
		"no limit":        second(Optimum(0.5, 0, 1, 1, 2, 0, 1)),
		"no slope":        second(Optimum(0.5, 1, 1, 1, math.NaN(), 0, 1)),
		"no range":        second(Optimum(0.5, 1, 1, 1, 2, 2, 1)),
		"nothing is left": second(Optimum(0.5, 1e6, 0.05, 2e6, 1.8, 0.05, 0.06)),
	} {
		if ok {
			t.Errorf("%s: a split all the same", name)
		}
	}
}

func second(_ Split, ok bool) bool { return ok }
