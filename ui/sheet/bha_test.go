package sheet_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

func bha(t *testing.T, plan *model.Plan, o sheet.Options) string {
	t.Helper()
	o.Paper = sheet.BHASheet
	return write(t, plan, o)
}

func TestGoldenBHASheet(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section = 3
	golden(t, "ottermast-2_4_bha.txt", bha(t, plan, o))
}

func TestABHASheetFitsThePage(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for i := range plan.Sections {
			for _, set := range quantity.Sets() {
				o := options(plan)
				o.System, o.ASCII, o.Section = plan.System(set, false), i%2 == 0, i
				if fault := textFault(bha(t, plan, o), o.ASCII); fault != "" {
					t.Errorf("%s section %d, %s: %s", name, i+1, set, fault)
				}
			}
		}
	}
}

// TestTheStackUpAddsUp: lengths give the distance from the bit, weights in mud the figure of the page.
func TestTheStackUpAddsUp(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	o := options(plan)
	o.Section, o.Format = 4, sheet.JSON
	var file struct {
		Cards []struct {
			Tables []struct {
				Title string
				Rows  []struct {
					Name   string
					Values map[string]struct{ SI float64 }
				}
			}
		}
	}
	if err := json.Unmarshal([]byte(bha(t, plan, o)), &file); err != nil {
		t.Fatal(err)
	}
	tables := file.Cards[0].Tables
	rows := tables[len(tables)-1].Rows
	if len(rows) != len(plan.Sections[4].String) {
		t.Fatalf("%d rows, %d parts", len(rows), len(plan.Sections[4].String))
	}
	length, weight := 0.0, 0.0
	for k := len(rows) - 1; k >= 0; k-- {
		length += rows[k].Values["length"].SI
		weight += rows[k].Values["in mud"].SI
		if up := rows[k].Values["from bit"].SI; math.Abs(up-length) > 1e-6 {
			t.Errorf("%s: %g m from the bit, lengths give %g m", rows[k].Name, up, length)
		}
	}
	f, _ := evaluate(plan).Sheet(4).Find("string.weight.buoyed")
	if math.Abs(weight-f.Value) > 1e-6*f.Value {
		t.Errorf("the parts weigh %g N in mud, the string %g N", weight, f.Value)
	}
}

// TestHostileNamesOnABHASheet: names of rams and parts stay on the page and in their block.
func TestHostileNamesOnABHASheet(t *testing.T) {
	plan := demo(t, "ottermast-2")
	rapid.Check(t, func(t *rapid.T) {
		text := hostile()
		plan.Rams[1].Name, plan.Rams[2].Name = text.Draw(t, "ram"), "```\n# head"
		plan.Sections[2].String[1].Name = text.Draw(t, "part")
		o := options(plan)
		o.Paper, o.Section, o.ASCII = sheet.BHASheet, 2, rapid.Bool().Draw(t, "ascii")
		if fault := textFault(write(t, plan, o), o.ASCII); fault != "" {
			t.Fatal(fault)
		}
		o.Format = sheet.Markdown
		if got := write(t, plan, o); strings.Count(got, "```") != 2 || strings.ContainsAny(got, "\x1b\u202e") {
			t.Fatal("a name breaks out of its block")
		}
		o.Format = sheet.JSON
		if !json.Valid([]byte(write(t, plan, o))) {
			t.Fatal("not JSON")
		}
	})
}

// TestABHASheetSaysWhatIsAsked: the share used can be redone from the entries, connections are listed, and the parts come first.
func TestABHASheetSaysWhatIsAsked(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[3].String[4].Connection = "NC56 box"
	plan.Sections[3].StringLoads.Overpull = quantity.Value{}
	o := options(plan)
	o.Section = 3
	text := bha(t, plan, o)
	for _, want := range []string{"Weight on bit wanted     9.0 tf", "Greatest torque       30.0 kN-m", "Overpull planned      note not entered", "5 collar            NC56 box"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the sheet:\n%s", want, text)
		}
	}
	if first := strings.Index(text, "Stack-up, top down"); first < 0 || first > strings.Index(text, "Asked of the string") {
		t.Error("the parts do not come first")
	}
	result := evaluate(plan)
	available, _ := result.Sheet(3).Find("string.bha.collars")
	used, ok := result.Sheet(3).Find("string.bha.collars.used")
	if wanted := plan.Sections[3].StringLoads.BitWeight.SI; !ok || math.Abs(wanted/available.Value-used.Value) > 1e-9 {
		t.Errorf("%g of %g N is not %g", wanted, available.Value, used.Value)
	}
	o.Format = sheet.CSV
	if !strings.Contains(bha(t, plan, o), "NC56 box") {
		t.Error("no connection in the CSV form")
	}
}
