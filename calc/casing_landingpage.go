package calc

import (
	"borewalk/calc/strength"
	"borewalk/calc/tally"
	"borewalk/model"
	"borewalk/model/quantity"
)

// landingPage adds the string that carries the casing of section i to where it hangs: its pieces and stick-up, what hangs
// from it, and what may still be pulled.
func (e *evaluation) landingPage(i int, p *page) {
	if !e.landed(i) {
		return
	}
	l := e.readLanding(i)
	p.group = "Landing string"
	if e.plan.Sections[i].Landing.StickUp.IsSet() {
		e.spaceOutFigures(i, p, &l)
	}
	e.landingLoads(i, p, &l)
	e.judgeLanding(i, &l, e.runFigures(i, p, &l))
}

func (e *evaluation) spaceOutFigures(i int, p *page, l *landing) {
	out, stands, missing := e.spaceOut(i)
	if missing.open() {
		e.fault(missing)
	}
	s := &e.plan.Sections[i].Landing
	const source = "geometry; a floating rig rides the tide, the wellhead does not; stretch and heave not counted"
	pieces := func(w *Working) {
		w.items(out.Items)
		w.in("shoulder", "at mean sea level", quantity.TallyLength, e.strings[i].top)
	}
	p.put("landing.stands", "Stands", quantity.Count, float64(stands), missing, func(w *Working) {
		w.Formula = "stands and pups that bring the stick-up nearest to the wanted one, in its window at any tide"
		pieces(w)
		w.in("wanted", "stick-up", quantity.TallyLength, s.StickUp.SI)
		w.Source = "common practice"
	})
	p.also("landing.pups", "pups", quantity.Count, float64(out.PupsUsed), missing, func(w *Working) {
		w.Formula = "pups used, the fewest that do"
		pieces(w)
		w.Source = "common practice"
	})
	p.also("landing.length", "length", quantity.TallyLength, out.Length, missing, func(w *Working) {
		w.Formula = "length = sum of lengths, shoulder to the top of the string"
		pieces(w)
		w.Source = source
	})
	p.group = "Stick-up, landed"
	p.put("landing.stick_up", "Mean sea level", quantity.TallyLength, out.AtMean, missing, func(w *Working) {
		w.Formula = "stick-up = length - depth of the shoulder"
		pieces(w)
		w.Source = source
	})
	tide := func(key, column, formula string, value, height float64) {
		p.also(key, column, quantity.TallyLength, value, missing, func(w *Working) {
			w.Formula = formula
			w.in("mean", "stick-up", quantity.TallyLength, out.AtMean)
			w.in("tide", "height", quantity.TallyLength, height)
			w.Source = source
		})
	}
	tide("landing.stick_up.high", "high tide", "stick-up = stick-up at mean sea level - height of the highest tide", out.AtHigh, e.plan.Well.TideHigh.SI)
	tide("landing.stick_up.low", "low tide", "stick-up = stick-up at mean sea level + depth of the lowest tide", out.AtLow, e.plan.Well.TideLow.SI)
	longer := l.string.longer()
	p.also("landing.stick_up.hanging", "hanging", quantity.TallyLength, out.AtMean+longer, first(missing, l.missing), func(w *Working) {
		w.Formula = "stick-up = landed at mean sea level + stretch of the landing string while the casing hangs from it"
		w.in("mean", "stick-up", quantity.TallyLength, out.AtMean)
		w.in("stretch", "landing string", quantity.TallyLength, longer)
		w.Source = "geometry; Hooke's law"
		w.Note = "At the moment of landing; a liner still hangs so when it is set. Heave not counted."
	})
	if !missing.open() {
		e.judgeStickUp(i, out)
	}
}

func (e *evaluation) judgeStickUp(i int, out tally.Landed) {
	s := &e.plan.Sections[i].Landing
	room := out.AtHigh - s.StickUpLeast.SI
	if s.StickUpMost.IsSet() {
		room = min(room, s.StickUpMost.SI-out.AtLow)
	}
	e.judge(model.RuleStickUp, i, room, "Room in the window of the stick-up, low to high tide", "", 0, model.PathOf(i, "landing.stick_up"))
}

