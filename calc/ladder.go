package calc

import (
	"math"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// passage is a bore that what goes down the well must pass once it is to stand below the bore's top: the guaranteed
// diameter in m, the top along hole.
type passage struct {
	name     string
	top      float64
	diameter float64
}

// passages returns the bores above the open hole of section i, from the rotary down to a depth: riser, BOP and wellhead
// when they are there, and the drift of every string that stands in the way.
func (e *evaluation) passages(i int, to float64) []passage {
	var list []passage
	if e.sections[i].rig {
		list = append(list,
			passage{"riser", 0, e.plan.Rig.RiserID.SI},
			passage{"BOP", e.datum.BOPTop, e.plan.Rig.BOPBore.SI})
	}
	if e.hasHPHousing(i) {
		list = append(list, passage{"wellhead", e.datum.Wellhead, e.plan.Wellhead.Bore.SI})
	}
	if c := &e.strings[i]; c.present && e.plan.Sections[i].Method != model.Cemented && to > c.shoe {
		list = append(list, e.drifts(i, math.Inf(1))...) // what drills out pipe that is in place passes it
	}
	reached := math.Inf(1)
	for j := i - 1; j >= 0; j-- {
		c := &e.strings[j]
		if !c.present || c.missing.open() {
			continue
		}
		list = append(list, e.drifts(j, min(to, reached))...)
		reached = min(reached, c.top)
	}
	return list
}

// drifts returns the drift of every part of the string of section j that begins above a depth.
func (e *evaluation) drifts(j int, above float64) []passage {
	var list []passage
	for k := range e.strings[j].parts {
		if part := &e.strings[j].parts[k]; part.top < above {
			list = append(list, passage{"drift of section " + strconv.Itoa(j+1) + " string", part.top, part.pipe.Drift})
		}
	}
	return list
}

// least returns the narrowest of the passages that begin above a depth, and false when there is none.
func least(list []passage, above float64) (narrowest passage, ok bool) {
	narrowest.diameter = math.Inf(1)
	for _, p := range list {
		if p.top < above && p.diameter > 0 && p.diameter < narrowest.diameter {
			narrowest, ok = p, true
		}
	}
	return narrowest, ok
}

// clearance adds a line with what a diameter leaves in the narrowest of the bores that begin above a depth, and returns the
// clearance.
func (e *evaluation) clearance(p *page, key, name string, diameter float64, bores []passage, above float64, missing gap) (left float64, at passage, ok bool) {
	at, ok = least(bores, above)
	if !ok && !missing.open() {
		return 0, at, false
	}
	left = at.diameter - diameter
	figure := p.put(key, name, quantity.Diameter, left, missing, func(w *Working) {
		w.Formula = "clearance = least bore above - largest diameter"
		w.passages(bores, above)
		w.in("d", "largest diameter", quantity.Diameter, diameter)
		w.Source = "drift, not the nominal ID, is what is guaranteed (API 5CT drift test); wear and wear bushings come on top"
	})
	figure.Note = at.name
	p.also(key+".bore", "least bore", quantity.Diameter, at.diameter, missing, func(w *Working) {
		w.Formula = "least of the bores above"
		w.passages(bores, above)
		w.Source = "as entered and from the catalogue"
	})
	p.also(key+".diameter", "largest", quantity.Diameter, diameter, missing, func(w *Working) {
		w.Formula = "largest diameter of what passes"
		w.Source = "as entered and from the catalogue"
	})
	return left, at, ok
}

// bitLadder compares the bit and the largest part of the string with the bores above.
func (e *evaluation) bitLadder(i int, p *page, d *drillString) {
	h := &e.sections[i]
	for k := range d.parts {
		if row := d.parts[k].row; row.Item == model.ItemBit && row.Size.IsSet() {
			e.judge(model.RuleBitAsPlanned, i, math.Abs(row.Size.SI-h.bit), "Bit of the string against the section's", "", 0, model.PathOf(i, "bit"))
		}
	}
	p.group = "Passes the bores above"
	bores := e.passages(i, h.td)
	missing := e.boreGap(i)
	left, at, ok := e.clearance(p, "string.passes.bit", "Bit", h.bit, bores, h.td, missing)
	if !ok || missing.open() {
		return
	}
	e.judge(model.RuleBitPasses, i, left, "Bit through the bores above", at.name, 0, model.PathOf(i, "bit"))
	e.judge(model.RuleBitClearance, i, left, "Bit below the drift", at.name, 0, model.PathOf(i, "bit"))
	tight, ok := e.tightestPart(i, d, bores)
	if !ok {
		return
	}
	left, at, _ = e.clearance(p, "string.passes.parts", "Tightest part", e.largest(i, tight), bores, tight.bottom, d.missing)
	key := "joint_od"
	if tight.row.Cuts() || !tight.row.JointOD.IsSet() {
		key = "size"
	}
	e.judge(model.RuleBitPasses, i, left, "Drill string through the bores above, "+tight.label(), at.name, 0,
		model.PathOf(i, "string["+strconv.Itoa(tight.number)+"]."+key))
}

// tightestPart returns the part of the drill string that has the least room in the bores that it enters, the bit left out:
// a part that ends in the riser need not pass the casing below.
func (e *evaluation) tightestPart(i int, d *drillString, bores []passage) (tight *stringPart, ok bool) {
	room := math.Inf(1)
	for k := range d.parts {
		part := &d.parts[k]
		if part.row.Item == model.ItemBit {
			continue
		}
		if bore, any := least(bores, part.bottom); any && bore.diameter-e.largest(i, part) < room {
			room, tight, ok = bore.diameter-e.largest(i, part), part, true
		}
	}
	return tight, ok
}

// largest returns the largest diameter of a part as it goes down.
func (e *evaluation) largest(i int, part *stringPart) float64 {
	if part.row.Item == model.ItemOpener {
		return e.openerSize(i, part.row)
	}
	return part.pipe.Widest
}

// passages puts the bores that begin above a depth into the working.
func (w *Working) passages(bores []passage, above float64) {
	for _, b := range bores {
		if b.top < above {
			w.in(b.name, "guaranteed bore", quantity.Diameter, b.diameter)
		}
	}
}

// openerSize returns the diameter of a hole opener as it goes down: its own, else the hole's. An underreamer, which folds,
// is entered as a tool with the size of its body.
func (e *evaluation) openerSize(i int, row *model.StringPart) float64 {
	return usual(row.Size, e.sections[i].size)
}
