package calc

import (
	"errors"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/friction"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// shallowFigures adds what a shallow flow of section i takes, where the plan has one.
func (e *evaluation) shallowFigures(i int, p *page) {
	s := &e.plan.Sections[i]
	if !s.Shallow.Sand.IsSet() {
		return
	}
	f := e.readFlowing(i)
	p.group = "Shallow sand"
	e.sandFigures(i, p, &f)
	p.group = "Dynamic kill"
	e.dynamicFigures(i, p, &f)
	if s.Shallow.Pilot.IsSet() && !f.missing.open() {
		e.judge(model.RulePilotHole, i, f.pilot, "Pilot hole through the shallow sand", "", f.md, model.PathOf(i, "shallow.pilot"))
	}
}

// sandFigures adds the pressure of the sand, and how it stands to what is in the hole, and to gas up to the seabed.
func (e *evaluation) sandFigures(i int, p *page, f *flowing) {
	s := &e.plan.Sections[i].Shallow
	emw, _ := column.EMW(f.pressure, f.tvd)
	taken := func(w *Working) {
		if s.Pressure.IsSet() {
			w.Formula, w.Source = "as entered", "the plan"
			w.in("EMW", "of the sand", quantity.EMW, s.Pressure.SI)
			return
		}
		w.Formula = "p = sea × g × (contact - air gap) - gas × g × column"
		w.in("sea", "seawater", quantity.Density, e.seawater())
		w.in("contact", "gas and water, TVD", quantity.Length, f.base)
		w.in("column", "of gas", quantity.Length, f.base-f.tvd)
		w.in("gas", "density", quantity.Density, f.gas)
		w.Source = "balance of columns; sea's gradient at the contact"
		w.Note = shallowCaution
	}
	p.put("control.sand", "Pressure of it", quantity.Pressure, f.pressure, f.missing, taken)
	p.also("control.sand.emw", "EMW", quantity.EMW, emw, f.missing, taken)
	inHole := e.underSeaPressure(e.density(i, f.md), f)
	p.put("control.sand.over", "Hole over it", quantity.Pressure, inHole-f.pressure, f.missing, func(w *Working) {
		w.Formula = "over = sea + fluid × g × (TVD - mudline) - sand"
		w.in("sea", "at the mudline", quantity.Pressure, e.seaPressure())
		w.in("fluid", "in the hole there", quantity.Density, e.density(i, f.md))
		w.in("TVD", "of the sand", quantity.Length, f.tvd)
		w.in("sand", "pressure", quantity.Pressure, f.pressure)
		w.Source = "hydrostatics"
		w.Note = shallowCaution
	})
	if !f.missing.open() {
		e.judge(model.RuleShallowOver, i, inHole-f.pressure, "Hole over the shallow sand", "", f.md, model.PathOf(i, "density"))
	}
	needed, missing := 0.0, f.missing
	if !missing.open() {
		var err error
		if needed, err = f.sea.DensityWithRiserMargin(f.pressure, f.tvd); err != nil {
			missing = gap{model.PathOf(i, "shallow.sand"), err.Error()}
		}
	}
	p.put("control.sand.mud", "Mud that holds it", quantity.Density, needed, missing, func(w *Working) {
		w.Formula = "mud = (sand - sea) / (g × (TVD - mudline))"
		w.in("sand", "pressure", quantity.Pressure, f.pressure)
		w.in("sea", "at the mudline", quantity.Pressure, e.seaPressure())
		w.in("TVD", "of the sand", quantity.Length, f.tvd)
		w.Source = "hydrostatics"
		w.Note = shallowCaution
	})
	var drives float64
	blown := f.missing
	if !blown.open() {
		atSeabed, err := killsheet.MASP(f.pressure, f.tvd, f.sea.Mudline, killsheet.Steady(f.gas))
		if err != nil {
			blown = gap{model.PathOf(i, "shallow.gas"), err.Error()}
		}
		drives = atSeabed - e.seaPressure()
	}
	p.put("control.sand.blown", "Over gas to seabed", quantity.Pressure, drives, blown, func(w *Working) {
		w.Formula = "drives = sand - sea - gas × g × (TVD - mudline)"
		w.in("sand", "pressure", quantity.Pressure, f.pressure)
		w.in("sea", "at the mudline", quantity.Pressure, e.seaPressure())
		w.in("gas", "density", quantity.Density, f.gas)
		w.in("TVD", "of the sand", quantity.Length, f.tvd)
		w.Source = "hydrostatics"
		w.Note = "What drives the flow when the hole has emptied itself to gas. " + shallowCaution
	})
}

// dynamicFigures adds the flow that holds the sand with what the hole is drilled with, and with the kill mud, in the hole as planned
// and in the pilot hole, and how long the kill mud lasts.
func (e *evaluation) dynamicFigures(i int, p *page, f *flowing) {
	s := &e.plan.Sections[i]
	light := e.mud(i, e.density(i, f.md))
	rub := e.rheologyGap(i)
	hole := 0.0
	if !f.missing.open() {
		hole = e.drilled(i, f.md, true)
	}
	e.dynamicFigure(i, p, f, "control.dynamic.light", "With the fluid", light, f.pilot, rub)
	if f.pilot != hole {
		e.dynamicFigure(i, p, f, "control.dynamic.light.full", "In the full hole", light, hole, rub)
	}
	kill := s.Riserless.KillDensity
	noKill := first(rub, needs(kill, model.PathOf(i, "riserless.kill_density"), "density of the kill mud"))
	flow := e.dynamicFigure(i, p, f, "control.dynamic.kill", "With kill mud", e.mud(i, kill.SI), f.pilot, noKill)
	missing := first(f.missing, noKill)
	p.put("control.dynamic.flow", "Kill flow planned", quantity.Flow, f.flow, f.missing, func(w *Working) {
		w.Formula, w.Source = "as entered, else what all pumps give through this string within their pressure", "the plan; "+by(e.rubbing(i))
		w.in("most", "all pumps, kill mud in the string", quantity.Flow, f.most)
		w.Note = shallowCaution
	})
	if !missing.open() {
		e.judge(model.RuleShallowFlow, i, min(f.flow, f.most)-flow, "Kill flow over what holds the shallow sand with kill mud", "", f.md, model.PathOf(i, "riserless.kill_density"))
	}
	if f.flow > f.most && !f.missing.open() {
		e.note(i, Caution, gap{model.PathOf(i, "shallow.flow"), "the kill flow is more than the pumps give through this string: what they give is compared"})
	}
	e.killLasts(i, p, f)
}

// dynamicFigure adds the flow at which friction makes up for what the column of a fluid lacks, and returns it.
func (e *evaluation) dynamicFigure(i int, p *page, f *flowing, key, name string, fluid friction.Fluid, hole float64, missing gap) (flow float64) {
	missing = first(f.missing, missing)
	const beyond = 20 // times what the pumps give: no rig has that
	var d killsheet.DynamicKill
	if !missing.open() {
		var way []stretch
		if way, missing = e.pastSand(i, f, hole); !missing.open() {
			rub := e.rubbing(i)
			d = killsheet.DynamicKill{Sea: f.sea, Mud: fluid.Density, TVD: f.tvd, Formation: f.pressure, Most: beyond * f.most,
				Friction: func(flow float64) (float64, error) {
					loss := 0.0
					for k := range way {
						loss += way[k].rubOutside(rub, fluid, flow) * way[k].length()
					}
					return loss, nil
				}}
			enough := false
			var err error
			if flow, enough, err = d.Flow(); err == nil && !enough {
				err = errors.New("no flow that any rig has holds the sand with this fluid")
			}
			if err != nil {
				missing = gap{model.PathOf(i, "shallow.sand"), err.Error()}
			}
		}
	}
	fig := p.put(key, name, quantity.Flow, flow, missing, func(w *Working) {
		w.Formula = "flow at which sea + fluid × g × (TVD - mudline) + friction in the annulus = sand"
		w.in("fluid", "pumped", quantity.Density, fluid.Density)
		w.in("hole", "through the sand", quantity.Diameter, hole)
		w.in("sand", "pressure", quantity.Pressure, f.pressure)
		w.in("TVD", "of the sand", quantity.Length, f.tvd)
		w.in("most", "all pumps", quantity.Flow, f.most)
		w.Source = "Blount and Soeiinah, World Oil, October 1981, from memory; friction: " + by(e.rubbing(i))
		w.Note = shallowCaution
	})
	switch {
	case !fig.OK:
	case flow == 0:
		fig.Note = "held at rest"
	case flow > f.most:
		fig.Note = "more than the pumps give"
	}
	at := f.flow
	var over float64
	if !missing.open() {
		over, _ = d.Over(at)
	}
	p.also(key+".over", "over sand", quantity.Pressure, over, missing, func(w *Working) {
		w.Formula = "over = sea + fluid × g × (TVD - mudline) + friction - sand"
		w.in("flow", "planned", quantity.Flow, at)
		w.in("fluid", "pumped", quantity.Density, fluid.Density)
		w.Source = "hydrostatics; friction: " + by(e.rubbing(i))
		w.Note = shallowCaution
	})
	return flow
}

// killLasts adds how long the kill mud aboard lasts at the kill flow, and how often it fills the hole.
func (e *evaluation) killLasts(i int, p *page, f *flowing) {
	s := &e.plan.Sections[i]
	stock := s.Riserless.KillVolume
	missing := first(f.missing, needs(stock, model.PathOf(i, "riserless.kill_volume"), "volume of the kill mud"))
	var lasts float64
	if !missing.open() {
		var err error
		if lasts, err = killsheet.Lasts(stock.SI, f.flow); err != nil {
			missing = gap{model.PathOf(i, "shallow.flow"), err.Error()}
		}
	}
	p.group = "Kill mud of the shallow flow"
	p.put("control.dynamic.lasts", "Kill mud lasts", quantity.Hours, lasts, missing, func(w *Working) {
		w.Formula = "time = aboard / flow"
		w.in("aboard", "kill mud", quantity.Volume, stock.SI)
		w.in("flow", "of the kill", quantity.Flow, f.flow)
		w.Source = "volume over flow"
		w.Note = shallowCaution
	})
	hole := 0.0
	if !missing.open() {
		hole = bore.Area(f.pilot) * (f.md - e.openFromSeabed(i))
	}
	p.also("control.dynamic.holes", "of the hole", quantity.Ratio, quotient(stock.SI, hole), missing, func(w *Working) {
		w.Formula = "share = aboard / open hole above the sand"
		w.in("aboard", "kill mud", quantity.Volume, stock.SI)
		w.in("hole", "down to the sand", quantity.Volume, hole)
		w.Source = "geometry"
	})
	if want := s.Shallow.Hours; want.IsSet() {
		p.also("control.dynamic.needs", "for hours", quantity.Volume, want.SI*f.flow, f.missing, func(w *Working) {
			w.Formula = "V = hours × flow"
			w.in("hours", "wanted", quantity.Hours, want.SI)
			w.in("flow", "of the kill", quantity.Flow, f.flow)
			w.Source = "flow by time"
		})
		if !missing.open() {
			e.judge(model.RuleShallowMud, i, lasts-want.SI, "Kill mud over the time that it is to last", "", f.md, model.PathOf(i, "riserless.kill_volume"))
		}
	}
}
