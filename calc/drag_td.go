package calc

import (
	"strconv"

	"borewalk/calc/drag"
)

// motion is an operation as a crew names it.
type motion struct {
	key, name, words string
	op               drag.Operation
	missing          gap
}

// The operations that are worked out, in this order.
const (
	pickingUp = iota
	slackingOff
	rotating
	drilling
	sliding
	motions
)

// motions returns the operations of section i.
func (e *evaluation) motions(i int) (list [motions]motion) {
	weight, missing := e.bitWeight(i)
	torque, _ := e.bitTorque(i, weight)
	return [motions]motion{
		{key: "drag.pick_up", name: "Picking up", words: "picking up", op: drag.PickingUp()},
		{key: "drag.slack_off", name: "Slacking off", words: "slacking off", op: drag.SlackingOff()},
		{key: "drag.rotating", name: "Rotating", words: "rotating off bottom", op: drag.Rotating()},
		{key: "drag.drilling", name: "Drilling", words: "drilling", op: drag.Drilling(weight, torque), missing: missing},
		{key: "drag.sliding", name: "Sliding", words: "sliding", op: drag.Sliding(weight), missing: missing},
	}
}

// dragged is what the drill string of a section bears at TD.
type dragged struct {
	rubbed
	motions [motions]motion
	loads   [motions][]drag.Load // none where the operation cannot be worked out
}

// draggedAtTD works out every operation of section i at TD.
func (e *evaluation) draggedAtTD(i int) dragged {
	td := e.sections[i].td
	d := dragged{rubbed: e.rubbedString(i, td, e.density(i, td), bendPiece), motions: e.motions(i)}
	if d.missing.open() {
		return d
	}
	n := len(d.lengths)
	all := make([]drag.Load, 0, motions*n)
	for m := range d.motions {
		if d.motions[m].missing.open() {
			continue
		}
		from := len(all)
		all = d.drag.Loads(all, d.motions[m].op)
		d.loads[m] = all[from:]
	}
	return d
}

// gap says what is missing for an operation.
func (d *dragged) gap(m int) gap { return first(d.missing, d.motions[m].missing) }

// top returns the hook load in N and the torque in N m of an operation; nothing where it cannot be worked out.
func (d *dragged) top(m int) (hook, torque float64) {
	if len(d.loads[m]) == 0 {
		return 0, 0
	}
	at := &d.loads[m][0]
	return at.Upper.Tension + d.blocks, at.Torque
}

// pressed is where pipe is pressed to the wall hardest: N per joint of pipe, depth along hole in m.
type pressed struct {
	force, md float64
	length    int
}

// pressed returns where an operation presses drill pipe or heavy-weight to the wall hardest.
func (d *dragged) pressed(m int) (hardest pressed) {
	for k := range d.loads[m] {
		l, at := &d.lengths[k], &d.loads[m][k]
		if !l.part.bends() {
			continue
		}
		if force := at.Side * l.part.jointEvery(); hardest.md == 0 || force > hardest.force {
			hardest = pressed{force, l.top + at.SideAt, k}
		}
	}
	return hardest
}

// buckled is how near pipe comes to buckling: the compression in N that is left to the limit where least is, below zero
// where it is passed, and the lengths in m beyond the limits.
type buckled struct {
	left, md       float64
	length, motion int // where and in what least is left
	limit, load    float64
	looked         bool // there is pipe to be looked at
	wave, helix    float64
}

// buckles looks for where drill pipe and heavy-weight come nearest to buckling, in what lets the string down or puts weight
// on the bit.
func (d *dragged) buckles() (b buckled) {
	for _, m := range [...]int{slackingOff, drilling, sliding} {
		var wave, helix float64
		for k := range d.loads[m] {
			at := &d.loads[m][k]
			lowest := min(at.Upper.Tension, at.Lower.Tension)
			if !d.lengths[k].part.bends() || d.lengths[k].top == d.lengths[k].bottom || b.looked && lowest > 0 && lowest > b.left {
				continue
			}
			element := &d.drag.Elements()[k]
			waveUp, helixUp := d.limit(k, element.Upper.Inclination, at.Upper)
			waveLow, helixLow := d.limit(k, element.Lower.Inclination, at.Lower)
			b.look(waveUp, at.Upper.Tension, d.lengths[k].top, k, m)
			b.look(waveLow, at.Lower.Tension, d.lengths[k].bottom, k, m)
			wave += element.Length * shareBelow(waveUp+at.Upper.Tension, waveLow+at.Lower.Tension)
			helix += element.Length * shareBelow(helixUp+at.Upper.Tension, helixLow+at.Lower.Tension)
		}
		b.wave, b.helix = max(b.wave, wave), max(b.helix, helix)
	}
	return b
}

// look remembers a place where less is left.
func (b *buckled) look(limit, tension, md float64, k, m int) {
	if left := limit + tension; !b.looked || left < b.left {
		b.left, b.limit, b.load, b.md, b.length, b.motion, b.looked = left, limit, tension, md, k, m, true
	}
}

// shareBelow returns the share of a straight line between two values that lies below zero.
func shareBelow(a, b float64) float64 {
	switch {
	case a >= 0 && b >= 0:
		return 0
	case a <= 0 && b <= 0:
		return 1
	}
	return min(a, b) / (min(a, b) - max(a, b))
}

// overpull is what may be pulled over the pick-up weight: the least of what rig and pipe leave, N.
type overpull struct {
	left, limit, load float64
	name              string      // of what limits it, with the basis
	part              *stringPart // nil where the rig does
	known             bool
}

// overpull returns what rig and pipe leave when picking up, when a share of what the class of the pipe bears is used.
func (d *dragged) overpull(rating, share float64) (o overpull) {
	look := func(limit, load float64, part *stringPart) {
		if left := limit - load; !o.known || left < o.left {
			o = overpull{left: left, limit: limit, load: load, part: part, known: true}
		}
	}
	if d.missing.open() {
		return o
	}
	if rating > 0 {
		hook, _ := d.top(pickingUp)
		look(rating, hook, nil)
	}
	for k := range d.lengths {
		part := d.lengths[k].part
		if tension, ok := part.bears(); ok {
			look(share*tension, d.loads[pickingUp][k].Upper.Tension, part)
		}
	}
	if o.name = "rig"; o.part != nil {
		o.name = o.part.label() + ", " + strconv.FormatFloat(100*share, 'g', 3, 64) + " % of " + o.part.class()
	}
	return o
}
