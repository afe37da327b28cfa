package sheet_test

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

// decoded is the JSON form as another program would read it, written down here apart from the code that writes it.
type decoded struct {
	Borewalk struct{ Schema int }
	Plan     struct{ Name, Hash, Source, Rules string }
	Entries  map[string]struct {
		Text string
		SI   *float64
	}
	Well     *decodedSheet
	Sections []decodedSheet
	Findings []struct {
		Section             int
		Severity, Key, Text string
		Measured            *float64 `json:"measured_si"`
		Limit               *float64 `json:"limit_si"`
		Margin              *float64 `json:"margin_si"`
		Own                 bool
	}
	Caution string
}

type decodedSheet struct {
	Number  int
	Name    string
	Figures map[string]struct {
		Name, Kind, Unit, Text, Why, Mend string
		SI, Value                         *float64
		OK                                bool
	}
	Cautions []string
}

func TestJSON(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		plan.Sections[1].Density = quantity.Value{} // some figures are blank
		result := evaluate(plan)
		o := options(plan)
		o.Format = sheet.JSON
		var got decoded
		if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
			t.Fatal(err)
		}
		if got.Borewalk.Schema != 1 || got.Plan.Name != plan.Well.Name || got.Plan.Hash != o.Hash || got.Caution == "" {
			t.Errorf("%s: the head is %+v %+v %q", name, got.Borewalk, got.Plan, got.Caution)
		}
		compareFigures(t, &result.Well, got.Well, o.System)
		if len(got.Sections) != len(result.Sections) {
			t.Fatalf("%s: %d sections, want %d", name, len(got.Sections), len(result.Sections))
		}
		for i := range result.Sections {
			if got.Sections[i].Number != i+1 || got.Sections[i].Name != plan.Sections[i].Name {
				t.Errorf("%s: section %d is %d, %q", name, i+1, got.Sections[i].Number, got.Sections[i].Name)
			}
			compareFigures(t, &result.Sections[i], &got.Sections[i], o.System)
		}
		compareFindings(t, result.Findings, got)
		compareEntries(t, plan, got)
	}
}

func compareFigures(t *testing.T, want *calc.Sheet, got *decodedSheet, system quantity.System) {
	t.Helper()
	if got == nil || len(got.Figures) != len(want.Figures) || len(want.Figures) == 0 {
		t.Fatalf("the figures are %v, want %d", got, len(want.Figures))
	}
	for _, f := range want.Figures {
		g, ok := got.Figures[f.Key]
		switch {
		case !ok:
			t.Errorf("figure %s is missing", f.Key)
		case g.OK != f.OK || g.Why != f.Why || g.Mend != string(f.Mend) || g.Kind != f.Kind.String():
			t.Errorf("figure %s = %+v, want %+v", f.Key, g, f)
		case f.OK && (g.SI == nil || *g.SI != f.Value || g.Value == nil || *g.Value != system.Unit(f.Kind).FromSI(f.Value)):
			t.Errorf("figure %s = %v, want %g", f.Key, g.SI, f.Value)
		case !f.OK && (g.SI != nil || g.Value != nil || g.Text != "-"):
			t.Errorf("figure %s is blank and has a value", f.Key)
		}
	}
}

func compareFindings(t *testing.T, want []calc.Finding, got decoded) {
	t.Helper()
	if len(got.Findings) != len(want) {
		t.Errorf("%d findings, want %d", len(got.Findings), len(want))
	}
	for _, f := range want {
		n := 0
		for _, g := range got.Findings {
			if g.Section != f.Section+1 || g.Severity != f.Severity.String() || g.Key != f.Key || g.Text != f.Text || g.Own != f.Own {
				continue
			}
			if f.HasLimit != (g.Limit != nil) || f.HasLimit && (*g.Measured != f.Measured || *g.Limit != f.Limit || *g.Margin != f.Margin) {
				continue
			}
			n++
		}
		if n == 0 {
			t.Errorf("finding %+v is missing", f)
		}
	}
}

func compareEntries(t *testing.T, plan *model.Plan, got decoded) {
	t.Helper()
	for path, e := range got.Entries {
		ref, ok := model.Find(plan, model.Path(path))
		if !ok {
			t.Errorf("entry %s is none of the plan's", path)
			continue
		}
		entry := ref.Get(plan)
		if e.Text != ref.Field.FileText(entry) || entry.Quantity.IsSet() && (e.SI == nil || *e.SI != entry.Quantity.SI) {
			t.Errorf("entry %s = %+v, want %+v", path, e, entry)
		}
	}
	if got.Entries["well.air_gap"].Text == "" || got.Entries["section[2].casing[1].size"].Text == "" {
		t.Error("entries are missing")
	}
	if _, ok := got.Entries["section[1].shoe"]; ok {
		t.Error("the shoe of section 1 follows from the TD, and is listed as an entry")
	}
}

// TestJSONInASCII holds the escaped form to mean the same, also beyond the basic plane.
func TestJSONInASCII(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Well.Name = "Ærø <3> \U0001F6E2 \\u00e6 \"q\""
	o := options(plan)
	o.Format = sheet.JSON
	plain := write(t, plan, o)
	o.ASCII = true
	escaped := write(t, plan, o)
	if fault := textFault(escaped, true); strings.Contains(fault, "holds") {
		t.Error(fault)
	}
	var a, b any
	if json.Unmarshal([]byte(plain), &a) != nil || json.Unmarshal([]byte(escaped), &b) != nil || !reflect.DeepEqual(a, b) {
		t.Error("the ASCII form does not mean the same")
	}
	if !strings.Contains(plain, "<3>") {
		t.Error("the text is escaped as if for a web page")
	}
}

