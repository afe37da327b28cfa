package process

import (
	"errors"
	"fmt"

	"golang.org/x/sys/unix"
)

// machine: macOS tells no plain program which computer it is without running another, so that the run since its start must do.
func machine() string { return "" }

func boot() string {
	mark, _ := unix.Sysctl("kern.bootsessionuuid")
	return mark
}

func space() string { return "" }

func look(pid int) (began string, running bool) {
	if errors.Is(unix.Kill(pid, 0), unix.ESRCH) {
		return "", false
	}
	info, err := unix.SysctlKinfoProc("kern.proc.pid", pid)
	if err != nil {
		return "", true
	}
	const buried = 5 // SZOMB in sys/proc.h
	start := info.Proc.P_starttime
	return fmt.Sprintf("%d.%06d", start.Sec, start.Usec), info.Proc.P_stat != buried
}
