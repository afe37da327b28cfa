package canvas

import (
	"strings"
	"unicode"

	"github.com/mattn/go-runewidth"
)

// cells counts ambiguous East Asian characters as one column in every locale, as the box drawing needs.
var cells = runewidth.Condition{EastAsianWidth: false, StrictEmojiNeutral: true}

// runeWidth returns the columns that a character takes: 0, 1 or 2. Control and format characters, among them those that
// turn the direction of text, take none.
func runeWidth(ch rune) int {
	switch {
	case ch >= ' ' && ch < 0x7f, ch >= 0x2500 && ch < 0x2600: // ASCII, boxes and blocks
		return 1
	case unicode.In(ch, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp):
		return 0
	}
	return cells.RuneWidth(ch)
}

// Width returns the columns that a text takes when Text draws it.
func Width(s string) int {
	n := 0
	for _, ch := range s {
		n += runeWidth(ch)
	}
	return n
}

// Squeeze returns a text that takes at most w columns and keeps the last word, which often tells one name from another: what
// stands before it is cut and ends in a point. Where that leaves too little it is Clip.
func Squeeze(s string, w int) string {
	if Width(s) <= w {
		return s
	}
	const least = 3 // columns that a beginning is recognised by
	cut := strings.LastIndexByte(s, ' ')
	if cut < 0 {
		return Clip(s, w)
	}
	room := w - Width(s[cut:]) - len(".")
	if room < least {
		return Clip(s, w)
	}
	return strings.TrimRight(Clip(s[:cut], room), " ,-") + "." + s[cut:]
}

// Clip returns the longest beginning of a text that takes at most w columns.
func Clip(s string, w int) string {
	n := 0
	for i, ch := range s {
		if n += runeWidth(ch); n > w {
			return s[:i]
		}
	}
	return s
}

// Cut returns the longest beginning of a text, ended at a word, that takes at most w columns; two points say that there is more. A
// first word that is too long is clipped, unless it is a number: of that nothing is shown.
func Cut(s string, w int) string {
	const rest = " .."
	if Width(s) <= w {
		return s
	}
	begins := strings.TrimRight(Clip(s, max(0, w-len(rest))), " ")
	if !strings.HasPrefix(s[len(begins):], " ") {
		at := strings.LastIndexByte(begins, ' ')
		if at < 0 {
			if strings.IndexFunc(begins, unicode.IsLetter) < 0 {
				return Clip("..", w)
			}
			return Clip(s, w)
		}
		begins = begins[:at]
	}
	return strings.TrimRight(begins, " ,;:") + Clip(rest, w-Width(begins))
}
