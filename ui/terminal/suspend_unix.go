//go:build unix

package terminal

import (
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"
)

// CanSuspend reports whether the system knows how to suspend a program.
const CanSuspend = true

// Suspension is a command for tea.Exec, which gives the terminal back while it runs: it stops the program, and returns when the
// program is continued.
type Suspension struct{}

// Run stops the program as a terminal does for ctrl+z, with all that was started together with it. Where no shell is there to
// continue it the system does not stop it; then Run returns an error.
func (Suspension) Run() error {
	continued := make(chan os.Signal, 1)
	signal.Notify(continued, syscall.SIGCONT)
	defer signal.Stop(continued)
	if err := syscall.Kill(0, syscall.SIGTSTP); err != nil {
		return err
	}
	// The time is up as well when the program is continued long after it; the signal may come a little later than that.
	for range 2 {
		select {
		case <-continued:
			return nil
		case <-time.After(200 * time.Millisecond):
		}
	}
	return errors.New("there is no shell here to go back to")
}

// SetStdin implements tea.ExecCommand.
func (Suspension) SetStdin(io.Reader) {}

// SetStdout implements tea.ExecCommand.
func (Suspension) SetStdout(io.Writer) {}

// SetStderr implements tea.ExecCommand.
func (Suspension) SetStderr(io.Writer) {}
