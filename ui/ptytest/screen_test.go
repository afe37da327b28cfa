package ptytest

import (
	"strings"
	"testing"
)

// TestScreen writes to a screen of 10 columns and 4 lines. The lines wanted follow from the definitions of the control
// functions in ECMA-48 and DEC STD 070.
func TestScreen(t *testing.T) {
	full := "1111111111\r\n2222222222\r\n3333333333\r\n4444444444"
	for _, c := range []struct {
		name, output, want string
	}{
		{"text", "ab\r\ncd", "ab\ncd\n\n"},
		{"line feed goes straight down", "ab\ncd", "ab\n  cd\n\n"},
		{"carriage return overwrites", "abc\rX", "Xbc\n\n\n"},
		{"backspace", "abc\b\bX", "aXc\n\n\n"},
		{"tab", "a\tb", "a       b\n\n\n"},
		{"tab at the end of the line", "0123456789\tb", "0123456789\nb\n\n"},
		{"wraps with the next character", "0123456789", "0123456789\n\n\n"},
		{"wrapped", "0123456789ab", "0123456789\nab\n\n"},
		{"carriage return after the last column", "0123456789\rX", "X123456789\n\n\n"},
		{"no wrapping", "\x1b[?7l0123456789ab", "012345678b\n\n\n"},
		{"scrolls", "1\r\n2\r\n3\r\n4\r\n5", "2\n3\n4\n5"},
		{"position", "\x1b[2;3Hx\x1b[4;10Hy\x1b[Hz", "z\n  x\n\n         y"},
		{"position outside", "\x1b[99;99Hx", "\n\n\n         x"},
		{"up, down, right, left", "\x1b[2;2Ha\x1b[Ab\x1b[2Bc\x1b[2Dd\x1b[Ce", "  b\n a\n  dce\n"},
		{"column and line", "\x1b[5Gx\x1b[3dy", "    x\n\n     y\n"},
		{"next and previous line", "\x1b[2;5Ha\x1b[Eb\x1b[2Fc", "c\n    a\nb\n"},
		{"erase to the right", full + "\x1b[2;4H\x1b[K", "1111111111\n222\n3333333333\n4444444444"},
		{"erase to the left", full + "\x1b[2;4H\x1b[1K", "1111111111\n    222222\n3333333333\n4444444444"},
		{"erase line", full + "\x1b[2;4H\x1b[2K", "1111111111\n\n3333333333\n4444444444"},
		{"erase below", full + "\x1b[2;4H\x1b[J", "1111111111\n222\n\n"},
		{"erase above", full + "\x1b[2;4H\x1b[1J", "\n    222222\n3333333333\n4444444444"},
		{"erase page keeps the cursor", full + "\x1b[2;4H\x1b[2Jx", "\n   x\n\n"},
		{"erase characters", full + "\x1b[2;4H\x1b[3X", "1111111111\n222   2222\n3333333333\n4444444444"},
		{"insert characters", "abcdefghij\x1b[3G\x1b[2@", "ab  cdefgh\n\n\n"},
		{"delete characters", "abcdefghij\x1b[3G\x1b[2P", "abefghij\n\n\n"},
		{"insert lines", full + "\x1b[2;4H\x1b[Lx", "1111111111\nx\n2222222222\n3333333333"},
		{"delete lines", full + "\x1b[2;4H\x1b[2M", "1111111111\n4444444444\n\n"},
		{"scroll up and down", full + "\x1b[2S\x1b[T", "\n3333333333\n4444444444\n"},
		{"scroll region", full + "\x1b[2;3r\x1b[3;1H\nx", "1111111111\n3333333333\nx\n4444444444"},
		{"reverse line feed", full + "\x1b[H\x1bMx", "x\n1111111111\n2222222222\n3333333333"},
		{"repeat", "ab\x1b[3b", "abbbb\n\n\n"},
		{"save and restore", "ab\x1b7\x1b[3;5Hx\x1b8c", "abc\n\n    x\n"},
		{"alternate page", "shell\x1b[?1049h\x1b[2J\x1b[Hplan\x1b[?1049l$", "shell$\n\n\n"},
		{"inside the alternate page", "shell\x1b[?1049h\x1b[H\x1b[2Jplan", "plan\n\n\n"},
		{"wide", "a\u6c34b", "a\u6c34b\n\n\n"},
		{"wide does not fit", "012345678\u6c34", "012345678\n\u6c34\n\n"},
		{"wide overwritten", "a\u6c34b\x1b[3Gx", "a xb\n\n\n"},
		{"accent", "e\u0301x", "e\u0301x\n\n\n"},
		{"box lines", "\u2554\u2550\u2557 \u2588\u2592 13\u00bd\u00b0", "\u2554\u2550\u2557 \u2588\u2592 13\u00bd\n\u00b0\n\n"},
		{"colours are no text", "\x1b[1;31ma\x1b[38;5;208mb\x1b[48;2;1;2;3mc\x1b[0md", "abcd\n\n\n"},
		{"titles and links are no text", "\x1b]0;title\aa\x1b]8;;x:y\x1b\\b\x1b]8;;\x1b\\", "ab\n\n\n"},
		{"modes are no text", "\x1b[?25l\x1b[?2004h\x1b[?1000;1006ha\x1b[>4;1mb", "ab\n\n\n"},
	} {
		s := NewScreen(10, 4)
		write(s, c.output)
		if got := s.String(); got != c.want {
			t.Errorf("%s: screen is\n%q, want\n%q", c.name, got, c.want)
		}
		if len(s.Unknown()) > 0 {
			t.Errorf("%s: unknown sequences %q", c.name, s.Unknown())
		}
	}
}

