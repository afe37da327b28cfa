package ui_test

import (
	"testing"

	"borewalk/ui"
)

// TestTheFocusStaysOnItsEntry: readings take PV and YP off the page above them, and what is typed next must not go a row on.
func TestTheFocusStaysOnItsEntry(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud")
	downTo(t, p, "+ Rheology")
	press(p, "enter")
	downTo(t, p, "Flow given by")
	wants(t, p, "> Flow given by P", "  YP              10.5 Pa")
	press(p, "+")
	wants(t, p, "> Flow given by  readings")
	lacks(t, p, "  YP  ")
	press(p, "u")
	wants(t, p, "> Flow given by P", "  YP              10.5 Pa")
	press(p, "r")
	wants(t, p, "> Flow given by  readings")
	press(p, "up", "down")
	wants(t, p, "> Flow given by  readings")
}

// TestAnEntryThatIsGoneLeavesTheFocusAboveIt, and does not take it back when it is shown again: a string to the wellhead has no top to
// enter as a liner has.
func TestAnEntryThatIsGoneLeavesTheFocusAboveIt(t *testing.T) {
	p := screenOf(t, "saltlantern-1", 80, 24, ui.Options{}, "]]]]]", "page casing")
	downTo(t, p, "Top ")
	press(p, "up")
	wants(t, p, "> Set by")
	press(p, "down", "[")
	wants(t, p, "section 5 of 6", "> Set by")
	press(p, "]")
	wants(t, p, "section 6 of 6", "> Set by")
}

// TestARowTakenAwayLeavesTheFocusOnTheNext, or on the line that adds to the list.
func TestARowTakenAwayLeavesTheFocusOnTheNext(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 40, ui.Options{}, "]]]", "page casing")
	downTo(t, p, "+ 1.52 m 1 landing")
	press(p, "d")
	wants(t, p, ">+ 3.05 m 2 landing")
	press(p, "d", "d")
	wants(t, p, "> add Pup joint")
	press(p, "d")
	wants(t, p, "go to the row first")
	press(p, "u")
	wants(t, p, ">+ 9.45 m 2 landing")
}

// TestTheFocusStaysOnItsFigure when lines of figures come and go above it.
func TestTheFocusStaysOnItsFigure(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page control")
	downTo(t, p, "+ Shoe test as run")
	press(p, "enter")
	downTo(t, p, "Gauge, picked")
	press(p, "21", "enter", "right")
	downTo(t, p, "Max mud weight")
	press(p, "u")
	wants(t, p, ">Max mud weight", "undid", "Gauge, planned")
	press(p, "r")
	wants(t, p, ">Max mud weight", "redid")
	press(p, "left")
	wants(t, p, "> Gauge, picked  21.0 bar")
}

// TestAListThatDoesNotCountIsNotOffered: without a stack there is neither a shoe test to read nor a slow rate to record.
func TestAListThatDoesNotCountIsNotOffered(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]", "page control")
	lacks(t, p, "add Test point")
	lacks(t, p, "add Slow rate")
	press(p, "]")
	wants(t, p, "add Test point", "add Slow rate")
}