func TestOneSectionOnly(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Format, o.Section = sheet.JSON, 3
	var got decoded
	if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
		t.Fatal(err)
	}
	if got.Well != nil || len(got.Sections) != 1 || got.Sections[0].Number != 4 {
		t.Errorf("the sheets are not section 4 alone")
	}
	for path := range got.Entries {
		if !strings.HasPrefix(path, "section[4].") {
			t.Errorf("%s is no entry of section 4", path)
		}
	}
	for _, f := range got.Findings {
		if f.Section != 4 {
			t.Errorf("%s is no finding of section 4", f.Text)
		}
	}
}

func readCSV(t interface {
	Helper()
	Fatal(...any)
}, text string) []map[string]string {
	t.Helper()
	lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func TestCSV(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		plan.Sections[2].Hole = quantity.Value{} // some figures are blank
		result := evaluate(plan)
		for _, set := range quantity.Sets() {
			o := options(plan)
			o.Format, o.System = sheet.CSV, plan.System(set, false)
			rows := readCSV(t, write(t, plan, o))
			n := map[string]int{}
			for _, row := range rows {
				n[row["record"]]++
				numbers(t, row)
			}
			figures := len(result.Well.Figures)
			for _, s := range result.Sections {
				figures += len(s.Figures)
			}
			if n["figure"] != figures || n["finding"] != len(result.Findings) || n["entry"] == 0 || n["about"] == 0 {
				t.Errorf("%s: the records are %v, want %d figures and %d findings", name, n, figures, len(result.Findings))
			}
			compareCSV(t, result, rows, o.System)
		}
	}
}

// numbers holds the columns of numbers of a row to be numbers, and the value to agree with that in SI.
func numbers(t *testing.T, row map[string]string) {
	t.Helper()
	columns := []string{"value_si", "limit", "limit_si", "margin", "margin_si", "at_si"}
	if row["kind"] != "" {
		columns = append(columns, "value")
	}
	for _, column := range columns {
		if x, err := strconv.ParseFloat(row[column], 64); row[column] != "" && (err != nil || math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("%s = %q in %v", column, row[column], row)
		}
	}
}

// compareCSV holds every figure to its row: the exact value in SI, and the value shown to the digits of the trade.
func compareCSV(t *testing.T, result *calc.Result, rows []map[string]string, system quantity.System) {
	t.Helper()
	found := map[string]map[string]string{}
	for _, row := range rows {
		if row["record"] == "figure" {
			found[row["sheet"]+" "+row["key"]] = row
		}
	}
	for section := -1; section < len(result.Sections); section++ {
		label := "well "
		if section >= 0 {
			label = strconv.Itoa(section+1) + " "
		}
		for _, f := range result.Sheet(section).Figures {
			row, ok := found[label+f.Key]
			unit := system.Unit(f.Kind)
			switch {
			case !ok || row["ok"] != strconv.FormatBool(f.OK) || row["why"] != f.Why || row["kind"] != f.Kind.String():
				t.Errorf("%s%s = %v, want %+v", label, f.Key, row, f)
			case !f.OK && row["value"]+row["value_si"] != "":
				t.Errorf("%s%s is blank and has a value", label, f.Key)
			case f.OK && row["value_si"] != strconv.FormatFloat(f.Value, 'g', -1, 64):
				t.Errorf("%s%s = %s in SI, want %g", label, f.Key, row["value_si"], f.Value)
			case f.OK && !strings.Contains(quantity.Format(f.Value, f.Kind, unit), "/") && row["value"] != quantity.Format(f.Value, f.Kind, unit):
				t.Errorf("%s%s = %s, want %s", label, f.Key, row["value"], quantity.Format(f.Value, f.Kind, unit))
			}
		}
	}
	sizes(t, rows, system.Unit(quantity.Diameter))
}

// sizes holds sizes, which sheets for people write as fractions, to be decimals.
func sizes(t *testing.T, rows []map[string]string, unit quantity.Unit) {
	t.Helper()
	for _, row := range rows {
		if row["kind"] != quantity.Diameter.String() || row["value_si"] == "" {
			continue
		}
		value, err := strconv.ParseFloat(row["value"], 64)
		si, errSI := strconv.ParseFloat(row["value_si"], 64)
		if err != nil || errSI != nil || math.Abs(value-unit.FromSI(si)) > 0.0501 {
			t.Errorf("%s of %s = %q, want %g", row["name"], row["sheet"], row["value"], unit.FromSI(si))
		}
	}
}

// tableFault says which table of a Markdown text has a row with another number of cells than its head.
func tableFault(text string) string {
	want := 0
	for line := range strings.Lines(text) {
		if !strings.HasPrefix(line, "|") {
			want = 0
			continue
		}
		cells := strings.Count(strings.ReplaceAll(strings.ReplaceAll(line, `\\`, ""), `\|`, ""), "|") - 1
		if want == 0 {
			want = cells
		}
		if cells != want || cells < 1 {
			return line
		}
	}
	return ""
}

func TestMarkdownTables(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		o := options(plan)
		o.Format = sheet.Markdown
		text := write(t, plan, o)
		if line := tableFault(text); line != "" {
			t.Errorf("%s: a row does not fit its table: %q", name, line)
		}
		if n := strings.Count(text, "\n# ") + 1; n != 1+len(plan.Sections) {
			t.Errorf("%s: %d sheets, want %d", name, n, 1+len(plan.Sections))
		}
	}
	if tableFault("| a | b |\n| --- | --- |\n| 1 | 2 | 3 |\n") == "" {
		t.Error("the test does not see a row with a cell too many")
	}
}
