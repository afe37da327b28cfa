package plot

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"

	"pgregory.net/rapid"
)

// jobChart is an invented job in 240 m3: a rate that stops once, a pressure with a peak at its end, densities and a limit.
func jobChart() calc.Chart {
	return calc.Chart{
		Title: "Job against volume", Axis: "pumped", Along: quantity.Volume,
		Curves: []calc.ChartCurve{
			{Name: "pump pressure", Kind: quantity.Pressure, Points: []calc.ChartPoint{{At: 0, Value: 90e5}, {At: 100, Value: 30e5}, {At: 150, Value: 0}, {At: 239, Value: 60e5}, {At: 239.5, Value: 110e5}, {At: 240, Value: 0}}},
			{Name: "at last shoe", Kind: quantity.EMW, Points: []calc.ChartPoint{{At: 0, Value: 1300}, {At: 240, Value: 1480}}},
			{Name: "fracture", Kind: quantity.EMW, Limit: true, Points: []calc.ChartPoint{{At: 0, Value: 1450}, {At: 240, Value: 1450}}},
			{Name: "pumped", Kind: quantity.CementRate, Points: []calc.ChartPoint{{At: 0, Value: 0.02}, {At: 150, Value: 0.02}, {At: 150, Value: 0}, {At: 160, Value: 0}, {At: 160, Value: 0.03}, {At: 240, Value: 0.03}}},
		},
		Marks: []calc.ChartMark{{Name: "tail", At: 100}, {Name: "bump", At: 239}},
	}
}

// burst is an invented load and rating against depth; the rating steps down where a weaker pipe begins.
func burst() calc.Chart {
	return calc.Chart{
		Title: "Burst, gas to surface", Axis: "MD", Along: quantity.Length, Down: true,
		Curves: []calc.ChartCurve{
			{Name: "load", Kind: quantity.Pressure, Points: []calc.ChartPoint{{At: 370, Value: 350e5}, {At: 2150, Value: 120e5}}},
			{Name: "rating", Kind: quantity.Pressure, Limit: true, Points: []calc.ChartPoint{{At: 370, Value: 370e5}, {At: 900, Value: 370e5}, {At: 900, Value: 240e5}, {At: 2150, Value: 240e5}}},
		},
		Marks: []calc.ChartMark{{Name: "18 5/8 shoe", At: 950}},
	}
}

func chartOptions(g canvas.Glyphs) ChartOptions {
	return ChartOptions{
		Glyphs: g, Page: "1 of 2",
		Unit: func(quantity.Kind) string { return "u" },
		Ticks: func(low, high float64, n int, _ quantity.Kind) (ticks []Tick) {
			for i := range n + 1 {
				x := low + (high-low)*float64(i)/float64(n)
				ticks = append(ticks, Tick{x, strconv.FormatFloat(x, 'g', 3, 64)})
			}
			return ticks
		},
		Value: func(x float64, _ quantity.Kind) string { return strconv.FormatFloat(x, 'g', 3, 64) },
		Place: func(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) },
	}
}

func chartPicture(c calc.Chart, o ChartOptions, w, h int) string {
	at := canvas.New(w, h)
	DrawChart(at.All(), c, o)
	return at.Plain()
}

func TestACurveOnItsLimitIsMarkedAndExplained(t *testing.T) {
	for _, c := range []calc.Chart{jobChart(), burst()} {
		got := chartPicture(c, chartOptions(canvas.UnicodeGlyphs()), 60, 26)
		if !strings.Contains(got, "X near a limit") {
			t.Errorf("no crossing:\n%s", got)
		}
	}
	if got := chartPicture(jobChart(), chartOptions(canvas.UnicodeGlyphs()), 60, 16); strings.Contains(got, "X") {
		t.Errorf("a crossing in a panel too flat to tell:\n%s", got)
	}
	c := burst()
	c.Curves[0].Points[0].Value, c.Curves[0].Points[1].Value = 100e5, 120e5
	if got := chartPicture(c, chartOptions(canvas.UnicodeGlyphs()), 60, 20); strings.Contains(got, "X") {
		t.Errorf("a crossing where there is none:\n%s", got)
	}
}

// A constant has its own value for the only number of the scale, however small.
func TestAConstantIsLabelled(t *testing.T) {
	c := jobChart()
	c.Curves = c.Curves[:1]
	c.Curves[0].Points = []calc.ChartPoint{{At: 0, Value: 0}, {At: 240, Value: 0}}
	if got := chartPicture(c, chartOptions(canvas.UnicodeGlyphs()), 60, 12); !strings.Contains(got, "\n0┤ppp") {
		t.Errorf("got\n%s", got)
	}
}

// Single points are drawn once each, in whatever order they come, with nothing between them.
func TestSinglePointsAreNotJoined(t *testing.T) {
	c := jobChart()
	c.Curves = append(c.Curves[:1:1], calc.ChartCurve{Name: "Read", Kind: c.Curves[0].Kind, Single: true,
		Points: []calc.ChartPoint{{At: 240, Value: 60e5}, {At: 0, Value: 90e5}, {At: 100, Value: 75e5}}})
	c.Curves[0].Points = []calc.ChartPoint{{At: 0, Value: 10e5}, {At: 240, Value: 10e5}}
	got := chartPicture(c, chartOptions(canvas.UnicodeGlyphs()), 60, 12)
	if n := strings.Count(strings.Join(strings.Split(got, "\n")[3:], "\n"), "r"); n != 3 {
		t.Errorf("%d letters for three readings:\n%s", n, got)
	}
}

