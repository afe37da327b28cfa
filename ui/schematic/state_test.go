package schematic

import (
	"strings"
	"testing"

	"borewalk/calc"
)

// jobAt is a moment of the job on the third string: mud (A) ahead, spacer (B) and lead (C) round the shoe, tail (D) and mud
// behind it in the string, the plugs between them.
func jobAt() Options {
	o := options(2)
	o.State = &State{RunTo: 410, Fill: letters, Frame: &calc.JobFrame{
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

func TestRowsReadBack(t *testing.T) {
	scale := NewScale(deviatedWell(), 34, false)
	for row := range 30 {
		if got := scale.Row(scale.MD(row)); got != row {
			t.Errorf("row %d is at %g, on row %d", row, scale.MD(row), got)
		}
	}
}
