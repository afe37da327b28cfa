package plot

import (
	"math"
	"slices"
	"testing"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/vector"
	"borewalk/ui/vector/vectortest"

	"pgregory.net/rapid"
)

func drawnChart(t interface {
	Helper()
	Fatal(...any)
}, c calc.Chart, w, h float64) *vectortest.Record {
	t.Helper()
	d, ok := ChartDrawing(c, chartOptions(canvas.ASCIIGlyphs()), w, h)
	if !ok {
		t.Fatal("nothing is drawn")
	}
	r := new(vectortest.Record)
	d.Draw(r)
	return r
}

// TestAChartOnPaperExplainsItself: names, marks and limits are there, dashed and told apart, and nothing lies on anything.
func TestAChartOnPaperExplainsItself(t *testing.T) {
	for name, c := range map[string]calc.Chart{"job": jobChart(), "burst": burst()} {
		r := drawnChart(t, c, 178, 100)
		if fault := r.Fault(178, 100); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
		var texts []string
		for _, text := range r.Texts {
			texts = append(texts, text.Text)
		}
		for _, curve := range c.Curves {
			if !slices.Contains(texts, curve.Name) {
				t.Errorf("%s: %s is not explained: %q", name, curve.Name, texts)
			}
		}
	}
	if r := drawnChart(t, burst(), 178, 100); !slices.ContainsFunc(r.Texts, func(x vectortest.Text) bool { return x.Text == "18 5/8 shoe  950" }) {
		t.Error("the shoe is not named")
	}
}

// TestDeeperIsLowerInAChart: a curve against depth runs down, one of a job to the right.
func TestDeeperIsLowerInAChart(t *testing.T) {
	longest := func(r *vectortest.Record, points int) []vector.Point {
		for _, line := range r.Lines {
			if len(line) == points {
				return line
			}
		}
		t.Fatalf("no line of %d points", points)
		return nil
	}
	rating := longest(drawnChart(t, burst(), 178, 100), 4)
	if !(rating[0].Y < rating[1].Y && rating[1].Y == rating[2].Y && rating[2].X < rating[1].X) {
		t.Errorf("the rating steps %v", rating)
	}
	pressure := longest(drawnChart(t, jobChart(), 178, 100), 6)
	if !(pressure[0].X < pressure[1].X && pressure[1].Y > pressure[0].Y) {
		t.Errorf("the pressure runs %v", pressure)
	}
}

// TestAGapStaysAGap: nothing is drawn across a value that is none.
func TestAGapStaysAGap(t *testing.T) {
	c := burst()
	c.Curves[0].Points = []calc.ChartPoint{{At: 370, Value: 1e7}, {At: 500, Value: 2e7}, {At: 600, Value: math.NaN()}, {At: 700, Value: 2e7}, {At: 900, Value: 3e7}}
	d := &charting{Chart: c, ChartOptions: chartOptions(canvas.ASCIIGlyphs())}
	d.read()
	r := new(vectortest.Record)
	p := &paper{charting: d, on: r, w: 100, h: 100, pens: pens(d.panels)}
	p.curves(&frame{&d.panels[0], 0, 0, 100, 100}, p.pens[0])
	if n := []int{len(r.Lines[0]), len(r.Lines[1])}; !slices.Equal(n, []int{2, 2}) {
		t.Errorf("lines of %v points, want two of two", n)
	}
	for k, s := range r.Strokes {
		if limit := k == 2; limit != (len(s.Dash) > 0) {
			t.Errorf("line %d is drawn with %v", k, s)
		}
	}
}

// TestAnyChartStaysOnItsPaper, whatever its numbers.
func TestAnyChartStaysOnItsPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.Float64Range(-1000, 9000), rapid.Float64())
		c := calc.Chart{Title: "any", Axis: "at", Along: quantity.Length, Down: rapid.Bool().Draw(t, "down")}
		for range rapid.IntRange(0, 8).Draw(t, "curves") {
			curve := calc.ChartCurve{Name: rapid.SampledFrom([]string{"", "load", "a rating that is weaker below"}).Draw(t, "name"),
				Kind:  rapid.SampledFrom([]quantity.Kind{quantity.Pressure, quantity.EMW, quantity.Flow}).Draw(t, "kind"),
				Limit: rapid.Bool().Draw(t, "limit"), Single: rapid.Bool().Draw(t, "single")}
			for range rapid.IntRange(0, 6).Draw(t, "points") {
				curve.Points = append(curve.Points, calc.ChartPoint{At: number.Draw(t, "at"), Value: number.Draw(t, "value")})
			}
			c.Curves = append(c.Curves, curve)
		}
		for range rapid.IntRange(0, 12).Draw(t, "marks") {
			c.Marks = append(c.Marks, calc.ChartMark{Name: "shoe", At: number.Draw(t, "mark")})
		}
		d, ok := ChartDrawing(c, chartOptions(canvas.ASCIIGlyphs()), 178, 90)
		if !ok {
			return
		}
		r := new(vectortest.Record)
		d.Draw(r)
		for _, shape := range append(r.Lines, r.Areas...) {
			for _, at := range shape {
				if !(at.X > -2 && at.X < 180 && at.Y > -2 && at.Y < 92) {
					t.Fatalf("a line goes to %v", at)
				}
			}
		}
	})
}
