package plot

import (
	"cmp"
	"math"
	"slices"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// series is a curve of a chart: a letter along the axis.
type series struct {
	name   string
	letter rune
	style  canvas.Style
	rank   rank
	single bool              // points with nothing between them, in any order
	level  bool              // where it steps, all between is part of it
	points []calc.ChartPoint // by place
}

// after returns the number of points that do not lie beyond a place.
func (s *series) after(place float64) int {
	n, _ := slices.BinarySearchFunc(s.points, place, func(p calc.ChartPoint, place float64) int {
		if p.At <= place {
			return -1
		}
		return 1
	})
	return n
}

// at returns the value at a place, linear between the points, and false outside them and where there is none. At a step it is
// the value beyond.
func (s *series) at(place float64) (value float64, ok bool) {
	n := s.after(place)
	if n == 0 {
		return 0, false
	}
	a := s.points[n-1]
	if a.At == place {
		return a.Value, known(a.Value)
	}
	if n == len(s.points) {
		return 0, false
	}
	b := s.points[n]
	value = a.Value + (b.Value-a.Value)*(place-a.At)/(b.At-a.At)
	return value, known(a.Value) && known(b.Value) && known(value)
}

// between returns what to draw for the stretch of the axis from one place to another: the value in its middle, and peaks that
// stand between; of single points those alone.
func (s *series) between(from, to float64) (values []float64) {
	if s.single {
		for _, p := range s.points {
			if from <= p.At && p.At < to && known(p.Value) {
				values = append(values, p.Value)
			}
		}
		return values
	}
	low, high, seen := 0.0, 0.0, false
	see := func(v float64) {
		if !seen {
			low, high, seen = v, v, true
		}
		low, high = min(low, v), max(high, v)
	}
	if v, ok := s.at((from + to) / 2); ok {
		values = append(values, v)
		see(v)
		for _, end := range []float64{from, to} {
			if v, ok := s.at(end); ok {
				see(v)
			}
		}
	}
	inside := s.points[s.after(from):s.after(to)]
	least := func(a, b calc.ChartPoint) int { return cmp.Compare(a.Value, b.Value) }
	inside = slices.DeleteFunc(slices.Clone(inside), func(p calc.ChartPoint) bool { return !known(p.Value) })
	if len(inside) == 0 {
		return values
	}
	for _, p := range []calc.ChartPoint{slices.MinFunc(inside, least), slices.MaxFunc(inside, least)} {
		if !seen || p.Value < low || p.Value > high {
			values = append(values, p.Value)
			see(p.Value)
		}
	}
	return values
}

// reach returns the least and the greatest value of the points on the stretch of the axis from one place to another, and whether
// there is more than one.
func (s *series) reach(from, to float64) (low, high float64, ok bool) {
	known := 0
	for _, p := range s.points[s.after(from):s.after(to)] {
		if math.IsNaN(p.Value) {
			continue
		}
		if known++; known == 1 {
			low, high = p.Value, p.Value
		}
		low, high = min(low, p.Value), max(high, p.Value)
	}
	return low, high, known > 1
}
