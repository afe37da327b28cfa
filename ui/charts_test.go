package ui_test

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui"
)

// someCharts are invented charts: two of a casing against depth, one of a cement job against volume.
func someCharts(_ *model.Plan, _ int, topic model.Topic) []calc.Chart {
	line := func(name string, kind quantity.Kind, limit bool, points ...calc.ChartPoint) calc.ChartCurve {
		return calc.ChartCurve{Name: name, Kind: kind, Limit: limit, Points: points}
	}
	type at = calc.ChartPoint
	switch topic {
	case model.TopicCasing:
		return []calc.Chart{{
			Key: "casing.burst", Title: "Burst: load and rating", Topic: topic, Axis: "MD", Along: quantity.Length, Down: true,
			Curves: []calc.ChartCurve{
				line("gas to surface", quantity.Pressure, false, at{At: 368, Value: 210e5}, at{At: 2150, Value: 60e5}),
				line("pressure test", quantity.Pressure, false, at{At: 368, Value: 250e5}, at{At: 2150, Value: 240e5}),
				line("rating", quantity.Pressure, true, at{At: 368, Value: 345e5}, at{At: 1100, Value: 345e5}, at{At: 1100, Value: 245e5}, at{At: 2150, Value: 245e5}),
			},
			Marks: []calc.ChartMark{{Name: "18 5/8 shoe", At: 950}},
		}, {
			Key: "casing.axial", Title: "Tension: load and rating", Topic: topic, Axis: "MD", Along: quantity.Length, Down: true,
			Curves: []calc.ChartCurve{
				line("running", quantity.Force, false, at{At: 368, Value: 1.9e6}, at{At: 2150, Value: -0.2e6}),
				line("rating", quantity.Force, true, at{At: 368, Value: 7e6}, at{At: 2150, Value: 7e6}),
			},
		}}
	case model.TopicCement:
		job := someJob()
		chart := calc.Chart{Key: "cement.job", Title: "Job against volume", Topic: topic, Axis: "pumped", Along: quantity.Volume, Curves: []calc.ChartCurve{
			line("pump", quantity.Pressure, false), line("at TD", quantity.EMW, false), line("fracture", quantity.EMW, true),
			line("pumped", quantity.CementRate, false), line("returns", quantity.CementRate, false),
		}}
		for _, f := range job.Frames {
			for i, v := range []float64{f.Pressure, f.EMW[1], job.Points[1].Fracture, f.Rate, f.Returns} {
				chart.Curves[i].Points = append(chart.Curves[i].Points, at{At: f.Pumped, Value: v})
			}
		}
		for _, e := range job.Events[1:] {
			chart.Marks = append(chart.Marks, calc.ChartMark{Name: e.Name, At: job.Frames[e.Frame].Pumped})
		}
		return []calc.Chart{chart}
	}
	return nil
}

// still leaves out of a screen what every new finding changes: their count, and the worst of them.
func still(screen string) string {
	lines := strings.Split(screen, "\n")
	lines[1], lines[len(lines)-2] = "", ""
	if above := &lines[len(lines)-3]; strings.HasPrefix(*above, " caution ") || strings.HasPrefix(*above, " stop ") {
		*above = "" // it takes two lines
	}
	return strings.Join(lines, "\n")
}

func TestGoldenCharts(t *testing.T) {
	options := ui.Options{Charts: someCharts}
	for _, test := range []struct {
		name string
		keys []string
	}{
		{"chart-depth-80", []string{"]]", "page casing", "v", "v"}},
		{"chart-panels-80", []string{"]]", "page cement", "v", "v"}},
	} {
		golden(t, test.name, still(screenOf(t, "ottermast-2", 80, 24, options, test.keys...).View()))
	}
}

func TestTheThirdViewStepsThroughChartsAndTheWindow(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Charts: someCharts}, "]]", "page casing", "v", "v")
	wants(t, p, "Burst: load and rating", "1 of 3", "pressure bar, MD m", "R rating")
	press(p, "left")
	wants(t, p, "this is the first picture")
	press(p, "right")
	wants(t, p, "Tension: load and rating", "2 of 3")
	press(p, "right")
	wants(t, p, "EMW sg, TVD m from RKB", "3 of 3")
	press(p, "right")
	wants(t, p, "this is the last picture")
	press(p, "left", "m")
	wants(t, p, "Tension: load and rating", "MD ft")
	press(p, "tab")                             // the cement page remembers nothing of it
	wants(t, p, "Job against volume", "1 of 5") // the low window shows each kind by itself too
	press(p, "right", "right")
	wants(t, p, "Job against volume: equi", "3 of 5", "F fracture")
	lacks(t, p, "u pumped")
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 40})
	wants(t, p, "2 of 2")
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	press(p, "page well") // the well page has the window only
	wants(t, p, "EMW ppg, TVD ft from RKB")
	lacks(t, p, "left right  ")
	press(p, "right")
	wants(t, p, "EMW ppg, TVD ft from RKB")
}

// Charts are worked out when they are drawn, once for each state of the plan.
func TestChartsAreWorkedOutOnlyWhenSomethingChanged(t *testing.T) {
	calls := 0
	options := ui.Options{Charts: func(plan *model.Plan, section int, topic model.Topic) []calc.Chart {
		calls++
		return someCharts(plan, section, topic)
	}}
	p := screenOf(t, "ottermast-2", 80, 24, options, "]]", "page casing")
	view := func(want int, keys ...string) {
		t.Helper()
		for _, k := range keys {
			press(p, k)
			p.View()
		}
		if calls != want {
			t.Errorf("after %q: %d calls, want %d", keys, calls, want)
		}
	}
	view(0, "down", "up", "v")
	view(1, "v", "right", "left", "m", "right")
	view(2, "tab")
	view(3, "]")
	view(4, "+") // another way of placing the cement
	view(5, "u")
	p.Update(nil)
	view(5, "down")
	p = screenOf(t, "ottermast-2", 140, 40, options, "]]", "page casing")
	calls = 0
	view(0, "down", "down") // turning to the page drew it
	view(1, "+")
	view(1, "down")
	if !strings.Contains(p.View(), "Burst") {
		t.Error("the wide screen does not show the chart beside the figures")
	}
}

func BenchmarkViewWithCharts140x40(b *testing.B) {
	p := screenOf(b, "ottermast-2", 140, 40, ui.Options{Colours: 16, Charts: someCharts}, "]]", "page cement")
	b.ReportAllocs()
	for b.Loop() {
		p.View()
	}
}
