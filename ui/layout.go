package ui

import "borewalk/ui/canvas"

// The smallest window that the planner draws itself in.
const (
	leastWidth  = 80
	leastHeight = 24
)

// headerRows and footerRows stand above and below the body: title, sections, pages; focus, detail, finding, keys.
const (
	headerRows = 3
	detailRows = 2
	footerRows = 3 + detailRows
)

// rect is a part of the screen.
type rect struct{ x, y, w, h int }

func (q rect) of(r canvas.Region) canvas.Region { return r.Sub(q.x, q.y, q.w, q.h) }

// layout is where everything stands in a window.
type layout struct {
	schematic, page, fields, figures, plot rect
	footer                                 int // first row
}

// leastPlot is what the picture beside the figures has at least, and no more until they have a second column with room for names and
// changes before it.
const leastPlot = 21

// layoutFor divides a window: the schematic on the left, then fields, figures, and in a wide window the pressure window.
// page is everything right of the schematic, which tables and overlays take whole.
func layoutFor(width, height int) layout {
	body := height - headerRows - footerRows
	var l layout
	l.footer = height - footerRows
	sketch := 19
	switch {
	case width >= 132:
		sketch = 33
	case width >= 100:
		sketch = 27
	}
	l.schematic = rect{0, headerRows, sketch, body}
	x := sketch + 1
	l.page = rect{x, headerRows, width - x, body}
	fields := 26
	if width >= 100 {
		fields = 32
	}
	l.fields = rect{x, headerRows, fields, body}
	x += fields + 1
	rest := width - x
	if width >= 132 {
		plot := max(leastPlot, min(rest/3, rest-1-leastPane-1-cellWidth))
		l.plot = rect{width - plot, headerRows, plot, body}
		rest -= plot + 1
	}
	l.figures = rect{x, headerRows, rest, body}
	return l
}

// rows returns how many lines the body of the screen shows.
func (p *Planner) rows() int { return max(1, p.height-headerRows-footerRows) }

// pageWidth returns the columns right of the schematic.
func (p *Planner) pageWidth() int { return layoutFor(p.width, p.height).page.w }
