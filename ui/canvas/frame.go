package canvas

// Frame is a canvas as a terminal shows it: two styles that look the same there are the same. The zero value has no cells.
type Frame struct {
	w, h  int
	cells []seen
}

// seen is one cell of a frame.
type seen struct {
	ch   rune
	code uint8 // SGR number; 0 is the terminal's own look, and that of a blank on which no look is seen
}

// nothing is a cell of a terminal that was cleared.
var nothing = seen{ch: ' '}

// Take makes the frame what a canvas looks like in the colours of a palette. Memory is reused.
func (f *Frame) Take(c *Canvas, p *Palette) {
	f.resize(c.w, c.h)
	for i, at := range c.cells {
		code := p.codes[at.style]
		if at.ch == ' ' && !onBlank(code) {
			code = 0
		}
		f.cells[i] = seen{at.ch, code}
	}
}

// resize makes the frame w by h cells, whatever they hold.
func (f *Frame) resize(w, h int) {
	f.w, f.h = w, h
	if n := w * h; n <= cap(f.cells) {
		f.cells = f.cells[:n]
	} else {
		f.cells = make([]seen, n)
	}
}

// clear blanks the frame.
func (f *Frame) clear() {
	for i := range f.cells {
		f.cells[i] = nothing
	}
}

func (f *Frame) line(y int) []seen { return f.cells[y*f.w : (y+1)*f.w] }
