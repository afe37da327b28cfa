package calc_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	barrelSI = 0.158987294928
	footSI   = 0.3048
	ppgSI    = 0.45359237 / 0.003785411784
)

// TestDumpedMudByHand: 1150 gpm at 110 ft/h from 7000 to 8240 ft; 11.0 ppg of 16.0 and 8.6 ppg; 1.3 times 26 in hole of
// 2638 ft on top. All of it worked by hand.
func TestDumpedMudByHand(t *testing.T) {
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	share := (11 - 8.6) / (16 - 8.6)
	weighted := 1150 * 60 / 42.0 * 1240 / 110
	spot := 1.3 * 26 * 26 / 1029.4 * (8240 - 5602) // the handbooks' 1029.4 rounds 42 × 231 × 4/(12 pi)
	for _, c := range []struct {
		key                string
		unit, want, within float64
	}{
		{"mud.riserless.time", 3600, 1240 / 110.0, 1e-9},
		{"mud.riserless.volume", barrelSI, weighted, 1e-6},
		{"mud.riserless.share", 1, share, 1e-9},
		{"mud.riserless.rate", 0.003785411784 / 60, 1150 * share, 1e-6},
		{"mud.riserless.rate.sea", 0.003785411784 / 60, 1150 * (1 - share), 1e-6},
		{"mud.riserless.spot", barrelSI, spot, 0.1},
		{"mud.riserless.need", barrelSI, share * (weighted + spot), 0.1},
		{"mud.riserless.left", barrelSI, 8000 - share*(weighted+spot), 0.1},
		{"mud.riserless.ends", footSI, 7000 + 8000/share/(1150*60/42.0/110), 1e-6},
		{"mud.riserless.ends.spot", footSI, 7000 + (8000/share-spot)/(1150*60/42.0/110), 0.1},
		{"mud.riserless.sweeps", 1, 16, 0}, // 1398 ft of light hole, one each 90 ft
	} {
		if got := value(t, r, 2, c.key) / c.unit; math.Abs(got-c.want) > c.within {
			t.Errorf("%s = %v, want %v within %v", c.key, got, c.want, c.within)
		}
	}
}

// TestAStockThatEndsIsAStop: with 6000 bbl the stock ends above TD; the connections take more of it.
func TestAStockThatEndsIsAStop(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	if f := worst(t, calc.Evaluate(plan), 2, "stock_lasts"); f.Severity != calc.OK {
		t.Fatalf("%+v", f)
	}
	with(t, plan, "section[2].riserless.connection", "20 min")
	r := calc.Evaluate(plan)
	stand := plan.Rig.StandLength.SI
	if got, want := value(t, r, 2, "mud.riserless.time")/3600, 1240/110.0+1240*footSI/stand/3; !near(got, want, 1e-9) {
		t.Errorf("%v h with connections, want %v", got, want)
	}
	with(t, plan, "section[2].riserless.stock_volume", "5000 bbl")
	f := worst(t, calc.Evaluate(plan), 2, "stock_lasts")
	if f.Severity != calc.Stop || f.At >= 8240*footSI || f.At <= 7000*footSI {
		t.Errorf("5000 bbl: %+v", f)
	}
}

// TestTheActiveSystemIsWhatTheOtherPagesSay adds it up from the figures of the well, the volumes and the pits.
func TestTheActiveSystemIsWhatTheOtherPagesSay(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for s := 3; s <= len(plan.Sections); s++ {
			want := plan.Rig.ActivePits.SI + value(t, r, s, "volume.string") + value(t, r, s, "volume.bottoms_up_rig")
			for _, line := range []string{"line.choke", "line.kill", "line.booster"} {
				want += value(t, r, 0, line)
			}
			if got := value(t, r, s, "mud.change.active"); !near(got, want, 1e-9*want) {
				t.Errorf("section %d: %v, want %v", s, got, want)
			}
		}
	})
}

