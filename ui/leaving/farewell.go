package leaving

import (
	"fmt"
	"io"
	"syscall"
)

// The exit codes of a program that ended otherwise than by its keys; after a signal it is the one that shells use too, with the number
// of the signal added.
const (
	exitError  = 1
	exitSignal = 128
)

// Farewell says on the normal screen why the program ended, if it was not asked to, has a fault reported, and returns the exit code.
func (end End) Farewell(errs io.Writer, reports Reporter) int {
	code, why := 0, ""
	switch {
	case end.Fault != nil:
		code, why = exitError, reports.Write(end.Fault)
	case end.Signal != nil:
		code, why = exitSignal, "ended by a signal: "+end.Signal.String()
		if number, ok := end.Signal.(syscall.Signal); ok {
			code += int(number)
		}
	case end.Err != nil:
		code, why = exitError, "stopped: "+end.Err.Error()
	}
	if !end.Terminal || why == "" {
		return code
	}
	fmt.Fprintln(errs, why)
	switch {
	case end.Kept:
		fmt.Fprintln(errs, "what was not saved is kept: open the plan again to recover it")
	case end.Lost:
		fmt.Fprintln(errs, "what was not saved could not be kept")
	}
	return code
}
