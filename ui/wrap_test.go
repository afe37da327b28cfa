package ui

import (
	"slices"
	"testing"
)

// A number is not parted from its unit; a word wider than a line, such as a path, is broken; a sentence that ends with a number is not
// changed.
func TestLinesBreakBetweenWords(t *testing.T) {
	for _, test := range []struct {
		text string
		want []string
	}{
		{"left open -150.0 m, least", []string{"left open", "-150.0 m,", "least"}},
		{"up to 13 5/8 in casing", []string{"up to", "13 5/8 in", "casing"}},
		{"ends at 12. Then", []string{"ends at", "12. Then"}},
		{"in /tmp/a/b/c/d/e/f", []string{"in /tmp/a/", "b/c/d/e/f"}},
		{"1234567890 m", []string{"1234567890", "m"}},
	} {
		if got := wrap(test.text, 10); !slices.Equal(got, test.want) {
			t.Errorf("%q: %q, want %q", test.text, got, test.want)
		}
	}
}
