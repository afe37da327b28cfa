package calc

import (
	"math"

	"borewalk/calc/cleaning"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	sourceChien  = "Chien 1971, with the viscosity that the cuttings feel, from memory"
	sourceMoore  = "Moore 1974, with the power-law viscosity in the annulus, as in Bourgoyne and others, Applied Drilling Engineering, ch. 4, from memory"
	sourceDrag   = "drag curve of Fang and others 2008, as in Guo and Liu, Applied Drilling Circulation Systems (2011)"
	sourceSlant  = "Rubiandini, SPE 57541, 1999, on Moore's slip, lift from Larsen, Pilehvari and Azar, SPE 25872, 1997, all from memory"
	sourceShare  = "mass balance: rock cut = share × transport × (flow + rock cut)"
	noteCleaning = "Published methods differ by a factor of two and more: watch the shakers, torque and drag. Beds, eccentric pipe and reaming are left out."
)

// cleaningFigures adds how the flow of section i carries its cuttings, and judges it.
func (e *evaluation) cleaningFigures(i int, p *page) {
	if e.inPlace(i) {
		return
	}
	c := e.cleanOf(i)
	p.group = "Hole cleaning"
	e.slipFigures(p, c)
	e.transportFigures(i, p, c)
	e.shareFigures(i, p, c)
	e.indexFigures(i, p, c)
	e.slantFigures(i, p, c)
	e.boosterFigure(i, p, c)
	e.judgeVelocities(i, c)
}

// judgeVelocities compares the slowest mud beside drill pipe in the open hole, and in the riser, with what is usual for the
// size.
func (e *evaluation) judgeVelocities(i int, c *cleanHole) {
	if c.missing.open() || c.swept {
		return
	}
	slowest := func(here func(*carried) bool) *carried {
		return c.worst(func(w *carried) (float64, bool) { return -w.velocity, here(w) })
	}
	flow := model.PathOf(i, "flow")
	if at := slowest((*carried).besidePipe); at != nil {
		e.judge(velocityRule(e.sections[i].size), i, at.velocity, "Velocity of the mud beside drill pipe in open hole", "", at.way.bottom, flow)
	}
	if at := slowest(func(w *carried) bool { return !c.inHole(w) }); at != nil {
		e.judge(model.RuleRiserVelocity, i, at.velocity, "Velocity of the mud in the riser, booster counted", "", at.way.bottom, model.PathOf(i, "booster"))
	}
}

// velocityRule returns the rule for the annular velocity in a hole of a size in m.
func velocityRule(hole float64) model.RuleID {
	const inch = 0.0254
	switch {
	case hole >= 22*inch:
		return model.RuleVelocityLarge
	case hole >= 14*inch:
		return model.RuleVelocityWide
	case hole >= 9*inch:
		return model.RuleVelocityMedium
	}
	return model.RuleVelocitySmall
}

// inPlace reports whether the pipe of section i goes down with the bit, jetted or driven, so that no hole is to be kept clean.
func (e *evaluation) inPlace(i int) bool {
	return e.strings[i].present && e.plan.Sections[i].Method != model.Cemented
}

// place names a stretch: "riser, drill pipe".
func (w *carried) place() string { return w.way.label + ", " + w.way.part.row.Item }

// facts adds what is known of a stretch and its mud to the working, for a method of slip.
func (c *cleanHole) facts(w *Working, at *carried, by string) {
	mud := c.loop.fluid
	w.in("D", at.place(), quantity.Diameter, at.way.bore)
	w.in("d", "string's body", quantity.Diameter, at.way.part.pipe.OD)
	w.in("from", "along hole", quantity.Length, at.way.top)
	w.in("to", "along hole", quantity.Length, at.way.bottom)
	w.in("v", "mud there", quantity.Velocity, at.velocity)
	w.in("rho", "mud", quantity.Density, mud.Density)
	w.in("PV", "plastic viscosity", quantity.Viscosity, mud.PlasticViscosity())
	w.in("YP", "yield point", quantity.YieldPoint, mud.YieldPoint())
	if by == model.SlipMoore {
		w.in("n", "of the power law from 300 and 600 rpm", quantity.Number, c.n)
		w.in("k", "likewise", quantity.Consistency, c.k)
	}
	w.in("mu", "felt there", quantity.Viscosity, c.felt(at, by))
	w.in("dc", "cuttings", quantity.Diameter, c.rock.Diameter)
	w.in("rock", "density of the cuttings", quantity.Density, c.rock.Density)
}

