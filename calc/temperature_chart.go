package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// depthCharts returns what a section's mud goes through on its way: temperatures, and its density where that is wanted.
func (e *evaluation) depthCharts(i int) []Chart {
	charts := make([]Chart, 0, 2)
	for _, chart := range [...]Chart{e.temperatureChart(i), e.densityChart(i)} {
		if len(chart.Curves) > 0 {
			charts = append(charts, chart)
		}
	}
	return charts
}

// mudChart begins a chart of the mud page on true vertical depth, with the mudline, the last shoe and TD marked.
func (e *evaluation) mudChart(i int, key, title string) Chart {
	chart := Chart{Key: key, Title: title, Topic: model.TopicMud, Axis: "TVD", Along: quantity.Length, Down: true}
	chart.Marks = append(chart.Marks, ChartMark{"mudline", e.datum.Mudline})
	if shoe, _, ok := e.lastShoe(i); ok {
		chart.Marks = append(chart.Marks, ChartMark{"last shoe", e.path.TVD(shoe)})
	}
	return chart
}

// temperatureChart draws the undisturbed temperature, and the mud's in string and annulus at the planned flow.
func (e *evaluation) temperatureChart(i int) Chart {
	if first(e.sections[i].missing, e.pathGap, e.heat.sea, e.heat.rock).open() {
		return Chart{}
	}
	chart := e.mudChart(i, "mud.temperature", "Temperatures at the planned flow")
	static := ChartCurve{Name: "Static", Kind: quantity.Temperature}
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	for _, tvd := range append(e.heat.corners([]float64{0}), bottom) {
		if n := len(static.Points); tvd <= bottom && (n == 0 || tvd > static.Points[n-1].At) {
			static.Points = append(static.Points, ChartPoint{tvd, e.heat.at(tvd)})
		}
	}
	chart.Curves = append(chart.Curves, static)
	r, missing := e.drilling(i, chartCells)
	if missing.open() {
		return chart
	}
	down, up := ChartCurve{Name: "In string", Kind: quantity.Temperature}, ChartCurve{Name: "In annulus", Kind: quantity.Temperature}
	for k, tvd := range r.tvd {
		down.Points = append(down.Points, ChartPoint{tvd, r.String[k]})
		if !math.IsNaN(r.Annulus[k]) {
			up.Points = append(up.Points, ChartPoint{tvd, r.Annulus[k]})
		}
	}
	chart.Curves = append(chart.Curves, down, up)
	return chart
}

// densityChart draws the density of a mud at rest against depth, its equivalent from the rotary, and what was entered.
func (e *evaluation) densityChart(i int) Chart {
	mud, missing := e.mudOf(i)
	missing = first(missing, e.openHoleGap(i), e.heat.sea, e.heat.rock)
	if !e.sections[i].rig {
		missing = first(missing, e.gaps.sea)
	}
	if !e.atDepth(i) || missing.open() {
		return Chart{}
	}
	chart := e.mudChart(i, "mud.downhole", "Density of the mud at rest, under pressure and heat")
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	depths := make([]float64, 0, chartSteps)
	for k := range chartSteps {
		depths = append(depths, bottom*float64(k+1)/chartSteps)
	}
	hot := e.settleMud(i, mud, depths...)
	there := ChartCurve{Name: "Density", Kind: quantity.Density}
	static := ChartCurve{Name: "ESD", Kind: quantity.Density}
	entered := ChartCurve{Name: "As entered", Kind: quantity.Density}
	for k, tvd := range hot.tvd {
		density := mud.Density(e.heat.at(tvd), hot.pressure[k])
		if math.IsNaN(density) || math.IsNaN(hot.pressure[k]) {
			return Chart{}
		}
		there.Points = append(there.Points, ChartPoint{tvd, density})
		if own, ok := column.EMW(hot.pressure[k], tvd); ok {
			static.Points = append(static.Points, ChartPoint{tvd, own})
		}
		entered.Points = append(entered.Points, ChartPoint{tvd, mud.Recipe().Density})
	}
	chart.Curves = append(chart.Curves, there, static, entered)
	return chart
}
