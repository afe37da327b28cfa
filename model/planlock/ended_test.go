//go:build linux || darwin || windows

package planlock

import (
	"os"
	"os/exec"
	"testing"
)

// A process that ended is known to have ended, whether its parent has asked for its exit code yet or not.
func TestAProcessThatEnded(t *testing.T) {
	cmd := exec.Command(os.Args[0], "-test.run=^$")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for buf := make([]byte, 512); err == nil; {
		_, err = out.Read(buf) // until it lets go of its output
	}
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	if _, running := This().Look(cmd.Process.Pid); running {
		t.Error("it runs")
	}
}