// slowest returns the stretch with the poorest transport; an empty one where there is none.
func (c *cleanHole) slowest() *carried {
	at := c.worst(func(w *carried) (float64, bool) { return -w.transport, c.inHole(w) })
	if at == nil {
		return &carried{}
	}
	return at
}

func (e *evaluation) slipFigures(p *page, c *cleanHole) {
	at := c.slowest()
	slip := func(by string) float64 {
		if at.way == nil {
			return 0
		}
		return c.slip(at, by)
	}
	const felt = ", mu = PV + 5 YP dc / v in cP, lbf/100ft2, in, ft/s"
	p.put("hydraulics.clean.slip", "Slip of cuttings", quantity.Velocity, slip(model.SlipChien), c.missing, func(w *Working) {
		w.Formula = "v = 0.0075 r (sqrt(36800 d (rock / rho - 1) / r² + 1) - 1), r = mu / (rho d), in ft/s, cP, ppg, in" + felt
		c.facts(w, at, model.SlipChien)
		w.Source = sourceChien + "; the handbook's form in Lapeyrouse, slip velocity, method 1"
		w.Note = noteCleaning
	}).Note = "by Chien, " + c.note(at)
	p.also("hydraulics.clean.slip.moore", "by Moore", quantity.Velocity, slip(model.SlipMoore), c.missing, func(w *Working) {
		w.Formula = "v² = 4/3 g dc / f (rock / rho - 1), f the greatest of 40 / Re, 22 / sqrt(Re), 1.5; mu = k (12 v / (D - d))^(n-1) ((2n + 1) / 3n)^n"
		c.facts(w, at, model.SlipMoore)
		w.Source = sourceMoore
		w.Note = noteCleaning
	})
	p.also("hydraulics.clean.slip.drag", "drag curve", quantity.Velocity, slip(model.SlipDrag), c.missing, func(w *Working) {
		w.Formula = "v² = 4/3 g dc / f (rock / rho - 1), log f = a + b log Re + c (log Re)², Re = rho v dc / mu" + felt
		c.facts(w, at, model.SlipDrag)
		w.in("sphericity", "of the cuttings", quantity.Number, c.rock.Sphericity)
		w.Source = sourceDrag
		w.Note = noteCleaning
	})
}

func (e *evaluation) transportFigures(i int, p *page, c *cleanHole) {
	at := c.slowest()
	p.put("hydraulics.clean.transport", "Transport, least", quantity.Ratio, at.transport, c.missing, func(w *Working) {
		w.Formula = "transport = 1 - slip / v, least below the BOP, riser and short stretches left out"
		c.facts(w, at, c.by)
		w.in("slip", "by the method chosen", quantity.Velocity, at.slip)
		w.Source = "transport ratio of Sifferman and others 1974, from memory; slip: " + c.method()
		w.Note = noteCleaning
	})
	p.also("hydraulics.clean.velocity", "velocity", quantity.Velocity, at.velocity, c.missing, func(w *Working) {
		w.Formula = "v = flow / (pi/4 × (D² - d²)) where transport is poorest"
		w.in("D", at.place(), quantity.Diameter, at.way.bore)
		w.in("d", "string's body", quantity.Diameter, at.way.part.pipe.OD)
		w.Source = "geometry"
	})
	if c.missing.open() || at.way == nil {
		return
	}
	p.noted("hydraulics.clean.transport", c.note(at))
	if at.inclination < slantedFrom && !c.swept {
		e.judge(model.RuleTransport, i, at.transport, "Transport ratio of the cuttings, least", at.place(), at.way.bottom, model.PathOf(i, "flow"))
	}
}

// method names the way in which the slip that counts was found.
func (c *cleanHole) method() string {
	switch c.by {
	case model.SlipMoore:
		return sourceMoore
	case model.SlipDrag:
		return sourceDrag
	}
	return sourceChien
}

