package process

import (
	"fmt"

	"golang.org/x/sys/unix"
)

// born returns a mark of when a process was started, and false when there is none of that number.
func born(pid int) (string, bool) {
	info, err := unix.SysctlKinfoProc("kern.proc.pid", pid)
	if err != nil || int(info.Proc.P_pid) != pid {
		return "", false
	}
	start := info.Proc.P_starttime
	return fmt.Sprintf("%d.%06d", start.Sec, start.Usec), true
}
