package process

import (
	"errors"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"golang.org/x/sys/unix"
)

func machine() string { return content("/etc/machine-id") }

func boot() string { return content("/proc/sys/kernel/random/boot_id") }

// space is the name space in which processes have their numbers.
func space() string {
	name, _ := os.Readlink("/proc/self/ns/pid")
	return name
}

func content(path string) string {
	text, _ := os.ReadFile(path)
	return strings.TrimSpace(string(text))
}

// look reads /proc: proc(5) has the state as the third entry and the beginning, in ticks since the start of the computer, as the
// twenty-second, both behind the name in brackets, which may hold anything. A process that is dead but not buried has ended. Where the
// processes of others are hidden, or there is no /proc, a signal that is not sent tells whether there is one.
func look(pid int) (began string, running bool) {
	text, err := os.ReadFile("/proc/" + strconv.Itoa(pid) + "/stat")
	if errors.Is(err, fs.ErrNotExist) {
		return "", !errors.Is(unix.Kill(pid, 0), unix.ESRCH)
	}
	const state, start = 0, 22 - 3
	entries := strings.Fields(string(text[strings.LastIndexByte(string(text), ')')+1:]))
	if err != nil || len(entries) <= start {
		return "", true
	}
	return entries[start], entries[state] != "Z" && entries[state] != "X"
}
