package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// gravity is the standard acceleration of free fall in m/s2 (CGPM 1901).
const gravity = column.G

// mudPage adds the volumes of a section with the drill string at TD, the strokes and times to pump them, and the
// pressures of its fluid against the prognosis.
func (e *evaluation) mudPage(i int) {
	p := e.page(i, model.TopicMud)
	e.marginFigures(i, p)
	e.pressureFigures(i, p)
	e.downholeFigures(i, p)
	holds := e.contentsOf(i)
	e.volumeFigures(i, p, &holds)
	e.rheologyFigures(i, p)
	e.temperatureFigures(i, p)
	build := e.pitFigures(i, p, &holds)
	if !e.sections[i].rig {
		build = e.riserlessFigures(i, p, &holds)
	}
	e.changeFigures(i, p, &holds)
	e.mudRecipe(i, p, build)
	e.annulusFigures(p, holds.annuli, holds.missing)
}

// columnGap says what is missing for the fluid column of section i.
func (e *evaluation) columnGap(i int) gap {
	s, missing := &e.plan.Sections[i], first(e.sections[i].missing, e.pathGap)
	missing = first(missing, lacks(s.Density, i, "density", "mud density"))
	if e.sections[i].rig {
		return missing
	}
	if s.WeightedFrom.IsSet() {
		missing = first(missing, lacks(s.WeightedDensity, i, "weighted_density", "density of the weighted mud"))
	}
	return first(missing, e.gaps.sea)
}

// density returns the fluid that section i is drilled with when the bit is at a depth.
func (e *evaluation) density(i int, md float64) float64 {
	s := &e.plan.Sections[i]
	if !e.sections[i].rig && s.WeightedFrom.IsSet() && md >= s.WeightedFrom.SI {
		return s.WeightedDensity.SI
	}
	return s.Density.SI
}

// well returns the fluid column outside the string of section i, filled with fluid of a density: from the rotary when
// returns go to the rig, else with the sea above the mudline.
func (e *evaluation) well(i int, density float64) column.Stack {
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	fluid := column.Layer{Top: 0, Bottom: bottom, Density: density, Label: "mud"}
	if e.sections[i].rig {
		stack, _ := column.NewStack(0, fluid)
		return stack
	}
	return e.underSea(density, bottom)
}

// underSea returns the sea down to the mudline and a fluid below it.
func (e *evaluation) underSea(density, bottom float64) column.Stack {
	stack, _ := column.Riserless(e.datum.MSL, e.datum.Mudline, e.seawater(),
		column.Layer{Top: e.datum.Mudline, Bottom: max(bottom, e.datum.Mudline), Density: density, Label: "mud"})
	return stack
}

// seaPressure returns the pressure of the sea at the mudline.
func (e *evaluation) seaPressure() float64 {
	return e.seawater() * gravity * e.plan.Well.WaterDepth.SI
}

// emw returns the equivalent density from RKB of a column at a TVD; not a number outside the column.
func emw(stack column.Stack, tvd float64) float64 {
	density, ok := stack.EMW(tvd)
	if !ok {
		return math.NaN()
	}
	return density
}

// pressureFigures adds mixed columns: riser off, and the hole filled with spot fluid.
func (e *evaluation) pressureFigures(i int, p *page) {
	h, s := &e.sections[i], &e.plan.Sections[i]
	missing := first(e.columnGap(i), e.gaps.sea)
	p.group = "Mixed columns"
	mixed := func(key, name string, density float64) {
		var pressure, equivalent, bottom float64
		if !missing.open() {
			bottom = e.path.TVD(h.td)
			pressure, _ = e.underSea(density, bottom).Pressure(bottom)
			equivalent, _ = column.EMW(pressure, bottom)
		}
		why := func(w *Working) {
			w.Formula = "p = sea × g × water depth + mud × g × (TVD - mudline)"
			w.in("sea", "seawater", quantity.Density, e.seawater())
			w.in("water depth", "at MSL", quantity.Length, e.plan.Well.WaterDepth.SI)
			w.in("mud", "below the mudline", quantity.Density, density)
			w.in("TVD", "from RKB", quantity.Length, bottom)
			w.in("mudline", "from RKB", quantity.Length, e.datum.Mudline)
			w.Source = "hydrostatics"
		}
		p.put(key, name, quantity.EMW, equivalent, missing, why)
		p.also(key+".pressure", "pressure", quantity.Pressure, pressure, missing, why)
	}
	if h.rig {
		mixed("mud.riser_off", "Riser off", s.Density.SI)
		e.riserMarginFigure(i, p)
		return
	}
	mixed("mud.drilling", "Sea over fluid", e.density(i, h.td))
	if s.SpotDensity.IsSet() {
		mixed("mud.spotted", "Sea over spot", s.SpotDensity.SI)
	}
}

// riserMarginFigure adds what is left over pore pressure, where that is least, when the riser is lost.
func (e *evaluation) riserMarginFigure(i int, p *page) {
	missing := first(e.windowGap(i), e.gaps.sea)
	var m margin
	if !missing.open() {
		m = e.riserOff(i).overbalance
	}
	pore, _ := e.window.pore.At(m.tvd)
	why := func(w *Working) {
		w.Formula = "left = sea × g × water depth + mud × g × (TVD - mudline) - pore pressure, least in the open hole"
		w.in("sea", "seawater", quantity.Density, e.seawater())
		w.in("water depth", "at MSL", quantity.Length, e.plan.Well.WaterDepth.SI)
		w.in("mud", "below the mudline", quantity.Density, e.plan.Sections[i].Density.SI)
		w.in("TVD", "where it is least", quantity.Length, m.tvd)
		w.in("mudline", "from RKB", quantity.Length, e.datum.Mudline)
		w.in("pore", "pressure there", quantity.Pressure, column.PressureOf(pore, m.tvd))
		w.Source = "drillingformulas.com, riser margin; hydrostatics"
		w.Note = "In deep water it usually cannot be met: the BOP is the barrier then. Not to be added to the trip margin."
	}
	p.group = "Riser margin"
	p.put("mud.riser_margin", "Left over pore", quantity.Pressure, m.value, missing, why)
	p.also("mud.riser_margin.at", "at TVD", quantity.Length, m.tvd, missing, why)
}
