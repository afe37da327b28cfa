package leaving

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// fragile is a model that breaks where it is told to.
type fragile struct{ init, update, view, command bool }

func (f *fragile) breaks() tea.Msg { panic("broken in " + "\x1b[2Ja command") }

func (f *fragile) Init() tea.Cmd {
	if f.init {
		panic("broken in Init")
	}
	if f.command {
		return tea.Batch(func() tea.Msg { return nil }, f.breaks)
	}
	return nil
}

func (f *fragile) Update(tea.Msg) (tea.Model, tea.Cmd) {
	if f.update {
		panic("broken in Update")
	}
	return f, nil
}

func (f *fragile) View() string {
	if f.view {
		panic("broken in View")
	}
	return "a screen"
}

// Wherever a model panics that is a fault to report, the first one counts, and nothing reaches the model from then on.
func TestPanicsBecomeFaults(t *testing.T) {
	for name, model := range map[string]*fragile{"Init": {init: true}, "Update": {update: true}, "View": {view: true}, "a command": {command: true}} {
		g := newGuarded(model)
		if command := g.Init(); command != nil {
			for _, c := range command().(tea.BatchMsg) {
				c()
			}
		}
		g.Update(nil)
		g.View()
		select {
		case f := <-g.faults:
			text := f.Text("v1", "/home/somebody/well.toml", time.Unix(0, 0))
			if !strings.Contains(text, "panic: broken in ") || !strings.Contains(text, name) || !strings.Contains(text, "fault_test.go") ||
				!strings.Contains(text, "plan well.toml\n") || strings.Contains(text, "somebody") || strings.Contains(text, "\x1b") {
				t.Errorf("%s: the report says\n%s", name, text)
			}
		default:
			t.Errorf("%s: no fault", name)
		}
		*model = fragile{}
		if g.View() != "" {
			t.Errorf("%s: the model is still asked", name)
		}
	}
}

// A model that is at something keeps the end waiting for the time given at most.
func TestTheEndDoesNotWaitForever(t *testing.T) {
	g := newGuarded(new(fragile))
	g.busy <- struct{}{} // as while it takes a message
	g.stop(time.Millisecond)
	if _, command := g.Update(nil); command != nil || g.View() != "" {
		t.Error("it goes on")
	}
}

func TestAReportIsAFileOfItsOwn(t *testing.T) {
	f := &Fault{What: "broken", Stack: []byte("somewhere")}
	folder := filepath.Join(t.TempDir(), "state", "borewalk")
	path, err := f.Report(folder, "v1", "well.toml", time.Unix(0, 0))
	text, _ := os.ReadFile(path)
	if err != nil || filepath.Dir(path) != folder || !strings.Contains(string(text), "somewhere") {
		t.Errorf("%s, %v: %s", path, err, text)
	}
	if _, err := f.Report(path, "v1", "well.toml", time.Unix(0, 0)); err == nil {
		t.Error("a file is taken for a folder")
	}
}
