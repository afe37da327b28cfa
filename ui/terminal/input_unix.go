//go:build unix

package terminal

import (
	"errors"
	"fmt"
	"io"
	"os"
	"syscall"
	"time"

	"github.com/charmbracelet/x/term"
	"golang.org/x/sys/unix"
)

// Stdin returns what to give to tea.WithInput: the keyboard on standard input or, where that is a pipe or a file, the
// terminal that controls the process. Sequences that arrive in pieces are joined. It fails where there is no terminal.
func Stdin() (io.Reader, error) {
	if term.IsTerminal(os.Stdin.Fd()) {
		return newKeyboard(os.Stdin), nil
	}
	f, err := os.Open("/dev/tty")
	if err != nil {
		return nil, fmt.Errorf("no terminal to read keys from, run the program in one: %w", err)
	}
	return newKeyboard(f), nil
}

// keyboard is a terminal that is read in whole keys. Besides reading, bubbletea sets its modes and waits for it through
// the file descriptor, and looks at its name; so it has the methods for that.
type keyboard struct {
	file tty
	keys joiner
}

func newKeyboard(f *os.File) *keyboard {
	k := &keyboard{file: tty{f}}
	k.keys = joiner{from: k.file, now: time.Now}
	return k
}

func (k *keyboard) Read(p []byte) (int, error)  { return gone(k.keys.Read(p)) }
func (k *keyboard) Write(p []byte) (int, error) { return k.file.Write(p) }
func (k *keyboard) Close() error                { return k.file.Close() }
func (k *keyboard) Fd() uintptr                 { return k.file.Fd() }
func (k *keyboard) Name() string                { return k.file.Name() }

// gone makes the end of a terminal an error of its own: for bubbletea the end of its input is no reason to end. A terminal in raw mode
// has no other end than that it is hung up, which is read as the end of a file or, on some systems, as an error of the device.
func gone(n int, err error) (int, error) {
	if err != nil && (errors.Is(err, io.EOF) || errors.Is(err, syscall.EIO)) {
		return n, ErrGone
	}
	return n, err
}

// tty is a terminal that can be waited for.
type tty struct{ *os.File }

// ready waits with select, since poll does not work on terminals under macOS (its manual says so, under "Bugs"; from
// memory). Select knows the first 1024 files of a process only; a terminal beyond them is never ready, so that sequences
// from it are not joined.
func (t tty) ready(patience time.Duration) bool {
	fd := int(t.Fd())
	if fd < 0 || fd >= unix.FD_SETSIZE {
		return false
	}
	deadline := time.Now().Add(patience)
	for {
		left := max(time.Until(deadline), 0)
		timeout := unix.NsecToTimeval(left.Nanoseconds())
		var files unix.FdSet
		files.Set(fd)
		n, err := unix.Select(fd+1, &files, nil, nil, &timeout)
		if err == unix.EINTR && left > 0 { // a signal, among them those of Go's own scheduler
			continue
		}
		return err == nil && n > 0
	}
}
