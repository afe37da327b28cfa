package calc_test

import (
	"math"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// TestABalancedPlugByHand sets a 100 m kick-off plug in 12 1/4 in hole through 5 in pipe of 4.276 in bore, 2 m3 of spacer
// ahead, in plain arithmetic: slurry fills the hole; pipe in, the steel is in the way.
func TestABalancedPlugByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[3].Plugs = []model.CementPlug{{
		Name: "kick-off", In: model.InOpenHole, Base: must(t, "3000 m", quantity.Length), Top: must(t, "2900 m", quantity.Length),
		Ahead: must(t, "2 m3", quantity.Volume), PipeOD: must(t, "5 in", quantity.Diameter), PipeID: must(t, "4.276 in", quantity.Diameter),
		Yield: must(t, "75.84 L/100kg", quantity.SlurryYield), MixFluid: must(t, "44.09 L/100kg", quantity.MixWater),
	}}
	area := func(d float64) float64 { return math.Pi / 4 * d * d * inch * inch }
	hole, steel, inside := area(12.25), area(5)-area(4.276), area(4.276)
	slurry := hole * 100
	height := slurry / (hole - steel)
	ahead := 2 / (hole - area(5))
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{
		"slurry": slurry, "behind": ahead * inside, "displacement": (3000 - height - ahead) * inside,
		"top_in": 3000 - height, "top_out": 2900, "dry": slurry / 75.84e-5, "mix": slurry / 75.84e-5 * 44.09e-5,
	} {
		if got := value(t, r, 4, "cement.plug.1."+key); !near(got, want, 1e-6*math.Max(1, want)) {
			t.Errorf("%s = %.6f, by hand %.6f", key, got, want)
		}
	}
}

func TestPlugsThatCannotBeSet(t *testing.T) {
	for _, c := range []struct{ base, top, od, mend string }{
		{"9000 m", "2900 m", "5 in", "section[4].plug[1].base"},
		{"3000 m", "3100 m", "5 in", "section[4].plug[1].top"},
		{"3000 m", "2900 m", "3 in", "section[4].plug[1].pipe_id"},
		{"3000 m", "", "5 in", "section[4].plug[1].top"},
	} {
		plan := demo(t, "ottermast-2")
		plan.Sections[3].Plugs = []model.CementPlug{{Base: must(t, c.base, quantity.Length), PipeOD: must(t, c.od, quantity.Diameter),
			PipeID: must(t, "4.276 in", quantity.Diameter)}}
		if c.top != "" {
			plan.Sections[3].Plugs[0].Top = must(t, c.top, quantity.Length)
		}
		if f := figure(t, calc.Evaluate(plan), 4, "cement.plug.1.slurry"); f.OK || string(f.Mend) != c.mend {
			t.Errorf("%+v: %+v", c, f)
		}
	}
	// In casing the bore is the casing's.
	plan := demo(t, "ottermast-2")
	plan.Sections[3].Plugs = []model.CementPlug{{In: model.InCasing, Base: must(t, "3000 m", quantity.Length), Top: must(t, "2900 m", quantity.Length)}}
	id := value(t, calc.Evaluate(plan), 4, "casing.part.1.id")
	if got, want := value(t, calc.Evaluate(plan), 4, "cement.plug.1.slurry"), math.Pi/4*id*id*100; !near(got, want, 1e-6) {
		t.Errorf("plug in casing %.4f m3, want %.4f", got, want)
	}
}
