package calc_test

import (
	"fmt"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// started makes a new plan from the questions' defaults, but for the number of sections and the programme.
func started(t *testing.T, sections int, programme string) *model.Plan {
	t.Helper()
	var s model.Start
	g := model.StartGroup(&s)
	set := func(key, text string) {
		e, err := g.Field(key).Parse(text, 0)
		if err != nil {
			t.Fatal(err)
		}
		model.Ref{Group: g, Field: g.Field(key)}.Set(nil, e)
	}
	set("sections", fmt.Sprint(sections))
	set("programme", programme)
	set("name", "Try-1")
	return model.NewPlan(s)
}

// TestANewPlanLacksThePrognosisOnly: everything else can be computed, and nothing is impossible.
func TestANewPlanLacksThePrognosisOnly(t *testing.T) {
	for _, programme := range []string{model.ProgrammeUsual, model.ProgrammeWide} {
		for sections := 1; sections <= 6; sections++ {
			plan := started(t, sections, programme)
			if len(plan.Sections) != sections {
				t.Fatalf("%d sections, want %d", len(plan.Sections), sections)
			}
			r := calc.Evaluate(plan)
			for _, fault := range sound(plan, r) {
				t.Errorf("%s, %d sections: %s", programme, sections, fault)
			}
			for i := -1; i < sections; i++ {
				for _, f := range r.Sheet(i).Figures {
					if !f.OK && f.Mend != "prognosis.row" && !strings.HasSuffix(string(f.Mend), ".linear_mass") {
						t.Errorf("%s, section %d of %d: %s is blank: %s (%s)", programme, i+1, sections, f.Key, f.Why, f.Mend)
					}
				}
			}
			for _, f := range r.Findings {
				if f.Severity == calc.Stop && f.Mend != "prognosis.row" {
					t.Errorf("%s, section %d of %d stops: %s, %s, margin %g", programme, f.Section+1, sections, f.Key, f.Text, f.Margin)
				}
			}
			if sections < 6 {
				continue
			}
			for i := 1; i <= sections; i++ {
				if f := figure(t, r, i, "mud.emw.td"); !f.OK {
					t.Errorf("%s, section %d: the mud's own EMW needs no prognosis", programme, i)
				}
			}
		}
	}
}

// TestANewPlanEntersAllItsEntriesInRange, so that it can be saved and read again.
func TestANewPlanEntersAllItsEntriesInRange(t *testing.T) {
	for _, programme := range []string{model.ProgrammeUsual, model.ProgrammeWide} {
		plan := started(t, 6, programme)
		eachRef(plan, func(r model.Ref) {
			e := r.Get(plan)
			if !e.IsSet() {
				return
			}
			if got, err := r.Field.Parse(r.Field.FileText(e), 0); err != nil || got != e {
				t.Errorf("%s, %s = %q reads back as %q: %v", programme, r.Path(), r.Field.FileText(e), r.Field.FileText(got), err)
			}
			if r.Field.Required && r.Field.Type == model.QuantityField && e.Quantity.SI == 0 && r.Field.Kind == quantity.Length {
				t.Errorf("%s, %s is zero", programme, r.Path())
			}
		})
	}
}
