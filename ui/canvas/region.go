package canvas

// Region is a window onto a canvas with its own origin at the top left. All drawing clips to it. The zero value has no
// cells. A region made before a Resize still draws where it did, as far as the canvas now reaches.
type Region struct {
	canvas     *Canvas
	x, y, w, h int
}

// W returns the width in columns.
func (r Region) W() int { return r.w }

// H returns the height in rows.
func (r Region) H() int { return r.h }

// Sub returns the part of the region that the rectangle at x, y covers. What lies outside the region is cut off, and
// the origin of the part is the top left of what is left.
func (r Region) Sub(x, y, w, h int) Region {
	left, top := min(max(x, 0), r.w), min(max(y, 0), r.h)
	right, bottom := min(x+w, r.w), min(y+h, r.h)
	return Region{canvas: r.canvas, x: r.x + left, y: r.y + top, w: max(right-left, 0), h: max(bottom-top, 0)}
}

// Put writes one character. Characters without width are dropped; a wide one that reaches over the edge leaves a blank.
func (r Region) Put(x, y int, ch rune, s Style) {
	if y < 0 || y >= r.h || x >= r.w {
		return
	}
	width := runeWidth(ch)
	if width == 2 && (x == -1 || x == r.w-1) {
		ch, width, x = ' ', 1, max(x, 0)
	}
	if width == 0 || x < 0 {
		return
	}
	r.canvas.put(r.x+x, r.y+y, ch, width, s)
}

// Text writes a line of text from x to the right and returns the column after it, at most the region's width. Control
// characters and characters without width are dropped, so that no text can move the cursor or change a colour.
func (r Region) Text(x, y int, text string, s Style) (end int) {
	for _, ch := range text {
		if x >= r.w {
			break
		}
		r.Put(x, y, ch, s)
		x += runeWidth(ch)
	}
	return min(x, r.w)
}

// TextRight writes text so that it ends at the right edge of the width columns from x. A text too wide for them is
// replaced by '#' signs: a number is never shown cut.
func (r Region) TextRight(x, y, width int, text string, s Style) {
	w := Width(text)
	if w > width {
		r.HLine(x, y, width, '#', s)
		return
	}
	r.Text(x+width-w, y, text, s)
}

// Fill writes a character into every cell.
func (r Region) Fill(ch rune, s Style) {
	for y := range r.h {
		r.HLine(0, y, r.w, ch, s)
	}
}

// HLine writes a character n times from x to the right.
func (r Region) HLine(x, y, n int, ch rune, s Style) {
	for i := max(x, 0); i < min(x+n, r.w); i++ {
		r.Put(i, y, ch, s)
	}
}

// VLine writes a character n times from y downwards.
func (r Region) VLine(x, y, n int, ch rune, s Style) {
	for i := max(y, 0); i < min(y+n, r.h); i++ {
		r.Put(x, i, ch, s)
	}
}
