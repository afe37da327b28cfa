package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/mixing"
	"borewalk/model"
	"borewalk/model/quantity"
)

// pitBudget is what mud a section with a riser has, takes and is to have, in m3.
type pitBudget struct {
	missing gap // for the well's volumes; the others come on top of it
	start   float64
	lines   float64 // choke, kill and booster line
	riser   float64 // without a string
	fill    float64 // riser, well and lines where the mud is changed
	hole    float64 // new hole, washed out

	lossGap          gap
	losses, cuttings float64
	thinned          bool
	thin             mixing.Thinning

	surface, reserve float64
	build, td        float64
	steel, slurry    float64
	behind, end      float64
	cementGap        gap
	capacity         float64
	capacityGap      gap
}

// takes returns what the section uses up and is to have at its end: all but what it starts with.
func (b *pitBudget) takes() float64 {
	return b.fill + b.hole + b.losses + b.cuttings + b.thin.Surplus + b.surface + b.reserve
}

// most returns the most mud at the surface: as the section begins, at TD, and when pipe and cement have brought mud back.
func (b *pitBudget) most() float64 { return max(b.start, b.td, b.end) }

// surfaceMud returns the mud in the active pits of section i.
func (e *evaluation) surfaceMud(i int) (float64, gap) {
	if v := e.plan.Sections[i].Volumes.Surface; v.IsSet() {
		return v.SI, gap{}
	}
	return e.plan.Rig.ActivePits.SI, needs(e.plan.Rig.ActivePits, "rig.active_pits", "volume of the active pits")
}

// lineVolume returns what choke, kill and booster line hold; one without a diameter counts as none.
func (e *evaluation) lineVolume() (sum float64) {
	rig := &e.plan.Rig
	for _, line := range [...]struct{ id, length quantity.Value }{{rig.ChokeID, rig.ChokeLength}, {rig.KillID, rig.KillLength}, {rig.BoosterID, rig.BoosterLength}} {
		length := line.length.SI
		if !line.length.IsSet() {
			length = e.datum.BOPTop
		}
		sum += bore.Area(line.id.SI) * length
	}
	return sum
}

// changesMud reports whether riser, well and lines are filled anew when section i begins: the first one with a riser, and
// where the plan says so.
func (e *evaluation) changesMud(i int) bool {
	return i == 0 || !e.sections[i-1].rig || e.plan.Sections[i].Volumes.InWell == model.NewMud
}

// readPits works out the budget of section i.
func (e *evaluation) readPits(i int, holds *contents) pitBudget {
	h, v := &e.sections[i], &e.plan.Sections[i].Volumes
	b := pitBudget{missing: first(holds.bores, e.gaps.bop), start: v.Start.SI}
	if b.missing.open() {
		return b
	}
	b.surface, b.missing = e.surfaceMud(i)
	b.lines = e.lineVolume()
	b.riser = bore.Between(holds.well, 0, e.datum.BOPTop)
	if e.changesMud(i) {
		b.fill = bore.Between(holds.well, 0, h.start) + b.lines
	}
	b.hole = bore.Between(holds.well, h.start, h.td)
	b.reserve = usual(v.Reserve, b.hole)
	e.readLosses(i, &b)
	b.build = max(0, b.takes()-b.start)
	b.td = b.surface + b.reserve + max(0, b.start-b.takes())
	e.readEnd(i, &b)
	rig := &e.plan.Rig
	b.capacity = rig.ActivePits.SI + rig.ReservePits.SI
	b.capacityGap = first(needs(rig.ActivePits, "rig.active_pits", "volume of the active pits"), needs(rig.ReservePits, "rig.reserve_pits", "volume of the reserve pits"))
	return b
}

// readLosses works out what is lost, and the fresh mud that keeps the solids down.
func (e *evaluation) readLosses(i int, b *pitBudget) {
	h, s := &e.sections[i], &e.plan.Sections[i]
	v := &s.Volumes
	b.losses = v.LossPerMetre.SI * (h.td - h.start)
	if v.LossRate.SI > 0 {
		if b.lossGap = lacks(s.ROP, i, "rop", "rate of penetration"); !b.lossGap.open() {
			b.losses += v.LossRate.SI * (h.td - h.start) / s.ROP.SI
		}
	}
	if b.thinned = v.Removal.IsSet(); b.thinned {
		b.cuttings = b.hole * v.Removal.SI * v.OnCuttings.SI
		b.thin = mixing.Thin(b.hole, v.Removal.SI, usual(v.Solids, usualSolids), b.losses+b.cuttings)
	}
}

// usualSolids is the share of drilled solids that a mud is kept at where the plan does not say: common practice, from memory.
const usualSolids = 0.05

