package state

import (
	"fmt"
	"slices"
)

// A Plug is a wiper plug, dart or ball that is let go at the top of the string. It
// rides on the boundary between what was pumped before and after it, and takes no
// room.
//
// A plug released below the surface by a dart is one plug here: the boundary is the
// same before and after the dart has landed in it.
type Plug struct {
	Name  string
	Seat  float64 // Seat is the depth in metres, now, of what stops it (a landing collar); 0 for none.
	Holds bool    // Holds says that it shuts the string when it lands. One that does not has burst, and lets pass.
}

// A plug is one on its way.
type plug struct {
	Plug
	above  float64 // volume of string above it in m³
	lift   float64 // height of its seat above the end of the string in m
	landed bool
}

// Drop lets a plug go. It falls to the fluid level. A plug without a seat, or with
// one that it has passed, leaves with the fluid at the end of the string and is
// forgotten; so is one that is reversed out at the top, and one whose seat is pulled
// out of the well. Otherwise a landed plug stays.
func (w *Well) Drop(p Plug) error {
	if p.Seat != 0 && !(p.Seat > 0 && p.Seat <= w.End()+joined) {
		return fmt.Errorf("well: plug %q: its seat at %.2f m is not in the string, which ends at %.2f m", p.Name, p.Seat, w.End())
	}
	w.plugs = append(w.plugs, plug{Plug: p, above: w.empty(Inside), lift: max(w.End()-p.Seat, 0)})
	w.land()
	return nil
}

// seat returns the volume in m³ above what stops the plug: its seat, or the end.
func (w *Well) seat(p *plug) float64 {
	inside := &w.now.channels[Inside]
	if p.Seat == 0 {
		return inside.capacity
	}
	return inside.above(w.End() - p.lift)
}

// room returns the volume in m³ that can go through the string until a plug shuts
// it, none if one has, and limit if that is less.
func (w *Well) room(limit float64) float64 {
	for i := range w.plugs {
		if p := &w.plugs[i]; p.Holds && p.Seat != 0 {
			limit = min(limit, max(w.seat(p)-p.above, 0))
			if p.landed {
				return 0
			}
		}
	}
	return limit
}

// ride moves the plugs down by a volume in m³, or up if it is below zero.
func (w *Well) ride(volume float64) {
	for i := range w.plugs {
		if p := &w.plugs[i]; !p.landed {
			p.above += volume
		}
	}
	w.land()
}

// land seats the plugs that have arrived, keeps seated ones on their seats, and
// forgets those that have left the string.
func (w *Well) land() {
	for i := range w.plugs {
		p := &w.plugs[i]
		if seat := w.seat(p); p.landed || p.Seat != 0 && p.above >= seat-nothing {
			p.landed, p.above = true, seat
		}
	}
	w.plugs = slices.DeleteFunc(w.plugs, func(p plug) bool {
		if p.Seat != 0 && w.End()-p.lift < 0 {
			return true // pulled out with the pipe that holds its seat
		}
		return !p.landed && (p.above < -nothing || p.Seat == 0 && p.above >= w.now.channels[Inside].capacity-nothing)
	})
}

// Bumped reports whether a plug has landed that shuts the string.
func (w *Well) Bumped() bool {
	for i := range w.plugs {
		if w.plugs[i].landed && w.plugs[i].Holds {
			return true
		}
	}
	return false
}

// A Riding is a plug in the string and where it is.
type Riding struct {
	Plug
	MD     float64 // MD is its depth in metres along the hole.
	Volume float64 // Volume is what the string holds above it, in m³.
	ToSeat float64 // ToSeat is the volume in m³ until it lands; until it leaves the string, without a seat.
	Landed bool
}

// AppendPlugs appends to dst the plugs in the string in the order in which they
// were dropped.
func (w *Well) AppendPlugs(dst []Riding) []Riding {
	for i := range w.plugs {
		p := &w.plugs[i]
		r := Riding{p.Plug, w.now.channels[Inside].depth(p.above), p.above, max(w.seat(p)-p.above, 0), p.landed}
		if p.Seat != 0 {
			r.Seat = w.End() - p.lift
			if p.landed {
				r.MD = r.Seat
			}
		}
		dst = append(dst, r)
	}
	return dst
}
