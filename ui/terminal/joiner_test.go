package terminal

import (
	"bytes"
	"io"
	"regexp"
	"strings"
	"testing"
	"time"
)

// line plays what comes in, piece by piece. A late piece comes after the time of patience, a piece that is too late, after
// twice that.
type line struct {
	t      testing.TB
	pieces []piece
	clock  time.Time
}

type piece struct {
	bytes string
	gap   time.Duration // before it
}

const (
	soon    = patience / 2
	late    = patience * 3 / 2 // after patience ran out, and within that time again
	tooLate = patience * 4
)

// now is the time by which everything handed over has come.
func (l *line) now() time.Time { return l.clock }

// Read hands over the next piece, or what fits of it.
func (l *line) Read(p []byte) (int, error) {
	if len(l.pieces) == 0 {
		return 0, io.EOF
	}
	first := &l.pieces[0]
	l.clock = l.clock.Add(first.gap)
	first.gap = 0
	n := copy(p, first.bytes)
	if first.bytes = first.bytes[n:]; first.bytes == "" {
		l.pieces = l.pieces[1:]
	}
	return n, nil
}

// ready lets the time pass that it waits.
func (l *line) ready(wait time.Duration) bool {
	if wait != patience {
		l.t.Errorf("waits %v, want %v", wait, patience)
	}
	if len(l.pieces) == 0 {
		return true // the end is there to be read
	}
	first := &l.pieces[0]
	if first.gap > wait {
		first.gap -= wait
		l.clock = l.clock.Add(wait)
		return false
	}
	return true
}

// reads returns what each read gives, up to the end.
func reads(t testing.TB, pieces ...piece) []string {
	l := &line{t: t, pieces: pieces}
	j := &joiner{from: l, now: l.now}
	var got []string
	for {
		p := make([]byte, 256) // the size that bubbletea reads with
		n, err := j.Read(p)
		if n > 0 {
			got = append(got, string(p[:n]))
		}
		if err != nil {
			return got
		}
	}
}

// keyboards has what terminals send and bubbletea v1.3.10 knows.
var keyboards = []struct{ name, bytes string }{
	{"letter", "a"}, {"enter", "\r"}, {"backspace", "\x7f"}, {"ctrl+a", "\x01"}, {"null", "\x00"},
	{"two bytes", "\u00f8"}, {"three bytes", "\u6c34"}, {"four bytes", "\U0001f6e2"},
	{"alt+letter", "\x1bx"}, {"alt+enter", "\x1b\r"}, {"alt+two bytes", "\x1b\u00f8"},
	{"up", "\x1b[A"}, {"alt+up of some", "\x1b\x1b[A"}, {"up of PowerShell", "\x1bOA"}, {"F1", "\x1bOP"},
	{"ctrl+right", "\x1b[1;5C"}, {"ctrl+shift+home", "\x1b[1;6H"}, {"shift+tab", "\x1b[Z"},
	{"insert", "\x1b[2~"}, {"delete", "\x1b[3~"}, {"F12", "\x1b[24~"}, {"alt+F12", "\x1b[24;3~"},
	{"F1 of the Linux console", "\x1b[[A"}, {"shift+up of some", "\x1b[OA"}, {"ctrl+up of rxvt", "\x1b[Oa"},
	{"shift+home of rxvt", "\x1b[7$"}, {"shift+end of rxvt", "\x1b[8$"}, {"ctrl+home of rxvt", "\x1b[7^"},
	{"ctrl+shift+end of rxvt", "\x1b[8@"},
	{"mouse", "\x1b[<0;132;43M"}, {"mouse released", "\x1b[<0;132;43m"}, {"mouse of old", "\x1b[M !!"},
	{"focus", "\x1b[I"}, {"unknown", "\x1b[?1;2c"}, {"mode report", "\x1b[?2026;2$y"}, {"unknown and alt", "\x1b[99;3~"},
}

// TestSplitAnywhere splits each key everywhere, into two pieces and into bytes; other keys come before and after in the
// same pieces. There must be one read with all of them.
func TestSplitAnywhere(t *testing.T) {
	for _, k := range keyboards {
		for cut := range len(k.bytes) {
			got := reads(t, piece{"12" + k.bytes[:cut], 0}, piece{k.bytes[cut:], soon})
			if cut == 0 {
				got = []string{strings.Join(got, "")} // between keys there is nothing to join
			}
			if len(got) != 1 || got[0] != "12"+k.bytes {
				t.Errorf("%s, cut at %d: reads %q, want one of %q", k.name, cut, got, "12"+k.bytes)
			}
		}
		var bytes []piece
		for i := range len(k.bytes) {
			bytes = append(bytes, piece{k.bytes[i : i+1], soon})
		}
		if got := reads(t, bytes...); len(got) != 1 || got[0] != k.bytes {
			t.Errorf("%s, in bytes: reads %q, want one of %q", k.name, got, k.bytes)
		}
	}
}

