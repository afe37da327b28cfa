package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/steel"
	"borewalk/model"
	"borewalk/model/quantity"
)

// casingPage adds the string that a section is finished with: where it stands, its weight, volumes and clearances.
func (e *evaluation) casingPage(i int) {
	c := &e.strings[i]
	if !c.present {
		return
	}
	p := e.page(i, model.TopicCasing)
	e.stringDepths(i, p, c)
	e.casingWeights(i, p, c)
	e.casingVolumes(i, p, c)
	e.casingLadder(i, p, c)
	e.tallyPage(i, p)
	e.hangerPage(i, p)
	e.landingPage(i, p)
	e.casingParts(p, c)
	e.casingStrength(i, p, c)
	e.surgeFigures(i, p, c)
	e.centralisers(i, p, c)
}

func (e *evaluation) stringDepths(i int, p *page, c *casing) {
	s := &e.plan.Sections[i]
	p.group = "String"
	e.depth(p, "casing.top", "Top", c.top, c.missing, func(w *Working) {
		switch {
		case c.liner || s.Hung == model.OnHangerDeep:
			w.Formula = "top as given"
		case s.Hung == model.InWellhead:
			w.Formula = "top = wellhead datum + landing shoulder below it"
			w.in("datum", "wellhead", quantity.Length, e.datum.Wellhead)
			w.in("shoulder", "below datum", quantity.Length, s.ShoulderBelowDatum.SI)
		default:
			w.Formula = "top = top of the housing that the string carries"
		}
		w.Source = "geometry"
	})
	e.shoeDepth(i, p, "casing.shoe")
	p.put("casing.length", "Length", quantity.Length, c.shoe-c.top, c.missing, func(w *Working) {
		w.Formula = "length = shoe - top"
		w.in("shoe", "along hole", quantity.Length, c.shoe)
		w.in("top", "along hole", quantity.Length, c.top)
		w.Source = "geometry"
	})
	track := s.ShoeTrack.SI
	if track > 0 {
		p.put("casing.collar", "Float collar", quantity.Length, c.shoe-track, c.noShoe, func(w *Working) {
			w.Formula = "collar = shoe - shoe track"
			w.in("shoe", "along hole", quantity.Length, c.shoe)
			w.in("track", "shoe to float collar", quantity.Length, track)
			w.Source = "geometry"
		})
		if !c.noShoe.open() {
			e.judge(model.RuleShoeTrack, i, track, "Shoe track", "", c.shoe, model.PathOf(i, "shoe_track"))
		}
	}
	if c.liner {
		e.lapFigure(i, p, c)
	}
}

// lapFigure adds the overlap of a liner with the string above, and judges it.
func (e *evaluation) lapFigure(i int, p *page, c *casing) {
	shoe, host, ok := e.lastShoe(i)
	missing := first(c.missing, e.shoeGap(i))
	if !ok {
		missing = first(missing, gap{model.PathOf(i, "completion"), "a liner needs a string above to hang in"})
	}
	lap := shoe - c.top
	p.put("casing.lap", "Liner lap", quantity.Length, lap, missing, func(w *Working) {
		w.Formula = "lap = last shoe - liner top"
		w.in("shoe", "section "+strconv.Itoa(host+1), quantity.Length, shoe)
		w.in("top", "liner", quantity.Length, c.top)
		w.Source = "geometry, along hole"
	})
	if missing.open() {
		e.fault(missing)
		return
	}
	top := model.PathOf(i, "top")
	e.judge(model.RuleDepthOrder, i, lap, "Liner top above the last shoe", "", c.top, top)
	e.judge(model.RuleLapLeast, i, lap, "Liner lap", "", c.top, top)
	e.judge(model.RuleLapMost, i, lap, "Liner lap", "", c.top, top)
	switch e.plan.Sections[i].Purpose {
	case model.Conductor, model.Surface:
		e.judge(model.RuleUSLapShallow, i, lap, "Liner lap", "", c.top, top)
	default:
		e.judge(model.RuleUSLap, i, lap, "Liner lap", "", c.top, top)
	}
}

