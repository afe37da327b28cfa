package planlock

import "time"

// Life is what is known of the process that has a lock.
type Life uint8

// What a process does.
const (
	Running   Life = iota // on this computer
	Gone                  // it was on this computer and has ended
	Elsewhere             // on another computer, so that it cannot be known
	Nameless              // the lock's file is not whole and names nobody
)

// Held says that another has the lock on a plan.
type Held struct {
	Owner Owner
	Life  Life
	Age   time.Duration // of the lock, by the clock here
	// Clock is true when the lock is from the future or older than anybody keeps a plan open: one of the two clocks is wrong,
	// and the age says nothing.
	Clock bool
}

func (h *Held) Error() string { return "another program has the plan open" }

// ahead is how far two clocks may differ without a word; longest how long a plan is kept open.
const (
	ahead   = 2 * time.Minute
	longest = 366 * 24 * time.Hour
)

// judge says what is known of the owner of a lock. The clock decides nothing: what may be an old lock may be a wrong clock. Of a
// lock that is not whole only the time of its file is known.
func (c *Computer) judge(o Owner, whole bool, written time.Time) *Held {
	h := &Held{Owner: o, Life: Nameless}
	if whole {
		h.Life = c.life(&o)
	} else {
		h.Owner = Owner{Since: written}
	}
	h.Age = c.Now().Sub(h.Owner.Since)
	h.Clock = h.Age < -ahead || h.Age > longest
	return h
}

// life says whether the process of an owner runs. The name of a computer is not enough to know it by, since two may have one name:
// it is this computer when it is the same run of it, or has the same mark.
func (c *Computer) life(o *Owner) Life {
	sameRun := o.Boot != "" && o.Boot == c.Boot
	sameMachine := o.Machine != "" && o.Machine == c.Machine
	switch {
	case sameRun && o.Space != c.Space:
		return Elsewhere // in another container, which counts its processes for itself
	case !sameRun && !sameMachine:
		return Elsewhere
	case !sameRun && o.Boot != "" && c.Boot != "":
		return Gone // the computer was started anew since
	}
	began, running := c.Look(o.Process)
	if !running || began != "" && o.Began != "" && began != o.Began { // the number may have gone to another process
		return Gone
	}
	return Running
}
