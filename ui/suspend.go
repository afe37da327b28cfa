package ui

import (
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/terminal"
)

// suspended comes when the program has the terminal back from the shell; with an error it never was without it.
type suspended struct{ err error }

// suspend gives the terminal to the shell until the program is continued. Nothing else changes.
func (p *Planner) suspend() tea.Cmd {
	if why := p.noSuspend(); why != "" {
		p.message = why
		return nil
	}
	return tea.Exec(terminal.Suspension{}, func(err error) tea.Msg { return suspended{err} })
}

func (p *Planner) noSuspend() string {
	if !terminal.CanSuspend {
		return "this system cannot suspend a program; open a second window instead"
	}
	return ""
}

// continued tells why the program was not suspended.
func (p *Planner) continued(m suspended) {
	if m.err != nil {
		p.message = "not suspended: " + m.err.Error()
	}
}
