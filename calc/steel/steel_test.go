package steel

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	foot       = 0.3048
	lb         = 0.45359237
	lbf        = lb * gravity
	lbPerFoot  = lb / foot
	lbPerFoot3 = lb / (foot * foot * foot)
	ppg        = lb / (231 * inch * inch * inch)
)

// A table is rows of published figures with their source.
type table struct {
	Source, Where  string
	Seen           bool
	Rows, Disputed [][]float64
	SteelPpg       float64 `toml:"steel_ppg"`
}

type published struct {
	Collars      table
	LinePipe     table `toml:"line_pipe"`
	Drift, Area  []table
	Buoyancy     table
	PressureArea struct {
		Source, Where string
		Seen          bool
		TolerancePct  float64 `toml:"tolerance_pct"`
		PipeOD        float64 `toml:"pipe_od_in"`
		PipeID        float64 `toml:"pipe_id_in"`
		PipeLength    float64 `toml:"pipe_length_ft"`
		CollarOD      float64 `toml:"collar_od_in"`
		CollarID      float64 `toml:"collar_id_in"`
		CollarLength  float64 `toml:"collar_length_ft"`
		Steel         float64 `toml:"steel_lb_per_ft3"`
		Mud           float64 `toml:"mud_lb_per_ft3"`
		AirWeight     float64 `toml:"air_weight_lbf"`
		ByAreas       float64 `toml:"pressure_area_lbf"`
		Factor        float64 `toml:"buoyancy_factor"`
		ByFactor      float64 `toml:"factor_lbf"`
	} `toml:"pressure_area"`
}

func TestCollarWeights(t *testing.T) {
	data := handbook.Load[published](t, "testdata/pipe.toml").Collars
	if len(data.Rows) < 15 {
		t.Fatalf("%d rows of collars, want 15 or more", len(data.Rows))
	}
	for _, r := range data.Rows {
		got := PlainEnd(r[0]*inch, r[1]*inch) / lbPerFoot
		if math.Abs(got-r[2]) > 0.5+0.0005*r[2] { // whole pounds; 490 lb/ft³ or thereabouts
			t.Errorf("collar %v x %v in = %.2f lb/ft, want %v (%s)", r[0], r[1], got, r[2], data.Source)
		}
	}
	for _, r := range data.Disputed {
		if got := PlainEnd(r[0]*inch, r[1]*inch) / lbPerFoot; math.Abs(got-r[2]) < 1 {
			t.Errorf("collar %v x %v in = %.2f lb/ft meets the wrong printed weight", r[0], r[1], got)
		}
	}
}

func TestPlainEndWeights(t *testing.T) {
	data := handbook.Load[published](t, "testdata/pipe.toml").LinePipe
	for _, r := range data.Rows {
		if got := PlainEnd(r[0]*inch, (r[0]-2*r[1])*inch) / lbPerFoot; !handbook.Within(got, r[2], 0.12) {
			t.Errorf("pipe %v in, wall %v in = %.2f lb/ft, want %v (%s)", r[0], r[1], got, r[2], data.Source)
		}
	}
	// Lapeyrouse, stretch by the plain-end weight: 5 in, 4.276 in bore, 17.93 lb/ft at
	// 489.5 lb/ft³; https://www.netwasgroup.us/formulas-calculations/determine-free-point-constant-fpc.html
	if got := Area(5*inch, 4.276*inch) * 489.5 * lbPerFoot3 / lbPerFoot; !handbook.Within(got, 17.93, 0.01) {
		t.Errorf("5 in drill pipe body = %.4f lb/ft, want 17.93", got)
	}
	if got := PlainEnd(5*inch, 4.276*inch) / lbPerFoot; !handbook.Within(got, 17.93, 0.13) {
		t.Errorf("PlainEnd of it = %.4f lb/ft, want 17.93 within the density", got)
	}
}

