package sheet

import "borewalk/ui/vector"

// Measures of a tall table, in mm.
const (
	tallHeight = 3.9
	formHeight = 6.5 // of a row that is written by hand
	tallGap    = 6   // between columns, at most
)

// tallTable is a table of more rows than a page has, with the widths of its columns.
type tallTable struct {
	face   vector.Type
	gap    float64
	name   float64
	widths []float64
	height float64 // of a row
}

// tall writes the rows of a tall table, and a line where they become part of something else. The heads of the columns come again
// on every page.
func (t *pdfSheet) tall(head string, rows []row) {
	m := t.measured(head, rows)
	heads := len(t.pieces)
	t.add(2*lineHeight, func(y float64) {
		grey := m.face
		grey.Grey = vector.Dark
		t.tallLine(&m, y+lineHeight/2, grey, head, &rows[0], func(c *cell) string { return c.label })
		t.tallLine(&m, y+lineHeight*3/2-0.4, grey, "", &rows[0], func(c *cell) string { return c.unit })
		t.line(sideMargin, y+2*lineHeight-0.3, sideMargin+textWidth, y+2*lineHeight-0.3, vector.Stroke{Width: 0.15})
	})
	t.hold()
	for n := range rows {
		r := &rows[n]
		of := r.of != "" && (n == 0 || r.of != rows[n-1].of)
		height := m.height
		if of {
			height += lineHeight
		}
		t.add(height, func(y float64) {
			if of {
				t.text(sideMargin, y+lineHeight/2, t.fit("from here "+r.of, m.face, textWidth), vector.Type{Size: m.face.Size, Bold: true})
				y += lineHeight
			}
			t.tallLine(&m, y+m.height/2, m.face, r.name, r, func(c *cell) string { return c.value })
			t.line(sideMargin, y+m.height, sideMargin+textWidth, y+m.height, vector.Stroke{Width: 0.1, Grey: vector.Light})
		})
		t.pieces[len(t.pieces)-1].again = len(t.pieces) - 1 - heads
	}
}

// measured returns the measures of a tall table, in the largest type in which it has room.
func (t *pdfSheet) measured(head string, rows []row) (m tallTable) {
	const least, step = 5.0, 0.5
	m.height = tallHeight
	for m.face.Size = bodySize; m.face.Size >= least; m.face.Size -= step {
		m.name, m.widths = t.width(head, m.face), make([]float64, len(rows[0].cells))
		used := 0.0
		for _, r := range rows {
			m.name = max(m.name, min(nameMost, t.width(r.name, m.face)))
			for k, c := range r.cells {
				m.widths[k] = max(m.widths[k], t.width(c.label, m.face), t.width(c.unit, m.face), t.width(c.value, m.face))
				if c.value == toFillIn || c.value == toFillForm {
					m.height = formHeight
				}
			}
		}
		for _, w := range m.widths {
			used += w
		}
		if m.gap = min(tallGap, (textWidth-m.name-used)/float64(max(len(m.widths), 1))); m.gap >= 1.5 {
			break
		}
	}
	return m
}

// tallLine writes a name and a text of each cell.
func (t *pdfSheet) tallLine(m *tallTable, middle float64, face vector.Type, name string, r *row, text func(*cell) string) {
	t.text(sideMargin, middle, t.fit(name, face, m.name), face)
	face.Align = vector.Right
	x := sideMargin + m.name
	for k := range r.cells {
		x += m.gap + m.widths[k]
		t.text(x, middle, text(&r.cells[k]), face)
	}
}
