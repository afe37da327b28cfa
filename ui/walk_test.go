package ui_test

import (
	"strings"
	"testing"

	"borewalk/ui"
)

// walking opens the walk of a section of Ottermast-2 by its number and presses keys in it.
func walking(t testing.TB, section, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	options.Section = section - 1
	return screenOf(t, "ottermast-2", width, height, options, append([]string{"W"}, keys...)...)
}

// times returns a key so many times.
func times(n int, key string) []string {
	list := make([]string, n)
	for k := range list {
		list[k] = key
	}
	return list
}

func TestGoldenWalk(t *testing.T) {
	drilling := append(times(13, "n"), times(10, "right")...)
	golden(t, "walk-drilling-80", walking(t, 3, 80, 24, ui.Options{}, drilling...).View())
	golden(t, "walk-running-ascii-100", walking(t, 3, 100, 30, ui.Options{ASCII: true}, append(times(17, "n"), times(20, "right")...)...).View())
	golden(t, "walk-stack-80", walking(t, 3, 80, 24, ui.Options{}, append(times(1, "n"), times(14, "right")...)...).View())
}

func TestTheWalkGoesThroughStepsAndMoments(t *testing.T) {
	p := walking(t, 3, 80, 24, ui.Options{})
	wants(t, p, "1 of 26  Prepare BOP", "STOP Call the supervisor", "step 1 of 26")
	press(p, "n", "n")
	wants(t, p, "3 of 26  Land and latch BOP", "Moment 1 of 2")
	press(p, "right", "right") // beyond the last moment is the next step
	wants(t, p, "4 of 26  Test BOP")
	press(p, "left")
	wants(t, p, "3 of 26", "Moment 2 of 2")
	press(p, "p", "p", "p")
	wants(t, p, "1 of 26")
	press(p, "esc")
	lacks(t, p, "step 1 of 26")
}

// A step is struck, put back, moved, given a note, a stop point and hours, and one is added: each an edit that undo takes back.
func TestTheListIsChangedInTheWalk(t *testing.T) {
	p := walking(t, 3, 80, 24, ui.Options{}, append(times(8, "n"), "x")...)
	wants(t, p, "struck", "Struck: it is not done", "* not saved")
	press(p, "u")
	lacks(t, p, "Struck: it is not done")
	lacks(t, p, "* not saved")

	press(p, "e", "keep 2 joints below the rams", "enter")
	wants(t, p, "NOTE keep 2 joints below the rams")
	press(p, "t")
	press(p, times(12, "backspace")...)
	press(p, "6 h", "enter")
	wants(t, p, "6.00 h (5.10 to 8.40)")
	press(p, "a", "Function the diverter", "enter")
	wants(t, p, "of 27  Function the diverter", "duration of the operation is blank")
	press(p, "t", "0.5", "enter")
	wants(t, p, "0.50 h (0.42 to 0.70)")
	press(p, ">")
	wants(t, p, "11 of 27  Function the diverter")
}

func TestAStepThatMovesTheStringStaysWhereItIs(t *testing.T) {
	p := walking(t, 3, 80, 24, ui.Options{}, append(times(5, "n"), ">")...)
	wants(t, p, "6 of 26  Run in", "only an operation in which both stand")
	if strings.Contains(p.View(), "not saved") {
		t.Error("a refused move changed the plan")
	}
}

func TestTheWalkOpensAtTheStepInFocus(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Section: 2}, "page steps", "right", "down", "down", "down", "W")
	wants(t, p, "4 of 26  Test BOP")
}

func TestWithoutDepthsThereIsNoWalk(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Section: 2}, "page hole")
	downTo(t, p, "Hole TD")
	press(p, "backspace", "W")
	wants(t, p, "there are no operations yet")
}
