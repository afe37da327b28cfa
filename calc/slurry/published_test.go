package slurry

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/pump"
	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	foot   = 0.3048
	cubic  = foot * foot * foot
	gallon = 231 * inch * inch * inch
	barrel = 42 * gallon
	pound  = 0.45359237
	ppg    = pound / gallon
	psi    = pound * column.G / (inch * inch)

	gallonPerSack = gallon / Sack
	cubicPerSack  = cubic / Sack
)

type published struct {
	Example []struct {
		ID, Work, Source, Where, Note string
		Seen                          bool
		TolerancePct                  float64 `toml:"tolerance_pct"`
		Given, Expected               values
	}
	Disputed []struct {
		ID, Source, Where, Note    string
		Seen                       bool
		TolerancePct               float64 `toml:"tolerance_pct"`
		Given, Printed, Recomputed values
	}
}

type values map[string]float64

func TestPublishedExamples(t *testing.T) {
	works := map[string]func(*testing.T, values) values{
		"recipe": mixed, "water": byWater, "powder": byPowder, "additive": additive, "sacks": sacks, "annulus": annulus,
		"primary": primary, "top": top, "differential": differential, "lift": lift, "plug": plug,
	}
	done := map[string]bool{}
	for _, ex := range handbook.Load[published](t, "testdata/cement.toml").Example {
		work, ok := works[ex.Work]
		if !ok || len(ex.Expected) == 0 {
			t.Errorf("%s: work %q, %d values expected", ex.ID, ex.Work, len(ex.Expected))
			continue
		}
		done[ex.Work] = true
		got := work(t, ex.Given)
		for name, want := range ex.Expected {
			value, ok := got[name]
			if !ok || !(math.Abs(value-want) <= want*ex.TolerancePct/100) {
				t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
	if len(done) != len(works) {
		t.Errorf("only %d of %d calculations are checked", len(done), len(works))
	}
}

// recipeOf reads a recipe with at most one powder.
func recipeOf(v values) Recipe {
	water := v["water_density_ppg"] * ppg
	r := Recipe{CementDensity: v["cement_sg"] * water, Water: v["cement_water_gal_per_sk"] * gallonPerSack, WaterDensity: water}
	if v["powder_sg"] > 0 {
		p := Powder{Label: "powder", Share: v["powder_pct"] / 100, Density: v["powder_sg"] * water}
		if perSack := v["powder_water_gal_per_sk"]; perSack > 0 {
			p.Water = perSack * gallon / (p.Share * Sack)
		}
		p.Water += v["powder_water_gal_per_94lb"] * gallon / Sack
		r.Powders = append(r.Powders, p)
	}
	return r
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func told(t *testing.T) func(float64, bool) float64 {
	return func(v float64, ok bool) float64 {
		t.Helper()
		if !ok {
			t.Fatal("no value")
		}
		return v
	}
}

func results(t *testing.T, r Recipe) values {
	s := must[Slurry](t)(r.Slurry())
	v := values{
		"density_ppg":       s.Density / ppg,
		"yield_ft3_per_sk":  s.Yield / cubicPerSack,
		"slurry_gal_per_sk": s.Yield / gallonPerSack,
		"water_gal_per_sk":  r.totalWater() / gallonPerSack,
	}
	for _, p := range r.Powders {
		v["powder_lb_per_sk"] = p.Share * 94
	}
	return v
}

func mixed(t *testing.T, v values) values { return results(t, recipeOf(v)) }

func byWater(t *testing.T, v values) values {
	return results(t, must[Recipe](t)(recipeOf(v).WithWaterFor(v["slurry_ppg"]*ppg)))
}

func byPowder(t *testing.T, v values) values {
	return results(t, must[Recipe](t)(recipeOf(v).WithPowderFor(0, v["slurry_ppg"]*ppg)))
}

func additive(t *testing.T, v values) values {
	r := Recipe{CementDensity: CementDensity, Water: 46e-5, WaterDensity: FreshWater, Powders: []Powder{{Share: v["powder_pct"] / 100, Density: 1500}}}
	s := must[Slurry](t)(r.Slurry())
	volume := told(t)(s.Volume(v["sacks"] * Sack))
	needs := must[[]Need](t)(r.Needs(must[Batch](t)(s.Batch(Job{Volume: volume}))))
	return values{"cement_lb": needs[0].Mass / pound, "powder_lb": needs[1].Mass / pound}
}

func sacks(t *testing.T, v values) values {
	ring := bore.Interval{Bottom: v["length_ft"] * foot, Outer: v["hole_in"] * inch, Inner: v["casing_od_in"] * inch}
	b := must[Batch](t)(Slurry{Yield: v["yield_ft3_per_sk"] * cubicPerSack}.Batch(Job{Volume: ring.Volume()}))
	return values{
		"annular_capacity_ft3_per_ft": ring.Capacity() / (foot * foot),
		"volume_ft3":                  b.Mixed / cubic,
		"sacks_exact":                 b.Cement / Sack,
		"sacks_whole":                 b.Sacks,
	}
}

func annulus(t *testing.T, v values) values {
	length := v["length_m"] + (v["casing_shoe_md_ft"]-v["previous_shoe_md_ft"])*foot
	ring := bore.Interval{Bottom: length, Outer: v["hole_m"] + v["hole_in"]*inch, Inner: v["casing_od_m"] + v["casing_od_in"]*inch}
	top, _ := bore.DepthAbove([]bore.Interval{ring}, length, ring.Volume())
	return values{
		"slurry_m3":                   ring.Volume(),
		"annular_capacity_bbl_per_ft": ring.Capacity() * foot / barrel,
		"open_hole_cement_length_ft":  (length - top) / foot,
	}
}

func primary(t *testing.T, v values) values {
	depth, track := v["casing_depth_ft"]*foot, v["shoe_track_ft"]*foot
	ring := bore.Interval{Bottom: depth, Outer: v["hole_in"] * inch, Inner: v["casing_od_in"] * inch}
	pipe := bore.Interval{Bottom: depth, Outer: v["casing_id_in"] * inch}
	excess := v["excess_pct"] / 100
	cement := func(yield string, length, track float64) Batch {
		volume := ring.Capacity()*length*(1+excess) + pipe.Capacity()*track
		return must[Batch](t)(Slurry{Yield: v[yield] * cubicPerSack}.Batch(Job{Volume: volume}))
	}
	displacement := pipe.Capacity() * (depth - track)
	tail := v["tail_length_ft"] * foot
	return values{
		"annular_capacity_ft3_per_ft": ring.Capacity() / (foot * foot),
		"casing_capacity_ft3_per_ft":  pipe.Capacity() / (foot * foot),
		"lead_sacks":                  cement("lead_yield_ft3_per_sk", v["lead_length_ft"]*foot, 0).Cement / Sack,
		"tail_annulus_sacks":          cement("tail_yield_ft3_per_sk", tail, 0).Cement / Sack,
		"tail_casing_sacks":           cement("tail_yield_ft3_per_sk", 0, track).Cement / Sack,
		"tail_total_sacks":            cement("tail_yield_ft3_per_sk", tail, track).Cement / Sack,
		"displacement_bbl":            displacement / barrel,
		"displacement_stk":            told(t)(pump.Strokes(displacement, v["pump_output_bbl_per_stk"]*barrel)),
	}
}

func top(t *testing.T, v values) values {
	depth, track := v["casing_depth_ft"]*foot, v["shoe_track_ft"]*foot
	wide := bore.EnlargedAround(v["hole_in"]*inch, v["casing_od_in"]*inch, v["excess_pct"]/100)
	ring := bore.Interval{Bottom: depth, Outer: wide, Inner: v["casing_od_in"] * inch}
	inside := bore.Interval{Bottom: track, Outer: v["casing_id_in"] * inch}
	slurry := told(t)(Slurry{Yield: v["yield_ft3_per_sk"] * cubicPerSack}.Volume(v["sacks"] * Sack))
	top, _ := bore.DepthAbove([]bore.Interval{ring}, depth, slurry-inside.Volume())
	displacement := v["drillpipe_capacity_bbl_per_ft"] * barrel / foot * (depth - track)
	return values{
		"slurry_ft3":       slurry / cubic,
		"shoe_track_ft3":   inside.Volume() / cubic,
		"cement_height_ft": (depth - top) / foot,
		"top_of_cement_ft": top / foot,
		"displacement_bbl": displacement / barrel,
		"displacement_stk": told(t)(pump.Strokes(displacement, v["pump_output_bbl_per_stk"]*barrel)),
	}
}

func differential(t *testing.T, v values) values {
	bottom := v["well_depth_ft"] * foot
	tail := bottom - v["tail_length_ft"]*foot
	lead := tail - v["lead_length_ft"]*foot
	collar := bottom - v["shoe_track_ft"]*foot
	mud := v["mud_weight_ppg"] * ppg
	outside := must[column.Stack](t)(column.NewStack(0,
		column.Layer{Top: 0, Bottom: lead, Density: mud},
		column.Layer{Top: lead, Bottom: tail, Density: v["lead_ppg"] * ppg},
		column.Layer{Top: tail, Bottom: bottom, Density: v["tail_ppg"] * ppg}))
	inside := must[column.Stack](t)(column.NewStack(0,
		column.Layer{Top: 0, Bottom: collar, Density: mud},
		column.Layer{Top: collar, Bottom: bottom, Density: v["tail_ppg"] * ppg}))
	at := func(s column.Stack, tvd float64) float64 { return told(t)(s.Pressure(tvd)) / psi }
	return values{
		"mud_psi":           at(outside, lead),
		"lead_psi":          at(outside, tail) - at(outside, lead),
		"tail_psi":          at(outside, bottom) - at(outside, tail),
		"annulus_total_psi": at(outside, bottom),
		"casing_mud_psi":    at(inside, collar),
		"casing_total_psi":  at(inside, bottom),
		"differential_psi":  at(outside, bottom) - at(inside, bottom),
	}
}

func lift(t *testing.T, v values) values {
	bottom := v["depth_ft"] * foot
	mud := v["mud_length_ft"] * foot
	flush := mud + v["flush_length_ft"]*foot
	lead := flush + v["lead_length_ft"]*foot
	outside := must[column.Stack](t)(column.NewStack(0,
		column.Layer{Top: 0, Bottom: mud, Density: v["mud_ppg"] * ppg},
		column.Layer{Top: mud, Bottom: flush, Density: v["flush_ppg"] * ppg},
		column.Layer{Top: flush, Bottom: lead, Density: v["lead_ppg"] * ppg},
		column.Layer{Top: lead, Bottom: lead + v["tail_length_ft"]*foot, Density: v["tail_ppg"] * ppg}))
	inside := must[column.Stack](t)(column.NewStack(0, column.Layer{Top: 0, Bottom: bottom, Density: v["brine_ppg"] * ppg}))
	return values{"pump_pressure_psi": (told(t)(outside.Pressure(bottom)) - told(t)(inside.Pressure(bottom))) / psi}
}

func plug(t *testing.T, v values) values {
	base, wide := v["base_ft"]*foot, 1+v["excess_pct"]/100
	hole, ring, pipe := bore.Area(v["hole_in"]*inch), bore.Area(v["hole_in"]*inch)-bore.Area(v["pipe_od_in"]*inch), bore.Area(v["pipe_id_in"]*inch)
	well := []Stretch{{Top: 0, Bottom: base, Inside: pipe, Annulus: ring * wide, Hole: hole * wide}}
	s := Slurry{Yield: v["yield_ft3_per_sk"] * cubicPerSack}
	wanted := must[float64](t)(PlugVolume(well, base-v["length_ft"]*foot, base))
	batch := must[Batch](t)(s.Batch(Job{Volume: wanted}))
	pumped := told(t)(s.Volume(batch.Sacks * Sack))
	b := must[Balanced](t)(Balance(well, Plug{Base: base, Slurry: pumped, Ahead: v["spacer_ahead_bbl"] * barrel}))
	return values{
		"annular_capacity_ft3_per_ft": ring / (foot * foot),
		"hole_capacity_ft3_per_ft":    hole / (foot * foot),
		"pipe_capacity_ft3_per_ft":    pipe / (foot * foot),
		"sacks_whole":                 batch.Sacks,
		"spacer_behind_bbl":           b.Behind / barrel,
		"length_pipe_in_ft":           (base - b.TopIn) / foot,
		"displacement_bbl":            b.Displacement / barrel,
	}
}

func TestDisputedSilica(t *testing.T) {
	data := handbook.Load[published](t, "testdata/cement.toml").Disputed
	if len(data) != 1 {
		t.Fatalf("%d disputed examples, want 1", len(data))
	}
	d := data[0]
	v := d.Given
	r := Recipe{
		CementDensity: pound / (v["cement_gal_per_lb"] * gallon),
		WaterDensity:  v["water_density_ppg"] * ppg,
		Powders:       []Powder{{Label: "silica", Share: v["silica_pct"] / 100, Density: pound / (v["silica_gal_per_lb"] * gallon)}},
		Liquids: []Liquid{
			{"A", v["liquid_a_gal_per_sk"] * gallonPerSack, pound / (v["liquid_a_gal_per_lb"] * gallon)},
			{"B", v["liquid_b_gal_per_sk"] * gallonPerSack, pound / (v["liquid_b_gal_per_lb"] * gallon)},
		},
	}
	got := results(t, must[Recipe](t)(r.WithWaterFor(v["slurry_ppg"]*ppg)))
	for name, want := range d.Recomputed {
		if math.Abs(got[name]-want) > want*d.TolerancePct/100 {
			t.Errorf("%s: %s = %v, want %v", d.ID, name, got[name], want)
		}
		if printed := d.Printed[name]; !(math.Abs(got[name]-printed) > printed*0.01) {
			t.Errorf("%s: %s = %v is the printed %v, which does not follow from the inputs", d.ID, name, got[name], printed)
		}
	}
	// With half the mass of liquid A, as the page sums up, the printed water comes out.
	r.Liquids[0].Density /= 2
	slip := results(t, must[Recipe](t)(r.WithWaterFor(v["slurry_ppg"]*ppg)))
	for name, want := range d.Printed {
		if math.Abs(slip[name]-want) > want*0.002 {
			t.Errorf("%s with the slip: %s = %v, want the printed %v", d.ID, name, slip[name], want)
		}
	}
}

func TestNeatsAreTheirOwnRecipes(t *testing.T) {
	for _, n := range Neats() {
		s := must[Slurry](t)(n.Recipe().Slurry())
		// Printed to a tenth of ppg and a hundredth of ft³, class H as tables differ.
		if math.Abs(s.Density-n.Density) > 0.1*ppg || math.Abs(s.Yield-n.Yield) > 0.01*cubicPerSack {
			t.Errorf("class %s: %v kg/m³, %v m³/kg, want %v and %v", n.Class, s.Density, s.Yield, n.Density, n.Yield)
		}
		// The water of tenths of a gallon is the share of API Spec 10A.
		if share := n.Water * FreshWater; math.Abs(share-n.WaterShare) > 0.005 {
			t.Errorf("class %s: water share %v, want %v", n.Class, share, n.WaterShare)
		}
		s.Density, s.Yield = n.Density, n.Yield
		if err := s.Check(0.01); err != nil {
			t.Errorf("class %s: %v", n.Class, err)
		}
		if got, ok := NeatOf(n.Class); !ok || got != n {
			t.Errorf("NeatOf(%s) = %v, %v", n.Class, got, ok)
		}
	}
	if n, ok := NeatOf("Z"); ok {
		t.Errorf("NeatOf(Z) = %v", n)
	}
}
