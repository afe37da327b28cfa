package state

import (
	"fmt"
	"math"
)

// Lower moves the string down by a length in metres, or as far as the hole goes,
// and returns how far it went, to a micrometre. What it pushes aside goes up the
// annulus and out.
//
// With a float, or with a plug that shuts it, the string goes in closed: its whole
// outer volume is pushed aside, the pipe that comes in at the top is empty
// ([Well.Fill] fills it), and the pocket's fluid goes up the annulus.
//
// Otherwise the string goes in open: it stays as full as it was, the pocket's fluid
// goes up inside it and around it in the ratio of what has to be filled, and the
// volume of its steel leaves the well. Where the string grows faster inside than
// the pocket shrinks, the rest comes out of the annulus.
//
// An error says where the string does not fit, and leaves it where it was.
func (w *Well) Lower(length float64) (lowered float64, err error) {
	if !(length >= 0) || math.IsInf(length, 0) {
		return 0, fmt.Errorf("well: cannot lower by %g m; give a length of 0 or more", length)
	}
	bottom := w.layout.Bore[len(w.layout.Bore)-1].Bottom
	length = min(length, bottom-w.End())
	if err := w.passes(length); err != nil {
		return 0, err
	}
	for lowered < length-joined {
		step := min(length-lowered, w.nextDown())
		if err := w.shift(step); err != nil {
			return lowered, err
		}
		lowered += step
	}
	return lowered, nil
}

// Raise moves the string up by a length in metres, or until its end is at the
// outlet's depth or an inner string at the rotary, and returns how far it went.
// What makes room in the annulus flows in at the outlet, of the fluid that
// [Return] names. The pipe that leaves at the top takes its fluid with it if the
// string is closed. An open one stays as full as it was: what its bore loses drains
// at the end, and in the pocket lies in bands with what comes out of the annulus.
func (w *Well) Raise(length float64) (raised float64, err error) {
	if !(length >= 0) || math.IsInf(length, 0) {
		return 0, fmt.Errorf("well: cannot raise by %g m; give a length of 0 or more", length)
	}
	length = min(length, w.End()-max(w.layout.Return.MD, joined))
	if len(w.now.inner) > 0 {
		length = min(length, w.now.inner[0].Top)
	}
	if err := w.passes(-length); err != nil {
		return 0, err
	}
	for raised < length-joined {
		step := min(length-raised, w.nextUp())
		if err := w.shift(-step); err != nil {
			return raised, err
		}
		raised += step
	}
	return raised, nil
}

// passes reports the first body that is too wide for a bore that it meets on its way
// down by a length in m, or up if that is below zero.
func (w *Well) passes(down float64) error {
	for i := range w.now.str {
		b := &w.now.str[i]
		top := max(b.Top+min(down, 0), w.layout.Return.MD)
		bottom := b.Bottom + max(down, 0)
		if !(bottom > top) {
			continue
		}
		if least, ok := w.layout.Bore.Least(top, bottom); ok && !(least.Diameter > b.OD) {
			return fmt.Errorf("well: a body of %.4f m does not pass the bore of %.4f m from %.2f m to %.2f m; take a smaller one",
				b.OD, least.Diameter, least.Top, least.Bottom)
		}
	}
	return nil
}

// nextDown returns the length in m that the string can go down until another size
// comes in at the rotary or at the outlet, or the bore changes at its end. Within it
// volumes inside, outside and below change in a fixed ratio and what flows at the
// outlet keeps its direction, so the size of a step does not matter.
func (w *Well) nextDown() float64 {
	step := math.Inf(1)
	for i := range w.now.str {
		step = nearer(step, -w.now.str[i].Top)
		step = nearer(step, w.layout.Return.MD-w.now.str[i].Top)
	}
	for i := range w.layout.Bore {
		step = nearer(step, w.layout.Bore[i].Bottom-w.End())
	}
	return step
}

