package sheet_test

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

func TestGoldenLookAhead(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section, o.Paper = 0, sheet.LookAhead
	golden(t, "look-ahead_ottermast-2_1.txt", write(t, plan, o))
}

func TestALookAheadFitsThePage(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for _, ascii := range []bool{false, true} {
			o := options(plan)
			o.Paper, o.System, o.ASCII = sheet.LookAhead, plan.System(quantity.Field, false), ascii
			if fault := textFault(write(t, plan, o), ascii); fault != "" {
				t.Errorf("%s, ascii %t: %s", name, ascii, fault)
			}
		}
	}
}

// TestALookAheadForAMachine: the CSV holds when each operation of the section begins, as the schedule has it.
func TestALookAheadForAMachine(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Section, o.Format = sheet.LookAhead, 2, sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var begins []float64
	for _, r := range records[1:] {
		if r[3] == "begins" {
			value, err := strconv.ParseFloat(r[6], 64)
			if err != nil {
				t.Fatal(err)
			}
			begins = append(begins, value)
		}
	}
	n := 0
	schedule := calc.ScheduleOf(plan)
	for _, row := range schedule.Rows {
		if row.Section != 2 {
			continue
		}
		if n >= len(begins) || begins[n] != row.From {
			t.Fatalf("row %d does not begin at %g", n+1, row.From)
		}
		n++
	}
	if n != len(begins) {
		t.Errorf("%d rows of %d", len(begins), n)
	}
}

// TestNoLookAheadOfWhatIsDone, and none where the depths are missing: both say so.
func TestNoLookAheadOfWhatIsDone(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[1].Done = []model.DoneRow{{Step: "pull_tool", Ended: "2027-04-09 20:00"}}
	o := options(plan)
	o.Paper, o.Section = sheet.LookAhead, 0
	var b strings.Builder
	if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "nothing of it is still to be done") {
		t.Errorf("of a section that is done: %v", err)
	}
	plan = demo(t, "ottermast-2")
	plan.Sections[0].TD = quantity.Value{}
	if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "section[1].td") {
		t.Errorf("without a depth: %v", err)
	}
}