// readEnd works out what pipe and cement bring back, and what stays behind the pipe.
func (e *evaluation) readEnd(i int, b *pitBudget) {
	b.end = b.td
	c := &e.strings[i]
	if !c.present {
		return
	}
	if b.cementGap = c.missing; b.cementGap.open() {
		return
	}
	for k := range c.parts {
		part := &c.parts[k]
		b.steel += (bore.Area(part.pipe.OD) - bore.Area(part.pipe.ID)) * (part.bottom - part.top)
	}
	if e.cemented(i) {
		job := e.cementOf(i)
		if b.cementGap = job.missing; b.cementGap.open() {
			return
		}
		for k := range job.slurries {
			b.slurry += job.slurries[k].volume()
		}
		if len(job.slurries) > 0 {
			b.behind = bore.Between(job.planned, c.top, job.slurries[0].top)
		}
	}
	b.behind = usual(e.plan.Sections[i].Volumes.Behind, b.behind)
	b.end += b.steel + b.slurry
}

// batch is mud to be made.
type batch struct {
	mixing.Fluid
	missing gap
}

// pitFigures adds the budget of a section with a riser, line by line, judges it, and returns the mud that is to be built.
func (e *evaluation) pitFigures(i int, p *page, holds *contents) batch {
	if !e.sections[i].rig {
		return batch{}
	}
	b := e.readPits(i, holds)
	v := &e.plan.Sections[i].Volumes
	lost := first(b.missing, b.lossGap)
	p.group = "Pit budget"
	add := func(key, name string, value float64, missing gap, formula, source string, fill func(*Working)) *Figure {
		return p.put("mud.pits."+key, name, quantity.Volume, value, missing, func(w *Working) {
			w.Formula, w.Source = formula, source
			if fill != nil {
				fill(w)
			}
		})
	}
	add("start", "In pits at start", b.start, gap{}, "as given; blank is none", "as entered", nil)
	e.fillFigures(i, p, &b, holds)
	e.lossFigures(i, p, &b)
	add("surface", "In active pits", b.surface, b.missing, "as given; else the rig's active pits full", "as entered", nil)
	add("reserve", "Reserve", b.reserve, b.missing, "as given; else as much as the new hole holds", "as entered, or one new hole by common practice, from memory", nil)
	takes := func(w *Working) {
		w.in("start", "in pits", quantity.Volume, b.start)
		w.in("fill", "riser, well and lines", quantity.Volume, b.fill)
		w.in("hole", "new hole, washed out", quantity.Volume, b.hole)
		w.in("losses", "downhole", quantity.Volume, b.losses)
		w.in("cuttings", "mud on them", quantity.Volume, b.cuttings)
		w.in("surplus", "of dilution", quantity.Volume, b.thin.Surplus)
		w.in("active", "pits while drilling", quantity.Volume, b.surface)
		w.in("reserve", "to have at TD", quantity.Volume, b.reserve)
	}
	add("build", "To build", b.build, lost, "build = fill + hole + losses + cuttings + surplus + active + reserve - start, not below 0", "volume balance", takes)
	add("td", "In pits at TD", b.td, lost, "pits = active + reserve, and what the start has over", "volume balance", takes).Note = "string out, hole full"
	if e.strings[i].present {
		add("behind", "Left behind pipe", b.behind, first(b.missing, b.cementGap), behindFormula(v), "geometry",
			func(w *Working) { w.Note = "Mud below the cement, such as in the rathole, is left out." })
	}
	ended := first(lost, b.cementGap)
	add("end", "In pits at the end", b.end, ended, "pits = pits at TD + steel of the string + slurry", "volume balance", func(w *Working) {
		w.in("TD", "in pits", quantity.Volume, b.td)
		w.in("steel", "of casing or liner", quantity.Volume, b.steel)
		w.in("slurry", "pumped", quantity.Volume, b.slurry)
		w.Note = "Spacers, what they spoil, and the cleaning of pits are left out."
	})
	left := first(ended, b.capacityGap)
	add("left", "Pits left over", b.capacity-b.most(), left, "left = active + reserve pits - the most of start, TD and end", "volume balance", func(w *Working) {
		w.in("pits", "active and reserve", quantity.Volume, b.capacity)
		w.in("start", "in pits", quantity.Volume, b.start)
		w.in("TD", "in pits", quantity.Volume, b.td)
		w.in("end", "in pits", quantity.Volume, b.end)
		w.Note = "Dead volume below the suctions is not counted."
	})
	e.judgePits(i, &b, holds, lost, left)
	return e.pitBatch(i, &b)
}

// pitBatch returns the mud that a section with a riser has to build by its budget.
func (e *evaluation) pitBatch(i int, b *pitBudget) batch {
	density := e.plan.Sections[i].Density
	return batch{mixing.Fluid{Volume: b.build, Density: density.SI}, first(b.missing, b.lossGap, lacks(density, i, "density", "mud density"))}
}

// behindFormula says how the mud left behind pipe was got.
func behindFormula(v *model.Volumes) string {
	if v.Behind.IsSet() {
		return "as given"
	}
	return "V = annulus from the hanger down to the planned top of cement"
}

