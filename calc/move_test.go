package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// contents returns every entry of the plan by its path.
func contents(plan *model.Plan) map[model.Path]model.Entry {
	all := map[model.Path]model.Entry{}
	eachRef(plan, func(r model.Ref) { all[r.Path()] = r.Get(plan) })
	return all
}

// moved applies a change of the datum and returns the paths of what else it changed.
func moved(t *testing.T, plan *model.Plan, path, to string, how calc.Move) (others []model.Path) {
	t.Helper()
	ref := entry(t, plan, path)
	e, err := ref.Field.Parse(to, 0)
	if err != nil {
		t.Fatal(err)
	}
	before := contents(plan)
	var h model.History
	h.Do(plan, model.Edit{Name: "move", Changes: calc.MoveDatum(plan, ref, e, how)})
	for p, now := range contents(plan) {
		if now != before[p] && p != model.Path(path) {
			others = append(others, p)
		}
	}
	slices.Sort(others)
	if got := ref.Get(plan); got != e {
		t.Errorf("%s = %q after the move, want %q", path, got.Quantity.Text(), to)
	}
	return others
}

// deeper returns the well.water_depth of a demo with a length added.
func deeper(plan *model.Plan, by float64) string {
	return quantity.Value{SI: plan.Well.WaterDepth.SI + by, Unit: plan.Well.WaterDepth.Unit}.Text()
}

func TestMovingThereAndBackRestoresThePlan(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		for _, from := range []string{model.FromRKB, model.FromMSL, model.FromMudline} {
			for _, density := range []string{model.FromRKB, model.FromMSL} {
				plan := demo(t, name)
				plan.Prognosis.DepthFrom, plan.Prognosis.DensityFrom = from, density
				before := contents(plan)
				there, back := deeper(plan, 10), deeper(plan, 0)
				if others := moved(t, plan, "well.water_depth", there, calc.MoveAll); len(others) < 10 {
					t.Errorf("only %d entries move", len(others))
				}
				moved(t, plan, "well.water_depth", back, calc.MoveAll)
				for p, now := range contents(plan) {
					was := before[p]
					within := 1e-6 // of a depth in m; a density may be one step of the rounding off
					if was.Quantity.SI > 100 && was.Quantity.Unit.Fits(quantity.EMW) {
						within = 0.1001
					}
					if !was.IsSet() != !now.IsSet() || was.Text != now.Text || math.Abs(now.Quantity.SI-was.Quantity.SI) > within {
						t.Errorf("depths from %s, densities from %s: %s was %q, is %q", from, density, p, was.Quantity.Text(), now.Quantity.Text())
					}
				}
			}
		}
	})
}

// pressures returns the pore pressure of a plan at depths below the mudline.
func pressures(t *testing.T, plan *model.Plan, below []float64) (list []float64) {
	t.Helper()
	r := calc.Evaluate(plan)
	for _, d := range below {
		tvd := r.Datum.Mudline + d
		i := slices.IndexFunc(r.Window, func(p calc.WindowPoint) bool { return math.Abs(p.TVD-tvd) < 0.01 })
		if i < 0 {
			t.Fatalf("no row of the prognosis at %g m below the mudline", d)
		}
		list = append(list, r.Window[i].Pore*9.80665*r.Window[i].TVD)
	}
	return list
}

func TestAPressureIsWhatItIsWhenTheRotaryRises(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		for _, from := range []string{model.FromRKB, model.FromMSL, model.FromMudline} {
			for _, density := range []string{model.FromRKB, model.FromMSL} {
				plan := demo(t, name)
				plan.Prognosis.DensityFrom = density
				restate(plan, from)
				r := calc.Evaluate(plan)
				var below []float64
				for _, p := range r.Window {
					below = append(below, p.TVD-r.Datum.Mudline)
				}
				before := pressures(t, plan, below)
				moved(t, plan, "well.air_gap", "30 m", calc.MoveAll)
				for i, now := range pressures(t, plan, below) {
					// A density is kept to 0.1 kg/m3.
					if within := 0.051 * 9.80665 * (below[i] + r.Datum.Mudline + 30); math.Abs(now-before[i]) > within {
						t.Errorf("depths from %s, densities from %s: pore at %.0f m below the mudline %.0f Pa, was %.0f", from, density,
							below[i], now, before[i])
					}
				}
			}
		}
	})
}

// restate gives the depths of the prognosis from another reference without moving them.
func restate(plan *model.Plan, from string) {
	plan.Prognosis.DepthFrom = from
	up := map[string]float64{model.FromMSL: plan.Well.AirGap.SI, model.FromMudline: plan.Well.AirGap.SI + plan.Well.WaterDepth.SI}[from]
	for i := range plan.Window {
		plan.Window[i].Depth.SI -= up
	}
}

// TestADeeperSeaAddsItsWeight: every pressure below the mudline grows by the added sea.
func TestADeeperSeaAddsItsWeight(t *testing.T) {
	plan := demo(t, "ottermast-2")
	below := []float64{32, 80, 587, 1096, 1666, 2594}
	before := pressures(t, plan, below)
	moved(t, plan, "well.water_depth", "352 m", calc.MoveAll)
	for i, now := range pressures(t, plan, below) {
		if want := before[i] + 1030*9.80665*10; math.Abs(now-want) > 0.051*9.80665*(below[i]+400) {
			t.Errorf("pore at %g m below the mudline = %.0f Pa, want %.0f", below[i], now, want)
		}
	}
}

