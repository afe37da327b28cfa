package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/ui"
)

// Papers are printed from the screen as without it, every one in every format that it has; what has nothing to say says why.
func TestAPaperIsPrintedFromTheScreen(t *testing.T) {
	dir := t.TempDir()
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Section: 2}, "O")
	wants(t, p, "Print a paper of section 3", "cement card", "change note")
	downTo(t, p, "step list")
	press(p, "enter")
	downTo(t, p, "pdf")
	press(p, "enter")
	wants(t, p, "ttermast-2-3-step-list.pdf")
	press(p, "ctrl+u", filepath.Join(dir, "list.pdf"), "enter")
	wants(t, p, "printed to")
	got, err := os.ReadFile(filepath.Join(dir, "list.pdf"))
	if err != nil || !strings.HasPrefix(string(got), "%PDF-") {
		t.Errorf("%v, %.20q", err, got)
	}
	press(p, "O")
	downTo(t, p, "step list")
	press(p, "enter", "enter", "ctrl+u", filepath.Join(dir, "list.pdf"), "enter")
	wants(t, p, "exists already")
	press(p, "ctrl+u", filepath.Join(dir, "plan.toml"), "enter")
	wants(t, p, "That is the name of a plan")
	press(p, "esc", "O")
	downTo(t, p, "handover")
	press(p, "enter", "enter", "ctrl+u", filepath.Join(dir, "handover.txt"), "enter")
	wants(t, p, "no section is")
}
