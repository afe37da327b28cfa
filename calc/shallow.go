package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/calc/gas"
	"borewalk/calc/killsheet"
	"borewalk/model"
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

// underSeaPressure returns the pressure at the sand of a fluid below the sea.
func (e *evaluation) underSeaPressure(density float64, f *flowing) float64 {
	return e.seaPressure() + density*gravity*(f.tvd-e.datum.Mudline)
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

// openFromSeabed returns where the open hole of section i begins: the last shoe, or the mudline.
func (e *evaluation) openFromSeabed(i int) float64 {
	shoe, _, _ := e.lastShoe(i)
	return math.Max(shoe, e.datum.Mudline)
}