// The rules of thumb: 149.199 lb/ft for a smooth collar 8 x 2-13/16 in, 143.59 for a
// spiral one. https://docs.kws.tn/formulas/1/drill-pipe.html; 2.67 is exact.
func TestCollarRules(t *testing.T) {
	smooth := PlainEnd(8*inch, 2.8125*inch) / lbPerFoot
	if !handbook.Within(smooth, 149.199, 0.5) {
		t.Errorf("smooth collar = %v lb/ft, want about 149.199", smooth)
	}
	if got := smooth * SpiralRatio; !handbook.Within(got, 143.59, 0.5) {
		t.Errorf("spiral collar = %v lb/ft, want about 143.59", got)
	}
	if got := 149.199 * SpiralRatio; !handbook.Within(got, 143.59, 0.01) {
		t.Errorf("149.199 lb/ft as spiral = %v, want 143.59", got)
	}
}

func TestWallAreas(t *testing.T) {
	for _, data := range handbook.Load[published](t, "testdata/pipe.toml").Area {
		for _, r := range data.Rows {
			if got := Area(r[0]*inch, r[1]*inch) / (inch * inch); !handbook.Within(got, r[2], 0.03) {
				t.Errorf("wall of %v x %v in = %v in², want %v (%s)", r[0], r[1], got, r[2], data.Source)
			}
		}
	}
}

func TestDrift(t *testing.T) {
	for _, data := range handbook.Load[published](t, "testdata/pipe.toml").Drift {
		for _, r := range data.Rows {
			// Tables print thousandths, cut or rounded.
			if got, ok := Drift(r[0]*inch, r[1]*inch); !ok || math.Abs(got/inch-r[2]) > 0.0006 {
				t.Errorf("drift of %v x %v in = %v, %v, want %v (%s)", r[0], r[1], got/inch, ok, r[2], data.Source)
			}
		}
	}
	// Metric names of 9-5/8, 13-3/8, 13-5/8 and 16 in.
	for od, allowance := range map[float64]float64{0.2445: 5.0 / 32, 0.3397: 5.0 / 32, 0.3461: 5.0 / 32, 0.4064: 3.0 / 16, 0.2191: 1.0 / 8, 0.3556: 3.0 / 16} {
		if got, ok := Drift(od, od-0.02); !ok || math.Abs(od-0.02-got-allowance*inch) > 1e-12 {
			t.Errorf("drift of %v m = %v, %v, want %v in off", od, got, ok, allowance)
		}
	}
	nan := math.NaN()
	for _, bad := range [][2]float64{{0.2, 0.2}, {0.2, 0}, {0.2, 0.003}, {0.2, nan}, {nan, 0.1}, {math.Inf(1), 0.1}, {-1, -2}} {
		if got, ok := Drift(bad[0], bad[1]); ok {
			t.Errorf("Drift(%v, %v) = %v, want none", bad[0], bad[1], got)
		}
	}
}

func TestBuoyancyTable(t *testing.T) {
	data := handbook.Load[published](t, "testdata/pipe.toml").Buoyancy
	for _, r := range data.Rows {
		got, ok := BuoyancyFactor(r[0]*ppg, data.SteelPpg*ppg)
		if !ok || math.Abs(got-r[1]) > 0.00005 {
			t.Errorf("factor in %v ppg = %v, %v, want %v (%s)", r[0], got, ok, r[1], data.Source)
		}
		// With the density used here the fourth place moves, no more.
		if got, ok := BuoyancyFactor(r[0]*ppg, Density); !ok || math.Abs(got-r[1]) > 0.0002 {
			t.Errorf("factor at 7850 kg/m³ in %v ppg = %v, %v, want about %v", r[0], got, ok, r[1])
		}
	}
}

// fluid is a column of one density from a depth down.
func fluid(surface, density float64) func(float64) (float64, bool) {
	return func(tvd float64) (float64, bool) {
		if tvd < surface {
			return 0, false
		}
		return density * gravity * (tvd - surface), true
	}
}

// dry is no fluid at all.
func dry(float64) (float64, bool) { return 0, false }

