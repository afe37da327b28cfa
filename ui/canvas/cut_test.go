package canvas

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCutEndsAtAWord(t *testing.T) {
	for _, test := range []struct {
		text string
		w    int
		want string
	}{
		{"Step in stiffness", 17, "Step in stiffness"},
		{"Step in stiffness", 16, "Step in .."},
		{"Step in stiffness", 10, "Step in .."},
		{"Step in stiffness", 9, "Step .."},
		{"least 0.020, at 2150 m", 17, "least 0.020 .."},
		{"stiffness", 5, "stiff"}, // no word fits: a beginning is better than nothing
		{"2155.0", 5, ".."},       // but of a number never
		{"", 3, ""},
		{"Step in", 0, ""},
	} {
		if got := Cut(test.text, test.w); got != test.want {
			t.Errorf("Cut(%q, %d) = %q, want %q", test.text, test.w, got, test.want)
		}
	}
}

// TestCutKeepsWholeWordsAndFits: whatever is cut takes no more than its room, and shows only words that the text has.
func TestCutKeepsWholeWordsAndFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-zæ深0-9]{1,7}`), 1, 8).Draw(t, "words")
		text, w := strings.Join(words, " "), rapid.IntRange(0, 60).Draw(t, "columns")
		got := Cut(text, w)
		if Width(got) > w {
			t.Fatalf("Cut(%q, %d) = %q takes %d columns", text, w, got, Width(got))
		}
		if kept, cut := strings.CutSuffix(got, " .."); cut && !strings.HasPrefix(text, kept+" ") {
			t.Fatalf("Cut(%q, %d) = %q", text, w, got)
		}
	})
}

// TestPaletteIsReadableOnAnyBackground: the basic colours as accents; none is blue, white, bright or bold, none sets a background, and
// below 8 colours there is none at all.
func TestPaletteIsReadableOnAnyBackground(t *testing.T) {
	wanted := map[uint8]bool{0: true, underline: true, reverse: true, red: true, green: true, yellow: true, magenta: true, cyan: true}
	for _, colours := range []int{8, 16, 256} {
		for style, code := range NewPalette(colours).codes {
			if !wanted[code] {
				t.Errorf("style %d of %d colours is SGR %d", style, colours, code)
			}
		}
	}
	for _, text := range []Style{Plain, Faint, Rock, Steel} {
		if NewPalette(16).codes[text] != 0 {
			t.Errorf("style %d is not in the terminal's own colours", text)
		}
	}
	for _, colours := range []int{0, 2} {
		if NewPalette(colours) != (Palette{}) {
			t.Errorf("a terminal of %d colours is given some", colours)
		}
	}
}