func (e *evaluation) shareFigures(i int, p *page, c *cleanHole) {
	at := c.worst(func(w *carried) (float64, bool) { return w.share, c.inHole(w) })
	if at == nil {
		at = &carried{}
	}
	why := func(w *Working) {
		w.in("ROP", "rate of penetration", quantity.ROP, c.rop)
		w.in("hole", "size", quantity.Diameter, e.sections[i].size)
		w.in("v", "mud there", quantity.Velocity, at.velocity)
		w.in("transport", "there", quantity.Ratio, at.transport)
		w.Source = sourceShare
		w.Note = noteCleaning
	}
	p.put("hydraulics.clean.share", "Cuttings, most", quantity.Ratio, at.share, c.noROP, func(w *Working) {
		w.Formula = "share = rock cut / (transport × (flow + rock cut)), rock cut = ROP × pi/4 × hole²"
		why(w)
	}).Note = c.note(at)
	if !c.noROP.open() && !c.carries() {
		return // neither has a value where cuttings do not rise by the flow alone
	}
	p.also("hydraulics.clean.load", "adds", quantity.Density, c.load(e.path.TVD), c.noROP, func(w *Working) {
		w.Formula = "mean over the height of the annulus of share × (rock - mud)"
		w.in("rock", "density of the cuttings", quantity.Density, c.rock.Density)
		w.in("mud", "density", quantity.Density, c.loop.fluid.Density)
		for n := range c.ways {
			k := &c.ways[n]
			w.in("share", k.place(), quantity.Ratio, k.share)
			w.in("fall", "vertical length", quantity.Length, e.path.TVD(k.way.bottom)-e.path.TVD(k.way.top))
		}
		w.Source = sourceShare
		w.Note = "The circulating density takes it where no density of cuttings is entered."
	})
	fastest, area := math.Inf(1), math.Pi/4*e.sections[i].size*e.sections[i].size
	for n := range c.ways {
		w := &c.ways[n]
		flow := w.velocity * math.Pi / 4 * (w.way.bore - w.way.part.pipe.OD) * (w.way.bore + w.way.part.pipe.OD)
		fastest = min(fastest, cleaning.FastestROP(c.most, flow, w.transport, area))
	}
	p.put("hydraulics.clean.rop", "ROP for that share", quantity.ROP, fastest, c.missing, func(w *Working) {
		w.Formula = "ROP = flow × s × transport / (1 - s × transport) / (pi/4 × hole²), least along the annulus"
		w.in("s", "greatest share wanted", quantity.Ratio, c.most)
		w.in("hole", "size", quantity.Diameter, e.sections[i].size)
		for n := range c.ways {
			w.in("transport", c.ways[n].place(), quantity.Ratio, c.ways[n].transport)
			w.in("v", "mud there", quantity.Velocity, c.ways[n].velocity)
		}
		w.Source = sourceShare
		w.Note = noteCleaning
	})
	if !c.noROP.open() && at.way != nil && !c.swept {
		e.judge(model.RuleCuttingsShare, i, at.share, "Share of cuttings in the annulus, most", at.place(), at.way.bottom, model.PathOf(i, "rop"))
	}
}

// note says where a stretch is, and that the fluid there is helped.
func (c *cleanHole) note(w *carried) string {
	switch {
	case w == nil || w.way == nil:
		return ""
	case c.swept:
		return w.place() + ", without the sweeps"
	}
	return w.place()
}

// indexFigures adds the carrying index where it is least in what stands upright enough for it.
func (e *evaluation) indexFigures(i int, p *page, c *cleanHole) {
	mud := c.loop.fluid
	at := c.worst(func(w *carried) (float64, bool) { return -c.carryingIndex(w), c.indexed(w) })
	missing := c.missing
	if !missing.open() && at == nil {
		missing = gap{why: "no part of the hole below the wellhead is less than 35 degrees off vertical"}
	}
	if at == nil {
		at = &carried{}
	}
	p.put("hydraulics.clean.index", "Carrying index", quantity.Number, c.carryingIndex(at), missing, func(w *Working) {
		w.Formula = "CCI = k v W / 400000, k = 511^(1-n) (PV + YP), n = 3.322 log10((2 PV + YP) / (PV + YP)), in cP, lbf/100ft2, ft/min, ppg"
		w.in("v", "mud, "+at.place(), quantity.Velocity, at.velocity)
		w.in("PV", "plastic viscosity", quantity.Viscosity, mud.PlasticViscosity())
		w.in("YP", "yield point", quantity.YieldPoint, mud.YieldPoint())
		w.in("W", "mud", quantity.Density, mud.Density)
		w.Source = "carrying capacity index, drillingformulas.com"
		w.Note = "Half and less is poor, one and more good, where the hole stands below some 35 degrees. " + noteCleaning
	}).Note = c.note(at)
	if !missing.open() && at.way != nil && !c.swept {
		e.judge(model.RuleCarryingIndex, i, c.carryingIndex(at), "Carrying index, least", at.place(), at.way.bottom, model.PathOf(i, "flow"))
	}
}

