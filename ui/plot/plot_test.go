package plot

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/ui/canvas"

	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the pictures in testdata anew")

// prognosis is the window of an invented well of five sections in deep water, in kg/m3.
func prognosis() Window {
	w := Window{
		Points: []calc.WindowPoint{
			{TVD: 412, Pore: 1000, Fracture: 1010},
			{TVD: 990, Pore: 1030, Fracture: 1290},
			{TVD: 1500, Pore: 1040, Fracture: 1450, Stability: 1080},
			{TVD: 2150, Pore: 1130, Fracture: 1590, Stability: 1220},
			{TVD: 2500, Pore: 1290, Fracture: 1650, Stability: 1310},
			{TVD: 3300, Pore: 1420, Fracture: 1760, Stability: 1430},
			{TVD: 3700, Pore: 1380, Fracture: 1800, Stability: 1400},
		},
		Mud: []MudLine{
			{0, []MudPoint{{412, 1030}, {490, 1035}}},
			{1, []MudPoint{{490, 1030}, {990, 1120}}},
			{2, []MudPoint{{990, 1250}, {2150, 1250}}},
			{3, []MudPoint{{2150, 1450}, {3100, 1450}}},
			{4, []MudPoint{{3100, 1500}, {3700, 1500}}},
		},
		Shoes: []Shoe{{TVD: 487, Label: "30"}, {TVD: 985, Label: "20", Test: 1280}, {TVD: 2100, Label: "13 5/8", Test: 1560},
			{TVD: 3095, Label: "9 5/8", Test: 1700}},
		Section: 3, Top: 412, Bottom: 3700,
		EMW:   func(si float64) string { return strconv.FormatFloat(si/1000, 'f', 2, 64) },
		Depth: func(si float64) string { return strconv.FormatFloat(si, 'f', 0, 64) },
	}
	for emw := 1000.0; emw <= 1800; emw += 200 {
		w.Ticks = append(w.Ticks, Tick{emw, strconv.FormatFloat(emw/1000, 'f', 1, 64)})
	}
	for _, tvd := range []float64{1000, 1500, 2000, 2500, 3000, 3500} {
		w.DepthTicks = append(w.DepthTicks, Tick{tvd, w.Depth(tvd)})
	}
	return w
}

func picture(w Window, g canvas.Glyphs, width, height int) string {
	c := canvas.New(width, height)
	Draw(c.All(), w, g)
	return c.Plain()
}

func TestPictures(t *testing.T) {
	for _, test := range []struct {
		name string
		w, h int
		g    canvas.Glyphs
	}{
		{"window_40x18", 40, 18, canvas.UnicodeGlyphs()},
		{"window_24x8", 24, 8, canvas.UnicodeGlyphs()},
		{"window_ascii_70x24", 70, 24, canvas.ASCIIGlyphs()},
	} {
		path, got := filepath.Join("testdata", test.name+".txt"), picture(prognosis(), test.g, test.w, test.h)+"\n"
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s: got\n%s\nwant\n%s", test.name, got, want)
		}
	}
}

func TestWithoutDataItSaysSo(t *testing.T) {
	for name, w := range map[string]Window{
		"empty":     {},
		"range":     {Top: 400, Bottom: 3000},
		"one point": {Points: []calc.WindowPoint{{TVD: 900, Pore: 1000}}},
		"no number": {Points: []calc.WindowPoint{{TVD: math.NaN(), Pore: 1000}, {TVD: 10, Pore: math.Inf(1)}, {TVD: 20}}},
	} {
		if got := picture(w, canvas.UnicodeGlyphs(), 24, 8); !strings.Contains(got, "no prognosis") {
			t.Errorf("%s: got\n%s\nwant the words that there is no prognosis", name, got)
		}
	}
}