// TestWeightingUpConservesMass: mud and material weigh what comes out, whether the volume grows or is kept.
func TestWeightingUpConservesMass(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, "ottermast-2")
		s := &plan.Sections[3]
		s.Treatment.Keep = rapid.SampledFrom([]string{model.VolumeGrows, model.VolumeKept}).Draw(rt, "keep")
		s.Treatment.Density.SI = rapid.Float64Range(1000, 2500).Draw(rt, "wanted")
		sheet := calc.Alone(plan, 3)
		volume, after := valueOn(t, sheet, "mud.change.active"), valueOn(t, sheet, "mud.change.after")
		added, dumped := 0.0, 0.0
		if wanted := s.Treatment.Density.SI; wanted >= s.Density.SI {
			added = valueOn(t, sheet, "mud.change.wanted")
			if s.Treatment.Keep == model.VolumeKept {
				dumped = valueOn(t, sheet, "mud.change.wanted.volume")
			}
		} else {
			added = valueOn(t, sheet, "mud.change.base") * s.Recipe.Base.SI
			if s.Treatment.Keep == model.VolumeKept {
				dumped = valueOn(t, sheet, "mud.change.base.discard")
			}
		}
		if got, want := (volume-dumped)*s.Density.SI+added, after*s.Treatment.Density.SI; !near(got, want, 1e-6*want) {
			rt.Errorf("%v kg in, %v kg out", got, want)
		}
		if s.Treatment.Keep == model.VolumeKept && !near(after, volume, 1e-9*volume) {
			rt.Errorf("kept %v, was %v", after, volume)
		}
	})
}

// TestTheBudgetBalances: what is built and at hand is what the section takes and has.
func TestTheBudgetBalances(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := demo(t, "ottermast-2")
		v := &plan.Sections[2].Volumes
		v.Start.SI, v.Start.Unit = rapid.Float64Range(0, 1500).Draw(rt, "start"), v.Reserve.Unit
		v.Reserve.SI = rapid.Float64Range(0, 400).Draw(rt, "reserve")
		v.Removal.SI = rapid.Float64Range(0, 1).Draw(rt, "removal")
		sheet := calc.Alone(plan, 2)
		sum := 0.0
		for _, key := range []string{"fill", "hole", "losses", "cuttings", "dilution.surplus"} {
			sum += valueOn(t, sheet, "mud.pits."+key)
		}
		in := valueOn(t, sheet, "mud.pits.start") + valueOn(t, sheet, "mud.pits.build")
		if got := valueOn(t, sheet, "mud.pits.td") + sum; !near(got, in, 1e-9*in) {
			rt.Errorf("%v in, %v out", in, got)
		}
		if valueOn(t, sheet, "mud.pits.td") < valueOn(t, sheet, "mud.pits.surface")+v.Reserve.SI-1e-9 {
			rt.Error("less in the pits than is to be")
		}
	})
}

// TestFindingsOnStocks turn with what is aboard.
func TestFindingsOnStocks(t *testing.T) {
	for _, c := range []struct {
		section    int
		path, text string
		key        string
		want       calc.Severity
	}{
		{3, "rig.barite", "60 t", "weight_step", calc.Caution},
		{3, "rig.barite", "60 t", "weight_least", calc.Caution},
		{3, "rig.barite", "300 t", "weight_to_test", calc.OK},
		{3, "section[3].volumes.reserve", "300 m3", "pits_hold", calc.Stop},
		{3, "section[3].volumes.reserve", "20 m3", "reserve_mud", calc.Caution},
		{5, "section[5].volumes.surface", "10 m3", "surface_mud_share", calc.OK}, // the start brings enough
		{2, "section[2].riserless.kill_volume", "140 m3", "kill_mud", calc.Caution},
		{2, "section[2].riserless.kill_volume", "250 m3", "pits_hold", calc.Stop},
		{2, "section[2].riserless.kill_density", "1.9 sg", "kill_fracture", calc.Caution},
		{2, "section[2].riserless.spot_factor", "160 %", "spot_fills", calc.OK},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		if f := worst(t, calc.Evaluate(plan), c.section, c.key); f.Severity != c.want {
			t.Errorf("%s = %s: %v, margin %g", c.path, c.text, f.Severity, f.Margin)
		}
	}
}