func (e *evaluation) landingLoads(i int, p *page, l *landing) {
	rig := &e.plan.Rig
	const left = "Without friction, shock, heave and the running tool's weight."
	terms := func(w *Working) {
		w.in("casing", "in the fluid", quantity.Force, l.casing.weight)
		if l.inner.weight > 0 {
			w.in("inner", "inner string, in the fluid", quantity.Force, l.inner.weight)
		}
		w.in("landing", "landing string, in the fluid", quantity.Force, l.string.weight)
	}
	p.group = "Landing loads"
	p.put("landing.weight", "At the rotary", quantity.Force, l.weight(), l.missing, func(w *Working) {
		w.Formula = "W = casing + inner string + landing string, each in the fluid"
		terms(w)
		w.in("m", "landing string", quantity.LinearMass, l.mass)
		w.in("L", "landing string", quantity.Length, e.strings[i].top)
		w.Source = "buoyancy factor (Bourgoyne et al., Applied Drilling Engineering, ch. 4)"
		w.Note = left
	}).Note = e.slanted(i, "")
	p.put("landing.load", "Hook load, landing", quantity.Force, l.weight()+rig.BlockWeight.SI, l.missing, func(w *Working) {
		w.Formula = "hook load = what hangs from the rotary + blocks and top drive"
		w.in("W", "at the rotary", quantity.Force, l.weight())
		w.in("blocks", "with top drive", quantity.Force, rig.BlockWeight.SI)
		w.Source = "common practice"
		w.Note = left
	})
	unrated := first(l.missing, l.unrated)
	figure := p.put("landing.margin.string", "Overpull, string", quantity.Force, l.rating-l.weight(), unrated, func(w *Working) {
		w.Formula = "overpull = rating of the landing string - what hangs from the rotary"
		w.in("rating", "landing string", quantity.Force, l.rating)
		w.in("W", "at the rotary", quantity.Force, l.weight())
		w.Source = "common practice; pipe body A × yield (API TR 5C3) where no rating is entered"
		w.Note = "Slips, tool joints, wear and the maker's factors may allow less."
	})
	if !e.plan.Sections[i].Landing.Rating.IsSet() {
		figure.Note = "new pipe body at yield"
	}
	unrigged := first(l.missing, needs(rig.HookLoad, "rig.hook_load", "hook load rating"))
	p.put("landing.margin.rig", "Overpull, rig", quantity.Force, rig.HookLoad.SI-l.weight()-rig.BlockWeight.SI, unrigged, func(w *Working) {
		w.Formula = "overpull = hook load rating - what hangs from the rotary - blocks"
		w.in("rating", "hook load", quantity.Force, rig.HookLoad.SI)
		w.in("W", "at the rotary", quantity.Force, l.weight())
		w.in("blocks", "with top drive", quantity.Force, rig.BlockWeight.SI)
		w.Source = "common practice"
	})
	p.group = "Stretch, landed"
	e.stretchFigure(p, "landing.stretch", "Landing string", l.string, l.casing.weight+l.inner.weight, []hungPart{{0, e.strings[i].top, l.pipe, l.mass}}, l.missing)
	e.stretchFigure(p, "landing.stretch.casing", "Casing", l.casing, 0, casingParts(&e.strings[i]), l.missing)
}

// stretchFigure adds by how much parts that hang with a load below are longer than they lay on deck.
func (e *evaluation) stretchFigure(p *page, key, name string, h hung, load float64, parts []hungPart, missing gap) {
	p.put(key, name, quantity.TallyLength, h.longer(), missing, func(w *Working) {
		w.Formula = "longer = sum of (F + W/2) L/(E A) - squeeze, from the lower end up; squeeze = sum of (1 - 2 nu) p L/E"
		w.in("F", "hangs below", quantity.Force, load)
		w.in("W", "hangs in it", quantity.Force, h.weight)
		for _, part := range parts {
			w.in("L", "length", quantity.TallyLength, part.bottom-part.top)
			w.in("D", "OD", quantity.Diameter, part.pipe.OD)
			w.in("d", "ID", quantity.Diameter, part.pipe.ID)
		}
		w.in("E", "steel", quantity.Stress, strength.Modulus)
		w.in("squeeze", "shorter by the pressure", quantity.TallyLength, h.squeeze)
		w.Source = "Hooke's law with the pressure of the fluid (Lamé); E 30 million psi, nu 0.3"
		w.Note = "String full of what surrounds it, p its pressure in the middle of the length; friction and warming left out."
	})
}

// judgeLanding compares what hangs from the rotary with what carries it; greatest is the most on the way in, N.
func (e *evaluation) judgeLanding(i int, l *landing, greatest float64) {
	if l.missing.open() {
		return
	}
	rig, entry := &e.plan.Rig, model.PathOf(i, "landing.rating")
	left := noLimitForce
	if !l.unrated.open() {
		left = l.rating - l.weight()
		e.judge(model.RuleLandingString, i, left, "Landing string's rating over what hangs from it", "", 0, entry)
	}
	if rig.HookLoad.IsSet() {
		onHook := rig.HookLoad.SI - l.weight() - rig.BlockWeight.SI
		e.judge(model.RuleHookLoad, i, rig.HookLoad.SI-greatest-rig.BlockWeight.SI, "Rig's rating over the greatest hook load of the run", "", 0, model.PathOf(i, "casing[1].weight"))
		left = min(left, onHook)
	}
	wanted := usual(e.plan.Sections[i].Loads.Overpull, usualOverpull)
	if left < noLimitForce {
		e.judge(model.RuleLandingOverpull, i, left-wanted, "Overpull left over the one planned for", "", 0, model.PathOf(i, "loads.overpull"))
	}
}

// noLimitForce is a force in N that nothing carries.
const noLimitForce = 1e12
