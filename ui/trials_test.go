package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/canvas"
)

// tried opens the trials of the third section.
func tried(t *testing.T, width, height int, options ui.Options) *ui.Planner {
	t.Helper()
	p := screenOf(t, "ottermast-2", width, height, options, "]]", "page mud")
	worked(t, p, "T")
	return p
}

func TestGoldenTrials(t *testing.T) {
	golden(t, "trials-80", tried(t, 80, 24, ui.Options{}).View())
	p := tried(t, 80, 24, ui.Options{ASCII: true})
	worked(t, p, "right", "right", "end")
	golden(t, "trials-end-80", p.View())
	p = tried(t, 140, 40, ui.Options{})
	worked(t, p, "down", "down")
	golden(t, "trials-140", p.View())
}

func TestTrialsShowWhatMoves(t *testing.T) {
	p := tried(t, 80, 24, ui.Options{})
	wants(t, p, "Trials of section 3", "1 more >", ">18-5/8 in set", "2: Hole TD m", "885.0", "-70.0", "Kick tolerance m3", "-4.60", "Shoe stands sg", "1.446!")
	worked(t, p, "right", "right")
	wants(t, p, "< 1 more", ">poor leak-off", "7.60!")
	downTo(t, p, "Kick tolerance")
	wants(t, p, "control, Kick tolerance, bit at TD: Drilled kick, plan 14.3 m3", "! caution [-6.70]")
	worked(t, p, "end")
	wants(t, p, "+ comes !", "- goes !", "Kick tolerance over the influx on the kill sheet")
	worked(t, p, "esc")
	lacks(t, p, "Trials of section 3")
	lacks(t, p, "not saved")
	press(p, "page well")
	worked(t, p, "T")
	wants(t, p, "T: trials are of a section")
}

// TestATrialIsMadeChangedAndPromoted by its keys; each step is an edit that undo takes back.
func TestATrialIsMadeChangedAndPromoted(t *testing.T) {
	p := tried(t, 100, 30, ui.Options{})
	worked(t, p, "a", "enter")
	wants(t, p, "Type a name")
	worked(t, p, "mud +0.05 sg", "enter")
	wants(t, p, "There is a trial of that name")
	for range 12 {
		worked(t, p, "backspace")
	}
	worked(t, p, "slower", "enter")
	wants(t, p, ">slower", "not saved")
	worked(t, p, "c")
	wants(t, p, "slower: which entry is another?", "Of this section")
	worked(t, p, "flow", "enter")
	wants(t, p, "slower: Flow", "In the plan: 4200 L/min", "a difference from")
	worked(t, p, "+90000", "enter")
	wants(t, p, "is outside the range", "range")
	for range 6 {
		worked(t, p, "backspace")
	}
	worked(t, p, "-600", "enter")
	wants(t, p, "Flow L/min", "3600", "-600", "Standpipe")
	downTo(t, p, "Flow")
	worked(t, p, "enter")
	wants(t, p, "-600 L/min|")
	worked(t, p, "esc", "p")
	wants(t, p, "Promote slower? The plan gets", "Flow: 4200 L/min to 3600 L/min", "> make it the plan's")
	worked(t, p, "esc")
	wants(t, p, "Trials of section 3", "3600")
	worked(t, p, "p", "enter")
	wants(t, p, "trial slower", "Trials of section 3")
	lacks(t, p, ">slower")
	worked(t, p, "esc")
	wants(t, p, "not saved")
	press(p, "page hydraulics")
	wants(t, p, "3600 L/min")
	press(p, "u")
	wants(t, p, "undid trial slower", "4200 L/min")
	worked(t, p, "T", "u", "u")
	wants(t, p, "undid new trial slower")
	lacks(t, p, "not saved")
	worked(t, p, "r")
	wants(t, p, "redid new trial slower", "not saved")
}

func TestWhatWasEditedIsKeptAsATrial(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	text, _ := plans.Demo("ottermast-2")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	file, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	p := ui.New(file, ui.Options{Path: path, Section: 2, Name: "A. Person"})
	p.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
	worked(t, p, "T", "k")
	wants(t, p, "no entry of this section alone was changed")
	worked(t, p, "esc")
	press(p, "page mud")
	downTo(t, p, "Mud density")
	worked(t, p, "1.28", "enter", "1.29", "enter")
	downTo(t, p, "PV")
	worked(t, p, "22", "enter")
	press(p, "page well")
	downTo(t, p, "Author")
	worked(t, p, "enter", "somebody", "enter")
	press(p, "page mud")
	worked(t, p, "T", "k")
	wants(t, p, "2 changed entries go into the trial", "Other edits")
	worked(t, p, "heavier", "enter")
	wants(t, p, ">heavier", "Mud density", "1.250", "1.290", "+0.040", "PV cP")
	worked(t, p, "esc")
	wants(t, p, "1.250 sg")
	worked(t, p, "s")
	got, _ := os.ReadFile(path)
	for _, part := range []string{"\ndensity = \"1.25 sg\"", "author = \"somebody\"", "[[trial.change]]\npath = \"section[17-1/2 in hole, 13-5/8 in intermediate casing].density\"\nvalue = \"1.29 sg\""} {
		if !strings.Contains(string(got), part) {
			t.Errorf("the saved file lacks %q", part)
		}
	}
	worked(t, p, "u")
	wants(t, p, "undid keep trial heavier", "1.290 sg")
}

// TestTrialsFollowSectionsOnTheScreen: a section that comes above takes no trial away.
func TestTrialsFollowSectionsOnTheScreen(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "a")
	press(p, "]]")
	worked(t, p, "T")
	wants(t, p, "Trials of section 4", "3: Hole TD m", "mud +0.05 sg")
	worked(t, p, "esc", "u")
	lacks(t, p, "not saved")
}

func TestAChangeThatCannotBeMadeIsSaid(t *testing.T) {
	text, _ := plans.Demo("ottermast-2")
	bad := strings.NewReplacer("value = \"+0.05 sg\"", "value = \"+5 m\"", "].leak_off\"", "].leek_off\"").Replace(string(text))
	file, err := planfile.Read("bad", []byte(bad))
	if err != nil {
		t.Fatal(err)
	}
	p := ui.New(file, ui.Options{Section: 2})
	p.Update(tea.WindowSizeMsg{Width: 140, Height: 40})
	worked(t, p, "T", "right")
	wants(t, p, "!! mud", "!! poor", "not worked out: section[17-1/2 in hole", "Kick tolerance")
	worked(t, p, "p")
	wants(t, p, "not promoted: ")
	downTo(t, p, "section[17")
	worked(t, p, "right")
	wants(t, p, "the plan has no such entry")
	worked(t, p, "enter")
	wants(t, p, "d removes the change")
	worked(t, p, "d", "enter", "down") // past the message
	lacks(t, p, "leek_off")
	worked(t, p, "d", "enter", "down")
	lacks(t, p, "poor leak")
	worked(t, p, "u")
	wants(t, p, "poor leak")
}

func TestTrialsFitEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {81, 25}, {99, 24}, {131, 43}, {132, 43}, {200, 60}} {
		p := tried(t, size[0], size[1], ui.Options{})
		for range 5 {
			for i, l := range strings.Split(p.View(), "\n") {
				if w := canvas.Width(l); w > size[0] {
					t.Errorf("%v: line %d is %d wide", size, i, w)
				}
			}
			worked(t, p, "right")
			press(p, "pgdown")
		}
	}
}
