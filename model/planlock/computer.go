package planlock

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"os/user"
	"strings"
	"time"
)

// Computer is what a lock says of the computer and the process that make it, and how others are judged from there.
type Computer struct {
	Host, Machine, Boot, Space, User string // as in Owner
	Process                          int
	Now                              func() time.Time
	// Look returns whether a process of this computer runs, and when it began; blank where that is not known.
	Look func(process int) (began string, running bool)
}

// This returns the computer and the process that the program runs on.
func This() *Computer {
	c := &Computer{Machine: hidden(machine()), Boot: boot(), Space: space(), Process: os.Getpid(), Now: time.Now, Look: look}
	c.Host, _ = os.Hostname()
	c.User = cmp.Or(os.Getenv("USER"), os.Getenv("LOGNAME"), os.Getenv("USERNAME"))
	if c.User == "" { // asking the system may mean asking a network
		if u, err := user.Current(); err == nil {
			c.User = u.Username
		}
	}
	return c
}

// hidden turns the mark of a machine, which is not for others to read, into one that is good for nothing but to compare.
func hidden(mark string) string {
	if mark = strings.TrimSpace(mark); mark == "" {
		return ""
	}
	sum := sha256.Sum256([]byte("borewalk lock " + mark))
	return hex.EncodeToString(sum[:12])
}

// owner returns what the lock says of an opening by this process.
func (c *Computer) owner(name, token string) Owner {
	began, _ := c.Look(c.Process)
	return Owner{
		Token: token, Process: c.Process, Began: began, Host: c.Host, Machine: c.Machine, Boot: c.Boot, Space: c.Space,
		User: c.User, Name: name, Since: c.Now().Truncate(time.Second),
	}
}
