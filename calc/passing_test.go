package calc_test

import (
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestAPartPassesOnlyTheBoresItEnters: the 6 5/8 in pipe hangs in the riser while the bit is at TD, the 5 in pipe below it
// in the 9 7/8 in casing, whose drift is 8.5 in.
func TestAPartPassesOnlyTheBoresItEnters(t *testing.T) {
	for _, c := range []struct {
		path string
		want calc.Severity
	}{
		{"section[6].string[8].joint_od", calc.OK},
		{"section[6].string[7].joint_od", calc.Stop},
	} {
		plan := demo(t, "saltlantern-1")
		with(t, plan, c.path, "8.6 in")
		f := worst(t, calc.Evaluate(plan), 6, "bit_passes")
		if f.Severity != c.want {
			t.Errorf("%s 8.6 in: %v, %s, want %v", c.path, f.Severity, f.Text, c.want)
		}
		if c.want == calc.Stop && f.Mend != model.Path(c.path) {
			t.Errorf("the finding leads to %s, want %s", f.Mend, c.path)
		}
	}
}

// TestATaperedStringIsComparedPartByPart: a wider length at the top of a string stands inside the string before, and has
// nothing to do with the hole.
func TestATaperedStringIsComparedPartByPart(t *testing.T) {
	plan := demo(t, "ottermast-2")
	before := value(t, calc.Evaluate(plan), 4, "casing.clearance.connector")
	s := &plan.Sections[3]
	s.Casing = append(s.Casing, s.Casing[0])
	with(t, plan, "section[4].casing[1].length", "2600 m")
	with(t, plan, "section[4].casing[2].size", "11.75 in")
	with(t, plan, "section[4].casing[2].connector_od", "12.3 in") // wider than the 12 1/4 in hole
	with(t, plan, "section[4].casing[2].id", "10.7 in")
	with(t, plan, "section[3].casing[1].drift", "12.259 in")
	r := calc.Evaluate(plan)
	if got := value(t, r, 4, "casing.clearance.connector"); got != before {
		t.Errorf("hole less connector %g, want %g as without the wide length", got/inch, before/inch)
	}
	if f := worst(t, r, 4, "hole_takes_string"); f.Severity != calc.OK {
		t.Errorf("the hole takes the string: %v, measured %g in", f.Severity, f.Measured/inch)
	}
	if f := worst(t, r, 4, "connector_passes"); f.Severity != calc.Stop || f.Mend != "section[4].casing[2].connector_od" {
		t.Errorf("a connector of 12.3 in through a drift of 12.259 in: %v, %s", f.Severity, f.Mend)
	}
}
