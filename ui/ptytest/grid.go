package ptytest

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Look is how a cell is drawn. Colours are SGR numbers, such as 31 or 97; 0 is the terminal's own colour. Colours of the
// 256 and of the RGB kind are kept as 38 and 48.
type Look struct {
	Bold, Faint, Italic, Underline, Blink, Reverse, Conceal, Strike bool

	Foreground, Background int
}

// Cell is one column of one line. Text is empty where a character of two columns reaches in from the left.
type Cell struct {
	Text string
	Look Look
}

// blank is a cell that was erased with a look. Of the look only the background is drawn in an erased cell.
func blank(l Look) Cell { return Cell{Text: " ", Look: Look{Background: l.Background}} }

// cursor is where the next character goes, and how it looks.
type cursor struct {
	x, y int
	wrap bool // the last column was written; the next character goes to the next line
	look Look
}

// grid is one of the two pages of a terminal, the normal one or the alternate one.
type grid struct {
	cols, rows  int
	cells       [][]Cell
	cur, saved  cursor
	top, bottom int // the lines that scroll, bottom included
	noWrap      bool
}

func newGrid(cols, rows int) *grid {
	g := &grid{}
	g.resize(cols, rows)
	return g
}

// resize keeps what lies at the upper left, as terminals do with the alternate page.
func (g *grid) resize(cols, rows int) {
	cells := make([][]Cell, rows)
	for y := range cells {
		cells[y] = line(cols, Look{})
		if y < len(g.cells) {
			copy(cells[y], g.cells[y])
		}
	}
	g.cells, g.cols, g.rows = cells, cols, rows
	g.top, g.bottom = 0, rows-1
	g.move(g.cur.x, g.cur.y)
}

// line returns an empty line.
func line(cols int, l Look) []Cell {
	cells := make([]Cell, cols)
	for x := range cells {
		cells[x] = blank(l)
	}
	return cells
}

// move puts the cursor on a cell of the page, the nearest one if there is none.
func (g *grid) move(x, y int) {
	g.cur.x = min(max(x, 0), g.cols-1)
	g.cur.y = min(max(y, 0), g.rows-1)
	g.cur.wrap = false
}

// print writes a character at the cursor.
func (g *grid) print(r rune) {
	w := ansi.StringWidth(string(r))
	if w == 0 {
		g.combine(r)
		return
	}
	if !g.noWrap && (g.cur.wrap || g.cur.x+w > g.cols) {
		g.cur.x, g.cur.wrap = 0, false
		g.lineFeed()
	}
	g.clearWide(g.cur.x)
	g.clearWide(g.cur.x + w - 1)
	row := g.cells[g.cur.y]
	row[g.cur.x] = Cell{Text: string(r), Look: g.cur.look}
	for i := g.cur.x + 1; i < g.cur.x+w && i < g.cols; i++ {
		row[i] = Cell{Look: g.cur.look}
	}
	if g.cur.x += w; g.cur.x >= g.cols {
		g.cur.x, g.cur.wrap = g.cols-1, true
	}
}

// combine adds an accent to the character before the cursor.
func (g *grid) combine(r rune) {
	x := g.cur.x
	if !g.cur.wrap {
		x--
	}
	if x >= 0 && g.cells[g.cur.y][x].Text == "" {
		x--
	}
	if x >= 0 {
		g.cells[g.cur.y][x].Text += string(r)
	}
}

// clearWide blanks both halves of a wide character of which column x is about to be overwritten.
func (g *grid) clearWide(x int) {
	row := g.cells[g.cur.y]
	if x >= g.cols {
		return
	}
	if row[x].Text == "" && x > 0 {
		row[x-1] = blank(row[x-1].Look)
		row[x] = blank(row[x].Look)
	}
	if x+1 < g.cols && row[x+1].Text == "" {
		row[x+1] = blank(row[x+1].Look)
	}
}

// lineFeed goes down a line and scrolls at the bottom.
func (g *grid) lineFeed() {
	switch {
	case g.cur.y == g.bottom:
		g.scrollUp(g.top, 1)
	case g.cur.y < g.rows-1:
		g.cur.y++
	}
}

// reverseLineFeed goes up a line and scrolls at the top.
func (g *grid) reverseLineFeed() {
	switch {
	case g.cur.y == g.top:
		g.scrollDown(g.top, 1)
	case g.cur.y > 0:
		g.cur.y--
	}
}

// scrollUp removes n lines from line y on; empty ones come in at the end of the region that scrolls.
func (g *grid) scrollUp(y, n int) {
	for range min(n, g.bottom-y+1) {
		copy(g.cells[y:g.bottom], g.cells[y+1:g.bottom+1])
		g.cells[g.bottom] = line(g.cols, g.cur.look)
	}
}

// scrollDown inserts n empty lines at line y; the last ones of the region that scrolls are lost.
func (g *grid) scrollDown(y, n int) {
	for range min(n, g.bottom-y+1) {
		copy(g.cells[y+1:g.bottom+1], g.cells[y:g.bottom])
		g.cells[y] = line(g.cols, g.cur.look)
	}
}

// erase blanks the columns from x up to but not including end on line y.
func (g *grid) erase(y, x, end int) {
	for ; x < end && x < g.cols; x++ {
		g.cells[y][x] = blank(g.cur.look)
	}
}

// eraseLine is EL: 0 from the cursor on, 1 up to and with it, 2 the line.
func (g *grid) eraseLine(how int) {
	switch how {
	case 0:
		g.erase(g.cur.y, g.cur.x, g.cols)
	case 1:
		g.erase(g.cur.y, 0, g.cur.x+1)
	case 2:
		g.erase(g.cur.y, 0, g.cols)
	}
}

// erasePage is ED, counted as for EL; 3, which empties the lines scrolled off, changes nothing that is seen.
func (g *grid) erasePage(how int) {
	first, last := 0, -1
	switch how {
	case 0:
		first, last = g.cur.y+1, g.rows-1
		g.eraseLine(0)
	case 1:
		first, last = 0, g.cur.y-1
		g.eraseLine(1)
	case 2:
		last = g.rows - 1
	}
	for y := first; y <= last; y++ {
		g.erase(y, 0, g.cols)
	}
}

// insertCells is ICH: n blanks at the cursor push the rest of the line to the right.
func (g *grid) insertCells(n int) {
	row := g.cells[g.cur.y]
	n = min(n, g.cols-g.cur.x)
	copy(row[g.cur.x+n:], row[g.cur.x:])
	g.erase(g.cur.y, g.cur.x, g.cur.x+n)
}

// deleteCells is DCH: n cells go, the rest of the line follows from the right.
func (g *grid) deleteCells(n int) {
	row := g.cells[g.cur.y]
	n = min(n, g.cols-g.cur.x)
	copy(row[g.cur.x:], row[g.cur.x+n:])
	g.erase(g.cur.y, g.cols-n, g.cols)
}

// text returns line y without the blanks at its end.
func (g *grid) text(y int) string {
	var b strings.Builder
	for _, c := range g.cells[y] {
		b.WriteString(c.Text)
	}
	return strings.TrimRight(b.String(), " ")
}
