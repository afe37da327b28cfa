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
		{80, 24, []string{"Casing, string 3  v    457 bar", "Kick margin at TD v  0.188 sg", "Choke, most static v  54.5 bar", "MAASP, shoe  -15.9    54.5 bar"}},
		{140, 40, []string{"Casing, string 3 -15.9     457 bar", "Kick margin at TD     v  0.188 sg", "Choke, most static -15.9  54.5 bar"}},
		{150, 40, []string{"Casing, string 3     -15.9     457 bar", "Kick margin at TD   -0.055   0.188 sg"}},
	} {
		p := screenOf(t, "ottermast-2", test.width, test.height, ui.Options{}, "]]]", "page mud")
		downTo(t, p, "Mud density")
		press(p, "1.5", "enter", "page control")
		wants(t, p, test.want...)
	}
}

// TestAColumnsNameIsReadable where the column is narrower.
func TestAColumnsNameIsReadable(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page control", "v")
	wants(t, p, "with line friction")
	lacks(t, p, "###")
	press(p, "page hydraulics")
	downTo(t, p, "Liners as fitted")
	wants(t, p, "stro. needed")
	lacks(t, p, "###")
}
