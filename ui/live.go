package ui

import (
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/terminal"
)

// live is a planner on a terminal: its pictures go to the output, and bubbletea has nothing to draw.
type live struct {
	planner *Planner
	output  *terminal.Output
	taken   bool // bubbletea took the terminal, and is about to tell its size
}

// Live returns the planner as the model of a program whose output is the one given.
func Live(p *Planner, output *terminal.Output) tea.Model {
	return &live{planner: p, output: output, taken: true}
}

// Init implements tea.Model.
func (l *live) Init() tea.Cmd { return l.planner.Init() }

// Update implements tea.Model. A window whose size was changed is drawn anew even if it comes out as large as it was, for on its
// way it may have lost lines; the size told on taking the terminal is mostly the one that is drawn already.
func (l *live) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	if _, ok := message.(tea.WindowSizeMsg); ok {
		if !l.taken {
			l.output.Forget()
		}
		l.taken = false
	}
	_, command := l.planner.Update(message)
	return l, command
}

// View implements tea.Model and shows bubbletea nothing.
func (l *live) View() string {
	l.planner.draw()
	l.output.Show(l.planner.grid, &l.planner.palette)
	return ""
}
