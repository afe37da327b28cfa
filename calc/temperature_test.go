package calc_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestStaticTemperaturesByHand: seabed and gradient, on true vertical depth; rows of the prognosis stand before them.
func TestStaticTemperaturesByHand(t *testing.T) {
	plan := demo(t, "saltlantern-1") // vertical
	r := calc.Evaluate(plan)
	const foot = 0.3048
	for section, td := range map[int]float64{3: 10950, 5: 18240, 6: 19900} {
		want := 273.15 + (39+1.35*(td-82-5240)/100-32)/1.8
		if got := value(t, r, section, "temperature.td"); math.Abs(got-want) > 1e-6 {
			t.Errorf("section %d: %v K, want %v", section, got, want)
		}
	}
	rows := len(plan.Window)
	with(t, plan, "prognosis.row[1].temperature", "40 degF")
	with(t, plan, "prognosis.row["+strconv.Itoa(rows)+"].temperature", "250 degF")
	first, last := plan.Window[0].Depth.SI, plan.Window[rows-1].Depth.SI
	r = calc.Evaluate(plan)
	td := 18240 * foot
	want := 273.15 + (40+(250-40)*(td-first)/(last-first)-32)/1.8
	if got := value(t, r, 5, "temperature.td"); td < last && math.Abs(got-want) > 1e-6 {
		t.Errorf("by rows: %v K, want %v", got, want)
	}
}

// chartOf returns a chart of the mud page by its key.
func chartOf(plan *model.Plan, section int, key string) (calc.Chart, bool) {
	for _, chart := range calc.Charts(plan, section, model.TopicMud) {
		if chart.Key == key {
			return chart, true
		}
	}
	return calc.Chart{}, false
}

// TestCoarseTemperaturesAgreeWithFine: the chart cuts the well three times as fine as the figures.
func TestCoarseTemperaturesAgreeWithFine(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			chart, ok := chartOf(plan, i, "mud.temperature")
			if !ok || len(chart.Curves) != 3 {
				t.Fatalf("section %d: %+v", i+1, chart)
			}
			static, down, up := chart.Curves[0].Points, chart.Curves[1].Points, chart.Curves[2].Points
			for _, c := range []struct {
				key    string
				got    float64
				within float64
			}{
				{"temperature.td", static[len(static)-1].Value, 1e-9},
				{"temperature.bhct", down[len(down)-1].Value, 0.5},
				{"temperature.flowline", up[0].Value, 0.5},
			} {
				if want := value(t, r, i+1, c.key); math.Abs(c.got-want) > c.within {
					t.Errorf("section %d %s = %v, the chart has %v", i+1, c.key, want, c.got)
				}
			}
		}
	})
}

// TestWhatWarmsAMud: each of these is known to warm or cool the mud at the bottom or at the flowline.
func TestWhatWarmsAMud(t *testing.T) {
	for _, c := range []struct {
		path, text, key string
		warmer          bool
	}{
		{"section[4].circulating.pump_pressure", "0 bar", "temperature.bhct", false},
		{"section[4].circulating.pump_pressure", "310 bar", "temperature.flowline", true},
		{"section[4].circulating.inlet", "45 degC", "temperature.bhct", true},
		{"section[4].circulating.pits_cool", "12 K", "temperature.flowline", false},
		{"section[4].flow", "2500 L/min", "temperature.bhct", true},
		{"section[4].booster", "3000 L/min", "temperature.flowline", false},
		{"rig.riser_foam", "10 in", "temperature.flowline", true},
		{"well.geothermal_gradient", "4 degC/100m", "temperature.bhct", true},
		{"well.seabed_temperature", "2 degC", "temperature.bhct", false},
		{"section[4].pumping.mix_rate", "700 L/min", "temperature.cement.bhct", true},
		{"section[4].circulating.cement_inlet", "50 degC", "temperature.cement.bhct", true},
		{"section[4].circulating.cement_inlet", "11 degC", "temperature.cement.bhct", false},
		{"section[4].circulating.cementing", "24 h", "temperature.cement.bhct", false},
	} {
		if before, after := changed(t, "ottermast-2", c.path, c.text, 4, c.key); after == before || (after > before) != c.warmer {
			t.Errorf("%s = %q: %s from %v to %v", c.path, c.text, c.key, before, after)
		}
	}
	// What the rock does to mud that is pumped in at one temperature. Mud that settles with its pits also keeps what the rock
	// higher up does not take, and that may outweigh it.
	for _, c := range []struct {
		path, text string
		warmer     bool
	}{
		{"section[4].circulating.time", "300 h", false},
		{"well.rock_conductivity", "4", true},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "section[4].circulating.inlet", "20 degC")
		before := value(t, calc.Evaluate(plan), 4, "temperature.bhct")
		with(t, plan, c.path, c.text)
		if after := value(t, calc.Evaluate(plan), 4, "temperature.bhct"); after == before || (after > before) != c.warmer {
			t.Errorf("%s = %q: from %v to %v", c.path, c.text, before, after)
		}
	}
}

