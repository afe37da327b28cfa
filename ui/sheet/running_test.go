package sheet_test

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

func running(t *testing.T, plan *model.Plan, o sheet.Options) string {
	t.Helper()
	o.Paper = sheet.RunningList
	return write(t, plan, o)
}

func TestGoldenRunningList(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section = 4
	got := running(t, plan, o)
	golden(t, "ottermast-2_5_running.txt", got)
}

// tallied calls visit for every section of the demos that has a tally.
func tallied(t *testing.T, visit func(name string, plan *model.Plan, section int)) {
	t.Helper()
	n := 0
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for i := range plan.Sections {
			if plan.Sections[i].Tally.JointLength.IsSet() {
				visit(name, plan, i)
				n++
			}
		}
	}
	if n < 8 {
		t.Fatalf("only %d tallies", n)
	}
}

func TestARunningListFitsThePage(t *testing.T) {
	tallied(t, func(name string, plan *model.Plan, section int) {
		for _, set := range quantity.Sets() {
			for _, ascii := range []bool{false, true} {
				o := options(plan)
				o.System, o.ASCII, o.Section = plan.System(set, false), ascii, section
				if fault := textFault(running(t, plan, o), ascii); fault != "" {
					t.Errorf("%s section %d, %s, ascii %t: %s", name, section+1, set, ascii, fault)
				}
			}
		}
	})
}

// TestARunningListForAMachineAddsUp adds the lengths of the CSV and the JSON form and compares them with the depths.
func TestARunningListForAMachineAddsUp(t *testing.T) {
	tallied(t, func(name string, plan *model.Plan, section int) {
		o := options(plan)
		o.Section, o.Format = section, sheet.CSV
		records, err := csv.NewReader(strings.NewReader(running(t, plan, o))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		at := map[string]int{}
		for k, title := range records[0] {
			at[title] = k
		}
		o.Format = sheet.JSON
		var file struct {
			Lists []struct {
				ShoeSI float64 `json:"shoe_si"`
				TopSI  float64 `json:"top_si"`
				Rows   []struct {
					Piece, String string
					LengthSI      float64 `json:"length_si"`
					TopSI         float64 `json:"top_si"`
				}
			}
		}
		if err := json.Unmarshal([]byte(running(t, plan, o)), &file); err != nil {
			t.Fatal(err)
		}
		if len(file.Lists[0].Rows) != len(records)-1 || len(file.Lists[0].Rows) < 40 {
			t.Fatalf("%s section %d: %d rows as JSON, %d as CSV", name, section+1, len(file.Lists[0].Rows), len(records)-1)
		}
		sum := 0.0
		for k, r := range file.Lists[0].Rows {
			length, err := strconv.ParseFloat(records[k+1][at["length_si"]], 64)
			if err != nil || length != r.LengthSI || records[k+1][at["piece"]] != r.Piece || records[k+1][at["string"]] != r.String {
				t.Fatalf("%s section %d row %d: CSV %q, JSON %+v, %v", name, section+1, k+1, records[k+1], r, err)
			}
			sum += length
			if math.Abs(file.Lists[0].ShoeSI-sum-r.TopSI) > 1e-6 {
				t.Errorf("%s section %d row %d: top at %g m, %g m above the shoe at %g m", name, section+1, k+1, r.TopSI, sum, file.Lists[0].ShoeSI)
			}
		}
	})
}

func TestARunningListAsMarkdownHasARowForEachPiece(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section, o.Format = 2, sheet.Markdown
	text := running(t, plan, o)
	if n := strings.Count(text, "\n| joint "); n != 145 {
		t.Errorf("%d joints", n)
	}
	for _, want := range []string{"| pup | 3.85 |", "# Running list, section 3", "| stand 12 |", "wanted"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}

// TestARunningListShowsNothingThatDrivesATerminal: the number painted on a joint is text from outside.
func TestARunningListShowsNothingThatDrivesATerminal(t *testing.T) {
	plan := demo(t, "ottermast-2")
	s := &plan.Sections[4]
	for k := range 60 {
		s.Joints = append(s.Joints, model.Joint{Number: fmt.Sprintf("\x1b[2J=%d|\u202e", k), Length: s.Tally.JointLength})
	}
	o := options(plan)
	o.Section = 4
	for _, o.Format = range []sheet.Format{sheet.Text, sheet.Markdown, sheet.CSV, sheet.JSON} {
		if text := running(t, plan, o); strings.ContainsAny(text, "\x1b\u202e") || !strings.Contains(text, "[2J") {
			t.Errorf("%s: a number drives the terminal, or is gone", o.Format)
		}
	}
}

// TestAllRunningListsOfAPlan are printed together when no section is named, and none is an error that says why.
func TestAllRunningListsOfAPlan(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	text := running(t, plan, o)
	for _, want := range []string{"Running list, section 3", "Running list, section 4", "Running list, section 5"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	o.Section, o.Paper = 0, sheet.RunningList
	var b strings.Builder
	if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "section 1: the string has no tally") || b.Len() > 0 {
		t.Errorf("%v, %q", err, b.String())
	}
}

// TestAMixedStringSaysWhichPipeComesNext: below 1000 m a heavier casing; where it changes the list says so, and the CSV
// names the pipe of every joint.
func TestAMixedStringSaysWhichPipeComesNext(t *testing.T) {
	plan := demo(t, "ottermast-2")
	section := &plan.Sections[2]
	lower := section.Casing[0]
	length, err := quantity.Parse("1000 m", quantity.Length, 0)
	if err != nil {
		t.Fatal(err)
	}
	lower.Length, lower.Grade = length, "Q125"
	section.Casing = append([]model.CasingPart{lower}, section.Casing[0])
	o := options(plan)
	o.Paper, o.Section = sheet.RunningList, 2
	text := write(t, plan, o)
	if n := strings.Count(text, "-- from here"); n != 2 || !strings.Contains(text, "-- from here 13 5/8 in 131.3 kg/m Q125") {
		t.Errorf("%d changes of pipe in the list", n)
	}
	o.Format = sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	grades := map[string]bool{}
	for _, r := range records[1:] {
		if r[4] == "casing" {
			grades[r[5][strings.LastIndex(r[5], " ")+1:]] = true
		}
	}
	if !grades["Q125"] || !grades["P110"] {
		t.Errorf("grades in the CSV: %v", grades)
	}
}
