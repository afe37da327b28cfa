package calc

import (
	"math"
	"strconv"

	"borewalk/calc/steel"
	"borewalk/model"
	"borewalk/model/quantity"
)

// hungString is a drill string with the bit at TD as it weighs in its fluids, part by part, without friction.
type hungString struct {
	missing gap
	*drillString
	fluids []layer
	inMud  []float64 // weight of each part along the hole, in its fluids, N; top down as the parts
}

// hangString weighs the string of section i part by part.
func (e *evaluation) hangString(i int, d *drillString) hungString {
	h := hungString{drillString: d, missing: first(d.missing, e.columnGap(i))}
	if h.missing.open() {
		return h
	}
	h.fluids = e.hangingFull(i, nil, e.density(i, e.sections[i].td))
	h.inMud = make([]float64, len(d.parts))
	for k := range d.parts {
		h.inMud[k] = e.weighs(&h, k, d.parts[k].top)
	}
	return h
}

// weighs returns the weight in N of part k below a depth along hole within it.
func (e *evaluation) weighs(h *hungString, k int, from float64) float64 {
	p := &h.parts[k]
	return buoyed(h.fluids, steel.Section{Top: e.path.TVD(from), Bottom: e.path.TVD(p.bottom), ID: p.pipe.ID, LinearMass: p.mass()})
}

// weightOf returns the weight of part k in its fluids, zero where it is not known.
func (h *hungString) weightOf(k int) float64 {
	if h.missing.open() {
		return 0
	}
	return h.inMud[k]
}

// from returns the weight in N of part k and all below it.
func (h *hungString) from(k int) (sum float64) {
	for _, w := range h.inMud[k:] {
		sum += w
	}
	return sum
}

// givesWeight reports whether a part's weight is counted for the bit: all but drill pipe, heavy-weight if the section says so.
func givesWeight(s *model.Section, part *stringPart) bool {
	switch part.row.Item {
	case model.ItemPipe:
		return false
	case model.ItemHeavy:
		return s.StringLoads.Counted == model.CountWithHeavy
	}
	return true
}

// forBit returns the weight in N along the hole of what gives weight to the bit.
func (e *evaluation) forBit(i int, h *hungString) (sum float64) {
	for k := range h.inMud {
		if givesWeight(&e.plan.Sections[i], &h.parts[k]) {
			sum += h.inMud[k]
		}
	}
	return sum
}

// neutral returns the depth along hole in m above which the string hangs in tension while a weight in N stands on the bit:
// what is below it weighs as much in its fluid. It returns the part too, and false where the whole string weighs less.
func (e *evaluation) neutral(h *hungString, load float64) (md float64, at int, ok bool) {
	const close = 1e-3 // m
	for k := len(h.parts) - 1; k >= 0; k-- {
		if load > h.inMud[k] {
			load -= h.inMud[k]
			continue
		}
		high, low := h.parts[k].top, h.parts[k].bottom
		for low-high > close {
			if middle := (high + low) / 2; e.weighs(h, k, middle) < load {
				low = middle
			} else {
				high = middle
			}
		}
		return (high + low) / 2, k, true
	}
	return 0, 0, false
}

// bitWeightFigures adds what the string can put on the bit, and where it turns from compression to tension.
func (e *evaluation) bitWeightFigures(i int, p *page, h *hungString) {
	s := &e.plan.Sections[i]
	p.group = "Weight on bit"
	gives, path := e.forBit(i, h), model.PathOf(i, "string_loads.bit_weight")
	share, _ := e.plan.Limit(model.Rules()[model.RuleBitWeight])
	parts := func(w *Working) {
		for k := range h.parts {
			if part := &h.parts[k]; givesWeight(s, part) && part.mass() > 0 {
				w.in("W", part.label()+" "+strconv.Itoa(part.number), quantity.Force, h.inMud[k])
			}
		}
	}
	p.put("string.bha.collars", "For the bit", quantity.Force, gives, h.missing, func(w *Working) {
		w.Formula = "weight along the hole = sum of W, W = m × fall × g × (1 - fluid / steel)" + filled(h.fluids)
		parts(w)
		w.Source = "buoyancy factor; fall is length × cos(inclination): Lapeyrouse, Formulas and Calculations, ch. 5"
		w.Note = "All but drill pipe; heavy-weight where it is counted. Without friction."
	}).Note = h.unweighed()
	p.also("string.bha.collars.allowed", "allowed", quantity.Force, gives*share.SI, h.missing, func(w *Working) {
		w.Formula = "allowed = share × weight along the hole"
		w.in("share", "of it used", quantity.Ratio, share.SI)
		w.in("W", "weight along the hole", quantity.Force, gives)
		w.Source = model.Rules()[model.RuleBitWeight].Source
	})
	if !s.StringLoads.BitWeight.IsSet() {
		return
	}
	load := s.StringLoads.BitWeight.SI
	missing := h.missing
	if !missing.open() && !(gives > 0) {
		missing = gap{model.PathOf(i, "string"), "no part of the string gives weight to the bit"}
	}
	p.also("string.bha.collars.used", "used", quantity.Ratio, load/gives, missing, func(w *Working) {
		w.Formula = "used = weight on bit / weight along the hole"
		w.in("WOB", "weight on bit", quantity.Force, load)
		w.in("W", "weight along the hole", quantity.Force, gives)
		w.Source = "common practice"
	})
	if missing.open() {
		return
	}
	e.judge(model.RuleBitWeight, i, load/gives, "Weight on bit of the weight for it", "", 0, path)
	e.neededFigures(i, p, h, load, gives, share.SI)
	e.neutralFigures(i, p, h, load)
}

