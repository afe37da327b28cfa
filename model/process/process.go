// Package process tells the processes of computers apart, and whether one that left something behind, a lock, a journal, a file that
// was not written to its end, still runs.
package process

import (
	"fmt"
	"hash/fnv"
	"os"
	"sync"
)

// ID is a process as others can find it again. The zero ID is that of no process. What a mark is, its system decides; it is blank
// where it cannot be had.
type ID struct {
	Pid     int
	Began   string // when it was started, so that another with its number is not taken for it
	Host    string // the computer's name
	Machine string // what tells computers of one name apart
	Boot    string // the computer's run since it was started
	Space   string // within which process numbers count, for containers
}

// Own returns the ID of this process.
var Own = sync.OnceValue(func() ID { return this().ID(os.Getpid()) })

// Life says what the process is doing, as far as it is known on this computer.
func (id ID) Life() Life { return this().Life(id) }

// Runs reports whether the process is known to run on this computer; see [Computer.Runs].
func (id ID) Runs() bool { return this().Runs(id) }

// Tag returns a short name for the process, unlike that of any other that runs, for the names of its files.
func (id ID) Tag() string {
	sum := fnv.New32a() // what it shortens may be long and hold what cannot stand in a file's name
	fmt.Fprintf(sum, "%q %q %q", id.Host, id.Machine, id.Space)
	return fmt.Sprintf("%08x-%d", sum.Sum32(), id.Pid)
}

// Left reports whether a Tag, as it stands in the name of a file, is that of a process of this computer which is known to have ended. A
// process that has got its number since makes it look alive.
func Left(tag string) bool {
	var computer string
	id := Own()
	if n, err := fmt.Sscanf(tag, "%8s-%d", &computer, &id.Pid); n != 2 || err != nil || tag != id.Tag() || id.Pid <= 0 {
		return false
	}
	_, running := look(id.Pid)
	return !running
}
