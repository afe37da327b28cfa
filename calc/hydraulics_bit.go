package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/nozzle"
	"borewalk/model/quantity"
)

const bitSource = "Bourgoyne, Chenevert, Millheim and Young, Applied Drilling Engineering (1986), ch. 4, from memory"

// nozzles adds to a working how the loss through the nozzles is got.
func (w *Working) nozzles(c *circulation) {
	w.Formula = "p = rho × q² / (2 × Cd² × A²)"
	w.in("rho", "fluid pumped", quantity.Density, c.loop.fluid.Density)
	w.in("q", "flow", quantity.Flow, c.flow)
	w.in("Cd", "coefficient of discharge", quantity.Number, c.loop.bit.discharge)
	w.in("A", "total flow area", quantity.Area, c.loop.bit.area)
	w.Source = bitSource
}

// bitFigures adds what the nozzles make of the pressure.
func (e *evaluation) bitFigures(i int, p *page, c *circulation) {
	l := c.loop
	b := &l.bit
	p.group = "Bit"
	missing := first(c.missing, b.missing)
	var drop, velocity, whole float64
	if !missing.open() {
		drop, velocity = l.lossBit(c.flow), nozzle.Velocity(c.flow, b.area)
	}
	standpipe := first(missing, l.noString)
	if !standpipe.open() {
		whole = max(l.standpipe(c.flow), 0)
	}
	p.put("hydraulics.tfa", "TFA", quantity.Area, b.area, b.missing, func(w *Working) {
		w.Formula = "A as entered"
		for _, g := range b.set {
			w.Formula = "A = sum of number × pi/4 × (size / 32 in)²"
			w.in("number", "nozzles", quantity.Count, float64(g.Count))
			w.in("size", "32nds of an inch", quantity.Count, float64(g.Size))
		}
		w.in("A", "total flow area", quantity.Area, b.area)
		w.Source = "geometry"
	}).Note = b.set.String()
	p.put("hydraulics.bit.drop", "Bit pressure loss", quantity.Pressure, drop, missing, func(w *Working) { w.nozzles(c) })
	p.put("hydraulics.bit.velocity", "Jet velocity", quantity.JetVelocity, velocity, missing, func(w *Working) {
		w.Formula = "v = q / A"
		w.in("q", "flow", quantity.Flow, c.flow)
		w.in("A", "total flow area", quantity.Area, b.area)
		w.Source = bitSource
	})
	power := nozzle.Power(drop, c.flow)
	p.put("hydraulics.bit.power", "Bit power", quantity.Power, power, missing, func(w *Working) {
		w.Formula = "P = p × q"
		w.in("p", "loss at the bit", quantity.Pressure, drop)
		w.in("q", "flow", quantity.Flow, c.flow)
		w.Source = bitSource
	})
	hole := bore.Area(e.sections[i].bit)
	p.also("hydraulics.bit.power.area", "per hole area", quantity.PowerPerArea, power/hole, missing, func(w *Working) {
		w.Formula = "P / area = p × q / (pi/4 × bit²)"
		w.in("P", "power at the bit", quantity.Power, power)
		w.in("bit", "its diameter, that of the pilot where an opener follows", quantity.Diameter, e.sections[i].bit)
		w.Source = bitSource
	})
	p.put("hydraulics.pump.power", "Pump power", quantity.Power, nozzle.Power(whole, c.flow), standpipe, func(w *Working) {
		w.Formula = "P = standpipe × q"
		w.in("standpipe", "pressure", quantity.Pressure, whole)
		w.in("q", "flow", quantity.Flow, c.flow)
		w.Source = bitSource
		w.Note = "Hydraulic, without the pumps' own losses and without the booster."
	})
	force := nozzle.Impact(l.fluid.Density, c.flow, velocity)
	p.put("hydraulics.bit.impact", "Jet impact", quantity.JetForce, force, missing, func(w *Working) {
		w.Formula = "F = rho × q × v"
		w.in("rho", "fluid pumped", quantity.Density, l.fluid.Density)
		w.in("q", "flow", quantity.Flow, c.flow)
		w.in("v", "jet velocity", quantity.JetVelocity, velocity)
		w.Source = bitSource
	})
	e.slopeFigure(p, c, standpipe)
}

// slopeFigure adds how fast the loss outside the bit grows with the flow, and with it which share of the pressure the bit has
// when it has most power or impact.
func (e *evaluation) slopeFigure(p *page, c *circulation, missing gap) {
	l := c.loop
	var m float64
	if !missing.open() {
		m = l.slope(c.flow)
		if math.IsNaN(m) {
			missing = gap{why: "nothing is lost outside the bit"}
		}
	}
	p.put("hydraulics.slope", "Parasitic slope", quantity.Number, m, missing, func(w *Working) {
		w.Formula = "m = log(p1 / p2) / log(q1 / q2), p all that is lost outside the bit"
		w.in("q1", "planned flow", quantity.Flow, c.flow)
		w.in("p1", "lost at it", quantity.Pressure, l.parasitic(c.flow))
		w.in("q2", "another flow", quantity.Flow, otherRate*c.flow)
		w.in("p2", "lost at it", quantity.Pressure, l.parasitic(otherRate*c.flow))
		w.Source = optimumSource
	})
	share := func(key, column, formula string, value float64) {
		p.also(key, column, quantity.Ratio, value, missing, func(w *Working) {
			w.Formula = formula
			w.in("m", "parasitic slope", quantity.Number, m)
			w.Source = optimumSource
		})
	}
	share("hydraulics.slope.power", "bit, most power", "share of the pressure for the bit = 1 - 1 / (m + 1)", 1-nozzle.PowerShare(m))
	share("hydraulics.slope.impact", "bit, most impact", "share of the pressure for the bit = 1 - 2 / (m + 2)", 1-nozzle.ImpactShare(m))
}

// otherRate is the second flow at which the parasitic slope is taken, over the planned one.
const otherRate = 0.8

const optimumSource = "Kendall and Goins, Trans. AIME 219 (1960), from memory"

// slope returns the power of the flow with which the loss outside the bit grows near a flow.
func (l *loop) slope(flow float64) float64 {
	return nozzle.Slope(flow, l.parasitic(flow), otherRate*flow, l.parasitic(otherRate*flow))
}
