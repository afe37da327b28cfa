package ui

import (
	"slices"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// figureLine is one line of figures: those that share a name, or the heading of a group.
type figureLine struct {
	heading string
	figures []calc.Figure
}

// figureLines returns the figures of the page as lines.
func (p *Planner) figureLines() []figureLine {
	var lines []figureLine
	group := ""
	for _, f := range p.result.Sheet(p.sheet()).Figures {
		if f.Topic != p.topic {
			continue
		}
		if f.Group != group {
			group = f.Group
			lines = append(lines, figureLine{heading: group})
		}
		if f.Column != "" && len(lines) > 0 && len(lines[len(lines)-1].figures) > 0 {
			last := &lines[len(lines)-1]
			last.figures = append(last.figures, f)
			continue
		}
		lines = append(lines, figureLine{figures: []calc.Figure{f}})
	}
	return lines
}

// changeOf returns how much a figure has changed since the baseline, as text; nothing when it has not, or when there is
// nothing of the same section and name to compare with.
func (p *Planner) changeOf(f calc.Figure) string {
	if !p.sameSection(p.sheet()) {
		return ""
	}
	old, ok := p.baseline.Sheet(p.sheet()).Find(f.Key)
	switch {
	case !ok || old.Name != f.Name || !old.OK && f.OK:
		return "new"
	case old.OK && !f.OK:
		return "gone"
	case !f.OK:
		return ""
	}
	return quantity.FormatChange(f.Value-old.Value, f.Kind, p.system.Unit(f.Kind))
}

// changed reports whether any figure of a line has changed since the baseline.
func (p *Planner) changed(figures []calc.Figure) bool {
	return slices.ContainsFunc(figures, func(f calc.Figure) bool { return p.changeOf(f) != "" })
}

// followChange brings into view what an edit has changed on the page, when nothing of it is in sight.
func (p *Planner) followChange(before *calc.Result) {
	lines := p.figureLines()
	if p.figures || p.view != viewFields || len(lines) == 0 || before == nil {
		return
	}
	old := before.Sheet(p.sheet())
	moved := func(l figureLine) bool {
		return slices.ContainsFunc(l.figures, func(f calc.Figure) bool {
			was, ok := old.Find(f.Key)
			return !ok || was.OK != f.OK || was.Value != f.Value
		})
	}
	rows := layoutFor(p.width, p.height).figures.h
	top := figuresFrom(p.figureAt(lines), rows, len(lines))
	if slices.ContainsFunc(lines[top:min(top+rows, len(lines))], moved) {
		return
	}
	if first := slices.IndexFunc(lines, moved); first >= 0 {
		p.focusFigure(lines, first+rows/2-1)
	}
}

// figuresFrom returns the first line that a pane of so many rows shows with the focus on a line.
func figuresFrom(at, rows, lines int) int { return max(0, min(at-rows/2, lines-rows)) }

// sameSection reports whether a sheet of the baseline is of the same section: after sections were added or taken away
// those that stand at one place need not be.
func (p *Planner) sameSection(i int) bool {
	if i < 0 {
		return true
	}
	old, now := p.baseline.Sketch.Sections, p.result.Sketch.Sections
	return len(old) == len(now) && old[i].Name == now[i].Name
}

// number formats a figure without its unit; a dash when it is blank.
func (p *Planner) number(f calc.Figure) string {
	if !f.OK {
		return "-"
	}
	return quantity.Format(f.Value, f.Kind, p.system.Unit(f.Kind))
}

func (p *Planner) unit(f calc.Figure) string {
	if !f.OK {
		return ""
	}
	return p.glyphs.Translate(p.system.Unit(f.Kind).Symbol())
}

// Columns of the figures pane, in cells.
const (
	numberWidth = 7
	unitWidth   = 6
)

// drawFigures draws the figures pane: name, value, unit, change.
func (p *Planner) drawFigures(r canvas.Region) {
	lines := p.figureLines()
	at := p.figureAt(lines)
	first := figuresFrom(at, r.H(), len(lines))
	for y := 0; y < r.H() && first+y < len(lines); y++ {
		below := lines[min(first+y+1, len(lines)-1)].figures
		p.drawFigureLine(r.Sub(0, y, r.W(), 1), lines[first+y], below, first+y == at && p.figures)
	}
	if first > 0 {
		r.Put(r.W()-1, 0, p.glyphs.Up, canvas.Heading)
	}
	if first+r.H() < len(lines) {
		r.Put(r.W()-1, r.H()-1, p.glyphs.Down, canvas.Heading)
	}
}

// leastPane is the width of a figures pane that shows the first column alone; each cellWidth more shows one further.
const leastPane = 33

func (p *Planner) drawFigureLine(r canvas.Region, l figureLine, columns []calc.Figure, focused bool) {
	mark, style := " ", canvas.Plain
	if focused {
		mark, style = string(p.glyphs.Mark), canvas.Focus
	}
	extra := max(0, min((r.W()-1-leastPane)/cellWidth, 3))
	first := r.W()
	if extra > 0 {
		first = r.W() - 1 - extra*cellWidth
	}
	if l.heading != "" {
		if !focused {
			style = canvas.Heading
		}
		r.Text(0, 0, mark+p.glyphs.Translate(l.heading), style)
		for i := 1; i < len(columns) && i <= extra; i++ {
			r.TextRight(first+(i-1)*cellWidth, 0, cellWidth, p.glyphs.Translate(columns[i].Column), canvas.Faint)
		}
		return
	}
	f := l.figures[0]
	change := p.changeOf(f)
	if change == "" && p.changed(l.figures[1:]) {
		change = changedMark // a column of the table
	}
	unit := p.unit(f)
	number := p.number(f)
	width := max(numberWidth, canvas.Width(number))
	value := first - width - max(unitWidth, canvas.Width(unit)+1) // neither a number nor a unit is ever cut
	room := value - 2
	if spare := len(l.figures) - 1; change != "" && spare < extra { // a column stands empty
		r.TextRight(first+spare*cellWidth, 0, cellWidth, change, canvas.Changed)
	} else if change != "" {
		long := max(canvas.Width(change), 1)
		room -= long + 1
		r.TextRight(value-long-1, 0, long, change, canvas.Changed)
	}
	name := nameIn(p.glyphs.Translate(f.Name), room)
	r.Text(0, 0, mark+name, style)
	if count := p.strokesOf(l.figures); extra == 0 && change == "" && canvas.Width(name)+canvas.Width(count)+1 <= room {
		r.TextRight(value-1-canvas.Width(count), 0, canvas.Width(count), count, style)
	}
	r.TextRight(value, 0, width, number, style)
	r.Text(value+width+1, 0, unit, style)
	for i := 1; i < len(l.figures) && i <= extra; i++ {
		p.drawCell(r, first+(i-1)*cellWidth, l.figures[i], style)
	}
}

// nameIn returns the name of a figure in so many columns, by the abbreviations of the trade where it is longer.
func nameIn(name string, room int) string {
	if canvas.Width(name) > room {
		name = strings.NewReplacer("Volume", "Vol", "Weight", "Wt", "Pressure", "Press", "Annulus", "Ann", "Displaced", "Displ", "casing", "csg", "Casing", "Csg",
			"collar", "clr", "Bottoms-up", "BU", "equivalent", "equiv").Replace(name)
	}
	return canvas.Squeeze(name, room)
}

// strokesOf returns the strokes of a line that counts them, which a narrow pane shows before the volume.
func (p *Planner) strokesOf(figures []calc.Figure) string {
	for _, f := range figures[1:] {
		if f.Kind == quantity.Strokes && f.OK {
			return p.cell(f)
		}
	}
	return ""
}

// changedMark stands before a figure in a column that has changed since the baseline.
const changedMark = "~"

// drawCell draws a figure in a column, with the mark of a change before it.
func (p *Planner) drawCell(r canvas.Region, x int, f calc.Figure, style canvas.Style) {
	text := p.cell(f)
	if p.changeOf(f) == "" {
		r.TextRight(x, 0, cellWidth, text, style)
		return
	}
	if style == canvas.Plain {
		style = canvas.Changed
	}
	r.TextRight(x, 0, cellWidth, changedMark+text, style)
}

// drawTable draws the figures with all their columns across the page.
func (p *Planner) drawTable(r canvas.Region) {
	lines := p.figureLines()
	at := p.figureAt(lines)
	rows := r.H()
	first := figuresFrom(at, rows, len(lines))
	for y := 0; y < rows && first+y < len(lines); y++ {
		p.drawTableLine(r.Sub(0, y, r.W(), 1), lines[first+y], lines[min(first+y+1, len(lines)-1)].figures, first+y == at && p.figures)
	}
	more(p, r, first > 0, first+rows < len(lines))
}

// The table gives a name at least so many cells, and each column so many with its unit.
const (
	leastName = 19
	cellWidth = 13
)

// drawTableLine draws a line of the table; a heading carries the names of the columns of the line below it. Columns that
// do not fit are left out; the line below the page shows them all.
func (p *Planner) drawTableLine(r canvas.Region, l figureLine, below []calc.Figure, focused bool) {
	mark, style := " ", canvas.Plain
	if focused {
		mark, style = string(p.glyphs.Mark), canvas.Focus
	}
	columns := max(1, min((r.W()-2-leastName)/cellWidth, 5))
	name := r.W() - 1 - columns*cellWidth
	if l.heading != "" {
		if !focused {
			style = canvas.Heading
		}
		r.Text(0, 0, mark+p.glyphs.Translate(l.heading), style)
		for i, f := range below {
			if i > 0 && i < columns {
				r.TextRight(name+i*cellWidth, 0, cellWidth, p.glyphs.Translate(f.Column), canvas.Faint)
			}
		}
		return
	}
	r.Text(0, 0, mark+canvas.Squeeze(p.glyphs.Translate(l.figures[0].Name), name-1), style)
	for i, f := range l.figures {
		if i < columns {
			p.drawCell(r, name+i*cellWidth, f, style)
		}
	}
}

func (p *Planner) cell(f calc.Figure) string {
	if !f.OK {
		return "-"
	}
	return p.number(f) + " " + p.unit(f)
}

// inWords puts a line of figures in words: every column with its change, and where it holds.
func (p *Planner) inWords(figures []calc.Figure) string {
	text := ""
	for i, f := range figures {
		if i > 0 {
			text += "  "
		}
		if f.Column != "" {
			text += f.Column + " "
		}
		text += p.cell(f)
		if change := p.changeOf(f); change != "" {
			text += " [" + change + "]"
		}
		if f.Note != "" {
			text += " (" + f.Note + ")"
		}
	}
	return text
}

func itoa(n int) string { return strconv.Itoa(n) }
