package calc

import (
	"strconv"

	"borewalk/calc/friction"
	"borewalk/model/quantity"
)

// passageFigures adds a line for a stretch in which fluid rubs: its loss, length, velocity and Reynolds number, with the regime
// as the note. why adds diameters and flow to the working.
func (e *evaluation) passageFigures(p *page, key, name string, c *circulation, g *stretch, loss float64, seen friction.Flow,
	why func(*Working)) {
	l := c.loop
	p.put(key, name, quantity.Pressure, loss, gap{}, func(w *Working) {
		w.Formula = "p = G × L × (1 - share) + Gj × L × share, tool joints by their share"
		why(w)
		w.fluid(l.fluid)
		w.in("G", "friction beside the body", quantity.Gradient, seen.Loss)
		w.in("L", "along hole", quantity.Length, g.length())
		w.Source = by(l.rub)
		w.Note = stillPipe
	}).Note = seen.Regime.String()
	p.also(key+".length", "length", quantity.Length, g.length(), gap{}, func(w *Working) {
		w.Formula = "L = bottom - top, along hole"
		w.in("bottom", "along hole", quantity.Length, g.bottom)
		w.in("top", "along hole", quantity.Length, g.top)
		w.Source = "geometry"
	})
	p.also(key+".velocity", "velocity", quantity.Velocity, seen.Velocity, gap{}, func(w *Working) {
		w.Formula = "v = q / area beside the body"
		why(w)
		w.Source = "geometry"
	})
	p.also(key+".reynolds", "Reynolds", quantity.Count, seen.Reynolds, gap{}, func(w *Working) {
		w.Formula = "Reynolds number as the correlation counts it"
		why(w)
		w.fluid(l.fluid)
		w.in("v", "velocity", quantity.Velocity, seen.Velocity)
		w.Source = by(l.rub)
	})
}

// losses are what a section's way takes at its planned flow, in Pa.
type losses struct {
	missing                                        gap
	whole, lines, nozzles, annulus, riser, columns float64
}

// losses returns what takes the standpipe's pressure; annulus and riser also where the rest is missing.
func (c *circulation) losses() (x losses) {
	l := c.loop
	x.missing = first(c.missing, l.noString)
	if !x.missing.open() {
		x.whole, x.lines, x.nozzles, x.columns = l.standpipe(c.flow), l.lossSurface(c.flow), l.lossBit(c.flow), l.columns()
	}
	for k := range l.up {
		if l.up[k].bottom <= l.foot {
			x.riser = c.above[k]
		}
		x.annulus = c.above[k]
	}
	x.annulus -= x.riser
	return x
}

// standpipeFigure adds the standpipe's pressure.
func (e *evaluation) standpipeFigure(p *page, c *circulation) {
	l, x := c.loop, c.losses()
	f := p.put("hydraulics.standpipe", "Standpipe", quantity.Pressure, max(x.whole, 0), x.missing, func(w *Working) {
		w.Formula = "standpipe = lines + string + bit + annulus + riser + columns, none below zero"
		w.in("lines", "at surface", quantity.Pressure, x.lines)
		for k := range l.down {
			w.in("string", l.down[k].part.label(), quantity.Pressure, l.lossDown(&l.down[k], c.flow))
		}
		w.in("bit", "nozzles", quantity.Pressure, x.nozzles)
		w.in("annulus", "below the riser", quantity.Pressure, x.annulus)
		w.in("riser", "with the booster", quantity.Pressure, x.riser)
		w.in("columns", "outside less inside", quantity.Pressure, x.columns)
		w.Source = by(l.rub) + "; hydrostatics"
		w.Note = stillPipe
	})
	if !x.missing.open() && x.whole < 0 {
		f.Note = "the string runs empty at its top"
	}
}

// partFlowFigures adds what each part of the way takes of the standpipe's pressure.
func (e *evaluation) partFlowFigures(i int, p *page, c *circulation) {
	l, x := c.loop, c.losses()
	p.group = "Standpipe, part by part"
	whole, missing := x.whole, x.missing
	part := func(key, name, note string, value float64, missing gap, why func(*Working)) {
		p.put(key, name, quantity.Pressure, value, missing, why).Note = note
		if !(whole > 0) {
			return
		}
		p.also(key+".share", "of standpipe", quantity.Ratio, value/whole, missing, func(w *Working) {
			w.Formula = "share = p / standpipe"
			w.in("p", "this part", quantity.Pressure, value)
			w.in("standpipe", "pressure", quantity.Pressure, whole)
			w.Source = "common practice"
		})
	}
	if l.surface.bottom > 0 && !missing.open() {
		part("hydraulics.surface", "Surface lines", "", x.lines, missing, func(w *Working) {
			w.Formula = "p = G × L in one pipe that stands for the lines"
			w.in("q", "flow", quantity.Flow, c.flow)
			w.fluid(l.fluid)
			w.in("d", "equivalent ID", quantity.Diameter, l.surface.bore)
			w.in("L", "equivalent length", quantity.Length, l.surface.length())
			w.in("G", "friction", quantity.Gradient, l.rub.Pipe(l.fluid, c.flow, l.surface.bore))
			w.Source = by(l.rub)
		})
	}
	if !missing.open() {
		stringLosses(c, part)
	}
	part("hydraulics.nozzles", "Nozzles", "", x.nozzles, missing, func(w *Working) { w.nozzles(c) })
	part("hydraulics.annulus", "Annulus", "", x.annulus, c.missing, func(w *Working) {
		w.Formula = "p = sum of friction over the annulus below the riser"
		for k := range l.up {
			if g := &l.up[k]; g.bottom > l.foot {
				w.in("p "+strconv.Itoa(k+1), g.label, quantity.Pressure, l.lossUp(g, c.flow))
			}
		}
		w.Source = by(l.rub)
	})
	if e.sections[i].rig {
		part("hydraulics.riser", "Riser", "", x.riser, c.missing, func(w *Working) {
			w.Formula = "p = sum of friction in the riser, flow and booster together"
			w.in("flow", "through the bit", quantity.Flow, c.flow)
			w.in("booster", "into the riser's foot", quantity.Flow, l.booster)
			for k := range l.up {
				if g := &l.up[k]; g.bottom <= l.foot {
					w.in("p "+strconv.Itoa(k+1), g.label, quantity.Pressure, l.lossUp(g, c.flow))
				}
			}
			w.Source = by(l.rub)
		})
	}
	part("hydraulics.columns", "Columns", "outside less inside", x.columns, missing, func(w *Working) {
		w.Formula = "columns = outlet + (mud + cuttings) × g × (TVD - D) - mud × g × TVD"
		w.in("outlet", "pressure where returns leave", quantity.Pressure, l.atOutlet)
		w.in("D", "TVD where returns leave", quantity.Length, l.outlet)
		w.in("mud", "fluid pumped", quantity.Density, l.fluid.Density)
		w.in("cuttings", "added in the annulus", quantity.Density, l.outside-l.fluid.Density)
		w.in("TVD", "at the bit", quantity.Length, l.tvd)
		w.Source = "hydrostatics"
		w.Note = "What stands outside less what stands inside. Without a riser the sea outside is lighter than mud inside, which then pulls the string's column down."
	})
}

