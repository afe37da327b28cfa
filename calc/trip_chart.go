package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// tripChartSteps is in how many steps of depth or speed a chart of a trip is drawn.
const tripChartSteps = 24

// swabCharts returns how fast section i's string may be moved by the depth of its bit, what it does to the pressure at TD by
// its speed, and the planned trip in the window.
func (e *evaluation) swabCharts(i int) []Chart {
	m := e.movingString(i)
	if m.missing.open() || !e.sections[i].rig {
		return nil
	}
	charts := []Chart{e.speedByDepth(i, m), e.pressureBySpeed(i, m)}
	if own := &e.plan.Sections[i].Trip; own.SpeedOut.IsSet() && own.SpeedIn.IsSet() {
		charts = append(charts, e.tripInWindow(i, m))
	}
	return charts
}

// speedByDepth draws the fastest speeds out and in against the depth of the bit, and the planned ones.
func (e *evaluation) speedByDepth(i int, m *moving) Chart {
	own := &e.plan.Sections[i].Trip
	c := Chart{Key: "swab.depth", Title: "Fastest trip speed", Topic: model.TopicHydraulics, Axis: "bit", Along: quantity.Length, Down: true}
	out, in := ChartCurve{Name: "Out", Kind: quantity.Velocity, Limit: true}, ChartCurve{Name: "In", Kind: quantity.Velocity, Limit: true}
	top, td := m.at[0].bit, m.at[len(m.at)-1].bit
	for k := range tripChartSteps + 1 {
		bit := top + (td-top)*float64(k)/tripChartSteps
		at, missing := e.bitAt(i, m, bit)
		if missing.open() {
			return Chart{}
		}
		out.Points, in.Points = append(out.Points, ChartPoint{bit, at.out.speed}), append(in.Points, ChartPoint{bit, at.in.speed})
	}
	c.Curves = []ChartCurve{out, in}
	for _, planned := range [...]struct {
		name  string
		speed quantity.Value
	}{{"Planned out", own.SpeedOut}, {"Planned in", own.SpeedIn}} {
		if planned.speed.IsSet() {
			c.Curves = append(c.Curves, ChartCurve{Name: planned.name, Kind: quantity.Velocity, Points: []ChartPoint{{top, planned.speed.SI}, {td, planned.speed.SI}}})
		}
	}
	c.Marks = []ChartMark{{e.topName(i), top}, {"TD", td}}
	return c
}

// pressureBySpeed draws swab and surge at the bit against the speed, with the bit at TD. A fluid with a yield point steps up
// as soon as it moves.
func (e *evaluation) pressureBySpeed(i int, m *moving) Chart {
	own := &e.plan.Sections[i].Trip
	c := Chart{Key: "swab.speed", Title: "Swab and surge, bit at TD", Topic: model.TopicHydraulics, Axis: "speed", Along: quantity.Velocity}
	drawn, pressed := ChartCurve{Name: "Swab", Kind: quantity.Pressure}, ChartCurve{Name: "Surge", Kind: quantity.Pressure}
	at := &m.at[len(m.at)-1]
	most := max(own.SpeedOut.SI, own.SpeedIn.SI, 0.5) // m/s
	for _, limit := range [...]speedLimit{at.out, at.in} {
		if limit.speed < fastestRun {
			most = max(most, limit.speed)
		}
	}
	const crawl = 1e-6
	most *= 1.2
	for k := range tripChartSteps + 1 {
		speed := max(most*float64(k)/tripChartSteps, crawl)
		out, in := m.out, m.in
		out.Speed, in.Speed = -speed, speed
		drawn.Points = append(drawn.Points, ChartPoint{speed, math.Abs(at.string.Rise(out, at.bit))})
		pressed.Points = append(pressed.Points, ChartPoint{speed, at.string.Rise(in, at.bit)})
	}
	c.Curves = []ChartCurve{drawn, pressed}
	for _, mark := range []ChartMark{{"planned out", own.SpeedOut.SI}, {"planned in", own.SpeedIn.SI}, {"out at most", at.out.speed}, {"in at most", at.in.speed}} {
		if mark.At > 0 && mark.At < fastestRun {
			c.Marks = append(c.Marks, mark)
		}
	}
	return c
}

// tripInWindow draws the planned trip between pore and fracture pressure, with the bit at each depth in turn.
func (e *evaluation) tripInWindow(i int, m *moving) Chart {
	c := Chart{Key: "swab.window", Title: "Planned trip in the window, bit at each depth", Topic: model.TopicHydraulics, Axis: "TVD", Along: quantity.Length, Down: true}
	curve := func(name string, limit bool) *ChartCurve {
		c.Curves = append(c.Curves, ChartCurve{Name: name, Kind: quantity.EMW, Limit: limit})
		return &c.Curves[len(c.Curves)-1]
	}
	c.Curves = make([]ChartCurve, 0, 5)
	pore, drawn, mud, pressed, fracture := curve("Pore", true), curve("Swab", false), curve("Mud", false), curve("Surge", false), curve("Fracture", true)
	top, td := m.at[0].bit, m.at[len(m.at)-1].bit
	for k := range tripChartSteps + 1 {
		md := top + (td-top)*float64(k)/tripChartSteps
		tvd := e.path.TVD(md)
		add := func(to *ChartCurve, value float64, ok bool) {
			if ok {
				to.Points = append(to.Points, ChartPoint{tvd, value})
			}
		}
		limit := func(to *ChartCurve, of column.Curve) {
			value, ok := of.At(tvd)
			add(to, value, ok)
		}
		limit(pore, e.window.pore)
		limit(fracture, e.window.fracture)
		rest, ok := m.rest.EMW(tvd)
		add(mud, rest, ok)
		swabbed, surged, ok := e.swabbed(i, md)
		add(drawn, swabbed, ok)
		add(pressed, surged, ok)
	}
	c.Marks = []ChartMark{{e.topName(i), e.path.TVD(top)}}
	return c
}
