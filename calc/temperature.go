package calc

import (
	"math"
	"slices"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// heat is the undisturbed temperature in K against true vertical depth: of the air and the sea down to the mudline, and of
// the rock below it.
type heat struct {
	rows            []column.Row // of the prognosis
	seabed, per     float64      // at the mudline, K, and K/m below it or below the last row
	surface         float64      // at MSL and over it
	msl, from, cold float64      // MSL, the mudline, and where the sea is as cold as the seabed; TVD
	sea, rock       gap          // what is missing for each
}

// roomTemperature is what steel is rated at, where the plan gives no temperature.
const roomTemperature = 293.15

// readHeat reads the undisturbed temperature: the prognosis' rows where it has them, else seabed and gradient.
func (e *evaluation) readHeat() {
	w := &e.plan.Well
	h := heat{seabed: roomTemperature, msl: e.datum.MSL, from: e.datum.Mudline, cold: e.datum.Mudline, surface: w.SurfaceTemperature.SI}
	if w.SeabedTemperature.IsSet() {
		h.seabed, h.per = w.SeabedTemperature.SI, w.GeothermalGradient.SI
	}
	if w.Thermocline.IsSet() {
		h.cold = min(h.cold, h.msl+w.Thermocline.SI)
	}
	for _, r := range e.plan.Window {
		if r.Temperature.IsSet() && r.Depth.IsSet() {
			h.rows = append(h.rows, column.Row{TVD: e.toRKB(r.Depth.SI), Value: r.Temperature.SI})
		}
	}
	seabed := first(e.gaps.mudline, needs(w.SeabedTemperature, "well.seabed_temperature", "seabed temperature"))
	h.sea = first(seabed, needs(w.SurfaceTemperature, "well.surface_temperature", "sea surface temperature"))
	h.rock = seabed
	if len(h.rows) == 0 {
		h.rock = first(seabed, needs(w.GeothermalGradient, "well.geothermal_gradient", "geothermal gradient"))
	}
	e.heat = h
}

// steel returns the temperature of a string at a true vertical depth: the rock's, along the rows given and by the gradient
// beyond them, and at and above the mudline the seabed's.
func (h *heat) steel(tvd float64) float64 {
	last := column.Row{TVD: h.from, Value: h.seabed}
	for _, r := range h.rows {
		if r.TVD > tvd {
			if r.TVD <= last.TVD || tvd <= last.TVD {
				return last.Value
			}
			return last.Value + (r.Value-last.Value)*(tvd-last.TVD)/(r.TVD-last.TVD)
		}
		last = r
	}
	return last.Value + h.per*math.Max(0, tvd-last.TVD)
}

// at returns the undisturbed temperature at a true vertical depth. The sea cools in a straight line from its surface to
// where it is as cold as the seabed.
func (h *heat) at(tvd float64) float64 {
	switch {
	case tvd >= h.from:
		return h.steel(tvd)
	case tvd <= h.msl:
		return h.surface
	case tvd >= h.cold:
		return h.seabed
	}
	return h.surface + (h.seabed-h.surface)*(tvd-h.msl)/(h.cold-h.msl)
}

// corners appends the true vertical depths between which the undisturbed temperature runs straight.
func (h *heat) corners(dst []float64) []float64 {
	dst = append(dst, h.msl, h.cold, h.from)
	for _, r := range h.rows {
		dst = append(dst, r.TVD)
	}
	return dst
}

// gradient returns the mean gradient of the rock in K/m from the mudline down to a true vertical depth.
func (h *heat) gradient(tvd float64) float64 { return (h.steel(tvd) - h.seabed) / (tvd - h.from) }

// down puts what an undisturbed temperature comes from into a working.
func (h *heat) down(w *Working, tvd float64) {
	w.Formula = "T = T1 + (T2 - T1) × (TVD - D1) / (D2 - D1)"
	w.Source = "straight lines between the rows of the prognosis that give a temperature, from the seabed down"
	above, below := column.Row{TVD: h.from, Value: h.seabed}, column.Row{}
	if k := slices.IndexFunc(h.rows, func(r column.Row) bool { return r.TVD > tvd }); k >= 0 {
		below = h.rows[k]
	}
	for _, r := range h.rows {
		if r.TVD <= tvd && r.TVD > above.TVD {
			above = r
		}
	}
	w.in("T1", "above", quantity.Temperature, above.Value)
	w.in("D1", "above, from RKB", quantity.Length, above.TVD)
	if below.TVD > 0 {
		w.in("T2", "below", quantity.Temperature, below.Value)
		w.in("D2", "below, from RKB", quantity.Length, below.TVD)
	} else {
		w.Formula = "T = T1 + gradient × (TVD - D1)"
		w.Source = "geothermal gradient on true vertical depth, from the seabed or the last row of the prognosis with a temperature"
		w.in("gradient", "geothermal", quantity.TemperatureGradient, h.per)
	}
	w.in("TVD", "from RKB", quantity.Length, tvd)
}

// temperatureFigures adds the temperatures of a section, at rest and with its mud going round.
func (e *evaluation) temperatureFigures(i int, p *page) {
	h := &e.heat
	missing := first(e.sections[i].missing, e.pathGap, h.rock)
	p.group = "Temperature"
	static := func(key, name string, md float64, missing gap) {
		var tvd, value float64
		if !missing.open() {
			tvd = e.path.TVD(md)
			value = h.steel(tvd)
		}
		p.put(key, name, quantity.Temperature, value, missing, func(w *Working) { h.down(w, tvd) })
	}
	static("temperature.td", "TD, static (BHST)", e.sections[i].td, missing)
	e.circulatingFigures(i, p)
	if c := &e.strings[i]; c.present {
		static("temperature.shoe", "Shoe, static", c.shoe, first(missing, c.noShoe))
	}
	seabed := first(e.gaps.mudline, needs(e.plan.Well.SeabedTemperature, "well.seabed_temperature", "seabed temperature"))
	p.put("temperature.seabed", "Seabed, static", quantity.Temperature, h.seabed, seabed, func(w *Working) {
		w.Formula = "as entered"
		w.in("T", "seabed", quantity.Temperature, h.seabed)
		w.Source = "the plan"
	})
}

// circulatingFigures adds the temperatures of the mud going round at the planned flow, the bit at TD.
func (e *evaluation) circulatingFigures(i int, p *page) {
	c, missing := e.drillingRound(i)
	var bottom, top, hottest, at float64
	if !missing.open() {
		bottom, top = c.bottom(), c.top()
		hottest, at = c.hottest()
	}
	wells := e.otherWells(c.foot, missing)
	p.put("temperature.bhct", "TD, BHCT modelled", quantity.Temperature, bottom, missing, func(w *Working) {
		c.working(w)
		wells.silence(w)
	}).Note = steady
	wells.figure(p, "temperature.bhct.empirical")
	p.put("temperature.hottest", "Hottest mud", quantity.Temperature, hottest, missing, func(w *Working) { c.working(w) })
	p.also("temperature.hottest.at", "at TVD", quantity.Length, at, missing, func(w *Working) { c.working(w) })
	name := "Flowline"
	if !e.sections[i].rig {
		name = "Returns, seabed"
	}
	p.put("temperature.flowline", name, quantity.Temperature, top, missing, func(w *Working) { c.working(w) })
	e.inletFigure(i, p, c, missing)
}

// inletFigure adds the temperature of the mud pumped in, which all the others follow.
func (e *evaluation) inletFigure(i int, p *page, c *round, missing gap) {
	p.put("temperature.inlet", "Mud in", quantity.Temperature, c.Inlet, missing, func(w *Working) {
		switch {
		case e.plan.Sections[i].Circulating.Inlet.IsSet():
			w.Formula = "as entered"
			w.in("Tin", "pumped in", quantity.Temperature, c.Inlet)
			w.Source = "the plan"
		case c.given > 0:
			w.Formula = "Tin = sea surface's, as nothing comes back"
			w.in("Tin", "sea surface", quantity.Temperature, c.Inlet)
			w.Source = "common practice, from memory"
		default:
			w.Formula = "Tin = what comes back - what the pits take, or the sea surface's if that is hotter"
			w.in("back", "at the flowline", quantity.Temperature, c.top())
			w.in("cooled", "by the pits", quantity.TemperatureRise, c.cooled)
			w.in("sea", "at its surface", quantity.Temperature, e.heat.surface)
			w.Source = "heat balance with the mud settled; what common pits without a cooler take is from memory"
			w.Note = "Pits with a cooler take more: enter what they do."
		}
	})
}

// steady marks a circulating temperature as what it is.
const steady = "steady, estimate"

// cementTemperatures adds the temperatures at the shoe that the slurries are tested at, and judges the tests.
func (e *evaluation) cementTemperatures(i int, p *page, job *cementJob) {
	h := &e.heat
	still := first(job.missing, e.pathGap, h.rock)
	var tvd, static, bottom float64
	if !still.open() {
		tvd = e.path.TVD(job.shoe)
		static = h.steel(tvd)
	}
	c, missing := e.cementRound(i, job, figureCells)
	if !missing.open() {
		bottom = c.bottom()
	}
	wells := e.otherWells(c.foot, missing)
	p.group = "Temperature"
	p.put("temperature.cement.bhst", "Shoe, static", quantity.Temperature, static, still, func(w *Working) { h.down(w, tvd) })
	p.put("temperature.cement.bhct", "Shoe, BHCT modelled", quantity.Temperature, bottom, missing, func(w *Working) {
		c.working(w)
		w.Note += " Worked out at the mixing rate and at the displacing rate: this is the hotter."
		wells.silence(w)
	}).Note = steady
	wells.figure(p, "temperature.cement.bhct.empirical")
	for k := range e.plan.Sections[i].Slurries {
		q := &e.plan.Sections[i].Slurries[k]
		if !q.TestTemperature.IsSet() {
			continue
		}
		over := q.TestTemperature.SI - math.Max(bottom, wells.value)
		p.put("temperature."+slurryKey(k)+".test", slurryName(q, k)+", test", quantity.TemperatureRise, over, missing, func(w *Working) {
			w.Formula = "over = temperature of the thickening test - the hotter BHCT at the shoe"
			w.in("test", "of the laboratory", quantity.Temperature, q.TestTemperature.SI)
			w.in("model", "BHCT", quantity.Temperature, bottom)
			if wells.value > 0 {
				w.in("wells", "BHCT by other wells", quantity.Temperature, wells.value)
			}
			w.Source = "common practice; API RP 10B-2 tests at the bottom-hole circulating temperature"
			w.Note = "A test that is too cool shows a thickening time that is too long; one that is too hot lets the cement be held back for longer than it needs. The laboratory's and the operator's temperatures count."
		}).Note = "over BHCT"
		if !missing.open() && !math.IsNaN(over) {
			e.judge(model.RuleTestTemperature, i, math.Max(0, -over), "Thickening test cooler than the hotter circulating temperature, "+slurryName(q, k), "", 0, slurryPath(i, k, "test_temperature"))
		}
	}
}
