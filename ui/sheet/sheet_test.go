package sheet_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/canvas"
	"borewalk/ui/sheet"
)

var update = flag.Bool("update", false, "write the golden files anew")

func demo(t *testing.T, name string) *model.Plan {
	t.Helper()
	text, ok := plans.Demo(name)
	if !ok {
		t.Fatalf("there is no demo plan %s", name)
	}
	f, err := planfile.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	return f.Plan
}

// options returns the plan's own units and the whole plan.
func options(plan *model.Plan) sheet.Options {
	set, _ := quantity.ParseSet(plan.Well.UnitSet)
	return sheet.Options{System: plan.System(set, true), Section: -1, Source: plan.Well.Name, Version: "test", Hash: "6b0e9f21d4c3",
		Printed: time.Date(2031, time.May, 4, 16, 20, 0, 0, time.FixedZone("", 2*60*60))}
}

// latest is the plan that was worked out last, as it stood then, with its result.
var latest struct {
	plan   *model.Plan
	result *calc.Result
}

// evaluate works a plan out, unless it is as it was the last time: most tests print one plan over and over, and working it out
// costs far more than printing it.
func evaluate(plan *model.Plan) *calc.Result {
	if latest.plan == nil || !reflect.DeepEqual(plan, latest.plan) {
		latest.plan, latest.result = plan.Clone(), calc.Evaluate(plan)
	}
	return latest.result
}

func write(t interface {
	Helper()
	Fatal(...any)
}, plan *model.Plan, o sheet.Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.Write(&b, plan, evaluate(plan), o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func check(t interface {
	Helper()
	Fatal(...any)
}, plan *model.Plan, o sheet.Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.Check(&b, plan, evaluate(plan), o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		demo    string
		section int
		paper   sheet.Paper
		file    string
	}{
		{"ottermast-2", 2, sheet.Sheets, "ottermast-2_3.txt"}, {"saltlantern-1", 1, sheet.Sheets, "saltlantern-1_2.txt"},
		{"ottermast-2", 2, sheet.CementCard, "cement-card_ottermast-2_3.txt"},
		{"saltlantern-1", 4, sheet.StrengthTable, "strength-table_saltlantern-1_5.txt"},
		{"ottermast-2", 3, sheet.MudSheet, "mud-sheet_ottermast-2_4.txt"}, {"saltlantern-1", 1, sheet.MudSheet, "mud-sheet_saltlantern-1_2.txt"},
		{"ottermast-2", 3, sheet.HydraulicsSheet, "hydraulics-sheet_ottermast-2_4.txt"},
		{"ottermast-2", 2, sheet.KillSheet, "kill-sheet_ottermast-2_3.txt"}, {"saltlantern-1", 4, sheet.KillSheet, "kill-sheet_saltlantern-1_5.txt"},
		{"ottermast-2", 1, sheet.LimitsCard, "limits-card_ottermast-2_2.txt"}, {"ottermast-2", 2, sheet.LimitsCard, "limits-card_ottermast-2_3.txt"},
		{"ottermast-2", 2, sheet.ShoeTestSheet, "shoe-test-sheet_ottermast-2_3.txt"},
		{"ottermast-2", 2, sheet.OddsSheet, "odds-sheet_ottermast-2_3.txt"},
		{"ottermast-2", 2, sheet.TrialsSheet, "trials_ottermast-2_3.txt"},
	} {
		name := c.file
		t.Run(name, func(t *testing.T) {
			plan := demo(t, c.demo)
			o := options(plan)
			o.Section, o.Paper = c.section, c.paper
			got := write(t, plan, o)
			golden(t, name, got)
		})
	}
}

// golden compares a paper with the one in testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the paper differs from %s; look at the difference, then run with -update", path)
		differ(t, got, string(want))
	}
}

// differ shows the first line that differs.
func differ(t *testing.T, got, want string) {
	t.Helper()
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(g), len(w)) {
		if g[i] != w[i] {
			t.Errorf("line %d\n got %q\nwant %q", i+1, g[i], w[i])
			return
		}
	}
	t.Errorf("%d lines, want %d", len(g), len(w))
}