// TestMudSettlesWithItsPits: what goes in is what comes back less what the pits take, and then it is as if that had been entered.
func TestMudSettlesWithItsPits(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	in := value(t, r, 4, "temperature.inlet")
	back, bottom := value(t, r, 4, "temperature.flowline"), value(t, r, 4, "temperature.bhct")
	if math.Abs(back-1-in) > 1e-6 {
		t.Fatalf("%v K go in, %v K come back", in, back)
	}
	with(t, plan, "section[4].circulating.inlet", "1 degC")
	plan.Sections[3].Circulating.Inlet.SI = in
	r = calc.Evaluate(plan)
	if got := value(t, r, 4, "temperature.flowline"); math.Abs(got-back) > 1e-6 {
		t.Errorf("entered, %v K come back, want %v", got, back)
	}
	if got := value(t, r, 4, "temperature.bhct"); math.Abs(got-bottom) > 1e-6 {
		t.Errorf("entered, the bottom has %v K, want %v", got, bottom)
	}
}

// pumpedIn returns the temperature that goes into a working of a circulating temperature.
func pumpedIn(t *testing.T, plan *model.Plan, section int, key string) float64 {
	t.Helper()
	w, _ := calc.Explain(plan, section-1, key)
	for _, n := range w.Inputs {
		if n.Symbol == "Tin" {
			return n.Value
		}
	}
	t.Fatalf("section %d %s: nothing is pumped in", section, key)
	return 0
}

// TestCementGoesInNoCoolerThanALaboratoryStarts: 27 °C, from memory, or hotter mud in the pits; never the sea's surface at 11 °C.
func TestCementGoesInNoCoolerThanALaboratoryStarts(t *testing.T) {
	const start, key = 273.15 + 27, "temperature.cement.bhct"
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for section := 1; section <= len(plan.Sections); section++ {
		want := math.Max(start, value(t, r, section, "temperature.inlet"))
		if got := pumpedIn(t, plan, section, key); math.Abs(got-want) > 1e-9 {
			t.Errorf("section %d: %v K go in, want %v", section, got, want)
		}
	}
	if value(t, r, 4, "temperature.inlet") <= start || value(t, r, 5, "temperature.inlet") >= start {
		t.Error("the demo's pits are not hotter in one section and cooler in another")
	}
	with(t, plan, "section[4].circulating.cement_inlet", "15 degC")
	if got := pumpedIn(t, plan, 4, key); math.Abs(got-288.15) > 1e-9 {
		t.Errorf("entered 15 degC, %v K go in", got)
	}
	with(t, plan, "section[4].circulating.cement_inlet", "")
	with(t, plan, "section[4].circulating.inlet", "60 degC")
	if got := pumpedIn(t, plan, 4, key); math.Abs(got-333.15) > 1e-9 {
		t.Errorf("mud of 60 degC, %v K go in", got)
	}
	with(t, plan, "section[4].flow", "")
	if f := figure(t, calc.Evaluate(plan), 4, key); f.OK || f.Mend != "section[4].flow" {
		t.Errorf("the mud's temperature is not known, and yet %+v", f)
	}
}