func TestPressureAreaExample(t *testing.T) {
	c := handbook.Load[published](t, "testdata/pipe.toml").PressureArea
	mass := func(od, id float64) float64 { return Area(od*inch, id*inch) * c.Steel * lbPerFoot3 }
	joint := c.PipeLength * foot
	sections := []Section{
		{0, joint, c.PipeOD * inch, c.PipeID * inch, mass(c.PipeOD, c.PipeID), "pipe"},
		{joint, joint + c.CollarLength*foot, c.CollarOD * inch, c.CollarID * inch, mass(c.CollarOD, c.CollarID), "collars"},
	}
	mud := fluid(0, c.Mud*lbPerFoot3)
	forces, err := Forces(sections, mud, mud)
	if err != nil {
		t.Fatal(err)
	}
	factor, ok := BuoyancyFactor(c.Mud*lbPerFoot3, c.Steel*lbPerFoot3)
	if !ok {
		t.Fatal("no buoyancy factor")
	}
	for _, f := range []struct {
		name      string
		got, want float64
	}{
		{"weight in air", InAir(sections) / lbf, c.AirWeight},
		{"by pressure and area", forces[0].Top / lbf, c.ByAreas},
		{"buoyancy factor", factor, c.Factor},
		{"by the factor", factor * InAir(sections) / lbf, c.ByFactor},
		{"written out", Buoyed(sections, c.Mud*lbPerFoot3, c.Mud*lbPerFoot3) / lbf, c.ByFactor},
	} {
		if !handbook.Within(f.got, f.want, c.TolerancePct) {
			t.Errorf("%s = %v, want %v (%s)", f.name, f.got, f.want, c.Source)
		}
	}
	if got := factor * InAir(sections); !handbook.Within(forces[0].Top, got, 1e-10) {
		t.Errorf("pressure and area %v N, factor %v N: one weight was to come out", forces[0].Top, got)
	}
	// The collars' lower end is pressed up by the mud on the whole face of steel.
	lower, _ := mud(sections[1].Bottom)
	if want := -lower * Area(sections[1].OD, sections[1].ID); !handbook.Within(forces[1].Bottom, want, 1e-10) {
		t.Errorf("force at the lower end = %v, want %v", forces[1].Bottom, want)
	}
}

// A shut, empty pipe: it hangs by its weight less the fluid of its whole volume.
func TestEmptyPipeFloats(t *testing.T) {
	const od, id, length, mud = 0.346075, 0.314325, 1000.0, 1500.0
	pipe := []Section{{0, length, od, id, PlainEnd(od, id), "casing"}}
	forces, err := Forces(pipe, dry, fluid(0, mud))
	if err != nil {
		t.Fatal(err)
	}
	want := gravity * length * (PlainEnd(od, id) - mud*math.Pi/4*od*od)
	if !handbook.Within(forces[0].Top, want, 1e-9) {
		t.Errorf("force at the top = %v, want %v", forces[0].Top, want)
	}
	if got := Buoyed(pipe, 0, mud); !handbook.Within(got, want, 1e-9) {
		t.Errorf("Buoyed = %v, want %v", got, want)
	}
	factor, ok := BuoyancyFactorInOut(od, id, 0, mud, Density)
	if !ok || !handbook.Within(factor*InAir(pipe), want, 1e-9) {
		t.Errorf("BuoyancyFactorInOut = %v, %v, times air weight %v, want %v", factor, ok, factor*InAir(pipe), want)
	}
	if factor >= 0 {
		t.Errorf("the factor of a floating pipe is %v", factor)
	}
}

// Above the sea there is air, and no pressure is missed there.
func TestForcesBeginInAir(t *testing.T) {
	pipe := []Section{{0, 20, 0.2, 0.1, 100, ""}, {20, 500, 0.2, 0.1, 100, ""}}
	forces, err := Forces(pipe, fluid(26, 1030), fluid(26, 1030))
	if err != nil {
		t.Fatal(err)
	}
	want := 100*gravity*500 - 1030*gravity*474*Area(0.2, 0.1)
	if !handbook.Within(forces[0].Top, want, 1e-10) {
		t.Errorf("force at the top = %v, want %v", forces[0].Top, want)
	}
}

// Lapeyrouse, chapter 5, available weight on bit: 45000 lbf at 25 degrees, 40784 lbf;
// from memory.
func TestBitWeight(t *testing.T) {
	if got, ok := BitWeight(45000*lbf, 25*math.Pi/180); !ok || !handbook.Within(got/lbf, 40784, 0.02) {
		t.Errorf("BitWeight = %v lbf, %v, want 40784", got/lbf, ok)
	}
	nan := math.NaN()
	for _, bad := range [][2]float64{{-1, 0}, {1, -0.1}, {1, 1.6}, {nan, 0}, {1, nan}, {math.Inf(1), 0}} {
		if got, ok := BitWeight(bad[0], bad[1]); ok || got != 0 {
			t.Errorf("BitWeight(%v, %v) = %v, want none", bad[0], bad[1], got)
		}
	}
}

