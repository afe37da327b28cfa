package sheet_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

// controlPapers are the papers of well control.
func controlPapers() []sheet.Paper {
	return []sheet.Paper{sheet.KillSheet, sheet.LimitsCard, sheet.ShoeTestSheet}
}

// q reads a quantity of a kind.
func q(t *testing.T, text string, kind quantity.Kind) quantity.Value {
	t.Helper()
	v, err := quantity.Parse(text, kind, quantity.NewSystem(quantity.Metric, nil).Unit(kind))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// readPlan is a plan with everything read in section 3: a shoe test whose shoe has moved since, a kick, slow rates, tests of the BOP.
func readPlan(t *testing.T) *model.Plan {
	t.Helper()
	plan := demo(t, "ottermast-2")
	s := &plan.Sections[2]
	s.ShoeTest.Date, s.ShoeTest.Mud, s.ShoeTest.Shoe = "3 Nov", q(t, "1.24 sg", quantity.Density), q(t, "940 m", quantity.Length)
	s.ShoeTest.Within, s.ShoeTest.ShutIn = q(t, "0.2 bar", quantity.Pressure), q(t, "17 bar", quantity.Pressure)
	s.ShoeTest.ShutInLast, s.ShoeTest.ShutInTime = q(t, "15.5 bar", quantity.Pressure), q(t, "10 min", quantity.Time)
	s.ShoeTest.Returned = q(t, "0.5 m3", quantity.Volume)
	for k, pressure := range []string{"3.1 bar", "6.2 bar", "9.4 bar", "12.5 bar", "15.6 bar", "18.7 bar", "20.4 bar", "21.1 bar", "21.4 bar"} {
		volume := strconv.FormatFloat(0.08*float64(k+1), 'f', 2, 64) + " m3"
		s.TestPoints = append(s.TestPoints, model.TestPoint{Volume: q(t, volume, quantity.Volume), Pressure: q(t, pressure, quantity.Pressure)})
	}
	s.Kill.DrillPipe, s.Kill.Annulus, s.Kill.Gain = q(t, "12 bar", quantity.Pressure), q(t, "19 bar", quantity.Pressure), q(t, "3 m3", quantity.Volume)
	s.SlowRates[2].Time, s.SlowRates[2].Depth = "3 Nov 04:10", q(t, "1800 m", quantity.Length)
	s.StackTest.Tested, s.StackTest.ShearTested, s.StackTest.Functioned = "2026-11-10", "2026-11-02", "2026-11-11"
	s.StackTest.Until = "2026-11-20"
	return plan
}

// words returns a paper with single blanks, so that text is found across lines.
func words(text string) string { return strings.Join(strings.Fields(text), " ") }

// TestPapersOfControlFitThePage, call nothing safe, and the card is a page of 66 lines at most.
func TestPapersOfControlFitThePage(t *testing.T) {
	const page = 66
	list := []*model.Plan{readPlan(t)}
	for _, name := range plans.Names() {
		list = append(list, demo(t, name))
	}
	for _, plan := range list {
		result := evaluate(plan)
		for _, paper := range controlPapers() {
			for n, set := range quantity.Sets() {
				for i := range plan.Sections {
					o := options(plan)
					o.Paper, o.System, o.ASCII, o.Section = paper, plan.System(set, false), n%2 == 0, i
					var b bytes.Buffer
					if err := sheet.Write(&b, plan, result, o); err != nil {
						if plan.Sections[i].Returns == model.ToRig || paper == sheet.LimitsCard {
							t.Errorf("%s section %d: %v", plan.Well.Name, i+1, err)
						}
						continue
					}
					what := plan.Well.Name + ", " + sheet.PaperNames()[paper] + ", section " + strconv.Itoa(i+1) + ", " + set.String()
					if fault := textFault(b.String(), o.ASCII); fault != "" {
						t.Errorf("%s: %s", what, fault)
					}
					if strings.Contains(strings.ToLower(strings.ReplaceAll(b.String(), "Safe drilling margin", "")), "safe") {
						t.Errorf("%s calls something safe", what)
					}
					if n := strings.Count(b.String(), "\n"); paper == sheet.LimitsCard && n > page {
						t.Errorf("%s has %d lines, a page %d", what, n, page)
					}
				}
			}
		}
	}
}

// TestPapersOfControlSayWhyTheyAreNot made: for holes without a riser, without a plan, or without what they hang on.
func TestPapersOfControlSayWhyTheyAreNot(t *testing.T) {
	for _, c := range []struct {
		name    string
		paper   sheet.Paper
		section int
		change  func(*model.Plan)
		want    string
	}{
		{"kill sheet without a riser", sheet.KillSheet, 1, nil, "a shallow flow is never shut in"},
		{"shoe test without a riser", sheet.ShoeTestSheet, 1, nil, "the shoe above is not tested"},
		{"kill sheet without pumps", sheet.KillSheet, 2, func(p *model.Plan) { p.Pumps = nil }, "there is no pump"},
		{"kill sheet without mud", sheet.KillSheet, 2, func(p *model.Plan) { p.Sections[2].Density = quantity.Value{} }, "(section[3].density)"},
		{"kill sheet with a pump that is not there", sheet.KillSheet, 2, func(p *model.Plan) { p.Sections[2].Kill.Pump = q(t, "7", quantity.Count) }, "no such kind of pump"},
		{"shoe test not planned", sheet.ShoeTestSheet, 2, func(p *model.Plan) { p.Sections[2].LeakOff = quantity.Value{} }, "no shoe test is planned or measured"},
		{"card without depths", sheet.LimitsCard, 2, func(p *model.Plan) { p.Sections[2].TD = quantity.Value{} }, "(section[3].td)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := demo(t, "ottermast-2")
			if c.change != nil {
				c.change(plan)
			}
			o := options(plan)
			o.Paper, o.Section = c.paper, c.section
			var b bytes.Buffer
			err := sheet.Write(&b, plan, evaluate(plan), o)
			if err == nil || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
				t.Errorf("error %v, want %q; %q", err, c.want, b.String())
			}
		})
	}
}

