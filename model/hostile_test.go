package model_test

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// driving is text that would drive a terminal, turn what is shown around, or hide in it.
const driving = "\x1b[2J\x1b]0;x\a\u009b31m\u202e\u200b\u2066\ufeff\r\n\x00\xff"

// TestNoFieldTakesWhatIsNoNumber: whatever is typed or stands in a file for any quantity of a plan.
func TestNoFieldTakesWhatIsNoNumber(t *testing.T) {
	fields, _ := everyField(demo(t, plans.Default))
	for _, field := range fields {
		if field.Type != model.QuantityField {
			continue
		}
		shown := quantity.Units(field.Kind)[0]
		for _, number := range []string{
			"nan", "NaN", "-nan", "NAN", "nan(0x1)", "inf", "+Inf", "-infinity", "INFINITY", "∞", "1e5", "1e308", "1E-308", "1e999999999", "0x1p-2", "0x10", "1_000", "1,000,000.5",
			strings.Repeat("9", 40), strings.Repeat("9", 400), "0." + strings.Repeat("0", 400) + "1", "--1", "+-1", "1/0", "5/0", "0/0", "١٢", "½", ".", "-", "1" + driving, driving + "1",
		} {
			for _, text := range []string{number, number + " " + shown.Symbol()} {
				e, err := field.Parse(text, shown)
				if err == nil {
					t.Errorf("%s takes %q as %+v", field.Key, text, e)
				} else if fault := unclean(err.Error()); fault != "" {
					t.Errorf("%s of %q: %s", field.Key, text, fault)
				}
			}
		}
	}
}

// unclean says why a message is not one short line that is harmless.
func unclean(message string) string {
	const long = 2000 // some list the choices of a field
	if len(message) > long || strings.ContainsFunc(message, drives) {
		return message[:min(len(message), long)]
	}
	return ""
}

// drives reports whether a character does something to a terminal.
func drives(r rune) bool {
	return unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == unicode.ReplacementChar
}

// FuzzTyped reads any text as an entry of any field, as a path, a moment and a day: what is taken is clean, finite and in its range, what is
// refused says so in one clean line.
func FuzzTyped(f *testing.F) {
	plan := demo(f, plans.Default)
	fields, _ := everyField(plan)
	for _, seed := range []string{driving, "12 m", "NaN m", "1e308 m", "13-5/8 in", "1,5 sg", "2026-02-28 23:59", "2026-02-30 25:61", "day 3", "section[3].casing[1].weight", "section[999999999999999999999]",
		"section[-1].td", "section[1", "[[[[", "section." + strings.Repeat("section.", 1000), "=" + driving, "vertical", strings.Repeat("e\u0301", 5000)} {
		for at := range 8 {
			f.Add(seed, uint16(at*len(fields)/8))
		}
	}
	f.Fuzz(func(t *testing.T, text string, at uint16) {
		field := fields[int(at)%len(fields)]
		e, err := field.Parse(text, quantity.Units(field.Kind)[0])
		si := e.Quantity.SI
		switch {
		case err != nil:
			if fault := unclean(err.Error()); fault != "" {
				t.Errorf("%s of %q: %s", field.Key, text, fault)
			}
		case strings.ContainsFunc(e.Text, drives), len([]rune(e.Text)) > model.MaxText:
			t.Errorf("%s takes %q", field.Key, e.Text)
		case math.IsNaN(si) || math.IsInf(si, 0) || field.Min.IsSet() && si < field.Min.SI && e.IsSet() || field.Max.IsSet() && si > field.Max.SI:
			t.Errorf("%s takes %q as %g", field.Key, text, si)
		}
		model.Find(plan, model.Path(text))
		model.FindList(plan, model.Path(text))
		model.FindRow(plan, model.Path(text))
		model.SectionCalled(plan, text)
		model.ParseMoment(text)
		model.ParseDay(text)
	})
}
