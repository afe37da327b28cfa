package process

import (
	"os"
	"os/exec"
	"testing"

	"golang.org/x/sys/unix"
)

// A process that ended is known to have ended, whether its parent has asked for its exit code yet or not.
func TestAProcessThatEnded(t *testing.T) {
	cmd := exec.Command(os.Args[0], "-test.run=^$")
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if err := unix.Waitid(unix.P_PID, cmd.Process.Pid, nil, unix.WEXITED|unix.WNOWAIT, nil); err != nil {
		t.Fatal(err)
	}
	if _, running := This().Look(cmd.Process.Pid); running {
		t.Error("it runs, though nobody has asked for its exit code")
	}
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	if _, running := This().Look(cmd.Process.Pid); running {
		t.Error("it runs")
	}
}