// cardValue returns a value of a card in JSON by table, row and column.
func cardValue(t *testing.T, text, title, row, column string) float64 {
	t.Helper()
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
	if err := json.Unmarshal([]byte(text), &file); err != nil {
		t.Fatal(err)
	}
	for _, table := range file.Cards[0].Tables {
		for _, r := range table.Rows {
			if v, ok := r.Values[column]; ok && table.Title == title && r.Name == row {
				return v.SI
			}
		}
	}
	return math.NaN()
}

// TestPapersOfControlHaveThePagesFigures: what is printed is what the page has under its key.
func TestPapersOfControlHaveThePagesFigures(t *testing.T) {
	plan := readPlan(t)
	result := evaluate(plan)
	const choke = "Choke, most (MAASP), with this mud and no gas above the shoe"
	for _, c := range []struct {
		paper              sheet.Paper
		title, row, column string
		key                string
	}{
		{sheet.KillSheet, "Kill mud and standpipe", "ICP, kill rate reached", "value", "control.kill.initial"},
		{sheet.KillSheet, "Kill mud and standpipe", "FCP, kill mud at the bit", "value", "control.kill.final"},
		{sheet.KillSheet, "Kill mud and standpipe", "Kill mud", "value", "control.kill.mud"},
		{sheet.KillSheet, "Kill mud and standpipe", "Weighting material", "value", "control.kill.barite"},
		{sheet.KillSheet, "Shut in", "Choke (SICP)", "value", "control.kill.choke.read"},
		{sheet.KillSheet, "Pump brought up: choke gauge let fall by the line's friction", "Step 4", "choke", "control.kill.start.4"},
		{sheet.KillSheet, "Standpipe while kill mud goes to the bit", "50 % down", "strokes", "control.kill.step.5.strokes"},
		{sheet.KillSheet, "Ways of the mud at the kill rate", "Bottoms-up, choke", "time", "control.kill.way.annulus.time"},
		{sheet.KillSheet, "Kick on its way out, by both methods", "Choke, most", "driller's", "control.out.choke"},
		{sheet.KillSheet, "Kick on its way out, by both methods", "Choke, most", "wait and weight", "control.out.choke.other"},
		{sheet.KillSheet, "Before the stack is opened", "Riser to kill mud", "strokes", "control.kill.way.riser.strokes"},
		{sheet.KillSheet, choke, "Pump off", "value", "control.maasp"},
		{sheet.LimitsCard, choke, "At the kill rate", "value", "control.maasp.circulating"},
		{sheet.LimitsCard, choke, "Casing str. 2", "at TVD", "control.maasp.casing.2.at"},
		{sheet.LimitsCard, "Shoe, mud and kick, bit at TD", "Least wanted", "reached, bit at", "control.tolerance.ends"},
		{sheet.LimitsCard, "Kill, riser lost, BOP test", "Riser lost, loses", "over pore", "mud.riser_margin"},
		{sheet.LimitsCard, "Kill, riser lost, BOP test", "Rams, high", "at the pump", "control.stack.rams.pump"},
		{sheet.LimitsCard, "Kill, riser lost, BOP test", "BOP test due", "value", "control.due.tested"},
		{sheet.LimitsCard, "Circulating and tripping as planned", "ECD at TD", "value", "hydraulics.ecd.td"},
		{sheet.ShoeTestSheet, "Planned", "Gauge at the plan", "value", "control.test.gauge"},
		{sheet.ShoeTestSheet, "Picked and read", "Shut in, last", "EMW", "control.test.shut_in_last"},
		{sheet.ShoeTestSheet, "What the shoe is taken to stand", "Counts", "value", "control.test"},
		{sheet.ShoeTestSheet, "What follows, with this section's mud", "Kick margin at TD", "value", "control.kick_margin"},
	} {
		o := options(plan)
		o.Paper, o.Section, o.Format = c.paper, 2, sheet.JSON
		f, ok := result.Sheet(2).Find(c.key)
		if got := cardValue(t, write(t, plan, o), c.title, c.row, c.column); !ok || !f.OK || got != f.Value {
			t.Errorf("%s, %s, %s: %g, the page has %g under %s", c.title, c.row, c.column, got, f.Value, c.key)
		}
	}
}

