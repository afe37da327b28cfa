package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// contents is what a well holds with the drill string in it, and without a string: intervals, from the rotary down.
type contents struct {
	string, annuli []bore.Interval // the string's bore, and round it
	well           []bore.Interval // nothing in the well; from where returns leave it
	from           float64         // where returns leave the annulus
	missing        gap             // for the string and the annulus
	bores          gap             // for the well alone
	misfit         bool            // the string is wider than the well
}

// inside returns the volume of the string in m3.
func (c *contents) inside() float64 { return bore.Volume(c.string) }

// outside returns the volume of the annulus in m3 up to where returns leave it.
func (c *contents) outside() float64 { return bore.Between(c.annuli, c.from, math.Inf(1)) }

// contentsOf works out what the well of section i holds with the drill string at TD.
func (e *evaluation) contentsOf(i int) contents { return e.contentsAt(i, e.sections[i].td) }

// contentsAt works out what it holds with the bit at a depth along hole.
func (e *evaluation) contentsAt(i int, bit float64) contents {
	h, d := &e.sections[i], &e.drills[i]
	bodies := lifted(d.bodies, h.td-bit)
	c := contents{bores: e.boreGap(i), missing: first(d.missing, e.boreGap(i))}
	c.string, c.well = bore.Inside(bodies, 0, bit), e.empty(i, c.bores)
	if c.missing.open() {
		return c
	}
	c.annuli = bore.Intervals(e.bores[i], bodies, 0, bit)
	if err := bore.Fit(c.annuli); err != nil {
		c.missing, c.misfit = gap{model.PathOf(i, "hole"), "the drill string does not fit: " + err.Error()}, true
	}
	if !h.rig {
		c.from = e.returnDepth(i)
	}
	return c
}

// volumeFigures adds volumes, strokes and minutes with the drill string at TD.
func (e *evaluation) volumeFigures(i int, p *page, c *contents) {
	h, s, d := &e.sections[i], &e.plan.Sections[i], &e.drills[i]
	if c.bores.open() {
		e.fault(c.bores)
	}
	if c.misfit {
		e.fault(c.missing)
	}
	p.group = "Volumes, bit at TD"
	e.circulated(i, p, "volume.string", "Surface to bit", c.string, s.Flow.SI, d.missing,
		"V = sum of pi/4 × ID² × L down the string")
	if h.rig {
		e.rigVolumes(i, p, c.annuli, c.missing)
	} else {
		e.circulated(i, p, "volume.seabed", "Bottoms-up, seabed", between(c.annuli, c.from, h.td), s.Flow.SI, c.missing,
			"V = sum of pi/4 × (hole² - string²) × L from TD to the seabed, or to the conductor's housing")
	}
	e.circulated(i, p, "volume.hole", "Well, no string", c.well, s.Flow.SI, c.bores,
		"V = sum of pi/4 × bore² × L, nothing in the well")
}

// between returns the intervals between two depths along hole, cut there.
func between(intervals []bore.Interval, top, bottom float64) []bore.Interval {
	part := make([]bore.Interval, 0, len(intervals))
	for _, a := range intervals {
		if a.Top, a.Bottom = max(a.Top, top), min(a.Bottom, bottom); a.Top < a.Bottom {
			part = append(part, a)
		}
	}
	return part
}

// returnDepth returns where the returns of a riserless section leave the well: at the top of pipe that stands in the
// seabed, else at the mudline.
func (e *evaluation) returnDepth(i int) float64 {
	if profile := e.bores[i]; len(profile) > 0 {
		return min(profile[0].Top, e.datum.Mudline)
	}
	return e.datum.Mudline
}

// circulated adds the volume of intervals with its strokes and the time that it takes at a flow.
func (e *evaluation) circulated(i int, p *page, key, name string, intervals []bore.Interval, flow float64, missing gap, formula string) {
	volume := bore.Volume(intervals)
	p.put(key, name, quantity.Volume, volume, missing, func(w *Working) {
		w.Formula = formula
		w.intervals(intervals)
		w.Source = "geometry; tool joints, bit, opener and surface lines left out"
	})
	e.pumped(p, key, volume, missing)
	e.timed(p, key, volume, flow, first(missing, e.flowGap(i)))
}

