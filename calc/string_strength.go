package calc

import (
	"strconv"

	"borewalk/calc/drillpipe"
	"borewalk/model"
	"borewalk/model/catalogue"
	"borewalk/model/quantity"
)

// classShare returns the share of the new wall that a class of pipe keeps.
func classShare(class string) float64 {
	switch class {
	case model.ClassNew:
		return drillpipe.New
	case model.Class2:
		return drillpipe.Class2
	}
	return drillpipe.Premium
}

// pipeFigures adds for each part of drill pipe what it bears at its upper end, and what that leaves.
func (e *evaluation) pipeFigures(i int, p *page, h *hungString) {
	p.group = "Strength of drill pipe"
	for k := len(h.parts) - 1; k >= 0; k-- {
		if h.parts[k].row.Item == model.ItemPipe {
			e.pipeStrength(i, p, h, k)
		}
	}
}

// pipeStrength adds the figures of one part of drill pipe.
func (e *evaluation) pipeStrength(i int, p *page, h *hungString, k int) {
	part, loads := &h.parts[k], &e.plan.Sections[i].StringLoads
	n := strconv.Itoa(part.number)
	key, row := "string.class."+n, "string["+n+"]."
	share := classShare(part.row.Class)
	worn, ok := drillpipe.Worn(part.pipe.OD, part.pipe.ID, share)
	var unknown gap
	if !ok || part.pipe.Yield == 0 {
		unknown = gap{model.PathOf(i, row+"grade"), "the pipe's grade is not known: no strength"}
	}
	rating := drillpipe.Tension(worn, part.pipe.ID, part.pipe.Yield)
	hanging := 0.0
	if !h.missing.open() {
		hanging = h.from(k)
	}
	missing := first(h.missing, unknown)
	pull := hanging + loads.Overpull.SI
	body := func(w *Working) {
		w.in("OD", "new", quantity.Diameter, part.pipe.OD)
		w.in("ID", "body", quantity.Diameter, part.pipe.ID)
		w.in("share", "of the wall left", quantity.Ratio, share)
		w.in("od", "worn", quantity.Diameter, worn)
		w.in("Y", "yield strength", quantity.Stress, part.pipe.Yield)
	}
	published, inTable := catalogue.FindDrillPipe(part.row.Size.SI, part.row.Weight.SI, part.row.Grade)
	inTable = inTable && published.Tensile > 0
	note := part.row.Class
	if !inTable {
		note += ", no API RP 7G size: by formula"
	}
	name := ", part " + n
	p.put(key+".pull", "Pull"+name, quantity.Force, pull, missing, func(w *Working) {
		w.Formula = "pull = weight in mud of the part and all below + overpull"
		w.in("W", "weight in mud", quantity.Force, hanging)
		w.in("overpull", "planned", quantity.Force, loads.Overpull.SI)
		w.Source = "buoyancy factor; API RP 7G, design tension"
		w.Note = "At the upper end of the part, without friction, shock and bending."
	}).Note = note
	p.also(key+".tension", "yields at", quantity.Force, rating, unknown, func(w *Working) {
		w.Formula = "tension = pi/4 × (od² - ID²) × Y, od = ID + share × (OD - ID)"
		body(w)
		if inTable && share == drillpipe.New {
			w.in("table", "published, new", quantity.Force, published.Tensile)
		}
		if inTable && share == drillpipe.Premium && published.TensilePremium > 0 {
			w.in("table", "published, premium", quantity.Force, published.TensilePremium)
		}
		w.Source = "API RP 7G, wall worn evenly outside"
		w.Note = "Body only; the tool joint may be weaker. Inspection decides the class."
	})
	p.also(key+".share", "used", quantity.Ratio, pull/rating, missing, func(w *Working) {
		w.Formula = "used = pull / tension"
		w.in("pull", "at the upper end", quantity.Force, pull)
		w.in("tension", "of the class", quantity.Force, rating)
		w.Source = "API RP 7G, design tension"
	})
	tension, _ := e.plan.Limit(model.Rules()[model.RulePipeTension])
	left := tension.SI*rating - hanging
	p.put(key+".overpull", "Overpull"+name, quantity.Force, left, missing, func(w *Working) {
		w.Formula = "overpull left = limit × tension - weight in mud"
		w.in("limit", "of the class's yield", quantity.Ratio, tension.SI)
		w.in("tension", "of the class", quantity.Force, rating)
		w.in("W", "weight in mud of the part and all below", quantity.Force, hanging)
		w.Source = "API RP 7G, margin of overpull"
		w.Note = "Without friction; jars and the rest of the string may allow less."
	})
	if !missing.open() {
		grade := model.PathOf(i, row+"size")
		e.judge(model.RulePipeTension, i, pull/rating, "Pull on drill pipe, part "+n, part.row.Class, 0, grade)
		e.judge(model.RuleOverpull, i, left, "Overpull left on drill pipe, part "+n, part.row.Class, 0, grade)
	}
	e.pipeTorsion(i, p, part, worn, pull, missing, unknown, body)
}

