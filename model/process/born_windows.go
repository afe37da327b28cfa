package process

import (
	"fmt"

	"golang.org/x/sys/windows"
)

// born returns a mark of when a process was started, and false when there is none of that number, or it has ended and is only held
// on to by another.
func born(pid int) (string, bool) {
	process, err := windows.OpenProcess(windows.PROCESS_QUERY_LIMITED_INFORMATION, false, uint32(pid))
	if err != nil {
		return "", false
	}
	defer windows.CloseHandle(process)
	const stillActive = 259 // STILL_ACTIVE of GetExitCodeProcess
	var code uint32
	if err := windows.GetExitCodeProcess(process, &code); err != nil || code != stillActive {
		return "", false
	}
	var start, end, kernel, user windows.Filetime
	if err := windows.GetProcessTimes(process, &start, &end, &kernel, &user); err != nil {
		return "", false
	}
	return fmt.Sprint(start.Nanoseconds()), true
}
