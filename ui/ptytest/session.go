// Package ptytest runs a program in a pseudo-terminal, for end-to-end tests: it types keys, follows the output on a model
// of the screen, and waits for what should appear. Start begins a Session; Screen, the model, can be used alone.
//
// Waiting never sleeps and always has a limit; when it is reached the test fails and shows the screen. Under Windows,
// where there are no pseudo-terminals of this kind, Start skips the test.
package ptytest

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"
)

// Options says what to run and in which terminal.
type Options struct {
	Path string   // the program
	Args []string // its arguments, without the program's name
	// Env adds to, and overrides, a small environment: the PATH, an empty HOME, TERM=xterm-256color, LANG=C.UTF-8.
	Env []string
	Dir string // the working directory; the test's own if empty

	Cols, Rows int  // size of the terminal; 80 and 24 if zero
	NoSize     bool // the terminal says that it has 0 columns and 0 lines; the screen model still has Cols and Rows
	OnePage    bool // the terminal has no alternate page, as a multiplexer may be set up

	Answer bool          // answer queries as an xterm does; otherwise the terminal stays silent
	Limit  time.Duration // for each wait; 10 seconds if zero
}

// Session is a program that runs in a pseudo-terminal. Its methods may be called from the test's goroutine only.
type Session struct {
	t     testing.TB
	opt   Options
	cmd   *exec.Cmd
	pty   *os.File
	ended chan struct{} // closed when the process has ended and its output is read

	gate chan struct{} // full while nothing is read

	mu      sync.Mutex
	screen  *Screen
	output  []byte
	first   int           // length of output when the first character appeared
	changed chan struct{} // closed, and replaced, when there is more output
}

// Start runs the program. It is killed when the test ends.
func Start(t testing.TB, opt Options) *Session {
	t.Helper()
	if opt.Cols <= 0 {
		opt.Cols = 80
	}
	if opt.Rows <= 0 {
		opt.Rows = 24
	}
	if opt.Limit <= 0 {
		opt.Limit = 10 * time.Second
	}
	s := &Session{t: t, opt: opt, ended: make(chan struct{}), changed: make(chan struct{}), gate: make(chan struct{}, 1)}
	s.screen = NewScreen(opt.Cols, opt.Rows)
	s.screen.onePage = opt.OnePage
	s.cmd = exec.Command(opt.Path, opt.Args...)
	s.cmd.Dir = opt.Dir
	s.cmd.Env = append([]string{
		"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir(), "TERM=xterm-256color", "LANG=C.UTF-8",
	}, opt.Env...)
	if dir := os.Getenv("GOCOVERDIR"); dir != "" {
		s.cmd.Env = append(s.cmd.Env, "GOCOVERDIR="+dir)
	}
	cols, rows := opt.Cols, opt.Rows
	if opt.NoSize {
		cols, rows = 0, 0
	}
	var err error
	s.pty, err = begin(s.cmd, cols, rows)
	if errors.Is(err, errors.ErrUnsupported) {
		t.Skip("no pseudo-terminals on this system")
	}
	if err != nil {
		t.Fatal(err)
	}
	go s.follow()
	t.Cleanup(s.stop)
	return s
}

// follow shows the output on the screen until the program ends.
func (s *Session) follow() {
	drained := make(chan struct{})
	go func() {
		defer close(drained)
		buf := make([]byte, 64*1024)
		for {
			s.gate <- struct{}{}
			<-s.gate
			n, err := s.pty.Read(buf)
			s.show(buf[:n])
			if err != nil { // Linux says EIO when the last process has let go of the terminal
				return
			}
		}
	}()
	_ = s.cmd.Wait() // the exit status is read from ProcessState
	select {
	case <-drained:
	case <-time.After(time.Second): // a child of the program still holds the terminal
	}
	close(s.ended)
}

// show takes output of the program.
func (s *Session) show(p []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.output = append(s.output, p...)
	_, _ = s.screen.Write(p)
	if s.first == 0 && s.screen.Printed() {
		s.first = len(s.output)
	}
	if reply := s.screen.Replies(); s.opt.Answer && reply != "" {
		_, _ = s.pty.WriteString(reply)
	}
	close(s.changed)
	s.changed = make(chan struct{})
}

// stop ends the program if it still runs.
func (s *Session) stop() {
	select {
	case <-s.ended:
	default:
		_ = s.cmd.Process.Kill()
		<-s.ended
	}
	_ = s.pty.Close()
}

// Type sends keys, as the bytes that a terminal sends for them; see Up and the other constants. The bytes reach the
// program together, so an Esc with a key right after it may be taken for that key with Alt.
func (s *Session) Type(keys string) {
	s.t.Helper()
	if _, err := s.pty.WriteString(keys); err != nil {
		s.fail("typing %q: %v", keys, err)
	}
}

// Wait waits until a line of the screen has the text in it.
func (s *Session) Wait(text string) {
	s.t.Helper()
	s.WaitFor(fmt.Sprintf("%q on the screen", text), func(screen string) bool { return strings.Contains(screen, text) })
}

// WaitGone waits until no line of the screen has the text in it.
func (s *Session) WaitGone(text string) {
	s.t.Helper()
	s.WaitFor(fmt.Sprintf("%q gone from the screen", text), func(screen string) bool { return !strings.Contains(screen, text) })
}