func TestHolesAndStringsGoWithTheSeabed(t *testing.T) {
	for _, how := range []calc.Move{calc.KeepBelowMudline, calc.MoveAll} {
		for _, c := range []struct{ path, to string }{{"well.water_depth", "352 m"}, {"well.air_gap", "36 m"}} {
			plan := demo(t, "ottermast-2")
			before := calc.Evaluate(plan)
			others := moved(t, plan, c.path, c.to, how)
			r := calc.Evaluate(plan)
			for s := 1; s <= 5; s++ {
				for _, key := range []string{"hole.td.bml", "hole.shoe.bml", "casing.top.bml", "hole.length", "casing.length", "hole.volume", "hole.inclination"} {
					if was, now := value(t, before, s, key), value(t, r, s, key); !near(now, was, 1e-6) {
						t.Errorf("%v, %s: section %d %s was %g, is %g", how, c.path, s, key, was, now)
					}
				}
			}
			prognosis := slices.Contains(others, "prognosis.row[1].depth") || slices.Contains(others, "formation[1].top")
			if prognosis != (how == calc.MoveAll) {
				t.Errorf("%v: prognosis and formations move: %v", how, prognosis)
			}
		}
	}
}

// TestDepthsFromRKBCanStay: but the lines go with the stack, as the riser does.
func TestDepthsFromRKBCanStay(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		for path, to := range map[string]string{"well.air_gap": "30 m", "well.water_depth": deeper(demo(t, name), 3)} {
			plan := demo(t, name)
			before := value(t, calc.Evaluate(plan), 0, "datum.bop_top")
			lines := plan.Rig.ChokeLength.SI
			for _, other := range moved(t, plan, path, to, calc.KeepRKB) {
				if !strings.HasPrefix(string(other), "rig.") || !strings.HasSuffix(string(other), "_length") {
					t.Errorf("also changed: %v", other)
				}
			}
			longer := value(t, calc.Evaluate(plan), 0, "datum.bop_top") - before
			if got := plan.Rig.ChokeLength.SI - lines; plan.Rig.ChokeLength.IsSet() && !near(got, longer, 1e-3) {
				t.Errorf("%s: the riser grows by %g m, the choke line by %g m", path, longer, got)
			}
		}
	})
}

func TestEntriesKeepTheirUnitWhenTheyMove(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	moved(t, plan, "well.air_gap", "92 ft", calc.MoveAll)
	for path, want := range map[string]string{"section[3].td": "10960 ft", "section[3].top": "5408 ft", "section[2].weighted_from": "7010 ft",
		"prognosis.row[1].depth": "5332 ft"} {
		if got := entry(t, plan, path).Get(plan).Quantity.Text(); got != want {
			t.Errorf("%s = %s, want %s", path, got, want)
		}
	}
}

// TestChoosingWhichDepthIsGivenMovesNothing goes to the shoe and back in every section.
func TestChoosingWhichDepthIsGivenMovesNothing(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		before := computed(calc.Evaluate(plan))
		var h model.History
		for _, to := range []string{model.ByShoe, model.ByTD} {
			for i := range plan.Sections {
				ref := entry(t, plan, string(model.PathOf(i, "depth_by")))
				h.Do(plan, model.Edit{Name: "depth by " + to, Changes: calc.FixDepthBy(plan, ref, model.Entry{Text: to})})
			}
			after := computed(calc.Evaluate(plan))
			if len(after) != len(before) {
				t.Errorf("by %s: %d figures, were %d", to, len(after), len(before))
			}
			for key, was := range before {
				if now, ok := after[key]; !ok || math.Abs(now-was) > 1e-5*math.Max(1, math.Abs(was)) {
					t.Errorf("by %s: %s was %g, is %g", to, key, was, now)
				}
			}
		}
	})
}

// TestAGivenShoeStaysWhenTheRatholeGrows, and a given TD takes the shoe up.
func TestAGivenShoeStaysWhenTheRatholeGrows(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	ref := entry(t, plan, "section[3].depth_by")
	var h model.History
	h.Do(plan, model.Edit{Changes: calc.FixDepthBy(plan, ref, model.Entry{Text: model.ByShoe})})
	with(t, plan, "section[3].rathole", "60 ft")
	r := calc.Evaluate(plan)
	if shoe, td := value(t, r, 3, "hole.shoe"), value(t, r, 3, "hole.td"); !near(shoe, 10800*foot, 1e-6) || !near(td, 10970*foot, 1e-6) {
		t.Errorf("shoe %g ft, TD %g ft, want 10800 and 10970", shoe/foot, td/foot)
	}
}

func TestMovingFromABlankDatum(t *testing.T) {
	for _, how := range calc.Moves() {
		plan := demo(t, "ottermast-2")
		plan.Well.WaterDepth = quantity.Value{}
		ref := entry(t, plan, "well.water_depth")
		e, _ := ref.Field.Parse("342 m", 0)
		changes := calc.MoveDatum(plan, ref, e, how)
		if len(changes) != 1 {
			t.Errorf("%v: a first water depth moves %d entries", how, len(changes)-1)
		}
	}
}

// TestWhatMovesStaysInItsRange: an edit may not leave an entry that the file reader refuses.
func TestWhatMovesStaysInItsRange(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "trajectory.method", "survey list")
	plan.Surveys = make([]model.Survey, 2)
	with(t, plan, "trajectory.survey[1].depth", "0 m")
	with(t, plan, "trajectory.survey[2].depth", "1100 m")
	moved(t, plan, "well.water_depth", "300 m", calc.MoveAll)
	eachRef(plan, func(r model.Ref) {
		if r.Field.Type != model.QuantityField || !r.Get(plan).IsSet() {
			return
		}
		if _, err := r.Field.Parse(r.Get(plan).Quantity.Text(), 0); err != nil {
			t.Errorf("%s: %v", r.Path(), err)
		}
	})
}
