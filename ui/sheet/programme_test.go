package sheet_test

import (
	"encoding/json"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/sheet"
)

// TestHostileTextOnSteps fills every text of a plan, with an operation and a mark of its own, with what might break a table, a terminal,
// a spreadsheet or a page, and prints step list and chapter in every format.
func TestHostileTextOnSteps(t *testing.T) {
	const hostile = "=1+2\x1b[2J\n\r\t\x00\u009b31m\u202e|| ` \\ *b* <script> [a](b) # h 漢字 🛢 "
	plan := demo(t, "ottermast-2")
	plan.Sections[2].Steps = append(plan.Sections[2].Steps, model.StepRow{Name: hostile}, model.StepRow{Step: "drill", Note: hostile}, model.StepRow{Step: "pull_out", Struck: model.Struck})
	plan.Log = append(plan.Log, model.LogRow{What: model.LogMark, New: hostile, Who: hostile, When: hostile, Why: hostile})
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			if ref := (model.Ref{Group: g, Field: f, Place: at}); f.Type == model.TextField && f.Key != "step" && f.Key != "after" {
				ref.Set(plan, model.Entry{Text: hostile + strings.Repeat("word ", 40)})
			}
		}
		return true
	})
	for _, paper := range []sheet.Paper{sheet.StepList, sheet.Chapter} {
		o := options(plan)
		o.Paper, o.Section, o.Source = paper, 2, hostile
		for _, o.ASCII = range []bool{false, true} {
			text := write(t, plan, o)
			if fault := textFault(text, o.ASCII); fault != "" {
				t.Errorf("%s: %s", sheet.PaperNames()[paper], fault)
			}
			if strings.Contains(text, "NaN") || strings.Contains(text, "Inf ") {
				t.Errorf("%s holds what is no number", sheet.PaperNames()[paper])
			}
		}
		o.ASCII, o.Format = false, sheet.Markdown
		markdown := write(t, plan, o)
		if line := tableFault(markdown); line != "" {
			t.Errorf("a row does not fit its table: %q", line)
		}
		if strings.ContainsAny(markdown, "<>\x1b\r\t\x00") {
			t.Error("the Markdown holds HTML or control characters")
		}
		o.Format = sheet.CSV
		for _, record := range strings.Split(write(t, plan, o), "\n") {
			for _, value := range strings.Split(record, ",")[:min(3, strings.Count(record, ",")+1)] {
				if formula.MatchString(strings.Trim(value, `"`)) {
					t.Errorf("%q would be a formula", value)
				}
			}
		}
		o.Format = sheet.JSON
		if !json.Valid([]byte(write(t, plan, o))) {
			t.Error("the JSON cannot be read")
		}
		o.Format = sheet.PDF
		if !strings.HasPrefix(write(t, plan, o), "%PDF-") {
			t.Error("no PDF")
		}
	}
}

// TestStepsAndChapterOfSparsePlans: without what they hang on the papers say which entry to mend, or leave a blank; they never panic.
func TestStepsAndChapterOfSparsePlans(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		for i := range demo(t, name).Sections {
			plan := demo(t, name)
			plan.Sections[i] = model.Section{Name: "blank"}
			result := calc.Evaluate(plan)
			for _, paper := range []sheet.Paper{sheet.StepList, sheet.Chapter} {
				o := options(plan)
				for o.Section = range plan.Sections {
					o.Paper = paper
					var b strings.Builder
					if err := sheet.Write(&b, plan, result, o); err == nil {
						if strings.Contains(b.String(), "NaN") {
							t.Errorf("%s of section %d with section %d blank holds NaN", sheet.PaperNames()[paper], o.Section+1, i+1)
						}
					} else if !strings.Contains(err.Error(), "section[") {
						t.Errorf("%s of section %d: no entry to mend: %v", sheet.PaperNames()[paper], o.Section+1, err)
					}
				}
			}
		}
	}
}
