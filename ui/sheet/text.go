package sheet

import (
	"bytes"
	"io"
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

// textSheet writes lines. A label stands before its value and there are no boxes, so that a screen reader gives the
// sheet in the order in which it is meant.
type textSheet struct {
	bytes.Buffer
}

func writeText(w io.Writer, pages []page) error {
	var t textSheet
	for i, s := range pages {
		if i > 0 {
			t.WriteString("\n\n")
		}
		t.page(s)
	}
	_, err := w.Write(t.Bytes())
	return err
}

func (t *textSheet) page(s page) {
	t.heading(s.title)
	t.pairs(s.head)
	for _, p := range s.parts {
		if len(p.pairs)+len(p.rows)+len(p.items)+len(p.remarks)+len(p.drawn) == 0 {
			continue
		}
		t.WriteByte('\n')
		t.heading(p.title)
		t.pairs(p.pairs)
		if p.tall && len(p.rows) > 0 {
			t.tall(p.rowHead, p.rows)
		} else {
			t.rows(p.rows)
		}
		for _, it := range p.items {
			t.wrapped(it.mark+": "+it.text, 0, indent)
			for _, line := range it.lines {
				t.wrapped(line, indent, 2*indent)
			}
		}
		for _, remark := range p.remarks {
			t.wrapped(remark, 0, indent)
		}
		for _, line := range p.drawn {
			t.line(line)
		}
	}
	if s.foot != "" {
		t.WriteByte('\n')
		t.wrapped(s.foot, 0, 0)
	}
}

// heading writes a line underlined with hyphens; one that is too wide is cut, since what it names stands in full below.
func (t *textSheet) heading(title string) {
	title = strings.Join(strings.Fields(title), " ")
	if canvas.Width(title) > pageWidth {
		title = canvas.Clip(title, pageWidth-3) + "..."
	}
	t.line(title)
	t.line(strings.Repeat("-", canvas.Width(title)))
}

// line writes one line. The cut is a last resort: whoever calls has made it fit.
func (t *textSheet) line(text string) {
	t.WriteString(strings.TrimRight(canvas.Clip(text, pageWidth), " "))
	t.WriteByte('\n')
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
		label := p.label + ":"
		if canvas.Width(label) >= at {
			t.wrapped(label+" "+p.value, 0, indent)
			continue
		}
		for i, line := range wrap(p.value, pageWidth-at, pageWidth-at) {
			if i == 0 {
				t.line(pad(label, at) + line)
			} else {
				t.line(blanks(at) + line)
			}
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
		line := pad(r.name, names)
		if canvas.Width(r.name) > names {
			t.wrapped(r.name, 0, indent)
			line = blanks(names)
		}
		for _, text := range cells[i] {
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
