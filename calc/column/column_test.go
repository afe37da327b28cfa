package column

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	foot = 0.3048
	inch = 0.0254
	lb   = 0.45359237
	ppg  = lb / (231 * inch * inch * inch)
	psi  = lb * G / (inch * inch)
)

// gradient is the density in kg/m³ of a fluid of 1 psi/ft.
const gradient = psi / foot / G

type example struct {
	ID, Source, Where, Note     string
	Seen                        bool
	TolerancePct                float64 `toml:"tolerance_pct"`
	Given, Expected, Recomputed map[string]float64
}

func load(t *testing.T) (examples, disputed []example) {
	t.Helper()
	data := handbook.Load[struct{ Example, Disputed []example }](t, "testdata/hydrostatics.toml")
	return data.Example, data.Disputed
}

// A work does an example with this package.
type work func(t *testing.T, g map[string]float64) map[string]float64

// works says by the id of an example how it is done.
func works() map[string]work {
	return map[string]work{
		"pressure-12.2-ppg-3700-m":  onePressure,
		"pressure-80-pcf":           onePressure,
		"pressure-12-ppg-5000-m":    onePressure,
		"density-from-gradient":     densityOfPressure,
		"density-for-pore-pressure": densityOfPressure,
		"circulating-density":       densityOfPressure,
		"gas-cap":                   gasCap,
		"level-drop-by-losses":      levelDrop,
		"pulling-dry-5-stands":      levelDrop,
		"pulling-wet-5-stands":      levelDrop,
		"pulling-dry-10-stands":     levelDrop,
		"gas-cut-mud":               gasCut,
		"water-on-mud-6000-ft":      waterOnMud,
		"water-on-mud-10000-ft":     waterOnMud,
		"heaviest-mud-with-returns": heaviestMud,
		"shallowest-conductor":      shallowestConductor,
		"brine-annulus":             brineAnnulus,
		"cement-on-mud":             cement,
		"cement-against-mud":        cement,
		"riser-margin":              riserMargin,
	}
}

func TestPublishedHydrostatics(t *testing.T) {
	examples, disputed := load(t)
	for _, ex := range examples {
		t.Run(ex.ID, func(t *testing.T) {
			do, ok := works()[ex.ID]
			if !ok || len(ex.Expected) == 0 {
				t.Fatal("nothing done or nothing expected")
			}
			got := do(t, ex.Given)
			for name, want := range ex.Expected {
				value, ok := got[name]
				if !ok || !handbook.Within(value, want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v within %v %% (%s)", name, value, want, ex.TolerancePct, ex.Source)
				}
			}
		})
	}
	for _, ex := range disputed {
		t.Run(ex.ID, func(t *testing.T) {
			got := works()[ex.ID](t, ex.Given)
			for name, want := range ex.Recomputed {
				if !handbook.Within(got[name], want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v: %s", name, got[name], want, ex.Note)
				}
				if handbook.Within(got[name], ex.Expected[name], ex.TolerancePct) {
					t.Errorf("%s = %v meets the wrong printed answer: %s", name, got[name], ex.Note)
				}
			}
		})
	}
}

