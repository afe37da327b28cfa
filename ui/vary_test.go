package ui_test

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
)

// worked sends keys like press, and after each waits for what it began in the background.
func worked(t *testing.T, p *ui.Planner, keys ...string) {
	t.Helper()
	named := map[string]tea.KeyType{"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft,
		"right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd, "backspace": tea.KeyBackspace}
	send := func(m tea.Msg) {
		_, command := p.Update(m)
		for n := 0; command != nil; n++ {
			if n > 1000 {
				t.Fatal("the work does not end")
			}
			_, command = p.Update(command())
		}
	}
	for _, k := range keys {
		if kind, ok := named[k]; ok {
			send(tea.KeyMsg{Type: kind})
			continue
		}
		for _, r := range k {
			send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		}
	}
}

// varied opens the chart of the margin to fracture against the mud's density in the third section.
func varied(t *testing.T, width, height int, options ui.Options) *ui.Planner {
	t.Helper()
	p := screenOf(t, "ottermast-2", width, height, options, "]]", "page mud")
	downTo(t, p, "Mud density")
	worked(t, p, "V")
	wants(t, p, "Vary Mud density: which figure?", "Move with it and have a limit")
	worked(t, p, "below fracture", "enter")
	return p
}

func TestGoldenVary(t *testing.T) {
	golden(t, "vary-80", still(varied(t, 80, 24, ui.Options{}).View()))
	p := varied(t, 140, 40, ui.Options{ASCII: true})
	worked(t, p, "a", "shoe test", "enter")
	golden(t, "vary-table-140", still(p.View()))
}

func TestVaryTakesTheValueUnderTheCursor(t *testing.T) {
	p := varied(t, 80, 24, ui.Options{})
	wants(t, p, "Below fracture against Mud density", "Mud density 1.250 sg (now): Below fracture 0.228 sg", "no limit of this figure passed")
	worked(t, p, "right", "right", "right", "right")
	wants(t, p, "1.320 sg (now 1.250 sg)", "0.158 sg [-0.070], +2", "!! stop section 2: Collapse")
	lacks(t, p, "not saved")
	worked(t, p, "esc")
	wants(t, p, "nothing was changed", "1.250 sg")
	lacks(t, p, "not saved")
	worked(t, p, "V", "below fracture", "enter", "right", "right", "right", "right", "enter")
	wants(t, p, "not saved", "Mud density: 1.250 sg to 1.320 sg", "1.320 sg")
	worked(t, p, "u")
	wants(t, p, "undid")
	lacks(t, p, "not saved")
	wants(t, p, "1.250 sg")
}

func TestVaryMovesAndZoomsTheRange(t *testing.T) {
	p := varied(t, 80, 24, ui.Options{})
	worked(t, p, "home")
	first := p.View()
	worked(t, p, "left", "left", "left")
	if p.View() == first {
		t.Error("the range did not move on")
	}
	wants(t, p, "Below fracture")
	for range 60 {
		worked(t, p, "left")
	}
	wants(t, p, "the entry's range ends here")
	p = varied(t, 80, 24, ui.Options{})
	worked(t, p, "-")
	wants(t, p, "1.250 sg (now)")
	worked(t, p, "right")
	lacks(t, p, "1.260 sg (now")
	worked(t, p, "left", "+", "right")
	wants(t, p, "1.260 sg (now 1.250 sg)")
	worked(t, p, "end")
	wants(t, p, "!! stop section", " stop, ") // far too heavy a mud
}

// A second entry makes a table; marks stand beside the numbers, and taking a cell is one edit.
func TestVaryTwoEntries(t *testing.T) {
	p := varied(t, 80, 24, ui.Options{})
	worked(t, p, "a")
	wants(t, p, "Beside Mud density", "Prognosis row 6: Fracture")
	worked(t, p, "shoe test", "enter")
	wants(t, p, "Below fracture sg", "Mud density sg down, Shoe test sg across", "now   1.250", "!!")
	lacks(t, p, "a second entry")
	worked(t, p, "down", "right")
	wants(t, p, "(now 1.250 sg), Shoe test", "(now 1.480 sg)")
	worked(t, p, "enter")
	wants(t, p, "not saved", "Mud density: 1.250 sg to", "Shoe test: 1.480 sg to")
	worked(t, p, "u")
	lacks(t, p, "not saved")
	wants(t, p, "1.250 sg")
	press(p, "page control")
	wants(t, p, "Shoe test      1.480 sg")
}

func TestVaryFromAFigureRanksTheEntries(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "right")
	downTo(t, p, "Below fracture")
	worked(t, p, "V")
	wants(t, p, "Below fracture: which of them?")
	worked(t, p, "enter")
	wants(t, p, "Below fracture moves by one step of", "-0.010 sg    +0.010 sg  Mud density", "Do not move it by one step")
	worked(t, p, "mud den", "enter")
	wants(t, p, "Below fracture against Mud density", "1.250 sg (now)")
}

