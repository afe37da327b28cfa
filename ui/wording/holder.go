package wording

import (
	"cmp"
	"fmt"
	"time"

	"borewalk/model"
	"borewalk/model/planlock"
	"borewalk/model/process"
	"borewalk/ui/canvas"
)

// Holder says who has a plan open, where, since when, and what is known of his program, a line each.
func Holder(held *planlock.Held) []string {
	o := &held.Owner
	when := o.Since.UTC().Format("2006-01-02 15:04") + " UTC" + ago(held)
	if held.Nameless {
		return []string{"The lock beside the plan is not whole and names nobody; it was written " + when + ".", "Whether its program still runs cannot be known."}
	}
	alive := "Whether it still runs cannot be known from this computer."
	if held.Life == process.Running {
		alive = "It runs on this computer."
	}
	return []string{HolderName(o) + " has it open:", fmt.Sprintf("process %d, since %s.", o.Pid, when), alive}
}

// HolderName names who has a plan open, for a line; what the lock says of that comes from outside and may be long.
func HolderName(o *planlock.Owner) string {
	text := func(s string) string { return canvas.Clip(model.Clean(s), 20) }
	name := cmp.Or(text(o.Name), text(o.User), "Somebody")
	if o.Name != "" && o.User != "" {
		name += " (" + text(o.User) + ")"
	}
	if o.Host != "" {
		name += " on " + text(o.Host)
	}
	return name
}

// ago is the age of a lock behind its time, where the clocks are to be believed.
func ago(held *planlock.Held) string {
	minutes := int(held.Age / time.Minute)
	switch {
	case held.Clock:
		return " by that clock, which differs from the one here or is very old"
	case minutes < 1:
		return ", just now"
	case minutes < 60:
		return fmt.Sprintf(", %d min ago", minutes)
	case minutes < 48*60:
		return fmt.Sprintf(", %d h ago", minutes/60)
	}
	return fmt.Sprintf(", %d days ago", minutes/60/24)
}

// ReleasedBy says that the lock of a program that has ended was taken over.
func ReleasedBy(was *planlock.Owner) string {
	return fmt.Sprintf("process %d ended without closing the plan; its lock is taken over", was.Pid)
}

// NoLock says why others are not told that a plan is open here.
func NoLock(err error) string {
	return "no lock can be made, others are not told: " + model.Clean(err.Error())
}