// TestABlend is worked by hand: 100 m3 of 1.42 sg with 50 m3 of 1.72 sg is 150 m3 of 1.52 sg, and 1.5 sg takes 80 of 300
// parts.
func TestABlend(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, e := range [][2]string{{"volume", "100 m3"}, {"second_density", "1.72 sg"}, {"second_volume", "50 m3"}} {
		with(t, plan, "section[4].treatment."+e[0], e[1])
	}
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{"mud.change.blend": 1520, "mud.change.blend.volume": 150, "mud.change.part": 80.0 / 300, "mud.change.part.volume": 100 * 80 / 220.0} {
		if got := value(t, r, 4, key); !near(got, want, 1e-9*want) {
			t.Errorf("%s = %v, want %v", key, got, want)
		}
	}
}

// TestBrineByItsDensity: the salt of 8 % KCl follows from the density that 8 % gives.
func TestBrineByItsDensity(t *testing.T) {
	plan := demo(t, "ottermast-2")
	was := calc.Evaluate(plan)
	with(t, plan, "section[3].recipe.salt_share", "")
	if f := figure(t, calc.Evaluate(plan), 3, "mud.recipe.salt"); f.OK || f.Mend != "section[3].recipe.salt_share" {
		t.Errorf("%+v", f)
	}
	with(t, plan, "section[3].recipe.brine_density", "1.0499 sg")
	r := calc.Evaluate(plan)
	for _, key := range []string{"mud.recipe.salt", "mud.recipe.water", "mud.recipe.high", "mud.recipe.low"} {
		if got, want := value(t, r, 3, key), value(t, was, 3, key); !near(got, want, 1e-3*want) {
			t.Errorf("%s = %v by density, %v by share", key, got, want)
		}
	}
}

// TestDrilledSolidsByHand balances the mud of saltlantern's sections 4 and 5 by hand, its brine of 25 % CaCl2 at 1.228 sg (handbook
// tables, from memory), and holds the low-gravity solids against what is common: 4 to 6 % in the demo, at most 8 %.
func TestDrilledSolidsByHand(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	r := calc.Evaluate(plan)
	for section, c := range map[int]struct{ density, oil, water float64 }{4: {11.2 * 119.8264, 0.645, 0.18}, 5: {12.35 * 119.8264, 0.63, 0.155}} {
		const oil, brine, high, low = 6.59 * 119.8264, 1228.0, 4200.0, 2600.0
		wet := c.water * 998.2 / 0.75 / brine
		solids := 1 - c.oil - wet
		heavy := (c.density - c.oil*oil - wet*brine - low*solids) / (high - low)
		for key, want := range map[string]float64{"mud.recipe.low": solids - heavy, "mud.recipe.high": heavy,
			"mud.recipe.low.mass": (solids - heavy) * low, "mud.recipe.high.mass": heavy * high} {
			if got := value(t, r, section, key); !near(got, want, 0.02*want) {
				t.Errorf("section %d %s = %v, by hand %v", section, key, got, want)
			}
		}
		if f := figure(t, r, section, "mud.recipe.low.mass"); f.Kind != quantity.Concentration {
			t.Errorf("%s is shown as a %v", f.Key, f.Kind)
		}
	}
	for section := 3; section <= 6; section++ {
		if low := value(t, r, section, "mud.recipe.low"); low < 0.04 || low > 0.06 {
			t.Errorf("section %d: drilled solids %v", section, low)
		}
		if f := worst(t, r, section, "drilled_solids"); f.Severity != calc.OK {
			t.Errorf("%+v", f)
		}
	}
	with(t, plan, "section[4].recipe.oil", "61.5 %") // less oil for the same density: light solids stand for it
	if f := worst(t, calc.Evaluate(plan), 4, "drilled_solids"); f.Severity != calc.Caution || f.Mend != "section[4].recipe.water" || f.Measured < 0.08 {
		t.Errorf("%+v", f)
	}
}