// stringLosses adds what each part of the string takes, from the top down.
func stringLosses(c *circulation, part func(key, name, note string, value float64, missing gap, why func(*Working))) {
	l := c.loop
	for k := range l.down {
		g := &l.down[k]
		key, row := "hydraulics.string."+strconv.Itoa(g.part.number), g.part.row
		if row.Drop.IsSet() {
			part(key, g.part.label(), "as stated", l.lossDown(g, c.flow), gap{}, func(w *Working) {
				w.Formula = "p = p0 × (rho / rho0) × (q / q0)²"
				w.in("p0", "loss as stated", quantity.Pressure, row.Drop.SI)
				w.in("rho", "fluid pumped", quantity.Density, l.fluid.Density)
				w.in("rho0", "fluid in which it is stated", quantity.Density, row.DropDensity.SI)
				w.in("q", "flow", quantity.Flow, c.flow)
				w.in("q0", "flow at which it is stated", quantity.Flow, row.DropFlow.SI)
				w.Source = "common practice: as through a restriction; the maker's curve goes before it"
			})
			continue
		}
		seen := l.rub.InPipe(l.fluid, c.flow, g.part.pipe.ID)
		part(key, g.part.label(), seen.Regime.String(), l.lossDown(g, c.flow), gap{}, func(w *Working) {
			w.Formula = "p = G × L × (1 - share) + Gj × L × share, tool joints by their share"
			w.in("q", "flow", quantity.Flow, c.flow)
			w.fluid(l.fluid)
			w.in("d", "ID", quantity.Diameter, g.part.pipe.ID)
			w.in("v", "velocity", quantity.Velocity, seen.Velocity)
			w.in("Re", "Reynolds number", quantity.Count, seen.Reynolds)
			w.in("G", "friction in the body", quantity.Gradient, seen.Loss)
			if narrow := g.part.pipe.Drift; narrow > 0 && narrow < g.part.pipe.ID {
				w.in("dj", "bore of the tool joints", quantity.Diameter, narrow)
				w.in("share", "of the length", quantity.Ratio, g.part.jointShare())
				w.in("Gj", "friction in them", quantity.Gradient, l.rub.Pipe(l.fluid, c.flow, narrow))
			}
			w.in("L", "along hole", quantity.Length, g.length())
			w.Source = by(l.rub)
		})
	}
}

// annulusFlowFigures lists the annulus, stretch by stretch.
func (e *evaluation) annulusFlowFigures(p *page, c *circulation) {
	l := c.loop
	p.group = "Up the annulus"
	if c.missing.open() {
		return
	}
	for k := range l.up {
		g := &l.up[k]
		flow := l.flowIn(g, c.flow)
		seen := l.seen(g, c.flow)
		loss := c.above[k]
		if k > 0 {
			loss -= c.above[k-1]
		}
		name := g.label
		if g.part != nil {
			name += ", " + g.part.row.Item
		}
		key := "hydraulics.annulus." + strconv.Itoa(k+1)
		why := func(w *Working) {
			w.in("q", "flow here", quantity.Flow, flow)
			w.in("D", "bore", quantity.Diameter, g.bore)
			if g.part != nil {
				w.in("d", "string's body", quantity.Diameter, g.part.pipe.OD)
			}
		}
		e.passageFigures(p, key, name, c, g, loss, seen, func(w *Working) {
			why(w)
			if g.part == nil {
				return
			}
			if share := g.part.jointShare(); share > 0 && g.part.pipe.Widest > g.part.pipe.OD {
				w.in("dj", "tool joints", quantity.Diameter, g.part.pipe.Widest)
				w.in("share", "of the length", quantity.Ratio, share)
				w.in("Gj", "friction beside them", quantity.Gradient, l.rub.Annulus(l.fluid, flow, g.bore, g.part.pipe.Widest))
			}
		})
	}
}
