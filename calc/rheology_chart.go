package calc

import (
	"borewalk/calc/rheology"
	"borewalk/model"
	"borewalk/model/quantity"
)

// fastestShear is the shear rate in 1/s at which a rheogram ends: that of the viscometer at 600 rpm.
const fastestShear = 600 * rheology.RatePerSpeed

// mudCharts returns the charts of the mud page of section i.
func (e *evaluation) mudCharts(i int) []Chart {
	if chart := e.rheogram(i); len(chart.Curves) > 0 {
		return []Chart{chart}
	}
	return nil
}

// rheogram returns shear stress against shear rate of section i's fluid: what was read, the law that counts, and the three
// laws fitted to the readings.
func (e *evaluation) rheogram(i int) Chart {
	r, flow := &e.plan.Sections[i].Rheology, &e.flows[i]
	chart := Chart{Key: "mud.rheogram", Title: "Rheogram: shear stress against shear rate", Topic: model.TopicMud, Axis: "rate, 1/s", Along: quantity.Number}
	curve := func(name string, stress func(rate float64) float64) {
		c := ChartCurve{Name: name, Kind: quantity.ShearStress}
		const steps = 40
		for k := range steps + 1 {
			// Closer at low rates, where the laws differ.
			rate := fastestShear * (float64(k*k)/(steps*steps)*0.999 + 0.001)
			c.Points = append(c.Points, ChartPoint{rate, stress(rate)})
		}
		chart.Curves = append(chart.Curves, c)
	}
	if readings := taken(r); len(readings) > 1 {
		read := ChartCurve{Name: "read", Kind: quantity.ShearStress}
		for k := range readings {
			x := readings[len(readings)-1-k]
			read.Points = append(read.Points, ChartPoint{x.Rate(), x.Stress()})
		}
		chart.Curves = append(chart.Curves, read)
		for _, name := range [...]string{model.LawBingham, model.LawPower, model.LawHerschelBulkley} {
			if law, missing := fitted(i, r, name); !missing.open() {
				curve(name, law.Stress)
			}
		}
	}
	if !flow.missing.open() && r.Given != model.ByReadings {
		curve(r.Given, flow.fluid.Stress)
	}
	return chart
}
