package ui_test

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
)

// stringView opens the third view of the string page without charts.
func stringView(t *testing.T, width, height int) *ui.Planner {
	t.Helper()
	return screenOf(t, "ottermast-2", width, height, ui.Options{Charts: someCharts}, "]]", "page string", "v", "v")
}

func TestGoldenStackUp(t *testing.T) {
	p := stringView(t, 80, 24)
	golden(t, "stack-80", still(p.View()))
	press(p, "right")
	golden(t, "strip-80", still(p.View()))
}

func TestTheStringPageHasItsDrawingsThenTheWindow(t *testing.T) {
	p := stringView(t, 80, 24)
	wants(t, p, "Stack-up, bit at 2155 m", "1 of 3", "neutral point at", "jar", "from bit", "widest")
	press(p, "m")
	wants(t, p, "Stack-up, bit at 7070 ft")
	press(p, "right")
	wants(t, p, "Space-out, bit at 3107 ft", "2 of 3", "==||==", "pipe ram")
	press(p, "right")
	wants(t, p, "EMW ppg", "3 of 3")
	press(p, "[", "[") // riserless: no stack
	wants(t, p, "2 of 2")
	press(p, "left")
	wants(t, p, "Stack-up, bit at", "1 of 2")
}

// TestTheStackUpFollowsThePlan: an edit is drawn, and what is missing is said.
func TestTheStackUpFollowsThePlan(t *testing.T) {
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{Charts: someCharts}, "]]", "page string")
	wants(t, p, "Stack-up")
	press(p, "v", "v")
	wants(t, p, "OD   widest", "left: what the narrowest bore above leaves")
	p = screenOf(t, "ottermast-2", 100, 30, ui.Options{Charts: someCharts}, "]]", "page string")
	press(p, "down", "down", "down", "down", "enter")
	downTo(t, p, "Length")
	press(p, "backspace", "v", "v")
	wants(t, p, "only the highest string part may have no length")
	if strings.Contains(p.View(), "neutral point at") {
		t.Error("a neutral point of no string")
	}
}

// TestTheStackUpFitsAnyWindow: no number is cut to another.
func TestTheStackUpFitsAnyWindow(t *testing.T) {
	p := stringView(t, 80, 24)
	for width := 60; width <= 200; width += 7 {
		for height := 16; height <= 60; height += 11 {
			p.Update(tea.WindowSizeMsg{Width: width, Height: height})
			for k, line := range strings.Split(p.View(), "\n") {
				if strings.Contains(line, "####") {
					t.Errorf("%d x %d, line %d: %q", width, height, k, line)
				}
			}
		}
	}
}
