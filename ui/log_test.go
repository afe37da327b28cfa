package ui_test

import (
	"path/filepath"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
)

// unnamed opens a demo for somebody who has not said who it is.
func unnamed(t *testing.T) *ui.Planner {
	t.Helper()
	text, _ := plans.Demo("ottermast-2")
	file, err := planfile.Read("demo", text)
	if err != nil {
		t.Fatal(err)
	}
	p := ui.New(file, ui.Options{Title: "demo"})
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	return p
}

// logOf opens a plan that was saved and returns its log, which must give the plan that it began with.
func logOf(t *testing.T, path string) []model.LogRow {
	t.Helper()
	file, err := planfile.Open(path)
	if err != nil || len(file.Notices) > 0 {
		t.Fatal(err, file.Notices)
	}
	text, _ := plans.Demo("ottermast-2")
	demo, err := planfile.Read("demo", text)
	if err != nil {
		t.Fatal(err)
	}
	if then, misfits := model.Rewind(file.Plan, len(file.Plan.Log)); len(misfits) > 0 || model.Hash(then) != model.Hash(demo.Plan) {
		t.Errorf("rewound: %v", misfits)
	}
	return file.Plan.Log
}

// TestTheNameIsAskedOnceAndStandsInTheLog: at the first save of changes, filled in with the plan's author.
func TestTheNameIsAskedOnceAndStandsInTheLog(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := unnamed(t)
	press(p, "S")
	wants(t, p, "Save the plan as") // nothing was changed: nobody has to say who it is
	press(p, "ctrl+u", path, "enter", "]]")
	downTo(t, p, "Rathole")
	press(p, "7", "enter", "s")
	wants(t, p, "Your name or initials")
	press(p, "ctrl+u", "enter")
	wants(t, p, "Type a name")
	press(p, "A. Person", "enter")
	wants(t, p, "saved ")
	press(p, "8", "enter", "9", "enter", "Y")
	wants(t, p, "The reason for section 3: Rathole below the shoe, full", "size: 7 m to 9 m.")
	press(p, "sand near TD", "enter", "s")
	wants(t, p, "saved ")
	got := logOf(t, path)
	if len(got) != 2 || got[0].Who != "A. Person" || got[1].Who != "A. Person" || got[1].New != "9 m" || got[1].Why != "sand near TD" || got[0].When == "" {
		t.Errorf("log %+v", got)
	}
}

// TestWhatIsSavedCanBeExplainedLater: the reason for an edit that stands in the file is a change of the file.
func TestWhatIsSavedCanBeExplainedLater(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "Y")
	wants(t, p, "nothing was changed yet")
	press(p, "]]")
	downTo(t, p, "Rathole")
	press(p, "7", "enter", "S", "ctrl+u", path, "enter")
	lacks(t, p, "not saved")
	press(p, "Y", "as agreed", "enter")
	wants(t, p, "not saved")
	press(p, "s")
	lacks(t, p, "not saved")
	if got := logOf(t, path); len(got) != 1 || got[0].Why != "as agreed" || got[0].When != "2026-03-01T06:00:00Z" {
		t.Errorf("log %+v", got)
	}
}

// TestASmallWindowAsksNoName: a plan can be saved there, by nobody who is named.
func TestASmallWindowAsksNoName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := unnamed(t)
	press(p, "S", "ctrl+u", path, "enter", "]]")
	downTo(t, p, "Rathole")
	press(p, "7", "enter")
	p.Update(tea.WindowSizeMsg{Width: 60, Height: 20})
	press(p, "ctrl+c", "enter")
	if got := logOf(t, path); len(got) != 1 || got[0].Who != "" {
		t.Errorf("log %+v", got)
	}
}

// TestASaveThatFailsLogsNothing: rows reach the log with the file, or not at all.
func TestASaveThatFailsLogsNothing(t *testing.T) {
	dir := t.TempDir()
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Rathole")
	press(p, "7", "enter", "S", "ctrl+u", filepath.Join(dir, "none", "well.toml"), "enter")
	wants(t, p, "not saved")
	press(p, "esc", "S", "ctrl+u", filepath.Join(dir, "well.toml"), "enter")
	if got := logOf(t, filepath.Join(dir, "well.toml")); len(got) != 1 {
		t.Errorf("log %+v", got)
	}
}
