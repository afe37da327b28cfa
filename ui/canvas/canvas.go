// Package canvas is a grid of text cells to draw screens on: each cell holds one character and one style, drawing clips
// to regions, and the whole is turned into lines of terminal text once per frame. Start at New and Canvas.All.
//
// Layout, keys and what is drawn are out of scope. No style carries a meaning alone: with no colour all styles look the
// same, so whoever draws adds the word or the mark.
package canvas

import "slices"

// Canvas is a grid of cells. The zero value is an empty canvas.
type Canvas struct {
	w, h  int
	cells []cell
	text  []byte // reused by Render
}

// cell is one place on the grid. A character two columns wide fills its own cell and a tail to the right of it.
type cell struct {
	ch    rune
	style Style
}

const tail rune = -1

// New returns a blank canvas of w by h cells. A size below zero counts as zero.
func New(w, h int) *Canvas {
	c := new(Canvas)
	c.Resize(w, h)
	return c
}

// Resize makes the canvas w by h cells and blanks it, also when the size stays the same. Memory is reused.
func (c *Canvas) Resize(w, h int) {
	c.w, c.h = max(w, 0), max(h, 0)
	n := c.w * c.h
	c.cells = slices.Grow(c.cells[:0], n)[:n]
	for i := range c.cells {
		c.cells[i] = cell{ch: ' '}
	}
}

// All returns the region that covers the whole canvas.
func (c *Canvas) All() Region { return Region{canvas: c, w: c.w, h: c.h} }

// put writes a character of the given width. What does not lie on the grid is left out; half a wide character becomes a
// blank.
func (c *Canvas) put(x, y int, ch rune, width int, s Style) {
	if y < 0 || y >= c.h || x < 0 || x >= c.w {
		return
	}
	if width == 2 && x+1 >= c.w {
		ch, width = ' ', 1
	}
	c.clear(x, y)
	c.cells[y*c.w+x] = cell{ch, s}
	if width == 2 {
		c.clear(x+1, y)
		c.cells[y*c.w+x+1] = cell{tail, s}
	}
}

// clear blanks the other half of a wide character that is about to lose one of its two cells.
func (c *Canvas) clear(x, y int) {
	i := y*c.w + x
	if c.cells[i].ch == tail {
		c.cells[i-1].ch = ' '
	}
	if x+1 < c.w && c.cells[i+1].ch == tail {
		c.cells[i+1].ch = ' '
	}
}