// WaitFor waits until a condition holds for the text of the screen. What names the condition in the failure.
func (s *Session) WaitFor(what string, condition func(screen string) bool) {
	s.t.Helper()
	limit := time.After(s.opt.Limit)
	for over := false; ; {
		s.mu.Lock()
		text, changed := s.screen.String(), s.changed
		s.mu.Unlock()
		switch {
		case condition(text):
			return
		case over:
			s.fail("the program ended, want %s", what)
		}
		select {
		case <-changed:
		case <-s.ended:
			over = true // look once more at what came last
		case <-limit:
			s.fail("waited %v in vain for %s", s.opt.Limit, what)
		}
	}
}

// Settle waits until nothing has been sent for the time given, and returns Bytes. Use it before counting bytes, and to see
// that an idle program sends nothing.
func (s *Session) Settle(silence time.Duration) int {
	s.t.Helper()
	limit := time.After(s.opt.Limit + silence)
	for {
		s.mu.Lock()
		changed := s.changed
		s.mu.Unlock()
		select {
		case <-changed:
		case <-s.ended:
			return s.Bytes()
		case <-time.After(silence):
			return s.Bytes()
		case <-limit:
			s.fail("the program never stopped drawing for %v", silence)
		}
	}
}

// Screen returns the lines of the screen, without the blanks at their ends.
func (s *Session) Screen() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.String()
}

// Line returns line y, counted from 0, without the blanks at its end.
func (s *Session) Line(y int) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.Line(y)
}

// Inspect lets a function look at the screen itself: at looks, the cursor, the page shown. It must not keep the screen.
func (s *Session) Inspect(look func(*Screen)) {
	s.mu.Lock()
	defer s.mu.Unlock()
	look(s.screen)
}

// Bytes returns how many bytes the program has sent so far.
func (s *Session) Bytes() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.output)
}

// Output returns everything that the program has sent so far.
func (s *Session) Output() []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	return bytes.Clone(s.output)
}

// FirstOutput waits for the first character on the screen and returns what had been sent by then, with what came in the
// same piece: the questions that the program asks before it shows anything, if it asks any, and the first frame or its
// beginning.
func (s *Session) FirstOutput() []byte {
	s.t.Helper()
	s.WaitFor("a first character", func(string) bool {
		s.mu.Lock()
		defer s.mu.Unlock()
		return s.first > 0
	})
	s.mu.Lock()
	defer s.mu.Unlock()
	return bytes.Clone(s.output[:s.first])
}

// Queries returns the questions that the program has asked the terminal so far.
func (s *Session) Queries() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.screen.Queries()...)
}

// Resize gives the terminal another size, of which the program is told by a signal.
func (s *Session) Resize(cols, rows int) {
	s.t.Helper()
	if cols > 0 && rows > 0 { // a size of nothing leaves the screen as large as it was
		s.mu.Lock()
		s.screen.Resize(cols, rows)
		s.mu.Unlock()
	}
	if err := setSize(s.pty, cols, rows); err != nil {
		s.fail("resizing to %dx%d: %v", cols, rows, err)
	}
}

// Hold stops reading what the program sends, as a link does that is cut or slow; what is on its way already may still come. It
// returns what reads on.
func (s *Session) Hold() (release func()) {
	s.gate <- struct{}{}
	return sync.OnceFunc(func() { <-s.gate })
}

// Signal sends a signal to the program.
func (s *Session) Signal(sig os.Signal) {
	s.t.Helper()
	if err := s.cmd.Process.Signal(sig); err != nil {
		s.fail("sending %v: %v", sig, err)
	}
}

// Pid returns the program's process number.
func (s *Session) Pid() int { return s.cmd.Process.Pid }

// ExitCode waits until the program ends by itself and returns its exit code, -1 if a signal ended it.
func (s *Session) ExitCode() int {
	s.t.Helper()
	select {
	case <-s.ended:
	case <-time.After(s.opt.Limit):
		s.fail("waited %v in vain for the program to end", s.opt.Limit)
	}
	return s.cmd.ProcessState.ExitCode()
}

// Close takes the terminal away, as a dropped connection does, so that the program gets a hang-up signal. It waits until
// the program has ended and returns the exit code, -1 if a signal ended it.
func (s *Session) Close() int {
	s.t.Helper()
	_ = s.pty.Close()
	return s.ExitCode()
}

// fail ends the test and shows the screen.
func (s *Session) fail(format string, args ...any) {
	s.t.Helper()
	s.mu.Lock()
	defer s.mu.Unlock()
	var b strings.Builder
	fmt.Fprintf(&b, format, args...)
	x, y, _ := s.screen.Cursor()
	fmt.Fprintf(&b, "\nscreen after %d bytes, cursor at column %d of line %d:\n", len(s.output), x, y)
	for _, line := range strings.Split(s.screen.String(), "\n") {
		fmt.Fprintf(&b, "|%s\n", line)
	}
	if unknown := s.screen.Unknown(); len(unknown) > 0 {
		fmt.Fprintf(&b, "the screen model does not know %q, the picture may be wrong\n", unknown)
	}
	s.t.Fatal(b.String())
}

// Modes returns the modes of the terminal in short, which are equal when nothing of them has changed: whether it is raw, above all.
func (s *Session) Modes() string {
	s.t.Helper()
	modes, err := modesOf(s.pty)
	if err != nil {
		s.fail("the modes of the terminal: %v", err)
	}
	return modes
}
