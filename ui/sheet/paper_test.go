package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/ui/sheet"
)

// TestCementCardForPrograms: CSV and JSON hold the same numbers, and the strokes to bump are the plan's figure.
func TestCementCardForPrograms(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Format = sheet.CementCard, sheet.JSON
	var got struct {
		Cards []struct {
			Section int
			Tables  []struct {
				Title string
				Rows  []struct {
					Name   string
					Values map[string]struct {
						SI   float64
						Unit string
					}
				}
			}
		}
	}
	if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Cards) != 5 {
		t.Fatalf("%d cards, want one for each of five cemented strings", len(got.Cards))
	}
	values, strokes := 0, 0.0
	for _, c := range got.Cards {
		for _, table := range c.Tables {
			for _, r := range table.Rows {
				values += len(r.Values)
				if c.Section == 3 && r.Name == "bump" {
					strokes = r.Values["strokes"].SI
				}
			}
		}
	}
	if math.Abs(strokes-8740) > 1 {
		t.Errorf("strokes to bump %g, want 8740", strokes)
	}
	o.Format = sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil || len(records)-1 != values {
		t.Errorf("CSV: %d values, %v; JSON has %d", len(records)-1, err, values)
	}
	for _, r := range records[1:] {
		if _, err := strconv.ParseFloat(r[6], 64); err != nil {
			t.Errorf("%q: %v", r, err)
		}
	}
}

// TestTheStrengthTableIsThePagesFigures: factor, load and rating of a case are those of the page, and the loads by depth
// keep within what it says is the worst.
func TestTheStrengthTableIsThePagesFigures(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Format, o.Section = sheet.StrengthTable, sheet.CSV, 1
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	result := evaluate(plan)
	want, _ := result.Sheet(1).Find("casing.collapse.losses.3")
	found, least := false, math.Inf(1)
	for _, r := range records[1:] {
		value, _ := strconv.ParseFloat(r[6], 64)
		if r[2] == "Losses, hole 3" && r[3] == "factor" {
			found = true
			if math.Abs(value-want.Value) > 1e-9 {
				t.Errorf("factor %g, the page has %g", value, want.Value)
			}
		}
		if strings.HasPrefix(r[1], "Collapse: equivalent") && r[3] == "Rating" {
			least = min(least, value)
		}
	}
	if !found || math.IsInf(least, 1) {
		t.Errorf("lost returns %v, least rating by depth %g", found, least)
	}
}

func TestWhereThereIsNoCard(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	o := options(plan)
	o.Paper, o.Section = sheet.CementCard, 0 // jetted
	var b bytes.Buffer
	if err := sheet.Write(&b, plan, evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "no cemented string") {
		t.Errorf("a card of a jetted string: %v", err)
	}
	if _, err := sheet.ParsePaper("kite"); err == nil || !strings.Contains(err.Error(), "cement-card") {
		t.Errorf("a kite: %v", err)
	}
	for _, name := range []string{"cement-card", "Cement Card"} {
		if paper, err := sheet.ParsePaper(name); err != nil || paper != sheet.CementCard {
			t.Errorf("%q: %v, %v", name, paper, err)
		}
	}
}

// TestHostileNamesOnACard: names of fluids and sections, uncleaned, neither leave the page nor become a spreadsheet's formula.
func TestHostileNamesOnACard(t *testing.T) {
	plan := demo(t, "ottermast-2")
	rapid.Check(t, func(t *rapid.T) {
		text := hostile()
		section := &plan.Sections[2]
		section.Name, plan.Well.Name = text.Draw(t, "section"), text.Draw(t, "well")
		section.Slurries[0].Name, section.Spacers[0].Name = text.Draw(t, "slurry"), text.Draw(t, "spacer")
		o := options(plan)
		o.Paper, o.Section, o.ASCII = sheet.CementCard, 2, rapid.Bool().Draw(t, "ascii")
		if fault := textFault(write(t, plan, o), o.ASCII); fault != "" {
			t.Fatal(fault)
		}
		o.Format = sheet.CSV
		records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range records {
			for _, text := range []string{r[1], r[2], r[3], r[7]} {
				if formula.MatchString(text) {
					t.Fatalf("a spreadsheet would compute %q", text)
				}
			}
		}
		o.Format = sheet.JSON
		if !json.Valid([]byte(write(t, plan, o))) {
			t.Fatal("not JSON")
		}
	})
}

// TestEveryPaperHoldsTheSameNumbersInEveryForm: each value of the JSON form is a record of the CSV form and a cell of the Markdown
// form, those of a table with columns of several kinds below one heading too.
func TestEveryPaperHoldsTheSameNumbersInEveryForm(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for k := range plan.Trials { // they are of the section before
		plan.Trials[k].Section = model.SectionLabel(plan, 3)
	}
	o := options(plan)
	o.Section = 3
	for _, o.Paper = range []sheet.Paper{sheet.CementCard, sheet.StrengthTable, sheet.MudSheet, sheet.TripSheet, sheet.BHASheet, sheet.HydraulicsSheet,
		sheet.KillSheet, sheet.LimitsCard, sheet.ShoeTestSheet, sheet.TrialsSheet,
		sheet.AsBuiltSheet, sheet.StepList, sheet.Chapter} {
		o.Format = sheet.JSON
		var got struct {
			Cards []struct {
				Tables []struct {
					Title string
					Rows  []struct {
						Name   string
						Values map[string]struct{ Text string }
					}
				}
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
		values := 0
		for _, table := range got.Cards[0].Tables {
			for _, r := range table.Rows {
				values += len(r.Values)
			}
		}
		if values == 0 || len(records)-1 != values {
			t.Errorf("%v: %d values as CSV, %d as JSON", o.Paper, len(records)-1, values)
		}
		o.Format = sheet.Markdown
		text := write(t, plan, o)
		for _, table := range got.Cards[0].Tables {
			_, body, found := strings.Cut(text, "\n## "+table.Title+"\n")
			if !found {
				t.Errorf("%v: no table %q", o.Paper, table.Title)
				continue
			}
			body, _, _ = strings.Cut(body, "\n## ")
			numbers := 0
			for _, line := range strings.Split(body, "\n") {
				if cells := strings.Split(line, " | "); strings.HasPrefix(line, "| ") && !strings.HasPrefix(line, "| -") {
					for _, c := range cells[1:] {
						if c = strings.Trim(c, " |"); c != "" && strings.ContainsAny(c[:1], "-0123456789") && c != "-" {
							numbers++
						}
					}
				}
			}
			want := 0
			for _, r := range table.Rows {
				want += len(r.Values)
			}
			if numbers < want {
				t.Errorf("%v, %s: %d numbers as Markdown, %d as JSON", o.Paper, table.Title, numbers, want)
			}
		}
	}
}