// TestNoWaiting sees that whole keys, and pastes, are handed on at once, so that nothing but a split key costs time.
func TestNoWaiting(t *testing.T) {
	for _, k := range keyboards {
		if got := reads(t, piece{k.bytes, 0}, piece{"7", soon}); len(got) != 2 || got[0] != k.bytes {
			t.Errorf("%s: reads %q, want %q and %q", k.name, got, k.bytes, "7")
		}
	}
	got := reads(t, piece{"\x1b[200~7200\x1b", 0}, piece{"[", soon}, piece{"\xc3", soon}, piece{"\x1b[201~x", soon})
	if len(got) != 4 {
		t.Errorf("paste: reads %q, want the four pieces", got)
	}
}

// TestLate has pieces that come after the time of patience.
func TestLate(t *testing.T) {
	for _, c := range []struct {
		name   string
		pieces []piece
		want   []string
	}{
		{"a lone esc", []piece{{"\x1b", 0}, {"x", late}}, []string{"\x1b", "x"}},
		{"esc, then a bracket", []piece{{"\x1b", 0}, {"[", late}}, []string{"\x1b", "["}},
		{"esc twice", []piece{{"\x1b\x1b", 0}, {"x", late}}, []string{"\x1b\x1b", "x"}},
		{"esc three times", []piece{{"\x1b\x1b\x1b", 0}, {"x", late}}, []string{"\x1b\x1b\x1b", "x"}},
		{"three esc and an arrow", []piece{{"\x1b\x1b\x1b", 0}, {"[A", soon}}, []string{"\x1b\x1b\x1b[A"}},
		{"alt and bracket", []piece{{"7\x1b[", 0}, {"8", tooLate}}, []string{"7", "8"}},
		{"alt and O", []piece{{"7\x1bO", 0}, {"8", tooLate}}, []string{"7", "8"}},
		{"alt and O, then a key at once", []piece{{"7\x1bOx8", 0}}, []string{"78"}},
		{"alt and bracket, then enter", []piece{{"7\x1b[\r", 0}}, []string{"7\r"}},
		{"alt and O, then enter", []piece{{"7\x1bO\r", 0}}, []string{"7\r"}},
		{"lost end", []piece{{"7\x1b[1;", 0}, {"8", tooLate}}, []string{"7", "8"}},
		{"late end", []piece{{"7\x1b[1;", 0}, {"5C8", late}}, []string{"7", "8"}},
		{"late end in pieces", []piece{{"7\x1b[1", 0}, {";5", late}, {"C8", late}}, []string{"7", "8"}},
		{"late end of a mouse report", []piece{{"\x1b[M", 0}, {" !!8", late}}, []string{"8"}},
		{"late letter of the Linux console", []piece{{"\x1b[[", 0}, {"A8", late}}, []string{"8"}},
		{"late end of F1", []piece{{"\x1bO", 0}, {"P8", late}}, []string{"8"}},
		{"a key for an end", []piece{{"\x1b[1;", 0}, {"\x1b[A8", late}}, []string{"\x1b[A8"}},
		{"focus lost", []piece{{"\x1b[O", 0}, {"x", late}}, []string{"\x1b[O", "x"}},
		{"focus lost, then a key", []piece{{"\x1b[O7", 0}}, []string{"\x1b[O7"}},
		{"half a letter", []piece{{"\xe6\xb0", 0}, {"x", late}}, []string{"\xe6\xb0", "x"}},
		{"half a letter, then a key", []piece{{"\xe6\xb0x", 0}}, []string{"\xe6\xb0x"}},
		{"broken by a key", []piece{{"\x1b[1;\x1b[B", 0}}, []string{"\x1b[B"}},
		{"broken by a letter", []piece{{"\x1b[1;\u00f87", 0}}, []string{"\u00f87"}},
		{"keypad of old", []piece{{"7\x1bOM\x1bOp8", 0}}, []string{"78"}},
		{"F1 with parameters", []piece{{"7\x1bO5P8", 0}}, []string{"78"}},
		{"unknown on the Linux console", []piece{{"7\x1b[[Z8", 0}}, []string{"78"}},
		{"esc and paste", []piece{{"7\x1b\x1b[200~x\x1b[201~8", 0}}, []string{"7\x1b[200~x\x1b[201~8"}},
		{"late beginning of a paste", []piece{{"\x1b[20", 0}, {"0~", late}, {"\x1b[1;", 0}, {"8", tooLate}}, []string{"8"}},
		{"end of paste split", []piece{{"\x1b[200~x\x1b[20", 0}, {"1~", tooLate}, {"\x1b[1;", 0}, {"5C", soon}},
			[]string{"\x1b[200~x\x1b[20", "1~", "\x1b[1;5C"}},
		{"long paste", []piece{{"\x1b[200~" + strings.Repeat("7", 100) + "\x1b[201~x", 0}}, []string{"\x1b[200~" + strings.Repeat("7", 100) + "\x1b[201~x"}},
		{"end of paste after esc", []piece{{"\x1b[200~\x1b\x1b[201~\x1b", 0}, {"[A", soon}}, []string{"\x1b[200~\x1b\x1b[201~\x1b[A"}},
		{"too long for a key", []piece{{"7\x1b[" + strings.Repeat("1;", 20) + "A8", 0}}, []string{"78"}},
		{"longer than the buffer", []piece{{"7\x1b[" + strings.Repeat("1;", 300) + "A8", 0}}, []string{"7", "8"}},
	} {
		got := reads(t, c.pieces...)
		if strings.Join(got, "|") != strings.Join(c.want, "|") {
			t.Errorf("%s: reads %q, want %q", c.name, got, c.want)
		}
	}
}

