package calc_test

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/calc/column"
	"borewalk/calc/downhole"
	"borewalk/calc/mixing"
	"borewalk/model"
)

// TestMudAtDepthTouchesNothingElse: switched on it adds its figures and a chart, and moves no other figure and no finding.
func TestMudAtDepthTouchesNothingElse(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		before := calc.Evaluate(plan)
		for key := range computed(before) {
			if strings.Contains(key, "mud.downhole.") {
				t.Errorf("%s although the option is off", key)
			}
		}
		for i := range plan.Sections {
			plan.Sections[i].Downhole.By = model.DensityAtDepth
		}
		after := calc.Evaluate(plan)
		was, now := computed(before), computed(after)
		for key, v := range was {
			if now[key] != v {
				t.Errorf("%s moves from %v to %v", key, v, now[key])
			}
		}
		if len(after.Findings) != len(before.Findings) {
			t.Errorf("%d findings, before %d", len(after.Findings), len(before.Findings))
		}
		for i := range plan.Sections {
			for _, w := range calc.Workings(plan, i) {
				if f := w.Figure; strings.HasPrefix(f.Key, "mud.downhole.") && (!f.OK || w.Formula == "" || w.Source == "" || len(w.Inputs) < 2) {
					t.Errorf("section %d %s: %s, working %+v", i+1, f.Key, f.Why, w)
				}
			}
			if chart, ok := chartOf(plan, i, "mud.downhole"); !ok || len(chart.Curves) != 3 {
				t.Errorf("section %d: chart %+v", i+1, chart)
			}
		}
	})
}

// TestMudAtDepthBySmallSteps sums the column of the deep demo's last mud in twelve thousand steps, with the temperatures
// by hand.
func TestMudAtDepthBySmallSteps(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	plan.Sections[5].Downhole.By = model.DensityAtDepth
	r := calc.Evaluate(plan)
	brine, err := mixing.CalciumChloride().Dissolve(1, 0.25)
	if err != nil {
		t.Fatal(err)
	}
	mud, err := downhole.New(downhole.Recipe{Density: plan.Sections[5].Density.SI, Temperature: 293.15, Oil: downhole.Oil{Base: downhole.Olefin},
		OilShare: 0.62, OilDensity: 789.7, BrineShare: 0.16 * 998.2 / 0.75 / brine.Density, Brine: brine.Density, SaltShare: 0.25})
	if err != nil {
		t.Fatal(err)
	}
	const foot, steps = 0.3048, 12000
	fahrenheit := func(f float64) float64 { return 273.15 + (f-32)/1.8 }
	temperature := func(z float64) float64 { // z below RKB
		switch feet := z / foot; {
		case feet < 82:
			return fahrenheit(74)
		case feet < 82+3300:
			return fahrenheit(74 - 35*(feet-82)/3300)
		case feet < 82+5240:
			return fahrenheit(39)
		default:
			return fahrenheit(39 + 1.35*(feet-82-5240)/100)
		}
	}
	pressure, td := 0.0, 19900*foot
	step := td / steps
	for k := range steps {
		z := step * (float64(k) + 0.5)
		pressure += column.G * step * mud.Density(temperature(z), pressure+column.G*step/2*1500)
	}
	want := pressure / column.G / td
	if got := value(t, r, 6, "mud.downhole.td"); math.Abs(got-want) > 0.05 {
		t.Errorf("%v kg/m3, small steps give %v", got, want)
	}
	over := value(t, r, 6, "mud.downhole.td.over")
	if got := value(t, r, 6, "mud.downhole.td") - plan.Sections[5].Density.SI; math.Abs(got-over) > 1e-9 {
		t.Errorf("over the entered density %v, figure %v", got, over)
	}
}

// TestMudAtDepthSaysWhatItNeeds: what is missing or cannot be is named, and led to.
func TestMudAtDepthSaysWhatItNeeds(t *testing.T) {
	for _, c := range []struct{ path, text, mend string }{
		{"section[4].recipe.salt_share", "", "section[4].recipe.salt_share"},
		{"section[4].recipe.oil", "95 %", "section[4].recipe.water"},
		{"section[4].recipe.water", "35 %", "section[4].recipe.water"},
		{"well.seabed_temperature", "", "well.seabed_temperature"},
		{"well.geothermal_gradient", "", "well.geothermal_gradient"},
		{"well.geothermal_gradient", "10 degC/100m", "section[4].downhole.density"},
	} {
		plan := demo(t, "ottermast-2")
		plan.Sections[3].Downhole.By = model.DensityAtDepth
		with(t, plan, c.path, c.text)
		if f := figure(t, calc.Evaluate(plan), 4, "mud.downhole.td"); f.OK || string(f.Mend) != c.mend {
			t.Errorf("%s = %q: %+v", c.path, c.text, f)
		}
	}
	plan := demo(t, "ottermast-2")
	plan.Sections[3].Downhole.By = model.DensityAtDepth
	with(t, plan, "section[4].recipe.water", "") // then it follows from the solids
	w, ok := calc.Explain(plan, 3, "mud.downhole.density")
	numbers := map[string]float64{}
	for _, n := range w.Inputs {
		numbers[n.Symbol] = n.Value
	}
	solids := (numbers["rho0"] - 800*numbers["fo"] - numbers["fw"]*numbers["rw0"]) / (1 - numbers["fo"] - numbers["fw"])
	if !ok || math.Abs(solids-3500) > 1e-6 {
		t.Errorf("solids %v", solids)
	}
	// And the density there by the formula shown.
	by := numbers["rho0"] / (1 + numbers["fo"]*(numbers["ro0"]/numbers["ro"]-1) + numbers["fw"]*(numbers["rw0"]/numbers["rw"]-1))
	if math.Abs(by-w.Figure.Value) > 1e-9*by {
		t.Errorf("%v by the numbers shown, figure %v", by, w.Figure.Value)
	}
	own, base := value(t, calc.Evaluate(plan), 4, "mud.downhole.td"), 0.0
	with(t, plan, "section[4].downhole.oil_press", "0.4 %")
	with(t, plan, "section[4].downhole.oil_warming", "1.2 %")
	if base = value(t, calc.Evaluate(plan), 4, "mud.downhole.td"); !(base < own) {
		t.Errorf("an oil that swells more and gives less: from %v to %v", own, base)
	}
}
