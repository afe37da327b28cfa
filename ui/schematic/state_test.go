package schematic

import (
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
)

// jobAt is a moment of the job on the third string: mud (A) ahead, spacer (B) and lead (C) round the shoe, tail (D) and mud
// behind it in the string, the plugs between them.
func jobAt() Options {
	o := options(2)
	o.State = &State{RunTo: 410, Fill: letters, Job: &calc.Job{}, Frame: &calc.JobFrame{
		Inside:  []calc.JobStand{{Top: 0, Bottom: 1400, Fluid: 4}, {Top: 1400, Bottom: 2000, Fluid: 3}, {Top: 2000, Bottom: 2152, Fluid: 2}},
		Annulus: []calc.JobStand{{Top: 0, Bottom: 1200, Fluid: 0}, {Top: 1200, Bottom: 1201, Fluid: 1}, {Top: 1201, Bottom: 2152, Fluid: 2}},
		Pocket:  []calc.JobStand{{Top: 2152, Bottom: 2180, Fluid: 0}},
		Plugs:   []calc.JobPlug{{Name: "top", MD: 1400}},
	}}
	return o
}

// Every fluid is seen where it stands, however thin, and in the order of depth.
func TestAJobShowsFluidsInPlace(t *testing.T) {
	for _, size := range [][2]int{{19, 16}, {27, 22}, {33, 32}} {
		got := picture(deviatedWell(), jobAt(), size[0], size[1])
		lines := strings.Split(got, "\n")
		first := func(text string) int {
			for i, l := range lines {
				if strings.Contains(l, text) {
					return i
				}
			}
			t.Errorf("%v: no %q in\n%s", size, text, got)
			return -1
		}
		spacer, lead := first("BB"), first("CC")
		inside, plug, tail := first("│E│"), first("╬"), first("DDD")
		if !(inside < plug && plug < tail) || !(spacer < lead) || first("1400") != plug {
			t.Errorf("%v: not in order:\n%s", size, got)
		}
		if below := lines[first("2180")]; !strings.Contains(below, "AAA") {
			t.Errorf("%v: no mud in the pocket: %q", size, below)
		}
	}
}

// While cement falls the string is empty down to the level.
func TestTheStringIsEmptyAboveTheLevel(t *testing.T) {
	o := jobAt()
	o.State.Frame.Level = 1300
	got := picture(deviatedWell(), o, 33, 32)
	if strings.Contains(got, "│E│") || !strings.Contains(got, " 1300 ") {
		t.Errorf("the level is not seen:\n%s", got)
	}
}

// Where the shoe shares its row with the bottom of the hole the annulus is seen down to it all the same.
func TestTheAnnulusReachesTheShoe(t *testing.T) {
	s, o := deviatedWell(), jobAt()
	o.TrueScale, s.Sections[2].Shoe = true, 2178
	o.State.Frame.Annulus[2].Bottom = 2178
	lines := strings.Split(picture(s, o, 33, 32), "\n")
	for _, l := range lines {
		if strings.ContainsRune(l, o.Glyphs.ShoeLeft) && !strings.Contains(l, "20") && !strings.Contains(l, "30") && !strings.Contains(l, "CC┘") {
			t.Errorf("no lead at the shoe: %q", l)
		}
	}
}

func TestASectionWithoutAStringIsDrawnWithoutTheJob(t *testing.T) {
	s := deviatedWell()
	s.Sections[2].String = false
	o := jobAt()
	if with, without := picture(s, o, 33, 32), picture(s, options(2), 33, 32); with != without {
		t.Errorf("got\n%s\nwant\n%s", with, without)
	}
}