// TestFullBuffer types so far ahead that the buffer of bubbletea ends within a key.
func TestFullBuffer(t *testing.T) {
	for lead := range 6 {
		typed := strings.Repeat("7", lead) + strings.Repeat("\x1b[1;5C", 200)
		got := reads(t, piece{typed, 0})
		for _, read := range got {
			if !strings.HasSuffix(read, "C") {
				t.Errorf("after %d digits a read ends with %q, want whole keys", lead, read[max(0, len(read)-6):])
			}
			if len(read) >= 256 {
				t.Errorf("a read fills the buffer, after which bubbletea expects the rest of a key")
			}
		}
		if strings.Join(got, "") != typed {
			t.Errorf("after %d digits keys are lost", lead)
		}
	}
}

// TestShortBuffer has no room to join keys, and gives the bytes as they come.
func TestShortBuffer(t *testing.T) {
	l := &line{t: t, pieces: []piece{{"\x1b[1;", 0}, {"5C", soon}}}
	got, err := io.ReadAll(oneByte{&joiner{from: l, now: l.now}})
	if err != nil || string(got) != "\x1b[1;5C" {
		t.Errorf("reads %q, %v, want all bytes", got, err)
	}
}

// oneByte reads one byte at a time.
type oneByte struct{ from io.Reader }

func (r oneByte) Read(p []byte) (int, error) { return r.from.Read(p[:1]) }

// unfinishedEnd finds a piece of a sequence at the end of a read.
var unfinishedEnd = regexp.MustCompile(`(\x1b\[([0-?]*[ -/]*|\[|M)|\x1bO[0-;]*|\x1b)$`)

// endsInside reports whether a read ends with a piece of a sequence. Home and End of rxvt are replaced first, since they
// look like one; two ESC are a key.
func endsInside(read string) bool {
	read = strings.NewReplacer("\x1b[7$", "$", "\x1b[8$", "$").Replace(read)
	tail := unfinishedEnd.FindString(read)
	if tail == "\x1b" {
		return (len(read)-len(strings.TrimRight(read, "\x1b")))%2 == 1
	}
	return tail != ""
}

// FuzzJoiner splits any bytes in any way and lets them come soon, late or too late.
func FuzzJoiner(f *testing.F) {
	for _, k := range keyboards {
		f.Add([]byte("7"+k.bytes+"8"), []byte{1, 2})
	}
	f.Add([]byte("\x1b[200~a\x1b[201~\x1b[1;5C\x1bO\x1b\x1b\x1b[A"), []byte{3, 0x42, 1, 0x81})
	f.Add([]byte("\x1b\x1b\x1b[[3\x1b[[3~"), []byte{1, 2})
	f.Fuzz(func(t *testing.T, input, cuts []byte) {
		slow := strings.Join(reads(t, split(input, cuts, []time.Duration{soon, late, tooLate, 0})...), "")
		if !within(slow, string(input)) {
			t.Errorf("%q gives %q, which is not a part of it", input, slow)
		}
		if len(input) > 200 {
			return // a buffer may end among a run of ESC, of which each pair may be the beginning of something
		}
		whole := strings.Join(reads(t, piece{string(input), 0}), "")
		prompt := reads(t, split(input, cuts, []time.Duration{soon})...)
		if got := strings.Join(prompt, ""); got != whole {
			t.Errorf("split, %q gives %q, want %q as in one piece", input, got, whole)
		}
		if !bytes.Contains(input, []byte("\x1b[")) && !bytes.Contains(input, []byte("\x1bO")) && whole != string(input) {
			t.Errorf("%q gives %q, want the same: no sequence is in it", input, whole)
		}
		if whole == string(input) && !bytes.Contains(input, []byte("\x1b[200~")) { // else the reads' ends prove nothing
			for i, read := range prompt {
				if i < len(prompt)-1 && endsInside(read) {
					t.Errorf("%q: read %q ends inside a sequence", input, read)
				}
			}
		}
	})
}

// split cuts the input into pieces: the low six bits of each cut are a length, the high two choose a gap.
func split(input, cuts []byte, gaps []time.Duration) []piece {
	var pieces []piece
	for _, c := range cuts {
		n := min(int(c&0x3f), len(input))
		if n > 0 {
			pieces = append(pieces, piece{string(input[:n]), gaps[int(c>>6)%len(gaps)]})
			input = input[n:]
		}
	}
	if len(input) > 0 {
		pieces = append(pieces, piece{string(input), 0})
	}
	return pieces
}

// within reports whether the bytes of part appear in whole in their order.
func within(part, whole string) bool {
	for i := 0; i < len(whole) && part != ""; i++ {
		if whole[i] == part[0] {
			part = part[1:]
		}
	}
	return part == ""
}
