package calc

import (
	"math"

	"borewalk/calc/cleaning"
	"borewalk/calc/friction"
	"borewalk/model"
	"borewalk/model/quantity"
)

// What hole cleaning is reckoned with where the plan says nothing: common practice, from memory.
const (
	usualCutting    = 0.006  // m
	usualRock       = 2600.0 // kg/m3
	usualSphericity = 0.8
)

// Inclinations in rad: what counts as slanted, and up to where the carrying index is meant to hold.
const (
	slantedFrom   = 10 * math.Pi / 180
	carryingBelow = 35 * math.Pi / 180
)

// cleanHole is the annulus of a section at its planned flow, with the cuttings that it carries.
type cleanHole struct {
	missing gap // for slip and transport
	noROP   gap // for what hangs on how much cuttings come
	loop    *loop
	rock    cleaning.Cutting
	drag    bool // the drag curve counts
	rop     float64
	feed    float64 // m3/s of rock
	turning float64 // rad/s
	least   float64 // transport ratio wanted
	most    float64 // share of cuttings wanted at most
	riser   float64 // velocity in m/s wanted in the riser
	swept   bool    // sweeps are planned: the drilling fluid alone is not held to anything
	ways    []carried
}

// carried is a stretch of the annulus with what it does to cuttings.
type carried struct {
	way         *stretch
	inclination float64
	velocity    float64
	viscosity   float64 // effective, of the mud in the annulus
	slip        float64 // by the method that counts
	transport   float64
	share       float64 // of cuttings, by volume
	needed      float64 // velocity that a slant asks for
	larsen      float64 // the same by Larsen and others, zero below their 55 degrees
}

// cleanOf returns the cuttings of section i's annulus.
func (e *evaluation) cleanOf(i int) *cleanHole {
	l := e.loop(i)
	if l.clean == nil {
		return &cleanHole{loop: l, missing: l.noAnnulus, noROP: l.noAnnulus}
	}
	return l.clean
}

// readCleaning works out the cuttings in a way of section i's fluid whose annulus is laid.
func (e *evaluation) readCleaning(i int, l *loop) *cleanHole {
	s := &e.plan.Sections[i]
	k := &s.Cleaning
	c := &cleanHole{loop: l, missing: first(l.noAnnulus, e.flowGap(i)), drag: k.Slip == model.SlipDrag, turning: k.Turning.SI}
	c.rock = cleaning.Cutting{Diameter: either(k.Size, usualCutting), Density: either(k.Rock, usualRock), Sphericity: either(k.Sphericity, usualSphericity)}
	c.least, c.most, c.riser = e.limit(model.RuleTransport), e.limit(model.RuleCuttingsShare), e.limit(model.RuleRiserVelocity)
	c.swept = !e.sections[i].rig && s.Riserless.Sweep.IsSet()
	c.noROP = first(c.missing, lacks(s.ROP, i, "rop", "rate of penetration"))
	if c.rop = s.ROP.SI; !c.noROP.open() {
		c.feed = cleaning.Feed(c.rop, e.sections[i].size, 0)
	}
	if c.missing.open() {
		return c
	}
	c.ways = make([]carried, 0, len(l.up))
	for n := range l.up {
		g := &l.up[n]
		if g.part == nil {
			continue // beside bit and opener
		}
		inclination := e.path.At((g.top + g.bottom) / 2).Inclination
		c.ways = append(c.ways, c.carry(g, l.flowIn(g, s.Flow.SI), inclination))
	}
	return c
}

// limit returns what the plan or the rule itself sets as limit, whether or not the rule is in the plan's set.
func (e *evaluation) limit(id model.RuleID) float64 {
	limit, _ := e.plan.Limit(model.Rules()[id])
	return limit.SI
}

// either returns an entry, or what is usual where it is blank.
func either(v quantity.Value, usual float64) float64 {
	if v.IsSet() {
		return v.SI
	}
	return usual
}

