package terminal

import (
	"os"

	"github.com/charmbracelet/x/term"
	"github.com/mattn/go-runewidth"
)

// Size returns the size to draw for a terminal that says it has w columns and h lines. Serial lines, and
// pseudo-terminals whose owner never set a size, say 0 or nothing; each unknown measure then counts as that of the
// classic screen, 80 columns of 24 lines.
func Size(w, h int) (columns, lines int) {
	if w <= 0 {
		w = 80
	}
	if h <= 0 {
		h = 24
	}
	return w, h
}

// NarrowAmbiguous makes the text widgets count characters of ambiguous East Asian width (box lines, ° ± × and others) as
// one column in every locale, as the rest of the program does. Left alone they count two where LANG is Chinese, Japanese
// or Korean, and lines no longer meet. Call it once, before anything is drawn.
func NarrowAmbiguous() {
	runewidth.EastAsianWidth = false
	runewidth.DefaultCondition.EastAsianWidth = false
}

// SizeOf returns the columns and lines of a terminal, 0 where it does not say.
func SizeOf(f *os.File) (columns, lines int) {
	columns, lines, err := term.GetSize(f.Fd())
	if err != nil {
		return 0, 0
	}
	return columns, lines
}
