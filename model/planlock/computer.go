package planlock

import (
	"cmp"
	"os"
	"os/user"
	"time"

	"borewalk/model/process"
)

// Computer is what a lock says of the computer, the process and the person that make it, and how others are judged from there.
type Computer struct {
	process.Computer
	Process int
	User    string
	Now     func() time.Time
}

// This returns the computer and the process that the program runs on.
func This() *Computer {
	c := &Computer{Computer: process.This(), Process: os.Getpid(), Now: time.Now}
	c.User = cmp.Or(os.Getenv("USER"), os.Getenv("LOGNAME"), os.Getenv("USERNAME"))
	if c.User == "" { // asking the system may mean asking a network
		if u, err := user.Current(); err == nil {
			c.User = u.Username
		}
	}
	return c
}

// owner returns what the lock says of an opening by this process.
func (c *Computer) owner(name, token string) Owner {
	return Owner{Token: token, ID: c.ID(c.Process), User: c.User, Name: name, Since: c.Now().Truncate(time.Second)}
}
