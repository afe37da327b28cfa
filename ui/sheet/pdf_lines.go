package sheet

import (
	"borewalk/ui/vector"
)

// lineCell is a cell on its way into a line: what it is called, and its value in a slot as wide as those of its column.
type lineCell struct {
	label, value string
	named, slot  float64
	number       bool
}

func (c *lineCell) width() float64 { return c.named + c.slot }

// lines writes rows one by one, each value after its label, with as many lines as it takes. Values that come after the same labels
// stand below each other.
func (t *pdfSheet) lines(rows []row) {
	name := 0.0
	for i := range rows {
		name = max(name, min(nameMost, t.width(rows[i].name, body())))
	}
	cells := t.lineCells(rows)
	for i := range rows {
		t.lineRow(rows[i].name, cells[i], name)
	}
}

// lineCells measures the cells of rows.
func (t *pdfSheet) lineCells(rows []row) [][]lineCell {
	const alignMost = 30 // words up to this width stand below each other
	slots := map[string]float64{}
	visit := func(each func(i int, c *cell, before string)) {
		for i := range rows {
			before := ""
			for k := range rows[i].cells {
				if c := &rows[i].cells[k]; !c.spare {
					before += "\n" + c.label
					each(i, c, before)
				}
			}
		}
	}
	visit(func(_ int, c *cell, before string) {
		if w := t.width(c.value, body()); c.number || w <= alignMost {
			slots[before] = max(slots[before], w)
		}
	})
	list := make([][]lineCell, len(rows))
	visit(func(i int, c *cell, before string) {
		set := lineCell{label: c.label, value: c.value, number: c.number, slot: max(slots[before], t.width(c.value, body()))}
		if c.label != "" {
			set.named = t.width(c.label, label()) + 1.2
		}
		list[i] = append(list[i], set)
	})
	return list
}

// lineRow adds a row, on one page unless it has many lines.
func (t *pdfSheet) lineRow(name string, cells []lineCell, names float64) {
	type set struct {
		x float64
		n int // line
		c lineCell
	}
	var sets []set
	left := names + columnGap
	x, n := left, 0
	broken := t.wrap(name, body(), names+0.1, names+0.1)
	for _, c := range cells {
		if left+c.width() <= textWidth {
			if x > left && x+c.width() > textWidth {
				x, n = left, n+1
			}
			sets = append(sets, set{x, n, c})
			x += c.width() + columnGap
			continue
		}
		if x > left { // words that fill lines begin one
			n++
		}
		for _, line := range t.wrap(c.value, body(), textWidth-left-c.named, textWidth-left) {
			sets = append(sets, set{left, n, lineCell{label: c.label, value: line, named: c.named}})
			c.label, c.named, n = "", 0, n+1
		}
		x, n = textWidth, n-1 // the next begins a line
	}
	from := len(t.pieces)
	for k := range max(n+1, len(broken)) {
		t.add(lineHeight, func(y float64) {
			if k < len(broken) {
				t.text(sideMargin, y+lineHeight/2, broken[k], body())
			}
			for i := range sets {
				if sets[i].n == k {
					t.lineCell(&sets[i].c, sideMargin+sets[i].x, y+lineHeight/2)
				}
			}
		})
	}
	holdTogether(t.pieces[from:], smallHeight)
}

// lineCell writes what a cell is called and its value.
func (t *pdfSheet) lineCell(c *lineCell, x, middle float64) {
	t.text(x, middle, c.label, label())
	if c.number {
		right := body()
		right.Align = vector.Right
		t.text(x+c.width(), middle, c.value, right)
		return
	}
	t.text(x+c.named, middle, c.value, body())
}
