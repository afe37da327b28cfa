package ptytest

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// The control functions are those of ECMA-48 and of xterm's "Control Sequences" document, from memory.

// control carries out a control character.
func (s *Screen) control(b byte) {
	g := s.page
	switch b {
	case '\b':
		g.move(g.cur.x-1, g.cur.y)
	case '\t':
		if g.cur.wrap { // at the end of the line a tab changes nothing
			return
		}
		g.move((g.cur.x/8+1)*8, g.cur.y)
	case '\n', '\v', '\f':
		g.lineFeed()
		g.cur.wrap = false
	case '\r':
		g.move(0, g.cur.y)
	case 0, '\a', 0x0e, 0x0f, 0x7f: // nothing to see
	default:
		s.strange("control %#02x", b)
	}
}

// escape carries out a sequence of ESC and another character.
func (s *Screen) escape(cmd ansi.Cmd) {
	g := s.page
	if cmd.Intermediate() != 0 { // character sets; programs that draw in UTF-8 leave them alone
		if cmd.Final() != 'B' {
			s.strange("ESC %c %c", cmd.Intermediate(), cmd.Final())
		}
		return
	}
	switch cmd.Final() {
	case '7':
		g.saved = g.cur
	case '8':
		g.cur = g.saved
		g.move(g.cur.x, g.cur.y)
	case 'D':
		g.lineFeed()
	case 'E':
		g.move(0, g.cur.y)
		g.lineFeed()
	case 'M':
		g.reverseLineFeed()
	case 'c':
		*g = *newGrid(g.cols, g.rows)
	case '=', '>', '\\': // keypad modes; the end of a string
	default:
		s.strange("ESC %c", cmd.Final())
	}
}

// sequence carries out a control sequence.
func (s *Screen) sequence(cmd ansi.Cmd, params ansi.Params) {
	if cmd.Prefix() != 0 || cmd.Intermediate() != 0 {
		s.private(cmd, params)
		return
	}
	g := s.page
	n := count(params, 0)
	switch cmd.Final() {
	case 'A':
		g.move(g.cur.x, g.upTo(n))
	case 'B', 'e':
		g.move(g.cur.x, g.downTo(n))
	case 'C', 'a':
		g.move(g.cur.x+n, g.cur.y)
	case 'D':
		g.move(g.cur.x-n, g.cur.y)
	case 'E':
		g.move(0, g.downTo(n))
	case 'F':
		g.move(0, g.upTo(n))
	case 'G', '`':
		g.move(n-1, g.cur.y)
	case 'H', 'f':
		g.move(count(params, 1)-1, n-1)
	case 'd':
		g.move(g.cur.x, n-1)
	case 'm':
		g.cur.look = styled(g.cur.look, params)
	case 'r':
		g.scrollRegion(params)
	case 's':
		g.saved = g.cur
	case 'u':
		g.cur = g.saved
	case 'n':
		s.report(value(params, 0, 0))
	case 'c':
		s.asked("device attributes", "\x1b[?62;22c")
	case 'h', 'l', 't': // insert mode and the like, which nobody uses; the window's title stack
		s.mode(cmd, params)
	default:
		if !g.change(cmd.Final(), params) {
			s.strange("CSI %c", cmd.Final())
		}
	}
}

// change carries out what erases, inserts and removes, and reports false for anything else.
func (g *grid) change(final byte, params ansi.Params) bool {
	n := count(params, 0)
	inside := g.cur.y >= g.top && g.cur.y <= g.bottom
	switch final {
	case 'J':
		g.erasePage(value(params, 0, 0))
	case 'K':
		g.eraseLine(value(params, 0, 0))
	case 'X':
		g.erase(g.cur.y, g.cur.x, g.cur.x+n)
	case '@':
		g.insertCells(n)
	case 'P':
		g.deleteCells(n)
	case 'L':
		if inside {
			g.scrollDown(g.cur.y, n)
			g.move(0, g.cur.y)
		}
	case 'M':
		if inside {
			g.scrollUp(g.cur.y, n)
			g.move(0, g.cur.y)
		}
	case 'S':
		g.scrollUp(g.top, n)
	case 'T':
		g.scrollDown(g.top, n)
	case 'b':
		g.repeat(n)
	default:
		return false
	}
	return true
}

// upTo is the line n above the cursor, which stops at the top of the region that scrolls if it lies inside.
func (g *grid) upTo(n int) int {
	if g.cur.y >= g.top {
		return max(g.cur.y-n, g.top)
	}
	return g.cur.y - n
}

// downTo is the line n below the cursor, which stops at the bottom of the region that scrolls if it lies inside.
func (g *grid) downTo(n int) int {
	if g.cur.y <= g.bottom {
		return min(g.cur.y+n, g.bottom)
	}
	return g.cur.y + n
}

// scrollRegion is DECSTBM.
func (g *grid) scrollRegion(params ansi.Params) {
	top, bottom := count(params, 0)-1, value(params, 1, g.rows)
	if bottom == 0 || bottom > g.rows {
		bottom = g.rows
	}
	if top < bottom-1 {
		g.top, g.bottom = top, bottom-1
		g.move(0, 0)
	}
}

// repeat is REP: the character before the cursor, n times more.
func (g *grid) repeat(n int) {
	x := g.cur.x
	if !g.cur.wrap {
		x--
	}
	if x < 0 {
		return
	}
	r, size := utf8.DecodeRuneInString(g.cells[g.cur.y][x].Text)
	for range min(n, g.cols*g.rows) {
		if size > 0 {
			g.print(r)
		}
	}
}

