package calc

import (
	"cmp"
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

// class returns the class of a part of drill pipe by its wear.
func (p *stringPart) class() string { return cmp.Or(p.row.Class, model.ClassPremium) }

// pipeFigures adds for each part of drill pipe what it bears at its upper end, and what that leaves.
func (e *evaluation) pipeFigures(i int, p *page, h *hungString) {
	for k := len(h.parts) - 1; k >= 0; k-- {
		if h.parts[k].row.Item == model.ItemPipe {
			e.pipePull(i, p, h, k)
		}
	}
	for k := len(h.parts) - 1; k >= 0; k-- {
		if h.parts[k].row.Item == model.ItemPipe {
			e.pipeTorsion(i, p, h, k)
		}
	}
}

// ratedPipe is a part of drill pipe in its class, with the pull at its upper end.
type ratedPipe struct {
	*stringPart
	number           string
	share, worn      float64 // of the wall left, and the outside diameter that leaves, m
	hanging, pull    float64 // N
	missing, unknown gap     // for the pull, and for the strength
}

// rate returns part k, which is drill pipe, as its class and its load have it.
func (e *evaluation) rate(i int, h *hungString, k int) ratedPipe {
	r := ratedPipe{stringPart: &h.parts[k], number: strconv.Itoa(h.parts[k].number), share: classShare(h.parts[k].row.Class)}
	var ok bool
	if r.worn, ok = drillpipe.Worn(r.pipe.OD, r.pipe.ID, r.share); !ok || r.pipe.Yield == 0 {
		r.unknown = gap{model.PathOf(i, "string["+r.number+"].grade"), "the pipe's grade is not known: no strength"}
	}
	if !h.missing.open() {
		r.hanging = h.from(k)
	}
	r.pull = r.hanging + e.plan.Sections[i].StringLoads.Overpull.SI
	r.missing = first(h.missing, r.unknown)
	return r
}

// tension returns the pull in N at which the part's body yields.
func (r *ratedPipe) tension() float64 { return drillpipe.Tension(r.worn, r.pipe.ID, r.pipe.Yield) }

// body puts the part's dimensions into a working.
func (r *ratedPipe) body(w *Working) {
	w.in("OD", "new", quantity.Diameter, r.pipe.OD)
	w.in("ID", "body", quantity.Diameter, r.pipe.ID)
	w.in("share", "of the wall left", quantity.Ratio, r.share)
	w.in("od", "worn", quantity.Diameter, r.worn)
	w.in("Y", "yield strength", quantity.Stress, r.pipe.Yield)
}

// pipePull adds the pull on a part of drill pipe, and what its class leaves.
func (e *evaluation) pipePull(i int, p *page, h *hungString, k int) {
	p.group = "Pull on drill pipe"
	r, rating, overpull := e.rate(i, h, k), 0.0, e.plan.Sections[i].StringLoads.Overpull.SI
	key := "string.class." + r.number
	if !r.unknown.open() {
		rating = r.tension()
	}
	published, inTable := catalogue.FindDrillPipe(r.row.Size.SI, r.row.Weight.SI, r.row.Grade)
	inTable = inTable && published.Tensile > 0
	f := p.put(key+".pull", "Pull with overpull", quantity.Force, r.pull, r.missing, func(w *Working) {
		w.Formula = "pull = weight in mud of the part and all below + overpull"
		w.in("W", "weight in mud", quantity.Force, r.hanging)
		w.in("overpull", "planned", quantity.Force, overpull)
		w.Source = "buoyancy factor; API RP 7G, design tension"
		w.Note = "At the upper end of the part, without friction, shock and bending."
	})
	if f.Note = "part " + r.number + ", " + r.class(); !inTable {
		f.Note += ", no API RP 7G size: by formula"
	}
	p.also(key+".tension", "yields at", quantity.Force, rating, r.unknown, func(w *Working) {
		w.Formula = "tension = pi/4 × (od² - ID²) × Y, od = ID + share × (OD - ID)"
		r.body(w)
		if inTable && r.share == drillpipe.New {
			w.in("table", "published, new", quantity.Force, published.Tensile)
		}
		if inTable && r.share == drillpipe.Premium && published.TensilePremium > 0 {
			w.in("table", "published, premium", quantity.Force, published.TensilePremium)
		}
		w.Source = "API RP 7G, wall worn evenly outside"
		w.Note = "Body only; the tool joint may be weaker. Inspection decides the class."
	})
	p.also(key+".share", "used", quantity.Ratio, r.pull/rating, r.missing, func(w *Working) {
		w.Formula = "used = pull / tension"
		w.in("pull", "at the upper end", quantity.Force, r.pull)
		w.in("tension", "of the class", quantity.Force, rating)
		w.Source = "API RP 7G, design tension"
	})
	limit, _ := e.plan.Limit(model.Rules()[model.RulePipeTension])
	left := limit.SI*rating - r.hanging
	p.also(key+".overpull", "left, no drag", quantity.Force, left, r.missing, func(w *Working) {
		w.Formula = "overpull left without friction = limit × tension - weight in mud"
		w.in("limit", "of the class's yield", quantity.Ratio, limit.SI)
		w.in("tension", "of the class", quantity.Force, rating)
		w.in("W", "weight in mud of the part and all below", quantity.Force, r.hanging)
		w.Source = "API RP 7G, margin of overpull"
		w.Note = "Without friction: with drag less is left. Jars and the rest of the string may allow less."
	})
	if !r.missing.open() {
		mend := model.PathOf(i, "string["+r.number+"].size")
		e.judge(model.RulePipeTension, i, r.pull/rating, "Pull on drill pipe, part "+r.number, r.row.Class, 0, mend)
		e.judge(model.RuleOverpull, i, left, "Overpull left without friction, drill pipe part "+r.number, r.row.Class, 0, mend)
	}
}

// pipeTorsion adds the torsion that a part of drill pipe withstands, by itself and under its pull.
func (e *evaluation) pipeTorsion(i int, p *page, h *hungString, k int) {
	p.group = "Torsion of drill pipe"
	r, torque := e.rate(i, h, k), e.plan.Sections[i].StringLoads.Torque
	key := "string.class." + r.number + ".torsion"
	under := drillpipe.TorsionUnder(r.pull, r.worn, r.pipe.ID, r.pipe.Yield)
	p.put(key, "Torsion, part "+r.number, quantity.Torque, drillpipe.Torsion(r.worn, r.pipe.ID, r.pipe.Yield), r.unknown, func(w *Working) {
		w.Formula = "torsion = 0.577 × Y × 2 × J / od, J = pi/32 × (od⁴ - ID⁴)"
		r.body(w)
		w.Source = "API RP 7G, appendix A"
		w.Note = "Body only; tool joints mostly yield first: their make-up torque is the maker's or API RP 7G's."
	})
	p.also(key+".under", "under pull", quantity.Torque, under, r.missing, func(w *Working) {
		w.Formula = "torsion × sqrt(1 - (pull / tension)²)"
		r.body(w)
		w.in("pull", "at the upper end", quantity.Force, r.pull)
		w.in("tension", "of the class", quantity.Force, r.tension())
		w.Source = "API RP 7G, appendix A, torsion under tension"
	})
	if !torque.IsSet() {
		return
	}
	overpulled := r.missing
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
	stress, _ := drillpipe.Equivalent(r.pull, torque.SI, r.worn, r.pipe.ID)
	p.also(key+".mises", "stress", quantity.Stress, stress, r.missing, func(w *Working) {
		w.Formula = "von Mises = sqrt(sigma² + 3 × tau²), sigma = pull / A, tau = torque × od / (2 × J)"
		r.body(w)
		w.in("pull", "at the upper end", quantity.Force, r.pull)
		w.in("torque", "at the rotary", quantity.Torque, torque.SI)
		w.Source = "distortion energy, beam theory"
		w.Note = "At the outside of the body; without pressure and bending."
	})
	if !overpulled.open() {
		e.judge(model.RulePipeTorsion, i, torque.SI/under, "Torque of what the pull leaves, part "+r.number, r.row.Class, 0, model.PathOf(i, "string_loads.torque"))
	}
}
