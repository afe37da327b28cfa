package sheet

import (
	"strings"

	"borewalk/ui/canvas"
)

// upperCodes are the characters 0x80 to 0x9F of code page 1252, in which the built-in fonts of a PDF are set; a blank has none.
const upperCodes = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ"

// encode returns a text in code page 1252, a byte for each character. What it does not have is spelt out in ASCII.
func encode(text string) string {
	var b strings.Builder
	ascii := canvas.ASCIIGlyphs()
	for _, ch := range text {
		switch code := upperCode(ch); {
		case code != 0:
			b.WriteByte(code)
		case ch >= ' ' && ch < 0x7f, ch > 0xa0 && ch <= 0xff && ch != 0xad:
			b.WriteByte(byte(ch))
		case ch < ' ', ch == 0x7f:
			b.WriteByte(' ')
		default:
			b.WriteString(ascii.Translate(string(ch)))
		}
	}
	return b.String()
}

// upperCode returns the code of a character from 0x80 to 0x9F, and 0 where it has none.
func upperCode(ch rune) byte {
	if ch > 0xff {
		code := byte(0x80)
		for _, other := range upperCodes {
			if ch == other {
				return code
			}
			code++
		}
	}
	return 0
}
