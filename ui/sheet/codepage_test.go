package sheet

import (
	"testing"

	"pgregory.net/rapid"
)

// TestEncode: codes from the table of code page 1252 as the Unicode Consortium publishes it (CP1252.TXT), recalled.
func TestEncode(t *testing.T) {
	for text, want := range map[string]string{
		"13-5/8 in":       "13-5/8 in",
		"m³ °C ½ µ × Æøß": "m\xb3 \xb0C \xbd \xb5 \xd7 \xc6\xf8\xdf",
		"€ … – — ‘a’ “b”": "\x80 \x85 \x96 \x97 \x91a\x92 \x93b\x94",
		"Ž ž Ÿ Œ ‰":       "\x8e \x9e \x9f \x8c \x89",
		"≥ √ Δρ ⁴":        ">= sqrt drho 4",
		"漢字 e\u0301":      "?? e?",
		"a\u00a0b":        "a b",
		"\xff":            "?",
	} {
		if got := encode(text); got != want {
			t.Errorf("encode(%q) = %q, want %q", text, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		for _, code := range []byte(encode(rapid.String().Draw(t, "text"))) {
			if code >= 0x80 && code < 0xa0 && []rune(upperCodes)[code-0x80] == ' ' {
				t.Fatalf("code %#x is none", code)
			}
		}
	})
}
