package model_test

import (
	"strings"
	"testing"

	"borewalk/model"
)

func TestTheQuestionsOfANewPlanHaveAnswers(t *testing.T) {
	var s model.Start
	g := model.StartGroup(&s)
	for _, f := range g.Fields {
		if len(f.Label) > 16 || f.Help == "" {
			t.Errorf("%s: label %q, help %q", f.Key, f.Label, f.Help)
		}
		if f.Key != "name" && f.Default == "" {
			t.Errorf("%s has no default", f.Key)
		}
	}
	if s.Sections.SI != 5 || s.Programme != model.ProgrammeUsual || !s.AirGap.IsSet() || !s.WaterDepth.IsSet() || s.UnitSet == "" {
		t.Errorf("answers before any question: %+v", s)
	}
}

func TestANewPlanIsFilledWithDefaults(t *testing.T) {
	var s model.Start
	model.StartGroup(&s)
	s.Name = "Try-1"
	plan := model.NewPlan(s)
	if plan.Well.Name != "Try-1" || len(plan.Sections) != 5 || len(plan.Pumps) != 1 || len(plan.Window) != 0 {
		t.Errorf("%q with %d sections, %d pumps, %d rows of prognosis", plan.Well.Name, len(plan.Sections), len(plan.Pumps), len(plan.Window))
	}
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			r := model.Ref{Group: g, Field: f, Place: at}
			e := r.Get(plan)
			if f.Required && r.Idle(plan) == "" && !e.IsSet() {
				t.Errorf("%s is needed and blank", r.Path())
			}
			if e.IsSet() && f.Type == model.QuantityField {
				if _, err := f.Parse(e.Quantity.Text(), 0); err != nil {
					t.Errorf("%s = %s: %v", r.Path(), e.Quantity.Text(), err)
				}
			}
			if f.Type == model.ChoiceField && f.Default != "" && !e.IsSet() {
				t.Errorf("%s holds no choice", r.Path())
			}
		}
		return true
	})
	for i, s := range plan.Sections {
		if i > 0 && s.TD.SI <= plan.Sections[i-1].TD.SI {
			t.Errorf("section %d ends above the last", i+1)
		}
		if !strings.Contains(s.Name, " hole, ") || len(s.Casing) == 0 || len(s.String) == 0 {
			t.Errorf("section %d: %+v", i+1, s)
		}
	}
}

func TestTwoNewPlansShareNothing(t *testing.T) {
	var s model.Start
	model.StartGroup(&s)
	a, b := model.NewPlan(s), model.NewPlan(s)
	a.Sections[0].Casing[0].Grade = "changed"
	a.Pumps[0].Action = "changed"
	if b.Sections[0].Casing[0].Grade == "changed" || b.Pumps[0].Action == "changed" {
		t.Error("a change in one new plan shows in another")
	}
}