// kickAt is a moment of a kick in the third section, which is drilled with a string to its bottom: gas (B) from a top down to 1500 m in
// the mud (A), kill mud (C) in the string, and the riser's own mud (D).
func kickAt(top float64) Options {
	o := options(2)
	annulus := []calc.JobStand{{Top: 0, Bottom: top}, {Top: top, Bottom: 1500, Fluid: 1}, {Top: 1500, Bottom: 2180}}
	if top == 0 {
		annulus = annulus[1:]
	}
	o.State = &State{RunTo: 2180, Fill: letters,
		Job:   &calc.Job{Kind: calc.KillJob, Fluids: []calc.JobFluid{{}, {Role: calc.GasRole}, {}, {}}},
		Frame: &calc.JobFrame{Inside: []calc.JobStand{{Bottom: 2180, Fluid: 2}}, Annulus: annulus, Riser: []calc.JobStand{{Bottom: 395, Fluid: 3}}},
	}
	return o
}

func TestAKickIsDrawnUnderAClosedStack(t *testing.T) {
	for _, size := range [][2]int{{19, 16}, {27, 22}, {33, 32}} {
		for _, test := range []struct {
			top         float64
			line, below string // of signs beside the riser, and under the stack
		}{{1200, "│A│", "A│C│A"}, {0, "│B│", "B│C│B"}} {
			got := picture(deviatedWell(), kickAt(test.top), size[0], size[1])
			lines := strings.Split(got, "\n")
			stack := slices.IndexFunc(lines, func(l string) bool { return strings.Contains(l, "██│C│██") })
			switch {
			case stack < 1:
				t.Fatalf("%v: no closed stack in\n%s", size, got)
			case !strings.Contains(lines[stack-1], "DD│C│DD") || !strings.Contains(lines[stack-1], "D"+test.line):
				t.Errorf("%v: riser and choke line are %q, want the riser's own mud and %s", size, lines[stack-1], test.line)
			case !strings.Contains(lines[stack+1], test.below):
				t.Errorf("%v: under the stack is %q, want %s", size, lines[stack+1], test.below)
			case !strings.Contains(got, " 1500 ") || test.top > 0 && !strings.Contains(got, " 1200 "):
				t.Errorf("%v: the ends of the gas are not written:\n%s", size, got)
			}
			for _, l := range lines[stack:] {
				if l := strings.TrimSpace(l); strings.HasPrefix(l, "2180") && !strings.Contains(l, "A│C│A") {
					t.Errorf("%v: the string does not reach the bottom: %q", size, l)
				}
			}
		}
	}
}

func TestASectionWithoutACasingIsDrawnWithItsKick(t *testing.T) {
	s := deviatedWell()
	with := picture(s, kickAt(1200), 33, 32)
	s.Sections[2].String = false
	if got := picture(s, kickAt(1200), 33, 32); got != with {
		t.Errorf("got\n%s\nwant\n%s", got, with)
	}
}

// When the riser is let go the string ends in the stack, and where the riser was the sea is.
func TestAPartedRiserIsDrawnAway(t *testing.T) {
	o := kickAt(1200)
	o.State.Job.Kind, o.State.Job.Fluids[3].Role = calc.DisconnectJob, calc.SeaRole
	f := o.State.Frame
	f.Parted, f.Annulus = true, []calc.JobStand{{Top: 395, Bottom: 2180}}
	for _, sea := range []bool{false, true} {
		want := "│AAAAAAA"
		if f.Riser[0].Fluid = 0; sea {
			f.Riser[0], want = calc.JobStand{Top: 25, Bottom: 395, Fluid: 3}, " DDDDDDD"
		}
		got := picture(deviatedWell(), o, 33, 32)
		lines := strings.Split(got, "\n")
		stack := slices.IndexFunc(lines, func(l string) bool { return strings.Contains(l, "▐███████") })
		if stack < 1 || !strings.Contains(lines[stack-1], want) || !strings.Contains(lines[stack+1], "A│C│A") {
			t.Errorf("sea %v: want %q over the closed stack and the string under it:\n%s", sea, want, got)
		}
	}
}

func TestRowsReadBack(t *testing.T) {
	scale := NewScale(deviatedWell(), 34, false)
	for row := range 30 {
		if got := scale.Row(scale.MD(row)); got != row {
			t.Errorf("row %d is at %g, on row %d", row, scale.MD(row), got)
		}
	}
}
