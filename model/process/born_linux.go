package process

import (
	"bytes"
	"fmt"
	"os"
	"strings"
)

// born returns a mark of when a process was started, and false when there is none of that number: the start in ticks since the
// computer was started, which is entry 22 of /proc/PID/stat (proc(5); the name of the program, in brackets, may hold blanks), and
// which start of the computer that was. A process that has ended and is not yet waited for has ended.
func born(pid int) (string, bool) {
	stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return "", false
	}
	const state, start = 0, 19 // counted from the first entry behind the name
	entries := strings.Fields(string(stat[bytes.LastIndexByte(stat, ')')+1:]))
	if len(entries) <= start || entries[state] == "Z" || entries[state] == "X" {
		return "", false
	}
	boot, _ := os.ReadFile("/proc/sys/kernel/random/boot_id")
	return strings.TrimSpace(string(boot)) + ":" + entries[start], true
}