// neutralFigures adds the neutral point while a weight stands on the bit, and each jar's place to it.
func (e *evaluation) neutralFigures(i int, p *page, h *hungString, load float64) {
	md, at, ok := e.neutral(h, load)
	td := e.sections[i].td
	var missing gap
	if !ok {
		missing = gap{model.PathOf(i, "string_loads.bit_weight"), "the whole string weighs less than is wanted on the bit"}
	}
	p.group = "Neutral point"
	p.put("string.bha.neutral", "Neutral point", quantity.Length, md, missing, func(w *Working) {
		w.Formula = "weight along the hole below it = weight on bit"
		w.in("WOB", "weight on bit", quantity.Force, load)
		for k := len(h.parts) - 1; k > at; k-- {
			w.in("W", "below: "+h.parts[k].label()+" "+strconv.Itoa(h.parts[k].number), quantity.Force, h.inMud[k])
		}
		w.in("W", "of "+h.parts[at].label()+" "+strconv.Itoa(h.parts[at].number)+", whole", quantity.Force, h.inMud[at])
		w.in("L", "its length", quantity.Length, h.parts[at].bottom-h.parts[at].top)
		w.Source = "neutral point by weight in mud: A. Lubinski; Bourgoyne et al., Applied Drilling Engineering, ch. 4 (from memory)"
		w.Note = "Above it the string is not pressed into bending. Without friction, which carries weight in a slant. By pressure and area the steel's force is nil elsewhere."
	})
	p.also("string.bha.neutral.up", "from bit", quantity.Length, td-md, missing, func(w *Working) {
		w.Formula = "TD - neutral point"
		w.in("TD", "bit", quantity.Length, td)
		w.in("neutral", "point", quantity.Length, md)
		w.Source = "geometry"
	})
	if !ok {
		return
	}
	p.noted("string.bha.neutral", "in "+h.parts[at].label())
	path := model.PathOf(i, "string_loads.bit_weight")
	for k := len(h.parts) - 1; k >= 0; k-- {
		if h.parts[k].row.Item == model.ItemPipe {
			e.judge(model.RuleNeutralPoint, i, md-h.parts[k].bottom, "Neutral point below the drill pipe", "in "+h.parts[at].label(), 0, path)
			break
		}
	}
	e.jarFigures(i, p, h, load, md)
}

// jarFigures adds what hangs below each jar and how the jar stands to the neutral point.
func (e *evaluation) jarFigures(i int, p *page, h *hungString, load, neutral float64) {
	p.group = "Jar"
	for k := len(h.parts) - 1; k >= 0; k-- {
		part := &h.parts[k]
		if part.row.Item != model.ItemJar {
			continue
		}
		air, mud := 0.0, 0.0
		for below := k + 1; below < len(h.parts); below++ {
			air += h.parts[below].mass() * (h.parts[below].bottom - h.parts[below].top) * gravity
			mud += h.inMud[below]
		}
		n := strconv.Itoa(part.number)
		key := "string.bha.jar." + n
		off := max(part.top-neutral, neutral-part.bottom)
		p.put(key, "Below the jar", quantity.Force, mud, gap{}, func(w *Working) {
			w.Formula = "weight along the hole of all below the jar"
			for below := k + 1; below < len(h.parts); below++ {
				w.in("W", h.parts[below].label()+" "+strconv.Itoa(h.parts[below].number), quantity.Force, h.inMud[below])
			}
			w.Source = "buoyancy factor; common practice"
			w.Note = "Without friction and without what the pump adds."
		})
		p.also(key+".air", "in air", quantity.Force, air, gap{}, func(w *Working) {
			w.Formula = "W = sum of mass per length × length × g below the jar"
			for below := k + 1; below < len(h.parts); below++ {
				w.in("m", h.parts[below].label(), quantity.LinearMass, h.parts[below].mass())
				w.in("L", "length", quantity.Length, h.parts[below].bottom-h.parts[below].top)
			}
			w.Source = "common practice"
		})
		p.also(key+".force", "drilling", quantity.Force, mud-load, gap{}, func(w *Working) {
			w.Formula = "force at the jar = weight below it - weight on bit; above zero in tension"
			w.in("W", "below the jar", quantity.Force, mud)
			w.in("WOB", "weight on bit", quantity.Force, load)
			w.Source = "common practice"
		})
		p.also(key+".off", "off neutral", quantity.Length, off, gap{}, func(w *Working) {
			w.Formula = "distance of the jar's nearer end from the neutral point; below zero the point is in the jar"
			w.in("top", "of the jar", quantity.Length, part.top)
			w.in("bottom", "of the jar", quantity.Length, part.bottom)
			w.in("neutral", "point", quantity.Length, neutral)
			w.Source = "geometry"
		})
		note := "jar in compression while drilling"
		switch {
		case off < 0:
			note = "neutral point in the jar"
		case mud > load:
			note = "jar in tension while drilling"
		}
		p.noted(key, note)
		e.judge(model.RuleJarNeutral, i, off, "Jar off the neutral point", note, 0, model.PathOf(i, "string["+n+"].item"))
	}
}

