package calc

import (
	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// runWeights returns what hangs from the rotary in N when the shoe of section i has come to a depth along hole in m: full of
// what surrounds it, and with the uppermost length of casing in m still empty.
//
// An empty length lacks the weight of the fluid that would fill it, on true vertical depth.
func (e *evaluation) runWeights(fluids []layer, i int, l *landing, shoe, empty float64) (full, light float64) {
	c := &e.strings[i]
	up := c.shoe - shoe // how far the string still is from its place
	for k := range c.parts {
		part := &c.parts[k]
		top, bottom := max(0, part.top-up), part.bottom-up
		if bottom <= top {
			continue
		}
		full += buoyed(fluids, e.length(top, bottom, part.pipe, part.pipe.LinearMass))
		if empty > 0 && top < empty {
			light -= bore.Area(part.pipe.ID) * (pressureIn(fluids, e.path.TVD(min(bottom, empty))) - pressureIn(fluids, e.path.TVD(top)))
		}
	}
	if top := c.top - up; top > 1e-6 { // the casing has left the rotary, with the inner string in it
		full += buoyed(fluids, e.length(0, top, l.pipe, l.mass))
		if inner := e.plan.Sections[i].Cement.InnerAboveShoe.SI; l.inner.weight > 0 {
			full += buoyed(fluids, e.length(top, shoe-inner, l.pipe, l.mass))
		}
	}
	return full, full + light
}

// unfilled returns the length in m of casing that hangs empty before it is filled while the string of section i is run.
func (e *evaluation) unfilled(i int) float64 {
	s := &e.plan.Sections[i]
	if s.Tally.Float == model.FloatFills || !e.tallies[i].kept {
		return 0
	}
	return s.Tally.FillEvery.SI * e.tallies[i].average
}

// runFigures adds the hook load on the way in: with the shoe at the last shoe, and with all casing made up.
func (e *evaluation) runFigures(i int, p *page, l *landing) {
	c := &e.strings[i]
	p.group = "Running in"
	var fluids []layer
	if !l.missing.open() {
		fluids = e.hanging(i, nil, e.leftInHole(i))
	}
	last, _, ok := e.lastShoe(i)
	blocks := e.plan.Rig.BlockWeight.SI
	for _, at := range [...]struct {
		key, name string
		shoe      float64
		counts    bool
		missing   gap
	}{
		{"run.last_shoe", "At the last shoe", last, ok && last < c.shoe, first(l.missing, e.shoeGap(i))},
		{"run.made_up", "All made up", c.shoe - c.top, true, l.missing},
	} {
		if !at.counts {
			continue
		}
		empty := e.unfilled(i)
		if at.shoe > c.shoe-c.top {
			empty = 0 // filled before the landing string goes on
		}
		var full, light float64
		if !at.missing.open() {
			full, light = e.runWeights(fluids, i, l, at.shoe, empty)
		}
		p.put(at.key, at.name, quantity.Force, full+blocks, at.missing, func(w *Working) {
			w.Formula = "hook load = string in the well, in its fluid + blocks and top drive"
			w.in("W", "in the well", quantity.Force, full)
			w.in("blocks", "with top drive", quantity.Force, blocks)
			w.in("shoe", "along hole", quantity.Length, at.shoe)
			w.Source = "buoyancy factor (Bourgoyne et al., Applied Drilling Engineering, ch. 4)"
			w.Note = "String full of what surrounds it, top at the rotary; without friction."
		})
		p.also(at.key+".shoe", "shoe at", quantity.Length, at.shoe, at.missing, func(w *Working) {
			w.Formula = "depth of the shoe, top of the string at the rotary"
			w.in("length", "casing", quantity.Length, c.shoe-c.top)
			w.Source = "geometry, along hole"
		})
		if empty > 0 {
			p.also(at.key+".unfilled", "unfilled", quantity.Force, light+blocks, at.missing, func(w *Working) {
				w.Formula = "hook load = full - bore × g × (fluid × fall of the empty length)"
				w.in("full", "hook load", quantity.Force, full+blocks)
				w.in("empty", "uppermost casing", quantity.Length, empty)
				w.Source = "pressure-area balance over a float that holds"
			})
		}
	}
}
