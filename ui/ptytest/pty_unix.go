//go:build unix

package ptytest

import (
	"fmt"
	"os"
	"os/exec"
	"syscall"

	"github.com/charmbracelet/x/term"
	"github.com/creack/pty"
	"golang.org/x/sys/unix"
)

// begin starts a program in a pseudo-terminal and returns the end that the terminal's owner holds.
func begin(cmd *exec.Cmd, cols, rows int) (*os.File, error) {
	f, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)})
	if err != nil {
		return nil, fmt.Errorf("starting %s in a pseudo-terminal: %w", cmd.Path, err)
	}
	defer f.Close()
	// The file comes in blocking mode, in which closing it waits for the reader, and so the program would never be hung up.
	fd, err := syscall.Dup(int(f.Fd()))
	if err == nil {
		syscall.CloseOnExec(fd)
		err = syscall.SetNonblock(fd, true)
	}
	if err != nil {
		_ = cmd.Process.Kill()
		return nil, fmt.Errorf("setting up the pseudo-terminal of %s: %w", cmd.Path, err)
	}
	return os.NewFile(uintptr(fd), f.Name()), nil
}

// setSize tells the terminal's size. It leaves the file's mode alone, which asking for the descriptor would not.
func setSize(f *os.File, cols, rows int) error {
	conn, err := f.SyscallConn()
	if err != nil {
		return err
	}
	var failure error
	err = conn.Control(func(fd uintptr) {
		failure = unix.IoctlSetWinsize(int(fd), unix.TIOCSWINSZ, &unix.Winsize{Col: uint16(cols), Row: uint16(rows)})
	})
	if err != nil {
		return err
	}
	return failure
}

// modesOf puts a terminal's modes in words.
func modesOf(f *os.File) (modes string, err error) {
	conn, err := f.SyscallConn()
	if err != nil {
		return "", err
	}
	var failure error
	err = conn.Control(func(fd uintptr) {
		var state *term.State
		if state, failure = term.GetState(fd); failure == nil {
			modes = fmt.Sprint(*state)
		}
	})
	if err != nil {
		return "", err
	}
	return modes, failure
}
