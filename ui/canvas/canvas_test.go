package canvas

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestTextClipsAndCountsColumns(t *testing.T) {
	for _, test := range []struct {
		name, text string
		x          int
		want       string
		end        int
	}{
		{"plain", "mud", 1, " mud", 4},
		{"cut at the right", "casing", 4, "    ca", 6},
		{"cut at the left", "casing", -2, "sing", 4},
		{"outside", "casing", 9, "", 6},
		{"wide", "深度m", 0, "深度m", 5},
		{"wide over the right edge", "a深", 4, "    a", 6},
		{"wide over the left edge", "深a", -1, " a", 2},
		{"ambiguous counts one", "°±·×", 0, "°±·×", 4},
		{"combining is dropped", "e\u0301a", 0, "ea", 2},
		{"escape is dropped", "\x1b[31mx", 0, "[31mx", 5},
		{"direction marks are dropped", "a\u202eb\u2066c", 0, "abc", 3},
	} {
		c := New(6, 1)
		if end := c.All().Text(test.x, 0, test.text, Plain); end != test.end {
			t.Errorf("%s: Text ends at %d, want %d", test.name, end, test.end)
		}
		if got := c.Plain(); got != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}

func TestHalfOfAWideCharacterBecomesBlank(t *testing.T) {
	c := New(4, 1)
	r := c.All()
	r.Text(0, 0, "深度", Plain)
	r.Put(1, 0, 'a', Plain)
	r.Put(2, 0, 'b', Plain)
	if got := c.Plain(); got != " ab" {
		t.Errorf("overwritten halves: %q, want %q", got, " ab")
	}
}

func TestTextRightNeverCutsANumber(t *testing.T) {
	c := New(8, 2)
	c.All().TextRight(1, 0, 6, "2155", Plain)
	c.All().TextRight(1, 1, 3, "2155", Plain)
	if got, want := c.Plain(), "   2155\n ###"; got != want {
		t.Errorf("TextRight: %q, want %q", got, want)
	}
}

func TestSubIsCutToItsParent(t *testing.T) {
	c := New(5, 3)
	r := c.All().Sub(1, 1, 3, 1)
	r.Sub(-2, -2, 99, 99).Fill('x', Plain)
	r.Sub(7, 0, 2, 2).Fill('y', Plain)
	r.VLine(0, -3, 99, '|', Plain)
	if got, want := c.Plain(), "\n |xx\n"; got != want {
		t.Errorf("nested regions: %q, want %q", got, want)
	}
}

func TestRenderWritesColourOnlyWhereItChanges(t *testing.T) {
	c := New(12, 2)
	r := c.All()
	r.Text(0, 0, "ok", OK)
	r.Text(3, 0, "so", OK)
	r.Text(5, 0, "x", Stop)
	r.Text(6, 0, "y", Plain)
	r.Text(0, 1, "> a ", Focus)
	r.Text(4, 1, "!", Caution)
	for _, test := range []struct {
		colours int
		want    string
	}{
		{0, "ok soxy\n> a !"},
		{16, "\x1b[32mok so\x1b[31mx\x1b[my\n\x1b[7m> a \x1b[0;33m!\x1b[m"},
	} {
		if got := c.Render(NewPalette(test.colours)); got != test.want {
			t.Errorf("%d colours: %q, want %q", test.colours, got, test.want)
		}
	}
}

// A colour before a reversed or underlined text is not that text's.
func TestRenderEndsAColourBeforeAnotherLook(t *testing.T) {
	c := New(4, 1)
	c.All().Text(0, 0, "a", OK)
	c.All().Text(1, 0, "b", Focus)
	c.All().Text(2, 0, "c", Entry)
	c.All().Text(3, 0, "d", Stop)
	if got, want := c.Render(NewPalette(16)), "\x1b[32ma\x1b[0;7mb\x1b[0;4mc\x1b[0;31md\x1b[m"; got != want {
		t.Errorf("renders %q, want %q", got, want)
	}
}

func TestPaletteKeepsToReadableAccents(t *testing.T) {
	for style, code := range NewPalette(16).codes {
		switch code {
		case 0, underline, reverse, red, green, yellow, magenta, cyan:
		default:
			t.Errorf("style %d has SGR %d: want the terminal's own look or a basic colour that is not blue", style, code)
		}
	}
}

func TestResizeBlanksAndKeepsOldRegionsHarmless(t *testing.T) {
	c := New(9, 4)
	old := c.All()
	old.Fill('x', Focus)
	c.Resize(3, 2)
	if got := c.Plain(); got != "\n" {
		t.Errorf("after Resize: %q, want two empty lines", got)
	}
	old.Fill('y', Plain)
	if got := c.Plain(); got != "yyy\nyyy" {
		t.Errorf("an old region drew %q, want %q", got, "yyy\nyyy")
	}
	c.Resize(-1, 5)
	if got := c.Plain(); strings.Trim(got, "\n") != "" {
		t.Errorf("no columns: %q, want nothing but line ends", got)
	}
}

// Whatever is written, every line keeps to the width and the lines keep to the height.
func TestNothingLeavesTheCanvas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(0, 12).Draw(t, "w"), rapid.IntRange(1, 5).Draw(t, "h")
		c := New(w, h)
		place := rapid.IntRange(-6, 15)
		for range rapid.IntRange(0, 8).Draw(t, "writes") {
			r := c.All().Sub(place.Draw(t, "sx"), place.Draw(t, "sy"), place.Draw(t, "sw"), place.Draw(t, "sh"))
			text := rapid.String().Draw(t, "text")
			style := Style(rapid.IntRange(0, int(styles)-1).Draw(t, "style"))
			r.Text(place.Draw(t, "x"), place.Draw(t, "y"), text, style)
			r.TextRight(place.Draw(t, "x"), place.Draw(t, "y"), place.Draw(t, "n"), text, style)
		}
		lines := strings.Split(c.Plain(), "\n")
		if len(lines) != h {
			t.Fatalf("%d lines, want %d", len(lines), h)
		}
		for _, line := range lines {
			if Width(line) > w || strings.HasSuffix(line, " ") {
				t.Fatalf("line %q is %d columns wide, want at most %d and no blank at its end", line, Width(line), w)
			}
		}
		if escaped := c.Render(NewPalette(16)); strings.Count(escaped, "\n") != h-1 {
			t.Fatalf("coloured lines differ from plain ones: %q", escaped)
		}
	})
}

