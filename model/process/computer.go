package process

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"strings"
	"sync"
)

// Computer is a computer on which processes are told apart, and from which others are judged.
type Computer struct {
	Host, Machine, Boot, Space string // as in ID
	// Look returns whether a process of this computer runs, and when it began; blank where that is not known. What may run runs.
	Look func(pid int) (began string, running bool)
}

// This returns the computer that the program runs on.
func This() Computer { return *this() }

var this = sync.OnceValue(func() *Computer {
	c := &Computer{Machine: hidden(machine()), Boot: boot(), Space: space(), Look: look}
	c.Host, _ = os.Hostname()
	return c
})

// hidden turns the mark of a machine, which is not for others to read, into one that is good for nothing but to compare.
func hidden(mark string) string {
	if mark = strings.TrimSpace(mark); mark == "" {
		return ""
	}
	sum := sha256.Sum256([]byte("borewalk lock " + mark)) // as the locks that lie about have it
	return hex.EncodeToString(sum[:12])
}

// ID returns a process of this computer as others can find it again.
func (c *Computer) ID(pid int) ID {
	began, _ := c.Look(pid)
	return ID{Pid: pid, Began: began, Host: c.Host, Machine: c.Machine, Boot: c.Boot, Space: c.Space}
}

// Life is what is known of a process.
type Life uint8

// What a process does.
const (
	Elsewhere Life = iota // on another computer, or one that cannot be told from it, so that it cannot be known
	Running               // on this computer, or nothing says that it has ended
	Gone                  // it was on this computer and has ended
)

// Life says what a process is doing. The name of a computer is not enough to know it by, since two may have one name: it is this
// computer when it is the same run of it, or has the same mark.
func (c *Computer) Life(id ID) Life {
	life, _ := c.judge(id)
	return life
}

// Runs reports whether a process is known to run on this computer. It wants more than that its Life is Running: that the process with
// its number is known to be the same.
func (c *Computer) Runs(id ID) bool {
	life, same := c.judge(id)
	return life == Running && same
}

// judge is Life, and whether the process that has the number is known to be the one that had it.
func (c *Computer) judge(id ID) (life Life, same bool) {
	sameRun := id.Boot != "" && id.Boot == c.Boot
	sameMachine := id.Machine != "" && id.Machine == c.Machine
	switch {
	case sameRun && id.Space != c.Space:
		return Elsewhere, false // in another container, which counts its processes for itself
	case !sameRun && !sameMachine:
		return Elsewhere, false
	case !sameRun && id.Boot != "" && c.Boot != "":
		return Gone, false // the computer was started anew since
	}
	began, running := c.Look(id.Pid)
	known := began != "" && id.Began != ""
	if !running || known && began != id.Began { // the number may have gone to another process
		return Gone, false
	}
	return Running, known
}