// pipeTorsion adds the torsion that one part of drill pipe withstands, by itself and under its pull.
func (e *evaluation) pipeTorsion(i int, p *page, part *stringPart, worn, pull float64, missing, unknown gap, body func(*Working)) {
	n := strconv.Itoa(part.number)
	key, torque := "string.class."+n+".torsion", e.plan.Sections[i].StringLoads.Torque
	under := drillpipe.TorsionUnder(pull, worn, part.pipe.ID, part.pipe.Yield)
	p.put(key, "Torsion, part "+n, quantity.Torque, drillpipe.Torsion(worn, part.pipe.ID, part.pipe.Yield), unknown, func(w *Working) {
		w.Formula = "torsion = 0.577 × Y × 2 × J / od, J = pi/32 × (od⁴ - ID⁴)"
		body(w)
		w.Source = "API RP 7G, appendix A"
		w.Note = "Body only; tool joints mostly yield first: their make-up torque is the maker's or API RP 7G's."
	})
	p.also(key+".under", "under pull", quantity.Torque, under, missing, func(w *Working) {
		w.Formula = "torsion × sqrt(1 - (pull / tension)²)"
		body(w)
		w.in("pull", "at the upper end", quantity.Force, pull)
		w.in("tension", "of the class", quantity.Force, drillpipe.Tension(worn, part.pipe.ID, part.pipe.Yield))
		w.Source = "API RP 7G, appendix A, torsion under tension"
	})
	if !torque.IsSet() {
		return
	}
	overpulled := missing
	if !overpulled.open() && under <= 0 {
		overpulled = gap{model.PathOf(i, "string_loads.overpull"), "the pull alone makes the pipe yield"}
	}
	p.also(key+".used", "used", quantity.Ratio, torque.SI/under, overpulled, func(w *Working) {
		w.Formula = "used = torque / torsion under pull"
		w.in("torque", "at the rotary", quantity.Torque, torque.SI)
		w.in("torsion", "under pull", quantity.Torque, under)
		w.Source = "API RP 7G, appendix A"
		w.Note = "The torque at the rotary is the greatest of the string."
	})
	stress, ok := drillpipe.Equivalent(pull, torque.SI, worn, part.pipe.ID)
	if part.pipe.Yield > 0 && ok && !missing.open() {
		p.also(key+".mises", "stress", quantity.Stress, stress, gap{}, func(w *Working) {
			w.Formula = "von Mises = sqrt(sigma² + 3 × tau²), sigma = pull / A, tau = torque × od / (2 × J)"
			body(w)
			w.in("pull", "at the upper end", quantity.Force, pull)
			w.in("torque", "at the rotary", quantity.Torque, torque.SI)
			w.Source = "distortion energy, beam theory"
			w.Note = "At the outside of the body; without pressure and bending."
		})
	}
	if !overpulled.open() {
		e.judge(model.RulePipeTorsion, i, torque.SI/under, "Torque of what the pull leaves, part "+n, part.row.Class, 0, model.PathOf(i, "string_loads.torque"))
	}
}
