package ui_test

import (
	"regexp"
	"strings"
	"testing"

	"borewalk/ui"
)

// further is what a heading of the table says of columns that have no room.
var further = regexp.MustCompile(`(<\d)|(\d>)`)

// TestATooWideTableScrollsItsColumns: the names stay, the columns move, and the heading says how many have no room on either side.
func TestATooWideTableScrollsItsColumns(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page cement", "v")
	for range 30 {
		if strings.Contains(p.View(), "2>") {
			break
		}
		press(p, "down")
	}
	wants(t, p, "2>", "left right columns")
	line := func() (name, numbers string) { // the one below the heading that has further columns
		lines := strings.Split(p.View(), "\n")
		for i, l := range lines {
			if at := strings.LastIndex(l, "│"); further.MatchString(l) {
				row := strings.TrimLeft(lines[i+1][at+len("│"):], "> ")
				return row[:10], row[20:]
			}
		}
		t.Fatalf("no heading says that there is more:\n%s", p.View())
		return "", ""
	}
	name, first := line()
	press(p, "right")
	wants(t, p, "<1 1>")
	press(p, "right")
	wants(t, p, "<2")
	lacks(t, p, "##")
	if now, last := line(); now != name || last == first {
		t.Errorf("%q %q became %q %q", name, first, now, last)
	}
	press(p, "right")
	wants(t, p, "right: there is no further column")
	press(p, "left", "left")
	if _, again := line(); again != first {
		t.Errorf("back at the first column stands %q, want %q", again, first)
	}
	press(p, "left")
	wants(t, p, "enter ") // at the fields
	press(p, "right", "right", "tab")
	lacks(t, p, "<1") // another page begins at its first column
}
