package ui

import "borewalk/ui/canvas"

// The smallest window that the planner draws itself in.
const (
	leastWidth  = 80
	leastHeight = 24
)

// headerRows and footerRows stand above and below the body: title, sections, pages; focus, detail, finding, keys. A page alone has
// the title above it.
const (
	headerRows = 3
	titleRows  = 1
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
// page is everything right of the schematic, which tables and overlays take whole; alone it takes the window but for title and foot.
func layoutFor(width, height int, alone bool) layout {
	top, sketch, x := headerRows, 19, 0
	switch {
	case alone:
		top, sketch = titleRows, 0
	case width >= 132:
		sketch = 33
	case width >= 100:
		sketch = 27
	}
	body := height - top - footerRows
	var l layout
	l.footer = height - footerRows
	if l.schematic = (rect{0, top, sketch, body}); !alone {
		x = sketch + 1
	}
	l.page = rect{x, top, width - x, body}
	fields := 26
	if width >= 100 {
		fields = 32
	}
	l.fields = rect{x, top, fields, body}
	x += fields + 1
	rest := width - x
	if width >= 132 {
		plot := max(leastPlot, min(rest/3, rest-1-leastPane-1-cellWidth))
		l.plot = rect{width - plot, top, plot, body}
		rest -= plot + 1
	}
	l.figures = rect{x, top, rest, body}
	return l
}

// rows returns how many lines the body of the screen shows.
func (p *Planner) rows() int { return max(1, p.layout().page.h) }

// pageWidth returns the columns right of the schematic.
func (p *Planner) pageWidth() int { return p.layout().page.w }

// layout is how the window is divided now. What is played on the schematic is never alone.
func (p *Planner) layout() layout {
	alone := p.alone
	switch p.overlay.(type) {
	case *player, *walking:
		alone = false
	}
	return layoutFor(p.width, p.height, alone)
}
