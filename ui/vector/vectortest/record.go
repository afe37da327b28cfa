// Package vectortest notes what is drawn, for tests.
package vectortest

import (
	"fmt"
	"math"

	"borewalk/ui/vector"
)

// Record is a surface that notes what is drawn on it.
type Record struct {
	Lines, Areas [][]vector.Point
	Strokes      []vector.Stroke // of the lines
	Texts        []Text
}

// Text is a text as it stands: its edges and its middle height.
type Text struct {
	Text           string
	Left, Right, Y float64
	Type           vector.Type
}

// Polyline notes a line.
func (r *Record) Polyline(points []vector.Point, s vector.Stroke) {
	r.Lines, r.Strokes = append(r.Lines, points), append(r.Strokes, s)
}

// Area notes an area.
func (r *Record) Area(points []vector.Point, _ vector.Grey, _ vector.Stroke) {
	r.Areas = append(r.Areas, points)
}

// Text notes a text.
func (r *Record) Text(x, y float64, text string, t vector.Type) {
	w := r.Width(text, t)
	left := map[vector.Align]float64{vector.Left: x, vector.Middle: x - w/2, vector.Right: x - w}[t.Align]
	r.Texts = append(r.Texts, Text{text, left, left + w, y, t})
}

// Width takes every character as half as wide as it is high, which is about what a plain type has.
func (r *Record) Width(text string, t vector.Type) float64 {
	return float64(len([]rune(text))) * t.Size * 25.4 / 72 / 2
}

// Fault says what is wrong with a drawing: something beyond its edges, no place at all, or texts that lie on each other.
func (r *Record) Fault(w, h float64) string {
	const slack = 0.01
	inside := func(x, y float64) bool { return x >= -slack && x <= w+slack && y >= -slack && y <= h+slack }
	for _, shape := range append(append([][]vector.Point(nil), r.Lines...), r.Areas...) {
		for _, p := range shape {
			if !inside(p.X, p.Y) {
				return fmt.Sprintf("a line goes to %.2f, %.2f, which is not within %g by %g", p.X, p.Y, w, h)
			}
		}
	}
	for i, t := range r.Texts {
		if !inside(t.Left, t.Y) || !inside(t.Right, t.Y) {
			return fmt.Sprintf("%q stands from %.2f to %.2f at %.2f, not within %g by %g", t.Text, t.Left, t.Right, t.Y, w, h)
		}
		for _, o := range r.Texts[:i] {
			least := (t.Type.Size + o.Type.Size) / 2 * 25.4 / 72 * 0.8 // between the middles of capitals
			if math.Abs(t.Y-o.Y) < least && t.Left < o.Right-slack && o.Left < t.Right-slack {
				return fmt.Sprintf("%q and %q lie on each other at %.1f, %.1f", t.Text, o.Text, t.Left, t.Y)
			}
		}
	}
	return ""
}
