package state

import (
	"errors"
	"fmt"
)

// Pump pumps a volume in m³ of a fluid down the string: it fills what is empty, and
// then pushes what stands in the string out at its end, up the annulus and out. The
// pocket stands. It returns the volume that went in, which is less than asked for
// only if a plug landed and shut the string.
//
// Pump looks at volumes alone. Where the fluid inside would run ahead of the pump,
// [Well.Advance] shows it; both end in the same state once the string is full again.
func (w *Well) Pump(volume float64, fluid int) (pumped float64, err error) {
	if err := w.pumpable(volume, fluid); err != nil {
		return 0, err
	}
	empty := w.empty(Inside)
	pumped = min(volume, empty+w.room(volume))
	w.enter(pumped, fluid)
	w.leave(w.stacks[Inside].held() - w.now.channels[Inside].capacity)
	return pumped, nil
}

// ocean is a volume in m³ that no well is ever pumped at once, hundreds of times what
// any holds; beyond it rounding would eat what the well holds.
const ocean = 1e6

// pumpable reports whether a volume of a fluid can be asked for.
func (w *Well) pumpable(volume float64, fluid int) error {
	if !(volume >= 0) || volume > ocean {
		return fmt.Errorf("well: cannot pump %g m³; give a volume from 0 to a million", volume)
	}
	return w.known(fluid)
}

// enter lays a volume on top of the string's fluid.
func (w *Well) enter(volume float64, fluid int) {
	w.stacks[Inside].addTop(fluid, volume)
	w.accounts[fluid].Pumped += max(volume, 0)
	w.read = false
}

// leave moves a volume from the end of the string into the annulus, and what is too
// much there out of the well.
func (w *Well) leave(volume float64) {
	if !(volume > 0) {
		return
	}
	turn(&w.stacks[Inside], &w.stacks[Annulus], volume)
	w.spill()
	w.ride(volume)
	w.read = false
}

// spill lets out at the top of the annulus what it cannot hold.
func (w *Well) spill() {
	annulus := &w.stacks[Annulus]
	for fluid, took := range annulus.fromTop(annulus.held() - w.now.channels[Annulus].capacity) {
		w.accounts[fluid].Returned += took
	}
}

// Fill fills the empty part of the string from the top with up to a volume in m³ of
// a fluid, and returns what went in. Nothing flows at the end of the string.
func (w *Well) Fill(volume float64, fluid int) (filled float64, err error) {
	if err := w.pumpable(volume, fluid); err != nil {
		return 0, err
	}
	filled = min(volume, w.empty(Inside))
	w.enter(filled, fluid)
	return filled, nil
}

// Reverse pumps a volume in m³ of a fluid in at the outlet of the annulus: down the
// annulus, up the string and out at its top. An empty part of the string is filled
// from below first. It returns the volume that went in: all, or nothing if a plug
// shuts the string. With a float it is an error.
func (w *Well) Reverse(volume float64, fluid int) (pumped float64, err error) {
	if err := w.pumpable(volume, fluid); err != nil {
		return 0, err
	}
	if w.layout.Float {
		return 0, errors.New("well: the float lets nothing up the string; leave it out of the string, or pump down")
	}
	if w.Bumped() {
		return 0, nil
	}
	inside, annulus := &w.stacks[Inside], &w.stacks[Annulus]
	annulus.addTop(fluid, volume)
	w.accounts[fluid].Pumped += volume
	over := annulus.held() - w.now.channels[Annulus].capacity
	turn(annulus, inside, over)
	w.drain()
	w.ride(-max(over, 0))
	w.read = false
	return volume, nil
}

// drain lets out at the top of the string what it cannot hold.
func (w *Well) drain() {
	inside := &w.stacks[Inside]
	for fluid, took := range inside.fromTop(inside.held() - w.now.channels[Inside].capacity) {
		w.accounts[fluid].Drained += took
	}
}
