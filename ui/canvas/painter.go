package canvas

import (
	"slices"
	"unicode/utf8"
)

// Painter knows what a terminal shows and writes what turns that into another frame: the cells that differ, in runs. It
// uses no sequence that a VT100 does not have (ECMA-48: CUP, CUF, CUB, CUD, ED, EL, SGR), so that nothing has to be known of the
// terminal. The zero value knows nothing and paints everything.
//
// Nobody else may write characters to the terminal meanwhile; where somebody did, Forget.
type Painter struct {
	known bool
	shown Frame // what the terminal shows, when that is known
	text  []byte
	spare []byte

	x, y int   // the cursor; y is astray when its place is not sure
	code uint8 // SGR number of what is written next
}

const astray = -1

// Control sequences.
const (
	clearAll    = "\x1b[m\x1b[H\x1b[2J"
	eraseToEnd  = "\x1b[K"
	wrappingOff = "\x1b[?7l"
	wrappingOn  = "\x1b[?7h"
)

// Forget makes the next frame clear the terminal and paint everything.
func (p *Painter) Forget() { p.known = false }

// Paint returns the bytes that make the terminal show the frame; none when it does already. A frame of another size than the
// one before is painted on a cleared terminal. The bytes hold until the next call.
func (p *Painter) Paint(next *Frame) []byte {
	p.text = p.text[:0]
	if !p.known || p.shown.w != next.w || p.shown.h != next.h {
		p.shown.resize(next.w, next.h)
		p.shown.clear()
		p.text = append(p.text, clearAll...)
		p.x, p.y, p.code, p.known = 0, 0, 0, true
	}
	for y := range next.h {
		if now, line := p.shown.line(y), next.line(y); !slices.Equal(now, line) {
			p.paintLine(y, now, line)
			copy(now, line)
		}
	}
	p.look(0) // what others write, such as the shell after a kill, has the terminal's own look
	return p.text
}

// paintLine writes what differs between a line as shown and the next.
func (p *Painter) paintLine(y int, now, next []seen) {
	end := len(next) // the blanks up to the edge begin here
	for end > 0 && next[end-1] == nothing {
		end--
	}
	for x := 0; x < len(next); x++ {
		switch {
		case now[x] == next[x] || next[x].ch == tail:
		case x >= end && p.eraseIsShorter(now[x:]):
			p.reach(x, y, next)
			p.look(0)
			p.text = append(p.text, eraseToEnd...)
			return
		default:
			p.reach(x, y, next)
			p.put(x, y, next)
		}
	}
}

// eraseIsShorter reports whether a line is blanked in fewer bytes by erasing it than by writing blanks from its first cell to the
// last that is none.
func (p *Painter) eraseIsShorter(now []seen) bool {
	n := len(now)
	for n > 0 && now[n-1] == nothing {
		n--
	}
	cost := len(eraseToEnd)
	if !onBlank(p.code) { // else blanks need the change as well
		cost += changeLength(p.code, 0)
	}
	return n > cost
}

// put writes the character in column x, where the cursor is.
func (p *Painter) put(x, y int, line []seen) {
	at := line[x]
	if at != nothing || onBlank(p.code) {
		p.look(at.code)
	}
	width := 1
	if x+1 < len(line) && line[x+1].ch == tail {
		width = 2
	}
	corner := x+width == len(line) && y == p.shown.h-1
	if corner { // some terminals would scroll
		p.text = append(p.text, wrappingOff...)
	}
	p.text = utf8.AppendRune(p.text, at.ch)
	if corner {
		p.text = append(p.text, wrappingOn...)
	}
	p.x += width
	if p.x >= len(line) || width == 2 {
		p.y = astray // behind the edge or on the next line, and few terminals agree on all wide characters
	}
}

// look changes what is written next.
func (p *Painter) look(code uint8) {
	p.text = appendChange(p.text, p.code, code)
	p.code = code
}

// reach takes the cursor to a cell, over cells of its line as they are or by a jump, whichever is shorter.
func (p *Painter) reach(x, y int, line []seen) {
	if p.x == x && p.y == y {
		return
	}
	p.spare = p.appendJump(p.spare[:0], x, y)
	if p.y == y && p.x < x && x-p.x <= len(p.spare) && p.rewrite(x, y, line) {
		return
	}
	p.text = append(p.text, p.spare...)
	p.x, p.y = x, y
}

// rewrite takes the cursor to column x of its line by writing what stands there already. When that takes more than the jump it
// changes nothing and reports false.
func (p *Painter) rewrite(x, y int, line []seen) bool {
	before := *p
	for i := p.x; i < x; i++ {
		if p.put(i, y, line); p.y == astray {
			return p.undo(&before)
		}
	}
	// What differs in look from both ends costs its own change and the change back.
	cost := len(p.text) - len(before.text) + changeLength(p.code, line[x].code)
	if cost <= len(before.spare)+changeLength(before.code, line[x].code) {
		return true
	}
	return p.undo(&before)
}

// undo puts the painter back to where it was, and reports false.
func (p *Painter) undo(before *Painter) bool {
	p.text, p.x, p.y, p.code = before.text, before.x, before.y, before.code
	return false
}
