package sheet_test

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

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
		type value struct{ SI float64 }
		var file struct {
			Cards []struct {
				Tables []struct {
					Title string
					Rows  []struct {
						Name, Of string
						Values   map[string]value
					}
				}
			}
		}
		if err := json.Unmarshal([]byte(running(t, plan, o)), &file); err != nil {
			t.Fatal(err)
		}
		ends, pieces := file.Cards[0].Tables[0], file.Cards[0].Tables[1]
		if len(pieces.Rows) != len(records)-1 || len(pieces.Rows) < 40 {
			t.Fatalf("%s section %d: %d rows as JSON, %d as CSV", name, section+1, len(pieces.Rows), len(records)-1)
		}
		sum, shoe := 0.0, math.NaN()
		for _, r := range ends.Rows {
			if r.Name == "Shoe as tallied" {
				shoe = r.Values["value"].SI
			}
		}
		for k, r := range pieces.Rows {
			length, err := strconv.ParseFloat(records[k+1][at["length_si"]], 64)
			if err != nil || length != r.Values["length"].SI || records[k+1][at["piece"]] != r.Name || records[k+1][at["of"]] != r.Of || r.Of == "" {
				t.Fatalf("%s section %d row %d: CSV %q, JSON %+v, %v", name, section+1, k+1, records[k+1], r, err)
			}
			sum += length
			if top := r.Values["top at"].SI; !(math.Abs(shoe-sum-top) < 1e-6) {
				t.Errorf("%s section %d row %d: top at %g m, %g m above the shoe at %g m", name, section+1, k+1, top, sum, shoe)
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
	for _, want := range []string{"| pup | 3.85 |", "# Running list: Ottermast-2, section 3", "| stand 12 |", "wanted"} {
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
	for _, want := range []string{"Running list: Ottermast-2, section 3", "Running list: Ottermast-2, section 4", "Running list: Ottermast-2, section 5"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	o.Section, o.Paper = 0, sheet.RunningList
	var b strings.Builder
	if err := sheet.Write(&b, plan, evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "section 1: the string has no tally") || b.Len() > 0 {
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
	if n := strings.Count(text, "-- from here"); n != 3 || !strings.Contains(text, "-- from here 13 5/8 in 131.3 kg/m Q125") || !strings.Contains(text, "-- from here landing string") {
		t.Errorf("%d changes of pipe in the list", n)
	}
	o.Format = sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	grades := map[string]bool{}
	for _, r := range records[1:] {
		grades[r[3][strings.LastIndex(r[3], " ")+1:]] = true
	}
	if !grades["Q125"] || !grades["P110"] {
		t.Errorf("grades in the CSV: %v", grades)
	}
}
