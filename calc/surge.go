package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/friction"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	usualSurgeMargin = 20.0 // kg/m3 below fracture where the plan gives none (common practice, from memory)
	fastestRun       = 5.0  // m/s; nobody runs casing faster, so that a limit above it is none
)

// running is a string on its way to its depth, hanging there: the annulus from the top down and the open hole beside it.
type running struct {
	fluid  friction.Fluid
	reach  []reach
	places []weak
}

// reach is a length of annulus with one size of hole and of what moves in it: lengths along hole in m, diameters in m, areas
// in m2.
type reach struct {
	bottom, length float64
	outer, inner   float64
	closed, steel  float64 // area of the body that displaces fluid: shut at its foot, and filling as it goes down
}

// weak is a place in the open hole with the pressure in Pa that may come on top of the fluid at rest.
type weak struct {
	md, tvd, room float64
}

// surgeFigures adds the speed at which the string of section i can be run at its setting depth before the surge of the
// displaced fluid takes the margin below fracture.
func (e *evaluation) surgeFigures(i int, p *page, c *casing) {
	if e.plan.Sections[i].Method != model.Cemented || c.missing.open() {
		return
	}
	var r running
	missing := e.surgeGap(i)
	if !missing.open() {
		r, missing = e.running(i, c)
	}
	if rheology := e.rheologyGap(i); rheology.open() {
		e.note(i, Caution, gap{rheology.path, "no running speed from surge: " + rheology.why})
	}
	p.group = "Running speed, surge"
	line := func(key, name, displaced string, area func(*reach) float64) {
		speed, at := r.limit(area)
		f := p.put(key, name, quantity.Velocity, speed, missing, func(w *Working) { e.surgeWorking(i, w, &r, displaced, speed, at, area) })
		switch {
		case missing.open():
		case speed >= fastestRun:
			f.Note = "not limited"
		case speed == 0 && at.room <= 0:
			f.Note = "no margin is left at rest"
		case speed == 0:
			f.Note = "its yield point alone takes the margin"
		}
		p.also(key+".at", "at TVD", quantity.Length, at.tvd, missing, func(w *Working) { e.surgeWorking(i, w, &r, displaced, speed, at, area) })
	}
	line("casing.surge.closed", "Float closed", "the whole pipe", func(r *reach) float64 { return r.closed })
	line("casing.surge.filling", "Filling itself", "the steel", func(r *reach) float64 { return r.steel })
}

// surgeGap says what is missing for the surge of section i's string.
func (e *evaluation) surgeGap(i int) gap {
	return first(e.windowGap(i), e.boreGap(i), e.rheologyGap(i))
}

// rheologyGap says what is missing for the friction of section i's fluid.
func (e *evaluation) rheologyGap(i int) gap {
	s := &e.plan.Sections[i]
	return first(needs(s.PV, model.PathOf(i, "pv"), "plastic viscosity"), needs(s.YP, model.PathOf(i, "yp"), "yield point"))
}

// running lays out the string of section i at its depth: landing string of the section's drill pipe above it.
func (e *evaluation) running(i int, c *casing) (running, gap) {
	s := &e.plan.Sections[i]
	r := running{fluid: friction.Fluid{Density: e.leftInHole(i), PlasticViscosity: s.PV.SI, YieldPoint: s.YP.SI}}
	r.places = e.weakPlaces(i, c)
	bodies := e.casingBodies(c)
	if parts := e.drills[i].parts; len(parts) > 0 {
		bodies = slices.Insert(bodies, 0, bore.Body{Bottom: c.top, OD: parts[0].pipe.OD, ID: parts[0].pipe.ID, Label: "landing string"})
	}
	top := e.bores[i][0].Top
	annuli := bore.Intervals(e.bores[i], bodies, top, c.shoe)
	if err := bore.Fit(annuli); err != nil {
		return r, gap{model.PathOf(i, "hole"), "the string does not fit: " + err.Error()}
	}
	for _, a := range annuli {
		body := 0.0
		for _, b := range bodies {
			if b.Top < a.Bottom && b.Bottom > a.Top {
				body = b.ID
			}
		}
		for _, w := range r.places { // cut where the pressure is looked at
			if w.md > a.Top && w.md < a.Bottom {
				r.add(a, a.Top, w.md, body)
				a.Top = w.md
			}
		}
		r.add(a, a.Top, a.Bottom, body)
	}
	return r, gap{}
}

// add lays a length of annulus below the others.
func (r *running) add(a bore.Interval, top, bottom, id float64) {
	r.reach = append(r.reach, reach{bottom: bottom, length: bottom - top, outer: a.Outer, inner: a.Inner,
		closed: bore.Area(a.Inner), steel: bore.Area(a.Inner) - bore.Area(id)})
}

