package calc

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// openFrom returns the top of the open hole of section i along hole, from which margins are judged: the last shoe, or
// below the seabed the depth from which the plan wants them judged.
func (e *evaluation) openFrom(i int) float64 {
	top := e.datum.Mudline + e.plan.Prognosis.JudgeBelow.SI
	if shoe, _, ok := e.lastShoe(i); ok {
		top = max(top, shoe)
	}
	return min(top, e.sections[i].td)
}

// tvdRange returns the least and the greatest true vertical depth of the hole between two depths along it. A hole that
// climbs is deepest above its end.
func (e *evaluation) tvdRange(from, to float64) (top, bottom float64) {
	const looks = 200 // for a hole that climbs; one that goes down is deepest at its end
	top, bottom = e.path.TVD(from), e.path.TVD(to)
	if e.path.IsVertical() || e.path.At(to).Inclination <= math.Pi/2 && bottom > top {
		return top, bottom
	}
	top, bottom = min(top, bottom), max(top, bottom)
	for k := 1; k < looks; k++ {
		tvd := e.path.TVD(from + (to-from)*float64(k)/looks)
		top, bottom = min(top, tvd), max(bottom, tvd)
	}
	return top, bottom
}

// windowGap says why the fluid cannot be compared with the window over the open hole of section i.
func (e *evaluation) windowGap(i int) gap { return first(e.columnGap(i), e.prognosisGap(i)) }

// prognosisGap says why the window cannot be read over the open hole of section i.
func (e *evaluation) prognosisGap(i int) gap {
	return first(e.openHoleGap(i), e.window.missing, e.coverageGap(i))
}

// openHoleGap says what is missing for where the open hole of section i begins and ends, on true vertical depth.
func (e *evaluation) openHoleGap(i int) gap {
	return first(e.sections[i].missing, e.pathGap, e.shoeGap(i))
}

// coverageGap says whether the prognosis ends within the open hole of section i. It is called only when the rest is known.
func (e *evaluation) coverageGap(i int) gap {
	if first(e.openHoleGap(i), e.window.missing).open() {
		return gap{}
	}
	top, bottom := e.tvdRange(e.openFrom(i), e.sections[i].td)
	last := model.Path("prognosis.row[" + strconv.Itoa(len(e.plan.Window)) + "].depth")
	if _, ok := e.window.pore.At(bottom); !ok {
		return gap{last, "the prognosis ends above the section's TD"}
	}
	if _, ok := e.window.pore.At(top); !ok {
		return gap{"prognosis.row[1].depth", "the prognosis begins below the section's open hole"}
	}
	return gap{}
}

// margin is a least distance and the TVD at which it is met; its value is not a number where there is none.
type margin struct{ value, tvd float64 }

// margins are the least distances of a section's fluid from the window: in equivalent density, and over pore in pressure,
// which may be least at another depth.
type margins struct {
	pore, fracture, stability, overbalance margin
}

// leastMargins finds how near the fluid comes to the window between two depths along hole.
func (e *evaluation) leastMargins(stack column.Stack, from, to float64) (m margins) {
	top, bottom := e.tvdRange(from, to)
	least := func(upper, lower func(float64) (float64, bool), top, bottom float64) margin {
		found, ok := column.LeastGap(upper, lower, top, bottom, e.window.depths)
		if !ok {
			return margin{math.NaN(), math.NaN()}
		}
		return margin{found.Value, found.TVD}
	}
	m.pore = least(stack.EMW, e.window.pore.At, top, bottom)
	m.fracture = least(e.window.fracture.At, stack.EMW, top, bottom)
	m.overbalance = least(stack.Pressure, func(tvd float64) (float64, bool) {
		pore, ok := e.window.pore.At(tvd)
		return column.PressureOf(pore, tvd), ok
	}, top, bottom)
	m.stability = margin{math.NaN(), math.NaN()}
	if e.window.hasStability {
		if first, last, ok := e.window.stability.Ends(); ok && max(top, first) <= min(bottom, last) {
			m.stability = least(stack.EMW, e.window.stability.At, max(top, first), min(bottom, last))
		}
	}
	return m
}