// fillFigures adds what the well takes: riser, well and lines where they are filled anew, and the new hole.
func (e *evaluation) fillFigures(i int, p *page, b *pitBudget, holds *contents) {
	h := &e.sections[i]
	name := "Fills well, lines"
	if !e.changesMud(i) {
		name = "Well stays full"
	}
	p.put("mud.pits.fill", name, quantity.Volume, b.fill, b.missing, func(w *Working) {
		w.Formula, w.Source = "fill = riser and well down to the section's start, no string, + lines", "geometry"
		if !e.changesMud(i) {
			w.Formula = "fill = 0: the mud in the well stays"
			return
		}
		w.intervals(between(holds.well, 0, h.start))
		w.in("lines", "choke, kill, booster", quantity.Volume, b.lines)
	})
	p.also("mud.pits.fill.riser", "riser alone", quantity.Volume, b.riser, b.missing, func(w *Working) {
		w.Formula, w.Source = "riser = pi/4 × ID² × L, no string", "geometry"
		w.intervals(between(holds.well, 0, e.datum.BOPTop))
	})
	p.put("mud.pits.hole", "New hole", quantity.Volume, b.hole, b.missing, func(w *Working) {
		w.Formula, w.Source = "V = sum of pi/4 × D² × L from the section's start to TD, washed out, no string", "geometry"
		w.intervals(between(holds.well, h.start, h.td))
	})
	p.also("mud.pits.hole.grows", "by length", quantity.Capacity, b.hole/(h.td-h.start), b.missing, func(w *Working) {
		w.Formula, w.Source = "by length = new hole / its length", "geometry"
		w.in("V", "new hole", quantity.Volume, b.hole)
		w.in("L", "its length", quantity.Length, h.td-h.start)
	})
}

// lossFigures adds what is lost downhole and on the cuttings, and the surplus of dilution.
func (e *evaluation) lossFigures(i int, p *page, b *pitBudget) {
	h, s := &e.sections[i], &e.plan.Sections[i]
	v := &s.Volumes
	p.put("mud.pits.losses", "Lost downhole", quantity.Volume, b.losses, first(b.missing, b.lossGap), func(w *Working) {
		w.Formula, w.Source = "losses = L × (by length + hourly / ROP)", "as entered"
		w.in("L", "new hole", quantity.Length, h.td-h.start)
		w.in("by length", "losses", quantity.Capacity, v.LossPerMetre.SI)
		w.in("hourly", "losses", quantity.Flow, v.LossRate.SI)
		w.in("ROP", "mean", quantity.ROP, s.ROP.SI)
		w.Note = "While drilling only."
	})
	if !b.thinned {
		return
	}
	missing := first(b.missing, b.lossGap)
	p.put("mud.pits.cuttings", "Lost on cuttings", quantity.Volume, b.cuttings, b.missing, func(w *Working) {
		w.Formula, w.Source = "V = new hole × removed × mud on each volume of cuttings", "common practice"
		w.in("hole", "new, washed out", quantity.Volume, b.hole)
		w.in("removed", "solids", quantity.Ratio, v.Removal.SI)
		w.in("on cuttings", "of their volume", quantity.Ratio, v.OnCuttings.SI)
	})
	thin := func(w *Working) {
		w.Source = "dilution factor of API RP 13C, from memory"
		w.in("hole", "new, washed out", quantity.Volume, b.hole)
		w.in("removed", "solids", quantity.Ratio, v.Removal.SI)
		w.in("share", "solids allowed", quantity.Ratio, usual(v.Solids, usualSolids))
		w.in("kept", "solids that stay", quantity.Volume, b.thin.Kept)
		w.in("lost", "downhole and on cuttings", quantity.Volume, b.losses+b.cuttings)
		w.Note = "The new hole's volume counts as solid; what of it disperses or sheds water is left out."
	}
	p.put("mud.pits.dilution", "Dilution", quantity.Volume, b.thin.Built, missing, func(w *Working) {
		w.Formula = "fresh mud = kept × (1 - share) / share, kept = hole × (1 - removed)"
		thin(w)
	})
	p.also("mud.pits.dilution.surplus", "over the need", quantity.Volume, b.thin.Surplus, missing, func(w *Working) {
		w.Formula = "surplus = fresh mud - (hole + lost - kept), not below 0: it is dumped or sent off"
		thin(w)
		w.in("fresh", "mud", quantity.Volume, b.thin.Built)
	})
}

// judgePits compares a budget with the rig's pits and with the usual stocks.
func (e *evaluation) judgePits(i int, b *pitBudget, holds *contents, lost, left gap) {
	if !left.open() {
		e.judge(model.RulePitsHold, i, b.capacity-b.most(), "Pits left over the most mud at the surface", "", 0, model.PathOf(i, "volumes.reserve"))
	}
	if lost.open() {
		return
	}
	reserve := model.PathOf(i, "volumes.reserve")
	e.judge(model.RuleSurfaceMud, i, b.td, "Mud at surface at TD", "", 0, reserve)
	e.judge(model.RuleSurfaceMudShare, i, b.td/bore.Volume(holds.well), "Mud at surface at TD, of the well's volume", "", 0, reserve)
	e.judge(model.RuleReserveMud, i, b.reserve, "Reserve mud", "", 0, reserve)
}
