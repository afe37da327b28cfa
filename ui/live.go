package ui

import (
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/terminal"
)

// live is a planner on a terminal: its pictures go to the output, and bubbletea has nothing to draw.
type live struct {
	planner *Planner
	output  *terminal.Output
}

// Live returns the planner as the model of a program whose output is the one given.
func Live(p *Planner, output *terminal.Output) tea.Model {
	return &live{planner: p, output: output}
}

// Init implements tea.Model.
func (l *live) Init() tea.Cmd { return l.planner.Init() }

// Update implements tea.Model. A window whose size was changed is drawn anew even if it comes out as large as it was, for on its
// way it may have lost lines. The size that bubbletea tells once when it has taken the terminal is no change.
func (l *live) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	if _, ok := message.(tea.WindowSizeMsg); ok && !l.output.Taken() {
		l.output.Forget()
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
