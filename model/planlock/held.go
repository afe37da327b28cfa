package planlock

import (
	"time"

	"borewalk/model/process"
)

// Held says that another has the lock on a plan.
type Held struct {
	Owner    Owner
	Life     process.Life
	Nameless bool          // the lock's file is not whole and names nobody, of whom nothing is known
	Age      time.Duration // of the lock, by the clock here
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
	h := &Held{Owner: Owner{Since: written}, Nameless: true}
	if whole {
		h = &Held{Owner: o, Life: c.Life(o.ID)}
	}
	h.Age = c.Now().Sub(h.Owner.Since)
	h.Clock = h.Age < -ahead || h.Age > longest
	return h
}