// mainCollar returns the longest part of collars, and false where there is none.
func (d *drillString) mainCollar() (k int, ok bool) {
	longest := 0.0
	for j := range d.parts {
		if part := &d.parts[j]; part.row.Item == model.ItemCollar && part.bottom-part.top > longest {
			k, ok, longest = j, true, part.bottom-part.top
		}
	}
	return k, ok
}

// neededFigures adds how long the main collars would have to be for the weight on bit.
func (e *evaluation) neededFigures(i int, p *page, h *hungString, load, gives, share float64) {
	k, ok := h.mainCollar()
	if !ok || !(share > 0) {
		return
	}
	part := &h.parts[k]
	length := part.bottom - part.top
	fluid := e.density(i, e.sections[i].td)
	inclination := e.path.At(e.sections[i].td).Inclination
	factor, known := steel.BuoyancyFactor(fluid, steel.Density)
	per, down := steel.BitWeight(part.mass()*gravity*max(factor, 0), inclination)
	var missing gap
	if !known || !down || per < 1 {
		missing = gap{model.PathOf(i, "string_loads.bit_weight"), "in so level a hole collars give no weight to the bit"}
	}
	needed := max(0, length+(load/share-gives)/per)
	if math.IsNaN(needed) || math.IsInf(needed, 0) {
		needed = 0
	}
	p.group = "Collars for that weight"
	p.put("string.bha.needed", "Collars needed", quantity.Length, needed, missing, func(w *Working) {
		w.Formula = "length = collars there + (WOB / share - W) / (m × g × (1 - fluid / steel) × cos(inclination))"
		w.in("L", "collars there", quantity.Length, length)
		w.in("WOB", "weight on bit", quantity.Force, load)
		w.in("share", "of the weight used", quantity.Ratio, share)
		w.in("W", "weight along the hole", quantity.Force, gives)
		w.in("m", "mass per length", quantity.LinearMass, part.mass())
		w.in("fluid", "mud", quantity.Density, fluid)
		w.in("steel", "density", quantity.Density, steel.Density)
		w.in("inclination", "at the bit", quantity.Angle, inclination)
		w.Source = "common practice; Lapeyrouse, Formulas and Calculations, ch. 5"
		w.Note = "Of the longest part of collars, the rest of the assembly as it is."
	}).Note = "of " + part.label() + ", part " + strconv.Itoa(part.number)
}

// hangingFigures adds what the hook carries with weight on the bit and with overpull.
func (e *evaluation) hangingFigures(i int, p *page, h *hungString) {
	loads, blocks := &e.plan.Sections[i].StringLoads, e.plan.Rig.BlockWeight.SI
	if !loads.BitWeight.IsSet() && !loads.Overpull.IsSet() {
		return
	}
	hanging := 0.0
	if !h.missing.open() {
		hanging = h.from(0)
	}
	p.group = "Hook load"
	terms := func(w *Working) {
		w.in("W", "weight in mud", quantity.Force, hanging)
		w.in("blocks", "with top drive", quantity.Force, blocks)
		w.Source = "common practice"
		w.Note = "Without friction."
	}
	if loads.BitWeight.IsSet() {
		p.put("string.bha.hook.drilling", "Drilling", quantity.Force, hanging+blocks-loads.BitWeight.SI, h.missing, func(w *Working) {
			w.Formula = "hook load = W + blocks - weight on bit"
			terms(w)
			w.in("WOB", "weight on bit", quantity.Force, loads.BitWeight.SI)
		})
	}
	if !loads.Overpull.IsSet() {
		return
	}
	load := hanging + blocks + loads.Overpull.SI
	p.put("string.bha.hook.pulled", "With overpull", quantity.Force, load, h.missing, func(w *Working) {
		w.Formula = "hook load = W + blocks + overpull"
		terms(w)
		w.in("overpull", "planned", quantity.Force, loads.Overpull.SI)
	})
	if rating := e.plan.Rig.HookLoad; !h.missing.open() && rating.IsSet() {
		e.judge(model.RuleHookLoad, i, rating.SI-load, "Rig's rating over hook load with overpull", "", 0, model.PathOf(i, "string_loads.overpull"))
	}
}
