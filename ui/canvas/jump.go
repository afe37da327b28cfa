package canvas

import "strconv"

// appendJump appends the shortest sequence that takes the cursor to a cell.
func (p *Painter) appendJump(text []byte, x, y int) []byte {
	start := len(text)
	text = appendPosition(text, x, y)
	if p.y == astray {
		return text
	}
	absolute := len(text)
	text = p.appendRelative(text, x, y)
	if len(text)-absolute < absolute-start {
		return append(text[:start], text[absolute:]...)
	}
	return text[:absolute]
}

// appendPosition appends CUP. Columns and lines count from 1 there, and a 1 may be left out.
func appendPosition(text []byte, x, y int) []byte {
	text = append(text, "\x1b["...)
	if x > 0 || y > 0 {
		text = strconv.AppendInt(text, int64(y+1), 10)
	}
	if x > 0 {
		text = append(text, ';')
		text = strconv.AppendInt(text, int64(x+1), 10)
	}
	return append(text, 'H')
}

// appendRelative appends a move that counts from where the cursor is: down in its column or to the line's beginning, then along
// the line. Up is left to CUP, since lines are painted from the top.
func (p *Painter) appendRelative(text []byte, x, y int) []byte {
	down := y - p.y
	if down < 0 {
		return appendPosition(text, x, y)
	}
	start := len(text)
	text = appendAlong(appendMove(text, down, 'B'), p.x, x)
	kept := len(text)
	const most = 3 // lines that line feeds are used for
	if down > most {
		return text
	}
	text = append(text, '\r')
	for range down {
		text = append(text, '\n')
	}
	text = appendMove(text, x, 'C')
	if len(text)-kept < kept-start {
		return append(text[:start], text[kept:]...)
	}
	return text[:kept]
}

// appendAlong appends a move from one column of a line to another.
func appendAlong(text []byte, from, to int) []byte {
	const most = 3 // backspaces that are not longer than CUB
	switch {
	case to >= from:
		return appendMove(text, to-from, 'C')
	case from-to <= most:
		return append(text, "\b\b\b"[:from-to]...)
	}
	return appendMove(text, from-to, 'D')
}

// appendMove appends CUD, CUF or CUB by n cells; nothing for 0.
func appendMove(text []byte, n int, final byte) []byte {
	if n == 0 {
		return text
	}
	text = append(text, "\x1b["...)
	if n > 1 {
		text = strconv.AppendInt(text, int64(n), 10)
	}
	return append(text, final)
}
