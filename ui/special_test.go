//go:build !windows

package ui_test

import (
	"path/filepath"
	"syscall"
	"testing"

	"borewalk/ui"
)

// TestNoPipeIsWaitedFor: a pipe is refused where a paper is printed to it, a plan saved to it or a list read from it.
func TestNoPipeIsWaitedFor(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe.toml")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	paper := filepath.Join(filepath.Dir(pipe), "pipe.txt")
	if err := syscall.Mkfifo(paper, 0o600); err != nil {
		t.Skip(err)
	}
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{Name: "AB"}, "O", "enter", "enter", "ctrl+u", paper, "enter", "enter")
	wants(t, p, "not an ordinary file")
	press(p, "esc", "S", "ctrl+u", pipe, "enter", "enter")
	wants(t, p, "not an ordinary file")
	press(p, "esc", "page casing", "i", "ctrl+u", pipe, "enter")
	wants(t, p, "not an ordinary file")
}
