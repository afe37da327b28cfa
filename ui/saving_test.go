package ui_test

import (
	"os"
	"path/filepath"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/planfile"
	"borewalk/ui"
)

// The question about an entry is answered before the plan is saved, or the entry would be missing from the file.
func TestSavingWaitsForTheQuestionAboutAnEntry(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Water depth")
	press(p, "352", "ctrl+s")
	wants(t, p, "what moves?")
	lacks(t, p, "Save the plan as")
	press(p, "enter")
	wants(t, p, "352.0 m", "not saved")
}

// A save that is given up does not make a later one quit.
func TestQuittingIsForgottenWhenTheSaveIsGivenUp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Rathole")
	press(p, "+", "q", "enter", "esc", "s", "ctrl+u", path)
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd != nil {
		t.Error("a plain save quits")
	}
	wants(t, p, "saved ")
}

// What another program wrote into the plan's file is replaced only when that is wanted.
func TestAFileChangedByAnotherIsAskedAbout(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "S", "ctrl+u", path, "enter")
	const theirs = "borewalk = 1\n"
	if err := os.WriteFile(path, []byte(theirs), 0o600); err != nil {
		t.Fatal(err)
	}
	downTo(t, p, "Rathole")
	press(p, "+", "s")
	wants(t, p, "changed by another program")
	press(p, "esc")
	if got, _ := os.ReadFile(path); string(got) != theirs {
		t.Errorf("the file holds %d bytes", len(got))
	}
	press(p, "s", "down", "enter")
	if f, err := planfile.Open(path); err != nil || len(f.Plan.Sections) != 5 {
		t.Error(err)
	}
}

func TestEscInAQuestionKeepsTheOtherAnswers(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "N", "enter", "Testling-1", "enter", "down", "down", "enter", "esc")
	wants(t, p, "New plan", "Testling-1")
}

func TestSaveAndQuitQuits(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "+", "q", "enter", "ctrl+u", path)
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd == nil {
		t.Error("save and quit stays")
	}
	if _, err := planfile.Open(path); err != nil {
		t.Error(err)
	}
}

func TestQuitAsksOnlyWhenSomethingWouldBeLost(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{})
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'q'}}); cmd == nil || cmd() != tea.Quit() {
		t.Error("q on an unchanged plan does not quit")
	}
	p = screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "+", "q")
	wants(t, p, "not saved", "save and quit", "stay")
	press(p, "down", "down", "enter")
	wants(t, p, "not saved", "[HOLE]")
}

func TestSaveAsWritesAFileAndAsksBeforeReplacing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "2085", "enter", "s")
	wants(t, p, "Save the plan as", "ottermast-2.toml")
	press(p, "ctrl+u", path, "enter")
	lacks(t, p, "not saved")
	file, err := planfile.Open(path + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	if got := file.Plan.Sections[2].TD.Text(); got != "2085 m" {
		t.Errorf("saved TD = %q, want 2085 m", got)
	}
	press(p, "S", "ctrl+u", path+".toml", "enter") // its own file: no question
	lacks(t, p, "exists already")
	other := filepath.Join(filepath.Dir(path), "other.toml")
	if err := os.WriteFile(other, []byte("x"), 0o644); err != nil {
		t.Fatal(err)
	}
	press(p, "S", "ctrl+u", other, "enter")
	wants(t, p, "exists already")
}

func TestNewPlanFromAFewQuestions(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "N")
	press(p, "enter", "Testling-1", "enter")
	for range 5 {
		press(p, "down")
	}
	press(p, "end", "enter")
	wants(t, p, "Testling-1", "of 5", "not saved", "prognosis")
	press(p, "]]]]", "page casing")
	wants(t, p, "7 in", "liner")
}
