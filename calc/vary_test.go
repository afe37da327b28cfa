package calc_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

func unitOf(t testing.TB, text string, kind quantity.Kind) quantity.Unit {
	t.Helper()
	u, err := quantity.ParseUnit(text, kind)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func spanOf(t testing.TB, plan *model.Plan, path, unit string, count int) calc.Span {
	t.Helper()
	ref := entry(t, plan, path)
	s, ok := calc.NewSpan(plan, ref, unitOf(t, unit, ref.Field.Kind), count)
	if !ok {
		t.Fatalf("%s cannot be varied", path)
	}
	return s
}

func texts(s calc.Span) (list []string) {
	for _, e := range s.Entries {
		list = append(list, e.Quantity.Text())
	}
	return list
}

func TestASpanGoesInNaturalSteps(t *testing.T) {
	plan := demo(t, plans.Default)
	with(t, plan, "section[3].density", "1.215 sg")
	with(t, plan, "section[3].washout", "")
	s := spanOf(t, plan, "section[3].density", "sg", 11)
	// a fifth of 1.215 is 0.243: five spacings of 0.05 cover it
	want := []string{"0.95 sg", "1 sg", "1.05 sg", "1.1 sg", "1.15 sg", "1.2 sg", "1.215 sg", "1.25 sg", "1.3 sg", "1.35 sg", "1.4 sg", "1.45 sg"}
	if got := texts(s); !slices.Equal(got, want) || s.Now != 6 {
		t.Errorf("%q, now %d", got, s.Now)
	}
	if got := texts(s.Closer(6)); !slices.Equal(got[:3], []string{"1.12 sg", "1.14 sg", "1.16 sg"}) {
		t.Errorf("closer: %q", got)
	}
	if got := texts(s.Wider(6)); !slices.Equal(got[3:7], []string{"1.1 sg", "1.2 sg", "1.215 sg", "1.3 sg"}) {
		t.Errorf("wider: %q", got)
	}
	if got := texts(s.Moved(3)); got[0] != "1.1 sg" {
		t.Errorf("moved: %q", got)
	}
	field := entry(t, plan, "section[3].density").Field
	if got := texts(s.Moved(-1000)); got[0] == "0 sg" || s.Moved(-1000).Entries[0].Quantity.SI < field.Min.SI {
		t.Errorf("beyond the range: %q", got)
	}
	if s := s.Moved(1000); s.Now != -1 || len(s.Entries) != 11 || s.Entries[10].Quantity.SI > field.Max.SI {
		t.Errorf("beyond the range: %q", texts(s))
	}
	// a blank entry is tried over its whole range
	blank := spanOf(t, plan, "section[3].washout", "%", 11)
	washout := entry(t, plan, "section[3].washout").Field
	if blank.Now != -1 || blank.Entries[0].Quantity.SI > 0.1*washout.Max.SI || blank.Entries[len(blank.Entries)-1].Quantity.SI < 0.8*washout.Max.SI {
		t.Errorf("blank: %q", texts(blank))
	}
	if _, ok := calc.NewSpan(plan, entry(t, plan, "section[3].name"), unitOf(t, "sg", quantity.Density), 11); ok {
		t.Error("a name can be varied")
	}
}

// TestSpansAreSound: whatever is varied, in whatever unit, contents rise, keep to the range, and hold the plan's own.
func TestSpansAreSound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyPlan(rt, t)
		var refs []model.Ref
		eachRef(plan, func(r model.Ref) {
			if r.Field.Type == model.QuantityField {
				refs = append(refs, r)
			}
		})
		ref := rapid.SampledFrom(refs).Draw(rt, "entry")
		unit := rapid.SampledFrom(quantity.Units(ref.Field.Kind)).Draw(rt, "unit")
		s, ok := calc.NewSpan(plan, ref, unit, rapid.IntRange(3, 41).Draw(rt, "count"))
		if !ok {
			return
		}
		if now := ref.Get(plan); now.IsSet() && (s.Now < 0 || s.Entries[s.Now] != now) {
			rt.Fatalf("%s: own %s at %d of %q", ref.Path(), now.Quantity.Text(), s.Now, texts(s))
		}
		for range rapid.IntRange(0, 5).Draw(rt, "turns") {
			at := rapid.IntRange(0, len(s.Entries)-1).Draw(rt, "at")
			switch rapid.IntRange(0, 2).Draw(rt, "turn") {
			case 0:
				s = s.Wider(at)
			case 1:
				s = s.Closer(at)
			default:
				s = s.Moved(rapid.IntRange(-30, 30).Draw(rt, "by"))
			}
			if len(s.Entries) < 2 {
				rt.Fatalf("%s: %q", ref.Path(), texts(s))
			}
			for k, e := range s.Entries {
				if _, out := (model.Edit{Changes: []model.Change{model.Setting(plan, ref, e)}}).Fault(); out && k != s.Now {
					rt.Fatalf("%s: %s is out of range", ref.Path(), e.Quantity.Text())
				}
				if k > 0 && !(e.Quantity.SI > s.Entries[k-1].Quantity.SI) {
					rt.Fatalf("%s: %q does not rise", ref.Path(), texts(s))
				}
			}
		}
	})
}

