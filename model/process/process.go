// Package process tells the processes of this computer apart: which host it is, and whether a process that left something
// behind still runs.
package process

import (
	"fmt"
	"hash/fnv"
	"os"
)

// ID is a process as others can find it again. The zero ID is that of no process.
type ID struct {
	Host string // the computer's name; empty when it has none
	Pid  int
	Born string // a mark of when it was started, so that another with its number is not taken for it; empty where it cannot be had
}

// Own returns the ID of this process.
func Own() ID {
	id := ID{Host: host(), Pid: os.Getpid()}
	id.Born, _ = born(id.Pid)
	return id
}

// Runs reports whether the process is one of this host and has not ended. Of another host nothing can be known, which counts as
// ended; Here tells the two apart.
func (id ID) Runs() bool {
	if !id.Here() || id.Pid <= 0 {
		return false
	}
	mark, ok := born(id.Pid)
	return ok && mark == id.Born
}

// Here reports whether the process is, or was, one of this host.
func (id ID) Here() bool { return id.Host == host() }

// Tag returns a short name for the process, unlike that of any other that runs, for the names of its files.
func (id ID) Tag() string { return fmt.Sprintf("%s-%d", hostTag(id.Host), id.Pid) }

// Left reports whether a Tag, as it stands in the name of a file, is that of a process of this host that has ended. A process that
// has got its number since makes it look alive.
func Left(tag string) bool {
	var host string
	var pid int
	if n, err := fmt.Sscanf(tag, "%8s-%d", &host, &pid); n != 2 || err != nil || host != hostTag(Own().Host) || pid <= 0 {
		return false
	}
	_, runs := born(pid)
	return !runs
}

// host returns the computer's name.
func host() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}

// hostTag shortens a host's name, which may be long and hold what cannot stand in a file's name.
func hostTag(name string) string {
	sum := fnv.New32a()
	sum.Write([]byte(name))
	return fmt.Sprintf("%08x", sum.Sum32())
}