func (e *evaluation) casingWeights(i int, p *page, c *casing) {
	p.group = "Weight"
	missing := first(c.missing, e.columnGap(i))
	var air float64
	var hung []layer
	lengths := make([]steel.Section, 0, len(c.parts))
	for k := range c.parts {
		part := &c.parts[k]
		air += part.pipe.LinearMass * (part.bottom - part.top) * gravity
		lengths = append(lengths, e.length(part.top, part.bottom, part.pipe, part.pipe.LinearMass))
	}
	if !missing.open() {
		hung = e.hanging(i, lengths, e.leftInHole(i))
	}
	p.put("casing.weight.air", "Weight in air", quantity.Force, air, c.missing, func(w *Working) {
		w.Formula = "W = sum of mass per length × length × g"
		for k := range c.parts {
			part := &c.parts[k]
			w.in("m", "mass per length", quantity.LinearMass, part.pipe.LinearMass)
			w.in("L", "length", quantity.Length, part.bottom-part.top)
		}
		w.Source = "common practice; nominal weight includes threads and couplings (API 5CT)"
	})
	p.put("casing.weight.buoyed", "Landed in mud", quantity.Force, weight(hung), missing, func(w *Working) {
		w.layers(hung)
		w.Note = "The string alone, full of the hole's fluid: no landing string, no friction, no empty pipe above a float."
	}).Note = e.slanted(i, "")
	if rating := e.plan.Rig.HookLoad; !missing.open() && rating.IsSet() {
		load := weight(hung) + e.plan.Rig.BlockWeight.SI
		e.judge(model.RuleHookLoad, i, rating.SI-load, "Rig's rating over the landed string and blocks, landing string left out", "", 0, model.PathOf(i, "casing[1].weight"))
	}
}

func (e *evaluation) casingVolumes(i int, p *page, c *casing) {
	p.group = "Volumes, string on depth"
	s := &e.plan.Sections[i]
	var inside, collar []bore.Interval
	var metal float64
	if !c.missing.open() {
		bodies := e.casingBodies(c)
		inside = bore.Inside(bodies, c.top, c.shoe)
		collar = bore.Inside(bodies, c.top, c.shoe-s.ShoeTrack.SI)
		for k := range c.parts {
			metal += steel.Displacement(c.parts[k].pipe.LinearMass) * (c.parts[k].bottom - c.parts[k].top)
		}
	}
	sum := func(key, name string, intervals []bore.Interval, missing gap, formula string) {
		volume := bore.Volume(intervals)
		p.put(key, name, quantity.Volume, volume, missing, func(w *Working) {
			w.Formula = formula
			w.intervals(intervals)
			w.Source = "geometry; couplings and eccentricity ignored"
		})
		e.pumped(p, key, volume, missing)
	}
	sum("casing.volume.inside", "Inside to shoe", inside, c.missing, "V = sum of pi/4 × ID² × L")
	if s.ShoeTrack.SI > 0 {
		sum("casing.volume.collar", "To float collar", collar, c.missing, "V = sum of pi/4 × ID² × L from the hanger to the float collar; the landing string comes on top")
	}
	annuli, missing := e.casingAnnuli(i, c)
	if s.Method == model.Cemented {
		var open, cased []bore.Interval
		for _, a := range annuli {
			if a.OuterLabel == openHoleLabel {
				open = append(open, a)
			} else {
				cased = append(cased, a)
			}
		}
		sum("casing.volume.annulus.open", "Annulus, open hole", open, missing, "V = sum of pi/4 × (hole² - OD²) × L, washed out")
		if _, _, above := e.lastShoe(i); above {
			sum("casing.volume.annulus.cased", "Annulus, cased", cased, missing, "V = sum of pi/4 × (bore² - OD²) × L")
		}
	}
	e.casingDisplacement(p, c, metal, bore.Volume(inside))
	p.group = "Annulus of the string"
	n := 0
	for _, a := range annuli {
		if !missing.open() && a.Volume() > 0 {
			n++
			e.intervalFigures(p, "casing.annulus."+strconv.Itoa(n), a)
		}
	}
}

