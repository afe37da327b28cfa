package calc

import (
	"math"

	"borewalk/calc/influx"
	"borewalk/model"
	"borewalk/model/quantity"
)

// controlCharts returns the charts of section i's control page: the shoe test as read, the tolerance against depth and against
// intensity, and the kick on its way out.
func (e *evaluation) controlCharts(i int) []Chart {
	if !e.sections[i].rig {
		return nil
	}
	var list []Chart
	if chart, ok := e.testChart(i); ok {
		list = append(list, chart)
	}
	if _, _, ok := e.lastShoe(i); ok && !e.testGap(i).open() {
		list = append(list, e.depthChart(i)...)
		list = append(list, e.intensityChart(i)...)
	}
	if job, missing := e.playKill(i, false); !missing.open() {
		list = append(list, job.Chart())
	}
	return list
}

// testChart shows the readings of the shoe test, the straight line through them, and what was picked.
func (e *evaluation) testChart(i int) (Chart, bool) {
	t := &e.tests[i]
	if len(t.points) == 0 {
		return Chart{}, false
	}
	chart := Chart{Key: "control.test", Title: "Shoe test", Topic: model.TopicControl, Axis: "pumped", Along: quantity.Volume}
	read := ChartCurve{Name: "gauge", Kind: quantity.Pressure, Single: true}
	for _, p := range t.points {
		read.Points = append(read.Points, ChartPoint{p.Volume, p.Pressure})
	}
	chart.Curves = append(chart.Curves, read)
	last := t.points[len(t.points)-1].Volume
	if t.read == nil {
		r := &t.reading
		at := t.points[r.LeakOff]
		line := ChartCurve{Name: "straight line", Kind: quantity.Pressure}
		for _, v := range [...]float64{math.Max(0, -r.Intercept/r.Slope), at.Volume} {
			line.Points = append(line.Points, ChartPoint{v, r.Line(v)})
		}
		chart.Curves = append(chart.Curves, line)
		name := "last on line"
		if !r.Departed && !r.Unconfirmed {
			name = "last"
		}
		chart.Marks = append(chart.Marks, ChartMark{name, at.Volume})
	}
	if t.run {
		chart.Curves = append(chart.Curves, ChartCurve{Name: "picked", Kind: quantity.Pressure, Limit: true, Points: []ChartPoint{{0, t.gauge}, {last, t.gauge}}})
	}
	return chart, true
}

// toleranceLooks is at how many places a curve of tolerances is worked out.
const toleranceLooks = 24

// depthChart shows the tolerance of a drilled and of a swabbed kick as the section deepens, with the least wanted.
func (e *evaluation) depthChart(i int) []Chart {
	from, to := e.openFrom(i)+tooNear, e.sections[i].td
	if from >= to {
		return nil
	}
	chart := Chart{Key: "control.tolerance.depth", Title: "Kick tolerance as the hole deepens", Topic: model.TopicControl, Axis: "bit", Along: quantity.Length, Down: true}
	drilled, swabbed := ChartCurve{Name: "drilled", Kind: quantity.Volume}, ChartCurve{Name: "swabbed", Kind: quantity.Volume}
	wanted := ChartCurve{Name: "least wanted", Kind: quantity.Volume, Limit: true}
	least := e.leastTolerance(i)
	for n := range toleranceLooks + 1 {
		bit := from + (to-from)*float64(n)/toleranceLooks
		k := e.kickAt(i, bit, e.plan.Sections[i].Kick.Intensity.SI)
		s := k
		s.formation = k.mud
		drilled.Points = append(drilled.Points, e.tolerancePoint(i, bit, &k))
		swabbed.Points = append(swabbed.Points, e.tolerancePoint(i, bit, &s))
		wanted.Points = append(wanted.Points, ChartPoint{bit, least})
	}
	chart.Curves = []ChartCurve{drilled, swabbed}
	if least > 0 {
		chart.Curves = append(chart.Curves, wanted)
	}
	return []Chart{chart}
}

// tolerancePoint is the tolerance of a kick as a point of a curve; where the whole hole may be gas it has a gap.
func (e *evaluation) tolerancePoint(i int, at float64, k *kick) ChartPoint {
	b := e.bears(i, k)
	if b.missing.open() || b.Case == influx.Whole {
		return ChartPoint{at, math.NaN()}
	}
	return ChartPoint{at, b.Volume}
}

// intensityChart shows the tolerance at TD against the intensity of the kick.
func (e *evaluation) intensityChart(i int) []Chart {
	const most = 150 // kg/m3, well over what is planned for
	chart := Chart{Key: "control.tolerance.intensity", Title: "Kick tolerance against intensity", Topic: model.TopicControl, Axis: "intensity", Along: quantity.EMW}
	curve, wanted := ChartCurve{Name: "tolerance", Kind: quantity.Volume}, ChartCurve{Name: "least wanted", Kind: quantity.Volume, Limit: true}
	least := e.leastTolerance(i)
	for n := range toleranceLooks + 1 {
		intensity := most * float64(n) / toleranceLooks
		k := e.kickAt(i, e.sections[i].td, intensity)
		curve.Points = append(curve.Points, e.tolerancePoint(i, intensity, &k))
		wanted.Points = append(wanted.Points, ChartPoint{intensity, least})
	}
	chart.Curves = []ChartCurve{curve}
	if least > 0 {
		chart.Curves = append(chart.Curves, wanted)
	}
	if own := e.plan.Sections[i].Kick.Intensity; own.IsSet() {
		chart.Marks = []ChartMark{{"planned", own.SI}}
	}
	return []Chart{chart}
}