// A peak between two columns is drawn all the same.
func TestAPeakIsNotLost(t *testing.T) {
	s := series{points: jobChart().Curves[0].Points}
	if got := s.between(236, 240.5); len(got) == 0 || got[len(got)-1] != 110e5 {
		t.Errorf("got %v, want the peak of 110e5 among them", got)
	}
}

func TestSeriesBetweenPoints(t *testing.T) {
	s := series{points: jobChart().Curves[3].Points}
	for _, test := range []struct {
		at, want float64
		ok       bool
	}{{-1, 0, false}, {0, 0.02, true}, {75, 0.02, true}, {150, 0, true}, {155, 0, true}, {160, 0.03, true}, {240, 0.03, true}, {241, 0, false}} {
		if got, ok := s.at(test.at); got != test.want || ok != test.ok {
			t.Errorf("at(%g) = %g, %v, want %g, %v", test.at, got, ok, test.want, test.ok)
		}
	}
}

func TestEveryCurveHasItsOwnLetter(t *testing.T) {
	var taken []rune
	for _, name := range []string{"pump pressure", "pressure", "rate", "return", "Level", "12 1/4", "ECD", "x", "depth"} {
		letter := letterFor(name, taken)
		if strings.ContainsRune(string(taken), letter) || letter == 'x' {
			t.Errorf("%s gets %q, taken are %q", name, letter, string(taken))
		}
		taken = append(taken, letter)
	}
}

// Panels stand below each other with their units, and the cursor is seen in ASCII too.
func TestPanelsHaveTheirOwnScale(t *testing.T) {
	o := chartOptions(canvas.ASCIIGlyphs())
	o.Cursor, o.HasCursor = 120, true
	got := chartPicture(jobChart(), o, 60, 20)
	for _, text := range []string{"pressure u", "EMW u", "pump rate u", "pumped u", "1.1e+07", "1.48e+03", "0.03", "tail", "F fracture", "v", "^"} {
		if !strings.Contains(got, text) {
			t.Errorf("no %q in\n%s", text, got)
		}
	}
	for _, ch := range got {
		if ch > 126 {
			t.Fatalf("%q in\n%s", ch, got)
		}
	}
}

// Whatever the numbers and the size, a chart stays in its region.
func TestChartsStayInTheirRegion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.Float64Range(-10, 9000), rapid.Float64(), rapid.Just(math.NaN()), rapid.Just(math.Inf(-1)))
		c := calc.Chart{Title: "any", Axis: "axis", Down: rapid.Bool().Draw(t, "down")}
		for range rapid.IntRange(0, 5).Draw(t, "curves") {
			curve := calc.ChartCurve{Name: "c", Kind: rapid.SampledFrom(quantity.Kinds()).Draw(t, "kind"), Limit: rapid.Bool().Draw(t, "limit")}
			for range rapid.IntRange(0, 5).Draw(t, "points") {
				curve.Points = append(curve.Points, calc.ChartPoint{At: number.Draw(t, "at"), Value: number.Draw(t, "value")})
			}
			c.Curves = append(c.Curves, curve)
		}
		c.Marks = []calc.ChartMark{{Name: "mark", At: number.Draw(t, "mark")}, {Name: "another", At: number.Draw(t, "mark")}}
		o := chartOptions(canvas.UnicodeGlyphs())
		o.HasCursor, o.Cursor = rapid.Bool().Draw(t, "cursor"), number.Draw(t, "place")
		w, h := rapid.IntRange(0, 70).Draw(t, "w"), rapid.IntRange(0, 40).Draw(t, "h")
		at := canvas.New(w+2, h+2)
		at.All().Fill('@', canvas.Plain)
		DrawChart(at.All().Sub(1, 1, w, h), c, o)
		lines := strings.Split(at.Plain(), "\n")
		for y, l := range lines {
			row := []rune(l)
			if len(row) != w+2 || row[0] != '@' || row[w+1] != '@' || (y == 0 || y == h+1) && strings.Trim(l, "@") != "" {
				t.Fatalf("row %d is %q", y, l)
			}
		}
	})
}

func BenchmarkDrawChart(b *testing.B) {
	c, o := jobChart(), chartOptions(canvas.UnicodeGlyphs())
	for i := range c.Curves {
		first := c.Curves[i].Points
		c.Curves[i].Points = nil
		for k := range 300 {
			c.Curves[i].Points = append(c.Curves[i].Points, calc.ChartPoint{At: 240 * float64(k) / 300, Value: first[0].Value * (1 + math.Sin(float64(k)/30))})
		}
	}
	at := canvas.New(40, 32)
	b.ReportAllocs()
	for b.Loop() {
		DrawChart(at.All(), c, o)
	}
}
