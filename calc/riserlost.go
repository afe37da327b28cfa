package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// riserLostFigures adds what is lost at the wellhead and left at TD when the riser is gone and the sea stands above the wellhead.
// Without a riser margin that is no failure of the plan in deep water: the BOP is the barrier then, and what is lost is said.
func (e *evaluation) riserLostFigures(i int, p *page) {
	s := &e.plan.Sections[i]
	missing := first(e.columnGap(i), e.gaps.sea)
	mud := s.Density.SI
	var gone float64
	if !missing.open() {
		var err error
		if gone, err = e.seabed().Lost(mud); err != nil {
			missing = gap{model.PathOf(i, "density"), err.Error()}
		}
	}
	p.group = "Riser lost"
	lost := func(w *Working) {
		w.Formula = "lost = mud × g × mudline - sea × g × water depth"
		w.in("mud", "in the riser", quantity.Density, mud)
		w.in("sea", "seawater", quantity.Density, e.seawater())
		w.in("mudline", "from RKB", quantity.Length, e.datum.Mudline)
		w.in("water depth", "at MSL", quantity.Length, e.plan.Well.WaterDepth.SI)
		w.Source = "hydrostatics; drillingforgas.com, loss of primary control in floating drilling, failure of the riser"
		w.Note = "Lost everywhere below the seabed at once. Where pore pressure is then not held, the closed BOP is the barrier: shear, seal and test it by the rig's procedures."
	}
	p.put("control.riser.lost", "Pressure lost", quantity.Pressure, gone, missing, lost)
	var bottom, left float64
	if !missing.open() {
		bottom = e.deepest(i)
		left, _ = column.EMW(column.PressureOf(mud, bottom)-gone, bottom)
	}
	p.also("control.riser.lost.emw", "EMW at TD", quantity.EMW, left, missing, func(w *Working) {
		lost(w)
		w.Formula = "EMW = (mud × g × TVD - lost) / (g × TVD)"
		w.in("lost", "pressure", quantity.Pressure, gone)
		w.in("TVD", "at TD", quantity.Length, bottom)
	})
	e.wantedForRiser(i, p)
	e.disconnectFigures(i, p, missing)
}

// wantedForRiser adds the mud that would hold pore pressure everywhere with the riser gone.
func (e *evaluation) wantedForRiser(i int, p *page) {
	missing := first(e.windowGap(i), e.gaps.sea)
	var needs, at, pore float64
	if !missing.open() {
		for _, place := range e.openPlaces(i, e.sections[i].td, nil) {
			emw, ok := e.window.pore.At(place.tvd)
			mud, err := e.seabed().DensityWithRiserMargin(column.PressureOf(emw, place.tvd), place.tvd)
			if ok && err == nil && mud > needs {
				needs, at, pore = mud, place.tvd, emw
			}
		}
	}
	mud := e.plan.Sections[i].Density.SI
	why := func(w *Working) {
		w.Formula = "mud = (pore pressure - sea) / (g × (TVD - mudline)), the most in the open hole"
		w.in("pore", "prognosis there", quantity.EMW, pore)
		w.in("TVD", "where it is most", quantity.Length, at)
		w.in("sea", "at the mudline", quantity.Pressure, e.seaPressure())
		w.in("mudline", "from RKB", quantity.Length, e.datum.Mudline)
		w.Source = "hydrostatics; drillingformulas.com, riser margin (its printed result does not follow from its numbers: the balance does)"
		w.Note = "In deep water no mud below fracture can do it: the BOP is the barrier then. Not to be added to the trip margin: the larger counts."
	}
	p.group = "Mud with riser margin"
	p.put("control.riser.mud", "Mud with margin", quantity.Density, needs, missing, why)
	p.also("control.riser.more", "more", quantity.Density, needs-mud, missing, why)
	var over float64
	if !missing.open() && at > 0 {
		over, _ = e.seabed().RiserMargin(column.PressureOf(pore, at), at)
	}
	p.also("control.riser.margin", "over pore", quantity.EMW, over, missing, func(w *Working) {
		why(w)
		w.Formula = "margin = mud with it - pore, where it is most"
		w.in("mud with it", "needed", quantity.Density, needs)
	})
}

// disconnectFigures adds what an emergency disconnect leaves behind: the mud that runs out of the riser and the pressure under the
// closed shear rams.
func (e *evaluation) disconnectFigures(i int, p *page, missing gap) {
	missing = first(missing, e.gaps.bop, needs(e.plan.Rig.RiserID, "rig.riser_id", "riser ID"))
	riser := bore.Area(e.plan.Rig.RiserID.SI) * e.datum.BOPTop
	p.group = "Emergency disconnect"
	p.put("control.disconnect.mud", "Mud to the sea", quantity.Volume, riser, missing, func(w *Working) {
		w.Formula = "V = pi/4 × ID² × length of the riser"
		w.in("ID", "of the riser", quantity.Diameter, e.plan.Rig.RiserID.SI)
		w.in("length", "rotary to the stack", quantity.Length, e.datum.BOPTop)
		w.Source = "geometry; string and lines left out, with nothing dumped or displaced before"
	})
	var under, at float64
	pore := first(missing, e.windowGap(i))
	if !pore.open() {
		under, at = e.underShears(i)
	}
	p.also("control.disconnect.under", "under rams", quantity.Pressure, under, pore, func(w *Working) {
		w.Formula = "p = pore pressure - mud × g × (TVD - mudline) - sea, the most in the open hole, not below none; SICP as read + mud × g × mudline - sea where that is more"
		w.in("mud", "below the rams", quantity.Density, e.plan.Sections[i].Density.SI)
		w.in("TVD", "where it is most", quantity.Length, at)
		w.in("sea", "at the mudline", quantity.Pressure, e.seaPressure())
		w.Source = "hydrostatics"
		w.Note = "Over the sea, with mud below the rams, or as SICP was read. It rises as gas comes up under them."
	})
}

// seabed returns what presses on the well where no riser stands on it.
func (e *evaluation) seabed() killsheet.Seabed {
	return killsheet.Seabed{AirGap: e.datum.MSL, Mudline: e.datum.Mudline, Sea: e.seawater()}
}

// underShears returns the pressure over the sea that the shut shear rams hold with mud below them and no influx, and the TVD that
// gives it.
func (e *evaluation) underShears(i int) (pressure, tvd float64) {
	mud := e.plan.Sections[i].Density.SI
	for _, place := range e.openPlaces(i, e.sections[i].td, nil) {
		emw, ok := e.window.pore.At(place.tvd)
		left, err := e.seabed().Left(mud, column.PressureOf(emw, place.tvd), place.tvd)
		if ok && err == nil && (tvd == 0 || -left > pressure) {
			pressure, tvd = max(-left, 0), place.tvd
		}
	}
	in := &e.killOf(i).in
	if in.missing.open() {
		return pressure, tvd
	}
	if left, err := e.seabed().Left(mud, in.pressure(), in.tvd); in.measured && err == nil && -left > pressure {
		pressure, tvd = -left, in.tvd
	}
	if in.hasRead { // what the choke shows stands on the mud of its line, down to the stack
		at := column.PressureOf(mud, e.datum.Mudline) + in.read - e.seaPressure()
		if at > pressure {
			pressure, tvd = at, e.datum.Mudline
		}
	}
	return pressure, tvd
}
