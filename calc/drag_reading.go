package calc

import (
	"strconv"

	"borewalk/calc/drag"
	"borewalk/model"
	"borewalk/model/quantity"
)

// measured is one gauge of a drag reading: what was read, and what of the string's movement it shows.
type measured struct {
	key, name string
	kind      quantity.Kind
	read      quantity.Value
	op        drag.Operation
	torque    bool // not the hook load
}

// gauges returns what was read with the bit at a depth.
func gauges(row *model.DragReading) [4]measured {
	return [4]measured{
		{key: "pick_up", name: "picking up", kind: quantity.Force, read: row.PickUp, op: drag.PickingUp()},
		{key: "slack_off", name: "slacking off", kind: quantity.Force, read: row.SlackOff, op: drag.SlackingOff()},
		{key: "rotating", name: "rotating", kind: quantity.Force, read: row.Rotating, op: drag.Rotating()},
		{key: "torque", name: "torque", kind: quantity.Torque, read: row.Torque, op: drag.Rotating(), torque: true},
	}
}

// of returns what the string gives a gauge.
func (g *measured) of(r *rubbed) float64 {
	tension, torque := r.drag.Top(g.op)
	if g.torque {
		return torque
	}
	return tension + r.blocks
}

// matches returns the friction factor with which the string would give what a gauge showed: that of the open hole while the
// bit is in it, else that of the casing, else that of the riser.
func (g *measured) matches(r *rubbed) (friction float64, ok bool) {
	from, to := r.looked()
	if g.torque {
		return r.drag.MatchTorque(g.op, from, to, g.read.SI)
	}
	return r.drag.MatchTension(g.op, from, to, g.read.SI-r.blocks)
}

// looked returns the lengths whose friction a reading is put down to.
func (r *rubbed) looked() (from, to int) {
	switch n := len(r.lengths); {
	case r.open < n:
		return r.open, n
	case r.cased < n:
		return r.cased, n
	}
	return 0, len(r.lengths)
}

// where names the bore whose friction a reading is put down to, and the entry.
func (r *rubbed) where() (name, entry string) {
	switch n := len(r.lengths); {
	case r.open < n:
		return openHoleLabel, "drag.open"
	case r.cased < n:
		return "cased", "drag.cased"
	}
	return "riser", "drag.riser"
}

// stringRead lays the string of section i with its bit where reading k was taken.
func (e *evaluation) stringRead(i, k int) rubbed {
	depth := e.plan.Sections[i].DragReadings[k].Depth
	path := readingPath(i, k, "depth")
	missing := first(e.sections[i].missing, needs(depth, path, "bit depth of the reading"))
	if !missing.open() && depth.SI > e.sections[i].td {
		missing = gap{path, "the reading is below the section's TD"}
	}
	if missing.open() {
		return rubbed{missing: missing}
	}
	return e.rubbedString(i, depth.SI, usual(e.plan.Sections[i].DragReadings[k].Mud, e.density(i, depth.SI)), 0)
}

func readingPath(i, k int, key string) model.Path {
	return model.PathOf(i, "drag_reading["+strconv.Itoa(k+1)+"]."+key)
}

// dragReadingFigures compares what was read with what the friction factors give, and finds those that would give it.
func (e *evaluation) dragReadingFigures(i int, p *page) {
	for k := range e.plan.Sections[i].DragReadings {
		row := &e.plan.Sections[i].DragReadings[k]
		e.readingOrder(i, k)
		r := e.stringRead(i, k)
		for _, g := range gauges(row) {
			if g.read.IsSet() {
				e.dragReadingFigure(i, k, p, &r, &g)
			}
		}
	}
}

// readingOrder notes where reading k cannot be: friction adds to what is picked up and takes from what is let down, and the
// hook carries the blocks in any case.
func (e *evaluation) readingOrder(i, k int) {
	row := &e.plan.Sections[i].DragReadings[k]
	blocks := e.plan.Rig.BlockWeight.SI
	noted := func(key, why string) {
		e.note(i, Caution, gap{readingPath(i, k, key), "drag reading " + strconv.Itoa(k+1) + ": " + why + ", which cannot be; look at the gauge"})
	}
	less := func(a, b quantity.Value) bool { return a.IsSet() && b.IsSet() && a.SI < b.SI }
	for _, g := range gauges(row) {
		if !g.torque && g.read.IsSet() && g.read.SI < blocks {
			noted(g.key, g.name+" shows less than the blocks weigh")
		}
	}
	switch {
	case less(row.PickUp, row.Rotating):
		noted("pick_up", "picking up shows less than rotating")
	case less(row.PickUp, row.SlackOff):
		noted("pick_up", "picking up shows less than slacking off")
	}
	if less(row.Rotating, row.SlackOff) {
		noted("slack_off", "slacking off shows more than rotating")
	}
}

// dragReadingFigure adds one gauge of reading k: what is expected, by how much more was read, and the friction that gives it.
func (e *evaluation) dragReadingFigure(i, k int, p *page, r *rubbed, g *measured) {
	n := strconv.Itoa(k + 1)
	key := "drag.reading." + n + "." + g.key
	var expected float64
	if !r.missing.open() {
		expected = g.of(r)
	}
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			name, _ := r.where()
			w.Formula = formula
			w.in("read", g.name, g.kind, g.read.SI)
			w.in("bit", "along hole", quantity.Length, r.bit)
			w.in("model", "with the factors entered", g.kind, expected)
			w.in("blocks", "with top drive", quantity.Force, r.blocks)
			from, to := r.looked()
			w.in("mu", name+", as it is now", quantity.Number, r.drag.Elements()[from].Friction)
			for j := to - 1; j >= from; j-- {
				element := &r.drag.Elements()[j]
				w.in("L", r.lengths[j].part.label(), quantity.Length, element.Length)
				w.in("m", "buoyed", quantity.LinearMass, element.Weight/gravity)
				w.in("I", "inclination", quantity.Angle, element.Lower.Inclination)
			}
			w.Source, w.Note = dragSource, dragNote
		}
	}
	p.put(key, n+" "+g.name, g.kind, expected, r.missing, why("as at TD, with the bit at the reading's depth and the fluid of that depth")).Note = "expected"
	p.also(key+".more", "read more", g.kind, g.read.SI-expected, r.missing, why("more = read - expected"))
	if g.key == "rotating" {
		return // friction does not change it
	}
	var mu float64
	missing := r.missing
	if !missing.open() {
		var ok bool
		if mu, ok = g.matches(r); !ok {
			missing = gap{readingPath(i, k, g.key), "no friction factor from 0 to 1 gives this reading"}
		}
	}
	f := p.also(key+".friction", "friction", quantity.Number, mu, missing, why("the friction factor, of the bore that the bit is in, with which the model gives what was read; found by false position"))
	if !missing.open() {
		f.Note, _ = r.where()
	}
}
