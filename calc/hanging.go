package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/steel"
	"borewalk/model"
	"borewalk/model/quantity"
)

// layer is a stretch of fluid round a string, on true vertical depth, and what hangs in it in N, in air.
type layer struct {
	name             string
	top, bottom      float64
	density, inside  float64 // of the fluid round the string and of that in it
	hanging, filling float64 // N; filling is what the fluid inside weighs over the fluid outside
	lengths          []steel.Section
}

// perMetre returns the weight in N/m of pipe in the layer by its mass per length and its bore: steel less the fluid that it
// displaces, and what the fluid inside weighs more than as much of that outside.
func (l *layer) perMetre(mass, id float64) float64 {
	return gravity * (mass*(1-l.density/steel.Density) + bore.Area(id)*(l.inside-l.density))
}

// buoyed returns the weight in the layer's fluids, in N.
func (l *layer) buoyed() float64 { return l.hanging*(1-l.density/steel.Density) + l.filling }

// hanging returns what hangs from the rotary or from the top of a string of section i, without friction, by the fluid
// that it stands in: the mud throughout when returns go to the rig, else air, sea and the fluid below the mudline in turn.
// The string is open or full of what surrounds it, so that the steel alone is buoyed.
func (e *evaluation) hanging(i int, lengths []steel.Section, mud float64) []layer {
	return e.hung(i, lengths, mud, false)
}

// hangingFull returns what hangs of the drill string of section i, as hanging does, but full of mud up to the rotary: without a
// riser the mud inside is not held up by what stands outside.
func (e *evaluation) hangingFull(i int, lengths []steel.Section, mud float64) []layer {
	return e.hung(i, lengths, mud, true)
}

// hung lays a string out by the fluids that it stands in, full of mud or of what surrounds it.
func (e *evaluation) hung(i int, lengths []steel.Section, mud float64, filled bool) []layer {
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
		if l.inside = l.density; filled {
			l.inside = mud
		}
		l.lengths = lengths
		if len(layers) > 1 {
			l.lengths = clipped(lengths, l.top, l.bottom)
		}
		l.hanging = steel.InAir(l.lengths)
		l.filling = steel.Buoyed(l.lengths, l.inside, l.density) - steel.Buoyed(l.lengths, l.density, l.density)
	}
	return layers
}

// weight returns the weight of all layers, in N.
func weight(layers []layer) (sum float64) {
	for k := range layers {
		sum += layers[k].buoyed()
	}
	return sum
}

// filled is how the formula of a buoyed weight goes on where the fluid inside is another than that outside; nothing where it
// is the same throughout.
func filled(layers []layer) string {
	for k := range layers {
		if layers[k].inside != layers[k].density {
			return " + bore × fall × g × (inside - fluid)"
		}
	}
	return ""
}

// fluids puts what is round a string, and what is in it, into the working.
func (w *Working) fluids(layers []layer) {
	for k := range layers {
		w.in("fluid", layers[k].name, quantity.Density, layers[k].density)
	}
	if filled(layers) != "" {
		w.in("inside", "mud, up to the rotary", quantity.Density, layers[0].inside)
	}
}

// filledNote says what a drill string without a riser is full of.
const filledNote = " Without a riser: string full of mud to the rotary, as while pumping or over a float; where it drains to what the sea holds it weighs less."

// layers puts the terms of a buoyed weight into the working.
func (w *Working) layers(layers []layer) {
	two := filled(layers) != ""
	w.Formula = "W = sum over fluids of Wh × (1 - fluid / steel), Wh = sum of m × fall × g"
	if two {
		w.Formula = "W = sum over fluids of Wh × (1 - fluid / steel) + Wf, Wh = sum of m × fall × g, Wf = sum of pi/4 × ID² × fall × g × (inside - fluid)"
	}
	for _, l := range layers {
		for _, s := range l.lengths {
			if s.LinearMass > 0 {
				w.in("m", "in "+l.name, quantity.LinearMass, s.LinearMass)
				w.in("fall", "vertical length", quantity.Length, s.Bottom-s.Top)
			}
			if two && s.ID > 0 {
				w.in("ID", "bore", quantity.Diameter, s.ID)
			}
		}
		w.in("Wh", "hangs in "+l.name, quantity.Force, l.hanging)
		w.in("fluid", l.name, quantity.Density, l.density)
		if two {
			w.in("inside", "in the string", quantity.Density, l.inside)
			w.in("Wf", "of the fluid inside", quantity.Force, l.filling)
		}
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
