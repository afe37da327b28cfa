package calc

import (
	"math"
	"strconv"

	"borewalk/calc/column"
	"borewalk/calc/strength"
	"borewalk/model"
	"borewalk/model/quantity"
)

// surfaceLimit is a pressure at the choke, with the well full of its mud and closed, at which something is at its limit.
type surfaceLimit struct {
	key, name string
	pressure  float64 // Pa
	tvd       float64 // where
	missing   gap
	note      string
	why       func(*Working)
}

// surfaceLimits returns what limits the pressure at the choke of section i, its well full of mud: the shoe first.
func (e *evaluation) surfaceLimits(i int) []surfaceLimit {
	list := []surfaceLimit{e.shoeLimit(i)}
	if weak, ok := e.weakLimit(i); ok {
		list = append(list, weak)
	}
	if e.plan.Rig.BOPRating.IsSet() {
		list = append(list, e.stackLimit(i))
	}
	return append(list, e.casingLimits(i)...)
}

// shoeLimit is what the last shoe stands.
func (e *evaluation) shoeLimit(i int) surfaceLimit {
	t, mud := &e.tests[i], e.plan.Sections[i].Density.SI
	strength, from, _ := e.shoeStrength(i)
	l := surfaceLimit{key: "shoe", name: "MAASP, shoe", tvd: t.tvd, missing: first(e.columnGap(i), e.testGap(i)), note: from}
	l.pressure = column.PressureOf(strength-mud, t.tvd)
	l.why = func(w *Working) {
		w.Formula = "MAASP = (strength of the shoe - mud) × g × TVD of the shoe"
		w.in("strength", from, quantity.EMW, strength)
		w.in("mud", "static", quantity.Density, mud)
		w.in("TVD", "of the shoe", quantity.Length, t.tvd)
		w.Source = "Lapeyrouse, Formulas and Calculations, subsea considerations"
		w.Note = maaspCaution
	}
	return l
}

// maaspCaution is said wherever a highest choke pressure is shown.
const maaspCaution = "For this mud, this shoe test and a well without gas above the shoe; not a reason to bleed the well. The well-control manual and the people in charge decide."

// testGap says what is missing for what the last shoe above section i stands.
func (e *evaluation) testGap(i int) gap {
	t := &e.tests[i]
	switch {
	case t.missing.open():
		return t.missing
	case first(e.pathGap, e.shoeGap(i)).open():
		return first(e.pathGap, e.shoeGap(i))
	case !t.run && len(e.plan.Window) > 0 && e.window.missing.open():
		return e.window.missing // a plan without a prognosis goes by its test alone
	}
	if _, _, ok := e.shoeStrength(i); !ok {
		return first(e.window.missing, gap{model.PathOf(i, "leak_off"), "neither shoe test nor fracture prognosis is known at the shoe"})
	}
	return gap{}
}

// weakLimit is what the weakest row of the open hole below the shoe stands, where that is less than the shoe.
func (e *evaluation) weakLimit(i int) (surfaceLimit, bool) {
	at, ok := e.weakestPlace(i)
	shoe := e.shoeLimit(i)
	if !ok || shoe.missing.open() || at.surface >= shoe.pressure {
		return surfaceLimit{}, false
	}
	mud := e.plan.Sections[i].Density.SI
	return surfaceLimit{key: "weak", name: "MAASP, weak row", pressure: at.surface, tvd: at.tvd, missing: shoe.missing, note: "open hole", why: func(w *Working) {
		w.Formula = "MAASP = (fracture - mud) × g × TVD, least in the open hole"
		w.in("fracture", "prognosis there", quantity.EMW, at.limit)
		w.in("mud", "static", quantity.Density, mud)
		w.in("TVD", "where it is least", quantity.Length, at.tvd)
		w.Source = "hydrostatics"
		w.Note = maaspCaution
	}}, true
}

// weakRow is where the open hole gives way first under a closed BOP.
type weakRow struct{ md, tvd, limit, surface float64 }

// weakestPlace returns the place in the open hole of section i, below the shoe, at which the least pressure at the choke breaks the
// rock by the prognosis.
func (e *evaluation) weakestPlace(i int) (weak weakRow, ok bool) {
	if first(e.windowGap(i), e.columnGap(i)).open() {
		return weak, false
	}
	stands, mud := e.stands(i), e.plan.Sections[i].Density.SI
	weak.surface = math.Inf(1)
	for _, at := range e.openPlaces(i, e.sections[i].td, nil) {
		limit, known := stands(at.tvd)
		if surface := column.PressureOf(limit-mud, at.tvd); known && at.md > e.tests[i].shoe && surface < weak.surface {
			weak, ok = weakRow{at.md, at.tvd, limit, surface}, true
		}
	}
	return weak, ok
}

