package ui

import (
	"slices"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// figureLine is one line of figures: those that share a name, or the heading of a group.
type figureLine = wording.FigureLine

// makeFigureLines makes what figureLines returns.
func (p *Planner) makeFigureLines() []figureLine {
	return wording.FigureLines(p.result.Sheet(p.sheet()), p.topic)
}

// changeOf returns how much a figure has changed since the baseline, as text; nothing when it has not, or when there is
// nothing of the same section and name to compare with.
func (p *Planner) changeOf(f calc.Figure) string {
	if !p.sameSection(p.sheet()) {
		return ""
	}
	old, ok := p.compared.find(p.baseline.Sheet(p.sheet()), f.Key)
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
		return slices.ContainsFunc(l.Figures, func(f calc.Figure) bool {
			was, ok := old.Find(f.Key)
			return !ok || was.OK != f.OK || was.Value != f.Value
		})
	}
	rows := p.layout().figures.h
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

// noFigures is what is said of a page that has none.
const noFigures = "there are no figures on this page yet"

// drawFigures draws the figures pane: name, change, value, unit, and the further columns that have room.
func (p *Planner) drawFigures(r canvas.Region) {
	lines := p.figureLines()
	if len(lines) == 0 {
		r.Text(1, 0, "no figures yet", canvas.Faint)
		return
	}
	at := p.figureAt(lines)
	first := figuresFrom(at, r.H(), len(lines))
	for y := 0; y < r.H() && first+y < len(lines); y++ {
		below := lines[min(first+y+1, len(lines)-1)].Figures
		p.drawFigureLine(r.Sub(0, y, r.W(), 1), lines[first+y], below, first+y == at && p.figures)
	}
	if first > 0 {
		r.Put(r.W()-1, 0, p.glyphs.Up, canvas.Heading)
	}
	if first+r.H() < len(lines) {
		r.Put(r.W()-1, r.H()-1, p.glyphs.Down, canvas.Heading)
	}
}

// leastPane is the width of a figures pane that has room for names, changes and the first column; each cellWidth more shows one further.
const leastPane = 37

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
	if l.Heading != "" {
		p.drawHeading(r, l.Heading, mark, style, columns[:min(len(columns), 1+extra)], first)
		return
	}
	p.drawFigure(r.Sub(0, 0, first, 1), l.Figures, 1+extra, mark, style)
	for i := 1; i < len(l.Figures) && i <= extra; i++ {
		p.drawCell(r, first+(i-1)*cellWidth, cellWidth, l.Figures[i])
	}
}

// drawHeading draws the heading of a group, and over the columns of the line below it, the second of which begins at x, their names.
// A name that is too wide is squeezed; that of the second column may begin over the first, which has none.
func (p *Planner) drawHeading(r canvas.Region, heading, mark string, style canvas.Style, columns []calc.Figure, x int) {
	if style == canvas.Plain {
		style = canvas.Heading
	}
	left := r.Text(0, 0, mark+p.glyphs.Translate(heading), style) + 2
	for i := 1; i < len(columns); i++ {
		right := x + i*cellWidth
		room := right - max(left, right-2*cellWidth+1)
		name := canvas.Squeeze(p.glyphs.Translate(columns[i].Column), room)
		r.TextRight(right-room, 0, room, name, canvas.Faint)
		left = right + 1
	}
}

// drawFigure draws the first figure of a line, its name reversed in focus, with its change before the value; shown is how many of its figures have room on the
// line. Neither a number nor a unit is ever cut, and the name not for the sake of the change: that is drawn as a mark where it has no
// room.
func (p *Planner) drawFigure(r canvas.Region, figures []calc.Figure, shown int, mark string, style canvas.Style) {
	f := figures[0]
	unit, number := p.unit(f), p.number(f)
	width := max(numberWidth, canvas.Width(number))
	value := r.W() - width - max(unitWidth, canvas.Width(unit)+1)
	begins := value + width - canvas.Width(number)
	name := p.glyphs.Translate(f.Name)
	change := p.changeOf(f)
	if change == "" && p.changed(figures[min(shown, len(figures)):]) {
		change = changedMark // a column that is not shown
	}
	if change != "" && !p.drawChange(r, 1+canvas.Width(name), value, begins, change, 2) {
		change = p.changeSign(change)
		name = nameIn(name, begins-4)
		p.drawChange(r, 1+canvas.Width(name), value, begins, change, 1)
	}
	name = nameIn(name, begins-2)
	r.Text(0, 0, mark+name, style)
	if count := p.strokesOf(figures); shown == 1 && change == "" && canvas.Width(name)+canvas.Width(count)+1 <= value-2 {
		r.TextRight(value-1-canvas.Width(count), 0, canvas.Width(count), count, canvas.Plain)
	}
	r.TextRight(value, 0, width, number, canvas.Plain)
	r.Text(value+width+1, 0, unit, canvas.Plain)
}

// drawChange draws a change between the end of a name and the beginning of a number, before the column of values where it can, and
// so many blanks at least before the number. It reports whether there was room.
func (p *Planner) drawChange(r canvas.Region, from, value, number int, change string, blanks int) bool {
	w := canvas.Width(change)
	x := max(from+1, min(value+1, number)-blanks-w)
	if x+w+blanks > number {
		return false
	}
	r.Text(x, 0, change, canvas.Changed)
	return true
}

// changeSign says of a change that has no room no more than that the figure rose or fell. It is no plus or minus, which would be read
// as that of the value beside it.
func (p *Planner) changeSign(change string) string {
	switch change[0] {
	case '+':
		return string(p.glyphs.Up)
	case '-':
		return string(p.glyphs.Down)
	}
	return changedMark
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

// drawCell draws a figure in a column of a width, with the mark of a change before it.
func (p *Planner) drawCell(r canvas.Region, x, width int, f calc.Figure) {
	text, style := p.cellText(f), canvas.Plain
	if strings.HasPrefix(text, changedMark) {
		style = canvas.Changed
	}
	r.TextRight(x, 0, width, text, style)
}

// cellText writes a figure for a column.
func (p *Planner) cellText(f calc.Figure) string {
	if p.changeOf(f) != "" {
		return changedMark + p.cell(f)
	}
	return p.cell(f)
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