// carry works a stretch out at a flow past it.
func (c *cleanHole) carry(g *stretch, flow, inclination float64) carried {
	fluid, pipe := c.loop.fluid, g.part.pipe.OD
	w := carried{way: g, inclination: inclination, velocity: friction.Velocity(flow, g.bore, pipe)}
	w.viscosity = fluid.ApparentInAnnulus(w.velocity, g.bore, pipe)
	w.slip = c.slip(w.viscosity, c.drag)
	w.transport = cleaning.Transport(w.velocity, w.slip)
	w.share = cleaning.Concentration(c.feed, flow, w.transport)
	if inclination >= slantedFrom {
		slant := cleaning.Slant{Inclination: inclination, Hole: g.bore, Pipe: pipe, ROP: c.rop, Turning: c.turning,
			Density: fluid.Density, Viscosity: w.viscosity, Cutting: c.rock}
		w.needed, w.larsen = slant.Rubiandini(w.slip), slant.Larsen()
	}
	return w
}

// slip returns the velocity in m/s at which the cuttings fall through the mud where it has an effective viscosity, by the drag
// curve or by Chien's formula.
func (c *cleanHole) slip(viscosity float64, byDrag bool) float64 {
	if byDrag {
		return cleaning.Drag(c.rock, c.loop.fluid.Density, viscosity)
	}
	return cleaning.Chien(c.rock, c.loop.fluid.Density, viscosity)
}

// clean reports whether a stretch is as clean as wanted: transport in what is not slanted, the slant's velocity in what is,
// and the share of cuttings in both.
func (c *cleanHole) clean(w *carried) bool {
	if w.needed > 0 && w.velocity < w.needed || w.needed == 0 && w.transport < c.least {
		return false
	}
	return w.share <= c.most
}

// enough returns the least flow in m3/s past a stretch that keeps it clean and at a velocity, between nothing and a flow that
// nobody pumps.
func (c *cleanHole) enough(w *carried, velocity float64) float64 {
	const beyond, near = 1.0, 1e-5 // m3/s
	low, high := 0.0, beyond
	for high-low > near {
		middle := (low + high) / 2
		if k := c.carry(w.way, middle, w.inclination); c.clean(&k) && k.velocity >= velocity {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// floor returns the least flow through the bit that keeps the annulus below the BOP clean, or all of it without a riser, and
// the stretch that asks for it.
func (c *cleanHole) floor() (flow float64, at *carried) {
	for n := range c.ways {
		w := &c.ways[n]
		if w.way.bottom <= c.loop.foot {
			continue
		}
		if f := c.enough(w, 0); f > flow {
			flow, at = f, w
		}
	}
	return flow, at
}

// riserFloor returns the least flow in the riser that keeps it clean and at the velocity wanted.
func (c *cleanHole) riserFloor() (flow float64) {
	for n := range c.ways {
		if w := &c.ways[n]; w.way.bottom <= c.loop.foot {
			flow = max(flow, c.enough(w, c.riser))
		}
	}
	return flow
}

// worst returns the stretch with the greatest of a value, nil where none has any.
func (c *cleanHole) worst(value func(*carried) (float64, bool)) (at *carried) {
	most := math.Inf(-1)
	for n := range c.ways {
		if v, ok := value(&c.ways[n]); ok && v > most {
			most, at = v, &c.ways[n]
		}
	}
	return at
}

// load returns the density in kg/m3 that the cuttings add to the column in the annulus, on the mean over its height.
func (c *cleanHole) load(tvd func(md float64) float64) float64 {
	var sum, height float64
	for n := range c.ways {
		w := &c.ways[n]
		fall := tvd(w.way.bottom) - tvd(w.way.top)
		sum += fall * (cleaning.Loaded(c.loop.fluid.Density, c.rock.Density, w.share) - c.loop.fluid.Density)
		height += fall
	}
	if height <= 0 {
		return 0
	}
	return sum / height
}

// carries reports whether the cuttings rise all along the annulus at the planned flow.
func (c *cleanHole) carries() bool {
	return !c.noROP.open() && c.worst(func(w *carried) (float64, bool) { return w.share, w.share >= 1 }) == nil
}
