package canvas

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/ui/ptytest"
)

// differ returns where two screens differ.
func differ(a, b *ptytest.Screen, w, h int) string {
	for y := range h {
		for x := range w {
			if got, want := visible(a.Cell(x, y)), visible(b.Cell(x, y)); got != want {
				return fmt.Sprintf("column %d of line %d: %+v, want %+v", x, y, got, want)
			}
		}
	}
	return ""
}

// visible leaves out the colour of a blank, which nobody sees.
func visible(c ptytest.Cell) ptytest.Cell {
	if c.Text == " " && !c.Look.Reverse && !c.Look.Underline {
		return ptytest.Cell{Text: " "}
	}
	return c
}

// whole returns a screen on which a frame was painted at once.
func whole(f *Frame, w, h int) *ptytest.Screen {
	s := ptytest.NewScreen(w, h)
	_, _ = s.Write(new(Painter).Paint(f))
	return s
}

// scribble draws anything anywhere.
func scribble(t *rapid.T, c *Canvas) {
	place := rapid.IntRange(-2, 24)
	for range rapid.IntRange(1, 6).Draw(t, "writes") {
		text := rapid.StringOf(rapid.SampledFrom([]rune("  ab01│░深度ß"))).Draw(t, "text")
		style := Style(rapid.IntRange(0, int(styles)-1).Draw(t, "style"))
		x, y := place.Draw(t, "x"), place.Draw(t, "y")
		if rapid.IntRange(0, 5).Draw(t, "how") == 0 {
			c.All().Sub(x, y, place.Draw(t, "w"), place.Draw(t, "h")).Fill(rapid.SampledFrom([]rune(" x═")).Draw(t, "with"), style)
			continue
		}
		c.All().Text(x, y, text, style)
	}
}

// Any frames of any sizes, painted one over the other by what differs, look as each does when it is painted whole.
func TestDifferencesGiveTheFrame(t *testing.T) { rapid.Check(t, differencesGiveTheFrame) }

func FuzzDifferences(f *testing.F) { f.Fuzz(rapid.MakeFuzz(differencesGiveTheFrame)) }

func differencesGiveTheFrame(t *rapid.T) {
	palette := NewPalette(rapid.SampledFrom([]int{0, 16}).Draw(t, "colours"))
	w, h := 0, 0
	var c Canvas
	var screen *ptytest.Screen
	var painter Painter
	var frame Frame
	for range rapid.IntRange(1, 8).Draw(t, "frames") {
		if screen == nil || rapid.IntRange(0, 4).Draw(t, "resize") == 0 {
			w, h = rapid.IntRange(1, 24).Draw(t, "w"), rapid.IntRange(1, 8).Draw(t, "h")
			c.Resize(w, h)
			if screen == nil {
				screen = ptytest.NewScreen(w, h)
			}
			screen.Resize(w, h)
			painter.Forget() // a terminal that changes its size twice may come back to the old one with less on it
		}
		scribble(t, &c)
		frame.Take(&c, &palette)
		bytes := string(painter.Paint(&frame))
		_, _ = screen.Write([]byte(bytes))
		if where := differ(screen, whole(&frame, w, h), w, h); where != "" {
			t.Fatalf("%s\nafter %q", where, bytes)
		}
		if got, want := screen.String(), c.Plain(); got != want {
			t.Fatalf("the screen shows\n%s\nwant\n%s\nafter %q", got, want, bytes)
		}
		if unknown := screen.Unknown(); len(unknown) > 0 {
			t.Fatalf("the terminal does not know %q", unknown)
		}
		if again := painter.Paint(&frame); len(again) > 0 {
			t.Fatalf("the same frame again sends %q", again)
		}
	}
}