func stack(t *testing.T, surface float64, layers ...Layer) Stack {
	t.Helper()
	s, err := NewStack(surface, layers...)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func pressure(t *testing.T, s Stack, tvd float64) float64 {
	t.Helper()
	p, ok := s.Pressure(tvd)
	if !ok {
		t.Fatalf("Pressure(%v) is outside the stack", tvd)
	}
	return p
}

func onePressure(t *testing.T, g map[string]float64) map[string]float64 {
	tvd := g["tvd_m"] + g["tvd_ft"]*foot
	density := g["mud_weight_ppg"]*ppg + g["mud_weight_lb_per_ft3"]*lb/(foot*foot*foot)
	column := pressure(t, stack(t, 0, Layer{0, tvd, density, "mud"}), tvd)
	if other := PressureOf(density, tvd); !handbook.Within(other, column, 1e-10) {
		t.Errorf("PressureOf = %v, the stack gives %v", other, column)
	}
	return map[string]float64{"pressure_psi": column / psi}
}

func densityOfPressure(t *testing.T, g map[string]float64) map[string]float64 {
	tvd, p := foot, g["gradient_psi_per_ft"]*psi
	if d, ok := g["depth_ft"]; ok {
		tvd, p = d*foot, g["pore_pressure_psi"]*psi
	}
	if d, ok := g["annular_loss_psi"]; ok {
		tvd = g["tvd_ft"] * foot
		p = PressureOf(g["mud_weight_ppg"]*ppg, tvd) + d*psi
	}
	emw, ok := EMW(p, tvd)
	if !ok {
		t.Fatalf("EMW(%v, %v) has no value", p, tvd)
	}
	return map[string]float64{"mud_weight_ppg": emw / ppg, "ecd_ppg": emw / ppg}
}

func gasCap(t *testing.T, g map[string]float64) map[string]float64 {
	top, contact := g["top_depth_ft"]*foot, g["contact_depth_ft"]*foot
	water := stack(t, 0, Layer{0, contact, g["water_gradient_psi_per_ft"] * gradient, "water"})
	gas, err := RestingOn(pressure(t, water, contact), Layer{top, contact, g["gas_gradient_psi_per_ft"] * gradient, "gas"})
	if err != nil {
		t.Fatal(err)
	}
	return map[string]float64{"top_pressure_psi": pressure(t, gas, top) / psi}
}

// levelDrop lowers the mud level by a volume lost, or by steel pulled dry or wet,
// and looks at the pressure far below.
func levelDrop(t *testing.T, g map[string]float64) map[string]float64 {
	lost := g["loss_rate_bbl_per_h"] * g["time_h"]
	pulled := g["pipe_displacement_bbl_per_ft"] + g["pipe_capacity_bbl_per_ft"]
	lost += g["stands"] * g["stand_length_ft"] * pulled
	room := g["hole_capacity_bbl_per_ft"] + g["casing_capacity_bbl_per_ft"] - pulled
	drop := lost / room * foot
	const tvd = 3000
	mud := g["mud_weight_ppg"] * ppg
	full := pressure(t, stack(t, 0, Layer{0, tvd, mud, ""}), tvd)
	low := pressure(t, stack(t, 0, Layer{drop, tvd, mud, ""}), tvd)
	return map[string]float64{"bhp_loss_psi": (full - low) / psi, "hp_decrease_psi": (full - low) / psi}
}

// gasCut is the formula of the source: the mud pushed out by the gas would have
// stood on the bottom.
func gasCut(t *testing.T, g map[string]float64) map[string]float64 {
	hole, pipe := g["hole_mm"]/1000, g["pipe_od_mm"]/1000
	height := g["pit_gain_m3"] / (math.Pi / 4 * (hole*hole - pipe*pipe))
	return map[string]float64{"hp_decrease_kPa": PressureOf(g["mud_density_kg_per_m3"], height) / 1000}
}

func waterOnMud(t *testing.T, g map[string]float64) map[string]float64 {
	tvd := g["tvd_ft"] * foot
	height := g["water_added_bbl"] / g["annular_capacity_bbl_per_ft"] * foot
	mud := g["mud_weight_ppg"] * ppg
	s := stack(t, 0, Layer{0, height, g["water_weight_ppg"] * ppg, "water"}, Layer{height, tvd, mud, "mud"})
	emw, ok := s.EMW(tvd)
	if !ok {
		t.Fatal("no equivalent density")
	}
	return map[string]float64{
		"water_height_ft":   height / foot,
		"bhp_reduction_psi": (PressureOf(mud, tvd) - pressure(t, s, tvd)) / psi,
		"emw_at_td_ppg":     emw / ppg,
	}
}

// formation is the sea on a formation whose fracture gradient counts from the
// seabed: the strength at a depth is the pressure under it.
func formation(t *testing.T, g map[string]float64, bottom float64) Stack {
	t.Helper()
	airGap := g["air_gap_ft"] * foot
	mudline := airGap + g["water_depth_ft"]*foot
	s, err := Riserless(airGap, mudline, g["seawater_gradient_psi_per_ft"]*gradient,
		Layer{mudline, bottom, g["fracture_gradient_psi_per_ft"] * gradient, "formation"})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func heaviestMud(t *testing.T, g map[string]float64) map[string]float64 {
	shoe := g["shoe_depth_rkb_ft"] * foot
	s := formation(t, g, shoe)
	emw, ok := s.EMW(shoe)
	if !ok {
		t.Fatal("no equivalent density")
	}
	return map[string]float64{"strength_at_shoe_psi": pressure(t, s, shoe) / psi, "max_mud_weight_ppg": emw / ppg}
}

// shallowestConductor goes down until the formation carries the mud.
func shallowestConductor(t *testing.T, g map[string]float64) map[string]float64 {
	s := formation(t, g, 1000)
	mud := g["mud_weight_ppg"] * ppg
	mudline := (g["air_gap_ft"] + g["water_depth_ft"]) * foot
	low, high := mudline, 1000.0
	for range 60 {
		if mid := (low + high) / 2; pressure(t, s, mid) < PressureOf(mud, mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return map[string]float64{
		"mud_pressure_at_mudline_psi":      PressureOf(mud, mudline) / psi,
		"seawater_pressure_at_mudline_psi": pressure(t, s, mudline) / psi,
		"penetration_below_mudline_ft":     (high - mudline) / foot,
		"setting_depth_rkb_ft":             high / foot,
	}
}

// brineAnnulus works with absolute pressures, as the source does.
func brineAnnulus(t *testing.T, g map[string]float64) map[string]float64 {
	tvd := g["depth_ft"] * foot
	s := stack(t, g["atmosphere_psi"]*psi, Layer{0, tvd, g["brine_ppg"] * ppg, "brine"})
	return map[string]float64{"annulus_pressure_psia": pressure(t, s, tvd) / psi}
}

func cement(t *testing.T, g map[string]float64) map[string]float64 {
	shoe := g["well_depth_ft"] * foot
	tail := shoe - g["tail_length_ft"]*foot
	lead := tail - g["lead_length_ft"]*foot
	collar := shoe - g["shoe_track_ft"]*foot
	mud := g["mud_weight_ppg"] * ppg
	annulus := stack(t, 0, Layer{0, lead, mud, "mud"}, Layer{lead, tail, g["lead_ppg"] * ppg, "lead"}, Layer{tail, shoe, g["tail_ppg"] * ppg, "tail"})
	casing := stack(t, 0, Layer{0, collar, mud, "mud"}, Layer{collar, shoe, g["tail_ppg"] * ppg, "tail"})
	at := func(s Stack, tvd float64) float64 { return pressure(t, s, tvd) / psi }
	return map[string]float64{
		"mud_psi":            at(annulus, lead),
		"lead_psi":           at(annulus, tail) - at(annulus, lead),
		"tail_psi":           at(annulus, shoe) - at(annulus, tail),
		"annulus_total_psi":  at(annulus, shoe),
		"casing_mud_psi":     at(casing, collar),
		"casing_total_psi":   at(casing, shoe),
		"differential_psi":   at(annulus, shoe) - at(casing, shoe),
		"tail_in_casing_psi": at(casing, shoe) - at(casing, collar),
	}
}

func riserMargin(t *testing.T, g map[string]float64) map[string]float64 {
	tvd, mudline := g["tvd_ft"]*foot, g["riser_length_ft"]*foot
	airGap := mudline - g["water_depth_ft"]*foot
	pore := PressureOf(g["formation_emw_ppg"]*ppg, tvd)
	density, ok := DensityBelowSea(airGap, mudline, g["seawater_ppg"]*ppg, pore, tvd)
	if !ok {
		t.Fatal("no density")
	}
	s, err := Riserless(airGap, mudline, g["seawater_ppg"]*ppg, Layer{mudline, tvd, density, "mud"})
	if err != nil {
		t.Fatal(err)
	}
	if got := pressure(t, s, tvd); !handbook.Within(got, pore, 1e-9) {
		t.Errorf("that density under the sea gives %v Pa, want %v", got, pore)
	}
	return map[string]float64{"riser_margin_ppg": density/ppg - g["formation_emw_ppg"]}
}

func TestStack(t *testing.T) {
	s := stack(t, 1e5, Layer{10, 100, 1000, "a"}, Layer{100, 100, 5000, "none"}, Layer{100, 300, 1500, "b"})
	cases := []struct {
		tvd, pressure float64
		label         string
	}{
		{10, 1e5, "a"},
		{100, 1e5 + 90*1000*G, "b"},
		{300, 1e5 + 90*1000*G + 200*1500*G, "b"},
		{200, 1e5 + 90*1000*G + 100*1500*G, "b"},
		{55, 1e5 + 45*1000*G, "a"},
	}
	for _, c := range cases {
		if got := pressure(t, s, c.tvd); math.Abs(got-c.pressure) > 1e-6 {
			t.Errorf("Pressure(%v) = %v, want %v", c.tvd, got, c.pressure)
		}
		if layer, ok := s.At(c.tvd); !ok || layer.Label != c.label {
			t.Errorf("At(%v) = %+v, %v, want %q", c.tvd, layer, ok, c.label)
		}
	}
	for _, tvd := range []float64{9.99, 300.01, math.NaN(), math.Inf(1)} {
		if p, ok := s.Pressure(tvd); ok || p != 0 {
			t.Errorf("Pressure(%v) = %v, %v, want none", tvd, p, ok)
		}
		if e, ok := s.EMW(tvd); ok || e != 0 {
			t.Errorf("EMW(%v) = %v, %v, want none", tvd, e, ok)
		}
		if l, ok := s.At(tvd); ok {
			t.Errorf("At(%v) = %+v, want none", tvd, l)
		}
	}
	if got := s.AppendBreaks([]float64{1}); len(got) != 4 || got[1] != 10 || got[2] != 100 || got[3] != 300 {
		t.Errorf("AppendBreaks = %v, want 1 10 100 300", got)
	}
	var none Stack
	if _, ok := none.Pressure(0); ok || none.Top() != 0 || none.Bottom() != 0 || len(none.AppendBreaks(nil)) != 0 {
		t.Error("the zero stack is not empty")
	}
}

func TestEMW(t *testing.T) {
	for _, bad := range [][2]float64{{1e5, 0}, {1e5, -1}, {1e5, math.NaN()}, {math.NaN(), 1}, {1, math.Inf(1)}, {1e300, 1e-300}} {
		if got, ok := EMW(bad[0], bad[1]); ok || got != 0 {
			t.Errorf("EMW(%v, %v) = %v, want none", bad[0], bad[1], got)
		}
	}
	for _, bad := range [][2]float64{{1000, 0}, {1000, -5}, {1000, math.NaN()}, {math.NaN(), 5}, {1000, math.Inf(1)}} {
		if got := PressureOf(bad[0], bad[1]); got != 0 {
			t.Errorf("PressureOf(%v, %v) = %v, want 0", bad[0], bad[1], got)
		}
	}
	for _, bad := range [][5]float64{{10, 5, 1, 1, 20}, {0, 100, 1, 1, 100}, {0, 100, 1, math.NaN(), 200}, {math.NaN(), 1, 1, 1, 2}} {
		if got, ok := DensityBelowSea(bad[0], bad[1], bad[2], bad[3], bad[4]); ok || got != 0 {
			t.Errorf("DensityBelowSea(%v) = %v, want none", bad, got)
		}
	}
}

func TestStackSaysWhatIsWrong(t *testing.T) {
	nan := math.NaN()
	one := func(_ Stack, err error) error { return err }
	cases := []struct {
		err  error
		want []string
	}{
		{one(NewStack(0)), []string{"no layer"}},
		{one(NewStack(0, Layer{5, 5, 1000, ""})), []string{"no layer has any thickness"}},
		{one(NewStack(nan, Layer{0, 5, 1000, ""})), []string{"pressure at the top"}},
		{one(RestingOn(nan, Layer{0, 5, 1000, ""})), []string{"pressure at the bottom"}},
		{one(RestingOn(0)), []string{"no layer"}},
		{one(NewStack(0, Layer{0, nan, 1000, ""})), []string{"layer 1", "not a number"}},
		{one(NewStack(0, Layer{0, 5, 1000, ""}, Layer{5, 4, 1000, "mud"})), []string{"layer 2", `"mud"`, "4.00 m", "5.00 m"}},
		{one(NewStack(0, Layer{0, 5, -1, ""})), []string{"layer 1", "density -1"}},
		{one(NewStack(0, Layer{0, 5, nan, ""})), []string{"layer 1", "density"}},
		{one(NewStack(0, Layer{0, 5, 1, ""}, Layer{6, 7, 1, ""})), []string{"layer 2", "6.00 m", "layer 1", "5.00 m", "meet"}},
		{one(NewStack(0, Layer{0, 1e300, 1e300, ""})), []string{"beyond all numbers"}},
		{one(Riserless(-1, 10, 1030)), []string{"air gap"}},
		{one(Riserless(20, 10, 1030)), []string{"seabed at 10.00 m", "20.00 m"}},
		{one(Riserless(20, nan, 1030)), []string{"seabed"}},
		{one(Riserless(20, 100, 1030, Layer{101, 200, 1000, ""})), []string{"layer 2", "101.00 m"}},
	}
	for i, c := range cases {
		complains(t, i, c.err, c.want)
	}
}

func complains(t *testing.T, i int, err error, want []string) {
	t.Helper()
	if err == nil {
		t.Errorf("case %d: no error, want one that holds %q", i, want)
		return
	}
	for _, part := range want {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("case %d: the error says %q, want it to hold %q", i, err, part)
		}
	}
}

func TestCurve(t *testing.T) {
	rows := []Row{{368, 957}, {400, 1025}, {448, 1105}}
	c, err := NewCurve(rows)
	if err != nil {
		t.Fatal(err)
	}
	rows[0].Value = 0 // the curve has its own copy
	for tvd, want := range map[float64]float64{368: 957, 384: 991, 400: 1025, 424: 1065, 448: 1105} {
		if got, ok := c.At(tvd); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("At(%v) = %v, %v, want %v", tvd, got, ok, want)
		}
	}
	for _, tvd := range []float64{367.9, 448.1, math.NaN()} {
		if got, ok := c.At(tvd); ok || got != 0 {
			t.Errorf("At(%v) = %v, %v, want none", tvd, got, ok)
		}
	}
	if top, bottom, ok := c.Ends(); !ok || top != 368 || bottom != 448 {
		t.Errorf("Ends = %v, %v, %v", top, bottom, ok)
	}
	if got := c.AppendBreaks(nil); len(got) != 3 || got[1] != 400 {
		t.Errorf("AppendBreaks = %v", got)
	}
	var none Curve
	if _, ok := none.At(0); ok {
		t.Error("the zero curve has a value")
	}
	if _, _, ok := none.Ends(); ok {
		t.Error("the zero curve has ends")
	}
	single, err := NewCurve([]Row{{100, 5}})
	if err != nil {
		t.Fatal(err)
	}
	if got, ok := single.At(100); !ok || got != 5 {
		t.Errorf("a curve of one row gives %v, %v at it", got, ok)
	}
	one := func(_ Curve, err error) error { return err }
	nan := math.NaN()
	complains(t, 1, one(NewCurve(nil)), []string{"no rows"})
	complains(t, 2, one(NewCurve([]Row{{1, 2}, {2, nan}})), []string{"row 2", "not a number"})
	complains(t, 3, one(NewCurve([]Row{{1, 2}, {2, 3}, {2, 4}})), []string{"row 3", "row 2", "2.00 m"})
}
