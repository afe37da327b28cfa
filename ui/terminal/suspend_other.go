//go:build !unix

package terminal

import (
	"errors"
	"io"
)

// CanSuspend reports whether the system knows how to suspend a program.
const CanSuspend = false

// Suspension is a command for tea.Exec, which cannot do here what it does elsewhere.
type Suspension struct{}

// Run returns an error.
func (Suspension) Run() error { return errors.ErrUnsupported }

// SetStdin implements tea.ExecCommand.
func (Suspension) SetStdin(io.Reader) {}

// SetStdout implements tea.ExecCommand.
func (Suspension) SetStdout(io.Writer) {}

// SetStderr implements tea.ExecCommand.
func (Suspension) SetStderr(io.Writer) {}
