package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/ui"
)

// heavier opens a demo, saves it at a path, and makes the mud of section 4 heavier.
func heavier(t *testing.T, path string) *ui.Planner {
	t.Helper()
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "S", "ctrl+u", path, "enter", "]]]", "page mud")
	downTo(t, p, "Mud density")
	press(p, "1.75", "enter")
	return p
}

// TestWhatChangedIsListedAndLeadsThere: entries, findings and figures since the log began, each a way to where it stands.
func TestWhatChangedIsListedAndLeadsThere(t *testing.T) {
	p := heavier(t, filepath.Join(t.TempDir(), "well.toml"))
	press(p, "page well", "C")
	wants(t, p, "since the log began", "none is signed or marked yet", "since the plan was opened", "another plan", "mark a handover")
	press(p, "enter")
	wants(t, p, "Entries: 1", "> 4: Mud density: 1.420 sg to 1.750 sg", "Findings: ", "was ok: !! 4")
	press(p, "Y", "losses in the sand", "enter")
	wants(t, p, "> 4: Mud density", "losses in the sand")
	press(p, "down")
	screen := p.View()
	press(p, "enter")
	lacks(t, p, "Entries: 1")
	if screen == p.View() {
		t.Error("enter on a finding leads nowhere")
	}
	press(p, "C", "enter", "end")
	wants(t, p, " to ")
	press(p, "enter")
	lacks(t, p, "What changed")
	press(p, "C", "enter", "enter")
	wants(t, p, "[MUD]", "1.750 sg", "section 4 of 5")
}

// TestWhatIsComparedWith: since opening and since the last save are not the same, and undo brings both back.
func TestWhatIsComparedWith(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := heavier(t, path)
	press(p, "s", "C", "down", "down", "enter") // since the last save; a handover is passed over
	wants(t, p, "Nothing differs", "Entries: 0")
	press(p, "esc", "C", "down", "enter")
	wants(t, p, "since the plan was opened", "Entries: 1")
	press(p, "esc", "C", "down", "down", "down", "enter", "none.toml", "enter")
	wants(t, p, "none.toml: ")
	press(p, "ctrl+u", path, "enter")
	wants(t, p, "Nothing differs")
	press(p, "esc", "u", "C", "enter")
	wants(t, p, "Nothing differs")
}

// TestAHandoverIsMarkedAndComparedWith: a mark goes into the log, and from then on it is what changes are counted from.
func TestAHandoverIsMarkedAndComparedWith(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := heavier(t, path)
	press(p, "C", "end", "up", "enter")
	wants(t, p, "Mark: handover")
	press(p, "night to day", "enter")
	wants(t, p, "handover marked", "not saved")
	downTo(t, p, "PV")
	press(p, "30", "enter", "s", "C", "down", "enter")
	wants(t, p, "handover marked", "Entries: 1", "> 4: PV")
	press(p, "esc", "C", "down", "down", "down", "down", "down", "enter")
	wants(t, p, "The log", "PV: 26 cP to 30 cP", "mark: handover: night to day", "Mud density: 1.42 sg to 1.75 sg", "03-01 06:00 A. Per")
	press(p, "end", "Y", "losses", "enter")
	wants(t, p, "> 03-01 06:00", "A. Person: section 4: Mud density: 1.42 sg to 1.75 sg:")
	press(p, "enter")
	wants(t, p, "[MUD]", "not saved")
	press(p, "s")
	if got := logOf(t, path); len(got) != 3 || got[0].Why != "losses" || got[1].New != model.MarkHandover || got[1].Who != "A. Person" {
		t.Errorf("log %+v", got)
	}
}

// TestARowIsOneLineOfTheLog: a section that is removed, with hundreds of entries, takes one line.
func TestARowIsOneLineOfTheLog(t *testing.T) {
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{}, "]]", "d", "down", "enter", "a")
	press(p, "C", "down", "down", "down", "down", "enter")
	wants(t, p, "section 3 removed, with", "section 4 added, with", "entries")
	if n := strings.Count(p.View(), "A. Per"); n != 3 { // and once below
		t.Errorf("%d lines", n)
	}
}

// TestAPlanChangedOutsideIsNoticed: the planner says so when it opens it, and which rows of the log do not fit.
func TestAPlanChangedOutsideIsNoticed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := heavier(t, path)
	press(p, "s")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(string(text), "density = \"1.75 sg\"", "density = \"1.7 sg\"", 1)
	file, err := planfile.Read("well.toml", []byte(changed))
	if err != nil {
		t.Fatal(err)
	}
	p = ui.New(file, ui.Options{Name: "B. Person"})
	wants(t, p, "the file needs a look")
	press(p, "!")
	wants(t, p, "changed outside the program")
	press(p, "esc", "C", "enter")
	wants(t, p, "not as logged: log row 1: section[4].density")
}
