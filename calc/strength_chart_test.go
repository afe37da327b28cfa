package calc_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
)

// chart returns one chart of a section's casing.
func chart(t testing.TB, plan *model.Plan, section int, key string) calc.Chart {
	t.Helper()
	for _, c := range calc.Charts(plan, section-1, model.TopicCasing) {
		if c.Key == key {
			return c
		}
	}
	t.Fatalf("section %d has no chart %s", section, key)
	return calc.Chart{}
}

// valueAt reads a curve at a depth where it has a point; of two points at one depth the first.
func valueAt(t testing.TB, c calc.Chart, name string, at float64) float64 {
	t.Helper()
	for _, curve := range c.Curves {
		if curve.Name != name {
			continue
		}
		for _, p := range curve.Points {
			if near(p.At, at, 1e-6) {
				return p.Value
			}
		}
	}
	t.Fatalf("%s: no %s at %.2f m", c.Key, name, at)
	return 0
}

// TestChartsShowWhatTheFiguresSay: at the depth of the least factor stand the figure's load and, over the asked factor, its
// rating.
func TestChartsShowWhatTheFiguresSay(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for _, c := range []struct{ chart, curve, key string }{
		{"casing.collapse", "Losses, hole 4", "casing.collapse.losses.4"},
		{"casing.collapse", "Cementing", "casing.collapse.cementing"},
		{"casing.burst", "Gas, hole 4", "casing.burst.gas.4"},
		{"casing.burst", "Pressure test", "casing.burst.test"},
		{"casing.tension", "Overpull, stuck", "casing.tension.pulled"},
		{"casing.tension", "Plug bumped", "casing.tension.bump"},
	} {
		drawn := chart(t, plan, 3, c.chart)
		at := value(t, r, 3, c.key+".at")
		if got, want := valueAt(t, drawn, c.curve, at), value(t, r, 3, c.key+".load"); !near(got, want, 1e-6*want) {
			t.Errorf("%s at %.1f m: %g, figure %g", c.curve, at, got, want)
		}
	}
	drawn := chart(t, plan, 3, "casing.burst")
	top := value(t, r, 3, "casing.burst.gas.4.at")
	rating := valueAt(t, drawn, "Rating", top)
	if over := valueAt(t, drawn, "Rating over factor", top); !near(rating/over, 1.1, 1e-9) || !near(rating, value(t, r, 3, "casing.burst.gas.4.rating"), 1) {
		t.Errorf("rating %g, over the factor %g", rating, over)
	}
}

// TestChartsAreSound whatever is entered: numbers only, depths that go down, in a hole that does.
func TestChartsAreSound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyPlan(rt, t)
		i := rapid.IntRange(0, len(plan.Sections)-1).Draw(rt, "section")
		for _, c := range calc.Charts(plan, i, model.TopicCasing) {
			if c.Title == "" || c.Axis == "" || !c.Down || len(c.Curves) == 0 {
				rt.Errorf("%+v", c)
			}
			for _, curve := range c.Curves {
				last := math.Inf(-1)
				for _, p := range curve.Points {
					if math.IsNaN(p.At+p.Value) || math.IsInf(p.At+p.Value, 0) || plan.Trajectory.Method == model.Vertical && p.At < last {
						rt.Errorf("%s, %s: %+v after %g", c.Key, curve.Name, p, last)
					}
					last = p.At
				}
			}
		}
	})
}
