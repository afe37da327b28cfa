package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
)

// TestCommaAndPointAreDecimalSigns: a number with both, or with what may group its digits, is refused with the reason while it is typed.
func TestCommaAndPointAreDecimalSigns(t *testing.T) {
	for _, test := range []struct {
		typed string
		takes bool
		says  string
	}{
		{"1,3", true, "1.300 sg"},
		{"1.3", true, "1.300 sg"},
		{"1,250.5", false, "! "},
		{"1.250,5", false, "! "},
		{"1.2.5", false, "! "},
	} {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "down", test.typed)
		wants(t, p, test.says, test.typed) // what was typed stays in view
		if !test.takes {
			wants(t, p, "range 0.800 to 2.600 sg", "what stood before: 1.250 sg")
		}
		press(p, "enter")
		if took := !strings.Contains(p.View(), "typing"); took != test.takes {
			t.Errorf("%q is taken: %v, want %v\n%s", test.typed, took, test.takes, p.View())
		}
	}
}

// TestAFaultGoesWhenTheEntryIsRight, and comes back when it is wrong again.
func TestAFaultGoesWhenTheEntryIsRight(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "down", "9")
	wants(t, p, "[9|]", ">!Mud density", "range 0.800 to 2.600 sg", "what stood before: 1.250 sg")
	press(p, "backspace", "1.3")
	lacks(t, p, "what stood before")
	lacks(t, p, ">!Mud")
	press(p, "x")
	wants(t, p, `unknown unit "x"`)
}

// TestQuittingAsksOnlyForWhatWouldBeLost: not before a change, and not after it was taken back.
func TestQuittingAsksOnlyForWhatWouldBeLost(t *testing.T) {
	quits := func(keys ...string) bool {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, append([]string{"]]", "page mud", "down"}, keys...)...)
		_, command := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'q'}})
		return command != nil && command() == tea.Quit()
	}
	for _, test := range []struct {
		keys  []string
		quits bool
	}{
		{nil, true}, {[]string{"+"}, false}, {[]string{"+", "u"}, true}, {[]string{"+", "u", "r"}, false}, {[]string{"+", "+", "u"}, false},
		{[]string{"1.3"}, false}, // q is typed, and no unit
		{[]string{"m"}, true}, {[]string{"b"}, true},
	} {
		if got := quits(test.keys...); got != test.quits {
			t.Errorf("after %q it quits: %v, want %v", test.keys, got, test.quits)
		}
	}
}

// TestSavingHasTwoKeys: s, and ctrl s where it arrives, while an entry is typed as well.
func TestSavingHasTwoKeys(t *testing.T) {
	for _, key := range []string{"s", "ctrl+s"} {
		path := filepath.Join(t.TempDir(), "well.toml")
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Path: path}, "]]", "page mud", "down", "+", key)
		wants(t, p, "saved ")
		lacks(t, p, "not saved")
		press(p, "1.4", "ctrl+s")
		lacks(t, p, "not saved")
		if text, err := os.ReadFile(path); err != nil || !strings.Contains(string(text), "1.4") {
			t.Errorf("%s: the file does not hold what was typed: %v", key, err)
		}
	}
}

// TestUndoIsSaidInFull: what was undone or done again is named with both values, each field's edit a step of its own.
func TestUndoIsSaidInFull(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "down", "+", "down", "+", "page hole", "u")
	wants(t, p, "undid section 3 PV: 18 cP to 19 cP")
	press(p, "u")
	wants(t, p, "undid section 3 Mud density: 1.250 sg to 1.260 sg")
	press(p, "u")
	wants(t, p, "u: nothing to undo")
	press(p, "r", "r")
	wants(t, p, "redid section 3 PV: 18 cP to 19 cP")
}

// TestTheScreenIsDrawnAgainOnDemand, whatever is open.
func TestTheScreenIsDrawnAgainOnDemand(t *testing.T) {
	for _, keys := range [][]string{nil, {"f"}, {"S"}, {"page mud", "down", "1.3"}} {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, keys...)
		if _, command := p.Update(tea.KeyMsg{Type: tea.KeyCtrlL}); command == nil || command() != tea.ClearScreen() {
			t.Errorf("after %q ctrl l does not draw the screen again", keys)
		}
	}
}

// TestTheHelpIsFoundThrough by a word: / goes to the line that holds it, n to the next.
func TestTheHelpIsFoundThrough(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "?", "/", "brackets")
	wants(t, p, "[brackets|]")
	press(p, "backspace", "enter")
	wants(t, p, "found: bracket", "> ")
	press(p, "/", "moon", "enter")
	wants(t, p, "nothing here holds moon")
	press(p, "/", "page", "enter")
	before := p.View()
	press(p, "n")
	if p.View() == before {
		t.Error("n does not go on")
	}
	press(p, "/", "zz", "esc", "q")
	wants(t, p, "tab page")
	for _, word := range []string{"reversed", "yellow: caution", "!! a section", "baseline (b)", "( ) brackets", "z  "} {
		press(p, "?", "/", word, "enter")
		lacks(t, p, "nothing here holds")
		press(p, "q")
	}
}