// casingDisplacement adds what the string displaces as it goes in, open and closed.
func (e *evaluation) casingDisplacement(p *page, c *casing, metal, inside float64) {
	p.put("casing.displacement.open", "Displaced, open", quantity.Volume, metal, c.missing, func(w *Working) {
		w.Formula = "V = sum of mass per length × L / density of steel"
		for k := range c.parts {
			w.in("m", "mass per length", quantity.LinearMass, c.parts[k].pipe.LinearMass)
			w.in("L", "length", quantity.Length, c.parts[k].bottom-c.parts[k].top)
		}
		w.in("rho", "steel", quantity.Density, steel.Density)
		w.Source = "common practice"
	})
	e.pumped(p, "casing.displacement.open", metal, c.missing)
	p.put("casing.displacement.closed", "Displaced, closed", quantity.Volume, metal+inside, c.missing, func(w *Working) {
		w.Formula = "V = open-end displacement + inside volume"
		w.in("open", "displacement", quantity.Volume, metal)
		w.in("inside", "to the shoe", quantity.Volume, inside)
		w.Source = "common practice"
	})
	e.pumped(p, "casing.displacement.closed", metal+inside, c.missing)
}

// casingAnnuli returns the annulus round the string of section i, interval by interval; there is none round a string that
// is jetted or driven.
func (e *evaluation) casingAnnuli(i int, c *casing) ([]bore.Interval, gap) {
	missing := first(c.missing, e.boreGap(i))
	if missing.open() || e.plan.Sections[i].Method != model.Cemented {
		return nil, missing
	}
	annuli := bore.Intervals(e.bores[i], e.casingBodies(c), max(c.top, e.bores[i][0].Top), c.shoe)
	if err := bore.Fit(annuli); err != nil {
		missing = gap{model.PathOf(i, "hole"), "the string does not fit: " + err.Error()}
		e.fault(missing)
	}
	return annuli, missing
}

func (e *evaluation) casingBodies(c *casing) []bore.Body {
	bodies := make([]bore.Body, len(c.parts))
	for k := range c.parts {
		part := &c.parts[k]
		bodies[k] = bore.Body{Top: part.top, Bottom: part.bottom, OD: part.pipe.OD, ID: part.pipe.ID, Label: "casing"}
	}
	return bodies
}

// casingLadder compares the parts of the string with the bores that they enter and with the hole.
func (e *evaluation) casingLadder(i int, p *page, c *casing) {
	if e.plan.Sections[i].Method != model.Cemented {
		return
	}
	p.group = "Passes the bores above"
	for k := range c.parts {
		if part := &c.parts[k]; part.pipe.Bare {
			e.note(i, Caution, gap{partPath(i, part, "connector_od"), "connector OD is not known: the casing's own OD is compared"})
		}
		if part := &c.parts[k]; part.pipe.NoSpecial {
			e.note(i, Caution, gap{partPath(i, part, "drift_class"), "no special drift is known for this pipe: the API drift counts"})
		}
	}
	bores := e.passages(i, c.shoe)
	missing := first(c.missing, e.boreGap(i))
	tight := c.tightest(bores)
	if left, at, ok := e.clearance(p, "casing.passes.connector", "Connector", tight.pipe.Widest, bores, tight.bottom, missing); ok && !missing.open() {
		e.judge(model.RuleConnectorPasses, i, left, "Connector through the bores above", at.name, 0, partPath(i, &tight, "connector_od"))
	}
	e.holeClearances(i, p, c)
}

