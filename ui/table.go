package ui

import (
	"fmt"
	"slices"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// The table gives a name at least so many cells, and each column so many with its unit; more columns than the most no line has.
const (
	leastName   = 19
	cellWidth   = 13
	mostColumns = 6
)

// tableColumns returns how many columns have room beside the names.
func (p *Planner) tableColumns() int {
	return max(1, min((p.pageWidth()-2-leastName)/cellWidth, mostColumns))
}

// furtherColumns returns how far the columns of the page can be moved on.
func (p *Planner) furtherColumns() (further int) {
	for _, l := range p.figureLines() {
		further = max(further, len(l.Figures)-p.tableColumns())
	}
	return further
}

// moveColumns moves them by one, and says so: what is in view may have no more of them.
func (p *Planner) moveColumns(by int) {
	p.column = min(p.column, p.furtherColumns()) + by
	p.message = "the table begins at its first column"
	if p.column > 0 {
		p.message = fmt.Sprintf("the table is moved by %d of %d columns; left moves back", p.column, p.furtherColumns())
	}
}

// columnOf returns the first column shown of so many: a line with fewer than others moves no further than it has to.
func (p *Planner) columnOf(columns int) int { return max(0, min(p.column, columns-p.tableColumns())) }

// drawTable draws the figures with all their columns across the page.
func (p *Planner) drawTable(r canvas.Region) {
	lines := p.figureLines()
	if len(lines) == 0 {
		r.Text(1, 0, noFigures, canvas.Faint)
		return
	}
	at := p.figureAt(lines)
	rows := r.H()
	first := figuresFrom(at, rows, len(lines))
	for y := 0; y < rows && first+y < len(lines); y++ {
		p.drawTableLine(r.Sub(0, y, r.W(), 1), lines[first+y], lines[min(first+y+1, len(lines)-1)].Figures, first+y == at && p.figures)
	}
	more(p, r, first > 0, first+rows < len(lines))
}

// drawTableLine draws a line of the table; a heading carries the names of the columns of the line below it, and how many have no room
// on either side. The name stays where it is.
func (p *Planner) drawTableLine(r canvas.Region, l figureLine, below []calc.Figure, focused bool) {
	mark, style := " ", canvas.Plain
	if focused {
		mark, style = string(p.glyphs.Mark), canvas.Focus
	}
	columns := p.tableColumns()
	name := r.W() - 1 - columns*cellWidth
	if l.Heading != "" {
		first := p.columnOf(len(below))
		heading := l.Heading + hiddenColumns(first, len(below)-first-columns)
		shown := below[:min(first+columns, len(below))]
		if first > 0 { // the first of them has a name too
			p.drawHeading(r, heading, mark, style, shown[first-1:], name)
		} else {
			p.drawHeading(r, heading, mark, style, shown, name+cellWidth)
		}
		return
	}
	end := r.Text(0, 0, mark+canvas.Squeeze(p.glyphs.Translate(l.Figures[0].Name), name-1), style)
	first := p.columnOf(len(l.Figures))
	p.drawCells(r.Sub(end, 0, r.W()-end, 1), name-end, l.Figures[first:min(first+columns, len(l.Figures))])
}

// drawCells draws figures in columns from x on. One too wide for its column moves those before it to the left, as far as the name
// leaves room.
func (p *Planner) drawCells(r canvas.Region, x int, figures []calc.Figure) {
	free := r.W()
	for i, f := range slices.Backward(figures) {
		right := min(x+(i+1)*cellWidth, free)
		left := min(right-cellWidth, right-1-canvas.Width(p.cellText(f)))
		p.drawCell(r, max(left, 0), right-max(left, 0), f)
		free = left
	}
}

// hiddenColumns says how many columns have no room on either side: "<1 2>".
func hiddenColumns(left, right int) (text string) {
	if left > 0 {
		text += fmt.Sprintf(" <%d", left)
	}
	if right > 0 {
		text += fmt.Sprintf(" %d>", right)
	}
	return text
}
