package calc

import (
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// tripMarginFigures adds what keeps a trip out of section i from drawing a kick in: what the mud is over pore, what swab takes of it, and
// what the trade's formula wants for it.
func (e *evaluation) tripMarginFigures(i int, p *page) {
	p.group = "Trip"
	missing := e.windowGap(i)
	var m margin
	if !missing.open() {
		m = e.riserOnMargins(i).pore
	}
	p.put("control.trip.margin", "Trip margin", quantity.EMW, m.value, missing, func(w *Working) {
		w.Formula = "margin = mud - pore, least in the open hole"
		w.in("mud", "static", quantity.Density, e.plan.Sections[i].Density.SI)
		w.in("TVD", "where it is least", quantity.Length, m.tvd)
		w.Source = "hydrostatics"
		w.Note = "Swab takes from it: see the trip speeds on the hydraulics page, and fill the hole by the trip sheet. Flow check if in doubt."
	})
	fluid, bad := e.drillingFluid(i, e.sections[i].td)
	bad = first(bad, e.drills[i].missing)
	var wanted float64
	hole, pipe := e.sections[i].size, 0.0
	if parts := e.drills[i].parts; !bad.open() && len(parts) > 0 {
		pipe = parts[0].pipe.OD
		var err error
		if wanted, err = killsheet.TripMargin(fluid.YieldPoint(), hole, pipe); err != nil {
			bad = gap{model.PathOf(i, "hole"), err.Error()}
		}
	}
	p.also("control.trip.wanted", "by YP", quantity.EMW, wanted, bad, func(w *Working) {
		w.Formula = "margin = 16 × YP / (3 × g × (hole - pipe)); in field units YP / (11.7 × (hole - pipe))"
		w.in("YP", "yield point", quantity.YieldPoint, fluid.YieldPoint())
		w.in("hole", "in gauge", quantity.Diameter, hole)
		w.in("pipe", "highest part of the string", quantity.Diameter, pipe)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4 and 5, from memory"
		w.Note = "A rule of thumb without speed: swab by correlation stands on the hydraulics page."
	})
}

// riserOnMargins returns the margins of section i's mud over its open hole at rest.
func (e *evaluation) riserOnMargins(i int) margins {
	return e.leastMargins(e.well(i, e.density(i, e.sections[i].td)), e.openFrom(i), e.sections[i].td)
}