// TestNoValueOfAPaperOfControlIsLostAsJSON: columns of different kinds may share a label, but not in one line.
func TestNoValueOfAPaperOfControlIsLostAsJSON(t *testing.T) {
	plan := readPlan(t)
	for _, c := range []struct {
		paper   sheet.Paper
		section int
	}{{sheet.KillSheet, 2}, {sheet.LimitsCard, 2}, {sheet.ShoeTestSheet, 2}, {sheet.LimitsCard, 1}} {
		o := options(plan)
		o.Paper, o.Section, o.Format = c.paper, c.section, sheet.CSV
		values := len(readCSV(t, write(t, plan, o)))
		o.Format = sheet.JSON
		if n := strings.Count(write(t, plan, o), `"si": `); n != values || n == 0 {
			t.Errorf("%s of section %d: %d values as JSON, %d as CSV", sheet.PaperNames()[c.paper], c.section+1, n, values)
		}
	}
}

// TestPapersOfControlNameTheShoeTest: its source and date, and that it may be stale.
func TestPapersOfControlNameTheShoeTest(t *testing.T) {
	plan := readPlan(t)
	for _, paper := range controlPapers() {
		o := options(plan)
		o.Paper, o.Section = paper, 2
		text := words(write(t, plan, o))
		for _, want := range []string{"measured, see findings, 3 Nov", "run with the shoe at another depth"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not on it", sheet.PaperNames()[paper], want)
			}
		}
		if strings.Contains(text, "planned, until the test is run") {
			t.Errorf("%s: a test that was run is said not to be", sheet.PaperNames()[paper])
		}
	}
}

