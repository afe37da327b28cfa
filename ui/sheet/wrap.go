package sheet

import (
	"strings"

	"borewalk/ui/canvas"
)

// wrap breaks a text between words into lines of at most first columns, then at most rest. A word that is wider than a
// line is broken within.
func wrap(text string, first, rest int) []string {
	var lines []string
	line, room := "", first
	flush := func() {
		lines = append(lines, line)
		line, room = "", rest
	}
	for _, word := range strings.Fields(text) {
		if line != "" && canvas.Width(line)+1+canvas.Width(word) <= room {
			line += " " + word
			continue
		}
		if line != "" {
			flush()
		}
		for canvas.Width(word) > room {
			head := canvas.Clip(word, room)
			if head == "" { // not even one character fits
				break
			}
			line, word = head, word[len(head):]
			flush()
		}
		line = word
	}
	if line != "" || len(lines) == 0 {
		flush()
	}
	return lines
}

// pad fills a text with blanks to a width.
func pad(text string, width int) string { return text + blanks(width-canvas.Width(text)) }

func blanks(n int) string { return strings.Repeat(" ", max(n, 0)) }
