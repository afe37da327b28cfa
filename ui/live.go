package ui

import (
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/terminal"
)

// Live is a planner on a terminal: its pictures go to the output, and bubbletea has nothing to draw.
type Live struct {
	planner *Planner
	output  *terminal.Output
}

// NewLive returns the planner as the model of a program whose output is the one given.
func NewLive(p *Planner, output *terminal.Output) *Live {
	return &Live{planner: p, output: output}
}

// Left reports whether the planner is to end because that was asked for, with nothing unsaved or told to lose it.
func (l *Live) Left() bool { return l.planner.Left() }

// Init implements tea.Model.
func (l *Live) Init() tea.Cmd { return l.planner.Init() }

// Update implements tea.Model. A window whose size was changed is drawn anew even if it comes out as large as it was, for on its
// way it may have lost lines. The size that bubbletea tells once when it has taken the terminal is no change.
func (l *Live) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	if _, ok := message.(tea.WindowSizeMsg); ok && !l.output.Taken() {
		l.output.Forget()
	}
	_, command := l.planner.Update(message)
	return l, command
}

// View implements tea.Model and shows bubbletea nothing.
func (l *Live) View() string {
	l.planner.draw()
	l.output.Show(l.planner.grid, &l.planner.palette)
	return ""
}
