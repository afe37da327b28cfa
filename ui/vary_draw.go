package ui

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/plot"
)

// Columns and rows of the table of two entries.
const (
	outcomeWidth  = 10 // a value and the mark of its finding
	leastOutcomes = 5
)

// tableContents returns how many contents of the first entry, or of the second, the table has room for.
func (p *Planner) tableContents(k int) int {
	if k == 0 {
		return max(leastOutcomes, min(15, p.rows()-tableHead-2))
	}
	return max(3, min(9, (p.varyRegion().w-tableSide)/outcomeWidth-1)) // the plan's own content comes between
}

// The table has its head and its side in so many rows and columns.
const (
	tableHead = 4
	tableSide = 13
)

// wideEnough is the width of a window from which the fields stay in sight beside the chart.
const wideEnough = 132

// varyRegion returns where the chart or the table stands: over figures and pictures, or in a narrow window over the page.
func (p *Planner) varyRegion() rect {
	l := p.layout()
	if p.width < wideEnough {
		return l.page
	}
	return rect{l.figures.x, l.figures.y, p.width - l.figures.x, l.figures.h}
}

func (u *varying) draw(p *Planner, page canvas.Region) {
	l, at := p.layout(), p.varyRegion()
	if at != l.page {
		p.drawFields(page.Sub(0, 0, l.fields.w, l.fields.h))
		page.VLine(at.x-1-l.page.x, 0, at.h, p.glyphs.Vertical, canvas.Faint)
	}
	r := page.Sub(at.x-l.page.x, 0, at.w, at.h)
	if u.table() {
		u.drawTable(p, r)
	} else {
		u.drawChart(p, r)
	}
}

func (u *varying) progress() string {
	if n := u.sweep.Size(); len(u.outcomes) < n {
		return fmt.Sprintf("%d of %d", len(u.outcomes), n)
	}
	return ""
}

func (u *varying) drawChart(p *Planner, r canvas.Region) {
	o := p.chartOptions(u.progress())
	o.Cursor, o.HasCursor = u.entry(0).Quantity.SI, true
	plot.DrawChart(r, u.sweep.Chart(u.outcomes), o)
}

// drawTable draws the first entry down, the second across, and the figure in the cells with the mark of the worst finding.
func (u *varying) drawTable(p *Planner, r canvas.Region) {
	down, across := u.sweep.Spans[0], u.sweep.Spans[1]
	unit := p.system.Unit(u.figure.Kind).Symbol()
	r.Text(1, 0, canvas.Cut(p.glyphs.Translate(strings.TrimSpace(figureName(u.figure)+" "+unit)), r.W()-10), canvas.Heading)
	r.TextRight(0, 0, r.W(), u.progress(), canvas.Faint)
	columns := max(1, (r.W()-tableSide)/outcomeWidth)
	first := figuresFrom(u.at[1], columns, len(across.Entries))
	hidden := hiddenColumns(first, len(across.Entries)-first-columns)
	r.Text(1, 1, canvas.Cut(p.glyphs.Translate(spanName(p, down)+" down, "+spanName(p, across)+" across"+hidden), r.W()-1), canvas.Plain)
	rows := r.H() - tableHead
	top := figuresFrom(u.at[0], rows, len(down.Entries))
	for j := first; j < len(across.Entries) && j < first+columns; j++ {
		x := tableSide + (j-first)*outcomeWidth
		r.TextRight(x, 3, outcomeWidth-2, contentText(p, across, j), canvas.Heading)
		if j == across.Now {
			r.TextRight(x, 2, outcomeWidth-2, "now", canvas.Heading)
		}
	}
	for i := top; i < len(down.Entries) && i < top+rows; i++ {
		y := tableHead + i - top
		r.TextRight(0, y, tableSide-1, contentText(p, down, i), canvas.Heading)
		if i == down.Now {
			r.Text(1, y, "now", canvas.Heading)
		}
		for j := first; j < len(across.Entries) && j < first+columns; j++ {
			u.drawOutcome(p, r.Sub(tableSide+(j-first)*outcomeWidth, y, outcomeWidth, 1), i, j)
		}
	}
	more(p, r, top > 0, top+rows < len(down.Entries))
}

// drawOutcome draws one cell of the table.
func (u *varying) drawOutcome(p *Planner, r canvas.Region, i, j int) {
	text, style := "", canvas.Plain
	if n := u.sweep.Number(i, j); n < len(u.outcomes) {
		t := &u.outcomes[n]
		text = p.number(t.Figure)
		if t.Severity > calc.OK {
			style = severityStyle(t.Severity)
			r.Text(outcomeWidth-2, 0, p.severityMark(t.Severity), style)
		}
	}
	if u.at == [2]int{i, j} {
		style = canvas.Focus
		r.Put(0, 0, p.glyphs.Mark, style)
	}
	r.TextRight(1, 0, outcomeWidth-3, text, style)
}

// spanName names an entry with its unit.
func spanName(p *Planner, s calc.Span) string {
	return strings.TrimSpace(s.Ref.Field.Label + " " + p.system.Unit(s.Ref.Field.Kind).Symbol())
}

// contentText writes a content without its unit.
func contentText(p *Planner, s calc.Span, k int) string {
	kind := s.Ref.Field.Kind
	return quantity.FormatValue(s.Entries[k].Quantity, kind, p.system.Unit(kind))
}