func (e *evaluation) marginFigures(i int, p *page) {
	missing := e.windowGap(i)
	if short := e.coverageGap(i); short.open() {
		e.note(i, Stop, short)
	} else if missing.open() {
		e.fault(missing)
	}
	fluid := first(e.columnGap(i), e.shoeGap(i))
	h := &e.sections[i]
	var stack column.Stack
	var top, bottom float64
	if !e.openHoleGap(i).open() {
		top, bottom = e.path.TVD(e.openFrom(i)), e.path.TVD(h.td)
	}
	if !fluid.open() {
		stack = e.well(i, e.density(i, h.td))
	}
	var m margins
	if !missing.open() {
		m = e.leastMargins(stack, e.openFrom(i), h.td)
	}
	p.group = "Margin, least in open hole"
	over := open{e.openFrom(i), h.td, stack}
	e.marginFigure(p, "mud.margin.pore", "Over pore", "margin = mud - pore", "pore", m.pore, over, e.window.pore, missing)
	e.marginFigure(p, "mud.margin.fracture", "Below fracture", "margin = fracture - mud", "fracture", m.fracture, over, e.window.fracture, missing)
	if test, at, ok := e.shoeTest(i); ok {
		p.put("mud.margin.shoe_test", "Below shoe test", quantity.EMW, test-emw(stack, at), fluid, func(w *Working) {
			w.Formula = "margin = shoe test - mud at the last shoe"
			w.in("test", e.testOrigin(i), quantity.EMW, test)
			w.in("mud", "equivalent at the shoe", quantity.EMW, emw(stack, at))
			w.Source = "common practice"
		})
	}
	p.group = "EMW from RKB"
	where := e.topName(i)
	e.levelFigures(p, "mud.emw.", "Mud ", where, stack.EMW, top, bottom, fluid, e.mixture(e.density(i, h.td), h.rig))
	prognosis := e.prognosisGap(i)
	e.levelFigures(p, "mud.pore.", "Pore ", where, e.window.pore.At, top, bottom, prognosis, prognosed(e.window.pore))
	e.levelFigures(p, "mud.fracture.", "Frac ", where, e.window.fracture.At, top, bottom, prognosis, prognosed(e.window.fracture))
	if !missing.open() {
		e.judgeMargins(i, m)
	} else {
		m.fracture = margin{math.NaN(), math.NaN()}
	}
	if !fluid.open() {
		e.judgeStrength(i, m.fracture, stack)
	}
}

// topName says what the top of the open hole judged is: the last shoe, or the depth from which the plan wants judging.
func (e *evaluation) topName(i int) string {
	if shoe, _, ok := e.lastShoe(i); ok && shoe == e.openFrom(i) {
		return "at last shoe"
	}
	return "near seabed"
}

// stands returns what the open hole of section i stands at a TVD, in kg/m3 from RKB: fracture pressure, at the last shoe its measured
// test, or no more than its planned one. It is false where the prognosis does not reach.
func (e *evaluation) stands(i int) func(tvd float64) (limit float64, ok bool) {
	test, shoe, tested := e.shoeTest(i)
	return func(tvd float64) (float64, bool) {
		fracture, ok := e.window.fracture.At(tvd)
		if tested && math.Abs(tvd-shoe) < 1e-6 {
			if e.tests[i].run {
				return test, true
			}
			fracture = min(fracture, test)
		}
		return fracture, ok
	}
}

// openPlace is a depth in the open hole, along hole and true vertical, in m.
type openPlace struct{ md, tvd float64 }