// TestAKillSheetSaysWhatWasRead, and from where friction comes.
func TestAKillSheetSaysWhatWasRead(t *testing.T) {
	o := options(demo(t, "ottermast-2"))
	o.Paper, o.Section = sheet.KillSheet, 2
	planned, read := words(write(t, demo(t, "ottermast-2"), o)), words(write(t, readPlan(t), o))
	for text, wants := range map[string][]string{
		planned: {"Drill pipe (SIDPP) 0.0 bar now ________ note planned", "recorded, row 3", "choke line, by slow rates"},
		read: {"Drill pipe (SIDPP) 12.0 bar now ________ note read", "Choke (SICP) 19.0 bar now ________ note read", "Pit gain 3.00 m3 now ________ note read",
			"3 rate 30 spm pressure 18.0 bar mud 1.250 sg bit at 1800.0 m note riser, 3 Nov 04:10"},
	} {
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not on the sheet:\n%s", want, text)
			}
		}
	}
	plan := readPlan(t)
	plan.Sections[2].SlowRates = nil
	if text := words(write(t, plan, o)); !strings.Contains(text, "worked out, not recorded") || !strings.Contains(text, "Slow rates: none is recorded") {
		t.Error("friction that nobody recorded is not said to be worked out")
	}
	plan.Rig.ChokeID = quantity.Value{}
	if text := words(write(t, plan, o)); strings.Count(text, "blank: ") < 3 || !strings.Contains(text, "At rest read ________ note blank:") || strings.Contains(text, "Step 1") {
		t.Errorf("without a choke line the sheet does not say what is blank:\n%s", text)
	}
}

