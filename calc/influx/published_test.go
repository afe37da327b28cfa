package influx

import (
	"cmp"
	"math"
	"testing"

	"borewalk/calc/column"
	"borewalk/model/handbook"
)

// example is a worked example in the units that it is printed in.
type example struct {
	ID, Source, Where, Note     string
	Seen, Grows                 bool
	TolerancePct                float64 `toml:"tolerance_pct"`
	Given, Expected, Recomputed map[string]float64
}

type published struct {
	Bubble, ShutIn, Limit, Disputed []example
}

// compare holds the printed answers against what was got.
func (ex example) compare(t *testing.T, got map[string]float64) {
	t.Helper()
	for name, want := range ex.Expected {
		if value, ok := got[name]; !ok || !handbook.Within(value, want, ex.TolerancePct) {
			t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
		}
	}
}

const psiPerFoot = psi / foot / gravity // kg/m³

// TestPublishedBubbles: the simple model as handbooks have it, in a hole straight down with collars at the bottom.
func TestPublishedBubbles(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/published.toml").Bubble {
		g := ex.Given
		collars := g["collar_ft"] * foot
		density := g["influx_psi_per_ft"] * psiPerFoot
		fluid := Liquid(density)
		if ex.Grows {
			fluid = Simple(density, InTheMiddle)
		}
		w := Well{
			Mud:   g["mud_psi_per_ft"] * psiPerFoot,
			Fluid: fluid,
			Cells: laid(leg{g["td_ft"]*foot - collars, 0, ring(g["hole_in"], g["pipe_in"])}, leg{collars, 0, ring(g["hole_in"], g["collar_in"])}),
		}
		at := Place{MD: g["shoe_ft"] * foot, Stands: g["shoe_psi_per_ft"] * g["shoe_ft"] * psi}
		got, err := w.Tolerance(g["formation_psi"]*psi, at, 0)
		if err != nil {
			t.Fatal(err)
		}
		b := got.Worst
		ex.compare(t, map[string]float64{
			"shoe_psi": at.Stands / psi, "height_ft": b.Height() / foot, "volume_there_bbl": b.Volume / barrel,
			"mean_psi": (b.TopPressure + b.BottomPressure) / 2 / psi, "tolerance_bbl": got.Volume / barrel,
		})
	}
}

// TestPublishedShutIns: how high a gain stands in a plain annulus straight down, and what its density makes of the casing pressure.
// The height goes by the room alone, so that where none is printed any mud and depth will do.
func TestPublishedShutIns(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/published.toml").ShutIn {
		g := ex.Given
		area := ring(g["hole_in"], g["pipe_in"])
		if length := g["length_ft_per_bbl"]; length > 0 {
			area = barrel / (length * foot)
		}
		mud, td := cmp.Or(g["mud_ppg"], 10)*ppg, cmp.Or(g["td_ft"], 8000)*foot
		w := Well{Mud: mud, Fluid: Liquid(g["influx_ppg"] * ppg), Cells: laid(leg{td, 0, area})}
		got, err := w.ShutIn(column.PressureOf(mud, td)+g["sidpp_psi"]*psi, g["gain_bbl"]*barrel)
		if err != nil {
			t.Fatal(err)
		}
		sicp := got.TopPressure - column.PressureOf(mud, got.TopTVD)
		ex.compare(t, map[string]float64{"height_ft": got.Height() / foot, "sicp_psi": sicp / psi})
	}
}

func TestPublishedLimits(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/published.toml").Limit {
		g := ex.Given
		limit, mud := g["limit_ppg"]*ppg+g["limit_kg_per_m3"], g["mud_ppg"]*ppg+g["mud_kg_per_m3"]
		shoe, td := g["shoe_ft"]*foot+g["shoe_m"], g["td_ft"]*foot
		factor, ok := g["factor_ppg"]*ppg, true
		if factor == 0 && td > 0 {
			factor, ok = Factor(limit, mud, shoe, td)
		}
		surface := column.PressureOf(factor, td)
		height, higher := Height(surface, mud, g["influx_psi_per_ft"]*psiPerFoot)
		maasp, known := MAASP(limit, mud, shoe)
		if !ok || higher != (mud > 0) || known != (shoe > 0) {
			t.Errorf("%s: no factor, height or pressure", ex.ID)
		}
		ex.compare(t, map[string]float64{
			"factor_ppg": factor / ppg, "surface_psi": surface / psi, "formation_psi": column.PressureOf(factor+mud, td) / psi,
			"height_ft": height / foot, "maasp_psi": maasp / psi, "maasp_kpa": maasp / 1e3,
		})
	}
}

// TestDisputedDensityAtTheShoe: the printed answer does not follow from the printed mud, but from another.
func TestDisputedDensityAtTheShoe(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/published.toml").Disputed {
		g := ex.Given
		at := func(mud float64) float64 {
			emw, _ := ShoeEMW(mud*ppg, g["kick_ppg"]*ppg, g["shoe_ft"]*foot, g["td_ft"]*foot)
			return emw / ppg
		}
		got := at(g["mud_ppg"])
		if !handbook.Within(got, ex.Recomputed["shoe_ppg"], ex.TolerancePct) || handbook.Within(got, ex.Expected["shoe_ppg"], 1) {
			t.Errorf("%s: %v ppg, printed %v", ex.ID, got, ex.Expected["shoe_ppg"])
		}
		meant := at(ex.Recomputed["meant_mud_ppg"])
		if !handbook.Within(meant, ex.Recomputed["meant_shoe_ppg"], ex.TolerancePct) || math.Round(meant*10) != math.Round(10*ex.Expected["shoe_ppg"]) {
			t.Errorf("%s: %v ppg with the other mud", ex.ID, meant)
		}
	}
}

// TestFactorsThereAndBack: a formation above the mud by the factor brings the shoe to its limit, and so does the pressure at
// surface that goes with it.
func TestFactorsThereAndBack(t *testing.T) {
	const limit, mud, shoe, td = 1650.0, 1280.0, 1430.0, 2870.0
	factor, ok := Factor(limit, mud, shoe, td)
	emw, also := ShoeEMW(mud, factor, shoe, td)
	maasp, too := MAASP(limit, mud, shoe)
	if !ok || !also || !too || math.Abs(emw-limit) > 1e-9 || math.Abs(column.PressureOf(factor, td)-maasp) > 1e-6 {
		t.Errorf("factor %v, shoe %v, surface %v", factor, emw, maasp)
	}
}

func TestLimitsOfNothing(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, f := range map[string]func() (float64, bool){
		"a shoe at the rotary":          func() (float64, bool) { return MAASP(1500, 1200, 0) },
		"no mud weight":                 func() (float64, bool) { return MAASP(1500, nan, 1000) },
		"an endless shoe":               func() (float64, bool) { return MAASP(1500, 1200, inf) },
		"a factor without a bottom":     func() (float64, bool) { return Factor(1500, 1200, 1000, 0) },
		"a factor without a shoe":       func() (float64, bool) { return Factor(1500, 1200, -1, 2000) },
		"a density without a shoe":      func() (float64, bool) { return ShoeEMW(1200, 60, 0, 2000) },
		"an influx as heavy as the mud": func() (float64, bool) { return Height(1e6, 1200, 1200) },
		"a height of no pressure":       func() (float64, bool) { return Height(nan, 1200, 200) },
	} {
		if x, ok := f(); ok || x != 0 {
			t.Errorf("%s: %v", name, x)
		}
	}
}
