package calc_test

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// stocked returns the demo with one stock.
func stocked(t testing.TB, stock model.Stock) *model.Plan {
	plan := demo(t, "ottermast-2")
	plan.Stocks = []model.Stock{stock}
	return plan
}

// TestStocksAreConserved: what was aboard and what the boat brought is what the sections took and what is left, whenever it comes.
func TestStocksAreConserved(t *testing.T) {
	items := entry(t, stocked(t, model.Stock{}), "stock[1].item").Field.Choices
	rapid.Check(t, func(t *rapid.T) {
		plan := demo(&testing.T{}, "ottermast-2")
		stock := model.Stock{Item: rapid.SampledFrom(items).Draw(t, "item")}
		amount := func(name string) quantity.Value {
			return quantity.Value{SI: rapid.Float64Range(0, 1e6).Draw(t, name), Unit: quantity.Kilogram}
		}
		stock.Mass, stock.BoatMass, stock.DailyMass = amount("aboard"), amount("boat"), amount("daily")
		if stock.Fluid() {
			stock.Volume, stock.BoatVolume, stock.DailyFluid = stock.Mass, stock.BoatMass, stock.DailyMass
		}
		begins, _ := model.ParseMoment(plan.Schedule.Start)
		boat := rapid.Float64Range(-5*aDay, 40*aDay).Draw(t, "boat comes")
		stock.Boat = begins.After(boat).String()
		plan.Stocks = []model.Stock{stock}
		r := calc.Evaluate(plan)
		had, came := stock.Aboard().SI, false
		for i := range plan.Sections {
			left, _ := r.Sections[i].Find("stock.1")
			use, _ := r.Sections[i].Find("stock.1.use")
			if !left.OK || !use.OK {
				t.Fatalf("section %d: %s %s", i+1, left.Why, use.Why)
			}
			want := had - use.Value
			if brought := math.Abs(left.Value-want) > 1e-6*(1+math.Abs(want)); brought {
				want += stock.Brought().SI
				if came || math.Abs(left.Value-want) > 1e-6*(1+math.Abs(want)) {
					t.Fatalf("section %d: %g left of %g, %g taken, %g brought", i+1, left.Value, had, use.Value, stock.Brought().SI)
				}
				came = true
				ends, _ := r.Sections[i].Find("time.ends")
				if boat > ends.Value {
					t.Fatalf("section %d ends at %g, the boat comes at %g", i+1, ends.Value, boat)
				}
			}
			had = left.Value
		}
	})
}

// TestStocksTakeWhatTheOtherPagesSay: weighting material of the recipe, cement of the slurries.
func TestStocksTakeWhatTheOtherPagesSay(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for i := range plan.Sections {
		plan.Sections[i].Treatment.Density = quantity.Value{}
	}
	plan.Stocks = []model.Stock{{Item: model.Barite}, {Item: model.DryCement}, {Item: model.BaseFluid}, {Item: model.DrillWater}}
	r := calc.Evaluate(plan)
	for n := 1; n <= len(plan.Sections); n++ {
		cement, water := 0.0, 0.0
		for k := range plan.Sections[n-1].Slurries {
			key := "cement.slurry." + strconv.Itoa(k+1)
			cement += value(t, r, n, key+".dry")
			if plan.Sections[n-1].Slurries[k].MixDensity.SI < 1010 {
				water += value(t, r, n, key+".mix")
			}
		}
		for k := range plan.Sections[n-1].Plugs {
			key := "cement.plug." + strconv.Itoa(k+1)
			cement += value(t, r, n, key+".dry")
			water += value(t, r, n, key+".mix")
		}
		for key, want := range map[string]float64{"stock.1.use": value(t, r, n, "mud.recipe.material"), "stock.2.use": cement,
			"stock.3.use": value(t, r, n, "mud.recipe.base"), "stock.4.use": water} {
			if got := value(t, r, n, key); !near(got, want, 1e-6*(1+want)) {
				t.Errorf("section %d: %s %g, expected %g", n, key, got, want)
			}
		}
	}
}

// TestWhatIsUsedIsNotUsedAgain: a cement job that is done takes no more cement, a section that is done takes nothing.
func TestWhatIsUsedIsNotUsedAgain(t *testing.T) {
	plan := stocked(t, model.Stock{Item: model.DryCement, Mass: q(t, "500 t", quantity.Mass)})
	before := calc.Evaluate(plan)
	plan.Sections[1].Done = []model.DoneRow{{Step: "cement", Ended: "2027-04-09 06:00"}}
	r := calc.Evaluate(plan)
	if _, ok := r.Sections[0].Find("stock.1"); ok {
		t.Error("the first section, which is done, has stocks")
	}
	if use, left := value(t, r, 2, "stock.1.use"), value(t, r, 2, "stock.1"); use != 0 || left != 500e3 {
		t.Errorf("cemented, and takes %g kg, %g kg left", use, left)
	}
	if got, want := value(t, r, 3, "stock.1"), 500e3-value(t, before, 3, "stock.1.use"); !near(got, want, 1e-6) {
		t.Errorf("%g kg left, expected %g kg", got, want)
	}
}

