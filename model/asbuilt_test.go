package model_test

import (
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
)

// enter types an entry at a path.
func enter(t *testing.T, plan *model.Plan, path model.Path, text string) model.Ref {
	t.Helper()
	ref, ok := model.Find(plan, path)
	if !ok {
		t.Fatalf("no entry %s", path)
	}
	e, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	ref.Set(plan, e)
	return ref
}

// TestWhatIsBuiltTakesThePlaceItDeclares: every actual that names a planned entry takes its place, in the plan that counts alone, and
// the planned entry says so.
func TestWhatIsBuiltTakesThePlaceItDeclares(t *testing.T) {
	over := 0
	for _, f := range model.BuiltGroup().Fields {
		if f.Over == "" {
			continue
		}
		over++
		plan := demo(t, "ottermast-2")
		section := 4 // the liner has all of it
		planned, ok := model.Find(plan, model.PathOf(section, f.Over))
		if !ok {
			t.Fatalf("%s takes the place of %s, which is no entry", f.Key, f.Over)
		}
		was := planned.Get(plan)
		actual := model.Ref{Group: model.BuiltGroup(), Field: f, Place: model.Place{Outer: section}}
		entry := model.Entry{Quantity: quantity.Value{SI: f.Min.SI, Unit: f.Min.Unit}}
		actual.Set(plan, entry)
		counts := model.AsBuilt(plan)
		switch {
		case planned.Get(counts) != entry || planned.Get(plan) != was:
			t.Errorf("%s: what counts is %+v, planned %+v", f.Key, planned.Get(counts), planned.Get(plan))
		case planned.Idle(plan) == "":
			t.Errorf("%s still counts beside %s", f.Over, f.Key)
		}
		if got := planned.Get(model.AsPlanned(plan)); got != was {
			t.Errorf("%s as planned is %+v", f.Over, got)
		}
	}
	if over < 5 {
		t.Errorf("only %d actuals take a place", over)
	}
}

func TestAPlannedEntrySaysWhatCounts(t *testing.T) {
	plan := demo(t, "ottermast-2")
	actual := enter(t, plan, "section[3].built.td", "2160 m")
	enter(t, plan, "section[3].built.shoe", "2143 m")
	for path, want := range map[model.Path]string{"section[3].td": "as built: 2160 m counts", "section[3].rathole": "as built: shoe as set, along hole, 2143 m, counts"} {
		ref, _ := model.Find(plan, path)
		if got := ref.Idle(plan); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
	planned, _ := model.Find(plan, "section[3].td")
	if got, ok := planned.Actual(plan); !ok || got != actual {
		t.Errorf("in place of the TD counts %+v", got)
	}
	if other, _ := model.Find(plan, "section[2].td"); other.Idle(plan) != "" {
		t.Error("another section's TD is put aside")
	}
}

// TestNothingBuiltIsThePlanItself: without actuals nothing is copied, and what does not count is no actual.
func TestNothingBuiltIsThePlanItself(t *testing.T) {
	plan := demo(t, "ottermast-2")
	if model.AsBuilt(plan) != plan || model.AsPlanned(plan) != plan {
		t.Error("a plan without actuals is copied")
	}
	enter(t, plan, "section[3].built.tilt", "1 deg") // that string carries no housing
	if counts := model.AsBuilt(plan); counts.Sections[2].HasActuals() {
		t.Error("what does not count is as built")
	}
	ref, _ := model.Find(plan, "section[3].built.tilt")
	if why := ref.Idle(plan); !strings.Contains(why, "no housing") {
		t.Errorf("it does not count because: %q", why)
	}
}
