package calc

import (
	"math"

	"borewalk/calc/cleaning"
	"borewalk/calc/friction"
	"borewalk/model"
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

// leastJudged is the length in m below which a stretch of annulus decides nothing: about a stand of pipe. Cuttings that stay behind in
// the rathole under the last shoe or beside a hanger are no measure of how the hole is cleaned.
const leastJudged = 20.0

// cleanHole is the annulus of a section at its planned flow, with the cuttings that it carries.
type cleanHole struct {
	missing gap // for slip and transport
	noROP   gap // for what hangs on how much cuttings come
	loop    *loop
	rock    cleaning.Cutting
	by      string  // the method of slip that counts
	n, k    float64 // power law of the mud in the annulus, k in Pa sⁿ
	rop     float64
	feed    float64 // m3/s of rock
	turning float64 // rad/s
	least   float64 // transport ratio wanted
	most    float64 // share of cuttings wanted at most
	beside  float64 // velocity in m/s wanted beside drill pipe in open hole
	index   float64 // carrying index wanted in what is nearly upright
	riser   float64 // velocity in m/s wanted in the riser
	swept   bool    // sweeps are planned: the drilling fluid alone is not held to anything
	ways    []carried
}

// carried is a stretch of the annulus with what it does to cuttings.
type carried struct {
	way         *stretch
	inclination float64
	velocity    float64
	short       bool    // too short to decide anything: a rathole above, a hanger's bore, a sub
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
	c := &cleanHole{loop: l, missing: first(l.noAnnulus, e.flowGap(i)), by: k.Slip, turning: k.Turning.SI}
	c.n, c.k = powerLaw(l.fluid)
	c.rock = cleaning.Cutting{Diameter: usual(k.Size, usualCutting), Density: usual(k.Rock, usualRock), Sphericity: usual(k.Sphericity, usualSphericity)}
	c.least, c.most, c.riser = e.limit(model.RuleTransport, 0), e.limit(model.RuleCuttingsShare, 1), e.limit(model.RuleRiserVelocity, 0)
	c.beside, c.index = e.limit(velocityRule(e.sections[i].size), 0), e.limit(model.RuleCarryingIndex, 0)
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
		w := c.carry(g, l.flowIn(g, s.Flow.SI), inclination)
		w.short = g.length() < leastJudged
		c.ways = append(c.ways, w)
	}
	if c.worst(func(*carried) (float64, bool) { return 0, true }) == nil { // all of a shallow hole is short
		for n := range c.ways {
			c.ways[n].short = false
		}
	}
	return c
}

// powerLaw returns the index and the consistency in Pa sⁿ of the power law through the stresses of a fluid at the two field rates.
func powerLaw(f friction.Fluid) (n, k float64) {
	slow, fast := f.Stress(friction.SlowShear), f.Stress(friction.FastShear)
	if !(slow > 0) {
		return 1, 0
	}
	n = math.Log2(fast / slow)
	return n, slow / math.Pow(friction.SlowShear, n)
}

// carry works a stretch out at a flow past it.
func (c *cleanHole) carry(g *stretch, flow, inclination float64) carried {
	fluid, pipe := c.loop.fluid, g.part.pipe.OD
	w := carried{way: g, inclination: inclination, velocity: friction.Velocity(flow, g.bore, pipe)}
	w.slip = c.slip(&w, c.by)
	w.transport = cleaning.Transport(w.velocity, w.slip)
	w.share = cleaning.Concentration(c.feed, flow, w.transport)
	if inclination >= slantedFrom {
		slant := cleaning.Slant{Inclination: inclination, Hole: g.bore, Pipe: pipe, ROP: c.rop, Turning: c.turning,
			Density: fluid.Density, Viscosity: fluid.ApparentInAnnulus(w.velocity, g.bore, pipe), Cutting: c.rock}
		w.needed, w.larsen = slant.Rubiandini(c.slip(&w, model.SlipMoore)), slant.Larsen()
	}
	return w
}

// felt returns the viscosity in Pa s that the cuttings feel in a stretch by a method.
func (c *cleanHole) felt(w *carried, by string) float64 {
	if by == model.SlipMoore {
		return cleaning.InGap(c.n, c.k, w.velocity, w.way.bore-w.way.part.pipe.OD)
	}
	mud := c.loop.fluid
	return cleaning.Effective(mud.PlasticViscosity(), mud.YieldPoint(), c.rock, w.velocity)
}

// slip returns the velocity in m/s at which the cuttings fall through the mud of a stretch, by a method.
func (c *cleanHole) slip(w *carried, by string) float64 {
	density, viscosity := c.loop.fluid.Density, c.felt(w, by)
	switch by {
	case model.SlipMoore:
		return cleaning.Moore(c.rock, density, viscosity)
	case model.SlipDrag:
		return cleaning.Drag(c.rock, density, viscosity)
	}
	return cleaning.Chien(c.rock, density, viscosity)
}

// clean reports whether a stretch is as clean as wanted: transport in what is not slanted, the slant's velocity in what is,
// and the share of cuttings in both; below the BOP also the carrying index, and beside pipe in open hole the usual velocity.
func (c *cleanHole) clean(w *carried) bool {
	if w.needed > 0 && w.velocity < w.needed || w.needed == 0 && w.transport < c.least {
		return false
	}
	return w.share <= c.most && !(c.indexed(w) && c.carryingIndex(w) < c.index) && !(w.besidePipe() && w.velocity < c.beside)
}

// inHole reports whether a stretch is below the BOP, or there is no riser.
func (c *cleanHole) inHole(w *carried) bool { return w.way.bottom > c.loop.foot }

// besidePipe reports whether a stretch is beside drill pipe in open hole, where the usual velocities are meant.
func (w *carried) besidePipe() bool {
	return w.way.label == openHoleLabel && w.way.part.row.Item == model.ItemPipe
}

// indexed reports whether the carrying index is meant for a stretch: hole or casing that is nearly upright.
func (c *cleanHole) indexed(w *carried) bool {
	return w.inclination < carryingBelow && (w.way.label == openHoleLabel || w.way.label == casingLabel)
}

// carryingIndex returns the carrying index of a stretch.
func (c *cleanHole) carryingIndex(w *carried) float64 {
	mud := c.loop.fluid
	return cleaning.CarryingIndex(mud.PlasticViscosity(), mud.YieldPoint(), w.velocity, mud.Density)
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
		if w.short || !c.inHole(w) {
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
		if w := &c.ways[n]; !w.short && !c.inHole(w) {
			flow = max(flow, c.enough(w, c.riser))
		}
	}
	return flow
}

// worst returns the stretch with the greatest of a value, nil where none has any. Short ones do not count.
func (c *cleanHole) worst(value func(*carried) (float64, bool)) (at *carried) {
	most := math.Inf(-1)
	for n := range c.ways {
		if v, ok := value(&c.ways[n]); ok && !c.ways[n].short && v > most {
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
