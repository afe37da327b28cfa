package ui_test

import (
	"strings"
	"testing"

	"borewalk/ui"
)

// foot returns the lines below the page without the keys: the title, what is said of the focus, and a finding or a message.
func foot(p *ui.Planner) []string {
	lines := strings.Split(p.View(), "\n")
	return lines[len(lines)-5 : len(lines)-1]
}

// TestTheHelpHasTheFocusInFull: the foot has the first sentence of an entry's help and says by two points that there is more; ? has all of
// it and the range first.
func TestTheHelpHasTheFocusInFull(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	if got := foot(p); got[0] != "── Total depth of the bit, along hole" || strings.TrimSpace(got[1]) != "Depth of the bit from RKB .." {
		t.Errorf("the foot says %q", got)
	}
	press(p, "?")
	wants(t, p, "IN FOCUS: TOTAL DEPTH OF THE BIT, ALONG HOLE", "1.00 to 15000.0 m. Depth of the bit from RKB.", "opener's distance less the")
}

// TestTheFindingKeepsItsPlace while the focus moves over the fields: what stays is not sent again.
func TestTheFindingKeepsItsPlace(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	want := foot(p)[2:]
	for range 6 {
		press(p, "down")
		if got := foot(p)[2:]; got[0] != want[0] || got[1] != want[1] {
			t.Errorf("the foot says %q, before %q", got, want)
		}
	}
}

// TestNothingIsSaidTwiceOfAQuestion: what stands whole in the box does not stand below it as well.
func TestNothingIsSaidTwiceOfAQuestion(t *testing.T) {
	for _, test := range []struct {
		keys []string
		once []string
	}{
		{[]string{"S"}, []string{"Save the plan as", "ending in .toml"}},
		{[]string{"]]", "d"}, []string{"Remove section 3", "keep it"}},
		{[]string{"]]", "+", "q"}, []string{"changes that are not saved", "save and quit"}},
	} {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, append([]string{"down", "down", "+"}, test.keys...)...)
		for _, text := range test.once {
			if n := strings.Count(p.View(), text); n != 1 {
				t.Errorf("after %q %q stands there %d times:\n%s", test.keys, text, n, p.View())
			}
		}
	}
}

// TestWhatIsWrongIsSaidWithItsRangeOnce, and that nothing stood there before.
func TestWhatIsWrongIsSaidWithItsRangeOnce(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Washout")
	press(p, "900")
	wants(t, p, "900 % is outside the range 0.0 to 400 %", "what stood before: blank")
}