// TestWidth holds every line to the page, in every unit set, with and without ASCII.
func TestWidth(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for _, set := range quantity.Sets() {
			for _, ascii := range []bool{false, true} {
				o := options(plan)
				o.System, o.ASCII = plan.System(set, false), ascii
				card, strength, mud, hydraulics := o, o, o, o
				card.Paper, strength.Paper, mud.Paper, hydraulics.Paper = sheet.CementCard, sheet.StrengthTable, sheet.MudSheet, sheet.HydraulicsSheet
				for what, text := range map[string]string{"sheet": write(t, plan, o), "check": check(t, plan, o), "card": write(t, plan, card), "table": write(t, plan, strength),
					"mud sheet": write(t, plan, mud), "hydraulics": write(t, plan, hydraulics)} {
					if fault := textFault(text, ascii); fault != "" {
						t.Errorf("%s of %s, %s, ascii %t: %s", what, name, set, ascii, fault)
					}
				}
			}
		}
	}
}

// textFault says what is wrong with a text sheet: a line that is too wide or ends in blanks, a control character but a form feed
// that begins a line, or a character beyond ASCII where there should be none.
func textFault(text string, ascii bool) string {
	for i, line := range strings.Split(text, "\n") {
		if w := canvas.Width(line); w > 80 {
			return fmt.Sprintf("line %d is %d columns wide: %q", i+1, w, line)
		}
		if strings.TrimRight(line, " ") != line {
			return fmt.Sprintf("line %d ends in blanks: %q", i+1, line)
		}
		for _, ch := range strings.TrimPrefix(line, "\f") {
			if ch < ' ' || ch >= 0x7f && ch < 0xa0 || ascii && ch >= 0x7f {
				return fmt.Sprintf("line %d holds %U: %q", i+1, ch, line)
			}
		}
	}
	return ""
}

func TestASCIISpellsUnits(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.ASCII = true
	if text := write(t, plan, o); !strings.Contains(text, "11.0 degC") {
		t.Error("the sea surface temperature is not spelt out as 11.0 degC")
	}
}

// TestEverySheetStands holds every sheet to say what it is and what it is not, and no sheet to call anything safe. The
// only use of that word is the name of a margin in the law.
func TestEverySheetStands(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for section := -1; section < len(plan.Sections); section++ {
			o := options(plan)
			o.Section = section
			pages := 1
			if section < 0 {
				pages = 1 + len(plan.Sections)
			}
			for _, format := range []sheet.Format{sheet.Text, sheet.Markdown} {
				o.Format = format
				text := strings.Join(strings.Fields(runningHead.ReplaceAllString(write(t, plan, o), "")), " ")
				for _, words := range []string{"Planning aid.", "6b0e9f21"} {
					if n := strings.Count(text, words); n != pages {
						t.Errorf("%s section %d as %s: %q stands %d times, want %d", name, section+1, format, words, n, pages)
					}
				}
				if rest := strings.ReplaceAll(text, "Safe drilling margin", ""); strings.Contains(strings.ToLower(rest), "safe") {
					t.Errorf("%s section %d as %s calls something safe", name, section+1, format)
				}
			}
		}
	}
}

// TestBlanks takes away an entry that all depths hang on.
func TestBlanks(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Well.AirGap = quantity.Value{}
	o := options(plan)
	text := strings.Join(strings.Fields(write(t, plan, o)), " ")
	for _, words := range []string{"Blank: Mudline from RKB; Wellhead datum;", "To mend: Air gap, rotary above MSL (well.air_gap)", "stop: "} {
		if !strings.Contains(text, words) {
			t.Errorf("the sheet does not say %q", words)
		}
	}
	if noNumber.MatchString(text) {
		t.Error("the sheet shows a number that is none")
	}
	o.Section = 1
	if text := write(t, plan, o); !strings.Contains(text, "Of the well itself, on the well sheet: stop") {
		t.Error("the sheet of a section does not point at the well's findings")
	}
}

func TestEntries(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.System = quantity.NewSystem(quantity.Field, nil)
	text := strings.Join(strings.Fields(write(t, plan, o)), " ")
	for _, words := range []string{
		"Air gap, rotary above MSL: 85.3 ft (entered 26 m)", // what was entered stands beside another unit
		"Opener behind the bit: 7.9 ft (entered 2.4 m)",
		"Kill line length: -",
	} {
		if !strings.Contains(text, words) {
			t.Errorf("the sheet does not say %q", words)
		}
	}
	if strings.Contains(text, "Shoe depth, along hole:") {
		t.Error("the sheet shows the shoe as an entry, though the depth is given by the TD")
	}
	o = options(plan)
	if text := write(t, plan, o); !strings.Contains(text, "1.250 sg (10.43 ppg)") {
		t.Error("the mud density does not stand in two units")
	}
}