// holeClearances compares the parts that stand in the open hole with its full size: a wider part above the last shoe stands
// inside the string before.
func (e *evaluation) holeClearances(i int, p *page, c *casing) {
	from, _, _ := e.lastShoe(i)
	h, widest, body := &e.sections[i], c.widestBelow(from), c.largestBelow(from)
	inHole := h.size - widest.pipe.Widest
	figure := p.put("casing.clearance.connector", "Hole - connector", quantity.Diameter, inHole, c.missing, func(w *Working) {
		w.Formula = "clearance = hole - connector OD, largest that stands in the open hole"
		w.in("hole", "full size, gauge", quantity.Diameter, h.size)
		w.in("connector", "OD", quantity.Diameter, widest.pipe.Widest)
		w.Source = "geometry"
	})
	if widest.pipe.Bare {
		figure.Note = "casing OD, connector not known"
	}
	p.put("casing.clearance.body", "Hole - casing OD", quantity.Diameter, h.size-body, c.missing, func(w *Working) {
		w.Formula = "clearance = hole - casing OD, largest that stands in the open hole"
		w.in("hole", "full size, gauge", quantity.Diameter, h.size)
		w.in("casing", "OD", quantity.Diameter, body)
		w.Source = "geometry"
	})
	if c.missing.open() {
		return
	}
	e.judge(model.RuleHoleTakesString, i, inHole, "Hole over connector OD", "", 0, partPath(i, &widest, "connector_od"))
	e.judge(model.RuleHoleClearance, i, h.size-body, "Hole over casing OD", "", 0, model.PathOf(i, "hole"))
}

// partPath returns the path of an entry of a casing part.
func partPath(i int, part *casingPart, key string) model.Path {
	return model.PathOf(i, "casing["+strconv.Itoa(part.row+1)+"]."+key)
}

// tightest returns the part of the string whose connector has the least room in the bores that it enters; the widest when
// there are none.
func (c *casing) tightest(bores []passage) casingPart {
	tight, room := c.widestBelow(0), math.Inf(1)
	for _, part := range c.parts {
		if bore, ok := least(bores, part.bottom); ok && bore.diameter-part.pipe.Widest < room {
			tight, room = part, bore.diameter-part.pipe.Widest
		}
	}
	return tight
}

// widestBelow returns the part with the largest connector of those that reach below a depth.
func (c *casing) widestBelow(md float64) (part casingPart) {
	for _, p := range c.parts {
		if p.bottom > md && p.pipe.Widest > part.pipe.Widest {
			part = p
		}
	}
	return part
}

// largestBelow returns the largest casing OD of the parts that reach below a depth.
func (c *casing) largestBelow(md float64) (od float64) {
	for k := range c.parts {
		if c.parts[k].bottom > md {
			od = max(od, c.parts[k].pipe.OD)
		}
	}
	return od
}

// casingParts lists the lengths of the string from the shoe up.
func (e *evaluation) casingParts(p *page, c *casing) {
	p.group = "Parts, shoe up"
	for k := len(c.parts) - 1; k >= 0; k-- {
		part := &c.parts[k]
		n := strconv.Itoa(part.row + 1)
		figure := func(suffix, column string, kind quantity.Kind, value float64, note string) {
			why := func(w *Working) {
				w.Formula = note
				w.Source = source(part.pipe.Source)
			}
			if column == "" {
				p.put("casing.part."+n+"."+suffix, "Part "+n, kind, value, gap{}, why)
				return
			}
			p.also("casing.part."+n+"."+suffix, column, kind, value, gap{}, why)
		}
		figure("length", "", quantity.Length, part.bottom-part.top, "length as given; the highest part reaches to the top")
		figure("id", "ID", quantity.Diameter, part.pipe.ID, "inside diameter")
		figure("drift", "drift", quantity.Diameter, part.pipe.Drift, "guaranteed bore: special drift where it is ordered and known, else the API's")
		figure("connector", "connector", quantity.Diameter, part.pipe.Widest, "outside diameter of the connector")
		figure("capacity", "capacity", quantity.Capacity, bore.Area(part.pipe.ID), "capacity = pi/4 × ID²")
	}
}