// stackLimit is the rating of the rams over the sea, at the wellhead.
func (e *evaluation) stackLimit(i int) surfaceLimit {
	mud, rating := e.plan.Sections[i].Density.SI, e.plan.Rig.BOPRating.SI
	l := surfaceLimit{key: "stack", name: "BOP rating", tvd: e.datum.Wellhead, missing: first(e.columnGap(i), e.gaps.wellhead, e.gaps.sea)}
	sea := e.seaAt(e.datum.Wellhead)
	l.pressure = rating + sea - column.PressureOf(mud, e.datum.Wellhead)
	l.why = func(w *Working) {
		w.Formula = "choke = rating + sea at the wellhead - mud × g × depth of the wellhead"
		w.in("rating", "of the rams", quantity.Pressure, rating)
		w.in("sea", "outside the stack", quantity.Pressure, sea)
		w.in("mud", "in the choke line", quantity.Density, mud)
		w.in("depth", "of the wellhead from RKB", quantity.Length, e.datum.Wellhead)
		w.Source = "hydrostatics; makers may not let the sea's pressure count"
		w.Note = maaspCaution
	}
	return l
}

// casingLimits are what the casing that the hole of section i is drilled through stands inside, over the sea's gradient or pore
// pressure outside: at its weakest depth, for each string that is exposed.
func (e *evaluation) casingLimits(i int) (list []surfaceLimit) {
	mud := e.plan.Sections[i].Density.SI
	for j := 0; j < i; j++ {
		bottom, exposed := e.exposedTo(j, i)
		if !exposed {
			continue
		}
		list = append(list, e.casingLimit(i, j, bottom, mud))
	}
	return list
}

// exposedTo returns how far down the hole of section i presses on the string of section j, and false where it does not.
func (e *evaluation) exposedTo(j, i int) (bottom float64, ok bool) {
	if !e.strings[j].present {
		return 0, false
	}
	for hole, to := range e.exposed(j) {
		if hole == i {
			return to, true
		}
	}
	return 0, false
}

// casingLimit is the choke pressure at which the string of section j has the burst factor that is asked for, its weakest depth
// counting, the well of section i full of mud.
func (e *evaluation) casingLimit(i, j int, bottom, mud float64) surfaceLimit {
	s := e.loaded(j)
	number := strconv.Itoa(j + 1)
	l := surfaceLimit{key: "casing." + number, name: "Casing str. " + number, missing: first(s.missing, e.columnGap(i))}
	outside, missing := e.outsideBurst(j)
	l.missing = first(l.missing, missing)
	factor := e.limit(model.RuleBurst, 1)
	l.pressure = math.Inf(1)
	var stands, column0 float64
	for k := range s.parts {
		pipe, err := strength.Worn(s.parts[k].Pipe, s.parts[k].Lost)
		if err != nil {
			l.missing = first(l.missing, gap{partPath(j, &s.casing.parts[k], "wear"), err.Error()})
			continue
		}
		burst, err := strength.InternalYield(pipe, strength.WallTolerance)
		if err != nil {
			l.missing = first(l.missing, gap{partPath(j, &s.casing.parts[k], "grade"), err.Error()})
			continue
		}
		burst *= min(1, s.parts[k].Connection.Burst)
		part := &s.casing.parts[k]
		for _, md := range e.depthsOf(max(part.top, s.casing.top), min(part.bottom, bottom)) {
			tvd := e.path.TVD(md)
			acts := column.PressureOf(mud, tvd) - outside.at(tvd)
			if surface := burst/factor - acts; surface < l.pressure {
				l.pressure, l.tvd, stands, column0 = surface, tvd, burst, acts
			}
		}
	}
	l.why = func(w *Working) {
		w.Formula = "choke = internal yield / factor - (mud - outside), least along the string"
		w.in("yield", "internal, worn, with its connection", quantity.Pressure, stands)
		w.in("factor", "burst, as asked for", quantity.Number, factor)
		w.in("columns", "mud inside less what stands outside", quantity.Pressure, column0)
		w.in("TVD", "where it is least", quantity.Length, l.tvd)
		w.Source = "API TR 5C3, internal yield; hydrostatics"
		w.Note = maaspCaution
	}
	return l
}

// depthsOf returns the depths along hole between two ends at which a load is looked at: both, and between them what the rows of the
// prognosis give.
func (e *evaluation) depthsOf(top, bottom float64) []float64 {
	if top >= bottom {
		return nil
	}
	depths := []float64{top, bottom}
	for _, tvd := range e.window.depths {
		if md, ok := e.path.MDAtTVD(tvd); ok && md > top && md < bottom {
			depths = append(depths, md)
		}
	}
	return depths
}

