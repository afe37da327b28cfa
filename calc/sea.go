package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/calc/water"
	"borewalk/model"
	"borewalk/model/quantity"
)

// ocean is the sea by salinity, temperature and pressure: densities in kg/m3, the pressure at the mudline in Pa.
type ocean struct {
	missing                         gap
	counts                          bool // it stands in place of the density that is entered
	salinity, surface, seabed, mean float64
	pressure                        float64
}

// oceanSteps is in how many steps each straight piece of the sea's temperature is summed: the equation is so smooth that
// the sum is right to 1 Pa.
const oceanSteps = 2

// usualSalinity is the open ocean's, where the plan gives none.
const usualSalinity = 35

// readOcean works the sea out, and says what is missing for the one that counts.
func (e *evaluation) readOcean() {
	well, h := &e.plan.Well, &e.heat
	o := ocean{counts: well.SeaBy == model.SeaByDepth, salinity: usual(well.Salinity, usualSalinity), missing: h.sea}
	density := func(tvd, pressure float64) float64 {
		if d, ok := water.Sea(o.salinity, h.at(tvd), pressure); ok {
			return d
		}
		return math.NaN()
	}
	if !o.missing.open() {
		o.surface = density(h.msl, 0)
		o.pressure = column.Settle(0, h.msl, h.cold, oceanSteps, density)
		o.pressure = column.Settle(o.pressure, h.cold, h.from, oceanSteps, density)
		o.seabed = density(h.from, o.pressure)
		o.mean = o.pressure / (gravity * (h.from - h.msl))
		if math.IsNaN(o.seabed) || math.IsNaN(o.mean) || !(o.mean > 0) {
			o.missing = gap{"well.salinity", "salinity or temperature of the sea is beyond its equation of state"}
		}
	}
	e.ocean = o
	e.gaps.sea = first(e.gaps.mudline, needs(well.Seawater, "well.seawater", "seawater density"))
	if o.counts {
		e.gaps.sea = o.missing
	}
}

// seawater returns the density of the sea that counts, kg/m3: as entered, or the mean down to the mudline. Every column of
// sea is of this density.
func (e *evaluation) seawater() float64 {
	if e.ocean.counts {
		return e.ocean.mean
	}
	return e.plan.Well.Seawater.SI
}

// seaFigures adds the sea by its equation of state, beside the density that is entered.
func (e *evaluation) seaFigures(p *page) {
	o, h := &e.ocean, &e.heat
	p.group = "Sea, by salinity, temperature and pressure"
	note := "for comparison"
	if o.counts {
		note = "counts"
	}
	at := func(temperature, pressure float64) func(*Working) {
		return func(w *Working) {
			w.Formula = "rho = rho(S, t, 0) / (1 - p / K(S, t, p)), the international equation of state of seawater (EOS-80)"
			w.in("S", "practical salinity", quantity.Number, o.salinity)
			w.in("t", "temperature", quantity.Temperature, temperature)
			w.in("p", "above the atmosphere", quantity.Pressure, pressure)
			w.Source = "UNESCO Technical Papers in Marine Science 36 (1981) and 44 (1983)"
		}
	}
	p.put("mud.sea.surface", "Density", quantity.Density, o.surface, o.missing, at(h.surface, 0))
	p.also("mud.sea.seabed", "at seabed", quantity.Density, o.seabed, o.missing, at(h.seabed, o.pressure))
	entered := first(o.missing, needs(e.plan.Well.Seawater, "well.seawater", "seawater density"))
	p.put("mud.sea.mean", "Mean to mudline", quantity.Density, o.mean, o.missing, func(w *Working) {
		w.Formula = "mean = p / (g × water depth)"
		w.in("p", "at the mudline", quantity.Pressure, o.pressure)
		w.in("water depth", "at MSL", quantity.Length, h.from-h.msl)
		w.Source = "hydrostatics"
	}).Note = note
	p.also("mud.sea.mean.over", "over entered", quantity.Density, o.mean-e.plan.Well.Seawater.SI, entered, func(w *Working) {
		w.Formula = "over = mean - entered"
		w.in("mean", "to the mudline", quantity.Density, o.mean)
		w.in("entered", "seawater", quantity.Density, e.plan.Well.Seawater.SI)
		w.Source = "hydrostatics"
	})
	plain := e.plan.Well.Seawater.SI * gravity * (h.from - h.msl)
	p.put("mud.sea.pressure", "At mudline", quantity.Pressure, o.pressure, o.missing, func(w *Working) {
		w.Formula = "dp/dz = g × rho(S, t(z), p), summed from the surface down"
		w.in("S", "practical salinity", quantity.Number, o.salinity)
		w.in("surface", "temperature", quantity.Temperature, h.surface)
		w.in("seabed", "temperature", quantity.Temperature, h.seabed)
		w.in("thermocline", "depth below MSL with the seabed's temperature", quantity.Length, h.cold-h.msl)
		w.in("water depth", "at MSL", quantity.Length, h.from-h.msl)
		w.Source = "EOS-80 (UNESCO 44, 1983); standard gravity; Runge-Kutta of fourth order"
		w.Note = "Salinity is the same at all depths. Tide, waves and the weight of the air are left out."
	})
	p.also("mud.sea.pressure.over", "over entered", quantity.Pressure, o.pressure-plain, entered, func(w *Working) {
		w.Formula = "over = p - entered × g × water depth"
		w.in("p", "at the mudline", quantity.Pressure, o.pressure)
		w.in("entered", "seawater", quantity.Density, e.plan.Well.Seawater.SI)
		w.in("water depth", "at MSL", quantity.Length, h.from-h.msl)
		w.Source = "hydrostatics"
	})
}
