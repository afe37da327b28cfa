package sheet

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// TestWrap holds the lines to their widths and to keep every character but blanks.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("ab 漢é  ²x\u0301"))).Draw(t, "text")
		first, rest := rapid.IntRange(2, 20).Draw(t, "first"), rapid.IntRange(2, 20).Draw(t, "rest")
		lines := wrap(text, first, rest)
		room := first
		for _, line := range lines {
			if canvas.Width(line) > room {
				t.Fatalf("wrap(%q, %d, %d): line %q is wider than %d", text, first, rest, line, room)
			}
			room = rest
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := squeeze(strings.Join(lines, " ")); got != squeeze(text) {
			t.Fatalf("wrap(%q) keeps %q", text, got)
		}
	})
}

// TestMarginText holds a limit that is missed to be seen as missed, however little it is.
func TestMarginText(t *testing.T) {
	for _, c := range []struct {
		margin   float64
		severity calc.Severity
		want     string
	}{
		{1.5, calc.OK, "+1.50 m"},
		{-0.5, calc.Stop, "-0.50 m"},
		{0, calc.OK, "0 m"},
		{-1e-12, calc.OK, "0 m"},
		{-1e-5, calc.Caution, "negative, less than the digits shown"},
	} {
		f := calc.Finding{Severity: c.severity, HasLimit: true, Kind: quantity.Length, Margin: c.margin}
		if got := marginText(f, quantity.Metre); got != c.want {
			t.Errorf("marginText(%g) = %q, want %q", c.margin, got, c.want)
		}
	}
}

// TestRowsThatDoNotFit keeps the words of cells and names that are wider than the page.
func TestRowsThatDoNotFit(t *testing.T) {
	long := strings.Repeat("word ", 40)
	var s textSheet
	s.rows([]row{
		{name: long, cells: []cell{{value: "1 m", number: true}, {label: "note", value: long}}},
		{name: "b", cells: []cell{{value: "2 m", number: true}, {label: "note", value: strings.Repeat("9", 100), number: true}}},
	})
	text := s.String()
	if n := strings.Count(text, "word"); n != 80 {
		t.Errorf("%d words are printed, want 80:\n%s", n, text)
	}
	if n := strings.Count(text, "9"); n != 100 {
		t.Errorf("%d digits are printed, want 100:\n%s", n, text)
	}
	for line := range strings.Lines(text) {
		if w := canvas.Width(strings.TrimRight(line, "\n")); w > pageWidth {
			t.Errorf("%q is %d columns wide", line, w)
		}
	}
}
