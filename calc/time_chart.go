package calc

import (
	"math"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// timeCharts returns the chart of the whole well's time.
func (e *evaluation) timeCharts() []Chart {
	s := e.schedule()
	if c, ok := s.Chart(); ok {
		return []Chart{c}
	}
	return nil
}

// Chart returns the days of the whole well against the depth of its hole, and false where none is known.
func (s *Schedule) Chart() (c Chart, ok bool) {
	c = Chart{Key: "time.depth", Title: "Days against depth, weather counted", Topic: model.TopicTime, Axis: "hole at", Along: quantity.Length, Down: true}
	last, done := -1, 0
	for k := range s.Rows {
		if row := &s.Rows[k]; row.Step.HoleTo > 0 && !math.IsNaN(row.PlannedTo) {
			last = k
		}
	}
	if last < 0 {
		return c, false
	}
	for k := range s.Next {
		if s.Rows[k].Progress == Done {
			done++
		}
	}
	c.Curves = append(c.Curves, depthCurve("Plan", s.Rows, func(r *Planned) (float64, float64) { return r.PlannedFrom, r.PlannedTo }))
	c.Curves[0].Level = done == 0
	if done > 0 {
		c.Curves = append(c.Curves, doneCurve(s), depthCurve("Expected", s.Rows[s.Next:], func(r *Planned) (float64, float64) { return r.From, r.To }))
		c.Curves[1].Level, c.Curves[2].Level = true, true
	}
	rest := s.Rows[min(s.Next, len(s.Rows)):]
	for _, band := range []struct {
		name string
		end  func(*Planned) float64
	}{{"P10", func(r *Planned) float64 { return r.P10 }}, {"P90", func(r *Planned) float64 { return r.P90 }}} {
		before := s.Now()
		c.Curves = append(c.Curves, depthCurve(band.name, rest, func(r *Planned) (float64, float64) {
			from := before
			before = band.end(r)
			return from, before
		}))
	}
	for k := range s.Rows {
		row := &s.Rows[k]
		if ends := k+1 == len(s.Rows) || s.Rows[k+1].Section != row.Section; ends && row.Step.HoleTo > 0 {
			c.Marks = append(c.Marks, ChartMark{"TD " + strconv.Itoa(row.Section+1), row.Step.HoleTo})
		}
	}
	return c, true
}

// depthCurve returns the times of operations against the depth of the hole: level where it gets no deeper.
func depthCurve(name string, rows []Planned, between func(*Planned) (from, to float64)) ChartCurve {
	c := ChartCurve{Name: name, Kind: quantity.Days}
	for k := range rows {
		row := &rows[k]
		from, to := between(row)
		if math.IsNaN(from) || math.IsNaN(to) {
			break
		}
		c.point(row.Step.HoleFrom, from)
		c.point(row.Step.HoleTo, to)
	}
	return c
}

// point adds a point but where the curve is there already.
func (c *ChartCurve) point(at, value float64) {
	if n := len(c.Points); n == 0 || c.Points[n-1] != (ChartPoint{at, value}) {
		c.Points = append(c.Points, ChartPoint{at, value})
	}
}

// doneCurve returns what was done against the depth of the hole as it was read. A depth that was read less than one before is that one.
func doneCurve(s *Schedule) ChartCurve {
	c := ChartCurve{Name: "Done", Kind: quantity.Days}
	depth := s.Rows[0].Step.HoleFrom
	for k := range s.Next {
		row := &s.Rows[k]
		if row.Progress != Done {
			continue
		}
		c.point(max(depth, min(row.Step.HoleFrom, row.Hole)), row.From)
		depth = max(depth, row.Hole)
		c.point(depth, row.To)
	}
	return c
}
