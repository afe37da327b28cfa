package calc

import (
	"strconv"

	"borewalk/calc/friction"
	"borewalk/calc/nozzle"
	"borewalk/model"
)

// usualCuttings is the density in kg/m3 that cuttings add where the plan gives none (common practice, from memory).
const usualCuttings = 10.0

// loop is the way of a section's fluid with its bit at TD: from the pump through string and bit, and up the annulus to where
// the returns leave. It can be worked out at any flow.
//
// The pressure in the annulus begins where the returns leave: at the rotary with a riser, at the seabed under the pressure of
// the sea without one. Going down it grows by the column, cuttings counted, and by the friction of what is above. The
// standpipe has to bring that pressure to the bit, through everything that rubs inside, with the column inside helping:
//
//	standpipe = lines + string + tools + bit + annulus + (column outside - column inside)
//
// With a riser the two columns differ by the cuttings. Without one the sea stands outside above the seabed, and mud heavier
// than it pulls the string's own column down: a standpipe pressure below zero says that the string runs empty at its top.
type loop struct {
	noAnnulus gap // what is missing for the annulus
	noString  gap // what is missing for the standpipe's pressure

	fluid   friction.Fluid
	rub     friction.Correlation
	down    []stretch // inside the string, top down; cutting parts only where a loss is stated for them
	up      []stretch // outside it, top down
	surface stretch   // lines at surface, as one pipe
	bit     bit

	booster    float64 // m3/s on top of the flow in the riser
	foot       float64 // of the riser, along hole: the booster comes in there; zero without a riser
	outlet     float64 // where the returns leave: TVD, and the pressure there
	atOutlet   float64
	outside    float64 // density in the annulus, cuttings counted
	td, tvd    float64
	places     []weakPlace // in the open hole, top down
	noFracture gap
	pressed    *usedUp    // once it is asked for
	clean      *cleanHole // the cuttings in the annulus; nil where that is missing
}

// bit is what the bit's nozzles are.
type bit struct {
	missing         gap
	set             nozzle.Set // nil where one area is given
	area, discharge float64
}

// loop returns the way of section i's fluid, worked out once.
func (e *evaluation) loop(i int) *loop {
	if e.loops == nil {
		e.loops = make([]*loop, len(e.sections))
	}
	if e.loops[i] == nil {
		e.loops[i] = e.layLoop(i)
	}
	return e.loops[i]
}

func (e *evaluation) layLoop(i int) *loop {
	l := &loop{rub: e.rubbing(i), bit: e.nozzles(i)}
	h := &e.sections[i]
	if h.rig {
		l.booster, l.foot = e.plan.Sections[i].Booster.SI, e.datum.BOPTop
	}
	l.noAnnulus = first(h.missing, e.pathGap, e.boreGap(i))
	if !l.noAnnulus.open() {
		l.fluid, l.noAnnulus = e.drillingFluid(i, h.td)
	}
	if !l.noAnnulus.open() {
		l.up, l.noAnnulus = e.outside(i, h.td)
	}
	l.noString = l.noAnnulus
	if l.noAnnulus.open() {
		return l
	}
	l.td, l.tvd = h.td, e.path.TVD(h.td)
	l.clean = e.readCleaning(i, l)
	l.outside = l.fluid.Density + e.cuttings(i, l.clean)
	if !h.rig {
		l.outlet = e.path.TVD(e.bores[i][0].Top)
		l.atOutlet = e.seaAt(l.outlet)
	}
	l.noFracture = e.prognosisGap(i)
	if !l.noFracture.open() {
		l.places = e.loopPlaces(i, l)
	}
	l.noString = first(e.laySurface(l), e.layInside(i, l), l.bit.missing)
	return l
}

// cuttings returns the density in kg/m3 that cuttings add to the fluid in the annulus of section i: what is entered, else what
// the rate of penetration makes and the flow carries; where that is not known, or does not rise, what is usual.
func (e *evaluation) cuttings(i int, c *cleanHole) float64 {
	if own := e.plan.Sections[i].Cuttings; own.IsSet() {
		return own.SI
	}
	if c.carries() {
		return c.load(e.path.TVD)
	}
	return usualCuttings
}

