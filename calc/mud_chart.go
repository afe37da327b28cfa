package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// WeightUp is what it takes to bring the mud of a section, Treated m3 of it, to one density: kg of material, m3 gained or, where the volume is
// kept, dumped first, sacks of 100 lb, and seconds of mixing, not a number without a rate.
type WeightUp struct {
	Treated, Density, Mass, Sacks, Volume, Time float64
}

// WeightUps returns what it takes to bring the section's treated volume up by even steps of density in kg/m3, the first row
// being one step above the mud. There are none where the mud is not known or the step is none.
func WeightUps(plan *model.Plan, section int, step float64, rows int) []WeightUp {
	if section < 0 || section >= len(plan.Sections) || !(step > 0) {
		return nil
	}
	return runPages(plan, section, nil).weightUps(section, step, rows)
}

func (e *evaluation) weightUps(i int, step float64, rows int) []WeightUp {
	holds := e.contentsOf(i)
	t := e.treat(i, &holds)
	list := make([]WeightUp, 0, rows)
	for k := 1; k <= rows; k++ {
		density := t.mud.Density + float64(k)*step
		a, missing := t.weighUp(density)
		if missing.open() {
			break
		}
		row := WeightUp{t.mud.Volume, density, a.Mass, a.Mass / hundredPounds, a.Gain, math.NaN()}
		if rate := e.plan.Rig.WeightingRate; rate.IsSet() {
			row.Time = a.Mass / rate.SI
		}
		list = append(list, row)
	}
	return list
}

// stockCharts returns the charts of a section's mud stocks: the weighting material against the density reached, and without a riser the
// stock of weighted mud against depth.
func (e *evaluation) stockCharts(i int) (list []Chart) {
	if c, ok := e.stockChart(i); ok {
		list = append(list, c)
	}
	if c, ok := e.weightChart(i); ok {
		list = append(list, c)
	}
	return list
}

// weightChart draws the weighting material that lifts the mud against the density, up to the highest of step, shoe test and
// what is wanted.
func (e *evaluation) weightChart(i int) (Chart, bool) {
	const rows = 20
	s := &e.plan.Sections[i]
	if !e.sections[i].rig || !s.Density.IsSet() {
		return Chart{}, false
	}
	mud := s.Density.SI
	step := mud + usual(s.Treatment.Step, usualStep)
	marks := []ChartMark{{"step", step}}
	highest := max(step, s.Treatment.Density.SI)
	if test, _, ok := e.shoeTest(i); ok && test > mud {
		highest = max(highest, test)
		marks = append(marks, ChartMark{"shoe test", test})
	}
	if s.Treatment.Density.SI > mud {
		marks = append(marks, ChartMark{"wanted", s.Treatment.Density.SI})
	}
	ups := e.weightUps(i, (highest-mud)/rows, rows)
	if len(ups) == 0 {
		return Chart{}, false
	}
	material := []ChartPoint{{mud, 0}}
	for _, up := range ups {
		material = append(material, ChartPoint{up.Density, up.Mass})
	}
	c := Chart{Key: "mud.change", Title: "Weighting material for the density", Topic: model.TopicMud, Axis: "density", Along: quantity.Density,
		Curves: []ChartCurve{{Name: "needed", Kind: quantity.Mass, Points: material}}, Marks: marks}
	if aboard := e.plan.Rig.Barite; aboard.IsSet() {
		last := ups[len(ups)-1].Density
		c.Curves = append(c.Curves, ChartCurve{Name: "aboard", Kind: quantity.Mass, Limit: true, Points: []ChartPoint{{mud, aboard.SI}, {last, aboard.SI}}})
	}
	return c, true
}

// stockChart draws the stock of weighted mud as the hole goes down, against what is kept for the spot fluid.
func (e *evaluation) stockChart(i int) (Chart, bool) {
	r := &e.plan.Sections[i].Riserless
	if e.sections[i].rig || e.sections[i].missing.open() || !r.StockVolume.IsSet() {
		return Chart{}, false
	}
	d := e.readDumping(i)
	if !d.weighted() || first(d.missing, d.shareGap, d.spotGap).open() {
		return Chart{}, false
	}
	start, stock := e.sections[i].start, r.StockVolume.SI
	points := []ChartPoint{{start, stock}, {d.from, stock}}
	marks := []ChartMark{{"weighted", d.from}}
	if end := d.runsOut(stock); end < d.td {
		points = append(points, ChartPoint{end, 0})
		marks = append(marks, ChartMark{"stock ends", end})
	} else {
		points = append(points, ChartPoint{d.td, stock - d.used()})
	}
	c := Chart{Key: "mud.riserless", Title: "Stock of weighted mud", Topic: model.TopicMud, Axis: "MD", Along: quantity.Length, Down: true,
		Curves: []ChartCurve{{Name: "left", Kind: quantity.Volume, Points: points}}, Marks: marks}
	if d.spotStock() > 0 {
		c.Curves = append(c.Curves, ChartCurve{Name: "for the spot", Kind: quantity.Volume, Limit: true, Points: []ChartPoint{{start, d.spotStock()}, {d.td, d.spotStock()}}})
	}
	return c, true
}
