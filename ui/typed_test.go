package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/ui"
)

// TestNothingTypedIsKeptRaw: text that would drive a terminal, typed or pasted into an entry, a name, a reason or the note of a mark, is harmless in
// the saved file.
func TestNothingTypedIsKeptRaw(t *testing.T) {
	const driving = "mark\u009b2J\u202e\u200b\x1b[2J\x07"
	path := filepath.Join(t.TempDir(), "plan.toml")
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{Path: path})
	press(p, "page well")
	downTo(t, p, "Operator")
	press(p, "enter")
	paste(p, driving)
	press(p, "\u202e", "\u009b", "enter", "Y")
	paste(p, driving)
	press(p, "enter", "C")
	downTo(t, p, "mark a handover")
	press(p, "enter")
	paste(p, driving)
	press(p, "enter", "s")
	paste(p, driving)
	press(p, "enter")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v\n%s", err, p.View())
	}
	if n := strings.Count(string(text), "mark"); n < 4 {
		t.Errorf("it stands %d times in the file", n)
	}
	for _, r := range string(text) {
		if r != '\n' && unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == 0x200b {
			t.Fatalf("the file holds %U", r)
		}
	}
	if strings.Contains(string(text), `\u`) {
		t.Error("the file holds an escaped character")
	}
	file, err := planfile.Open(path)
	if err != nil || len(file.Notices) > 0 || model.ChangedOutside(file.Plan) {
		t.Errorf("%v, %q", err, file.Notices)
	}
}
