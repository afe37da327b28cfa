// Package planlock says beside a plan who has it open, so that two who work on one plan learn of each other before one of them
// overwrites what the other has written.
//
// A lock is a small text file with a hidden name beside the plan. [Computer.Take] makes it, only where there is none; [Lock.Check]
// asks whether it is still one's own, and [Lock.Release] removes it when it is. Nothing keeps another program from taking a lock
// over or from writing the plan without one: a lock tells, it does not force. Whose process has ended on this computer counts no
// more, and what cannot be known, as on another computer, is said as such.
package planlock

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"borewalk/model/infile"
	"borewalk/model/process"
)

// Lock is the lock on a plan that this program has made.
type Lock struct {
	path  string
	owner Owner
	After *Owner // who had it before and has ended since; nil for nobody
}

// ErrNone says that a lock has been removed.
var ErrNone = errors.New("the lock was removed by another program or person")

// Path returns the name of the lock's file of a plan: beside the file itself where the plan's name is a link to it. The plan
// need not be there.
func Path(plan string) (string, error) {
	real, err := infile.Target(plan)
	if err != nil {
		return "", err
	}
	return filepath.Join(filepath.Dir(real), "."+filepath.Base(real)+".borewalk-lock"), nil
}

// Take makes the lock on a plan. The error is a [*Held] when another has it; any other says why none can be made here. The lock
// of a process of this computer that has ended is taken over.
func (c *Computer) Take(plan, name string) (*Lock, error) {
	l, err := c.lock(plan, name)
	if err != nil {
		return nil, err
	}
	const tries = 3 // another may come and go between two looks
	for try := 1; ; try++ {
		err := l.make()
		if !errors.Is(err, fs.ErrExist) {
			return l.or(err)
		}
		held, err := c.look(l.path)
		switch {
		case errors.Is(err, fs.ErrNotExist) && try < tries:
			continue
		case err != nil:
			return nil, infile.Reason(err)
		case held.Life == process.Gone:
			l.After = &held.Owner
			return l.over(c)
		}
		return nil, held
	}
}

// TakeOver makes the lock on a plan whoever has it; who had it learns that when he looks.
func (c *Computer) TakeOver(plan, name string) (*Lock, error) {
	l, err := c.lock(plan, name)
	if err != nil {
		return nil, err
	}
	return l.over(c)
}

// lock returns a lock that is not made yet.
func (c *Computer) lock(plan, name string) (*Lock, error) {
	path, err := Path(plan)
	if err != nil {
		return nil, infile.Reason(err)
	}
	return &Lock{path: path, owner: c.owner(name, rand.Text())}, nil
}

// or returns the lock, or why it could not be made.
func (l *Lock) or(err error) (*Lock, error) {
	if err != nil {
		return nil, infile.Reason(err)
	}
	return l, nil
}

// make writes the lock's file where there is none. A file that cannot be written to its end is taken away again.
func (l *Lock) make() error { return write(l.path, &l.owner) }

// over puts the lock's file in the place of the one that is there, whole, and looks whether another has done so at the same time.
func (l *Lock) over(c *Computer) (*Lock, error) {
	beside := l.path + "." + l.owner.Token
	if err := write(beside, &l.owner); err != nil {
		return nil, infile.Reason(err)
	}
	if err := os.Rename(beside, l.path); err != nil {
		os.Remove(beside)
		return nil, infile.Reason(err)
	}
	return l.or(l.Check(c))
}

func write(path string, o *Owner) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(o.text())
	if err == nil {
		err = f.Sync() // an empty lock after a power cut would name nobody
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(path)
	}
	return err
}

// Check returns nil while the lock is this program's own, a [*Held] when another has taken it over, and ErrNone when it is
// removed. It changes nothing. The lock of nil, which could not be made, is nobody's and always in order.
func (l *Lock) Check(c *Computer) error {
	if l == nil {
		return nil
	}
	held, err := c.look(l.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return ErrNone
	case err != nil:
		return infile.Reason(err)
	case held.Owner.Token != l.owner.Token:
		return held
	}
	return nil
}

// Mend makes a lock anew that was removed, unless another has made one meanwhile.
func (l *Lock) Mend() error {
	if err := l.make(); err != nil && !errors.Is(err, fs.ErrExist) {
		return infile.Reason(err)
	}
	return nil
}

// Assure is asked before the plan is written: it makes a lock that was removed anew, and returns a [*Held] when another has the plan. A
// lock that cannot be read or made keeps nobody from saving.
func (l *Lock) Assure(c *Computer) error {
	err := l.Check(c)
	if errors.Is(err, ErrNone) && l.Mend() == nil {
		err = l.Check(c)
	}
	var held *Held
	if errors.As(err, &held) {
		return held
	}
	return nil
}

// On reports whether the lock is the one on a plan, by whatever name that is called.
func (l *Lock) On(plan string) bool {
	if l == nil {
		return false
	}
	path, err := Path(plan)
	return err == nil && path == l.path
}

// Release removes the lock if it is still this program's own.
func (l *Lock) Release(c *Computer) {
	if l != nil && l.Check(c) == nil {
		os.Remove(l.path)
	}
}

// look reads a lock's file and judges what its owner's process is doing. A lock that is not whole may be one that is being
// written, so that it is given a little time.
func (c *Computer) look(path string) (*Held, error) {
	const tries, between = 5, 20 * time.Millisecond
	for try := 1; ; try++ {
		info, err := os.Lstat(path)
		if err != nil {
			return nil, err
		}
		if !info.Mode().IsRegular() {
			return nil, fmt.Errorf("%s is in the way: it is no lock", filepath.Base(path))
		}
		text, err := infile.Read(path, "lock", most)
		if _, e := os.Lstat(path); e != nil { // removed since
			return nil, e
		}
		if err != nil {
			return nil, err
		}
		owner, err := parse(text)
		if err == nil || try == tries {
			return c.judge(owner, err == nil, info.ModTime()), nil
		}
		time.Sleep(between)
	}
}

// Holder returns who has the lock on a plan and may still be there; nil for nobody, or when the lock is one's own, which mine is
// where there is one.
func (c *Computer) Holder(plan string, mine *Lock) *Held {
	path, err := Path(plan)
	if err != nil {
		return nil
	}
	held, err := c.look(path)
	if err != nil || held.Life == process.Gone || mine != nil && held.Owner.Token == mine.owner.Token {
		return nil
	}
	return held
}
