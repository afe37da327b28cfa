package sheet_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
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
	f, _ := calc.Evaluate(plan).Sheet(4).Find("string.weight.buoyed")
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
