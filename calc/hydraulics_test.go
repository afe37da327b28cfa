package calc_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// TestCirculatingDensitiesOfTheTeachingCases holds the demos to densities worked out without this program: Bingham, the larger
// of laminar and smooth turbulent, no tool joints, 10 kg/m3 of cuttings. They are written to a digit of 0.001 sg and 0.01 ppg.
func TestCirculatingDensitiesOfTheTeachingCases(t *testing.T) {
	for _, c := range []struct {
		name     string
		section  int
		shoe, td string
		within   string
	}{
		{"ottermast-2", 3, "1.281 sg", "1.283 sg", "0.001 sg"},
		{"ottermast-2", 4, "1.465 sg", "1.468 sg", "0.001 sg"},
		{"ottermast-2", 5, "1.499 sg", "1.511 sg", "0.011 sg"}, // there the larger loss counts wherever it is larger; the flow is laminar: 1.491 and 1.501
		{"saltlantern-1", 3, "9.96 ppg", "9.95 ppg", "0.01 ppg"},
		{"saltlantern-1", 4, "11.45 ppg", "11.45 ppg", "0.01 ppg"},
		{"saltlantern-1", 5, "12.66 ppg", "12.67 ppg", "0.01 ppg"},
	} {
		plan := demo(t, c.name)
		path := "section[" + strconv.Itoa(c.section) + "]."
		with(t, plan, path+"cuttings", "10 kg/m3")
		for k := range plan.Sections[c.section-1].String {
			with(t, plan, path+"string["+strconv.Itoa(k+1)+"].joint_length", "0 m")
		}
		r := calc.Evaluate(plan)
		for key, text := range map[string]string{"hydraulics.ecd.shoe": c.shoe, "hydraulics.ecd.td": c.td} {
			want, within := parsed(t, text, quantity.EMW), parsed(t, c.within, quantity.EMW)
			if got := value(t, r, c.section, key); !near(got, want, within*1.0001) {
				t.Errorf("%s %d %s = %.2f kg/m3, want %.2f within %.2f", c.name, c.section, key, got, want, within)
			}
		}
	}
}

func parsed(t testing.TB, text string, kind quantity.Kind) float64 {
	t.Helper()
	v, err := quantity.Parse(text, kind, 0)
	if err != nil {
		t.Fatal(err)
	}
	return v.SI
}

// TestRiserlessColumns does by hand what stands outside less what stands inside where the returns leave at the seabed.
func TestRiserlessColumns(t *testing.T) {
	const psi, ft, ppg = 6894.757293168361, 0.3048, 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254)
	// 11 ppg to the bit at 8240 ft, 0.1 ppg of cuttings, returns at 5313 ft under 5231 ft of 8.6 ppg sea: lighter outside.
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	want := 9.80665 * ft * ppg * (8.6*(5313-82) + 11.1*(8240-5313) - 11*8240)
	if got := value(t, r, 2, "hydraulics.columns"); !near(got, want, 1) || got > -600*psi {
		t.Errorf("columns of the weighted riserless section = %.0f Pa, want %.0f", got, want)
	}
	// Sea water on both sides and no cuttings: inside it stands up to the rotary, outside to the sea's surface 26 m lower.
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[2].cuttings", "0 kg/m3")
	with(t, plan, "section[2].density", "1.03 sg")
	if got, want := value(t, calc.Evaluate(plan), 2, "hydraulics.columns"), -1030*9.80665*26; !near(got, want, 1) {
		t.Errorf("columns with sea water = %.0f Pa, want %.0f", got, want)
	}
	// With a riser they differ by the cuttings.
	if got, want := value(t, r, 5, "hydraulics.columns"), 0.1*ppg*9.80665*18240*ft; !near(got, want, 1) {
		t.Errorf("columns with a riser = %.0f Pa, want %.0f", got, want)
	}
}

// TestAHeavyRiserlessStringRunsEmpty: at little flow mud of 16 ppg falls by itself, and there is no pressure at the standpipe.
func TestAHeavyRiserlessStringRunsEmpty(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	with(t, plan, "section[2].weighted_density", "16 ppg")
	with(t, plan, "section[2].flow", "200 gpm")
	f := figure(t, calc.Evaluate(plan), 2, "hydraulics.standpipe")
	if !f.OK || f.Value != 0 || !strings.Contains(f.Note, "empty") {
		t.Errorf("standpipe %+v", f)
	}
}

// TestAStatedLossGoesWithDensityAndFlow: four times with twice the flow, and in proportion to density.
func TestAStatedLossGoesWithDensityAndFlow(t *testing.T) {
	plan := demo(t, "ottermast-2")
	loss := func() float64 { return value(t, calc.Evaluate(plan), 4, "hydraulics.string.2") }
	if got := loss(); !near(got, 25e5, 1) {
		t.Fatalf("as stated: %v Pa", got)
	}
	with(t, plan, "section[4].flow", "1700 L/min")
	if got := loss(); !near(got, 6.25e5, 1) {
		t.Errorf("half the flow: %v Pa, want 6.25 bar", got)
	}
	with(t, plan, "section[4].string[2].drop_density", "1 sg")
	if got := loss(); !near(got, 1.42*6.25e5, 1) {
		t.Errorf("stated in water: %v Pa, want 8.875 bar", got)
	}
	for _, key := range []string{"drop_flow", "drop_density"} {
		plan := demo(t, "ottermast-2")
		path := "section[4].string[2]." + key
		with(t, plan, path, "")
		if f := figure(t, calc.Evaluate(plan), 4, "hydraulics.standpipe"); f.OK || string(f.Mend) != path {
			t.Errorf("%s blank: %+v", key, f)
		}
	}
}

