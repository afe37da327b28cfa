package ptytest

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Screen is what a terminal shows after the bytes that were written to it: the part of an xterm that full-screen programs
// use. Sequences that it does not know are kept in Unknown rather than passed over, since the picture is then in doubt.
//
// It is meant for tests, and not safe for use by several goroutines.
type Screen struct {
	parser        *ansi.Parser
	normal, other *grid
	page          *grid // the one that is seen
	onePage       bool  // there is no other
	hidden        bool
	unknown       []string
	queries       []string
	replies       strings.Builder
	seen          bool
}

// NewScreen returns an empty screen of so many columns and lines.
func NewScreen(cols, rows int) *Screen {
	s := &Screen{parser: ansi.NewParser(), normal: newGrid(cols, rows), other: newGrid(cols, rows)}
	s.page = s.normal
	s.parser.SetHandler(ansi.Handler{
		Print:     s.print,
		Execute:   s.control,
		HandleEsc: s.escape,
		HandleCsi: s.sequence,
		HandleOsc: s.command,
		HandleDcs: func(cmd ansi.Cmd, _ ansi.Params, data []byte) {
			if cmd.Final() == 'q' && cmd.Intermediate() != 0 { // of a capability or a setting
				s.asked(fmt.Sprintf("DCS %c q %s", cmd.Intermediate(), data), "")
			}
		},
	})
	return s
}

// Write lets the screen show bytes of a program's output. It never fails.
func (s *Screen) Write(p []byte) (int, error) {
	for _, b := range p {
		s.parser.Advance(b)
	}
	return len(p), nil
}

// Resize gives the screen another size and keeps what lies at the upper left.
func (s *Screen) Resize(cols, rows int) {
	s.normal.resize(cols, rows)
	s.other.resize(cols, rows)
}

// String returns all lines, without the blanks at their ends, with a line feed between them.
func (s *Screen) String() string {
	lines := make([]string, s.page.rows)
	for y := range lines {
		lines[y] = s.page.text(y)
	}
	return strings.Join(lines, "\n")
}

// Line returns line y, counted from 0, without the blanks at its end; "" where there is no such line.
func (s *Screen) Line(y int) string {
	if y < 0 || y >= s.page.rows {
		return ""
	}
	return s.page.text(y)
}

// Cell returns the cell in column x of line y, both counted from 0; an empty one outside the screen.
func (s *Screen) Cell(x, y int) Cell {
	if y < 0 || y >= s.page.rows || x < 0 || x >= s.page.cols {
		return Cell{}
	}
	return s.page.cells[y][x]
}

// Cursor returns the cursor's column and line, counted from 0, and whether it is shown.
func (s *Screen) Cursor() (x, y int, shown bool) { return s.page.cur.x, s.page.cur.y, !s.hidden }

// Alternate reports whether the alternate page is shown, the one that full-screen programs draw on.
func (s *Screen) Alternate() bool { return s.page == s.other }

// Unknown returns the sequences that the screen could not follow, each once.
func (s *Screen) Unknown() []string { return s.unknown }

// Queries returns the questions that the program asked the terminal.
func (s *Screen) Queries() []string { return s.queries }

// Replies returns the answers to the queries since the last call, as an xterm on a black background gives them.
func (s *Screen) Replies() string {
	defer s.replies.Reset()
	return s.replies.String()
}

// Printed reports whether any character but a blank was ever written.
func (s *Screen) Printed() bool { return s.seen }

// print shows a character.
func (s *Screen) print(r rune) {
	s.seen = s.seen || r != ' '
	s.page.print(r)
}

// strange remembers a sequence that cannot be followed.
func (s *Screen) strange(format string, args ...any) {
	if name := fmt.Sprintf(format, args...); !slices.Contains(s.unknown, name) {
		s.unknown = append(s.unknown, name)
	}
}

// asked remembers a query and, where an xterm would answer, the answer.
func (s *Screen) asked(query, reply string) {
	s.queries = append(s.queries, query)
	s.replies.WriteString(reply)
}
