package calc

import (
	"strconv"

	"borewalk/calc/drillpipe"
	"borewalk/model"
	"borewalk/model/quantity"
)

// stiffnessFigures adds by how much stiffness steps from part to part, where it does.
func (e *evaluation) stiffnessFigures(i int, p *page, d *drillString) {
	p.group = "Steps in stiffness"
	worst, at := 0.0, -1
	for k := len(d.parts) - 1; k > 0; k-- {
		lower, upper := &d.parts[k], &d.parts[k-1]
		if lower.row.Cuts() || upper.row.Cuts() {
			continue
		}
		ratio, ok := drillpipe.BendingRatio(lower.pipe.OD, lower.pipe.ID, upper.pipe.OD, upper.pipe.ID)
		if !ok || ratio < noticed {
			continue
		}
		p.put("string.bha.bending."+strconv.Itoa(lower.number), "Part "+strconv.Itoa(lower.number)+" to "+strconv.Itoa(upper.number), quantity.Number, ratio, gap{}, func(w *Working) {
			w.Formula = "ratio = Z1 / Z2, the stiffer over the other, Z = pi/32 × (OD⁴ - ID⁴) / OD"
			w.in("OD1", lower.label(), quantity.Diameter, lower.pipe.OD)
			w.in("ID1", lower.label(), quantity.Diameter, lower.pipe.ID)
			w.in("OD2", upper.label(), quantity.Diameter, upper.pipe.OD)
			w.in("ID2", upper.label(), quantity.Diameter, upper.pipe.ID)
			w.Source = "beam theory; the limits are common practice, from memory"
			w.Note = "Bodies; blades, upsets and connections left out."
		}).Note = lower.label() + " to " + upper.label()
		if ratio > worst {
			worst, at = ratio, k
		}
	}
	if at >= 0 {
		lower := &d.parts[at]
		e.judge(model.RuleBendingRatio, i, worst, "Step in stiffness, "+lower.label()+" to "+d.parts[at-1].label(), "", 0,
			model.PathOf(i, "string["+strconv.Itoa(lower.number)+"].size"))
	}
}

// noticed is a ratio of stiffness below which two parts count as alike.
const noticed = 1.01

// leastInside returns the part with the least bore, of those from the top down to part k, and false where there is none.
func (d *drillString) leastInside(k int) (tight *stringPart, ok bool) {
	for j := range d.parts[:k+1] {
		if part := &d.parts[j]; !part.row.Cuts() && (!ok || part.pipe.Drift < tight.pipe.Drift) {
			tight, ok = part, true
		}
	}
	return tight, ok
}

// insideFigures adds what passes down inside the string.
func (e *evaluation) insideFigures(i int, p *page, d *drillString) {
	tight, ok := d.leastInside(len(d.parts) - 1)
	if d.missing.open() || !ok {
		return
	}
	p.group = "Passes inside"
	bare := false // a part of pipe above it whose tool joints' bore is not known
	for k := range d.parts {
		part := &d.parts[k]
		bare = bare || part.row.Item == model.ItemPipe && part.pipe.Drift == part.pipe.ID
	}
	f := p.put("string.bha.drift", "Least bore", quantity.Diameter, tight.pipe.Drift, gap{}, func(w *Working) {
		w.Formula = "least of the bores from the rotary to the bit"
		for k := range d.parts {
			if part := &d.parts[k]; !part.row.Cuts() {
				w.in("d", part.label()+" "+strconv.Itoa(part.number), quantity.Diameter, part.pipe.Drift)
			}
		}
		w.Source = source(tight.pipe.Source)
		w.Note = "A dart, ball or tool is drifted through what is on deck; tools inside, and bores that are not entered, may be less."
	})
	f.Note = "in " + tight.label() + ", part " + strconv.Itoa(tight.number)
	if bare {
		f.Note += "; bore of the pipe's tool joints not known"
	}
	p.also("string.bha.drift.top", "from", quantity.Length, tight.top, gap{}, func(w *Working) {
		w.Formula = "top of the part with the least bore, bit at TD"
		w.in("top", tight.label(), quantity.Length, tight.top)
		w.Source = "geometry"
	})
}
