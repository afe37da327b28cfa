// Package harmless takes out of text from outside what could drive a terminal, turn the direction of what is shown, or hide in it.
package harmless

import (
	"io"
	"strings"
	"unicode"
)

// mostMarks is how many marks may stand on a letter: no script has more than three or four, and a heap of them covers other lines.
const mostMarks = 4

// Text returns a text with a space in place of each control character, each mark that turns the direction of text or hides in it, and
// each byte that is no UTF-8, and with no more than a few marks on a letter. Letters, and the joiners that some scripts need between them,
// stay.
func Text(text string) string {
	marks := 0
	return strings.Map(func(r rune) rune {
		switch {
		case harmful(r):
			marks = 0
			return ' '
		case r < 0x300 || !unicode.In(r, unicode.Mn, unicode.Me):
			marks = 0
			return r
		}
		if marks++; marks > mostMarks {
			return -1
		}
		return r
	}, text)
}

// harmful covers the C0 and C1 controls, delete, what stands for a broken byte, and the format characters that are no letters.
func harmful(r rune) bool {
	switch {
	case r < ' ', r >= 0x7f && r < 0xa0, r == 0xad, r == 0x061c, r == 0x180e, r == 0x200b, r == 0xfeff, r == 0xfffd,
		r >= 0x200e && r <= 0x200f, r >= 0x2028 && r <= 0x202e, r >= 0x2060 && r <= 0x206f, r >= 0xfff9 && r <= 0xfffb,
		r >= 0xe0000 && r <= 0xe007f:
		return true
	}
	return false
}

// Lines is a writer of lines of messages that passes on harmless text only; line feeds and tabs stay. What is written at once is to end
// with a whole character.
type Lines struct{ To io.Writer }

// Write passes on text, and reports all of it as written unless the writer below fails.
func (l Lines) Write(p []byte) (int, error) {
	text := strings.Split(string(p), "\n")
	for i, line := range text {
		cells := strings.Split(line, "\t")
		for k := range cells {
			cells[k] = Text(cells[k])
		}
		text[i] = strings.Join(cells, "\t")
	}
	if _, err := io.WriteString(l.To, strings.Join(text, "\n")); err != nil {
		return 0, err
	}
	return len(p), nil
}