// TestMudProposalsMeetTheirLimit takes each proposal into the plan and looks whether it keeps what it promises, and whether
// more would not.
func TestMudProposalsMeetTheirLimit(t *testing.T) {
	for _, c := range []struct {
		demo    string
		section int
		key     string  // the entry
		further float64 // than what is proposed, SI
		figure  string
		keeps   func(plan *model.Plan, value float64) bool
	}{
		{"saltlantern-1", 2, "weighted_from", -50 * footSI, "mud.riserless.left", func(_ *model.Plan, v float64) bool { return v >= 0 }},
		{"ottermast-2", 4, "density", 50, "mud.change.wanted", func(p *model.Plan, v float64) bool { return v <= p.Rig.Barite.SI }},
		{"ottermast-2", 4, "reserve", 5, "mud.pits.left", func(_ *model.Plan, v float64) bool { return v >= 0 }},
	} {
		found := false
		for _, p := range calc.Proposals(demo(t, c.demo), c.section-1, model.TopicMud) {
			if p.Ref.Field.Key != c.key {
				continue
			}
			found = true
			if !p.OK {
				t.Errorf("%s: %s", p.Title, p.Why)
				continue
			}
			plan := demo(t, c.demo)
			p.Ref.Set(plan, p.Entry)
			if v := value(t, calc.Evaluate(plan), c.section, c.figure); !c.keeps(plan, v) {
				t.Errorf("%s: %s gives %g", p.Title, p.Entry.Quantity.Text(), v)
			}
			more := p.Entry
			more.Quantity.SI += c.further
			p.Ref.Set(plan, more)
			if v := value(t, calc.Evaluate(plan), c.section, c.figure); c.keeps(plan, v) {
				t.Errorf("%s: further than %s gives %g", p.Title, p.Entry.Quantity.Text(), v)
			}
		}
		if !found {
			t.Errorf("%s %d: nothing proposed for %s", c.demo, c.section, c.key)
		}
	}
}

// stockChart returns the chart of a section, counted from 0, with a key; the other kind must not be there.
func stockChart(t *testing.T, plan *model.Plan, section int, key string) calc.Chart {
	t.Helper()
	var list []calc.Chart
	for _, c := range calc.Charts(plan, section, model.TopicMud) {
		if c.Key == "mud.riserless" || c.Key == "mud.change" {
			list = append(list, c)
		}
	}
	if len(list) != 1 || list[0].Key != key {
		t.Fatalf("section %d: %+v, want %s alone", section+1, list, key)
	}
	return list[0]
}

// TestMudChartsEndAtTheirFigures: the curves go through what the page says.
func TestMudChartsEndAtTheirFigures(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	r := calc.Evaluate(plan)
	left, _ := stockChart(t, plan, 1, "mud.riserless").Curves[0].At(8240 * footSI)
	if want := value(t, r, 2, "mud.riserless.left") + value(t, r, 2, "mud.riserless.need.spot"); !near(left, want, 1e-6) {
		t.Errorf("stock at TD %v, want %v", left, want)
	}
	step := value(t, r, 5, "mud.change.step.density")
	mass, ok := stockChart(t, plan, 4, "mud.change").Curves[0].At(step)
	if want := value(t, r, 5, "mud.change.step"); !ok || !near(mass, want, 1e-6*want) {
		t.Errorf("material at the step %v, %t, want %v", mass, ok, want)
	}
	ups := calc.WeightUps(plan, 4, ppgSI, 1)
	if want := value(t, r, 5, "mud.change.step"); len(ups) != 1 || !near(ups[0].Mass, want, 1e-6*want) {
		t.Errorf("%+v, want %v", ups, want)
	}
	if list := calc.WeightUps(plan, 4, 0, 3); list != nil {
		t.Errorf("no step gives %v", list)
	}
}

// TestStockThatOutlastsTheHoleSaysSo: 20000 bbl reach past TD, 1000 bbl do not.
func TestStockThatOutlastsTheHoleSaysSo(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	for volume, want := range map[string]string{"20000 bbl": "would end there, below TD", "1000 bbl": ""} {
		with(t, plan, "section[2].riserless.stock_volume", volume)
		f := figure(t, calc.Evaluate(plan), 2, "mud.riserless.ends")
		if td := value(t, calc.Evaluate(plan), 2, "hole.td"); f.Note != want || (f.Value > td) != (want != "") {
			t.Errorf("%s ends at %g m, TD %g m: %q", volume, f.Value, td, f.Note)
		}
	}
}
