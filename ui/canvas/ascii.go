package canvas

import (
	"strings"
	"unicode/utf8"
)

// ASCII reports whether the glyphs are those of a terminal that shows ASCII only.
func (g Glyphs) ASCII() bool { return g.ascii }

// Translate returns a text as the terminal can show it: unchanged in UTF-8, spelt out in ASCII. Measure and clip texts
// after translation, for "°" grows into "deg". A character without a spelling becomes '?'.
func (g Glyphs) Translate(text string) string {
	if !g.ascii || isASCII(text) {
		return text
	}
	var b strings.Builder
	b.Grow(len(text))
	for _, ch := range text {
		if ch < utf8.RuneSelf {
			b.WriteByte(byte(ch))
		} else {
			b.WriteString(spell(ch))
		}
	}
	return b.String()
}

func isASCII(text string) bool {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// spell returns the ASCII spelling of a character: signs of units and formulas, typographic signs, and the letters of
// the names that wells around the North Sea, Brazil and the Gulf are given.
func spell(ch rune) string {
	switch ch {
	case '°', 'º':
		return "deg"
	case '¹':
		return "1"
	case '²':
		return "2"
	case '³':
		return "3"
	case '⁴':
		return "4"
	case '⁶':
		return "6"
	case '½':
		return "1/2"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '·', '⋅', '•', '∙':
		return "*"
	case '×':
		return "x"
	case '÷', '⁄':
		return "/"
	case '±':
		return "+/-"
	case '−', '–', '—', '‐', '‑', '─', '═':
		return "-"
	case '≤':
		return "<="
	case '≥':
		return ">="
	case '≠':
		return "!="
	case '≈':
		return "~"
	case '√':
		return "sqrt"
	case '→':
		return "->"
	case '←':
		return "<-"
	case '…':
		return "..."
	case '\u00a0', '\u2009', '\u202f':
		return " "
	case '‘', '’', '′':
		return "'"
	case '“', '”', '″':
		return "\""
	case 'µ', 'μ':
		return "u"
	case 'Δ':
		return "d"
	case 'π':
		return "pi"
	case 'ρ':
		return "rho"
	case 'σ':
		return "sigma"
	case 'τ':
		return "tau"
	case '│', '║':
		return "|"
	}
	return letter(ch)
}

func letter(ch rune) string {
	switch ch {
	case 'Æ':
		return "AE"
	case 'æ':
		return "ae"
	case 'ß':
		return "ss"
	}
	const accented = "ÀÁÂÃÄÅàáâãäåÇçÈÉÊËèéêëÌÍÎÏìíîïÑñÒÓÔÕÖØòóôõöøÙÚÛÜùúûüÝýÿ"
	const plain = "AAAAAAaaaaaaCcEEEEeeeeIIIIiiiiNnOOOOOOooooooUUUUuuuuYyy"
	if at := strings.IndexRune(accented, ch); at >= 0 {
		n := utf8.RuneCountInString(accented[:at])
		return plain[n : n+1]
	}
	return "?"
}