// flowGap says whether the flow of section i is missing.
func (e *evaluation) flowGap(i int) gap {
	return lacks(e.plan.Sections[i].Flow, i, "flow", "flow")
}

// rigVolumes adds the volumes of a section with returns to the rig; the riser has the booster's flow on top.
func (e *evaluation) rigVolumes(i int, p *page, annuli []bore.Interval, missing gap) {
	s := &e.plan.Sections[i]
	flow, booster := s.Flow.SI, s.Booster.SI
	belowBOP, inRiser := between(annuli, e.datum.BOPTop, math.Inf(1)), between(annuli, 0, e.datum.BOPTop)
	below, riser := bore.Volume(belowBOP), bore.Volume(inRiser)
	e.circulated(i, p, "volume.bottoms_up", "Bottoms-up, BOP", belowBOP, flow, missing, "V = sum of pi/4 × (bore² - string²) × L from TD to the BOP")
	timeGap := first(missing, e.flowGap(i))
	strokeGap := missing
	share := 1.0 // of what rises in the riser that comes through the bit
	if booster > 0 {
		share, strokeGap = flow/(flow+booster), timeGap
	}
	boosted := func(w *Working) {
		w.in("riser", "annulus", quantity.Volume, riser)
		w.in("flow", "through the bit", quantity.Flow, flow)
		w.in("booster", "into the riser's foot", quantity.Flow, booster)
	}
	const counted = "Strokes of the pumps on the string; the booster's count their own."
	up := p.put("volume.riser", "Riser up", quantity.Volume, riser, missing, func(w *Working) {
		w.Formula = "V = sum of pi/4 × (riser² - string²) × L from the BOP to the rotary"
		w.intervals(inRiser)
		w.Source = "geometry; tool joints left out"
	})
	if booster > 0 {
		up.Note = "time and strokes with the booster on; strokes of the string's pumps"
	}
	e.strokes(p, "volume.riser", riser*share, strokeGap, func(w *Working) {
		w.Formula = "strokes = riser × flow / (flow + booster) / output"
		boosted(w)
		w.Note = counted
	})
	p.also("volume.riser.time", "minutes", quantity.Time, riser/(flow+booster), timeGap, func(w *Working) {
		w.Formula = "time = riser / (flow + booster)"
		boosted(w)
		w.Source = "common practice"
	})
	p.put("volume.bottoms_up_rig", "Bottoms-up, rig", quantity.Volume, below+riser, missing, func(w *Working) {
		w.Formula = "V = bottoms-up to BOP + riser"
		w.in("below", "BOP", quantity.Volume, below)
		w.in("riser", "annulus", quantity.Volume, riser)
		w.Source = "geometry"
	})
	e.strokes(p, "volume.bottoms_up_rig", below+riser*share, strokeGap, func(w *Working) {
		w.Formula = "strokes = (below + riser × flow / (flow + booster)) / output"
		w.in("below", "BOP", quantity.Volume, below)
		boosted(w)
		w.Note = counted
	})
	p.also("volume.bottoms_up_rig.time", "minutes", quantity.Time, below/flow+riser/(flow+booster), timeGap, func(w *Working) {
		w.Formula = "time = below / flow + riser / (flow + booster)"
		w.in("below", "BOP", quantity.Volume, below)
		boosted(w)
		w.Source = "common practice"
	})
}

// empty returns the well of section i without a string, from the rotary or from where returns leave it.
func (e *evaluation) empty(i int, missing gap) []bore.Interval {
	if missing.open() {
		return nil
	}
	from := 0.0
	if !e.sections[i].rig {
		from = e.returnDepth(i)
	}
	return bore.Intervals(e.bores[i], nil, from, e.sections[i].td)
}