// TestNozzlesThatCannotBeRead stop with what to do, and blank nothing but what needs them.
func TestNozzlesThatCannotBeRead(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].nozzles.sizes", "seven of 14")
	r := calc.Evaluate(plan)
	f := figure(t, r, 3, "hydraulics.standpipe")
	if f.OK || string(f.Mend) != "section[3].nozzles.sizes" || !strings.Contains(f.Why, "write 3x16") && !strings.Contains(f.Why, "such as 3x16") {
		t.Errorf("standpipe %+v", f)
	}
	if len(findings(r, 3, "entry")) != 1 || findings(r, 3, "entry")[0].Severity != calc.Stop {
		t.Errorf("findings %+v", findings(r, 3, "entry"))
	}
	if f := figure(t, r, 3, "hydraulics.ecd.td"); !f.OK {
		t.Errorf("the circulating density needs no nozzles: %s", f.Why)
	}
	with(t, plan, "section[3].nozzles.sizes", "")
	r = calc.Evaluate(plan)
	if list := findings(r, 3, "entry"); len(list) != 1 || list[0].Severity != calc.Caution {
		t.Errorf("no nozzles: %+v", list)
	}
	with(t, plan, "section[3].nozzles.area", "1.0523 in2") // 7x14
	if got, want := value(t, calc.Evaluate(plan), 3, "hydraulics.bit.drop"), value(t, calc.Evaluate(demo(t, "ottermast-2")), 3, "hydraulics.bit.drop"); !near(got, want, want*1e-3) {
		t.Errorf("by area %v Pa, by nozzles %v", got, want)
	}
}

// TestPumpsAndToolsAreJudged: pressure over the liners' limit stops, over the usual share of it and outside a tool's range it
// cautions.
func TestPumpsAndToolsAreJudged(t *testing.T) {
	for _, c := range []struct {
		path, text, key string
		want            calc.Severity
	}{
		{"section[4].flow", "3400 L/min", "pump_pressure", calc.OK},
		{"section[4].flow", "3400 L/min", "pump_load", calc.OK},
		{"section[4].flow", "3500 L/min", "pump_load", calc.Caution},
		{"section[4].flow", "3500 L/min", "pump_pressure", calc.OK},
		{"section[4].flow", "3800 L/min", "pump_pressure", calc.Stop},
		{"section[4].flow", "1400 L/min", "tool_flow", calc.Caution},
		{"section[4].flow", "4600 L/min", "tool_flow", calc.Caution},
		{"section[4].flow", "3000 L/min", "tool_flow", calc.OK},
		{"section[5].leak_off", "1.55 sg", "ecd_margin", calc.Caution},
		{"section[5].leak_off", "1.52 sg", "below_breakdown", calc.Stop},
		{"section[5].leak_off", "1.6 sg", "ecd_margin", calc.OK},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		section, _ := strconv.Atoi(c.path[8:9])
		if got := worst(t, calc.Evaluate(plan), section, c.key); got.Severity != c.want {
			t.Errorf("%s = %s: %s is %v: %+v", c.path, c.text, c.key, got.Severity, got)
		}
	}
}

// TestTheFlowRangeIsWhereTheFindingsTurn: just inside the most flow nothing is found against it, just beyond something is.
func TestTheFlowRangeIsWhereTheFindingsTurn(t *testing.T) {
	rules := []string{"pump_load", "ecd_margin", "tool_flow", "pumps_give_flow", "transport", "slant_velocity", "cuttings_share", "carrying_index",
		"velocity_large", "velocity_wide", "velocity_medium", "velocity_small"}
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			for _, end := range []struct {
				key    string
				beyond float64
			}{{"hydraulics.flow.most", 1.001}, {"hydraulics.flow.least", 0.999}} {
				f, ok := r.Sheet(i).Find(end.key)
				if most, _ := r.Sheet(i).Find("hydraulics.flow.most"); !ok || end.beyond < 1 && f.Value > most.Value {
					continue // nothing asks for a least flow, or no flow keeps all limits
				}
				if least, ok := r.Sheet(i).Find("hydraulics.flow.least"); ok && end.beyond > 1 && f.Value < least.Value {
					continue
				}
				for _, times := range []float64{end.beyond, 2 - end.beyond} {
					found := 0
					for _, x := range calc.WithFlow(plan, i, f.Value*times).Findings {
						for _, key := range rules {
							if x.Section == i && x.Key == key && x.Severity > calc.OK {
								found++
							}
						}
					}
					if (found > 0) != (times == end.beyond) {
						t.Errorf("section %d, %v times %s, %s: %d findings", i+1, times, end.key, f.Note, found)
					}
				}
			}
		}
	})
}

