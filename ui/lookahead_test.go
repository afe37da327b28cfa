package ui_test

import (
	"strings"
	"testing"

	"borewalk/ui"
)

// TestTheLookAhead opens on the next day, turns to the next week and back, and closes.
func TestTheLookAhead(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "L")
	wants(t, p, "Next 24 h from 04-05 06:00", "Section 1: 42 in hole", "04-05 06:00", "Make up BHA", "! Call if a length")
	golden(t, "lookahead-80", still(p.View()))
	press(p, "L", "end")
	wants(t, p, "Next 7 days from 04-05 06:00", "Well ends 04-29", "P10", "P90")
	press(p, " ")
	wants(t, p, "Next 24 h")
	press(p, "q")
	if strings.Contains(p.View(), "Next 24 h") {
		t.Error("it stays open")
	}
}

// TestTheLookAheadWithoutABeginning counts hours from now, and says what is missing.
func TestTheLookAheadWithoutABeginning(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "page time", "down", "backspace", "L")
	wants(t, p, "in 0.00 h", "Make up BHA")
	p = screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "page hole")
	downTo(t, p, "Hole TD ")
	press(p, "backspace", "L")
	wants(t, p, "no look-ahead: ")
}

func TestGoldenTimePage(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page time")
	golden(t, "time-80", still(p.View()))
	press(p, "v", "v")
	wants(t, p, "Days against depth", "TD 3")
	golden(t, "time-chart-80", still(p.View()))
}
