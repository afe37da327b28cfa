package ui_test

import (
	"bytes"
	"math/rand/v2"
	"regexp"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
)

// Whatever is pressed, pasted or resized, nothing breaks, no screen shows a number that is none, and undo all the way back
// gives the opened plan byte for byte.
func TestRandomKeys(t *testing.T) {
	pressed := []string{"up", "down", "left", "right", "enter", "enter", "esc", "tab", "shift+tab", "pgup", "pgdown", "home", "end", "backspace",
		"]", "[", "+", "-", "a", "d", "u", "r", "v", "w", "f", "m", "b", "t", "o", "?", "P", "E", "V", "n", "p", "1", "2", "9", ".", " ", "0", "j", "k", "h", "x", "!", "Y", "C", "C", "z", "/", "left", "right"}
	for seed := range uint64(6) {
		name := plans.Names()[seed%2]
		source, _ := plans.Demo(name)
		file, err := planfile.Read(name, source)
		if err != nil {
			t.Fatal(err)
		}
		p := ui.New(file, ui.Options{Title: "demo", Charts: someCharts, Play: playSomeJob})
		random := rand.New(rand.NewPCG(seed, 1))
		var trail []string
		for range 700 {
			switch k := pressed[random.IntN(len(pressed))]; random.IntN(40) {
			case 0:
				p.Update(tea.WindowSizeMsg{Width: 40 + random.IntN(120), Height: 10 + random.IntN(40)})
			case 1:
				paste(p, []string{"12 m", "x\ny", "13 5/8", "1,5 sg", ""}[random.IntN(5)])
			default:
				trail = append(trail, k)
				press(p, k)
				if random.IntN(8) == 0 {
					press(p, "P") // on the cement page a job is played, on the control page a kick
				}
			}
			if screen := p.View(); noNumber.MatchString(screen) {
				t.Fatalf("seed %d after %q:\n%s", seed, trail, screen)
			}
		}
		p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
		press(p, "esc", "esc", "esc")
		for range 700 {
			press(p, "u")
		}
		got, err := file.Bytes()
		if err != nil {
			t.Fatalf("seed %d after %q: %v", seed, trail, err)
		}
		if !bytes.Equal(got, source) {
			t.Fatalf("seed %d after %q: undo all the way does not give the opened plan:\n%s", seed, trail, got)
		}
	}
}

// noNumber is how Go writes what is no number; an influx is none of that.
var noNumber = regexp.MustCompile(`NaN|\bInf\b`)
