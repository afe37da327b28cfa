package strip_test

import (
	"fmt"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/ui/strip"
)

func ram(name string, depth, sweep float64) calc.StripMark {
	return calc.StripMark{Name: name, Ram: true, Depth: depth, Shallowest: depth - sweep, Deepest: depth + sweep}
}

func joint(depth float64) calc.StripMark {
	return calc.StripMark{Name: "tool joint", Depth: depth, Shallowest: depth - 0.25, Deepest: depth + 0.25}
}

func lines(t *testing.T, s calc.Strip, most int) string {
	t.Helper()
	list := strip.Lines(&s, func(m float64) string { return fmt.Sprintf("%.2f", m) }, most)
	if len(list) > most {
		t.Errorf("%d lines, %d at the most", len(list), most)
	}
	return "\n" + strings.Join(list, "\n") + "\n"
}

func TestTheStrip(t *testing.T) {
	s := calc.Strip{Marks: []calc.StripMark{ram("shear", 100, 1), ram("pipe", 103, 1), joint(101.25), joint(104.6)}}
	got := lines(t, s, 14)
	want := `
       from the rig
 99.00 ..||..
 99.50 ..||..
100.00 ==||== shear
100.50 ..||..
101.00   []
101.50   ||
102.00 ..||..
102.50 ..||..
103.00 ==||== pipe
103.50 ..||..
104.00   []
`
	if got != want {
		t.Errorf("got %s want %s", got, want)
	}
}

// TestWhatMeetsIsMarked, and nothing else.
func TestWhatMeetsIsMarked(t *testing.T) {
	apart := calc.Strip{Marks: []calc.StripMark{ram("pipe", 100, 0.6), joint(101.0)}} // 0.15 m apart, in one line of the strip
	if got := lines(t, apart, 4); strings.Contains(got, "#") {
		t.Errorf("they do not meet: %s", got)
	}
	across := calc.Strip{Marks: []calc.StripMark{ram("pipe", 100, 0.6), joint(100.7)}}
	if got := lines(t, across, 20); !strings.Contains(got, "##[]##") {
		t.Errorf("they meet: %s", got)
	}
	held := ram("pipe", 100, 0)
	held.Holds = true
	if got := lines(t, calc.Strip{Marks: []calc.StripMark{held}, Hung: []calc.StripMark{held, joint(99.75)}}, 20); strings.Contains(got, "#") || !strings.Contains(got, "pipe, holds") {
		t.Errorf("it hangs: %s", got)
	}
}

func TestNothingToDraw(t *testing.T) {
	for _, s := range []calc.Strip{{}, {Marks: []calc.StripMark{joint(100)}}} {
		if got := strip.Lines(&s, func(float64) string { return "" }, 20); len(got) != 0 {
			t.Errorf("%q", got)
		}
	}
	s := calc.Strip{Marks: []calc.StripMark{ram("pipe", 100, 1)}}
	for most := range 5 {
		if got := strip.Lines(&s, func(float64) string { return "" }, most); len(got) > most {
			t.Errorf("%d lines of %d", len(got), most)
		}
	}
}
