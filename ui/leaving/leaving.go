// Package leaving runs the planner so that, however it ends, what is not saved is kept, the terminal is as it was, and nothing hangs: by
// its own keys, a signal, a terminal that is gone, or a fault of the program.
package leaving

import (
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/journal"
	"borewalk/ui/terminal"
)

// How long the end of the program waits for what the planner is at, a save perhaps, and for a terminal that may take no more bytes.
const (
	workWait     = 3 * time.Second
	terminalWait = time.Second
)

// End says how the program ended. The zero End is that of a program that was left by its keys.
type End struct {
	Signal   os.Signal // that ended it; nil for none
	Err      error     // what ended it otherwise, or kept it from starting
	Fault    *Fault    // of the program, which ended it
	Kept     bool      // what was not saved lies in a journal
	Lost     bool      // something was not saved, and could not be kept
	Terminal bool      // the terminal is there, and takes text
}

// Planner is the program's model, which knows whether it was left on purpose.
type Planner interface {
	tea.Model
	Left() bool // with nothing unsaved, or told to lose it
}

// Run runs a planner on a terminal until it ends in whatever way. The keeper gets the time to write what it was given last.
func Run(planner Planner, keeper *journal.Keeper, keys io.Reader, output *terminal.Output) End {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGINT, syscall.SIGQUIT, syscall.SIGTERM)
	before := terminal.Remember()

	g := newGuarded(faulty(planner))
	output.Failed = func(what any, stack []byte) { g.fail(&Fault{what, stack}) }
	program := tea.NewProgram(g, tea.WithAltScreen(), tea.WithInput(keys), tea.WithOutput(output), tea.WithContext(ctx), tea.WithoutSignalHandler(),
		tea.WithFPS(1)) // the output draws when there is something to draw: bubbletea's own clock may go as slowly as it can
	ran := make(chan error, 1)
	go func() {
		defer g.caught()
		_, err := program.Run()
		output.Close()
		ran <- err
	}()

	var end End
	select {
	case end.Err = <-ran:
		end.Terminal = !errors.Is(end.Err, terminal.ErrGone)
		select {
		case end.Fault = <-g.faults:
		default:
		}
	case end.Signal = <-signals:
	case end.Fault = <-g.faults:
	}
	g.stop(workWait)
	byKeys := end == End{Terminal: true} && planner.Left()
	end.Kept, end.Lost = keeper.Finish(byKeys)
	if end.Signal != nil || end.Fault != nil {
		cancel()
		select {
		case err := <-ran:
			end.Terminal = !errors.Is(err, terminal.ErrGone)
		case <-time.After(terminalWait):
			end.Terminal = before.Restore(terminalWait)
		}
	}
	return end
}
