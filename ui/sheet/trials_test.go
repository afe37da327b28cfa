package sheet_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
	"borewalk/ui/sheet"
)

// TestTheTrialsPaperHoldsWhatEachTrialGives, by its name, as another program reads it.
func TestTheTrialsPaperHoldsWhatEachTrialGives(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Format = sheet.TrialsSheet, sheet.JSON
	var got struct {
		Cards []struct {
			Section int
			Tables  []struct {
				Title string
				Rows  []struct {
					Name, Note string
					Values     map[string]struct{ SI float64 }
				}
			}
		}
	}
	if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Cards) != 1 || got.Cards[0].Section != 3 {
		t.Fatalf("%d cards, want one for the section that has trials", len(got.Cards))
	}
	compared, checked := calc.Trials(plan, 2), 0
	for _, table := range got.Cards[0].Tables {
		for _, r := range table.Rows {
			if table.Title != "Figures that move" || r.Name != "Kick tolerance" {
				continue
			}
			for _, trial := range compared.Trials {
				f, _ := trial.Result.Sheet(2).Find("control.tolerance")
				if v, ok := r.Values[trial.Name]; !ok || math.Abs(v.SI-f.Value) > 1e-9 {
					t.Errorf("%s: %v, want %g", trial.Name, v, f.Value)
				}
				checked++
			}
			if !strings.Contains(r.Note, "poor leak-off 1.40 sg -6.70 !") {
				t.Errorf("note %q", r.Note)
			}
		}
	}
	if checked != 3 {
		t.Errorf("%d values looked at, want 3", checked)
	}
}

// TestTheTrialsPaperSaysWhatCannotBeTried, stays clean whatever a file says, and keeps to its page.
func TestTheTrialsPaperSaysWhatCannotBeTried(t *testing.T) {
	plan := demo(t, "ottermast-2")
	long := strings.Repeat("long ", 40)
	for _, trial := range []model.Trial{
		{Name: "mud +0.05 sg", Changes: []model.TrialChange{{Path: "section[9].td", Value: "-50 m"}, {Path: "section[3].density", Value: "+5 m"}}},
		{Name: "plan", Changes: []model.TrialChange{{Path: "section[3].shoe", Value: "2100 m"}, {Path: "section[3].fluid", Value: "blank"}}},
		{Name: long + "\x1b[2J", Note: long, Changes: []model.TrialChange{{Path: long, Value: long}}},
		{},
	} {
		trial.Section = "3"
		plan.Trials = append(plan.Trials, trial)
	}
	o := options(plan)
	o.Paper, o.Section = sheet.TrialsSheet, 2
	text := write(t, plan, o)
	for _, want := range []string{"Not worked out: section[9].td: the plan has no such entry", "unit of length", "does not count", "trial 4: !!"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("%q is not said in\n%s", want, text)
		}
	}
	for _, l := range strings.Split(text, "\n") {
		if canvas.Width(l) > 80 {
			t.Errorf("%d columns: %s", canvas.Width(l), l)
		}
	}
	for _, o.Format = range []sheet.Format{sheet.Text, sheet.Markdown, sheet.CSV, sheet.JSON} {
		if strings.Contains(write(t, plan, o), "\x1b") {
			t.Errorf("%v holds what would drive a terminal", o.Format)
		}
	}
	o.Section, o.Format = 0, sheet.Text
	var b bytes.Buffer
	if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "no trial of it is kept") {
		t.Errorf("a section without trials: %v", err)
	}
}
