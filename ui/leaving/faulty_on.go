//go:build faults

package leaving

import (
	"os"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// faulty gives the model the fault that the environment asks for, at the key ctrl+x: in a build for tests alone.
func faulty(m tea.Model) tea.Model { return &faultyModel{m, os.Getenv("BOREWALK_FAULT"), false} }

type faultyModel struct {
	tea.Model
	where string // update, view, command, batch or hang
	now   bool
}

func (f *faultyModel) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := message.(tea.KeyMsg); ok && k.Type == tea.KeyCtrlX {
		command := func() tea.Msg { panic("a fault in a command") }
		switch f.where {
		case "update":
			panic("a fault in Update")
		case "view":
			f.now = true
		case "command":
			return f, command
		case "batch":
			return f, tea.Batch(func() tea.Msg { return nil }, command)
		case "hang":
			time.Sleep(time.Hour)
		}
	}
	var command tea.Cmd
	f.Model, command = f.Model.Update(message)
	return f, command
}

func (f *faultyModel) View() string {
	if f.now {
		panic("a fault in View")
	}
	return f.Model.View()
}
