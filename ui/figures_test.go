package ui_test

import (
	"testing"

	"borewalk/ui"
)

// TestTheNameIsWorthMoreThanTheChange: beside a long name a change is no more than a mark, until there is room for both.
func TestTheNameIsWorthMoreThanTheChange(t *testing.T) {
	for _, test := range []struct {
		width, height int
		want          []string
	}{
		{80, 24, []string{"Max mud weight    v", "Kick margin -0.1", "MAASP        -4"}},
		{140, 40, []string{"Max mud weight  -0.", "Kick margin     -0.", "MAASP, shoe      -4"}},
	} {
		p := screenOf(t, "ottermast-2", test.width, test.height, ui.Options{}, "]]]", "page mud")
		downTo(t, p, "Mud density")
		press(p, "1.5", "enter", "page control", "1.65", "enter")
		wants(t, p, test.want...)
	}
}

// TestAColumnsNameIsReadable where the column is narrower.
func TestAColumnsNameIsReadable(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page hydraulics", "v")
	lacks(t, p, "###")
	downTo(t, p, "Liners as fitted")
	wants(t, p, "stro. needed")
	lacks(t, p, "###")
}
