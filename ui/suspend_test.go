package ui_test

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
	"borewalk/ui/terminal"
)

// Ctrl+z goes to the shell from anywhere, and what is open stays as it is.
func TestCtrlZActsEverywhereAndChangesNothing(t *testing.T) {
	if !terminal.CanSuspend {
		t.Skip("this system cannot suspend a program")
	}
	for _, keys := range [][]string{{"]"}, {"]", "?"}, {"]", "down", "down", "1", "2"}, {"q"}} {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, keys...)
		before := p.View()
		if _, command := p.Update(tea.KeyMsg{Type: tea.KeyCtrlZ}); command == nil {
			t.Errorf("after %q ctrl+z does nothing", keys)
		}
		if after := p.View(); after != before {
			t.Errorf("after %q ctrl+z changes the screen to\n%s", keys, after)
		}
	}
	small := screenOf(t, "ottermast-2", 60, 20, ui.Options{})
	if _, command := small.Update(tea.KeyMsg{Type: tea.KeyCtrlZ}); command == nil {
		t.Error("in a small window ctrl+z does nothing")
	}
}