func TestClip(t *testing.T) {
	for _, test := range []struct {
		text string
		w    int
		want string
	}{{"casing", 3, "cas"}, {"深度", 3, "深"}, {"ab", 9, "ab"}, {"ab", 0, ""}, {"ab", -1, ""}} {
		if got := Clip(test.text, test.w); got != test.want {
			t.Errorf("Clip(%q, %d) = %q, want %q", test.text, test.w, got, test.want)
		}
	}
}

func TestSqueezeKeepsTheLastWord(t *testing.T) {
	for _, test := range []struct {
		text string
		w    int
		want string
	}{
		{"Bottoms-up, rig", 15, "Bottoms-up, rig"}, {"Bottoms-up, rig", 11, "Bottom. rig"}, {"Bottoms-up, BOP", 11, "Bottom. BOP"},
		{"Displaced, open", 12, "Displa. open"}, {"Weight in air", 11, "Weight. air"}, {"Inclination", 5, "Incli"},
		{"Volume, washed out", 9, "Volu. out"}, {"深度深度 shoe", 10, "深度. shoe"}, {"to something", 8, "to somet"}, {"", 0, ""}, {"a b", -1, ""},
	} {
		got := Squeeze(test.text, test.w)
		if got != test.want || Width(got) > max(test.w, 0) {
			t.Errorf("Squeeze(%q, %d) = %q, want %q", test.text, test.w, got, test.want)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	c, p := New(140, 40), NewPalette(16)
	r := c.All()
	for y := range r.H() {
		r.HLine(0, y, 30, '░', Rock)
		r.Text(32, y, "Top of lead      7200 ft", Style(y%int(styles)))
		r.Text(70, y, "Slurry volume", Plain)
		r.TextRight(90, y, 12, "412.0 bbl", OK)
		r.Put(104, y, '│', Plain)
	}
	b.ReportAllocs()
	for b.Loop() {
		c.Render(p)
	}
}

func BenchmarkText(b *testing.B) {
	r := New(140, 1).All()
	b.ReportAllocs()
	for b.Loop() {
		r.Text(0, 0, "Top of lead │ 7200 ft │ 412.0 m³", Plain)
	}
}
