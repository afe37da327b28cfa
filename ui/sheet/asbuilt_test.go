package sheet_test

import (
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/ui/sheet"
)

// built is a demo plan of which a section came to be otherwise than planned.
func built(t *testing.T) *model.Plan {
	t.Helper()
	plan := demo(t, "ottermast-2")
	for _, e := range []struct{ path, text string }{
		{"started", "2026-03-01"}, {"td", "2161 m"}, {"reached", "2026-03-06"}, {"density", "1.27 sg"}, {"diameter", "18.1 in"}, {"shoe", "2134 m"},
		{"landed", "2026-03-08"}, {"displaced", "142 m3"}, {"bumped", "yes"}, {"bump_pressure", "95 bar"}, {"returns", "partial"}, {"lost", "4 m3"},
		{"cement_top", "980 m"}, {"cement_top_by", "log"}, {"test_pressure", "275 bar"},
	} {
		ref, ok := model.Find(plan, model.PathOf(2, "built."+e.path))
		entry, err := ref.Field.Parse(e.text, 0)
		if !ok || err != nil {
			t.Fatalf("%s = %s: %v", e.path, e.text, err)
		}
		ref.Set(plan, entry)
	}
	for _, volume := range []string{"86 m3", "18 m3"} {
		entry, err := model.BuiltSlurryList().Fields[0].Parse(volume, 0)
		if err != nil {
			t.Fatal(err)
		}
		plan.Sections[2].BuiltSlurries = append(plan.Sections[2].BuiltSlurries, model.BuiltSlurry{Volume: entry.Quantity})
	}
	return plan
}

func TestAsBuiltSheet(t *testing.T) {
	plan := built(t)
	o := options(plan)
	o.Section, o.Paper = 2, sheet.AsBuiltSheet
	golden(t, "as-built-sheet_ottermast-2_3.txt", write(t, plan, o))
}

// TestAsBuiltSheetIsAForm: before anything is as built there is room for all of it beside what is planned.
func TestAsBuiltSheetIsAForm(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section, o.Paper = 2, sheet.AsBuiltSheet
	text := write(t, plan, o)
	for _, want := range []string{"Hole TD    planned 2155.0 m  as built ________", "Cemented       as built ________", "Remarks"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q on the form", want)
		}
	}
	if strings.Contains(text, "difference") {
		t.Error("a difference from nothing")
	}
}

// TestSheetsKeepThePlanBesideWhatIsBuilt: the planned entry is printed with what counts in its place, and cards take what counts.
func TestSheetsKeepThePlanBesideWhatIsBuilt(t *testing.T) {
	plan := built(t)
	o := options(plan)
	o.Section = 2
	joined := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	if text := joined(write(t, plan, o)); !strings.Contains(text, "planned 2155.0 m; as built: 2161 m counts") {
		t.Error("the planned TD does not stand beside the one that counts")
	}
	o.Paper = sheet.KillSheet
	if text := joined(write(t, plan, o)); !strings.Contains(text, "1.270 sg") {
		t.Error("the kill sheet does not take the mud as weighed")
	}
}
