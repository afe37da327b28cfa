package leaving

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
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
			text := reports("").text(f)
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

// reports returns a reporter whose plan lies in somebody's folder.
func reports(folder string) Reporter {
	return Reporter{Folder: folder, Version: "v1", Plan: "/home/somebody/well.toml", Now: func() time.Time { return time.Unix(0, 0) }}
}

func TestAReportIsAFileOfItsOwn(t *testing.T) {
	f := &Fault{What: "broken", Stack: []byte("somewhere")}
	folder := filepath.Join(t.TempDir(), "state", "borewalk")
	said := reports(folder).Write(f)
	_, path, ok := strings.Cut(said, "the report is ")
	text, _ := os.ReadFile(path)
	if !ok || filepath.Dir(path) != folder || !strings.Contains(string(text), "somewhere") {
		t.Errorf("%q: %s", said, text)
	}
	for _, nowhere := range []string{path, ""} {
		if said := reports(nowhere).Write(f); !strings.Contains(said, "no report could be written") || !strings.Contains(said, "somewhere") {
			t.Errorf("in %q: %q", nowhere, said)
		}
	}
}

// What is said at the end goes with the exit code.
func TestFarewell(t *testing.T) {
	for name, test := range map[string]struct {
		end  End
		code int
		says string
	}{
		"by its keys":       {End{Terminal: true}, 0, ""},
		"hung up":           {End{Signal: syscall.SIGHUP}, 129, ""},
		"terminated, kept":  {End{Signal: syscall.SIGTERM, Kept: true, Terminal: true}, 143, "kept: open the plan again"},
		"a fault, lost":     {End{Fault: &Fault{What: "broken"}, Lost: true, Terminal: true}, 1, "could not be kept"},
		"a broken terminal": {End{Err: errors.New("no more"), Terminal: true}, 1, "stopped: no more"},
	} {
		var said strings.Builder
		if code := test.end.Farewell(&said, reports("")); code != test.code || !strings.Contains(said.String(), test.says) || (said.Len() == 0) != (test.says == "") {
			t.Errorf("%s: code %d, want %d; it says %q", name, code, test.code, said.String())
		}
	}
}
