package calc_test

import (
	"math"
	"strconv"
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
		{"section[4].circulating.time", "300 h", "temperature.bhct", false},
		{"section[4].circulating.inlet", "45 degC", "temperature.bhct", true},
		{"section[4].circulating.pits_cool", "12 K", "temperature.flowline", false},
		{"section[4].flow", "2500 L/min", "temperature.bhct", true},
		{"section[4].booster", "3000 L/min", "temperature.flowline", false},
		{"rig.riser_foam", "10 in", "temperature.flowline", true},
		{"well.geothermal_gradient", "4 degC/100m", "temperature.bhct", true},
		{"well.rock_conductivity", "4", "temperature.bhct", true},
		{"well.seabed_temperature", "2 degC", "temperature.bhct", false},
		{"section[4].pumping.displace_rate", "1000 L/min", "temperature.cement.bhct", true},
		{"section[4].circulating.cementing", "24 h", "temperature.cement.bhct", false},
	} {
		if before, after := changed(t, "ottermast-2", c.path, c.text, 4, c.key); after == before || (after > before) != c.warmer {
			t.Errorf("%s = %q: %s from %v to %v", c.path, c.text, c.key, before, after)
		}
	}
}

// TestMudSettlesWithItsPits: what goes in is what comes back less what the pits take, and then it is as if that had been entered.
func TestMudSettlesWithItsPits(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	w, _ := calc.Explain(plan, 3, "temperature.bhct")
	var in float64
	for _, n := range w.Inputs {
		if n.Symbol == "Tin" {
			in = n.Value
		}
	}
	back, bottom := value(t, r, 4, "temperature.flowline"), value(t, r, 4, "temperature.bhct")
	if math.Abs(back-5-in) > 1e-6 {
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

// TestCementTestsAreHeldAgainstTheShoe: practice, so a caution at most, on either side of the temperature worked out.
func TestCementTestsAreHeldAgainstTheShoe(t *testing.T) {
	plan := demo(t, "ottermast-2")
	bottom := value(t, calc.Evaluate(plan), 4, "temperature.cement.bhct")
	for off, want := range map[float64]calc.Severity{-20: calc.Caution, -9: calc.OK, 9: calc.OK, 11: calc.Caution} {
		plan.Sections[3].Slurries[0].TestTemperature.SI = bottom + off
		f := worst(t, calc.Evaluate(plan), 4, "test_temperature")
		if f.Severity != want || math.Abs(f.Measured-math.Abs(off)) > 1e-9 || f.Mend != "section[4].slurry[1].test_temperature" {
			t.Errorf("%+v K off: %+v", off, f)
		}
	}
	with(t, plan, "section[4].slurry[1].test_temperature", "")
	if list := findings(calc.Evaluate(plan), 4, "test_temperature"); len(list) > 0 {
		t.Errorf("no test is given, and found is %+v", list)
	}
}