// TestWhatStaysAboardByHand: two plugs of 100 m in a 17 1/2 in hole are 31.04 m3; neat class G with 44 % of water yields
// 1/3140 + 0.44/998.2 = 0.7593 L/kg, so 40.9 t. 300 bbl are 47.70 m3, with 85.7 kg/m3 (30 lb in 0.35 m3, as the trade rounds it) 4.09 t.
func TestWhatStaysAboardByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Stocks = []model.Stock{{Item: model.DryCement}, {Item: model.LostCirculation}, {Item: model.Barite}, {Item: model.KillMudStock}, {Item: model.OtherBulk},
		{Item: model.DryCement, LeastMass: q(t, "30 t", quantity.Mass)}}
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{"stock.1.keep": 40.9e3, "stock.2.keep": 4.088e3, "stock.4.keep": 0, "stock.5.keep": 0, "stock.6.keep": 30e3} {
		if got := value(t, r, 3, key); !near(got, want, 0.002*want) {
			t.Errorf("%s is %g, expected %g", key, got, want)
		}
	}
	if got, want := value(t, r, 3, "stock.3.keep"), math.Max(70e3, value(t, r, 3, "mud.change.step")); !near(got, want, 1e-6) {
		t.Errorf("barite to stay is %g kg, expected %g kg", got, want)
	}
	if got := value(t, r, 1, "stock.3.keep"); got != 70e3 {
		t.Errorf("barite to stay without a riser is %g kg", got)
	}
	// 507 m of 24 in hole below 448 m, the lowest 3.1 m behind the opener of the bit's 17 1/2 in.
	if got := value(t, r, 2, "stock.4.keep"); !near(got, 503.9*0.29186+3.1*0.15518, 0.05) {
		t.Errorf("kill mud to stay is %g m3", got)
	}
}

// TestShortageIsAFinding, and so is a boat that comes after what it brings is needed.
func TestShortageIsAFinding(t *testing.T) {
	stock := model.Stock{Item: model.DryCement, Mass: q(t, "200 t", quantity.Mass), BoatMass: q(t, "300 t", quantity.Mass), LeastMass: q(t, "10 t", quantity.Mass),
		Boat: "2027-04-07 06:00", Lead: q(t, "6 d", quantity.Days)}
	plan := stocked(t, stock)
	r := calc.Evaluate(plan)
	for n := 1; n <= 5; n++ {
		if f := worst(t, r, n, "stock_mass"); f.Severity != calc.OK {
			t.Errorf("section %d: %s %g", n, f.Text, f.Measured)
		}
	}
	need := value(t, r, 2, "time.ready.cement")
	if f := worst(t, r, 2, "boat"); f.Severity != calc.OK || !near(f.Measured, need-2*aDay, 61) {
		t.Errorf("the boat is %g d early", f.Measured/aDay)
	}
	if got := value(t, r, 2, "stock.1.order"); !near(got, need-6*aDay, 1e-6) {
		t.Errorf("to be ordered by %g d", got/aDay)
	}
	plan.Stocks[0].Boat = "2027-04-12 06:00" // the surface string is cemented before
	r = calc.Evaluate(plan)
	if f := worst(t, r, 2, "stock_mass"); f.Severity != calc.Caution || string(f.Mend) != "stock[1].mass" {
		t.Errorf("short of %g kg: %v, to mend %s", f.Measured, f.Severity, f.Mend)
	}
	if f := worst(t, r, 2, "boat"); f.Severity != calc.Caution || string(f.Mend) != "stock[1].boat" || f.Measured > 0 {
		t.Errorf("the boat is %g d early: %v", f.Measured/aDay, f.Severity)
	}
	if f := worst(t, r, 3, "stock_mass"); f.Severity != calc.OK {
		t.Errorf("with the boat short of %g kg", f.Measured)
	}
	plan.Stocks[0].Boat = "soon"
	if list := findings(calc.Evaluate(plan), 0, "entry"); len(list) != 1 || string(list[0].Mend) != "stock[1].boat" {
		t.Errorf("a boat's day that cannot be read: %+v", list)
	}
}

// TestStocksWithoutTheirEntriesAreBlank and say which.
func TestStocksWithoutTheirEntriesAreBlank(t *testing.T) {
	for _, c := range []struct {
		stock model.Stock
		blank string // of the plan
		key   string
		mend  string
	}{
		{model.Stock{Item: model.DryCement}, "", "stock.1", "stock[1].mass"},
		{model.Stock{Item: model.DrillWater}, "", "stock.1", "stock[1].volume"},
		{model.Stock{Item: model.Barite}, "section[3].recipe.base", "stock.1.use", "section[3].recipe.base"},
		{model.Stock{Item: model.Barite}, "section[3].density", "stock.1.use", "section[3].density"},
		{model.Stock{Item: model.DryCement}, "section[3].slurry[1].yield", "stock.1.use", "section[3].slurry[1].yield"},
	} {
		plan := stocked(t, c.stock)
		if c.blank != "" {
			with(t, plan, c.blank, "")
		}
		if f := figure(t, calc.Evaluate(plan), 3, c.key); f.OK || string(f.Mend) != c.mend {
			t.Errorf("%s without %s: %v, to mend %q: %s", c.key, c.blank, f.OK, f.Mend, f.Why)
		}
	}
}
