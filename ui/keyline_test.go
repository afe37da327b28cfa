package ui_test

import (
	"strings"
	"testing"

	"borewalk/ui"
)

// lastLine returns the key line.
func lastLine(p *ui.Planner) string {
	lines := strings.Split(p.View(), "\n")
	return lines[len(lines)-1]
}

// TestTheKeyLineShowsWhatMattersHere: by page and by what has the focus, and always where all keys are listed.
func TestTheKeyLineShowsWhatMattersHere(t *testing.T) {
	for _, test := range []struct {
		keys, shows, lacks []string
	}{
		{[]string{"page hole"}, []string{"tab page", "[ ] section", "enter edit", "f findings"}, []string{"u undo", "s save", "P play"}},
		{[]string{"page hole", "down"}, []string{"enter edit", "+ - step"}, nil},
		{[]string{"page mud"}, []string{"enter edit"}, nil},
		{[]string{"page mud", "down"}, []string{"enter edit", "+ - step"}, nil},
		{[]string{"page mud", "down", "+"}, []string{"s save", "u undo"}, nil},
		{[]string{"page mud", "right"}, []string{"w working", "left fields"}, []string{"enter edit", "+ - step"}},
		{[]string{"page mud", "v", "v"}, []string{"left right pictures"}, nil},
		{[]string{"page cement"}, []string{"P play"}, nil},
		{[]string{"page control", "down"}, []string{"P play", "E disconnect"}, nil},
		{[]string{"page steps"}, []string{"W walk"}, nil},
		{[]string{"page time"}, []string{"L look-ahead"}, nil},
		{[]string{"page handover"}, []string{"H handover"}, nil},
		{[]string{"page built"}, []string{"C changes"}, nil},
		{[]string{"page well"}, []string{"enter close"}, nil},
	} {
		p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, append([]string{"]]"}, test.keys...)...)
		line := lastLine(p)
		for _, text := range append(test.shows, "? help") {
			if !strings.Contains(line, text) {
				t.Errorf("after %q the key line lacks %q: %s", test.keys, text, line)
			}
		}
		for _, text := range test.lacks {
			if strings.Contains(line, text) {
				t.Errorf("after %q the key line has %q: %s", test.keys, text, line)
			}
		}
	}
}

// TestAWideKeyLineShowsMore: what has no room in 80 columns stands there in 140.
func TestAWideKeyLineShowsMore(t *testing.T) {
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{}, "]]", "page mud", "down")
	for _, text := range []string{"V vary", "W walk", "T trials", "? help"} {
		if line := lastLine(p); !strings.Contains(line, text) {
			t.Errorf("the key line lacks %q: %s", text, line)
		}
	}
}