// limitFigures adds what mud and choke pressure the last shoe, the BOP and the casing leave.
func (e *evaluation) limitFigures(i int, p *page) {
	mud := e.plan.Sections[i].Density.SI
	missing := e.testGap(i)
	strength, from, _ := e.shoeStrength(i)
	p.group = "Mud at the shoe"
	most := e.staticMargin()
	p.put("control.mud.most", "Max mud weight", quantity.EMW, e.roundedDown(strength-most, quantity.EMW, 0.1), missing, func(w *Working) {
		w.Formula = "most = strength of the shoe - margin"
		w.in("strength", from, quantity.EMW, strength)
		w.in("margin", "static, kept below it", quantity.EMW, most)
		w.Source = "common practice"
		w.Note = "At the shoe and at rest; circulating density and weaker rock below stand beside it. " + maaspCaution
	})
	e.kickMargin(i, p, mud)
	e.chokeFigures(i, p)
}

// chokeFigures adds what may stand at the choke with the pump off, and at the kill rate, with line and annulus above each limit rubbing.
func (e *evaluation) chokeFigures(i int, p *page) {
	list := e.surfaceLimits(i)
	line, rubs := e.killLine(i), e.annulusRubs(i)
	above := func(l *surfaceLimit) float64 {
		md, _ := e.path.MDAtTVD(l.tvd)
		return rubs.above(md)
	}
	static, moving := leastOf(list, func(*surfaceLimit) float64 { return 0 }), leastOf(list, above)
	if static == nil {
		return
	}
	p.group = "Choke, well full of mud"
	p.put("control.maasp", "MAASP", quantity.Pressure, e.roundedPressure(static.pressure), list[0].missing, func(w *Working) {
		w.Formula = "least of the limits"
		for k := range list {
			if l := &list[k]; !l.missing.open() {
				w.in("choke", l.name, quantity.Pressure, l.pressure)
			}
		}
		w.Source = "the limits one by one"
		w.Note = maaspCaution
	}).Note = static.name
	circulating := moving.pressure - line.loss - above(moving)
	p.also("control.maasp.circulating", "circulating", quantity.Pressure, e.roundedPressure(circulating), first(list[0].missing, line.missing, rubs.missing), func(w *Working) {
		w.Formula = "choke, circulating = limit - friction of the line at the kill rate - friction of the annulus above, least of the limits"
		w.in("limit", moving.name, quantity.Pressure, moving.pressure)
		w.in("annulus", "friction from there to the stack", quantity.Pressure, above(moving))
		line.working(w)
		w.Note = maaspCaution
	})
	e.judgeMost(i, list)
}

// leastOf returns the limit that leaves least at the choke with something taken off each; nil where none is known.
func leastOf(list []surfaceLimit, off func(*surfaceLimit) float64) (least *surfaceLimit) {
	for k := range list {
		if l := &list[k]; !l.missing.open() && (least == nil || l.pressure-off(l) < least.pressure-off(least)) {
			least = l
		}
	}
	return least
}

// eachLimit adds the limits at the choke one by one.
func (e *evaluation) eachLimit(i int, p *page) {
	p.group = "Choke, each limit"
	for _, l := range e.surfaceLimits(i) {
		p.put("control.maasp."+l.key, l.name, quantity.Pressure, e.roundedPressure(l.pressure), l.missing, l.why).Note = l.note
		p.also("control.maasp."+l.key+".at", "at TVD", quantity.Length, l.tvd, l.missing, l.why)
	}
}

// staticMargin returns what mud at rest is kept below fracture and shoe test by the plan's rules.
func (e *evaluation) staticMargin() float64 {
	return max(e.limit(model.RuleStaticMargin, 0), e.limit(model.RuleUSMargin, 0))
}

// judgeMost says whether the shoe gives way before BOP and casing reach their limits.
func (e *evaluation) judgeMost(i int, list []surfaceLimit) {
	if list[0].missing.open() {
		return
	}
	for k := range list {
		if l := &list[k]; l.key != "shoe" && l.key != "weak" && !l.missing.open() {
			e.judge(model.RuleUSMostPressure, i, l.pressure-list[0].pressure, l.name+" over the shoe's limit at the choke", "", 0, model.PathOf(i, "density"))
		}
	}
}

// kickMargin adds the kick without volume that the shoe stands, as equivalent density at TD.
func (e *evaluation) kickMargin(i int, p *page, mud float64) {
	t := &e.tests[i]
	missing := first(e.testGap(i), e.columnGap(i))
	strength, from, _ := e.shoeStrength(i)
	var td float64
	if !missing.open() {
		td = e.deepest(i)
	}
	value := (strength - mud) * t.tvd / td
	p.put("control.kick_margin", "Kick margin", quantity.EMW, e.roundedDown(value, quantity.EMW, 0.1), missing, func(w *Working) {
		w.Formula = "margin = (strength of the shoe - mud) × TVD of the shoe / TVD at TD"
		w.in("strength", from, quantity.EMW, strength)
		w.in("mud", "static", quantity.Density, mud)
		w.in("TVD shoe", "last", quantity.Length, t.tvd)
		w.in("TVD TD", "deepest", quantity.Length, td)
		w.Source = "Lapeyrouse, Formulas and Calculations, kick tolerance factor"
		w.Note = "An influx without volume: with any height of gas it is less."
	})
}
