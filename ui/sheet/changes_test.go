package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/sheet"
)

// changedDemo is a demo whose mud was made heavier, with the log of it.
func changedDemo(t *testing.T) (plan *model.Plan, against sheet.Against) {
	t.Helper()
	plan = demo(t, "ottermast-2")
	ref, _ := model.Find(plan, "section[4].density")
	var h model.History
	h.Do(plan, model.Edit{Why: "losses", Changes: []model.Change{model.Setting(plan, ref, model.Entry{Quantity: quantity.Of(1.75, plan.Sections[3].Density.Unit)})}})
	h.Do(plan, model.Edit{Changes: []model.Change{model.Removing(model.SectionGroup(), model.Place{Outer: 4})}})
	rows := h.Pending()
	for i := range rows {
		rows[i].Who = "A. Person"
	}
	return plan, sheet.Against{Plan: demo(t, "ottermast-2"), Name: "the baseline", Log: rows}
}

// TestAChangeNoteSaysWhatWasChangedAndWhatItDoes: entries with who and why, findings with both states, figures with their limits.
func TestAChangeNoteSaysWhatWasChangedAndWhatItDoes(t *testing.T) {
	plan, against := changedDemo(t)
	o := options(plan)
	o.Paper, o.Against = sheet.ChangeNote, against
	text := write(t, plan, o)
	for _, want := range []string{"Change note: Ottermast-2", "Compared with: the baseline", "Entries changed: 2", "was 1.420 sg", "now 1.750 sg", "why losses", "Section 5", "removed",
		"ok to stop, section 4: ECD below fracture", "Before: Measured", "Figures moved", "limit at least", "The log since then", "section 5 removed, with"} {
		if !strings.Contains(text, want) {
			t.Errorf("the note lacks %q", want)
		}
	}
	if fault := textFault(text, false); fault != "" {
		t.Error(fault)
	}
	o.Section = 2
	if text = write(t, plan, o); !strings.Contains(text, "Entries changed: 0") {
		t.Error("a section's note has another's entries")
	}
	o.Section, o.Paper = -1, sheet.ComparisonPaper
	if text = write(t, plan, o); strings.Contains(text, "The log") || !strings.Contains(text, "Comparison: ") {
		t.Error("a comparison has a log")
	}
	o.Against = sheet.Against{}
	if err := sheet.Write(new(bytes.Buffer), plan, calc.Evaluate(plan), o); err == nil {
		t.Error("a comparison with nothing")
	}
}

// TestChangesHoldTheSameNumbersInEveryForm: each difference of the JSON form is a record of the CSV form, with the same numbers, and
// every one that the comparison has is there.
func TestChangesHoldTheSameNumbersInEveryForm(t *testing.T) {
	plan, against := changedDemo(t)
	c := calc.Compare(against.Plan, plan)
	o := options(plan)
	o.Paper, o.Against, o.Format = sheet.ChangeNote, against, sheet.JSON
	var got struct {
		Changes []struct {
			Record, Key, Before string
			After_SI            *float64
		}
	}
	if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
		t.Fatal(err)
	}
	o.Format = sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if want := len(c.Entries) + len(c.Findings) + len(c.Figures) + len(against.Log); len(got.Changes) != want || len(records)-1 != want {
		t.Fatalf("%d as JSON, %d as CSV, want %d", len(got.Changes), len(records)-1, want)
	}
	for k, d := range got.Changes {
		r := records[k+1]
		if d.Record != r[0] || d.Key != r[2] || d.Before != strings.TrimPrefix(r[5], "'") {
			t.Fatalf("%+v is %q", d, r)
		}
		if x, err := strconv.ParseFloat(r[9], 64); (d.After_SI != nil) != (err == nil) || err == nil && x != *d.After_SI {
			t.Fatalf("%+v is %q", d, r)
		}
	}
}

// TestHostileLogsOnAChangeNote: names and reasons, uncleaned, neither leave the page nor become a spreadsheet's formula.
func TestHostileLogsOnAChangeNote(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections = plan.Sections[:1]
	before := plan.Clone()
	rapid.Check(t, func(t *rapid.T) {
		text := hostile()
		plan.Well.Name, plan.Sections[0].Fluid = text.Draw(t, "well"), text.Draw(t, "fluid")
		row := func(what string) model.LogRow {
			return model.LogRow{When: text.Draw(t, "when"), Who: text.Draw(t, "who"), Why: text.Draw(t, "why"), What: what, Path: text.Draw(t, "path"), Old: text.Draw(t, "old"), New: text.Draw(t, "new")}
		}
		o := options(plan)
		o.Paper, o.ASCII = sheet.ChangeNote, rapid.Bool().Draw(t, "ascii")
		o.Against = sheet.Against{Plan: before, Name: text.Draw(t, "name"), Log: []model.LogRow{row(model.LogSet), row(model.LogMark), row(model.LogAdd)}, Misfits: []model.Misfit{{Why: text.Draw(t, "misfit")}}}
		o.Against.Log[0].Path = "section[1].fluid"
		if fault := textFault(write(t, plan, o), o.ASCII); fault != "" {
			t.Fatal(fault)
		}
		o.Format = sheet.CSV
		records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range records {
			for _, cell := range r {
				if _, err := strconv.ParseFloat(cell, 64); err != nil && formula.MatchString(cell) {
					t.Fatalf("a spreadsheet would compute %q", cell)
				}
			}
		}
		o.Format = sheet.JSON
		if !json.Valid([]byte(write(t, plan, o))) {
			t.Fatal("not JSON")
		}
	})
}