// What a VT100 does not have is never sent.
func TestPainterKeepsToOldSequences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, palette := New(24, 8), NewPalette(16)
		var painter Painter
		var frame Frame
		for range 4 {
			scribble(t, c)
			frame.Take(c, &palette)
			rest := string(painter.Paint(&frame))
			for {
				_, after, found := strings.Cut(rest, "\x1b")
				if !found {
					return
				}
				end := strings.IndexFunc(after, func(r rune) bool { return r != '[' && r != ';' && r != '?' && (r < '0' || r > '9') })
				if after[0] != '[' || !strings.ContainsRune("HBCDJKmhl", rune(after[end])) {
					t.Fatalf("sends ESC %s", after[:end+1])
				}
				rest = after[end+1:]
			}
		}
	})
}

func TestPainterSendsLittle(t *testing.T) {
	palette := NewPalette(16)
	for _, test := range []struct {
		name   string
		before func(Region)
		after  func(Region)
		want   string
	}{
		{"one digit", text(3, 1, "2085.0 m", Plain), text(3, 1, "2095.0 m", Plain), "\x1b[2;6H9"},
		{"a few cells between are written again", text(3, 1, "2085.0 m", Plain), text(3, 1, "1086.0 m", Plain), "\x1b[2;4H1086"},
		{"many are jumped over", text(0, 1, "2085.0 metres", Plain), text(0, 1, "1085.0 metrez", Plain), "\x1b[2H1\x1b[11Cz"},
		{"down a line to its beginning", lines("a", "b"), lines("c", "d"), "\x1b[Hc\r\nd"},
		{"down a line in a column", column(10, "a", "b"), column(10, "c", "d"), "\x1b[1;11Hc\x1b[B\bd"},
		{"the end of a line is erased", text(0, 0, "a long text", Plain), text(0, 0, "a", Plain), "\x1b[1;3H\x1b[K"},
		{"a short end is written over", text(0, 0, "ab", Plain), text(0, 0, "a", Plain), "\x1b[1;2H "},
		{"another style that looks the same", text(0, 0, "ab", Steel), text(0, 0, "ab", Faint), ""},
		{"another look", text(0, 0, "ab", Plain), text(0, 0, "ab", Stop), "\x1b[H\x1b[31mab\x1b[m"},
		{"a look on a blank that nobody sees", text(0, 0, " ", Plain), text(0, 0, " ", Stop), ""},
		{"the last corner", text(19, 3, "a", Plain), text(19, 3, "b", Plain), "\x1b[4;20H\x1b[?7lb\x1b[?7h"},
		{"behind a wide character nothing is taken for sure", text(2, 1, "深度ab", Plain), text(2, 1, "深浅cb", Plain), "\x1b[2;5H浅\x1b[2;7Hc"},
		{"nor over one", text(0, 1, "a深c", Plain), text(0, 1, "b深d", Plain), "\x1b[2Hb\x1b[2Cd"},
		{"over the edge the cursor is astray", text(19, 0, "a", Plain), both(text(19, 0, "b", Plain), text(0, 1, "c", Plain)), "\x1b[1;20Hb\x1b[2Hc"},
	} {
		c := New(20, 4)
		var painter Painter
		var frame Frame
		test.before(c.All())
		frame.Take(c, &palette)
		painter.Paint(&frame)
		painter.y = astray
		c.Resize(20, 4)
		test.after(c.All())
		frame.Take(c, &palette)
		if got := string(painter.Paint(&frame)); got != test.want {
			t.Errorf("%s: sends %q, want %q", test.name, got, test.want)
		}
	}
}

func text(x, y int, s string, style Style) func(Region) {
	return func(r Region) { r.Text(x, y, s, style) }
}

func both(a, b func(Region)) func(Region) {
	return func(r Region) { a(r); b(r) }
}

func lines(ls ...string) func(Region) { return column(0, ls...) }

func column(x int, ls ...string) func(Region) {
	return func(r Region) {
		for y, l := range ls {
			r.Text(x, y, l, Plain)
		}
	}
}

func BenchmarkPaint(b *testing.B) {
	c, palette := New(132, 43), NewPalette(16)
	var painter Painter
	var frame Frame
	numbers := []string{"4000", "4150", "4203"}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		for y := range 43 {
			c.All().TextRight(90, y, 12, numbers[i%len(numbers)], Style(y%int(styles)))
		}
		frame.Take(c, &palette)
		painter.Paint(&frame)
	}
}