// TestASweepIsWhatTypingGives: each outcome is what the plan gives when the content is typed, figure by figure and finding by
// finding, and the plan is as it was.
func TestASweepIsWhatTypingGives(t *testing.T) {
	plan := demo(t, plans.Default)
	before := fmt.Sprintf("%+v", *plan)
	const key = "mud.margin.fracture"
	density, leakOff := spanOf(t, plan, "section[3].density", "sg", 5), spanOf(t, plan, "section[3].leak_off", "sg", 3)
	s := calc.NewSweep(plan, 2, key, density, leakOff)
	outcomes := append(s.Try(0, 4), s.Try(4, s.Size())...)
	if len(outcomes) != len(density.Entries)*len(leakOff.Entries) {
		t.Fatalf("%d outcomes", len(outcomes))
	}
	_, now := calc.Evaluate(plan).Worst(-1)
	for i, a := range density.Entries {
		for j, b := range leakOff.Entries {
			typed := demo(t, plans.Default)
			density.Ref.Set(typed, a)
			leakOff.Ref.Set(typed, b)
			r, outcome := calc.Evaluate(typed), outcomes[s.Number(i, j)]
			if want := figure(t, r, 3, key); want != outcome.Figure {
				t.Errorf("%s, %s: %+v, typed %+v", a.Quantity.Text(), b.Quantity.Text(), outcome.Figure, want)
			}
			if _, then := r.Worst(-1); outcome.Stops != then[calc.Stop]-now[calc.Stop] || outcome.Cautions != then[calc.Caution]-now[calc.Caution] {
				t.Errorf("%+v, typed %v, now %v", outcome, then, now)
			}
			// below_breakdown stops where the margin is negative; static_margin cautions below 60 kg/m3, the plan's own limit
			margin := outcome.Figure.Value
			if (margin < 0) != (outcome.Severity == calc.Stop) && outcome.Stops == 0 || margin < 60-1e-6 && outcome.Severity == calc.OK {
				t.Errorf("margin %g: %v", margin, outcome.Severity)
			}
		}
	}
	if after := fmt.Sprintf("%+v", *plan); after != before {
		t.Error("the plan was changed")
	}
}

func TestTheChartShowsLimitsGapsAndNow(t *testing.T) {
	plan := demo(t, plans.Default)
	s := calc.NewSweep(plan, 2, "mud.margin.fracture", spanOf(t, plan, "section[3].density", "sg", 21))
	c := s.Chart(s.Try(0, s.Size()))
	if c.Axis != "Mud density" && c.Axis != "Density" {
		t.Errorf("axis %q", c.Axis)
	}
	if len(c.Curves) != 3 {
		t.Fatalf("%d curves: %+v", len(c.Curves), c.Curves)
	}
	for k, limit := range []float64{0, 60} {
		l := c.Curves[k+1]
		if !l.Limit || l.Points[0].Value != limit || len(l.Points) != s.Size() {
			t.Errorf("%+v", l)
		}
	}
	if c.Marks[0].Name != "now" || c.Marks[0].At != plan.Sections[2].Density.SI {
		t.Errorf("%+v", c.Marks)
	}
	// a margin falls by what the density rises: the column is of one fluid
	first, last := c.Curves[0].Points[0], c.Curves[0].Points[s.Size()-1]
	if slope := (last.Value - first.Value) / (last.At - first.At); math.Abs(slope+1) > 0.02 {
		t.Errorf("slope %g", slope)
	}
	// a shoe at or above the last one leaves nothing to compute: a gap, not a line to zero
	s = calc.NewSweep(plan, 2, "mud.margin.fracture", spanOf(t, plan, "section[3].td", "m", 11).Wider(5).Wider(5))
	c = s.Chart(s.Try(0, s.Size()))
	if y := c.Curves[0].Points[0].Value; !math.IsNaN(y) {
		t.Errorf("TD at %g m gives a margin of %g", c.Curves[0].Points[0].At, y)
	}
	if _, ok := c.Curves[0].At(c.Curves[0].Points[0].At); ok {
		t.Error("there is a value in the gap")
	}
}

