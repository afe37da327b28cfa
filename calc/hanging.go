package calc

import (
	"borewalk/calc/steel"
	"borewalk/model"
	"borewalk/model/quantity"
)

// layer is a stretch of fluid round a string, on true vertical depth, and what hangs in it in N, in air.
type layer struct {
	name             string
	top, bottom      float64
	density, hanging float64
	lengths          []steel.Section // of the string that hang in it
}

// buoyed returns the weight in the layer's fluid, in N.
func (l layer) buoyed() float64 { return l.hanging * (1 - l.density/steel.Density) }

// hanging returns what hangs from the rotary or from the top of a string of section i, without friction, by the fluid
// that it stands in: the mud throughout when returns go to the rig, else air, sea and the fluid below the mudline in turn.
// The string is open or full of what surrounds it, so that the steel alone is buoyed.
func (e *evaluation) hanging(i int, lengths []steel.Section, mud float64) []layer {
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	layers := []layer{{name: "mud", bottom: bottom, density: mud}}
	if !e.sections[i].rig {
		layers = []layer{
			{name: "air", bottom: e.datum.MSL},
			{name: "sea", top: e.datum.MSL, bottom: e.datum.Mudline, density: e.seawater()},
			{name: "mud", top: e.datum.Mudline, bottom: bottom, density: mud},
		}
	}
	for k := range layers {
		l := &layers[k]
		l.lengths = lengths
		if len(layers) > 1 {
			l.lengths = clipped(lengths, l.top, l.bottom)
		}
		l.hanging = steel.InAir(l.lengths)
	}
	return layers
}

// weight returns the weight of all layers, in N.
func weight(layers []layer) (sum float64) {
	for _, l := range layers {
		sum += l.buoyed()
	}
	return sum
}

// layers puts the terms of a buoyed weight into the working.
func (w *Working) layers(layers []layer) {
	w.Formula = "W = sum over fluids of Wh × (1 - fluid / steel), Wh = sum of m × fall × g"
	for _, l := range layers {
		for _, s := range l.lengths {
			if s.LinearMass > 0 {
				w.in("m", "in "+l.name, quantity.LinearMass, s.LinearMass)
				w.in("fall", "vertical length", quantity.Length, s.Bottom-s.Top)
			}
		}
		w.in("Wh", "hangs in "+l.name, quantity.Force, l.hanging)
		w.in("fluid", l.name, quantity.Density, l.density)
	}
	w.in("steel", "density", quantity.Density, steel.Density)
	w.Source = "buoyancy factor (Bourgoyne et al., Applied Drilling Engineering, ch. 4)"
}

// clipped returns the part of a string between two true vertical depths.
func clipped(lengths []steel.Section, top, bottom float64) []steel.Section {
	part := make([]steel.Section, 0, len(lengths))
	for _, s := range lengths {
		s.Top, s.Bottom = max(s.Top, top), min(s.Bottom, bottom)
		if s.Top < s.Bottom {
			part = append(part, s)
		}
	}
	return part
}

// length returns a length of pipe between two depths along hole as a section on true vertical depth: on a slant the wall
// carries part of the weight, and what hangs is the mass per length times the fall.
func (e *evaluation) length(top, bottom float64, pipe model.Pipe, mass float64) steel.Section {
	return steel.Section{Top: e.path.TVD(top), Bottom: e.path.TVD(bottom), OD: pipe.OD, ID: pipe.ID, LinearMass: mass}
}

// leftInHole returns the fluid in which the casing of section i is run: what was spotted at TD, else the drilling fluid.
func (e *evaluation) leftInHole(i int) float64 {
	if s := &e.plan.Sections[i]; !e.sections[i].rig && s.SpotDensity.IsSet() {
		return s.SpotDensity.SI
	}
	return e.density(i, e.sections[i].td)
}