// TestRoomForTheHand: in every line that is read while the kick is killed, and in the readings of a test that has not been run. None of
// it is among the numbers for a program.
func TestRoomForTheHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section = 2
	for paper, want := range map[sheet.Paper]int{sheet.KillSheet: 3 + 2*7 + 3 + 5 + 11, sheet.ShoeTestSheet: 7} {
		o.Paper = paper
		for _, o.Format = range []sheet.Format{sheet.Text, sheet.Markdown} {
			text := strings.ReplaceAll(strings.ReplaceAll(write(t, plan, o), `\`, ""), "______________________", "")
			if n := strings.Count(text, "________"); n != want+1 { // and the time at the foot
				t.Errorf("%s as %v: %d places to write in, want %d", sheet.PaperNames()[paper], o.Format, n, want+1)
			}
			if n := strings.Count(text, "............"); paper == sheet.ShoeTestSheet && n != 3*20 {
				t.Errorf("%v: %d places for readings, want three for each of 20", o.Format, n)
			}
		}
		for _, o.Format = range []sheet.Format{sheet.CSV, sheet.JSON} {
			if text := write(t, plan, o); strings.Contains(text, "__") || strings.Contains(text, "...") || strings.Contains(text, "Readings, ") || strings.Contains(text, "Well shut in") {
				t.Errorf("%s as %v holds what is filled in by hand", sheet.PaperNames()[paper], o.Format)
			}
		}
	}
	o.Paper, o.Format = sheet.ShoeTestSheet, sheet.Text
	text := words(write(t, readPlan(t), o))
	if strings.Contains(text, "............") || !strings.Contains(text, "6 pumped 0.48 m3 gauge 18.7 bar note last on the straight line 7 pumped") {
		t.Errorf("the readings are not on the sheet:\n%s", text)
	}
}

// TestALimitsCardOfAShallowFlow has what the flow takes; one without a sand says that it knows of none.
func TestALimitsCardOfAShallowFlow(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Section = sheet.LimitsCard, 1
	text := words(write(t, plan, o))
	for _, want := range []string{"pump at once, never shut in", "Hole over it -1.1 bar note it flows", "Mud that holds it 1.065 sg", "Kill mud 1.400 sg aboard 160.0 m3", "Kill mud lasts 0.46 h"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the card:\n%s", want, text)
		}
	}
	if strings.Contains(text, "MAASP") || strings.Contains(text, "ICP") {
		t.Error("a card without a BOP has limits of one")
	}
	plan.Sections[1].Shallow.Sand = quantity.Value{}
	if text := words(write(t, plan, o)); !strings.Contains(text, "Shallow sand: none is entered") || !strings.Contains(text, "never shut in") {
		t.Errorf("a card without a sand does not say so:\n%s", text)
	}
}

// TestALimitsCardSaysWhenTestsFallDue, with the days left and without.
func TestALimitsCardSaysWhenTestsFallDue(t *testing.T) {
	plan := readPlan(t)
	o := options(plan)
	o.Paper, o.Section = sheet.LimitsCard, 2
	text := words(write(t, plan, o))
	for _, want := range []string{"BOP test due 4 note d left, due 2026-11-24", "Function test due -2 note d left, due 2026-11-18, overdue"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the card:\n%s", want, text)
		}
	}
	plan.Sections[2].StackTest.Until = ""
	if text := words(write(t, plan, o)); !strings.Contains(text, "BOP test due note falls due 2026-11-24 Shear") {
		t.Errorf("without a day to look at, the day that the test falls due is not on the card:\n%s", text)
	}
}

// TestCautionsOfControl are said beside the figures that they are about, and nowhere else.
func TestCautionsOfControl(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, c := range []struct {
		section   int
		paper     sheet.Paper
		says, not []string
	}{
		{2, sheet.Sheets, []string{"MAASP: for this mud", "Kick tolerance: one bubble", "Kill sheet: pre-recorded"}, []string{"Shallow flow: never"}},
		{1, sheet.Sheets, []string{"Shallow flow: never shut in"}, []string{"MAASP: for this mud", "Kick tolerance: one bubble", "Kill sheet: pre-recorded"}},
		{0, sheet.Sheets, nil, []string{"Shallow flow: never", "MAASP: for this mud"}},
		{2, sheet.KillSheet, []string{"MAASP: for this mud", "Kill sheet: pre-recorded"}, []string{"Shallow flow: never"}},
		{2, sheet.ShoeTestSheet, []string{"MAASP: for this mud", "Kick tolerance: one bubble"}, []string{"Kill sheet: pre-recorded"}},
		{2, sheet.TripSheet, nil, []string{"MAASP: for this mud", "Kill sheet: pre-recorded"}},
	} {
		o := options(plan)
		o.Section, o.Paper = c.section, c.paper
		text := words(write(t, plan, o))
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s of section %d does not say %q", sheet.PaperNames()[c.paper], c.section+1, want)
			}
		}
		for _, other := range c.not {
			if strings.Contains(text, other) {
				t.Errorf("%s of section %d says %q", sheet.PaperNames()[c.paper], c.section+1, other)
			}
		}
	}
}

// TestHostileTextOnPapersOfControl: dates, times, ways and fluids, uncleaned, stay on the page and are no spreadsheet's formula.
func TestHostileTextOnPapersOfControl(t *testing.T) {
	plan := readPlan(t)
	rapid.Check(t, func(t *rapid.T) {
		text, s := hostile(), &plan.Sections[2]
		plan.Well.Name, s.Name, s.Fluid = text.Draw(t, "well"), text.Draw(t, "section"), text.Draw(t, "fluid")
		s.ShoeTest.Date, s.ShoeTest.Kind = text.Draw(t, "date"), text.Draw(t, "kind")
		s.Kill.Method, s.Kill.Line = text.Draw(t, "method"), text.Draw(t, "line")
		s.SlowRates[0].Time, s.SlowRates[1].Path = text.Draw(t, "time"), text.Draw(t, "path")
		s.StackTest.Tested = text.Draw(t, "tested")
		result := evaluate(plan)
		o := options(plan)
		o.Paper, o.Section, o.ASCII = rapid.SampledFrom(controlPapers()).Draw(t, "paper"), 2, rapid.Bool().Draw(t, "ascii")
		in := func(format sheet.Format) string {
			var b bytes.Buffer
			if o.Format = format; sheet.Write(&b, plan, result, o) != nil {
				t.Fatal("no paper")
			}
			return b.String()
		}
		if fault := textFault(in(sheet.Text), o.ASCII); fault != "" {
			t.Fatal(fault)
		}
		markdownHolds(t, in(sheet.Markdown))
		for _, row := range readCSV(t, in(sheet.CSV)) {
			for _, column := range []string{"table", "row", "column", "note"} {
				if formula.MatchString(row[column]) {
					t.Fatalf("a spreadsheet would compute %q", row[column])
				}
			}
		}
		if got := in(sheet.JSON); !json.Valid([]byte(got)) || strings.ContainsAny(got, "\x1b\u202e") {
			t.Fatal("not JSON, or not clean")
		}
	})
}
