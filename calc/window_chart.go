package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/model/quantity"
)

// WindowChart returns the pressure window as a chart over true vertical depth: what the rock bears and holds, the mud of the
// sections, of one of them also what pumping and tripping make of it, shoes and their tests. The section is -1 for none.
func (r *Result) WindowChart(section int) Chart {
	c := Chart{Key: "window", Title: "Pressure window, from RKB", Axis: "TVD", Along: quantity.Length, Down: true}
	c.Curves = append(r.prognosed(), r.muds(section)...)
	tests := ChartCurve{Name: "shoe test", Kind: quantity.EMW, Limit: true, Single: true}
	for k := range r.Traces {
		t := &r.Traces[k]
		if t.Test > 0 {
			tests.Points = append(tests.Points, ChartPoint{t.TestAt, t.Test})
		}
		if t.Shoe > 0 {
			c.Marks = append(c.Marks, ChartMark{"shoe " + strconv.Itoa(t.Section+1), t.Shoe})
		}
	}
	c.Curves = append(c.Curves, tests)
	c.Curves = slices.DeleteFunc(c.Curves, func(curve ChartCurve) bool { return !curve.known() })
	return c
}

// prognosed returns the limits of the window.
func (r *Result) prognosed() []ChartCurve {
	pore := ChartCurve{Name: "pore", Kind: quantity.EMW, Limit: true}
	stability, fracture := pore, pore
	stability.Name, fracture.Name = "stability", "fracture"
	for _, p := range r.Window {
		pore.Points = append(pore.Points, ChartPoint{p.TVD, orNone(p.Pore)})
		stability.Points = append(stability.Points, ChartPoint{p.TVD, orNone(p.Stability)})
		fracture.Points = append(fracture.Points, ChartPoint{p.TVD, orNone(p.Fracture)})
	}
	return []ChartCurve{pore, stability, fracture}
}

// muds returns the mud of the sections, and of one of them also what pumping and tripping make of it.
func (r *Result) muds(section int) []ChartCurve {
	others := ChartCurve{Name: "mud", Kind: quantity.EMW}
	this, pumped, swab, surge := others, others, others, others
	this.Name, pumped.Name, swab.Name, surge.Name = "mud, this section", "circulating", "swab", "surge"
	for _, t := range r.Traces {
		if t.Section != section {
			others.join(t.Mud)
			continue
		}
		this.join(t.Mud)
		pumped.join(t.Pumped)
		for _, m := range t.Moved {
			swab.Points = append(swab.Points, ChartPoint{m.TVD, m.Swab})
			surge.Points = append(surge.Points, ChartPoint{m.TVD, m.Surge})
		}
	}
	return []ChartCurve{others, this, pumped, swab, surge}
}

// known reports whether the curve has a value anywhere.
func (c *ChartCurve) known() bool {
	return slices.ContainsFunc(c.Points, func(p ChartPoint) bool { return !math.IsNaN(p.Value) })
}

// orNone returns a gap for a zero, which stands for no value.
func orNone(value float64) float64 {
	if value > 0 {
		return value
	}
	return math.NaN()
}

// join adds the mud of a further section, with a gap before it. What the section above has below the first of its depths, which
// is the rathole under the shoe, is left out, so that the curve has one value at each depth.
func (c *ChartCurve) join(points []TracePoint) {
	if len(points) == 0 {
		return
	}
	from := points[0].TVD
	last, reaches := c.At(from)
	for len(c.Points) > 0 && !(c.Points[len(c.Points)-1].At < from) {
		c.Points = c.Points[:len(c.Points)-1]
	}
	if reaches {
		c.Points = append(c.Points, ChartPoint{from, last})
	}
	if len(c.Points) > 0 {
		c.Points = append(c.Points, ChartPoint{from, math.NaN()})
	}
	for _, p := range points {
		c.Points = append(c.Points, ChartPoint{p.TVD, p.EMW})
	}
}
