package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/gas"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// trappedFigures adds the gas that stays in the closed stack, and what it becomes in the riser.
func (e *evaluation) trappedFigures(i int, p *page, k *killing) {
	p.group = "Gas trapped in the stack"
	volume, missing := e.trappedVolume(i)
	missing = first(missing, k.missing, e.heat.sea)
	g, bad := e.kickGas(i)
	missing = first(missing, bad)
	tvd := e.datum.BOPTop
	at := gas.State{Pressure: column.PressureOf(k.mud, tvd) + killsheet.Atmosphere, Temperature: e.heat.at(tvd)}
	under := gas.State{Pressure: column.PressureOf(k.in.mud, tvd) + killsheet.Atmosphere, Temperature: at.Temperature}
	surface := gas.State{Pressure: killsheet.Atmosphere, Temperature: e.heat.at(0)}
	var out killsheet.Released
	riser := bore.Volume(e.riserAnnulus(i, k))
	if !missing.open() {
		var err error
		if out, err = (killsheet.Trapped{Volume: volume, At: at}).Release(under, surface, riser, g.Growth); err != nil {
			missing = gap{model.PathOf(i, "kick.trapped"), err.Error()}
		}
	}
	why := func(w *Working) {
		w.Formula = "V2 = V1 × p1 × z2 × T2 / (p2 × z1 × T1)"
		w.in("V1", "trapped", quantity.Volume, volume)
		w.in("p1", "at the stack, kill mud above, absolute", quantity.Pressure, at.Pressure)
		w.in("T1", "there", quantity.Temperature, at.Temperature)
		w.in("p2", "at the surface, absolute", quantity.Pressure, surface.Pressure)
		w.in("T2", "at surface", quantity.Temperature, surface.Temperature)
		w.Source = "real gas law, z by " + gasEquation(e.plan.Sections[i].Kick.Equation).String()
		w.Note = "Swept out through the lines, with the preventer below closed, before the riser is put on kill mud and the stack is opened; the diverter is lined up. " + killCaution
	}
	f := p.put("control.trapped", "Trapped gas", quantity.Volume, volume, missing, why)
	if f.OK && out.Unloads {
		f.Note = "enough to unload the riser"
	}
	p.also("control.trapped.surface", "at surface", quantity.Volume, out.AtSurface, missing, why)
	p.also("control.trapped.displaced", "drives out", quantity.Volume, out.Displaced, missing, why)
}

// trappedVolume returns what stays between the closed preventer and the line's outlet, as entered, else the bore of the stack round
// the string.
func (e *evaluation) trappedVolume(i int) (float64, gap) {
	if own := e.plan.Sections[i].Kick.StackTraps; own.IsSet() {
		return own.SI, gap{}
	}
	if missing := first(e.drills[i].missing, e.boreGap(i)); missing.open() {
		return 0, missing
	}
	return bore.Volume(bore.Intervals(e.bores[i], e.drills[i].bodies, e.datum.BOPTop, e.datum.Wellhead)), gap{}
}
