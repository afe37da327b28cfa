package calc

import (
	"slices"

	"borewalk/calc/strength"
	"borewalk/model"
	"borewalk/model/quantity"
)

// chartSteps is into how many even steps a string is cut for a chart, on top of the places at which curves bend.
const chartSteps = 40

// casingCharts returns what loads the section's string against what it withstands, on true vertical depth: collapse, burst
// and tension, one curve for each case; and how fast it may be run. The rating is drawn as it is, and over the factor that the plan's rule asks for.
func (e *evaluation) casingCharts(i int) []Chart {
	c := &e.strings[i]
	if !c.present || c.missing.open() {
		return nil
	}
	s := e.loaded(i)
	if s.missing.open() {
		return nil
	}
	charts := make([]Chart, 0, 4)
	for _, chart := range [...]Chart{
		e.pressureChart(&s, strength.InCollapse, "casing.collapse", "Collapse: equivalent outside pressure, and rating", model.RuleCollapse),
		e.pressureChart(&s, strength.InBurst, "casing.burst", "Burst: load inside less outside, and rating", model.RuleBurst),
		e.pullChart(&s),
		e.surgeChart(i, c),
	} {
		if len(chart.Curves) > 0 {
			charts = append(charts, chart)
		}
	}
	return charts
}

// strengthChart begins a chart on true vertical depth, with the ends of the string and the last shoe marked.
func (e *evaluation) strengthChart(s *loadedString, key, title string) Chart {
	c := s.casing
	chart := Chart{Key: key, Title: title, Topic: model.TopicCasing, Axis: "TVD", Along: quantity.Length, Down: true}
	chart.Marks = append(chart.Marks, ChartMark{"top", e.path.TVD(c.top)})
	if shoe, _, ok := e.lastShoe(s.section); ok && shoe > c.top && shoe < c.shoe {
		chart.Marks = append(chart.Marks, ChartMark{"last shoe", e.path.TVD(shoe)})
	}
	chart.Marks = append(chart.Marks, ChartMark{"shoe", e.path.TVD(c.shoe)})
	return chart
}

// along calls visit down a string between two depths: at the ends of its parts, at what breaks, and evenly between.
func (e *evaluation) along(s *loadedString, top, bottom float64, breaks []float64, visit func(k int, md float64)) {
	step := (s.casing.shoe - s.casing.top) / chartSteps
	for k := range s.casing.parts {
		places := e.places(s, k, top, bottom, breaks)
		if len(places) == 0 {
			continue
		}
		for n := 1; n < chartSteps; n++ {
			if md := s.casing.top + step*float64(n); md > places[0] && md < places[len(places)-1] {
				places = append(places, md)
			}
		}
		slices.Sort(places)
		for _, md := range slices.Compact(places) {
			visit(k, md)
		}
	}
}

// pressureChart draws every case of one mode that can be computed, and the rating under the landed tension.
func (e *evaluation) pressureChart(s *loadedString, mode strength.Mode, key, title string, rule model.RuleID) Chart {
	chart := e.strengthChart(s, key, title)
	rating := ChartCurve{Name: "Rating", Kind: quantity.Pressure, Limit: true}
	for _, l := range e.loadCases(s) {
		if l.mode != mode || l.missing.open() {
			continue
		}
		curve := ChartCurve{Name: l.name, Kind: quantity.Pressure}
		breaks := l.outside.appendBreaks(l.inside.appendBreaks(nil))
		e.along(s, l.top, l.bottom, breaks, func(k int, md float64) {
			if at, _, err := e.press(s, &l, k, md); err == nil {
				curve.Points = append(curve.Points, ChartPoint{at.tvd, at.acts})
			}
		})
		if len(curve.Points) > 1 {
			chart.Curves = append(chart.Curves, curve)
		}
	}
	if len(chart.Curves) == 0 {
		return Chart{}
	}
	still := loadCase{mode: mode, inside: side{stack: s.fluid}, outside: side{stack: s.fluid}}
	e.along(s, s.casing.top, s.casing.shoe, nil, func(k int, md float64) {
		if at, _, err := e.press(s, &still, k, md); err == nil {
			rating.Points = append(rating.Points, ChartPoint{at.tvd, at.rating})
		}
	})
	chart.Curves = append(chart.Curves, e.ratings(rating, rule)...)
	return chart
}

// pullChart draws every tension, and the strength of the weaker of body and connection.
func (e *evaluation) pullChart(s *loadedString) Chart {
	chart := e.strengthChart(s, "casing.tension", "Tension: pull with bending, and strength")
	rating := ChartCurve{Name: "Rating", Kind: quantity.Force, Limit: true}
	for n, l := range e.pullCases(s) {
		if l.missing.open() {
			continue
		}
		curve := ChartCurve{Name: l.name, Kind: quantity.Force}
		e.along(s, s.casing.top, s.casing.shoe, nil, func(k int, md float64) {
			at := e.pulled(s, &l, k, md)
			curve.Points = append(curve.Points, ChartPoint{at.tvd, at.acts})
			if n == 0 {
				rating.Points = append(rating.Points, ChartPoint{at.tvd, at.rating})
			}
		})
		chart.Curves = append(chart.Curves, curve)
	}
	chart.Curves = append(chart.Curves, e.ratings(rating, model.RuleTension)...)
	return chart
}

// ratings returns a rating and, where the plan's rules ask for a factor other than 1, the rating over it.
func (e *evaluation) ratings(rating ChartCurve, id model.RuleID) []ChartCurve {
	factor := e.limit(id, 1)
	if !(factor > 0) || factor == 1 {
		return []ChartCurve{rating}
	}
	over := rating
	over.Name, over.Points = "Rating over factor", make([]ChartPoint, len(rating.Points))
	for k, p := range rating.Points {
		over.Points[k] = ChartPoint{p.At, p.Value / factor}
	}
	return []ChartCurve{rating, over}
}
