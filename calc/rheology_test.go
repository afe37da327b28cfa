package calc_test

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/calc/friction"
	"borewalk/model"
)

const lbf100ft2 = 0.45359237 * 9.80665 / (0.3048 * 0.3048) / 100 // Pa

// TestReadingsOfTheDemos: what the trade makes of them is what the plans say, and they are what a fluid can show.
func TestReadingsOfTheDemos(t *testing.T) {
	seen := 0
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			s := &plan.Sections[i]
			if !s.Rheology.R600.IsSet() {
				continue
			}
			seen++
			if pv, yp := value(t, r, i+1, "mud.rheology.field.pv"), value(t, r, i+1, "mud.rheology.field.yp"); !near(pv, s.PV.SI, 1e-12) || !near(yp, s.YP.SI, 1e-9) {
				t.Errorf("section %d: readings make PV %g, YP %g, the plan has %g, %g", i+1, pv, yp, s.PV.SI, s.YP.SI)
			}
			if pv, k := value(t, r, i+1, "mud.rheology.pv"), value(t, r, i+1, "mud.rheology.k"); pv != s.PV.SI || k != s.PV.SI {
				t.Errorf("section %d: PV %g, K %g, entered %g", i+1, pv, k, s.PV.SI)
			}
		}
	})
	if seen != 4 {
		t.Errorf("%d sections with readings", seen)
	}
}

// TestReadingsGiveTheFlow: switched to readings, the law is the recorded fit of calc/rheology's testdata ("polymer"), and
// running speed and cement job follow the whole of it, by the correlation that is picked.
func TestReadingsGiveTheFlow(t *testing.T) {
	plan := demo(t, "ottermast-2")
	before := calc.Evaluate(plan)
	with(t, plan, "section[3].rheology.given", model.ByReadings)
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{
		"mud.rheology.n": 0.570953, "mud.rheology.k": 0.537843, "mud.rheology.tau0": 1.50747, "mud.rheology.error": 0.18510,
		"mud.rheology.low_shear": 4 * 0.511,
		// The line through the law's stresses at 511 and 1022 1/s, by hand: 1.50747 + 0.537843 × 511^0.570953 = 20.424 and
		// 1.50747 + 0.537843 × 1022^0.570953 = 29.610 Pa.
		"mud.rheology.pv": 9.186 / 511, "mud.rheology.yp": 20.424 - 9.186,
	} {
		if got := value(t, r, 3, key); !near(got, want, 1e-3*want) {
			t.Errorf("%s = %g, want %g", key, got, want)
		}
	}
	with(t, plan, "section[3].rheology.friction", model.FrictionRP13D)
	whole := calc.Evaluate(plan)
	for _, key := range []string{"casing.surge.closed", "cement.pump.most"} {
		was, line, law := value(t, before, 3, key), value(t, r, 3, key), value(t, whole, 3, key)
		if was == line || line == law || law <= 0 {
			t.Errorf("%s: PV and YP %g, readings as a line %g, as a law %g", key, was, line, law)
		}
		if w, _ := calc.Explain(plan, 2, key); !strings.Contains(w.Source, "RP 13D (API RP 13D") {
			t.Errorf("%s: source %q", key, w.Source)
		}
	}
	// A fluid of the law's low-shear stress holds less than its line's yield point: it can be run in faster.
	if line, law := value(t, r, 3, "casing.surge.closed"), value(t, whole, 3, "casing.surge.closed"); law <= line {
		t.Errorf("running speed by the law %g m/s, by its line %g", law, line)
	}
	w, _ := calc.Explain(plan, 2, "casing.surge.closed")
	numbers := map[string]float64{}
	for _, in := range w.Inputs {
		numbers[in.Symbol] = in.Value
	}
	if !near(numbers["n"], 0.570953, 1e-4) || !near(numbers["K"], 0.537843, 1e-4) || !near(numbers["tau0"], 1.50747, 1e-3) || numbers["rho"] != 1250 {
		t.Errorf("the working shows %v", numbers)
	}
}

// TestTheSameLawAnotherWay: n 1, K and yield stress of PV and YP give every figure of the plan again.
func TestTheSameLawAnotherWay(t *testing.T) {
	plan := demo(t, "ottermast-2")
	before := calc.Evaluate(plan)
	with(t, plan, "section[4].rheology.given", model.ByNK)
	with(t, plan, "section[4].rheology.n", "1")
	with(t, plan, "section[4].rheology.k", "26 mPa.s^n")
	with(t, plan, "section[4].rheology.tau0", "18 lbf/100ft2")
	after := calc.Evaluate(plan)
	for k, f := range before.Sections[3].Figures {
		if got := after.Sections[3].Figures[k]; got != f {
			t.Errorf("%+v was %+v", got, f)
		}
	}
}

