package harmless_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"borewalk/model/harmless"
)

func TestText(t *testing.T) {
	for text, want := range map[string]string{
		"":                            "",
		"Ottermast 2, 12¼ in, Ærø 漢字": "Ottermast 2, 12¼ in, Ærø 漢字",
		"a\x1b[2Jb":                   "a [2Jb",
		"\x1b]0;title\x07":            " ]0;title ",
		"a\tb\r\nc\x00\x7f":           "a b  c  ",
		"\u009b31m\u0085":             " 31m ",
		"\u202eabc\u2066\u2069\u200f": " abc   ",
		"zero\u200bwidth\ufeff\u2060": "zero width  ",
		"soft\u00adhyphen":            "soft hyphen",
		"hidden\U000e0041tag":         "hidden tag",
		"broken \xff\xfe":             "broken   ",
		"\xc2":                        " ",
		"می\u200cخواهم":               "می\u200cخواهم", // the joiner belongs to the word
		"e\u0301":                     "e\u0301",
		"heap" + strings.Repeat("\u0301", 900) + "s\u0301": "heap" + strings.Repeat("\u0301", 4) + "s\u0301",
		"lines\u2028apart\u2029":                           "lines apart ",
	} {
		if got := harmless.Text(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

// Whatever comes in: nothing of it drives a terminal, letters stay, and doing it twice is doing it once.
func TestNothingHarmfulIsLeft(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := string(rapid.SliceOf(rapid.Byte()).Draw(rt, "bytes")) + rapid.String().Draw(rt, "text")
		clean := harmless.Text(text)
		for _, r := range clean {
			if unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == unicode.ReplacementChar {
				rt.Fatalf("%U is left of %q", r, text)
			}
		}
		if again := harmless.Text(clean); again != clean {
			rt.Fatalf("%q becomes %q the second time", clean, again)
		}
		if len([]rune(clean)) > len([]rune(text)) {
			rt.Fatalf("%q grew to %q", text, clean)
		}
	})
}

func TestLines(t *testing.T) {
	var out bytes.Buffer
	fmt.Fprintln(harmless.Lines{To: &out}, "\x1b[2Jplan.toml: wrong\n\tsee \u202ehelp\r")
	if want := " [2Jplan.toml: wrong\n\tsee  help \n"; out.String() != want {
		t.Errorf("%q, want %q", out.String(), want)
	}
}