// openPlaces returns where the open hole of section i down to a depth along hole is held against the window, top down: its top,
// the rows of the prognosis, other depths along hole that are wanted, and the depth itself.
func (e *evaluation) openPlaces(i int, bottom float64, wanted []float64) []openPlace {
	from := e.openFrom(i)
	places := append(make([]openPlace, 0, len(e.window.depths)+len(wanted)+2), openPlace{from, e.path.TVD(from)})
	add := func(md, tvd float64) {
		if md > from && md < bottom {
			places = append(places, openPlace{md, tvd})
		}
	}
	for _, tvd := range e.window.depths {
		if md, ok := e.path.MDAtTVD(tvd); ok {
			add(md, tvd)
		}
	}
	for _, md := range wanted {
		add(md, e.path.TVD(md))
	}
	slices.SortStableFunc(places, func(a, b openPlace) int { return cmp.Compare(a.md, b.md) })
	if bottom > from {
		places = append(places, openPlace{bottom, e.path.TVD(bottom)})
	}
	return places
}

// open is the open hole of a section along hole, with the fluid in it.
type open struct {
	from, to float64
	fluid    column.Stack
}

// marginFigure adds a least margin and the TVD at which it is met.
func (e *evaluation) marginFigure(p *page, key, name, formula, symbol string, m margin, over open, limit column.Curve, missing gap) {
	p.put(key, name, quantity.EMW, m.value, missing, func(w *Working) {
		w.Formula = formula
		w.in("mud", "equivalent from RKB", quantity.EMW, emw(over.fluid, m.tvd))
		other, _ := limit.At(m.tvd)
		w.in(symbol, "prognosis there", quantity.EMW, other)
		w.in("TVD", "where it is least", quantity.Length, m.tvd)
		w.between(limit, m.tvd)
		w.Source = "hydrostatics on TVD; prognosis in straight lines between its rows"
	})
	p.also(key+".at", "at TVD", quantity.Length, m.tvd, missing, func(w *Working) {
		w.Formula = "TVD at which " + formula[len("margin = "):] + " is least in the open hole"
		w.in("from", "along hole", quantity.Length, over.from)
		w.in("to", "TD, along hole", quantity.Length, over.to)
		w.in("margin", "there", quantity.EMW, m.value)
		w.Source = "looked for between the rows of the prognosis, where the fluid's line may bend"
	})
}

// prognosed returns the working of a value read from the prognosis.
func prognosed(curve column.Curve) func(*Working, float64) {
	return func(w *Working, tvd float64) {
		w.Formula = "EMW = E1 + (E2 - E1) × (TVD - D1) / (D2 - D1)"
		w.between(curve, tvd)
		w.Source = "as entered, depths and densities turned to RKB; straight lines between the rows"
	}
}

// between puts the rows of the prognosis that a value lies between into the working.
func (w *Working) between(curve column.Curve, tvd float64) {
	above, below, ok := curve.Between(tvd)
	if !ok {
		return
	}
	w.in("D1", "row above", quantity.Length, above.TVD)
	w.in("E1", "row above", quantity.EMW, above.Value)
	if below != above {
		w.in("D2", "row below", quantity.Length, below.TVD)
		w.in("E2", "row below", quantity.EMW, below.Value)
	}
}

// levelFigures adds an equivalent density and its pressure at the top of the open hole and at TD.
func (e *evaluation) levelFigures(p *page, key, name, where string, density func(float64) (float64, bool), top, bottom float64, missing gap,
	why func(*Working, float64)) {
	level := func(key, name string, at float64) {
		var value float64
		if !missing.open() {
			value, _ = density(at)
		}
		p.put(key, name, quantity.EMW, value, missing, func(w *Working) {
			why(w, at)
			w.in("TVD", "from RKB", quantity.Length, at)
		})
		p.also(key+".pressure", "pressure", quantity.Pressure, column.PressureOf(value, at), missing, func(w *Working) {
			w.Formula = "p = EMW × g × TVD"
			w.in("EMW", "equivalent from RKB", quantity.EMW, value)
			w.in("TVD", "from RKB", quantity.Length, at)
			w.Source = "hydrostatics"
		})
	}
	level(key+"shoe", name+where, top)
	level(key+"td", name+"at TD", bottom)
}

