package sheet_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/ui/sheet"
)

// hostile draws text that might break a table, a terminal, a spreadsheet or a page.
func hostile() *rapid.Generator[string] {
	bits := []string{
		"\x1b[2J", "\x1b]0;x\x07", "\n", "\r", "\t", "\x00", "\x7f", "\u0085", "\u009b31m", "\u202e", "\u200b", "\ufeff", "\xff",
		"=1+2", "+1", "-1", "@x", "＝1", "'", "\"", ",", ";", "|", "||", `\`, "`", "*b*", "_i_", "<script>", "&amp;", "[a](b)", "# h",
		"~~", "$x$", "漢字", "e\u0301", "🛢", "ﷺ", "Ærø", "²", "°", "a", "well", " ", "  ", "17-1/2 in", "NaN",
	}
	return rapid.Custom(func(t *rapid.T) string {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(bits), 0, 8).Draw(t, "bits"), "")
		return text + strings.Repeat(rapid.SampledFrom([]string{"", "x", "漢", "word "}).Draw(t, "tail"), rapid.SampledFrom([]int{1, 77, 400}).Draw(t, "times"))
	})
}

var formula = regexp.MustCompile(`^\s*[=+\-@＝＋－＠]`)

// TestHostileText fills every text of the plan, uncleaned, and what the caller gives.
func TestHostileText(t *testing.T) {
	plan := demo(t, "ottermast-2")
	rapid.Check(t, func(t *rapid.T) {
		text := hostile()
		model.Walk(plan, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				if f.Type == model.TextField {
					model.Ref{Group: g, Field: f, Place: at}.Set(plan, model.Entry{Text: text.Draw(t, f.Key)})
				}
			}
			return true
		})
		o := options(plan)
		o.Source, o.Hash, o.Version = text.Draw(t, "source"), text.Draw(t, "hash"), text.Draw(t, "version")
		o.ASCII, o.Section = rapid.Bool().Draw(t, "ascii"), rapid.IntRange(0, len(plan.Sections)-1).Draw(t, "section")
		for _, printed := range []string{write(t, plan, o), check(t, plan, o)} {
			if fault := textFault(printed, o.ASCII); fault != "" {
				t.Fatal(fault)
			}
		}
		o.Format = sheet.Markdown
		markdownHolds(t, write(t, plan, o))
		o.Format = sheet.CSV
		csvHolds(t, write(t, plan, o))
		o.Format = sheet.JSON
		var got decoded
		if err := json.Unmarshal([]byte(write(t, plan, o)), &got); err != nil {
			t.Fatal(err)
		}
		if got.Plan.Name != model.Clean(plan.Well.Name) {
			t.Fatalf("the well is %q, want %q", got.Plan.Name, model.Clean(plan.Well.Name))
		}
	})
}

func markdownHolds(t *rapid.T, text string) {
	if line := tableFault(text); line != "" {
		t.Fatalf("a row does not fit its table: %q", line)
	}
	if strings.ContainsAny(text, "<>\x1b\r\t\x00") {
		t.Fatal("the text holds HTML or control characters")
	}
}

func csvHolds(t *rapid.T, text string) {
	for _, row := range readCSV(t, text) {
		for name, value := range row {
			number := strings.HasSuffix(name, "_si") || name == "limit" || name == "margin" || name == "value" && row["kind"] != ""
			if !number && formula.MatchString(value) {
				t.Fatalf("%s = %q would be a formula", name, value)
			}
			if strings.ContainsAny(value, "\x1b\r\n\t\x00") {
				t.Fatalf("%s = %q holds control characters", name, value)
			}
		}
	}
}
