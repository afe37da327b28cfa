package calc

import (
	"errors"
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/friction"
	"borewalk/calc/gas"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// shallowCaution goes with every figure of a shallow flow.
const shallowCaution = "Never shut in. Pump at once, watch with ROV and sonar, be ready to move off; muster. With gas in the annulus more is needed than this. The site survey and the rig's shallow-gas plan decide."

// shallowGravity is that of a shallow gas where nothing is known of it (common practice: methane with a little more; from memory).
const shallowGravity = 0.6

// flowing is a shallow sand that flows into the hole of a section without a riser.
type flowing struct {
	missing  gap
	md, tvd  float64 // of its top
	pressure float64 // there, Pa
	gas      float64 // kg/m3
	base     float64 // TVD of the gas-water contact
	sea      killsheet.Seabed
	most     float64 // what all pumps give through the string
	flow     float64 // of the kill
	pilot    float64 // size of the hole through the sand
}

// readFlowing reads the shallow sand of section i.
func (e *evaluation) readFlowing(i int) flowing {
	s, h := &e.plan.Sections[i].Shallow, &e.sections[i]
	f := flowing{md: s.Sand.SI, missing: first(h.missing, e.pathGap, e.gaps.sea, e.columnGap(i), e.boreGap(i), e.pumpGap)}
	if f.missing.open() {
		return f
	}
	if f.md <= e.datum.Mudline {
		f.missing = gap{model.PathOf(i, "shallow.sand"), "the sand is not below the mudline"}
		return f
	}
	if f.md > h.td {
		f.missing = gap{model.PathOf(i, "shallow.sand"), "the sand is below the section's TD: it belongs to a deeper section"}
		return f
	}
	f.tvd = e.path.TVD(f.md)
	f.base = f.tvd + s.Base.SI
	f.sea = e.seabed()
	f.most = e.mostKillFlow(i)
	f.flow = usual(s.Flow, f.most)
	f.pilot = usual(s.Pilot, e.drilled(i, f.md, true))
	f.missing = e.sandPressure(i, &f)
	return f
}

// mostKillFlow returns the flow of the kill mud that the pumps give through section i's string, their pressure counted where it is known.
func (e *evaluation) mostKillFlow(i int) float64 {
	most, fitted := e.mostFlow(), e.liners()[0]
	l := *e.loop(i)
	if l.noString.open() || fitted.missing.open() || fitted.limit == 0 {
		return most
	}
	s := &e.plan.Sections[i]
	l.fluid = e.mud(i, usual(s.Riserless.KillDensity, l.fluid.Density))
	l.outside, l.pressed = l.fluid.Density, nil
	pressed, _ := e.mostThrough(&l, &fitted, gap{})
	return min(most, pressed)
}

// sandPressure takes the pressure at the top of the sand: as entered, else that of the sea's gradient at the contact less the gas.
func (e *evaluation) sandPressure(i int, f *flowing) gap {
	s := &e.plan.Sections[i].Shallow
	atBase := e.seawater() * gravity * (f.base - e.datum.MSL)
	if f.gas = s.Gas.SI; !s.Gas.IsSet() {
		g, err := gas.Natural(shallowGravity, gas.DranchukAbouKassem)
		if err == nil {
			f.gas, err = g.Density(gas.State{Pressure: atBase + killsheet.Atmosphere, Temperature: e.heat.at(f.tvd)})
		}
		if err != nil {
			return gap{model.PathOf(i, "shallow.gas"), err.Error()}
		}
	}
	if s.Pressure.IsSet() {
		f.pressure = column.PressureOf(s.Pressure.SI, f.tvd)
		return gap{}
	}
	top, err := killsheet.GasSand{Top: f.tvd, Base: f.base, Gas: f.gas}.TopPressure(atBase)
	if err != nil {
		return gap{model.PathOf(i, "shallow.base"), err.Error()}
	}
	f.pressure = top
	return gap{}
}

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

// underSeaPressure returns the pressure at the sand of a fluid below the sea.
func (e *evaluation) underSeaPressure(density float64, f *flowing) float64 {
	return e.seaPressure() + density*gravity*(f.tvd-e.datum.Mudline)
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

// pastSand returns the annulus from the sand up, the bit at its top, in a hole of a size where it is open.
func (e *evaluation) pastSand(i int, f *flowing, hole float64) ([]stretch, gap) {
	way, missing := e.outside(i, f.md)
	if missing.open() {
		return nil, missing
	}
	shoe, _, _ := e.lastShoe(i)
	for k := range way {
		if g := &way[k]; g.label == openHoleLabel && g.top >= shoe {
			g.bore = hole
			if g.part != nil && g.part.pipe.Widest >= hole {
				return nil, gap{model.PathOf(i, "shallow.pilot"), "the drill string does not fit the pilot hole: its own string has smaller collars"}
			}
		}
	}
	return way, gap{}
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

// openFromSeabed returns where the open hole of section i begins: the last shoe, or the mudline.
func (e *evaluation) openFromSeabed(i int) float64 {
	shoe, _, _ := e.lastShoe(i)
	return math.Max(shoe, e.datum.Mudline)
}
