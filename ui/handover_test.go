package ui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/terminal"
)

// watch is how the demo well stands while its fourth section is drilled.
const watch = `
[status]
section = "4"
step = "drill"
hole = "2900 m"
bit = "2893 m"
returns = "partial"
flow = "3400 L/min"
standpipe = "268 bar"
active = "96 m3"
reserve = "118 m3"
pit_zero = "97.5 m3"
trip_tank = "4.2 m3"
losses = "0.8 m3/h"
gas = "1.4 %"
overpull = "14 tf"
alarms = "none"
equipment = "mud pump 3, liner change till noon"
permits = "hot work 118 on the cellar deck"
deviations = "MOC 7: survey every second stand"
weather = "SW 25 kn, 35 kn from midnight"
heave = "0.9 m"
circle = "offset 1.5 %, yellow at 3 %"

[[status.abnormal]]
text = "Shakers show splintered shale since 2860 m; hole packed off once at a connection."

[[status.abnormal]]
text = "Pit level gauge 2 sticks: dipped every half hour."
`

// relieved opens the demo on watch.
func relieved(t *testing.T, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	text, _ := plans.Demo("ottermast-2")
	file, err := planfile.Read("ottermast-2", append(append([]byte(nil), text...), watch...))
	if err != nil {
		t.Fatal(err)
	}
	options.Title = "demo"
	options.Now = func() time.Time { return time.Date(2026, 11, 29, 6, 5, 0, 0, time.UTC) }
	terminal.NarrowAmbiguous()
	p := ui.New(file, options)
	p.Update(tea.WindowSizeMsg{Width: width, Height: height})
	press(p, keys...)
	return p
}

func TestHandoverScreens(t *testing.T) {
	golden(t, "handover-80", relieved(t, 80, 24, ui.Options{}, "H").View())
	golden(t, "handover-140", relieved(t, 140, 40, ui.Options{}, "H").View())
	golden(t, "handover-ascii-80", relieved(t, 80, 24, ui.Options{ASCII: true}, "H", "sA. Merrow", "enter", "B. Tansy", "enter").View())
	golden(t, "handover-page-80", relieved(t, 80, 24, ui.Options{}, "shift+tab", "shift+tab").View())
}

// TestHandoverIsSignedAsOneEdit: names and hour are there at once, and go at once; the next reliever is the one who was relieved.
func TestHandoverIsSignedAsOneEdit(t *testing.T) {
	p := relieved(t, 100, 30, ui.Options{}, "H")
	lacks(t, p, "safe")
	press(p, "s", "enter")
	wants(t, p, "a name is needed")
	press(p, "A. Merrow", "enter")
	wants(t, p, "Taken over by")
	press(p, "esc")
	wants(t, p, "HANDOVER", "no handover is signed yet")
	press(p, "s", "A. Merrow", "enter", "B. Tansy", "enter")
	wants(t, p, "A. Merrow to B. Tansy, 2026-11-29 06:05", "the relief has not entered his own")
	press(p, "enter")
	wants(t, p, ">!Surface to bit", "from the tally and the mud report")
}

// TestHandoverUndone: one undo takes a signature back.
func TestHandoverUndone(t *testing.T) {
	p := relieved(t, 100, 30, ui.Options{}, "H", "s", "A. Merrow", "enter", "B. Tansy", "enter", "esc", "u", "H")
	wants(t, p, "no handover is signed yet")
	lacks(t, p, "not saved")
}

// TestTheProgramsStrokesComeAfterTheReliefs: before he has entered his they are not on the screen.
func TestTheProgramsStrokesComeAfterTheReliefs(t *testing.T) {
	p := relieved(t, 140, 40, ui.Options{}, "H", "s", "A. Merrow", "enter", "B. Tansy", "enter")
	lacks(t, p, "program 2")
	press(p, "enter", "2310", "enter", "H")
	wants(t, p, "to bit 2310 stk, program 2")
}

// TestStepNowIsChosen from the operations of the section in work.
func TestStepNowIsChosen(t *testing.T) {
	p := relieved(t, 100, 30, ui.Options{}, "H", "esc", "shift+tab", "shift+tab")
	downTo(t, p, "Step now")
	press(p, "enter")
	wants(t, p, "Operation of section 4 being done", "Circulate clean")
	press(p, "down", "enter")
	wants(t, p, "clean_up")
}

// TestHandoverFitsEveryWindow with everything blank as well.
func TestHandoverFitsEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {100, 30}, {140, 40}, {200, 60}} {
		for _, p := range []*ui.Planner{relieved(t, size[0], size[1], ui.Options{}, "H"), screenOf(t, "saltlantern-1", size[0], size[1], ui.Options{}, "H")} {
			lines := strings.Split(p.View(), "\n")
			if len(lines) != size[1] {
				t.Errorf("%v: %d lines", size, len(lines))
			}
			wants(t, p, "Next 24 h")
		}
	}
}
