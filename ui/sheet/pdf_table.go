package sheet

import (
	"fmt"
	"slices"

	"borewalk/ui/vector"
)

// Measures of a table, in mm.
const (
	nameMost  = 58  // for the names of rows, at most; longer ones are broken
	wordsMost = 26  // a column of words is no wider than this unless there is room
	leastFull = 0.4 // the share of its cells that a table must fill, or its rows are set one by one
)

// grid is a table with a column for each label.
type grid struct {
	name    float64 // width of the names
	columns []gridColumn
	heads   bool // there is a label to be written
}

type gridColumn struct {
	label, key string
	width      float64
	number     bool
}

// cellKeys returns what tells the column of each cell of a row: its label, and which of that label it is.
func cellKeys(r *row) (keys []string) {
	seen := map[string]int{}
	for _, c := range r.cells {
		if c.spare {
			keys = append(keys, "")
			continue
		}
		keys = append(keys, fmt.Sprint(c.head(), "\n", seen[c.head()]))
		seen[c.head()]++
	}
	return keys
}

// rows writes a table: with columns where they have room and are filled, otherwise row by row, each value after its label.
func (t *pdfSheet) rows(head string, rows []row) {
	if len(rows) == 0 {
		return
	}
	if g, ok := t.grid(head, rows); ok {
		t.table(head, rows, &g)
		return
	}
	t.lines(rows)
}

// grid measures the columns, and reports whether they have room and are filled.
func (t *pdfSheet) grid(head string, rows []row) (g grid, ok bool) {
	filled := 0
	for i := range rows {
		g.name = max(g.name, min(nameMost, t.width(rows[i].name, body())))
		for k, key := range cellKeys(&rows[i]) {
			if key == "" {
				continue
			}
			c := &rows[i].cells[k]
			at := slices.IndexFunc(g.columns, func(c gridColumn) bool { return c.key == key })
			if at < 0 {
				at = len(g.columns)
				g.columns = append(g.columns, gridColumn{label: c.head(), key: key, width: t.width(c.head(), label()), number: c.number})
				g.heads = g.heads || c.head() != ""
			}
			column := &g.columns[at]
			column.width = max(column.width, t.width(c.value, body()))
			column.number = column.number && c.number
			filled++
		}
	}
	if g.heads {
		g.name = max(g.name, t.width(head, label()))
	}
	slices.SortStableFunc(g.columns, func(a, b gridColumn) int { return a.last() - b.last() })
	return g, g.squeeze() && float64(filled) >= leastFull*float64(len(rows)*len(g.columns)) && !t.tooHigh(rows, &g)
}

// tooHigh reports whether a row is not to be kept on one page: its words, in the width that they have, would fill much of it.
func (t *pdfSheet) tooHigh(rows []row, g *grid) bool {
	return slices.ContainsFunc(rows, func(r row) bool {
		return float64(t.gridLines(&r, g).most)*lineHeight > smallHeight
	})
}

// last tells notes from the columns that they come after.
func (c gridColumn) last() int {
	if c.label == "note" {
		return 1
	}
	return 0
}

// squeeze makes columns of words narrower until the table has room, and reports whether it has.
func (g *grid) squeeze() bool {
	used, words := g.name, 0
	for _, c := range g.columns {
		used += columnGap + c.width
		if !c.number {
			words++
		}
	}
	for ; used > textWidth && words > 0; words-- {
		widest := -1
		for k, c := range g.columns {
			if !c.number && c.width > wordsMost && (widest < 0 || c.width > g.columns[widest].width) {
				widest = k
			}
		}
		if widest < 0 {
			return false
		}
		c := &g.columns[widest]
		less := min(used-textWidth, c.width-wordsMost)
		c.width, used = c.width-less, used-less
	}
	return used <= textWidth+1e-9
}

// table writes the rows below the heads of their columns, which come again on every page.
func (t *pdfSheet) table(head string, rows []row, g *grid) {
	heads := len(t.pieces)
	if g.heads {
		t.add(lineHeight, func(y float64) {
			t.text(sideMargin, y+lineHeight/2, head, label())
			g.each(func(c *gridColumn, x float64) { t.cell(c.label, c, x, y, label()) })
		})
		t.hold()
	}
	for i := range rows {
		t.gridRow(&rows[i], g)
		if g.heads {
			t.pieces[len(t.pieces)-1].again = len(t.pieces) - 1 - heads
		}
	}
}

// each visits the columns with their left edges.
func (g *grid) each(visit func(c *gridColumn, x float64)) {
	x := sideMargin + g.name
	for k := range g.columns {
		x += columnGap
		visit(&g.columns[k], x)
		x += g.columns[k].width
	}
}

// cell writes a text in a column: numbers to the right, words to the left.
func (t *pdfSheet) cell(text string, c *gridColumn, x, y float64, face vector.Type) {
	if c.number {
		face.Align, x = vector.Right, x+c.width
	}
	t.text(x, y+lineHeight/2, text, face)
}

// gridLines is a row with its texts broken into lines, for each column.
type gridLines struct {
	name  []string
	cells [][]string
	most  int // lines
}

func (t *pdfSheet) gridLines(r *row, g *grid) gridLines {
	const slack = 0.1 // mm: a text that is as wide as its column must not break for the last digit
	l := gridLines{name: t.wrap(r.name, body(), g.name+slack, g.name+slack), cells: make([][]string, len(g.columns))}
	l.most = len(l.name)
	for k, key := range cellKeys(r) {
		if at := slices.IndexFunc(g.columns, func(c gridColumn) bool { return c.key == key }); at >= 0 {
			width := g.columns[at].width + slack
			l.cells[at] = t.wrap(r.cells[k].value, body(), width, width)
			l.most = max(l.most, len(l.cells[at]))
		}
	}
	return l
}

// gridRow adds a row of a table as one piece, as high as its highest cell.
func (t *pdfSheet) gridRow(r *row, g *grid) {
	l := t.gridLines(r, g)
	t.add(float64(l.most)*lineHeight, func(y float64) {
		for i, line := range l.name {
			t.text(sideMargin, y+(float64(i)+0.5)*lineHeight, line, body())
		}
		at := 0
		g.each(func(c *gridColumn, x float64) {
			for i, line := range l.cells[at] {
				t.cell(line, c, x, y+float64(i)*lineHeight, body())
			}
			at++
		})
	})
}