func TestCurveIsLinearBetweenPoints(t *testing.T) {
	w := prognosis()
	limits := w.curves()
	for _, test := range []struct {
		letter rune
		tvd    float64
		want   float64 // 0 for none
	}{
		{poreLetter, 412, 1000},
		{poreLetter, 701, 1015},
		{fractureLetter, 701, 1150},
		{poreLetter, 3700, 1380},
		{poreLetter, 3701, 0},
		{poreLetter, 400, 0},
		{stabilityLetter, 1200, 0}, // none given at the point above
		{stabilityLetter, 1500, 1080},
		{stabilityLetter, 1825, 1150},
	} {
		for _, c := range limits {
			if c.letter != test.letter {
				continue
			}
			if got, ok := c.at(test.tvd); ok != (test.want > 0) || math.Abs(got-test.want) > 1e-9 {
				t.Errorf("%c at %g m = %g, want %g", test.letter, test.tvd, got, test.want)
			}
		}
	}
}

func TestMudOnALimitIsACrossing(t *testing.T) {
	w := Window{
		Points:  []calc.WindowPoint{{TVD: 0, Pore: 1000, Fracture: 2000, Stability: 1000}, {TVD: 100, Pore: 1000, Fracture: 2000, Stability: 1000}},
		Mud:     []MudLine{{0, []MudPoint{{0, 1500}, {49, 1500}}}, {1, []MudPoint{{51, 1000}, {100, 1000}}}},
		Section: 1,
	}
	lines := strings.Split(picture(w, canvas.ASCIIGlyphs(), 31, 11), "\n")
	for row, want := range map[int]string{3: "p m f", 8: "X f"} {
		if got := strings.Join(strings.Fields(strings.Trim(lines[row], "|")), " "); got != want {
			t.Errorf("row %d reads %q, want %q:\n%s", row, got, want, strings.Join(lines, "\n"))
		}
	}
}

func TestDensitiesCoverWhatIsShown(t *testing.T) {
	w := prognosis()
	if low, high, ok := w.Densities(); !ok || low != 1000 || high != 1800 {
		t.Errorf("Densities() = %g, %g, %t, want 1000, 1800, true", low, high, ok)
	}
	w.Top, w.Bottom = 990, 1500 // without the prognosis below
	if low, high, ok := w.Densities(); !ok || low != 1030 || high != 1450 {
		t.Errorf("Densities() from 990 to 1500 m = %g, %g, %t, want 1030, 1450, true", low, high, ok)
	}
}

func TestDrawKeepsToItsRegion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.Float64Range(-10, 5000), rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1)}))
		x := func() float64 { return number.Draw(t, "x") }
		many := func() int { return rapid.IntRange(0, 6).Draw(t, "many") }
		label := rapid.StringN(0, 8, -1)
		w := Window{Section: rapid.IntRange(-1, 4).Draw(t, "section"), Top: x(), Bottom: x()}
		for range many() {
			w.Points = append(w.Points, calc.WindowPoint{TVD: x(), Pore: x(), Fracture: x(), Stability: x()})
		}
		for i := range many() {
			w.Mud = append(w.Mud, MudLine{i, []MudPoint{{x(), x()}, {x(), x()}}})
			w.Shoes = append(w.Shoes, Shoe{x(), label.Draw(t, "label"), x()})
			w.Ticks = append(w.Ticks, Tick{x(), label.Draw(t, "label")})
			w.DepthTicks = append(w.DepthTicks, Tick{x(), label.Draw(t, "label")})
		}
		if rapid.Bool().Draw(t, "numbers") {
			w.EMW, w.Depth = prognosis().EMW, prognosis().Depth
		}
		wide, high := rapid.IntRange(0, 60).Draw(t, "w"), rapid.IntRange(0, 40).Draw(t, "h")
		c := canvas.New(wide+4, high+2)
		c.All().Fill('@', canvas.Plain)
		Draw(c.All().Sub(2, 1, wide, high), w, canvas.ASCIIGlyphs())
		for y, line := range strings.Split(c.Plain(), "\n") {
			if len(line) != wide+4 || line[:2] != "@@" || line[wide+2:] != "@@" {
				t.Fatalf("row %d is %q: the frame around the region is broken", y, line)
			}
			if (y == 0 || y == high+1) && strings.Trim(line, "@") != "" {
				t.Fatalf("row %d is %q: the frame around the region is broken", y, line)
			}
		}
	})
}

func BenchmarkDraw(b *testing.B) {
	w, g := prognosis(), canvas.UnicodeGlyphs()
	c := canvas.New(100, 36)
	b.ReportAllocs()
	for b.Loop() {
		Draw(c.All(), w, g)
	}
}