// seaAt returns the gauge pressure of the sea at a TVD from RKB, none above its surface.
func (e *evaluation) seaAt(tvd float64) float64 {
	return e.seawater() * gravity * max(tvd-e.datum.MSL, 0)
}

// nozzles returns the nozzles of section i's bit.
func (e *evaluation) nozzles(i int) bit {
	n := &e.plan.Sections[i].Nozzles
	b := bit{area: n.Area.SI, discharge: usual(n.Discharge, nozzle.Discharge)}
	if n.Sizes == "" {
		b.missing = needs(n.Area, model.PathOf(i, "nozzles.sizes"), "nozzles of the bit")
		return b
	}
	set, err := nozzle.Read(n.Sizes)
	if err != nil {
		b.missing = gap{model.PathOf(i, "nozzles.sizes"), err.Error()}
		return b
	}
	b.set, b.area = set, set.Area()
	return b
}

// laySurface lays the lines between pump and string, where there are any that count.
func (e *evaluation) laySurface(l *loop) gap {
	rig := &e.plan.Rig
	if rig.SurfaceLength.SI == 0 {
		return gap{}
	}
	l.surface = stretch{bottom: rig.SurfaceLength.SI, bore: rig.SurfaceID.SI, label: "surface lines"}
	return needs(rig.SurfaceID, "rig.surface_id", "ID of the surface lines")
}

// layInside lays the bore of the string with the tools in it.
func (e *evaluation) layInside(i int, l *loop) gap {
	var missing gap
	if l.down, missing = e.inside(i, l.td); missing.open() {
		return missing
	}
	d := &e.drills[i]
	for k := range d.parts {
		p := &d.parts[k]
		if !p.row.Drop.IsSet() {
			continue
		}
		missing = first(missing, needs(p.row.DropFlow, stringEntry(i, p, "drop_flow"), "flow at which a loss is stated"),
			needs(p.row.DropDensity, stringEntry(i, p, "drop_density"), "fluid in which a loss is stated"))
		if p.row.Cuts() {
			l.down = append(l.down, stretch{top: p.top, bottom: p.bottom, part: p})
		}
	}
	return missing
}

// stringEntry returns the path of an entry of a part of the string.
func stringEntry(i int, p *stringPart, key string) model.Path {
	return model.PathOf(i, "string["+strconv.Itoa(p.number)+"]."+key)
}

// flowIn returns what flows up a stretch of the annulus at a flow through the bit.
func (l *loop) flowIn(g *stretch, flow float64) float64 {
	if g.bottom <= l.foot {
		return flow + l.booster
	}
	return flow
}

// lossUp returns the friction in Pa of a stretch of the annulus at a flow through the bit.
func (l *loop) lossUp(g *stretch, flow float64) float64 {
	return g.rubOutside(l.rub, l.fluid, l.flowIn(g, flow)) * g.length()
}

// lossDown returns what a part of the string takes at a flow: what is stated for it, which goes with density and the square of
// the flow as in a restriction, else friction in its bore.
func (l *loop) lossDown(g *stretch, flow float64) float64 {
	if row := g.part.row; row.Drop.IsSet() {
		times := flow / row.DropFlow.SI
		return row.Drop.SI * l.fluid.Density / row.DropDensity.SI * times * times
	}
	return g.rubInside(l.rub, l.fluid, flow) * g.length()
}

// lossSurface returns what the lines at surface take at a flow.
func (l *loop) lossSurface(flow float64) float64 {
	return l.rub.Pipe(l.fluid, flow, l.surface.bore) * l.surface.length()
}

// lossBit returns what the nozzles take at a flow.
func (l *loop) lossBit(flow float64) float64 {
	return nozzle.Drop(l.fluid.Density, flow, l.bit.area, l.bit.discharge)
}

