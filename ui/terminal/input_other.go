//go:build !unix

package terminal

import (
	"io"
	"os"
)

// Stdin returns what to give to tea.WithInput: standard input itself. On Windows bubbletea reads key events from the
// console rather than bytes, which needs the very file, and events do not come in pieces.
func Stdin() (io.Reader, error) { return os.Stdin, nil }
