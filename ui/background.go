package ui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// worker is an overlay that works something out piece by piece. A short task is done before the screen is drawn again; a longer
// one goes on in the background, and the keys stay alive.
type worker interface {
	overlay
	// more returns a piece of the work, nil when nothing is left. A piece may run beside the program: it touches nothing of the
	// planner and the overlay. What it returns puts the outcome in place, and runs with them.
	more() func(until time.Time) (place func(p *Planner))
	waits() *bool // whether a piece is under way
	// patient reports whether the keys wait while a short task is done. Where they do not, those typed meanwhile are for this
	// overlay, not for the one that follows it.
	patient() bool
}

// Work of less than patience is waited for; a piece in the background takes about as long as pieceTime.
const (
	patience  = 150 * time.Millisecond
	pieceTime = 300 * time.Millisecond
)

// worked is what a piece in the background came to.
type worked struct {
	of    worker
	place func(p *Planner)
}

// begin does the work of the overlay that is open as far as patience goes.
func (p *Planner) begin() {
	until := time.Now().Add(patience)
	for {
		u, ok := p.overlay.(worker)
		if !ok || !u.patient() || *u.waits() || !time.Now().Before(until) {
			return
		}
		piece := u.more()
		if piece == nil {
			return
		}
		piece(until)(p)
	}
}

// goOn returns the command that works out the next piece for the overlay that is open.
func (p *Planner) goOn() tea.Cmd {
	u, ok := p.overlay.(worker)
	if !ok || *u.waits() {
		return nil
	}
	piece := u.more()
	if piece == nil {
		return nil
	}
	*u.waits() = true
	return func() tea.Msg { return worked{u, piece(time.Now().Add(pieceTime))} }
}

// pieceDone puts a piece in place and goes on, unless the overlay has been closed meanwhile.
func (p *Planner) pieceDone(m worked) tea.Cmd {
	*m.of.waits() = false
	if p.overlay != overlay(m.of) {
		return p.goOn()
	}
	m.place(p)
	return p.goOn()
}
