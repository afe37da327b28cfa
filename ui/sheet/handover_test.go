package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

// onWatch says how a section, from 0, stands a share of its way down, with a lot to tell.
func onWatch(t *testing.T, plan *model.Plan, section int, down float64) {
	t.Helper()
	planned := calc.Evaluate(plan).Sheet(section)
	start, _ := planned.Find("hole.start")
	td, _ := planned.Find("hole.td")
	plan.Status = model.Status{
		Section: q(t, fmt.Sprint(section+1), quantity.Count), Step: "drill", Returns: model.ReturnsPartial,
		Hole: quantity.Of(start.Value+down*(td.Value-start.Value), quantity.Metre),
		Flow: q(t, "3400 L/min", quantity.Flow), Standpipe: q(t, "268 bar", quantity.Pressure), Losses: q(t, "0.8 m3/h", quantity.LossRate),
		Active: q(t, "96 m3", quantity.Volume), PitZero: q(t, "97.5 m3", quantity.Volume), Gas: q(t, "1.4 %", quantity.Ratio),
		Alarms: "gas head 3 in the shaker room, sensor on order, crew informed", Equipment: "mud pump 3, liner change till noon",
		Permits: "hot work 118 on the cellar deck; isolation 44 on the booster line", Deviations: "MOC 7: survey every second stand",
		Weather: "SW 25 kn, 35 kn from midnight, sea 3 m", Circle: "offset 1.5 %, yellow at 3 %, red at 5 %",
		Abnormal: []model.Abnormal{{Text: "Shakers show splintered shale; hole packed off once at a connection."}, {Text: "Pit level gauge 2 sticks: dipped every half hour."}},
	}
	if plan.Sections[section].Returns == model.ToSeabed {
		plan.Status.Step = "drill_seabed"
	}
	plan.Handovers = []model.Handover{{From: "A. Merrow, day", To: "B. Tansy, night", Time: "2026-11-29 06:05", ToBit: q(t, "2310 stk", quantity.Strokes)}}
}

// firstPage returns what stands before the second page of a handover.
func firstPage(t *testing.T, text string) string {
	t.Helper()
	first, _, ok := strings.Cut(text, "\f")
	if !ok {
		t.Fatalf("there is one page only:\n%s", text)
	}
	return first + "\n"
}

// TestHandoverIsOnePage of 60 lines for every section of both demos, in every unit set, with the names and where they sign, and calls
// nothing safe.
func TestHandoverIsOnePage(t *testing.T) {
	const page = 60
	for _, name := range plans.Names() {
		for i := range demo(t, name).Sections {
			plan := demo(t, name)
			onWatch(t, plan, i, 0.7)
			result := calc.Evaluate(plan)
			for n, set := range quantity.Sets() {
				o := options(plan)
				o.Paper, o.Section, o.System, o.ASCII = sheet.HandoverPage, i, plan.System(set, false), n%2 == 0
				if n == 1 {
					o.Changes = []string{"mud 1.40 to 1.42 sg", "TD 3250 to 3260 m"}
				}
				var b bytes.Buffer
				if err := sheet.Write(&b, plan, result, o); err != nil {
					t.Fatalf("%s section %d: %v", name, i+1, err)
				}
				if fault := textFault(b.String(), o.ASCII); fault != "" {
					t.Errorf("%s section %d: %s", name, i+1, fault)
				}
				first := firstPage(t, b.String())
				if lines := strings.Count(first, "\n"); lines > page {
					t.Errorf("%s section %d, %v: %d lines\n%s", name, i+1, set, lines, first)
				}
				for _, want := range []string{"A. Merrow, day: ____", "B. Tansy, night: ____", "2026-11-29 06:05", "Next 24 h:", "Limits:", "Planning aid."} {
					if !strings.Contains(first, want) {
						t.Errorf("%s section %d, %v lacks %q:\n%s", name, i+1, set, want, first)
					}
				}
				if strings.Contains(strings.ToLower(strings.ReplaceAll(words(b.String()), "Safe drilling margin", "")), "safe") {
					t.Errorf("%s section %d calls something safe", name, i+1)
				}
			}
		}
	}
}

func TestHandoverGolden(t *testing.T) {
	plan := demo(t, "ottermast-2")
	onWatch(t, plan, 3, 0.7)
	o := options(plan)
	o.Paper, o.Section = sheet.HandoverPage, 3
	golden(t, "handover_ottermast-2_4.txt", write(t, plan, o))
	plan = demo(t, "ottermast-2")
	onWatch(t, plan, 1, 0.7)
	o.Section = 1
	golden(t, "handover_ottermast-2_2.txt", write(t, plan, o))
}

// TestHandoverHoldsTheSameNumbersInEveryForm, and none of strokes or kill figures before the relief has entered his.
func TestHandoverHoldsTheSameNumbersInEveryForm(t *testing.T) {
	plan := demo(t, "ottermast-2")
	onWatch(t, plan, 3, 0.7)
	o := options(plan)
	o.Paper, o.Format = sheet.HandoverPage, sheet.JSON
	var got struct {
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
	if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil || len(got.Cards) != 1 {
		t.Fatalf("%d cards, %v", len(got.Cards), err)
	}
	values := 0
	for _, table := range got.Cards[0].Tables {
		for _, r := range table.Rows {
			values += len(r.Values)
			if hidden := table.Title == "Volumes, bit as it is" || table.Title == "Recomputed by the relief" && r.Name != "Surface to bit"; hidden && len(r.Values) > 0 {
				t.Errorf("%s, %s is shown before the relief's own", table.Title, r.Name)
			}
		}
	}
	o.Format = sheet.CSV
	records, err := csv.NewReader(strings.NewReader(write(t, plan, o))).ReadAll()
	if err != nil || len(records)-1 != values || values < 40 {
		t.Errorf("%d values as CSV, %v; %d as JSON", len(records)-1, err, values)
	}
	o.Format = sheet.Markdown
	if text := write(t, plan, o); !strings.Contains(text, "Read first, at the present depth") || !strings.Contains(text, "Limits at this depth") {
		t.Errorf("Markdown:\n%s", text)
	}
}

func TestWhereThereIsNoHandover(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Section = sheet.HandoverPage, 2
	for _, want := range []string{"no section is in work", "section 4 is the one in work"} {
		var b bytes.Buffer
		if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
		onWatch(t, plan, 3, 0.5)
	}
}

// TestHostileWordsInAHandover: what people write, uncleaned, neither leaves the page nor becomes a spreadsheet's formula.
func TestHostileWordsInAHandover(t *testing.T) {
	plan := demo(t, "ottermast-2")
	onWatch(t, plan, 3, 0.7)
	rapid.Check(t, func(t *rapid.T) {
		text := hostile()
		plan.Status.Weather, plan.Status.Abnormal[0].Text, plan.Handovers[0].From = text.Draw(t, "weather"), text.Draw(t, "abnormal"), text.Draw(t, "from")
		o := options(plan)
		o.Paper, o.Section, o.ASCII = sheet.HandoverPage, 3, rapid.Bool().Draw(t, "ascii")
		if fault := textFault(write(t, plan, o), o.ASCII); fault != "" {
			t.Fatal(fault)
		}
		o.Format = sheet.JSON
		if !json.Valid([]byte(write(t, plan, o))) {
			t.Fatal("not JSON")
		}
	})
}
