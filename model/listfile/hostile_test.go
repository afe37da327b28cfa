package listfile_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"borewalk/model/jointfile"
	"borewalk/model/pointfile"
	"borewalk/model/quantity"
)

// lists are the readers of lists, with a line that each of them takes.
var lists = []struct {
	name, line string
	size       int
	read       func(src []byte) (n int, err error)
}{
	{"joints", "%d,12.%04d\n", jointfile.MaxSize, func(src []byte) (int, error) {
		joints, err := jointfile.Read("list.csv", src, quantity.Metre)
		return len(joints), err
	}},
	{"readings", "%d L,%04d kPa\n", pointfile.MaxSize, func(src []byte) (int, error) {
		test, err := pointfile.Read("list.csv", src, quantity.System{})
		return len(test.Points), err
	}},
}

// wide returns a text as UTF-16, low byte first, without a mark.
func wide(text string) string {
	var b strings.Builder
	for _, c := range utf16.Encode([]rune(text)) {
		b.WriteByte(byte(c))
		b.WriteByte(byte(c >> 8))
	}
	return b.String()
}

// TestHostileListsAreRefusedInOneLine: whatever stands in a list, the message is one short line that drives no terminal.
func TestHostileListsAreRefusedInOneLine(t *testing.T) {
	const driving = "\x1b[2J\x1b]0;x\a\u009b31m\u202e\u200b\ufeff"
	for _, l := range lists {
		line := func(n int) string { return fmt.Sprintf(l.line, n, n) }
		plain := line(1) + line(2)
		if n, err := l.read([]byte("\ufeff" + strings.ReplaceAll(plain, "\n", "\r\n"))); n != 2 || err != nil {
			t.Fatalf("%s: a plain list gives %d, %v", l.name, n, err)
		}
		if n, err := l.read([]byte(strings.Replace(plain, "\n", "\r\n", 1) + strings.TrimSpace(line(3)))); n != 3 || err != nil {
			t.Errorf("%s: mixed line ends, and none at the end, give %d, %v", l.name, n, err)
		}
		var many strings.Builder
		for n := range 2000 {
			many.WriteString(line(n))
		}
		cases := map[string]string{
			"nothing":                  "",
			"blanks":                   strings.Repeat(" \n", 1000),
			"UTF-16":                   "\xff\xfe" + wide(plain),
			"UTF-16 without a mark":    wide(plain),
			"zero bytes":               plain + "\x00",
			"line ends of old":         strings.ReplaceAll(plain, "\n", "\r"),
			"another code page":        plain + "\xc6\xd8,1\n",
			"too many":                 many.String()[:min(many.Len(), l.size)],
			"too large":                strings.Repeat(plain, l.size/len(plain)+1),
			"one line":                 strings.Repeat("1", l.size),
			"commas":                   "1" + strings.Repeat(",", l.size-2) + "1",
			"quotes":                   strings.Repeat("\"", l.size),
			"an open quote":            plain + "\"" + strings.Repeat("x\n", 1000),
			"escapes in a heading":     driving + "," + driving + " (" + driving + ")\n" + plain,
			"escapes in a number":      plain + "3," + driving + "12\n",
			"escapes alone":            driving + "\n" + driving + "," + driving + "\n",
			"letters without end":      plain + "3," + strings.Repeat("\u0301", 10_000) + "\n",
			"brackets":                 strings.Repeat("(", 10_000) + "," + strings.Repeat("[", 10_000) + "\n" + plain,
			"a unit without end":       "a,b (" + strings.Repeat("m", 10_000) + ")\n" + plain,
			"400 digits":               plain + "3," + strings.Repeat("9", 400) + "\n",
			"a number that is nothing": plain + "3,0.0\n" + "4,-0.0\n4,0.0\n",
		}
		for _, n := range []string{"NaN", "nan m", "+Inf", "-inf kPa", "Infinity", "1e308", "1e-308 m", "1e999999999 m", "0x1p3", "-5", "1_000", "½", "١٢", "1,000,000.5", "--5", "5/0"} {
			cases["the number "+n] = plain + "3 L;" + n + "\n"
			cases["the number "+n+" alone"] = n + "\n"
		}
		for name, text := range cases {
			n, err := l.read([]byte(text))
			if err == nil {
				t.Errorf("%s: %s: is read as %d", l.name, name, n)
				continue
			}
			message := err.Error()
			if !strings.HasPrefix(message, "list.csv:") || len(message) > 500 || n > 0 ||
				strings.ContainsFunc(message, func(r rune) bool {
					return unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == unicode.ReplacementChar
				}) {
				t.Errorf("%s: %s: %d with %q", l.name, name, n, message)
			}
		}
	}
}