// TestCementTakesTheHotterOfItsRates: whichever way the rates stand, the figure is the hotter of those at either rate alone.
func TestCementTakesTheHotterOfItsRates(t *testing.T) {
	const key = "temperature.cement.bhct"
	eachDemo(t, func(t *testing.T, name string) {
		for i := range demo(t, name).Sections {
			at := func(mixing, displacing string) float64 {
				plan := demo(t, name)
				with(t, plan, "section["+strconv.Itoa(i+1)+"].pumping.mix_rate", mixing)
				with(t, plan, "section["+strconv.Itoa(i+1)+"].pumping.displace_rate", displacing)
				return value(t, calc.Evaluate(plan), i+1, key)
			}
			if !demo(t, name).Sections[i].Cement.MixRate.IsSet() {
				continue
			}
			const slow, fast = "600 L/min", "2400 L/min"
			want := math.Max(at(slow, slow), at(fast, fast))
			if got := at(slow, fast); math.Abs(got-want) > 1e-9 {
				t.Errorf("section %d, mixed slowly: %v K, want %v", i+1, got, want)
			}
			if got := at(fast, slow); math.Abs(got-want) > 1e-9 {
				t.Errorf("section %d, displaced slowly: %v K, want %v", i+1, got, want)
			}
		}
	})
}

// TestCementTestsAreHeldAgainstTheShoe: practice, so a caution at most, and only where the test is cooler than the hotter of what is
// worked out: in section 4 by the model, in section 5 by other wells. A hotter test is shown and no more.
func TestCementTestsAreHeldAgainstTheShoe(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for section, key := range map[int]string{4: "temperature.cement.bhct", 5: "temperature.cement.bhct.empirical"} {
		hotter := value(t, r, section, key)
		if hotter < value(t, r, section, "temperature.cement.bhct") {
			t.Fatalf("section %d: other wells are cooler", section)
		}
		for off, want := range map[float64]calc.Severity{-20: calc.Caution, -3.1: calc.Caution, -2.9: calc.OK, 2: calc.OK, 30: calc.OK} {
			plan.Sections[section-1].Slurries[0].TestTemperature.SI = hotter + off
			r := calc.Evaluate(plan)
			f := worst(t, r, section, "test_temperature")
			if f.Severity != want || math.Abs(f.Measured-math.Max(0, -off)) > 1e-9 || string(f.Mend) != "section["+strconv.Itoa(section)+"].slurry[1].test_temperature" {
				t.Errorf("section %d, %+v K off: %+v", section, off, f)
			}
			if got := value(t, r, section, "temperature.cement.slurry.1.test"); math.Abs(got-off) > 1e-9 {
				t.Errorf("section %d, %+v K off: shown is %v", section, off, got)
			}
		}
	}
	with(t, plan, "section[4].slurry[1].test_temperature", "")
	if list := findings(calc.Evaluate(plan), 4, "test_temperature"); len(list) > 0 {
		t.Errorf("no test is given, and found is %+v", list)
	}
}

// TestOtherWellsSayWhyTheySayNothing: section 3 is cooler than any well measured, section 4 is not.
func TestOtherWellsSayWhyTheySayNothing(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for _, key := range []string{"temperature.bhct", "temperature.cement.bhct"} {
		for section, silent := range map[int]bool{3: true, 4: false} {
			w, _ := calc.Explain(plan, section-1, key)
			if strings.Contains(w.Note, "from 74 °C static up") != silent {
				t.Errorf("section %d %s: %q", section, key, w.Note)
			}
			if _, ok := r.Sheet(section - 1).Find(key + ".empirical"); ok == silent {
				t.Errorf("section %d %s: other wells are there: %v", section, key, ok)
			}
		}
	}
}

// TestMudInByWayOfGettingIt: entered, the sea's surface without a riser, or what comes back less what the pits take.
func TestMudInByWayOfGettingIt(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].circulating.inlet", "40 degC")
	with(t, plan, "section[4].circulating.pits_cool", "4 K")
	r := calc.Evaluate(plan)
	for section, want := range map[int]float64{1: plan.Well.SurfaceTemperature.SI, 3: 313.15, 4: value(t, r, 4, "temperature.flowline") - 4} {
		if got := value(t, r, section, "temperature.inlet"); math.Abs(got-want) > 1e-6 {
			t.Errorf("section %d: %v K, want %v", section, got, want)
		}
	}
}