// slantFigures adds the velocity that the slanted part of the hole asks for, where it is furthest from it.
func (e *evaluation) slantFigures(i int, p *page, c *cleanHole) {
	at := c.worst(func(w *carried) (float64, bool) { return w.needed - w.velocity, w.needed > 0 && c.inHole(w) })
	if at == nil {
		return
	}
	why := func(w *Working) {
		c.facts(w, at, model.SlipMoore)
		w.in("slip", "by Moore", quantity.Velocity, c.slip(at, model.SlipMoore))
		w.in("angle", "inclination", quantity.Angle, at.inclination)
		w.in("ROP", "rate of penetration", quantity.ROP, c.rop)
		w.in("rpm", "string turns", quantity.RotarySpeed, c.turning)
		w.Note = noteCleaning
	}
	p.put("hydraulics.clean.slant", "Slant needs", quantity.Velocity, at.needed, c.noROP, func(w *Working) {
		w.Formula = "v = lift + slip (1 + angle (600 - rpm) (3 + W) / 202500), angle up to 45 degrees, W in ppg; lift = ROP / (36 (1 - d²/D²) (0.01778 ROP + 0.505)), ft/s, ft/h"
		why(w)
		w.Source = sourceSlant
	}).Note = at.place()
	p.also("hydraulics.clean.slant.velocity", "velocity", quantity.Velocity, at.velocity, c.missing, func(w *Working) {
		w.Formula = "v = flow / (pi/4 × (D² - d²))"
		w.in("D", at.place(), quantity.Diameter, at.way.bore)
		w.in("d", "string's body", quantity.Diameter, at.way.part.pipe.OD)
		w.Source = "geometry"
	})
	if at.larsen > 0 {
		p.also("hydraulics.clean.slant.larsen", "by Larsen", quantity.Velocity, at.larsen, c.noROP, func(w *Working) {
			w.Formula = "v = lift + slip × Ca × Cs × Cw, for 55 to 90 degrees"
			why(w)
			w.Source = "Larsen, Pilehvari and Azar, SPE 25872, 1997, from memory"
		})
	}
	if !c.noROP.open() {
		e.judge(model.RuleSlantVelocity, i, at.velocity/at.needed, "Velocity over what the slant needs", at.place(), at.way.bottom, model.PathOf(i, "flow"))
	}
}

// cleanLimit adds the least flow through the bit that cleans the hole below the BOP, or all of it without a riser.
func (e *evaluation) cleanLimit(i int, list []flowLimit) []flowLimit {
	c := e.cleanOf(i)
	if c.swept || e.inPlace(i) {
		return list // the flow need not do it alone
	}
	x := flowLimit{key: "clean", name: "Hole cleaning", missing: c.noROP}
	var at *carried
	if !x.missing.open() {
		if x.flow, at = c.floor(); at != nil {
			x.note = at.place()
		}
	}
	x.why = func(w *Working) {
		w.Formula = "least flow through the bit at which every stretch below the BOP keeps transport, or in a slant its velocity, and share"
		if at != nil {
			k := c.carry(at.way, x.flow, at.inclination)
			c.facts(w, &k, c.by)
			w.in("slip", "there at that flow", quantity.Velocity, k.slip)
			w.in("t", "transport there", quantity.Ratio, k.transport)
			w.in("s", "share there", quantity.Ratio, k.share)
			w.in("need", "velocity that the slant needs there", quantity.Velocity, k.needed)
		}
		c.wanted(w)
		w.Source = "found by halving; slip: " + c.method() + "; slant: " + sourceSlant
	}
	return append(list, x)
}

// wanted adds what the hole is held to be clean by.
func (c *cleanHole) wanted(w *Working) {
	w.in("transport", "least wanted", quantity.Ratio, c.least)
	w.in("share", "of cuttings, most wanted", quantity.Ratio, c.most)
	w.in("ROP", "rate of penetration", quantity.ROP, c.rop)
	w.Note = noteCleaning
}

// boosterFigure adds the booster that the riser needs to carry the cuttings, and judges it.
func (e *evaluation) boosterFigure(i int, p *page, c *cleanHole) {
	if !e.sections[i].rig {
		return
	}
	var riser float64
	if !c.noROP.open() {
		riser = c.riserFloor()
	}
	flow := e.plan.Sections[i].Flow.SI
	p.put("hydraulics.clean.booster", "Booster to clean", quantity.Flow, max(riser-flow, 0), c.noROP, func(w *Working) {
		w.Formula = "booster = flow that the riser needs - flow through the bit, not below zero"
		w.in("riser", "needs", quantity.Flow, riser)
		w.in("flow", "through the bit", quantity.Flow, flow)
		w.in("v", "least wanted in the riser", quantity.Velocity, c.riser)
		c.wanted(w)
		w.Source = "found by halving; slip: " + c.method()
	})
	if !c.noROP.open() {
		e.judge(model.RuleBooster, i, flow+e.plan.Sections[i].Booster.SI-riser, "Flow in the riser over what cuttings need", "", 0, model.PathOf(i, "booster"))
	}
}