// Displacement is weight / 2747 in bbl/ft, a drill pipe table's constant from memory:
// 5 in 19.50 lb/ft with tool joints, 20.85 lb/ft, 0.00759 bbl/ft. That constant is
// steel of 7838 kg/m³, 0.15 % below the one used here.
func TestDisplacement(t *testing.T) {
	const barrel = 42 * 231 * inch * inch * inch
	if got := Displacement(20.85*lbPerFoot) * foot / barrel; !handbook.Within(got, 0.00759, 0.2) {
		t.Errorf("Displacement = %v bbl/ft, want 0.00759", got)
	}
	if got := Displacement(PlainEnd(0.2, 0.1)); !handbook.Within(got, Area(0.2, 0.1), 1e-12) {
		t.Errorf("Displacement of a plain pipe = %v, want its wall", got)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if got := Displacement(bad); got != 0 {
			t.Errorf("Displacement(%v) = %v, want 0", bad, got)
		}
	}
}

func TestBadInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, bad := range [][2]float64{{0.1, 0.1}, {0.1, 0.2}, {0.1, -0.1}, {nan, 0}, {0.1, nan}, {inf, 0}} {
		if got := Area(bad[0], bad[1]); got != 0 {
			t.Errorf("Area(%v) = %v, want 0", bad, got)
		}
	}
	for _, bad := range [][2]float64{{1000, 0}, {-1, 7850}, {nan, 7850}, {1000, nan}, {inf, 7850}, {1000, inf}} {
		if got, ok := BuoyancyFactor(bad[0], bad[1]); ok || got != 0 {
			t.Errorf("BuoyancyFactor(%v) = %v, want none", bad, got)
		}
	}
	for _, bad := range [][5]float64{{0.1, 0.1, 1, 1, 7850}, {0.2, 0.1, -1, 1, 7850}, {0.2, 0.1, 1, nan, 7850}, {0.2, 0.1, 1, 1, 0}, {0.2, 0.1, inf, 1, 7850}} {
		if got, ok := BuoyancyFactorInOut(bad[0], bad[1], bad[2], bad[3], bad[4]); ok || got != 0 {
			t.Errorf("BuoyancyFactorInOut(%v) = %v, want none", bad, got)
		}
	}
	if got := Buoyed([]Section{{0, nan, 0.2, 0.1, 100, ""}}, 1000, 1000); got != 0 {
		t.Errorf("Buoyed of no number = %v, want 0", got)
	}
	good := Section{0, 100, 0.2, 0.1, 100, "pipe"}
	other := func(change func(*Section)) []Section {
		s := good
		s.Top, s.Bottom, s.Label = 100, 200, "collars"
		change(&s)
		return []Section{good, s}
	}
	mud := fluid(0, 1000)
	cases := []struct {
		sections []Section
		inside   func(float64) (float64, bool)
		want     string
	}{
		{nil, mud, "no sections"},
		{other(func(s *Section) { s.Bottom = nan }), mud, `string section 2 "collars": a depth`},
		{other(func(s *Section) { s.ID = 0.2 }), mud, "no wall"},
		{other(func(s *Section) { s.LinearMass = -1 }), mud, "mass -1 kg/m"},
		{other(func(s *Section) { s.LinearMass = inf }), mud, "mass"},
		{other(func(s *Section) { s.Top = 101 }), mud, "begins at 101.00 m but the one above ends at 100.00 m"},
		{other(func(s *Section) { s.LinearMass = 1e308 }), mud, "beyond all numbers"},
		{[]Section{good}, func(float64) (float64, bool) { return nan, true }, "pressure inside at 100.00 m is not a number"},
		{other(func(*Section) {}), func(z float64) (float64, bool) { return 0, z < 150 }, "no fluid inside at 200.00 m"},
	}
	for _, c := range cases {
		if _, err := Forces(c.sections, c.inside, mud); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Forces says %v, want %q", err, c.want)
		}
	}
	if _, err := Forces([]Section{good}, mud, func(z float64) (float64, bool) { return 0, z < 50 }); err == nil || !strings.Contains(err.Error(), "outside") {
		t.Errorf("Forces says %v, want the fluid outside", err)
	}
}
