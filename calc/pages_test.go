package calc

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// shaken draws a demo plan with a few entries blanked, moved, or chosen otherwise.
func shaken(t *rapid.T, tb testing.TB) *model.Plan {
	name := rapid.SampledFrom(plans.Names()).Draw(t, "plan")
	plan := Demo(tb, name)
	var refs []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			refs = append(refs, model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
	for range rapid.IntRange(0, 8).Draw(t, "changes") {
		ref := refs[rapid.IntRange(0, len(refs)-1).Draw(t, "entry")]
		switch old := ref.Get(plan).Quantity; {
		case ref.Field.Type == model.ChoiceField:
			ref.Set(plan, model.Entry{Text: rapid.SampledFrom(ref.Field.Choices).Draw(t, "choice")})
		case old.IsSet() && rapid.IntRange(0, 3).Draw(t, "keep") > 0:
			si := old.SI * rapid.Float64Range(0.8, 1.2).Draw(t, "by")
			ref.Set(plan, model.Entry{Quantity: quantity.Value{SI: si, Unit: old.Unit}})
		default:
			ref.Set(plan, model.Entry{})
		}
	}
	return plan
}

// TestPagesStandAlone: the pages of one section, worked out without the others', give the very sheet that they give among
// them, and find about limits what is found among them in the same order; other pages may find more about it.
func TestPagesStandAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := shaken(rt, t)
		all := Evaluate(plan)
		for i := -1; i < len(plan.Sections); i++ {
			alone := runPages(plan, i, nil).result
			if !reflect.DeepEqual(alone.Sheet(i).Figures, all.Sheet(i).Figures) {
				for k, f := range all.Sheet(i).Figures {
					if k < len(alone.Sheet(i).Figures) && f != alone.Sheet(i).Figures[k] {
						rt.Fatalf("section %d: alone %+v, among the others %+v", i+1, alone.Sheet(i).Figures[k], f)
					}
				}
				rt.Fatalf("section %d: alone %d figures, among the others %d", i+1, len(alone.Sheet(i).Figures), len(all.Sheet(i).Figures))
			}
			rest := compared(all, i)
			for _, f := range compared(alone, i) {
				k := slices.Index(rest, f)
				if k < 0 {
					rt.Fatalf("section %d alone: %+v is not found, or in another order, among the others", i+1, f)
				}
				rest = rest[k+1:]
			}
		}
	})
}

// TestTopicsStandAlone: a topic of a section, worked out without the others, gives the very figures that it gives among them.
func TestTopicsStandAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := shaken(rt, t)
		i := rapid.IntRange(-1, len(plan.Sections)-1).Draw(rt, "section")
		all := Alone(plan, i)
		for _, topic := range model.Topics() {
			if i < 0 != (topic == model.TopicWell || topic == model.TopicHandover) { // the two pages of the well
				continue
			}
			var want []Figure
			for _, f := range all.Figures {
				if f.Topic == topic {
					want = append(want, f)
				}
			}
			if got := runTopic(plan, i, topic).Figures; !slices.Equal(got, want) {
				rt.Fatalf("section %d, %s: %d figures alone, %d among the others, or not the same", i+1, topic, len(got), len(want))
			}
		}
	})
}

// compared returns the findings of a section that compare something with a limit.
func compared(r *Result, section int) (list []Finding) {
	for _, f := range r.Findings {
		if f.Section == section && f.HasLimit {
			list = append(list, f)
		}
	}
	return list
}

// BenchmarkOneSection computes the pages of one section of the five-section demo.
func BenchmarkOneSection(b *testing.B) {
	plan := Demo(b, plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		runPages(plan, 2, nil)
	}
}
