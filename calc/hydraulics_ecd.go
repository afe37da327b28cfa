package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// weakPlace is a place in the open hole with the equivalent density in kg/m3 from RKB that the rock or a shoe test stands.
type weakPlace struct {
	md, tvd, limit float64
	name           string
}

// loopPlaces returns where circulating is held against what the open hole stands, top down; where the annulus changes as well.
func (e *evaluation) loopPlaces(i int, l *loop) []weakPlace {
	changes := make([]float64, len(l.up))
	for k := range l.up {
		changes[k] = l.up[k].bottom
	}
	open, stands := e.openPlaces(i, l.td, changes), e.stands(i)
	places := make([]weakPlace, 0, len(open))
	for k, at := range open {
		limit, ok := stands(at.tvd)
		if !ok {
			continue
		}
		name := "in open hole"
		switch k {
		case 0:
			name = e.topName(i)
		case len(open) - 1:
			name = "at TD"
		}
		places = append(places, weakPlace{at.md, at.tvd, limit, name})
	}
	return places
}

// spare returns the least distance in kg/m3 of the equivalent circulating density from what the open hole stands, at a flow,
// and where it is met; not a number where nothing is known to compare with.
func (l *loop) spare(flow float64) (least float64, at weakPlace) {
	least = math.NaN()
	sum, k, inside := 0.0, 0, 0.0
	if len(l.up) > 0 {
		inside = l.lossUp(&l.up[0], flow)
	}
	for n := range l.places {
		p := &l.places[n]
		for k+1 < len(l.up) && p.md > l.up[k].bottom {
			sum += inside
			k++
			inside = l.lossUp(&l.up[k], flow)
		}
		g := &l.up[k]
		rubbed := sum + inside*min(max((p.md-g.top)/g.length(), 0), 1)
		if x := p.limit - (l.columnAt(p.tvd)+rubbed)/(gravity*p.tvd); !(x >= least) {
			least, at = x, *p
		}
	}
	return least, at
}

// ecdFigures adds the circulating and static densities at the top of the open hole and at TD.
func (e *evaluation) ecdFigures(i int, p *page, c *circulation) {
	l := c.loop
	p.group = "Circulating density, RKB"
	var top float64
	missing := first(c.missing, e.shoeGap(i))
	if !missing.open() {
		top = e.openFrom(i)
	}
	var static column.Stack
	if !missing.open() {
		static = e.well(i, l.fluid.Density)
	}
	level := func(key, name string, md float64) {
		var tvd, ecd, esd, rubbed float64
		if !missing.open() {
			tvd, ecd, rubbed = e.path.TVD(md), c.emwAt(md), c.frictionAt(md)
			esd = emw(static, tvd)
		}
		p.put(key, name, quantity.EMW, ecd, missing, func(w *Working) {
			w.Formula = "ECD = (outlet + (mud + cuttings) × g × (TVD - D) + friction above) / (g × TVD)"
			w.in("outlet", "pressure where returns leave", quantity.Pressure, l.atOutlet)
			w.in("D", "TVD where returns leave", quantity.Length, l.outlet)
			w.in("mud", "fluid pumped", quantity.Density, l.fluid.Density)
			w.in("cuttings", "added in the annulus", quantity.Density, l.outside-l.fluid.Density)
			w.in("friction", "in the annulus above", quantity.Pressure, rubbed)
			w.in("TVD", "from RKB", quantity.Length, tvd)
			w.Source = by(l.rub) + "; hydrostatics; cuttings as entered, else as carried"
			w.Note = stillPipe
		})
		p.also(key+".static", "static", quantity.EMW, esd, missing, func(w *Working) {
			w.Formula = "ESD = column at rest, without cuttings / (g × TVD)"
			w.in("mud", "fluid pumped", quantity.Density, l.fluid.Density)
			w.in("TVD", "from RKB", quantity.Length, tvd)
			w.Source = "hydrostatics; without a riser the sea stands above the seabed"
		})
		p.also(key+".pressure", "pressure", quantity.Pressure, ecd*gravity*tvd, missing, func(w *Working) {
			w.Formula = "p = ECD × g × TVD"
			w.in("ECD", "circulating density", quantity.EMW, ecd)
			w.in("TVD", "from RKB", quantity.Length, tvd)
			w.Source = "hydrostatics"
		})
	}
	level("hydraulics.ecd.shoe", "ECD "+e.topName(i), top)
	level("hydraulics.ecd.td", "ECD at TD", l.td)
}

// stillPipe is what every figure of friction leaves out.
const stillPipe = "String at rest in the middle of the hole: turning it mostly adds to friction, lying on the wall takes from it. " +
	"No gel strength; fluid not changed by pressure and temperature."

// ecdMargin adds the least margin of the circulating density below fracture and shoe test, and judges it.
func (e *evaluation) ecdMargin(i int, p *page, c *circulation) {
	missing := first(c.missing, e.shoeGap(i), c.loop.noFracture)
	var least, ecd float64
	var at weakPlace
	if !missing.open() {
		if least, at = c.loop.spare(c.flow); math.IsNaN(least) {
			missing = gap{"prognosis.row", "no prognosis is known for the open hole"}
		}
		ecd = at.limit - least
	}
	p.put("hydraulics.margin", "Below fracture", quantity.EMW, least, missing, func(w *Working) {
		w.Formula = "margin = fracture or shoe test - ECD, least at the last shoe, every row of the prognosis, where the annulus changes, and TD"
		w.in("limit", "there, from RKB", quantity.EMW, at.limit)
		w.in("ECD", "there", quantity.EMW, ecd)
		w.in("TVD", "where it is least", quantity.Length, at.tvd)
		w.Source = by(c.loop.rub) + "; prognosis in straight lines between its rows"
		w.Note = stillPipe
	}).Note = at.name
	p.also("hydraulics.margin.at", "at TVD", quantity.Length, at.tvd, missing, func(w *Working) {
		w.Formula = "TVD at which the margin is least"
		w.in("margin", "there", quantity.EMW, least)
		w.Source = "as the margin"
	})
	p.also("hydraulics.margin.ecd", "ECD there", quantity.EMW, ecd, missing, func(w *Working) {
		w.Formula = "ECD = limit - margin"
		w.in("limit", "fracture or shoe test there", quantity.EMW, at.limit)
		w.in("margin", "there", quantity.EMW, least)
		w.Source = by(c.loop.rub)
	})
	if missing.open() {
		return
	}
	flow := model.PathOf(i, "flow")
	judge := func(id model.RuleID, what string) { e.judge(id, i, least, what, at.name, at.md, flow) }
	judge(model.RuleBelowBreakdown, "ECD below fracture and shoe test")
	if !e.sections[i].rig {
		return // as for the fluid at rest: near the seabed the window is next to nothing
	}
	judge(model.RuleECDMargin, "ECD below fracture and shoe test")
	if e.hasHPHousing(i) {
		judge(model.RuleUSMarginECD, "Safe drilling margin, circulating")
	}
}

// ecdMarginWanted returns the margin in kg/m3 that the plan wants between the circulating density of section i and the rock:
// that of the rule where it is judged, else none.
func (e *evaluation) ecdMarginWanted(i int) float64 {
	if !e.sections[i].rig {
		return 0
	}
	return e.limit(model.RuleECDMargin, 0)
}