// TestCheck holds the findings to their order and to what each says.
func TestCheck(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	text := check(t, plan, o)
	rank := map[string]int{"stop": 0, "caution": 1, "ok": 2}
	last, n := 0, 0
	for line := range strings.Lines(text) {
		mark, _, found := strings.Cut(line, ", ")
		at, known := rank[mark]
		if !found || !known {
			continue
		}
		if n++; at < last {
			t.Errorf("a finding stands below a lesser one: %q", line)
		}
		last = at
	}
	if want := len(evaluate(plan).Findings); n != want || want == 0 {
		t.Errorf("%d findings are printed, want %d", n, want)
	}
	for _, words := range []string{
		"limit at least 0.020 sg (the plan's own limit), margin +0.060 sg",
		"Rule: common practice, from memory",
		"Go to: Mud density (section[3].density)",
	} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), words) {
			t.Errorf("the check does not say %q", words)
		}
	}
	o.Section = 4
	if text := check(t, plan, o); strings.Contains(text, "section 4:") || !strings.Contains(text, "section 5:") {
		t.Error("the check of section 5 is not of section 5 alone")
	}
}

// TestTwoLimitsOnOneThing holds the list of limits that are met to say which, where a thing has a least and a most.
func TestTwoLimitsOnOneThing(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	o := options(plan)
	o.Section = 1
	text := strings.Join(strings.Fields(write(t, plan, o)), " ")
	if !strings.Contains(text, "caution: Rathole, full size Measured 40.0 ft, limit at most 30.0 ft") || !strings.Contains(text, "; Rathole, full size (at least 5.0 ft);") {
		t.Error("the sheet does not tell the two limits on the rathole apart")
	}
}

func TestNothingToPrint(t *testing.T) {
	plan := demo(t, "ottermast-2")
	result := evaluate(plan)
	var b bytes.Buffer
	for _, section := range []int{-2, 5} {
		if err := sheet.Write(&b, plan, result, sheet.Options{Section: section}); err == nil {
			t.Errorf("section %d: no error", section+1)
		}
	}
	if err := sheet.Check(&b, plan, &calc.Result{}, sheet.Options{Section: -1}); err == nil {
		t.Error("the result of another plan: no error")
	}
	if err := sheet.Write(&b, nil, nil, sheet.Options{}); err == nil {
		t.Error("no plan: no error")
	}
	if err := sheet.Write(&b, plan, result, sheet.Options{Section: -1, Format: 9}); err == nil {
		t.Error("format 9: no error")
	}
	if b.Len() > 0 {
		t.Errorf("%d bytes were written", b.Len())
	}
	empty := new(model.Plan)
	for format := sheet.Text; format <= sheet.JSON; format++ {
		o := sheet.Options{Section: -1, Format: format}
		if text := write(t, empty, o); !strings.Contains(text, "Planning aid") {
			t.Errorf("an empty plan as %s says nothing", format)
		}
	}
}

// full is a disk without room.
type full struct{}

var errFull = errors.New("no room")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriterFails(t *testing.T) {
	plan := demo(t, "ottermast-2")
	result := evaluate(plan)
	for format := sheet.Text; format <= sheet.JSON; format++ {
		if err := sheet.Write(full{}, plan, result, sheet.Options{Section: -1, Format: format}); !errors.Is(err, errFull) {
			t.Errorf("%s: error %v, want %v", format, err, errFull)
		}
	}
	if err := sheet.Check(full{}, plan, result, sheet.Options{Section: -1}); !errors.Is(err, errFull) {
		t.Errorf("check: error %v, want %v", err, errFull)
	}
}

func TestParseFormat(t *testing.T) {
	for format := sheet.Text; format <= sheet.JSON; format++ {
		got, err := sheet.ParseFormat(strings.ToUpper(format.String()))
		if err != nil || got != format {
			t.Errorf("ParseFormat(%q) = %v, %v", strings.ToUpper(format.String()), got, err)
		}
	}
	if _, err := sheet.ParseFormat("odf\x1b[2J"); err == nil || strings.Contains(err.Error(), "\x1b") {
		t.Errorf("ParseFormat of an unknown format: error %v", err)
	}
}

// runningHead is the line at the head of every page of text.
var runningHead = regexp.MustCompile(`(?m)^\f?.*, page \d+ of \d+$`)

// noNumber is how Go writes what is no number; an influx is none of that.
var noNumber = regexp.MustCompile(`NaN|\bInf\b`)
