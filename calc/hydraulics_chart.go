package calc

import (
	"math"
	"slices"

	"borewalk/model"
	"borewalk/model/quantity"
)

// hydraulicSteps is at how many places a chart of hydraulics looks, besides where something changes.
const hydraulicSteps = 60

// hydraulicsCharts returns the charts of section i's hydraulics.
func (e *evaluation) hydraulicsCharts(i int) (list []Chart) {
	c := e.circulating(i)
	if c.missing.open() {
		return nil
	}
	if chart, ok := e.ecdChart(i, c); ok {
		list = append(list, chart)
	}
	if !c.loop.noString.open() {
		list = append(list, e.standpipeChart(c))
	}
	return list
}

// ecdChart returns circulating and static density along the hole, from the last shoe or the seabed to TD, with pore and fracture
// in the open hole and the shoe test.
func (e *evaluation) ecdChart(i int, c *circulation) (Chart, bool) {
	if e.shoeGap(i).open() {
		return Chart{}, false
	}
	l := c.loop
	chart := Chart{Key: "hydraulics.ecd", Title: "Circulating density, bit at TD", Topic: model.TopicHydraulics, Axis: "MD", Along: quantity.Length, Down: true}
	ecd, esd := ChartCurve{Name: "ECD", Kind: quantity.EMW}, ChartCurve{Name: "static", Kind: quantity.EMW}
	pore, fracture := ChartCurve{Name: "pore", Kind: quantity.EMW, Limit: true}, ChartCurve{Name: "fracture", Kind: quantity.EMW, Limit: true}
	static := e.well(i, l.fluid.Density)
	open := e.openFrom(i)
	for _, md := range e.chartDepths(open, c) {
		tvd := e.path.TVD(md)
		ecd.Points = append(ecd.Points, ChartPoint{md, c.emwAt(md)})
		if x := emw(static, tvd); !math.IsNaN(x) {
			esd.Points = append(esd.Points, ChartPoint{md, x})
		}
		if l.noFracture.open() {
			continue
		}
		if x, ok := e.window.pore.At(tvd); ok {
			pore.Points = append(pore.Points, ChartPoint{md, x})
		}
		if x, ok := e.window.fracture.At(tvd); ok {
			fracture.Points = append(fracture.Points, ChartPoint{md, x})
		}
	}
	chart.Curves = []ChartCurve{ecd, esd, pore, fracture}
	mark := ChartMark{Name: e.topName(i), At: open}
	if test, _, ok := e.shoeTest(i); ok && open < l.td {
		mark.Name = "last shoe, T its test"
		half := (l.td - open) / (4 * hydraulicSteps)
		chart.Curves = append(chart.Curves, ChartCurve{Name: "test of the shoe", Kind: quantity.EMW, Limit: true,
			Points: []ChartPoint{{open, test}, {open + half, test}}})
	}
	chart.Marks = []ChartMark{mark}
	return chart, true
}

// chartDepths returns the depths along hole of a chart from a depth to the bit: even ones, rows of the prognosis and where the
// annulus changes.
func (e *evaluation) chartDepths(from float64, c *circulation) (depths []float64) {
	to := c.loop.td
	for k := range hydraulicSteps + 1 {
		depths = append(depths, from+(to-from)*float64(k)/hydraulicSteps)
	}
	for _, tvd := range e.window.depths {
		if md, ok := e.path.MDAtTVD(tvd); ok && md > from && md < to {
			depths = append(depths, md)
		}
	}
	for k := range c.loop.up {
		if md := c.loop.up[k].bottom; md > from && md < to {
			depths = append(depths, md)
		}
	}
	slices.Sort(depths)
	return slices.Compact(depths)
}

// standpipeChart returns the standpipe's pressure against the flow through the bit, in all and without what bit and tools take,
// with the limit of each liner up to the flow that it gives.
func (e *evaluation) standpipeChart(c *circulation) Chart {
	l := c.loop
	chart := Chart{Key: "hydraulics.standpipe", Title: "Standpipe pressure", Topic: model.TopicHydraulics, Axis: "flow", Along: quantity.Flow}
	most := 1.3 * c.flow
	list := e.liners()
	highest := l.standpipe(c.flow)
	for k := range list {
		most, highest = max(most, list[k].most-l.booster), max(highest, list[k].limit)
	}
	// Beyond all limits there is nothing to be seen.
	most, _ = lastFlow(func(q float64) float64 { return l.standpipe(q) - 1.2*highest }, 0, most)
	whole, inner, annulus := ChartCurve{Name: "standpipe", Kind: quantity.Pressure}, ChartCurve{Name: "without bit", Kind: quantity.Pressure},
		ChartCurve{Name: "annulus, riser", Kind: quantity.Pressure}
	for k := range hydraulicSteps + 1 {
		q := most * float64(k) / hydraulicSteps
		all := l.standpipe(q)
		whole.Points = append(whole.Points, ChartPoint{q, max(all, 0)})
		inner.Points = append(inner.Points, ChartPoint{q, max(all-l.lossBit(q), 0)})
		annulus.Points = append(annulus.Points, ChartPoint{q, l.annulus(q)})
	}
	chart.Curves = []ChartCurve{whole, inner, annulus}
	for k := range list {
		x := &list[k]
		if given := x.most - l.booster; !x.missing.open() && x.limit > 0 && given > 0 {
			chart.Curves = append(chart.Curves, ChartCurve{Name: "limit, " + linerWords(x, k), Kind: quantity.Pressure, Limit: true,
				Points: []ChartPoint{{0, x.limit}, {given, x.limit}}})
		}
	}
	chart.Marks = []ChartMark{{Name: "planned", At: c.flow}}
	return chart
}

// linerWords names liner k for a curve.
func linerWords(x *liner, k int) string {
	if k == 0 {
		return "as fitted"
	}
	return "kind " + x.key
}
