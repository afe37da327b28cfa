package terminal

import (
	"bytes"
	"os"
	"sync"
	"time"

	"github.com/charmbracelet/x/ansi"

	"borewalk/ui/canvas"
)

// Output is the terminal's screen, for tea.WithOutput. Pictures come to it by Show and not through bubbletea, which would send a
// line whole that changed in one cell, and would look sixty times a second whether there is something to draw. What bubbletea draws
// instead (its model shows it nothing) is left out; its control sequences, and what others write, go to the terminal in their
// order.
//
// One goroutine writes, so that whoever draws never waits for a slow terminal: where pictures come faster than they can be sent,
// the newest counts. The goroutine sleeps while there is nothing to send.
//
// The embedded file lets bubbletea find a terminal in it.
type Output struct {
	*os.File

	// Failed is called, once, when no more pictures can be drawn because of a fault in this program: with what it panicked with, and
	// where. It is called from a goroutine of its own, and has to be set before anything is shown.
	Failed func(fault any, stack []byte)

	mu     sync.Mutex
	next   queue
	shows  bool // from entering the alternate screen to leaving it
	taken  bool // since it was entered Taken was not asked
	stuck  bool // the terminal took nothing for the time of letGo
	broken bool // it cannot draw, for a fault in this program

	wake  chan struct{} // there is something in the queue
	hurry chan struct{} // and somebody waits until it is sent
	end   chan struct{}

	writer writer
	paint  func(*canvas.Frame) []byte // the writer's painter; tests put a broken one here
}

// queue is what is to be sent: control sequences in their order, then a picture.
type queue struct {
	control []byte
	forget  bool // the terminal may not show what was sent
	fresh   bool // the frame is to be sent
	frame   canvas.Frame
	waiting []chan struct{} // closed when all of this is sent
}

// letGo is how long a terminal that takes no more bytes can keep the program from leaving it.
const letGo = time.Second

// NewOutput returns an output to a terminal, to be closed at the end.
func NewOutput(f *os.File) *Output {
	o := &Output{File: f, wake: make(chan struct{}, 1), hurry: make(chan struct{}, 1), end: make(chan struct{})}
	o.paint = o.writer.painter.Paint
	go o.run()
	return o
}

// Show lets the terminal show a picture, unless a newer one comes before there was time for it. The canvas may be drawn on again
// at once.
func (o *Output) Show(c *canvas.Canvas, p *canvas.Palette) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.shows {
		o.next.frame.Take(c, p)
		o.next.fresh = true
		poke(o.wake)
	}
}

// Forget lets the next picture be sent whole, after the screen is cleared: where the size has changed, or something else may have
// written to the terminal.
func (o *Output) Forget() {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.next.forget = true
}

// Taken reports whether the terminal was taken, at the start or back from the shell, since the last call.
func (o *Output) Taken() bool {
	o.mu.Lock()
	defer o.mu.Unlock()
	taken := o.taken
	o.taken = false
	return taken
}

// Close sends what is still to be sent, if the terminal takes it, and ends the goroutine. The file stays open.
func (o *Output) Close() error {
	o.drain()
	close(o.end)
	return nil
}

// WriteString implements io.StringWriter as Write does; the file's own would pass it by.
func (o *Output) WriteString(s string) (int, error) { return o.Write([]byte(s)) }

// Write takes what bubbletea, or anybody else, writes to the terminal. It never fails and never waits, but for leaving the
// alternate screen: what is written to the terminal after that must find it left.
func (o *Output) Write(p []byte) (int, error) {
	switch sequence := string(p); {
	case bytes.HasPrefix(p, []byte(ansi.CursorHomePosition)): // so begins what bubbletea draws
	case sequence == ansi.EraseEntireLine, sequence == "\r": // it tidies the line that it takes the cursor to be on
	case sequence == ansi.EraseEntireScreen:
		o.Forget() // the next picture clears the screen
	case sequence == ansi.SetModeAltScreenSaveCursor:
		o.enter()
	case sequence == ansi.ResetModeAltScreenSaveCursor:
		o.leave()
	default:
		o.mu.Lock()
		o.control(sequence)
		o.mu.Unlock()
	}
	return len(p), nil
}

// control puts control sequences into the queue. The caller holds the lock.
func (o *Output) control(sequences ...string) {
	for _, s := range sequences {
		o.next.control = append(o.next.control, s...)
	}
	poke(o.wake)
}

// enter begins to show pictures. Terminals without an alternate screen show the shell's, which the first picture clears.
func (o *Output) enter() {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.shows, o.taken, o.next.forget = true, true, true
	o.control(ansi.SetModeAltScreenSaveCursor)
}

// leave drops what was not shown yet and gives the terminal back. One without an alternate screen keeps the last picture, and its
// bottom line is cleared for the shell.
func (o *Output) leave() {
	const bottom = "\x1b[999H" // beyond the screen means its edge
	o.mu.Lock()
	o.shows, o.next.fresh = false, false
	o.control(bottom, ansi.EraseEntireLine, ansi.ResetModeAltScreenSaveCursor)
	o.mu.Unlock()
	o.drain()
}

// drain waits until all is sent, but not for a terminal that takes no more bytes.
func (o *Output) drain() {
	sent := make(chan struct{})
	o.mu.Lock()
	stuck := o.stuck
	o.next.waiting = append(o.next.waiting, sent)
	o.mu.Unlock()
	if stuck {
		return
	}
	poke(o.hurry)
	poke(o.wake)
	select {
	case <-sent:
	case <-time.After(letGo):
		o.mu.Lock()
		o.stuck = true
		o.mu.Unlock()
	}
}

// poke lets a receiver know, if it does not know yet.
func poke(c chan struct{}) {
	select {
	case c <- struct{}{}:
	default:
	}
}