// mode is the setting of a mode that has no private number.
func (s *Screen) mode(cmd ansi.Cmd, params ansi.Params) {
	switch what := value(params, 0, 0); {
	case cmd.Final() == 't' && (what == 22 || what == 23): // keep and restore the title
	case cmd.Final() == 't':
		s.asked(fmt.Sprintf("window %d", what), "")
	default:
		s.strange("CSI %d %c", what, cmd.Final())
	}
}

// private carries out what DEC, xterm and others added.
func (s *Screen) private(cmd ansi.Cmd, params ansi.Params) {
	prefix, final := cmd.Prefix(), cmd.Final()
	switch {
	case prefix == '?' && cmd.Intermediate() == 0 && (final == 'h' || final == 'l'):
		for i := range params {
			s.privateMode(value(params, i, 0), final == 'h')
		}
	case prefix == '?' && cmd.Intermediate() == '$' && final == 'p':
		s.asked(fmt.Sprintf("mode %d", value(params, 0, 0)), fmt.Sprintf("\x1b[?%d;0$y", value(params, 0, 0)))
	case prefix == '?' && final == 'n':
		s.asked(fmt.Sprintf("private status %d", value(params, 0, 0)), "")
	case final == 'c':
		s.asked("device attributes", "")
	case prefix == '?' && final == 'u', prefix == '>' && final == 'q':
		s.asked(fmt.Sprintf("CSI %c %c", prefix, final), "")
	case prefix == '>' || prefix == '<' || prefix == '=': // keyboard settings
	case cmd.Intermediate() == ' ' && final == 'q': // the cursor's form
	case cmd.Intermediate() == '!' && final == 'p': // soft reset
		s.hidden = false
		s.page.cur.look, s.page.noWrap = Look{}, false
		s.page.top, s.page.bottom = 0, s.page.rows-1
	default:
		s.strange("CSI %q %q %c", prefix, cmd.Intermediate(), final)
	}
}

// privateMode sets or resets a mode of DEC or xterm. Those of the mouse, of pastes, of the focus and the like change
// nothing that is seen.
func (s *Screen) privateMode(mode int, on bool) {
	switch mode {
	case 7:
		s.normal.noWrap, s.other.noWrap = !on, !on
	case 25:
		s.hidden = !on
	case 47, 1047, 1049:
		if !s.onePage {
			s.alternate(mode, on)
		}
	case 1, 4, 12, 1000, 1002, 1003, 1004, 1005, 1006, 1007, 1015, 2004, 2026, 2027, 2031:
	default:
		s.strange("mode %d", mode)
	}
}

// alternate shows the alternate page or the normal one. Mode 1049 also empties the alternate page on entry and keeps the
// cursor of the normal one.
func (s *Screen) alternate(mode int, on bool) {
	from := s.page
	s.page = s.normal
	if on {
		s.page = s.other
	}
	if s.page == from {
		return
	}
	if mode != 1049 {
		s.page.cur = from.cur
		return
	}
	if on {
		from.saved = from.cur
		s.page.cur = from.cur
		s.page.erasePage(2)
		return
	}
	s.page.cur = s.page.saved
}

// report answers DSR.
func (s *Screen) report(what int) {
	switch what {
	case 5:
		s.asked("status", "\x1b[0n")
	case 6:
		s.asked("cursor position", fmt.Sprintf("\x1b[%d;%dR", s.page.cur.y+1, s.page.cur.x+1))
	default:
		s.strange("DSR %d", what)
	}
}

// command is an OSC: titles and links, which are not seen, and questions about colours.
func (s *Screen) command(number int, data []byte) {
	if !strings.HasSuffix(string(data), ";?") {
		return
	}
	reply := ""
	switch number {
	case 10:
		reply = "\x1b]10;rgb:ffff/ffff/ffff\x1b\\"
	case 11:
		reply = "\x1b]11;rgb:0000/0000/0000\x1b\\"
	}
	s.asked(fmt.Sprintf("OSC %d", number), reply)
}

// value returns parameter i, or def where it is missing.
func value(params ansi.Params, i, def int) int {
	v, _, ok := params.Param(i, def)
	if !ok {
		return def
	}
	return v
}

// count returns parameter i as a number of things, of which there is at least one.
func count(params ansi.Params, i int) int { return max(value(params, i, 1), 1) }

// styled is SGR.
func styled(l Look, params ansi.Params) Look {
	if len(params) == 0 {
		return Look{}
	}
	for i := 0; i < len(params); i++ {
		n := value(params, i, 0)
		switch {
		case n == 38 || n == 48:
			if n == 38 {
				l.Foreground = n
			} else {
				l.Background = n
			}
			switch value(params, i+1, 0) { // the colour's own numbers
			case 5:
				i += 2
			case 2:
				i += 4
			}
		case n >= 30 && n <= 37, n >= 90 && n <= 97:
			l.Foreground = n
		case n == 39:
			l.Foreground = 0
		case n >= 40 && n <= 47, n >= 100 && n <= 107:
			l.Background = n
		case n == 49:
			l.Background = 0
		default:
			l = l.with(n)
		}
		for i < len(params) && params[i].HasMore() { // details after a colon, such as a curly underline
			i++
		}
	}
	return l
}

// with returns the look after an SGR number that is not a colour.
func (l Look) with(n int) Look {
	switch n {
	case 0:
		return Look{}
	case 1:
		l.Bold = true
	case 2:
		l.Faint = true
	case 3:
		l.Italic = true
	case 4:
		l.Underline = true
	case 5:
		l.Blink = true
	case 7:
		l.Reverse = true
	case 8:
		l.Conceal = true
	case 9:
		l.Strike = true
	case 22:
		l.Bold, l.Faint = false, false
	case 23:
		l.Italic = false
	case 24:
		l.Underline = false
	case 25:
		l.Blink = false
	case 27:
		l.Reverse = false
	case 28:
		l.Conceal = false
	case 29:
		l.Strike = false
	}
	return l
}
