package calc

import (
	"math"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// passage is a bore that whatever goes down the well for a section must pass: the guaranteed diameter in m.
type passage struct {
	name     string
	diameter float64
	path     model.Path // entry that sets it
}

// passages returns the bores above the open hole of section i, from the rotary down to a depth: riser, BOP and wellhead
// when they are there, and the drift of every string that stands in the way.
func (e *evaluation) passages(i int, to float64) []passage {
	var list []passage
	if e.sections[i].rig {
		list = append(list,
			passage{"riser", e.plan.Rig.RiserID.SI, "rig.riser_id"},
			passage{"BOP", e.plan.Rig.BOPBore.SI, "rig.bop_bore"})
	}
	if e.hasHPHousing(i) {
		list = append(list, passage{"wellhead", e.plan.Wellhead.Bore.SI, "wellhead.bore"})
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
			list = append(list, passage{"drift of section " + strconv.Itoa(j+1) + " string", part.pipe.Drift,
				model.PathOf(j, "casing["+strconv.Itoa(part.row+1)+"].drift_class")})
		}
	}
	return list
}

// least returns the narrowest of the passages, and false when there is none.
func least(list []passage) (narrowest passage, ok bool) {
	narrowest.diameter = math.Inf(1)
	for _, p := range list {
		if p.diameter > 0 && p.diameter < narrowest.diameter {
			narrowest, ok = p, true
		}
	}
	return narrowest, ok
}

// clearance adds a line with what a diameter leaves in the narrowest bore above, and returns the clearance.
func (e *evaluation) clearance(p *page, key, name string, diameter float64, bores []passage, missing gap) (left float64, at passage, ok bool) {
	at, ok = least(bores)
	if !ok && !missing.open() {
		return 0, at, false
	}
	left = at.diameter - diameter
	figure := p.put(key, name, quantity.Diameter, left, missing, func(w *Working) {
		w.Formula = "clearance = least bore above - largest diameter"
		for _, b := range bores {
			w.in(b.name, "guaranteed bore", quantity.Diameter, b.diameter)
		}
		w.in("d", "largest diameter", quantity.Diameter, diameter)
		w.Source = "drift, not the nominal ID, is what is guaranteed (API 5CT drift test); wear and wear bushings come on top"
	})
	figure.Note = at.name
	p.also(key+".bore", "least bore", quantity.Diameter, at.diameter, missing, func(w *Working) {
		w.Formula = "least of the bores above"
		for _, b := range bores {
			w.in(b.name, "guaranteed bore", quantity.Diameter, b.diameter)
		}
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
	left, at, ok := e.clearance(p, "string.passes.bit", "Bit", h.bit, bores, missing)
	if !ok || missing.open() {
		return
	}
	e.judge(model.RuleBitPasses, i, left, "Bit through the bores above", at.name, 0, model.PathOf(i, "bit"))
	e.judge(model.RuleBitClearance, i, left, "Bit below the drift", at.name, 0, model.PathOf(i, "bit"))
	var widest float64
	for k := range d.parts {
		switch part := &d.parts[k]; {
		case !part.row.Cuts():
			widest = max(widest, part.pipe.Widest)
		case part.row.Item == model.ItemOpener:
			widest = max(widest, e.openerSize(i, part.row))
		}
	}
	if widest == 0 {
		return
	}
	left, at, _ = e.clearance(p, "string.passes.parts", "Largest part", widest, bores, d.missing)
	e.judge(model.RuleBitPasses, i, left, "Drill string through the bores above", at.name, 0, model.PathOf(i, "bit"))
}

// openerSize returns the diameter of a hole opener as it goes down: its own, else the hole's. An underreamer, which folds,
// is entered as a tool with the size of its body.
func (e *evaluation) openerSize(i int, row *model.StringPart) float64 {
	if row.Size.IsSet() {
		return row.Size.SI
	}
	return e.sections[i].size
}
