package canvas

import (
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"
)

// Single and double lines, blocks and shades, and a few signs: what fonts made for code page 437 have.
const oldFonts = "─│┌┐└┘├┤┬┴┼═║╔╗╚╝╠╣╦╩╬╒╓╕╖╘╙╛╜╞╟╡╢╤╥╧╨╪╫█▌▐▀▄░▒▓°±²·µ"

func TestGlyphsAreInOldFontsAndOneColumnWide(t *testing.T) {
	for name, g := range map[string]Glyphs{"unicode": UnicodeGlyphs(), "ascii": ASCIIGlyphs()} {
		v := reflect.ValueOf(g)
		for i := range v.NumField() {
			if v.Field(i).Kind() != reflect.Int32 {
				continue
			}
			ch := rune(v.Field(i).Int())
			ascii := ch > ' ' && ch < utf8.RuneSelf
			if !ascii && (g.ASCII() || !strings.ContainsRune(oldFonts, ch)) {
				t.Errorf("%s glyph %s is %q: not in old fonts", name, v.Type().Field(i).Name, ch)
			}
			if n := runeWidth(ch); n != 1 {
				t.Errorf("%s glyph %s is %d columns wide, want 1", name, v.Type().Field(i).Name, n)
			}
		}
	}
}

func TestTranslate(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"412.0 m³", "412.0 m3"},
		{"g = 9.80665 m/s²", "g = 9.80665 m/s2"},
		{"p = rho × g × h", "p = rho x g x h"},
		{"32.5°/30 m", "32.5deg/30 m"},
		{"kg·m", "kg*m"},
		{"−1 ± 2 µm — Ærø, Sørøst Å", "-1 +/- 2 um - AEro, Sorost A"},
		{"São João Ñÿ", "Sao Joao Ny"},
		{"深", "?"},
		{"plain", "plain"},
	} {
		if got := ASCIIGlyphs().Translate(test.text); got != test.want {
			t.Errorf("Translate(%q) = %q, want %q", test.text, got, test.want)
		}
		if got := UnicodeGlyphs().Translate(test.text); got != test.text {
			t.Errorf("Translate(%q) = %q in UTF-8, want it unchanged", test.text, got)
		}
	}
}