// TestAFigureWithoutARuleHasNoLimitLine, even where a comparison happens to measure the same number for once.
func TestAFigureWithoutARuleHasNoLimitLine(t *testing.T) {
	plan := demo(t, plans.Default)
	s := calc.NewSweep(plan, 2, "volume.bottoms_up", spanOf(t, plan, "section[3].td", "m", 11))
	if c := s.Chart(s.Try(0, s.Size())); len(c.Curves) != 1 {
		t.Errorf("%+v", c.Curves[1:])
	}
}

func TestAirGapAndWaterDepthTakeTheWellWithThem(t *testing.T) {
	plan := demo(t, plans.Default)
	s := calc.NewSweep(plan, 2, "hole.td", spanOf(t, plan, "well.water_depth", "m", 5))
	for i, outcome := range s.Try(0, s.Size()) {
		deeper := s.Spans[0].Entries[i].Quantity.SI - plan.Well.WaterDepth.SI
		if want := plan.Sections[2].TD.SI + deeper; math.Abs(outcome.Figure.Value-want) > 0.001 {
			t.Errorf("%g m deeper: TD %g, want %g", deeper, outcome.Figure.Value, want)
		}
	}
}

// TestEffectsAreDerivatives: what a step of an entry does to a figure is what typing the step does.
func TestEffectsAreDerivatives(t *testing.T) {
	plan := demo(t, plans.Default)
	system := plan.System(quantity.Metric, true)
	trial := plan.Clone()
	effects := calc.Effects(trial, 2, "mud.margin.fracture", calc.Handles(plan, 2), system)
	if !reflect.DeepEqual(plan, trial) {
		t.Error("the plan was changed")
	}
	paths := map[model.Path]calc.Effect{}
	for _, e := range effects {
		paths[e.Ref.Path()] = e
	}
	density, ok := paths["section[3].density"]
	if !ok || math.Abs(density.Change/density.Step+1) > 0.02 {
		t.Errorf("%+v", density)
	}
	if _, ok := paths["section[3].density"]; !ok || len(effects) > 40 || len(effects) < 3 {
		t.Errorf("%d effects: %v", len(effects), paths)
	}
	if _, ok := paths["section[3].slurry[1].density"]; ok {
		t.Error("the slurry's density moves the mud's margin")
	}
	now := valueOn(t, calc.Alone(plan, 2), "mud.margin.fracture")
	for _, e := range effects {
		typed := demo(t, plans.Default)
		if e.Lost || e.Ref.Group.Name == "well" {
			continue
		}
		old := e.Ref.Get(typed).Quantity
		e.Ref.Set(typed, model.Entry{Quantity: quantity.Nudge(old, e.Ref.Field.Kind, system.Unit(e.Ref.Field.Kind), 1)})
		then := valueOn(t, calc.Alone(typed, 2), "mud.margin.fracture")
		if !near(then-now, e.Change, 1e-9) {
			t.Errorf("%s: %g, typed %g", e.Ref.Path(), e.Change, then-now)
		}
	}
}

func TestFollowersAreTheFiguresThatMove(t *testing.T) {
	plan := demo(t, plans.Default)
	list := calc.Followers(plan, entry(t, plan, "section[3].density"), unitOf(t, "sg", quantity.Density))
	found := map[string]bool{}
	for _, f := range list {
		found[fmt.Sprint(f.Sheet, f.Figure.Key)] = f.Limited
	}
	if limited, ok := found["2mud.margin.fracture"]; !ok || !limited {
		t.Errorf("%v", found)
	}
	if _, ok := found["2hole.td"]; ok {
		t.Error("TD moves with the density")
	}
	if list[0].Sheet > 2 || len(list) < 10 {
		t.Errorf("%d followers, the first of section %d", len(list), list[0].Sheet+1)
	}
}

// BenchmarkSweep works out a chart of forty contents.
func BenchmarkSweep(b *testing.B) {
	plan := demo(b, plans.Default)
	span := spanOf(b, plan, "section[3].density", "sg", 40)
	for b.Loop() {
		s := calc.NewSweep(plan, 2, "mud.margin.fracture", span)
		s.Chart(s.Try(0, s.Size()))
	}
}

// BenchmarkEffects looks through every entry for those that move a figure.
func BenchmarkEffects(b *testing.B) {
	plan := demo(b, plans.Default)
	system := plan.System(quantity.Metric, true)
	for b.Loop() {
		calc.Effects(plan, 2, "mud.margin.fracture", calc.Handles(plan, 2), system)
	}
}