// hydraulicsAddUp holds figures to each other, whatever is entered.
func hydraulicsAddUp(t *rapid.T, plan *model.Plan, r *calc.Result) {
	i := rapid.IntRange(0, len(plan.Sections)-1).Draw(t, "section")
	get := func(key string) (float64, bool) {
		f, ok := r.Sheet(i).Find(key)
		return f.Value, ok && f.OK
	}
	if whole, ok := get("hydraulics.standpipe"); ok {
		sum, annulus := 0.0, 0.0
		for _, f := range r.Sheet(i).Figures {
			if f.Group == "Standpipe, part by part" && f.Column == "" {
				sum += f.Value
			}
			if f.Group == "Up the annulus" && f.Column == "" {
				annulus += f.Value
			}
		}
		if !near(whole, max(sum, 0), 1e-6*math.Max(1e5, math.Abs(sum))) {
			t.Errorf("standpipe %g, parts %g", whole, sum)
		}
		below, _ := get("hydraulics.annulus")
		riser, _ := get("hydraulics.riser")
		if !near(annulus, below+riser, 1e-6*math.Max(1, annulus)) {
			t.Errorf("annulus %g and riser %g, stretches %g", below, riser, annulus)
		}
	}
	if ecd, ok := get("hydraulics.ecd.td"); ok {
		static, _ := get("hydraulics.ecd.td.static")
		if ecd < static-1e-6 {
			t.Errorf("ECD %g below the static %g", ecd, static)
		}
		more := calc.WithFlow(plan, i, plan.Sections[i].Flow.SI*1.2)
		if f, ok := more.Sheet(i).Find("hydraulics.ecd.td"); !ok || !f.OK || f.Value < ecd-1e-9 {
			t.Errorf("more flow: ECD %+v, before %g", f, ecd)
		}
		if whole, ok := get("hydraulics.standpipe"); ok && whole > 0 {
			if f, _ := more.Sheet(i).Find("hydraulics.standpipe"); f.Value <= whole {
				t.Errorf("more flow: standpipe %g, before %g", f.Value, whole)
			}
		}
	}
	if margin, ok := get("hydraulics.margin"); ok {
		ecd, _ := get("hydraulics.margin.ecd")
		w, _ := calc.Explain(plan, i, "hydraulics.margin")
		for _, in := range w.Inputs {
			if in.Symbol == "limit" && !near(in.Value-ecd, margin, 1e-6) {
				t.Errorf("margin %g, limit %g, ECD %g", margin, in.Value, ecd)
			}
		}
	}
}

// TestTheBarIsThePagesFigures: what stands on the bar is what the page says.
func TestTheBarIsThePagesFigures(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			bars := calc.Bars(plan, i, model.TopicHydraulics)
			if len(bars) != 1 || len(bars[0].Blank) > 0 {
				t.Fatalf("section %d: %+v", i+1, bars)
			}
			least, most, ok := bars[0].Range()
			if ok != (least <= most) || bars[0].Planned != plan.Sections[i].Flow.SI {
				t.Errorf("section %d: %g to %g, planned %g", i+1, least, most, bars[0].Planned)
			}
			if f, ok := r.Sheet(i).Find("hydraulics.flow.most"); !ok || f.Value != most {
				t.Errorf("section %d: most %g on the bar, %g on the page", i+1, most, f.Value)
			}
			if f, ok := r.Sheet(i).Find("hydraulics.flow.least"); ok && f.Value != least {
				t.Errorf("section %d: least %g on the bar, %g on the page", i+1, least, f.Value)
			}
		}
	})
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].pv", "")
	if bars := calc.Bars(plan, 2, model.TopicHydraulics); len(bars) != 1 || len(bars[0].Blank) == 0 {
		t.Errorf("without a viscosity: %+v", bars)
	}
	if bars := calc.Bars(plan, 99, model.TopicHydraulics); bars != nil {
		t.Errorf("a section that is not there has %+v", bars)
	}
}

// TestHydraulicsChartsAreThePagesFigures: the curves end where the page says.
func TestHydraulicsChartsAreThePagesFigures(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			charts := calc.Charts(plan, i, model.TopicHydraulics)
			if len(charts) < 2 { // and those of trips
				t.Fatalf("section %d: %d charts", i+1, len(charts))
			}
			td := value(t, r, i+1, "hole.td")
			if got, ok := charts[0].Curves[0].At(td); !ok || !near(got, value(t, r, i+1, "hydraulics.ecd.td"), 1e-6) {
				t.Errorf("section %d: ECD at TD %g on the chart", i+1, got)
			}
			if got, ok := charts[1].Curves[0].At(plan.Sections[i].Flow.SI); !ok || !near(got, value(t, r, i+1, "hydraulics.standpipe"), 2e5) {
				t.Errorf("section %d: standpipe %g on the chart", i+1, got)
			}
		}
	})
}