// annulus returns the friction in Pa of the whole annulus at a flow through the bit.
func (l *loop) annulus(flow float64) (loss float64) {
	for k := range l.up {
		loss += l.lossUp(&l.up[k], flow)
	}
	return loss
}

// parasitic returns all friction but the bit's at a flow.
func (l *loop) parasitic(flow float64) float64 {
	loss := l.lossSurface(flow) + l.annulus(flow)
	for k := range l.down {
		loss += l.lossDown(&l.down[k], flow)
	}
	return loss
}

// columns returns by how much the column outside presses more at the bit than the one inside, in Pa.
func (l *loop) columns() float64 { return l.columnAt(l.tvd) - l.fluid.Density*gravity*l.tvd }

// columnAt returns the pressure in Pa of the column in the annulus at a TVD, cuttings counted, without friction.
func (l *loop) columnAt(tvd float64) float64 {
	return l.atOutlet + l.outside*gravity*(tvd-l.outlet)
}

// standpipe returns the pressure in Pa that the standpipe needs at a flow; below zero where the string runs empty.
func (l *loop) standpipe(flow float64) float64 {
	return l.parasitic(flow) + l.lossBit(flow) + l.columns()
}

// circulation is a section being circulated at its planned flow with its bit at TD.
type circulation struct {
	missing gap
	loop    *loop
	e       *evaluation
	flow    float64
	above   []float64 // friction in Pa from where the returns leave down to the foot of each stretch of the annulus
}

// circulating returns section i at its planned flow, worked out once. What is missing for the standpipe alone does not count
// as missing here.
func (e *evaluation) circulating(i int) *circulation {
	if e.circulations == nil {
		e.circulations = make([]*circulation, len(e.sections))
	}
	if e.circulations[i] == nil {
		e.circulations[i] = e.circulate(i, e.loop(i), e.plan.Sections[i].Flow.SI)
		e.circulations[i].missing = first(e.circulations[i].missing, e.flowGap(i))
	}
	return e.circulations[i]
}

// circulate returns a loop at a flow.
func (e *evaluation) circulate(i int, l *loop, flow float64) *circulation {
	c := &circulation{missing: l.noAnnulus, loop: l, e: e, flow: flow, above: make([]float64, len(l.up))}
	sum := 0.0
	for k := range l.up {
		sum += l.lossUp(&l.up[k], flow)
		c.above[k] = sum
	}
	return c
}

// frictionAt returns the friction in Pa between where the returns leave and a depth along hole.
func (c *circulation) frictionAt(md float64) float64 {
	before := 0.0
	for k := range c.loop.up {
		g := &c.loop.up[k]
		if md <= g.bottom {
			if md <= g.top {
				return before
			}
			return before + (c.above[k]-before)*(md-g.top)/g.length()
		}
		before = c.above[k]
	}
	return before
}

// pressureAt returns the pressure in Pa in the annulus at a depth along hole down to the bit: column, cuttings and friction;
// above where the returns leave without a riser, that of the sea.
func (c *circulation) pressureAt(md float64) float64 {
	tvd := c.e.path.TVD(md)
	if len(c.loop.up) > 0 && md < c.loop.up[0].top {
		return c.e.seaAt(tvd)
	}
	return c.loop.columnAt(tvd) + c.frictionAt(md)
}

// emwAt returns the equivalent circulating density in kg/m3 from RKB at a depth along hole below the rotary.
func (c *circulation) emwAt(md float64) float64 {
	return c.pressureAt(md) / (gravity * c.e.path.TVD(md))
}

// seen returns the flow of a stretch of the annulus as the correlation sees it beside the string's body, its velocity,
// Reynolds number and regime.
func (l *loop) seen(g *stretch, flow float64) friction.Flow {
	if g.part == nil {
		return l.rub.InAnnulus(l.fluid, l.flowIn(g, flow), g.bore, 0)
	}
	return l.rub.InAnnulus(l.fluid, l.flowIn(g, flow), g.bore, g.part.pipe.OD)
}
