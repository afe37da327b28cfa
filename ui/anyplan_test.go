package ui_test

import (
	"testing"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"borewalk/model/anyplan"
	"borewalk/model/planfile"
	"borewalk/ui"
)

// TestAnyPlanIsShown: whatever a file may hold, and whichever pages and overlays are opened over it, no screen shows a number that is none or a
// character that is no letter.
func TestAnyPlanIsShown(t *testing.T) {
	keys := []string{"tab", "tab", "]", "v", "v", "end", "home", "down", "right", "left", "enter", "w", "f", "?", "H", "L", "C", "T", "W", "P", "E", "t", "o", "m", "+", "d", "a", "u", "esc", "esc"}
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyplan.From(rapid.SliceOfN(rapid.Byte(), 0, 200).Draw(rt, "bytes"))
		p := ui.New(planfile.New(plan), ui.Options{Title: "any", Charts: someCharts, Play: playSomeJob, ASCII: rapid.Bool().Draw(rt, "ascii")})
		p.Update(tea.WindowSizeMsg{Width: rapid.IntRange(60, 160).Draw(rt, "columns"), Height: rapid.IntRange(20, 50).Draw(rt, "rows")})
		for range rapid.IntRange(0, 10).Draw(rt, "keys") {
			press(p, rapid.SampledFrom(keys).Draw(rt, "key"))
			screen := p.View()
			if noNumber.MatchString(screen) {
				rt.Fatalf("no number:\n%s", screen)
			}
			for _, r := range screen {
				if r != '\n' && r != '\x1b' && unicode.In(r, unicode.Cc, unicode.Cf) {
					rt.Fatalf("%U is shown:\n%s", r, screen)
				}
			}
		}
	})
}
