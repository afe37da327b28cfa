// Package vector says what a drawing on paper is made of: lines, areas and texts, in mm from the top left of the drawing. Whoever
// draws knows no file format, and whoever prints gives a [Surface].
//
// There are greys and dashes only, so that a copy in black and white says as much.
package vector

// Surface is what is drawn on.
type Surface interface {
	// Polyline draws a line through points.
	Polyline(points []Point, s Stroke)
	// Area fills what points go round, and draws the line round it if it has a width.
	Area(points []Point, fill Grey, s Stroke)
	// Text writes a line of text; y is the middle of its capitals.
	Text(x, y float64, text string, t Type)
	// Width returns how wide a text is.
	Width(text string, t Type) float64
}

// Drawing is a picture of a size that it is made for.
type Drawing struct {
	W, H float64
	Draw func(Surface)
}

// Point is a place in mm to the right of the left edge and below the upper.
type Point struct{ X, Y float64 }

// Grey is the lightness of ink: 0 is black, 1 the paper.
type Grey float64

// The greys, a closed set: they can be told apart on any copy.
const (
	Black Grey = 0
	Dark  Grey = 0.4
	Mid   Grey = 0.6
	Light Grey = 0.8
	Pale  Grey = 0.93
	White Grey = 1
)

// Stroke is how a line is drawn. A width of zero draws none; Dash is the lengths drawn and left out by turns, none for a whole
// line.
type Stroke struct {
	Width float64
	Grey  Grey
	Dash  []float64
}

// Type is how a text is set.
type Type struct {
	Size  float64 // points
	Bold  bool
	Grey  Grey
	Align Align
}

// Align says which point of a text stands at its place.
type Align uint8

// The ways to align a text.
const (
	Left Align = iota
	Middle
	Right
)

// Line draws a line between two points.
func Line(s Surface, x1, y1, x2, y2 float64, stroke Stroke) {
	s.Polyline([]Point{{x1, y1}, {x2, y2}}, stroke)
}

// Box fills a rectangle and draws the line round it if it has a width.
func Box(s Surface, x, y, w, h float64, fill Grey, stroke Stroke) {
	s.Area([]Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}, fill, stroke)
}

// pointHeight is the height of a point of type in mm: 1/72 of an inch.
const pointHeight = 25.4 / 72

// Height returns the height of a line of text in mm, with what keeps it from the next.
func (t Type) Height() float64 { return t.Size * pointHeight * 1.15 }

// Backed writes a text on a patch of paper that hides what is behind it.
func Backed(s Surface, x, y float64, text string, t Type) {
	const rim = 0.5 // mm around the text
	w, h := s.Width(text, t), t.Size*pointHeight
	left := x
	switch t.Align {
	case Middle:
		left -= w / 2
	case Right:
		left -= w
	}
	Box(s, left-rim, y-h/2, w+2*rim, h, White, Stroke{})
	s.Text(x, y, text, t)
}

// Fit returns a text that is no wider than w: itself, or its beginning and points.
func Fit(s Surface, text string, t Type, w float64) string {
	if s.Width(text, t) <= w {
		return text
	}
	letters := []rune(text)
	for n := len(letters) - 1; n > 0; n-- {
		if cut := string(letters[:n]) + "..."; s.Width(cut, t) <= w {
			return cut
		}
	}
	return ""
}
