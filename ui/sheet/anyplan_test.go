package sheet_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model/anyplan"
	"borewalk/ui/sheet"
)

// TestAnyPlanIsPrinted: a paper of any plan that a file may hold is printed or refused in one line, and no number on it is none.
func TestAnyPlanIsPrinted(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyplan.From(rapid.SliceOfN(rapid.Byte(), 0, 400).Draw(rt, "bytes"))
		o := options(plan)
		o.ASCII, o.Section = rapid.Bool().Draw(rt, "ascii"), rapid.IntRange(-1, len(plan.Sections)-1).Draw(rt, "section")
		o.Format = rapid.SampledFrom([]sheet.Format{sheet.Text, sheet.Markdown, sheet.CSV, sheet.JSON, sheet.PDF}).Draw(rt, "format")
		o.Paper = sheet.Paper(rapid.IntRange(0, len(sheet.PaperNames())-1).Draw(rt, "paper"))
		o.Against = sheet.Against{Plan: demo(t, "ottermast-2"), Name: "another"}
		var b bytes.Buffer
		if err := sheet.Write(&b, plan, calc.Evaluate(plan), o); err != nil {
			if strings.ContainsAny(err.Error(), "\n\x1b") {
				rt.Fatalf("%q", err)
			}
			return
		}
		printed := b.String()
		switch {
		case o.Format == sheet.PDF:
			if !strings.HasPrefix(printed, "%PDF-") || !strings.Contains(printed, "%%EOF") {
				rt.Fatal("no PDF")
			}
		case noNumber.MatchString(printed):
			at := noNumber.FindStringIndex(printed)
			rt.Fatal(printed[max(0, at[0]-80):min(len(printed), at[1]+20)])
		case o.Format == sheet.JSON && !json.Valid(b.Bytes()):
			rt.Fatal("no JSON")
		case o.Format == sheet.Text:
			if fault := textFault(printed, o.ASCII); fault != "" {
				rt.Fatal(fault)
			}
		}
	})
}
