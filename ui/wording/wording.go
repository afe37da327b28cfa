// Package wording puts findings, figures, entries and workings in words, and findings in the order in which they matter, for
// whatever is read in lines: the foot of the screen, the dialogue, what is copied.
//
// Labels stand before values, units with their numbers. Texts are as the plan and calc have them: who shows them to a terminal that
// draws ASCII alone translates them.
package wording

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Finding puts a finding on one line: severity, section, what, measured, limit, where.
func Finding(f calc.Finding, system quantity.System) string {
	where := "well"
	if f.Section >= 0 {
		where = fmt.Sprintf("section %d", f.Section+1)
	}
	text := f.Severity.String() + " " + where + ": " + f.Text
	if !f.HasLimit {
		return text
	}
	limit := ", least "
	if !f.Least {
		limit = ", most "
	}
	unit := system.Unit(f.Kind)
	text += " " + quantity.FormatUnit(f.Measured, f.Kind, unit) + limit + quantity.Format(f.Limit, f.Kind, unit)
	if f.Own {
		text += " (plan's own)"
	}
	if f.Where != "" {
		text += ", " + f.Where
	}
	if f.At > 0 {
		text += ", at " + quantity.FormatUnit(f.At, quantity.Length, system.Unit(quantity.Length))
	}
	return text
}

// Value is what a figure says: its number with unit, or that it is blank.
func Value(f calc.Figure, system quantity.System) string {
	switch {
	case f.Key == "":
		return "none"
	case !f.OK:
		return "blank"
	}
	return quantity.FormatUnit(f.Value, f.Kind, system.Unit(f.Kind))
}

// Figure puts a figure on one line: name, column, value, where it holds, or why it is blank.
func Figure(f calc.Figure, system quantity.System) string {
	text := f.Label() + ": " + Value(f, system)
	switch {
	case !f.OK && f.Why != "":
		return text + ", " + f.Why
	case f.Note != "":
		return text + ", " + f.Note
	}
	return text
}

// Content is the content of an entry with its unit, or that it is blank, needed, or planned and as built otherwise.
func Content(plan *model.Plan, ref model.Ref, system quantity.System) string {
	text := ref.Field.ScreenText(ref.Get(plan), system)
	if text == "" && ref.Field.Required {
		return "blank, needed"
	}
	text = cmp.Or(text, "blank")
	if built := ref.AsBuilt(plan); built != "" {
		return "planned " + text + "; " + built
	}
	return text
}

// Working says how a figure of a sheet was got, a line each: formula, numbers, result, where, source. The sheet is that of a section,
// or the well's for -1.
func Working(plan *model.Plan, sheet int, f calc.Figure, system quantity.System) []string {
	if !f.OK {
		lines := []string{f.Label() + ": blank, " + f.Why}
		if f.Mend != "" {
			lines = append(lines, "entry to mend: "+WhereIs(plan, f.Mend))
		}
		return lines
	}
	w, _ := calc.Explain(plan, sheet, f.Key)
	lines := []string{f.Label() + ": " + w.Formula}
	for _, in := range w.Inputs {
		lines = append(lines, in.Symbol+", "+in.Name+" = "+Exact(in.Value, in.Kind, system))
	}
	lines = append(lines, "result = "+Exact(f.Value, f.Kind, system))
	if f.Note != "" {
		lines = append(lines, "where: "+f.Note)
	}
	lines = append(lines, "source: "+w.Source)
	if w.Note != "" {
		lines = append(lines, w.Note)
	}
	return lines
}

// WhereIs names an entry or a list in words, for a person to go to.
func WhereIs(plan *model.Plan, path model.Path) string {
	if ref, ok := model.Find(plan, path); ok {
		return ref.Words()
	}
	if list, _, ok := model.FindList(plan, path); ok {
		return "add " + strings.ToLower(list.Title)
	}
	return string(path)
}

// Exact formats a quantity with more digits than the trade writes, for a check by hand.
func Exact(si float64, kind quantity.Kind, system quantity.System) string {
	unit := system.Unit(kind)
	text := strconv.FormatFloat(unit.FromSI(si), 'f', decimals(unit.FromSI(si)), 64)
	return strings.TrimSpace(text + " " + unit.Symbol())
}

// decimals returns how many decimals make eight figures of a number, six at the most.
func decimals(x float64) int {
	if x = math.Abs(x); x < 1 {
		return 6
	}
	return max(0, min(6, 7-int(math.Log10(x))))
}

// FileName makes a file name without its ending out of a well's name; plan where nothing of it can stand in one.
func FileName(well string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-', r == '_':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, well)
	return cmp.Or(strings.Trim(name, "-"), "plan")
}

// EditName says what an edit of one entry does, for undo to show: "section 3 hole TD: 2155.0 m to 2085.0 m".
func EditName(plan *model.Plan, ref model.Ref, to model.Entry, system quantity.System) string {
	show := func(e model.Entry) string { return cmp.Or(ref.Field.ScreenText(e, system), "blank") }
	where := ""
	if InSection(ref) {
		where = fmt.Sprintf("section %d ", ref.Place.Outer+1)
	}
	return where + ref.Field.Label + ": " + show(ref.Get(plan)) + " to " + show(to)
}
