package sheet

import (
	"strings"

	"borewalk/ui/canvas"
)

// Measures of a text sheet, in columns. No line is wider than the page.
const (
	pageWidth  = 80
	labelWidth = 44 // labels up to this width have their values in line
	nameWidth  = 30 // and names of rows
	alignWidth = 24 // columns of words up to this width are in line
	indent     = 2
)

// textSheet sets lines. A label stands before its value and there are no boxes, so that a screen reader gives the
// sheet in the order in which it is meant.
type textSheet struct {
	pieces []piece
	lines  [][]string // of each piece
	gap    float64    // wanted above the next piece
}

// String returns the lines without a break.
func (t *textSheet) String() string {
	var b strings.Builder
	for i, lines := range t.lines {
		b.WriteString(strings.Repeat("\n", int(t.pieces[i].gap)))
		b.WriteString(strings.Join(lines, "\n") + "\n")
	}
	return b.String()
}

func (t *textSheet) page(s page) {
	t.heading(s.title)
	t.together(func() { t.pairs(s.head) })
	for i := range s.parts {
		if !s.parts[i].empty() {
			t.gap = 1
			from := len(t.pieces)
			t.part(&s.parts[i])
			holdTogether(t.pieces[from:], smallPart)
		}
	}
	if s.foot != "" {
		t.gap = 1
		t.together(func() { t.wrapped(s.foot, 0, 0) })
	}
}

func (t *textSheet) part(p *part) {
	t.heading(p.title)
	t.pairs(p.pairs)
	if p.tall && len(p.rows) > 0 {
		t.tall(p.rowHead, p.rows)
	} else {
		t.rows(p.rows)
	}
	for _, it := range p.items {
		t.together(func() {
			t.wrapped(it.mark+": "+it.text, 0, indent)
			for _, line := range it.lines {
				t.wrapped(line, indent, 2*indent)
			}
		})
	}
	for _, remark := range p.remarks {
		t.together(func() { t.wrapped(remark, 0, indent) })
	}
	t.drawn(p.drawn)
}

// drawn writes a drawing, on one page unless it is higher.
func (t *textSheet) drawn(lines []string) {
	from := len(t.pieces)
	for _, line := range lines {
		t.line(line)
	}
	holdTogether(t.pieces[from:], bodyLines)
}

// together joins the lines that are written meanwhile into one piece, so that no page parts them, unless they are many.
func (t *textSheet) together(write func()) {
	from := len(t.pieces)
	write()
	if n := len(t.pieces) - from; n > 1 && n <= smallPart {
		t.pieces[from].height = float64(n)
		for _, lines := range t.lines[from+1:] {
			t.lines[from] = append(t.lines[from], lines...)
		}
		t.pieces, t.lines = t.pieces[:from+1], t.lines[:from+1]
	}
}

// heading writes a line underlined with hyphens; one that is too wide is cut, since what it names stands in full below.
func (t *textSheet) heading(title string) {
	title = strings.Join(strings.Fields(title), " ")
	if canvas.Width(title) > pageWidth {
		title = canvas.Clip(title, pageWidth-3) + "..."
	}
	t.together(func() {
		t.line(title)
		t.line(strings.Repeat("-", canvas.Width(title)))
	})
	t.pieces[len(t.pieces)-1].hold = true
}

// line writes one line. The cut is a last resort: whoever calls has made it fit.
func (t *textSheet) line(text string) {
	t.pieces = append(t.pieces, piece{height: 1, gap: t.gap})
	t.lines = append(t.lines, []string{strings.TrimRight(canvas.Clip(text, pageWidth), " ")})
	t.gap = 0
}

// wrapped writes a paragraph, its first line indented by first and the others by rest.
func (t *textSheet) wrapped(text string, first, rest int) {
	for i, line := range wrap(text, pageWidth-first, pageWidth-rest) {
		if i == 0 {
			t.line(blanks(first) + line)
		} else {
			t.line(blanks(rest) + line)
		}
	}
}

