package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

func TestGoldenTripSheet(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section, o.Paper = 3, sheet.TripSheet
	golden(t, "trip-sheet_ottermast-2_4.txt", write(t, plan, o))
}

func TestATripSheetFitsThePage(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for _, set := range quantity.Sets() {
			for _, ascii := range []bool{false, true} {
				o := options(plan)
				o.Paper, o.System, o.ASCII = sheet.TripSheet, plan.System(set, false), ascii
				if fault := textFault(write(t, plan, o), ascii); fault != "" {
					t.Errorf("%s, %s, ascii %t: %s", name, set, ascii, fault)
				}
			}
		}
	}
}

// TestATripSheetForAMachine: the fills of the CSV add up to the whole trip of the page, JSON has as many rows, and what is
// written by hand is in neither.
func TestATripSheetForAMachine(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	o := options(plan)
	o.Paper, o.Section, o.Format = sheet.TripSheet, 4, sheet.CSV
	text := write(t, plan, o)
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sum, fills, figures := 0.0, 0, map[string]float64{}
	for _, r := range records[1:] {
		value, err := strconv.ParseFloat(r[6], 64)
		if err != nil {
			t.Fatal(err)
		}
		figures[r[1]+": "+r[2]+" "+r[3]] = value
		if r[1] == "Pulling out, fill by fill" && r[3] == "fill" {
			if fills++; r[8] != strconv.Itoa(fills) || r[9] == "" {
				t.Errorf("fill %d is row %q, of %q", fills, r[8], r[9])
			}
			sum += value
		}
	}
	f, ok := evaluate(plan).Sheet(4).Find("trip.whole.open")
	if !ok || math.Abs(sum-f.Value) > 1e-9*f.Value {
		t.Errorf("the fills come to %g m3, the whole trip to %g m3", sum, f.Value)
	}
	if got := figures["Trip: Whole trip, dry "]; got != f.Value && figures["Trip: Whole trip, wet "] != f.Value {
		t.Errorf("the whole trip of %g m3 is not among the figures", f.Value)
	}
	o.Format = sheet.JSON
	jsonText := write(t, plan, o)
	var file struct {
		Cards []struct {
			Tables []struct {
				Title string
				Rows  []struct{ Name string }
			}
		}
	}
	if err := json.Unmarshal([]byte(jsonText), &file); err != nil {
		t.Fatal(err)
	}
	tables := file.Cards[0].Tables
	if last := tables[len(tables)-1]; len(last.Rows) != fills || len(last.Rows) < 25 {
		t.Errorf("%d rows as JSON, %d as CSV", len(last.Rows), fills)
	}
	if strings.Contains(text+jsonText, "....") {
		t.Error("what is filled in by hand is among the numbers")
	}
}

// TestATripSheetLeavesRoomForTheHand in every line, as text and as Markdown.
func TestATripSheetLeavesRoomForTheHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	list, err := calc.TripSheetOf(plan, 3)
	if err != nil {
		t.Fatal(err)
	}
	o := options(plan)
	o.Paper, o.Section = sheet.TripSheet, 3
	for _, o.Format = range []sheet.Format{sheet.Text, sheet.Markdown} {
		if n := strings.Count(write(t, plan, o), "......"); n != 4*len(list.Rows) {
			t.Errorf("%v: %d places to write in, want four for each of %d fills", o.Format, n, len(list.Rows))
		}
	}
}

func TestNoTripSheetOfARiserlessHole(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Section = sheet.TripSheet, 0
	var b bytes.Buffer
	if err := sheet.Write(&b, plan, evaluate(plan), o); err == nil || !strings.Contains(err.Error(), "open to the sea") || b.Len() > 0 {
		t.Errorf("%v, %q", err, b.String())
	}
}

// TestAWetTripSaysSo: without a slug what is in the bore leaves with the pipe.
func TestAWetTripSaysSo(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[3].Trip.SlugDensity = quantity.Value{}
	o := options(plan)
	o.Paper, o.Section = sheet.TripSheet, 3
	if text := write(t, plan, o); !strings.Contains(text, "taken to come wet") || strings.Contains(text, "Trip: slug") {
		t.Error("a trip without a slug is not said to come wet")
	}
}
