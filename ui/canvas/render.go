package canvas

import (
	"strconv"
	"unicode/utf8"
)

// Render returns the canvas as lines joined by newlines. Blanks at the end of a line are left off. Colour is written
// only where it changes and ends with its line, so that each line can be redrawn alone.
func (c *Canvas) Render(p Palette) string {
	text := c.text[:0]
	for y := range c.h {
		if y > 0 {
			text = append(text, '\n')
		}
		text = appendLine(text, c.cells[y*c.w:(y+1)*c.w], &p)
	}
	c.text = text
	return string(text)
}

// Plain returns the canvas as Render does, without colour.
func (c *Canvas) Plain() string { return c.Render(Palette{}) }

func appendLine(text []byte, line []cell, p *Palette) []byte {
	now := uint8(0)
	for _, at := range trim(line, p) {
		if at.ch == tail {
			continue
		}
		code := p.codes[at.style]
		if at.ch == ' ' && !onBlank(code) && !onBlank(now) {
			code = now // a blank looks the same in any colour
		}
		text, now = appendChange(text, now, code), code
		if at.ch < utf8.RuneSelf {
			text = append(text, byte(at.ch))
		} else {
			text = utf8.AppendRune(text, at.ch)
		}
	}
	return appendChange(text, now, 0)
}

// trim cuts the blanks at the end of a line that nobody would see.
func trim(line []cell, p *Palette) []cell {
	n := len(line)
	for n > 0 && line[n-1].ch == ' ' && !onBlank(p.codes[line[n-1].style]) {
		n--
	}
	return line[:n]
}

// appendChange writes the shortest sequence that turns one look into another.
func appendChange(text []byte, from, to uint8) []byte {
	if from == to {
		return text
	}
	text = append(text, "\x1b["...)
	if to != 0 {
		if onBlank(from) || from != 0 && onBlank(to) { // a colour replaces a colour, all else would be added
			text = append(text, "0;"...)
		}
		text = strconv.AppendUint(text, uint64(to), 10)
	}
	return append(text, 'm')
}

// changeLength returns the bytes that appendChange appends.
func changeLength(from, to uint8) int {
	var text [len("\x1b[0;255m")]byte
	return len(appendChange(text[:0], from, to))
}
