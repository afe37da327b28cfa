package terminal

import (
	"errors"
	"os"
	"time"

	"github.com/charmbracelet/x/term"
)

// ErrGone is what reading keys gives when the terminal is gone: a window that was closed, a line that was dropped.
var ErrGone = errors.New("the terminal is gone")

// Modes are the modes of a terminal as the program found them.
type Modes struct{ in, out *term.State }

// Remember returns the modes of the terminal on standard input and output.
func Remember() Modes {
	var m Modes
	m.in, _ = term.GetState(os.Stdin.Fd()) // where there is no terminal there is nothing to restore
	m.out, _ = term.GetState(os.Stdout.Fd())
	return m
}

// Restore puts the terminal right when the program's loop does not come to it: it hangs, or the terminal takes no more bytes. It takes
// no longer than the time given, and reports whether the terminal has taken all.
func (m Modes) Restore(most time.Duration) bool {
	if m.in != nil {
		_ = term.Restore(os.Stdin.Fd(), m.in)
	}
	if m.out == nil {
		return false
	}
	_ = term.Restore(os.Stdout.Fd(), m.out)
	written := make(chan struct{})
	go func() {
		defer close(written)
		// Mouse and bracketed paste off, the cursor shown, the screen of before.
		_, _ = os.Stdout.WriteString("\x1b[?1002l\x1b[?1003l\x1b[?1006l\x1b[?2004l\x1b[?25h\x1b[?1049l\r\n")
	}()
	select {
	case <-written:
		return true
	case <-time.After(most):
		return false
	}
}
