package ui

import (
	"slices"

	"borewalk/calc"
	"borewalk/model"
)

// held is a place in a list whose lines come and go: what the lines were when it was taken, and which of them it is.
type held[K comparable] struct {
	keys []K
	at   int
}

// in returns which of the lines as they are now has the place: the same one wherever it is still there, else the nearest that stood
// above it. A line without a key never has it.
func (h held[K]) in(now []K) int {
	var none K
	for i := min(h.at, len(h.keys)-1); i >= 0; i-- {
		if at := slices.Index(now, h.keys[i]); at >= 0 && h.keys[i] != none {
			return at
		}
	}
	return 0
}

// lineKey tells a line of the fields pane from the others of its page, in whatever section.
type lineKey struct {
	kind  lineKind
	group *model.Group
	field *model.Field
	place model.Place
}

func (l line) key() lineKey {
	k := lineKey{kind: l.kind, group: l.group, field: l.ref.Field, place: l.place}
	if l.kind == lineAdd {
		k.place = model.Place{} // it moves down as the list grows
	} else if l.group == model.SectionGroup() || l.group.Parent == model.SectionGroup() {
		k.place.Outer = 0
	}
	return k
}

func lineKeys(lines []line) []lineKey {
	keys := make([]lineKey, len(lines))
	for i, l := range lines {
		keys[i] = l.key()
	}
	return keys
}

// focusedLine returns the fields pane, and which of its lines has the focus.
func (p *Planner) focusedLine() (lines []line, at int) {
	lines = p.lines()
	return lines, p.fieldAt[p.topic].in(lineKeys(lines))
}

// focused returns the line that keys act on.
func (p *Planner) focused() line {
	lines, at := p.focusedLine()
	if len(lines) == 0 {
		return line{}
	}
	return lines[at]
}

// focusLine brings a line of the fields pane into focus.
func (p *Planner) focusLine(lines []line, at int) {
	p.fieldAt[p.topic] = held[lineKey]{lineKeys(lines), max(0, min(at, len(lines)-1))}
}

// figureKeys returns what tells the lines of figures of a page from each other. A heading has no key: it never has the focus.
func figureKeys(lines []figureLine) []string {
	keys := make([]string, len(lines))
	for i, l := range lines {
		if l.Heading == "" {
			keys[i] = l.Figures[0].Key
		}
	}
	return keys
}

// figureAt returns the line of figures in focus: never a heading, but the first line below it.
func (p *Planner) figureAt(lines []figureLine) int {
	return belowHeading(lines, p.figAt[p.topic].in(figureKeys(lines)))
}

// focusFigure brings a line of figures into focus.
func (p *Planner) focusFigure(lines []figureLine, at int) {
	p.figAt[p.topic] = held[string]{figureKeys(lines), belowHeading(lines, max(0, min(at, len(lines)-1)))}
}

func belowHeading(lines []figureLine, at int) int {
	for at < len(lines)-1 && lines[at].Heading != "" {
		at++
	}
	return at
}

// focusedFigures returns the line of figures that has the focus.
func (p *Planner) focusedFigures() []calc.Figure {
	lines := p.figureLines()
	if len(lines) == 0 {
		return nil
	}
	return lines[p.figureAt(lines)].Figures
}

// focusedFigure returns the first figure of the focused line.
func (p *Planner) focusedFigure() (calc.Figure, bool) {
	if figures := p.focusedFigures(); len(figures) > 0 {
		return figures[0], true
	}
	return calc.Figure{}, false
}

// settle keeps the focus where it has come to be, so that it does not go back when what it was on before is shown again. While an
// entry is being typed it may: what is half typed takes lines away that come back with the next key.
func (p *Planner) settle() {
	if p.edit != nil {
		return
	}
	p.focusLine(p.focusedLine())
	figures := p.figureLines()
	p.focusFigure(figures, p.figureAt(figures))
}

// move moves the focus, and says where there is nothing further.
func (p *Planner) move(n int) {
	at := func() int {
		if p.figures {
			return p.figureAt(p.figureLines())
		}
		_, at := p.focusedLine()
		return at
	}
	before := at()
	if p.moveBy(n); at() == before {
		p.message = "the page ends here; tab turns to the next"
		if n < 0 {
			p.message = "the page begins here"
		}
	}
}

// moveBy moves the focus among the fields or the figures.
func (p *Planner) moveBy(n int) {
	if p.figures {
		p.moveFigure(n)
		return
	}
	lines, at := p.focusedLine()
	p.focusLine(lines, at+n)
}

// moveFigure moves the focus by n lines among the figures, passing over headings.
func (p *Planner) moveFigure(n int) {
	lines := p.figureLines()
	at := max(0, min(p.figureAt(lines)+n, len(lines)-1))
	for n < 0 && at > 0 && lines[at].Heading != "" {
		at--
	}
	p.focusFigure(lines, at)
}
