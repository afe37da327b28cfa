package leaving

import (
	"runtime/debug"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// Fault is a panic: a fault of the program.
type Fault struct {
	What  any
	Stack []byte
}

// guarded is a model whose panics, in its commands too, end the program in order rather than with a terminal that is left raw. From
// then on nothing reaches the model, which may be half changed, and neither once the program is to end.
type guarded struct {
	model  tea.Model
	faults chan *Fault // takes the first
	ending atomic.Bool
	busy   chan struct{} // full while the model takes a message
}

func newGuarded(m tea.Model) *guarded {
	return &guarded{model: m, faults: make(chan *Fault, 1), busy: make(chan struct{}, 1)}
}

// stop keeps further messages from the model, and waits for the one that it is at, a save perhaps, for the time given at most.
func (g *guarded) stop(most time.Duration) {
	g.ending.Store(true)
	select {
	case g.busy <- struct{}{}:
	case <-time.After(most):
	}
}

func (g *guarded) Init() tea.Cmd {
	defer g.caught()
	return g.guard(g.model.Init())
}

func (g *guarded) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	select {
	case g.busy <- struct{}{}:
	default: // the program ends
		return g, nil
	}
	defer func() { <-g.busy }()
	if g.ending.Load() {
		return g, nil
	}
	defer g.caught()
	var command tea.Cmd
	g.model, command = g.model.Update(message)
	return g, g.guard(command)
}

func (g *guarded) View() string {
	if g.ending.Load() {
		return ""
	}
	defer g.caught()
	return g.model.View()
}

// guard wraps a command, and those that it gives, since each runs in a goroutine of its own.
func (g *guarded) guard(command tea.Cmd) tea.Cmd {
	if command == nil {
		return nil
	}
	return func() tea.Msg {
		defer g.caught()
		message := command()
		if batch, ok := message.(tea.BatchMsg); ok {
			wrapped := make(tea.BatchMsg, len(batch))
			for i, c := range batch {
				wrapped[i] = g.guard(c)
			}
			return wrapped
		}
		return message
	}
}

// caught takes a panic; it is deferred.
func (g *guarded) caught() {
	if what := recover(); what != nil {
		g.fail(&Fault{what, debug.Stack()})
	}
}

// fail ends the program for a fault.
func (g *guarded) fail(fault *Fault) {
	g.ending.Store(true)
	select {
	case g.faults <- fault:
	default: // the first is the one to look at
	}
}