// TestScreenPieces writes byte by byte, and in one piece: a program's output may be read in any pieces.
func TestScreenPieces(t *testing.T) {
	const output = "\x1b[?1049h\x1b[2J\x1b[1;1H\u2500\u2500 17\u00bd in\x1b[K\r\n\x1b[7m> 7200 ft\x1b[0m\x1b[4;3H\x1b]0;x\x1b\\end"
	whole, pieces := NewScreen(20, 4), NewScreen(20, 4)
	write(whole, output)
	for _, b := range []byte(output) {
		_, _ = pieces.Write([]byte{b})
	}
	if got, want := pieces.String(), whole.String(); got != want {
		t.Errorf("in pieces the screen is\n%q, want\n%q", got, want)
	}
}

func TestScreenLook(t *testing.T) {
	s := NewScreen(20, 2)
	write(s, "a\x1b[7mb\x1b[27;31;4mc\x1b[38;5;208md\x1b[39;24;1me\x1b[4:3mf\x1b[mg")
	for x, want := range []Look{
		{}, {Reverse: true}, {Foreground: 31, Underline: true}, {Foreground: 38, Underline: true}, {Bold: true},
		{Bold: true, Underline: true}, {},
	} {
		if got := s.Cell(x, 0).Look; got != want {
			t.Errorf("look of cell %d = %+v, want %+v", x, got, want)
		}
	}
}

func TestScreenResize(t *testing.T) {
	s := NewScreen(10, 4)
	write(s, "0123456789\r\nb\r\nc\r\nd")
	s.Resize(5, 2)
	if got, want := s.String(), "01234\nb"; got != want {
		t.Errorf("smaller screen is %q, want %q", got, want)
	}
	s.Resize(8, 3)
	write(s, "\x1b[3;8Hx")
	if got, want := s.String(), "01234\nb\n       x"; got != want {
		t.Errorf("larger screen is %q, want %q", got, want)
	}
}

func TestScreenCursor(t *testing.T) {
	s := NewScreen(10, 4)
	write(s, "\x1b[?1049h\x1b[?25l\x1b[3;4H")
	if x, y, shown := s.Cursor(); x != 3 || y != 2 || shown {
		t.Errorf("cursor = %d, %d, shown %v, want 3, 2, hidden", x, y, shown)
	}
	if !s.Alternate() {
		t.Error("the alternate page is not shown")
	}
	write(s, "\x1b[?25h\x1b[?1049l")
	if _, _, shown := s.Cursor(); !shown || s.Alternate() {
		t.Errorf("after leaving, cursor shown %v and alternate page %v, want true and false", shown, s.Alternate())
	}
}

func TestScreenQueries(t *testing.T) {
	s := NewScreen(10, 4)
	write(s, "\x1b]11;?\x1b\\ab\x1b[6n\x1b[c\x1b]0;a title\a")
	if got, want := strings.Join(s.Queries(), ", "), "OSC 11, cursor position, device attributes"; got != want {
		t.Errorf("queries = %q, want %q", got, want)
	}
	if got, want := s.Replies(), "\x1b]11;rgb:0000/0000/0000\x1b\\\x1b[1;3R\x1b[?62;22c"; got != want {
		t.Errorf("replies = %q, want %q", got, want)
	}
	if got := s.Replies(); got != "" {
		t.Errorf("replies again = %q, want none", got)
	}
}

func TestScreenUnknown(t *testing.T) {
	s := NewScreen(10, 4)
	write(s, "a\x1b[5z\x1b[5zb")
	if got, want := strings.Join(s.Unknown(), ", "), "CSI z"; got != want {
		t.Errorf("unknown = %q, want %q", got, want)
	}
	if got, want := s.Line(0), "ab"; got != want {
		t.Errorf("line = %q, want %q", got, want)
	}
}

// FuzzScreen writes anything to screens of any size: there must be no panic and never more text than the screen holds.
func FuzzScreen(f *testing.F) {
	f.Add([]byte("\x1b[2;3r\x1b[3;1H\n\u6c34\x1b[99b\x1b[5@\x1b[7P\x1b[3X"), uint8(3), uint8(2))
	f.Add([]byte("\x1b[?1049h\x1b[;rx\x1b[99L\x1b[99M\x1b[99S\x1b[99T\x1b8\x1bc"), uint8(0), uint8(0))
	f.Add([]byte("\u6c34\x1b[1;1H\x1b[2b\x1b7\x1b8\x1b[u"), uint8(0), uint8(3))
	f.Fuzz(func(t *testing.T, output []byte, cols, rows uint8) {
		s := NewScreen(int(cols%100)+1, int(rows%40)+1)
		half := len(output) / 2
		_, _ = s.Write(output[:half])
		s.Resize(int(rows%100)+1, int(cols%40)+1)
		_, _ = s.Write(output[half:])
		if got, want := strings.Count(s.String(), "\n"), int(cols%40); got != want {
			t.Errorf("line feeds in the text = %d, want %d", got, want)
		}
		x, y, _ := s.Cursor()
		if x < 0 || x > int(rows%100) || y < 0 || y > int(cols%40) {
			t.Errorf("cursor at %d, %d outside the screen", x, y)
		}
	})
}

func write(s *Screen, output string) { _, _ = s.Write([]byte(output)) }