// TestEveryChoiceOfFrictionIsThere: what a person can pick, calc/friction knows by name.
func TestEveryChoiceOfFrictionIsThere(t *testing.T) {
	ref, ok := model.Find(demo(t, "ottermast-2"), "section[3].rheology.friction")
	if !ok || len(ref.Field.Choices) != len(friction.Correlations()) {
		t.Fatalf("choices %v", ref.Field.Choices)
	}
	for _, name := range ref.Field.Choices {
		if _, ok := friction.Named(name); !ok {
			t.Errorf("no correlation is called %q", name)
		}
	}
}

func TestRheologyThatIsMissing(t *testing.T) {
	for _, c := range []struct {
		set  map[string]string
		mend model.Path
		why  string
	}{
		{map[string]string{"rheology.given": model.ByReadings, "rheology.r200": "", "rheology.r100": "", "rheology.r6": "", "rheology.r3": ""},
			"section[3].rheology.r200", "Herschel-Bulkley wants readings at 3 speeds, there are 2"},
		{map[string]string{"rheology.given": model.ByReadings, "rheology.r6": "30 deg"}, "section[3].rheology.r6", "the reading at 6 rpm is above that at 100 rpm"},
		{map[string]string{"rheology.given": model.ByNK, "rheology.n": "0.7"}, "section[3].rheology.k", "consistency is blank"},
		{map[string]string{"yp": ""}, "section[3].yp", "yield point is blank"},
	} {
		plan := demo(t, "ottermast-2")
		for key, text := range c.set {
			with(t, plan, "section[3]."+key, text)
		}
		r := calc.Evaluate(plan)
		for _, key := range []string{"mud.rheology.pv", "mud.rheology.n", "mud.rheology.error", "casing.surge.closed"} {
			if f, _ := r.Sections[2].Find(key); f.OK || f.Mend != c.mend || !strings.Contains(f.Why, c.why) {
				t.Errorf("%v: %+v, want %q at %s", c.set, f, c.why, c.mend)
			}
		}
	}
}

// TestOddReadings: those that nobody counts with ask for care, those that give the flow stop.
func TestOddReadings(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].rheology.r300", "70 deg")
	if f := entryFault(calc.Evaluate(plan), "section[3].rheology.r300"); f.Severity != calc.Caution {
		t.Errorf("PV and YP give: %+v", f)
	}
	with(t, plan, "section[3].rheology.given", model.ByReadings)
	if f := entryFault(calc.Evaluate(plan), "section[3].rheology.r300"); f.Severity != calc.Stop {
		t.Errorf("readings give: %+v", f)
	}
}

func entryFault(r *calc.Result, mend model.Path) (found calc.Finding) {
	for _, f := range r.Findings {
		if f.Mend == mend && strings.HasPrefix(f.Text, "the reading at") {
			found = f
		}
	}
	return found
}

// TestALawThatDoesNotSuit: the straight line misses the slow readings of a polymer mud by more than the rule allows, the
// whole law does not.
func TestALawThatDoesNotSuit(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].rheology.given", model.ByReadings)
	for law, want := range map[string]calc.Severity{model.LawHerschelBulkley: calc.OK, model.LawBingham: calc.Caution} {
		with(t, plan, "section[3].rheology.law", law)
		found := false
		for _, f := range calc.Evaluate(plan).Findings {
			if f.Section == 2 && f.Mend == "section[3].rheology.law" {
				found = true
				if f.Severity != want {
					t.Errorf("%s: %+v", law, f)
				}
			}
		}
		if !found {
			t.Errorf("%s: not judged", law)
		}
	}
}

// TestRheogram: the readings and three laws when there are readings, and the law that counts where it is none of them.
func TestRheogram(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for section, want := range map[int]int{2: 5, 4: 1} {
		charts := calc.Charts(plan, section, model.TopicMud)
		if len(charts) == 0 || charts[0].Key != "mud.rheogram" || len(charts[0].Curves) != want {
			t.Fatalf("section %d: %+v", section+1, charts)
		}
		for _, c := range charts[0].Curves {
			last := 0.0
			for _, p := range c.Points {
				if p.Value < last || math.IsNaN(p.Value) || p.At <= 0 {
					t.Errorf("%s falls: %+v", c.Name, c.Points)
				}
				last = p.Value
			}
		}
	}
	last := calc.Charts(plan, 2, model.TopicMud)[0].Curves[4]
	if got, ok := last.At(511); !ok || !near(got, 0.018*511+22*lbf100ft2, 0.05) {
		t.Errorf("PV and YP at 511 1/s: %g Pa", got)
	}
}