// nextUp is nextDown for the way up.
func (w *Well) nextUp() float64 {
	step := math.Inf(1)
	for i := range w.now.str {
		step = nearer(step, w.now.str[i].Bottom)
		step = nearer(step, w.now.str[i].Bottom-w.layout.Return.MD)
	}
	for i := range w.layout.Bore {
		step = nearer(step, w.End()-w.layout.Bore[i].Top)
	}
	return step
}

// nearer returns the lesser of two distances in m, leaving out one that is none.
func nearer(step, distance float64) float64 {
	if distance > joined && distance < step {
		return distance
	}
	return step
}

// shift moves the string down by a step in m, or up if it is below zero.
func (w *Well) shift(down float64) error {
	if err := w.next.form(&w.layout, &w.now, down); err != nil {
		return err
	}
	closed := w.layout.Float || w.Bumped()
	bore := w.next.channels[Inside].capacity - w.now.channels[Inside].capacity
	w.now, w.next = w.next, w.now
	w.read = false
	if closed {
		w.shiftClosed(bore)
	} else {
		w.shiftOpen(bore)
	}
	w.land()
	return nil
}

// shiftClosed moves the fluids after the bore of the string has grown at its top by
// a volume in m³, or shrunk if that is below zero.
func (w *Well) shiftClosed(bore float64) {
	annulus, pocket := &w.stacks[Annulus], &w.stacks[Pocket]
	over := pocket.held() - w.now.channels[Pocket].capacity
	swallow(pocket, annulus, over)
	if over < 0 {
		w.flowBack(-over)
		for need := -over; need > 0; {
			fluid, took := annulus.takeBottom(need)
			if took == 0 {
				break
			}
			pocket.addTop(fluid, took)
			need -= took
		}
	}
	w.spill()
	w.flowBack(0)
	w.drain()
	w.ride(bore)
}

// shiftOpen is shiftClosed for an open string.
func (w *Well) shiftOpen(bore float64) {
	over := w.stacks[Pocket].held() - w.now.channels[Pocket].capacity
	if over > 0 || bore > 0 {
		w.swallowOpen(max(over, 0), max(bore, 0))
	} else {
		w.drainOpen(-over, -bore)
	}
	w.spill()
	w.flowBack(0)
}

// swallowOpen lets a volume out of the pocket, and a volume into the string, both
// in m³; the annulus takes or gives the difference.
func (w *Well) swallowOpen(over, bore float64) {
	inside, annulus, pocket := &w.stacks[Inside], &w.stacks[Annulus], &w.stacks[Pocket]
	share := 1.0
	if bore < over {
		share = bore / over
	} else if extra := bore - over; extra > 0 {
		w.flowBack(extra)
		for fluid, took := range annulus.fromBottom(extra) {
			inside.bandBottom(fluid, took)
		}
	}
	for fluid, took := range pocket.fromTop(over) {
		in := took * share
		inside.bandBottom(fluid, in)
		annulus.addBottom(fluid, took-in)
	}
}

// drainOpen lets a volume out of the string, and a volume into the pocket, both in
// m³; the annulus takes or gives the difference.
func (w *Well) drainOpen(need, bore float64) {
	inside, annulus, pocket := &w.stacks[Inside], &w.stacks[Annulus], &w.stacks[Pocket]
	for fluid, took := range inside.fromBottom(bore) {
		down := min(took, max(need, 0))
		pocket.bandTop(fluid, down)
		annulus.addBottom(fluid, took-down)
		need -= down
	}
	if !(need > 0) {
		return
	}
	w.flowBack(need)
	for fluid, took := range annulus.fromBottom(need) {
		pocket.bandTop(fluid, took)
	}
}

// flowBack fills the annulus at the outlet with what it lacks, and with a volume in
// m³ more that is about to be taken from it below.
func (w *Well) flowBack(more float64) {
	lack := w.now.channels[Annulus].capacity + more - w.stacks[Annulus].held()
	if lack > speck {
		w.stacks[Annulus].addTop(w.layout.Return.Fluid, lack)
		w.accounts[w.layout.Return.Fluid].Back += lack
	}
}