func TestVarySaysWhyNot(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud")
	downTo(t, p, "Fluid")
	worked(t, p, "V")
	wants(t, p, "V: not a number")
	press(p, "v", "v", "V")
	wants(t, p, "go to the field of a number")
}

// Water depth takes the well with it, and says so.
func TestVaryTheWaterDepth(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page well")
	downTo(t, p, "Water depth")
	worked(t, p, "V", "hole td", "enter", "right", "enter")
	wants(t, p, "move all with the seabed", "not saved")
	worked(t, p, "u")
	lacks(t, p, "not saved")
}

func TestAFinderNarrowsAndWidens(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud")
	downTo(t, p, "Mud density")
	worked(t, p, "V", "over q")
	wants(t, p, "nothing holds over q")
	worked(t, p, "enter", "backspace")
	wants(t, p, "[over |]", "Over pore")
	worked(t, p, "esc")
	wants(t, p, "Move with it")
	worked(t, p, "esc")
	lacks(t, p, "which figure")
	worked(t, p, "V", "enter") // the first line that can be chosen, below its heading
	wants(t, p, "Over pore against Mud density")
}

// beside lets a command run beside the program, as it does in a terminal, while keys are pressed and the screen is drawn, and then
// takes in what comes of it and of the commands that follow: this is where the race detector looks.
func beside(p *ui.Planner, command tea.Cmd, keys ...string) {
	for command != nil {
		done := make(chan tea.Msg, 1)
		go func() { done <- command() }()
		press(p, keys...)
		p.View()
		_, command = p.Update(<-done)
	}
}

// Keys are answered while a sweep goes on in the background, and what comes in late for a closed one is dropped.
func TestVaryInTheBackground(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "right")
	downTo(t, p, "Below fracture")
	press(p, "V")
	_, command := p.Update(tea.KeyMsg{Type: tea.KeyEnter})
	wants(t, p, "entries")
	press(p, "esc")
	lacks(t, p, "looking")
	beside(p, command, "tab", "+", "]", "[", "shift+tab")
	lacks(t, p, "moves by one step")
}

// TestTheChartInTheBackground: it fills while its cursor moves and its range is drawn wider and closer.
func TestTheChartInTheBackground(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud")
	downTo(t, p, "Mud density")
	worked(t, p, "V", "below fracture")
	_, command := p.Update(tea.KeyMsg{Type: tea.KeyEnter})
	beside(p, command, "right", "left")
	_, command = p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("-")})
	beside(p, command, "left", "right")
	wants(t, p, "Below fracture against Mud density", "1.250 sg (now)")
}

// TestKeysTypedWhileEntriesAreLookedForAreDropped: they do not narrow a list that was not to be seen yet.
func TestKeysTypedWhileEntriesAreLookedForAreDropped(t *testing.T) {
	p := varied(t, 80, 24, ui.Options{})
	_, command := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("azx7")}) // in one read, as typed ahead
	press(p, "k", "right")
	for command != nil {
		_, command = p.Update(command())
	}
	wants(t, p, "which entry moves Below fracture?")
	lacks(t, p, "|]")
}

// TestVaryOffersWhatSaysMoreThanTheEntry: the shoe test against itself is a straight line; the tolerance has a limit, although the
// fracture prognosis holds it where it is for one step.
func TestVaryOffersWhatSaysMoreThanTheEntry(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page control")
	downTo(t, p, "Shoe test")
	worked(t, p, "V")
	inOrder(t, p, "Have a limit, and move with it further on", "> Drilled kick", "Move with it", "Shoe test  1.480 sg")
	worked(t, p, "enter", "left", "left", "left", "left")
	wants(t, p, "Drilled kick against Shoe test", "Shoe test 1.400 sg (now 1.480 sg): Drilled kick 7.60 m3")
	press(p, "esc", "page hole")
	downTo(t, p, "Rathole") // nothing of its page says more
	worked(t, p, "V")
	inOrder(t, p, "Move with it and have a limit", "> Rathole to bit")
	lacks(t, p, "further on")
	press(p, "esc", "page casing")
	downTo(t, p, "+ Tally")
	press(p, "enter")
	downTo(t, p, "Track joints") // of two figures with a limit, the one that is not the entry again
	worked(t, p, "V")
	inOrder(t, p, "Move with it and have a limit", "> Shoe, off plan", "Joints run, left")
}