// pairs writes labels and values, the values in line where the labels leave room.
func (t *textSheet) pairs(pairs []pair) {
	width := 0
	for _, p := range pairs {
		if w := canvas.Width(p.label); w <= labelWidth {
			width = max(width, w)
		}
	}
	at := width + len(": ")
	for _, p := range pairs {
		t.together(func() { t.pair(p, at) })
	}
}

// pair writes a label, and its value from a column on.
func (t *textSheet) pair(p pair, at int) {
	label := p.label + ":"
	if canvas.Width(label) >= at {
		t.wrapped(label+" "+p.value, 0, indent)
		return
	}
	for i, line := range wrap(p.value, pageWidth-at, pageWidth-at) {
		if i == 0 {
			t.line(pad(label, at) + line)
		} else {
			t.line(blanks(at) + line)
		}
	}
}

// rows writes a table line by line, each value after its label. What does not fit goes to lines below. The gaps between
// numbers are narrower if that lets every line fit.
func (t *textSheet) rows(rows []row) {
	names := 0
	for _, r := range rows {
		if w := canvas.Width(r.name); w <= nameWidth {
			names = max(names, w)
		}
	}
	cells, widest := aligned(rows)
	gap := blanks(2)
	if numbersOnly(rows) && names+widest(2) > pageWidth && names+widest(1) <= pageWidth {
		gap = blanks(1)
	}
	for i, r := range rows {
		t.together(func() { t.row(r.name, cells[i], names, gap) })
	}
}

// row writes a name in so many columns and the cells after it, on as many lines as they take.
func (t *textSheet) row(name string, cells []string, names int, gap string) {
	line := pad(name, names)
	if canvas.Width(name) > names {
		t.wrapped(name, 0, indent)
		line = blanks(names)
	}
	for _, text := range cells {
		if canvas.Width(line+gap+strings.TrimRight(text, " ")) <= pageWidth {
			line += gap + text
			continue
		}
		t.unlessBlank(line)
		line = blanks(names) + gap + text
		if canvas.Width(strings.TrimRight(line, " ")) > pageWidth {
			t.wrapped(text, 2*indent, 2*indent)
			line = blanks(names)
		}
	}
	t.unlessBlank(line)
}

func numbersOnly(rows []row) bool {
	for _, r := range rows {
		for _, c := range r.cells {
			if !c.number {
				return false
			}
		}
	}
	return true
}

func (t *textSheet) unlessBlank(line string) {
	if strings.TrimSpace(line) != "" {
		t.line(line)
	}
}

// aligned returns the cells of each row as text, padded so that they stand in columns with those of other rows that have
// the same labels before them, and the width of the widest row of cells with gaps of so many blanks before each.
func aligned(rows []row) (cells [][]string, widest func(gap int) int) {
	widths := map[string]int{}
	each := func(visit func(i int, c cell, before string)) {
		for i, r := range rows {
			before := ""
			for _, c := range r.cells {
				if !c.spare {
					before += "\n" + c.label
					visit(i, c, before)
				}
			}
		}
	}
	each(func(_ int, c cell, before string) {
		if w := canvas.Width(c.value); c.number || w <= alignWidth {
			widths[before] = max(widths[before], w)
		}
	})
	cells = make([][]string, len(rows))
	each(func(i int, c cell, before string) { cells[i] = append(cells[i], c.text(widths[before])) })
	return cells, func(gap int) int {
		most := 0
		for _, row := range cells {
			width := 0
			for _, text := range row {
				width += gap + canvas.Width(text)
			}
			most = max(most, width)
		}
		return most
	}
}

// text returns a cell as its label and its value, which is set to a width: numbers to the right, words to the left.
func (c cell) text(width int) string {
	value := c.value
	switch room := width - canvas.Width(value); {
	case room <= 0:
	case c.number:
		value = blanks(room) + value
	default:
		value += blanks(room)
	}
	if c.label == "" {
		return value
	}
	return c.label + " " + value
}
