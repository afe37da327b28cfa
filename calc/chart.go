package calc

import (
	"math"
	"slices"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Chart is a set of curves over one axis: load and rating against depth, pressures through a job.
type Chart struct {
	Key, Title string
	Topic      model.Topic
	Axis       string        // what the points' At is, such as "TVD" or "pumped"
	Along      quantity.Kind // its kind
	Down       bool          // it is a depth and runs down
	Curves     []ChartCurve
	Marks      []ChartMark
}

// ChartCurve is one line of a chart. Curves of different kinds have scales of their own. Limit says that the others are
// to be held against it: a rating, a fracture gradient. Single says that the points are readings, in any order, with nothing known
// between them. Level says that where the curve steps all that lies between is part of it.
type ChartCurve struct {
	Name   string
	Kind   quantity.Kind
	Limit  bool
	Single bool
	Level  bool
	Points []ChartPoint
}

// ChartPoint is one value, SI, at a place along the chart's axis. A curve may step: two points at one place. Where the value is
// not a number the curve has a gap.
type ChartPoint struct {
	At, Value float64
}

// orGap returns a figure's value for a curve, and a gap for a blank one.
func orGap(f *Figure) float64 {
	if !f.OK {
		return math.NaN()
	}
	return f.Value
}

// ChartMark is a named place along the axis, such as a shoe or the moment at which a plug lands.
type ChartMark struct {
	Name string
	At   float64
}

// Charts returns the charts of one topic of a section, none where what they need is missing. They are worked out anew
// at each call.
func Charts(plan *model.Plan, section int, topic model.Topic) []Chart {
	if section < 0 || section >= len(plan.Sections) {
		return nil
	}
	e := runPages(plan, section, nil)
	switch topic {
	case model.TopicMud:
		return slices.Concat(e.mudCharts(section), e.stockCharts(section), e.depthCharts(section))
	case model.TopicString:
		return e.dragCharts(section)
	case model.TopicCasing:
		return append(e.casingCharts(section), e.runCharts(section)...)
	case model.TopicHydraulics:
		return append(e.hydraulicsCharts(section), e.swabCharts(section)...)
	case model.TopicCement:
		return e.cementCharts(section)
	case model.TopicControl:
		return e.controlCharts(section)
	case model.TopicTime:
		return e.timeCharts()
	}
	return nil
}

// Ends returns between which places along the axis the chart has anything, and false when it has nothing.
func (c *Chart) Ends() (first, last float64, ok bool) {
	for _, curve := range c.Curves {
		for _, p := range curve.Points {
			if !ok {
				first, last, ok = p.At, p.At, true
			}
			first, last = min(first, p.At), max(last, p.At)
		}
	}
	return first, last, ok
}

// At returns the curve's value at a place, between its points in a straight line, and false beyond its ends and in a gap. Where it
// steps it is the later value.
func (c *ChartCurve) At(place float64) (value float64, ok bool) {
	for k := len(c.Points) - 1; k >= 0; k-- {
		p := c.Points[k]
		switch {
		case p.At == place:
			return p.Value, !math.IsNaN(p.Value)
		case p.At < place:
			if k == len(c.Points)-1 {
				return 0, false
			}
			q := c.Points[k+1]
			value = p.Value + (q.Value-p.Value)*(place-p.At)/(q.At-p.At)
			return value, !math.IsNaN(value)
		}
	}
	return 0, false
}