// mixture returns the working of a fluid's equivalent density: the fluid itself from the rotary down, or below the sea.
func (e *evaluation) mixture(density float64, rig bool) func(*Working, float64) {
	return func(w *Working, _ float64) {
		w.Source = "hydrostatics"
		w.in("mud", "static density", quantity.Density, density)
		if rig {
			w.Formula = "EMW = mud, a column from the rotary down"
			return
		}
		w.Formula = "EMW = (sea × water depth + mud × (TVD - mudline)) / TVD"
		w.in("sea", "seawater", quantity.Density, e.seawater())
		w.in("water depth", "at MSL", quantity.Length, e.plan.Well.WaterDepth.SI)
		w.in("mudline", "from RKB", quantity.Length, e.datum.Mudline)
	}
}

// judgeMargins compares a section's margins with the rules.
func (e *evaluation) judgeMargins(i int, m margins) {
	density := model.PathOf(i, "density")
	judge := func(id model.RuleID, what string, m margin) { e.judgeMargin(id, i, m.value, what, m.tvd, density) }
	if !e.sections[i].rig {
		judge(model.RuleRiserlessInflow, "Riserless fluid over pore", m.pore)
		e.judgeLightFluid(i)
		return
	}
	judge(model.RuleAboveInflow, "Mud over pore", m.pore)
	judge(model.RuleTripMargin, "Trip margin", m.pore)
	judge(model.RuleOverbalance, "Static overbalance", m.overbalance)
	judge(model.RuleUSPore, "Mud over pore", m.pore)
	judge(model.RuleStability, "Mud over stability limit", m.stability)
	if lost := e.riserOff(i); !e.gaps.sea.open() {
		judge(model.RuleRiserMargin, "Riser off, mud and sea over pore", lost.overbalance)
	}
}

// judgeStrength compares the mud with the weaker of rock and shoe test. Without a prognosis the fracture margin is not a
// number and the test counts alone.
func (e *evaluation) judgeStrength(i int, fracture margin, stack column.Stack) {
	strength := fracture
	if test, at, ok := e.shoeTest(i); ok && !(test-emw(stack, at) >= strength.value) {
		strength = margin{test - emw(stack, at), at}
	}
	e.judgeShoeTest(i)
	judge := func(id model.RuleID, what string) {
		e.judgeMargin(id, i, strength.value, what, strength.tvd, model.PathOf(i, "density"))
	}
	judge(model.RuleBelowBreakdown, "Mud below fracture and shoe test")
	if !e.sections[i].rig {
		return
	}
	judge(model.RuleStaticMargin, "Mud below fracture and shoe test")
	if e.hasHPHousing(i) {
		judge(model.RuleUSMargin, "Safe drilling margin, static")
	}
}

// judgeShoeTest compares the planned test of the last shoe with the fracture prognosis there: a test that the rock is not
// expected to stand is no strength to plan with.
func (e *evaluation) judgeShoeTest(i int) {
	test, at, ok := e.shoeTest(i)
	if !ok || e.tests[i].run || e.window.missing.open() {
		return
	}
	if fracture, known := e.window.fracture.At(at); known {
		e.judgeMargin(model.RuleShoeTest, i, test-fracture, "Planned shoe test over fracture at the shoe", at, model.PathOf(i, "leak_off"))
	}
}

// riserOff returns the margins of section i with the riser gone: the sea above the mudline, the mud below it.
func (e *evaluation) riserOff(i int) margins {
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	return e.leastMargins(e.underSea(e.plan.Sections[i].Density.SI, bottom), e.openFrom(i), e.sections[i].td)
}

// judgeLightFluid compares the fluid that a riserless section is drilled with before it changes to weighted mud.
func (e *evaluation) judgeLightFluid(i int) {
	s := &e.plan.Sections[i]
	from, to := e.openFrom(i), s.WeightedFrom.SI
	if !s.WeightedFrom.IsSet() || to <= from || to >= e.sections[i].td {
		return
	}
	before := e.leastMargins(e.underSea(s.Density.SI, e.path.TVD(to)), from, to)
	e.judgeMargin(model.RuleRiserlessInflow, i, before.pore.value, "Light fluid over pore, before weighted mud", before.pore.tvd,
		model.PathOf(i, "weighted_from"))
}