// weakPlaces returns where in the open hole the surge is held against fracture, top down: the last shoe with its planned
// test, the rows of the prognosis and the string's own shoe.
func (e *evaluation) weakPlaces(i int, c *casing) []weak {
	margin := usualSurgeMargin
	if own := e.plan.Sections[i].Loads.SurgeMargin; own.IsSet() {
		margin = own.SI
	}
	from := e.openFrom(i)
	stack := e.well(i, e.leftInHole(i))
	test, shoe, tested := e.shoeTest(i)
	var places []weak
	add := func(md, tvd float64) {
		fracture, ok := e.window.fracture.At(tvd)
		if !ok {
			return
		}
		if tested && tvd == shoe {
			fracture = min(fracture, test)
		}
		places = append(places, weak{md, tvd, column.PressureOf(fracture-margin, tvd) - pressureAt(stack, tvd)})
	}
	add(from, e.path.TVD(from))
	for _, tvd := range e.window.depths {
		if md, ok := e.path.MDAtTVD(tvd); ok && md > from && md < c.shoe {
			add(md, tvd)
		}
	}
	if c.shoe > from {
		add(c.shoe, e.path.TVD(c.shoe))
	}
	return places
}

// excess returns the most by which the surge at a speed goes beyond its room, in Pa, and where.
func (r *running) excess(speed float64, area func(*reach) float64) (over float64, at weak) {
	over = math.Inf(-1)
	surge, n := 0.0, 0
	look := func(md float64) {
		for n < len(r.places) && r.places[n].md <= md {
			if x := surge - r.places[n].room; x > over {
				over, at = x, r.places[n]
			}
			n++
		}
	}
	for k := range r.reach {
		x := &r.reach[k]
		look(x.bottom - x.length)
		if x.inner > 0 {
			surge += friction.Moving(friction.Bingham{}, r.fluid, speed, speed*area(x), x.outer, x.inner) * x.length
		}
	}
	look(math.Inf(1))
	return over, at
}

// limit returns the speed in m/s at which the surge takes all its room, and where it does so first: none where a crawl is
// too fast, [fastestRun] where that is slow enough. Between, the excess grows with the speed; the secant that keeps the root
// between its ends (regula falsi, with the end that stays halved: the Illinois rule) finds it.
func (r *running) limit(area func(*reach) float64) (speed float64, at weak) {
	const crawl, near, most = 1e-6, 100, 60
	low, high := crawl, fastestRun
	below, where := r.excess(low, area)
	if below >= 0 || len(r.places) == 0 {
		return 0, where
	}
	above, where := r.excess(high, area)
	if above <= 0 {
		return fastestRun, where
	}
	side := 0
	for range most {
		speed = (low*above - high*below) / (above - below)
		over, place := r.excess(speed, area)
		at = place
		if math.Abs(over) < near { // Pa: far below what a gauge shows
			break
		}
		if over < 0 {
			if low, below = speed, over; side < 0 {
				above /= 2
			}
			side = -1
		} else {
			if high, above = speed, over; side > 0 {
				below /= 2
			}
			side = 1
		}
	}
	return speed, at
}

// surgeWorking shows the surge at the limit, length by length.
func (e *evaluation) surgeWorking(i int, w *Working, r *running, displaced string, speed float64, at weak, area func(*reach) float64) {
	w.Formula = "room = (fracture - margin) × g × TVD - static = sum of friction(v × A + K × v × annulus) × L down to there; A is " + displaced
	w.in("v", "speed", quantity.Velocity, speed)
	w.in("TVD", "where the room is taken first", quantity.Length, at.tvd)
	w.in("room", "over the static column", quantity.Pressure, at.room)
	w.in("rho", "fluid in the hole", quantity.Density, r.fluid.Density)
	w.in("PV", "plastic viscosity", quantity.Viscosity, r.fluid.PlasticViscosity)
	w.in("YP", "yield point", quantity.YieldPoint, r.fluid.YieldPoint)
	for k := range r.reach {
		x := &r.reach[k]
		if x.inner == 0 || x.bottom-x.length >= at.md {
			continue
		}
		n := strconv.Itoa(k + 1)
		w.in("L "+n, "length", quantity.Length, x.length)
		w.in("D "+n, "bore", quantity.Diameter, x.outer)
		w.in("d "+n, "body", quantity.Diameter, x.inner)
		w.in("K "+n, "clinging", quantity.Number, friction.Clinging(x.inner/x.outer))
		w.in("p "+n, "its surge", quantity.Pressure, friction.Moving(friction.Bingham{}, r.fluid, speed, speed*area(x), x.outer, x.inner)*x.length)
	}
	w.Source = "Bingham in a slot (calculation of friction as for circulation); clinging constant of Burkhardt 1961, laminar, from memory"
	w.Note = "String at its setting depth, landing string of the section's drill pipe. Steady speed; gel, couplings, acceleration and eccentricity left out. " +
		"Filling: as fast as it goes down, without loss in the float."
}
