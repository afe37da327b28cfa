package ui_test

import (
	"strings"
	"testing"

	"borewalk/ui"
)

// TestThePageAlone: header and schematic give way to it, the name of the page, what is not saved and the keys do not; what is played on
// the schematic brings it back.
func TestThePageAlone(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "down", "+")
	wants(t, p, "▐███▌", "caution 24")
	press(p, "z")
	lacks(t, p, "▐███▌")
	lacks(t, p, "caution 24")
	wants(t, p, "[MUD]", "section 3 of 5", "not saved", "z header", "? help", "Mud density")
	if lines := strings.Split(p.View(), "\n"); !strings.Contains(lines[1], "Fluid") {
		t.Errorf("the page does not begin below the title:\n%s", p.View())
	}
	press(p, "v")
	if !strings.Contains(p.View(), "pressure") { // the columns that the schematic left no room for
		t.Errorf("the table has no more room:\n%s", p.View())
	}
	press(p, "W")
	wants(t, p, "  368 ▀", "caution 24")
	press(p, "q", "z")
	wants(t, p, "caution 24")
}
