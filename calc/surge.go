package calc

import (
	"math"
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

// running is a string on its way with its shoe at a depth: the annulus from the top down and the open hole beside it.
type running struct {
	shoe   float64 // along hole
	fluid  friction.Fluid
	model  friction.Correlation
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

// surgeFigures adds the speed at which the string of section i can be run before the surge of the displaced fluid takes the
// margin below fracture: the least of that with its shoe leaving the last shoe, when all of it may hang in the riser and the
// last string, and of that at its setting depth.
func (e *evaluation) surgeFigures(i int, p *page, c *casing) {
	if e.plan.Sections[i].Method != model.Cemented || c.missing.open() {
		return
	}
	var places []running
	missing := e.surgeGap(i)
	for _, shoe := range e.runningDepths(i, c) {
		if !missing.open() {
			var r running
			r, missing = e.running(i, c, shoe)
			places = append(places, r)
		}
	}
	if rheology := e.rheologyGap(i); rheology.open() {
		e.note(i, Caution, gap{rheology.path, "no running speed from surge: " + rheology.why})
	}
	p.group = "Running speed, surge"
	line := func(key, name, displaced string, area func(*reach) float64) {
		var r running
		var at weak
		speed := math.Inf(1)
		for k := range places {
			if v, where := places[k].limit(area); v < speed {
				speed, at, r = v, where, places[k]
			}
		}
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
		p.also(key+".shoe", "shoe at", quantity.Length, r.shoe, missing, func(w *Working) {
			w.Formula = "depth of the string's shoe along hole, leaving the last shoe or at its setting depth, where the speed is least"
			w.Source = "geometry"
		})
		if !missing.open() && key == "casing.surge.closed" {
			e.judge(model.RuleRunningSpeed, i, speed, "Running speed that surge leaves, float closed", "", r.shoe, model.PathOf(i, "loads.surge_margin"))
		}
	}
	line("casing.surge.closed", "Float closed", "the whole pipe", func(r *reach) float64 { return r.closed })
	line("casing.surge.filling", "Filling itself", "the steel", func(r *reach) float64 { return r.steel })
}

// surgeGap says what is missing for the surge of section i's string.
func (e *evaluation) surgeGap(i int) gap {
	return first(e.windowGap(i), e.boreGap(i), e.rheologyGap(i))
}

// runningDepths returns where the shoe of section i's string is looked at on its way, along hole: just out of the last shoe,
// and at its setting depth.
func (e *evaluation) runningDepths(i int, c *casing) []float64 {
	if shoe, _, ok := e.lastShoe(i); ok && shoe < c.shoe {
		return []float64{shoe, c.shoe}
	}
	return []float64{c.shoe}
}

// running lays out the string of section i on its way with its shoe at a depth, the landing string above it.
func (e *evaluation) running(i int, c *casing, shoe float64) (running, gap) {
	r := running{shoe: shoe, fluid: e.conditioned(i, e.leftInHole(i)), model: e.rubbing(i)}
	r.places = e.weakPlaces(i, c)
	pipe, _, missing := e.landingPipe(i)
	if missing.open() {
		return r, missing
	}
	var bodies []bore.Body
	if top := c.top - (c.shoe - shoe); top > 0 {
		bodies = append(bodies, bore.Body{Bottom: top, OD: pipe.OD, ID: pipe.ID, Label: "landing string"})
	}
	for _, b := range e.casingBodies(c) {
		b.Top, b.Bottom = max(b.Top-(c.shoe-shoe), 0), b.Bottom-(c.shoe-shoe)
		if b.Bottom > b.Top {
			bodies = append(bodies, b)
		}
	}
	top := e.bores[i][0].Top
	annuli := bore.Intervals(e.bores[i], bodies, top, shoe)
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
			surge += friction.Moving(r.model, r.fluid, speed, speed*area(x), x.outer, x.inner) * x.length
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
	w.fluid(r.fluid)
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
		w.in("p "+n, "its surge", quantity.Pressure, friction.Moving(r.model, r.fluid, speed, speed*area(x), x.outer, x.inner)*x.length)
	}
	w.Source = "friction as for circulation, " + by(r.model) + "; clinging constant of Burkhardt 1961, laminar, from memory"
	w.Note = "String at its setting depth, landing string of the section's drill pipe. Steady speed; gel, couplings, acceleration and eccentricity left out. " +
		"Filling: as fast as it goes down, without loss in the float."
}

// surgeChartSteps is at how many places of the shoe a chart looks at the running speed.
const surgeChartSteps = 24

// surgeChart returns how fast the string of section i may be run against the depth of its shoe, from where it leaves the last
// shoe to its setting depth.
func (e *evaluation) surgeChart(i int, c *casing) Chart {
	depths := e.runningDepths(i, c)
	if e.plan.Sections[i].Method != model.Cemented || e.surgeGap(i).open() || len(depths) < 2 {
		return Chart{}
	}
	chart := Chart{Key: "casing.surge", Title: "Running speed that surge leaves", Topic: model.TopicCasing, Axis: "shoe", Along: quantity.Length, Down: true}
	closed, filling := ChartCurve{Name: "Float closed", Kind: quantity.Velocity}, ChartCurve{Name: "Filling itself", Kind: quantity.Velocity}
	for k := range surgeChartSteps + 1 {
		shoe := depths[0] + (depths[1]-depths[0])*float64(k)/surgeChartSteps
		r, missing := e.running(i, c, shoe)
		if missing.open() {
			return Chart{}
		}
		speed, _ := r.limit(func(x *reach) float64 { return x.closed })
		closed.Points = append(closed.Points, ChartPoint{shoe, speed})
		speed, _ = r.limit(func(x *reach) float64 { return x.steel })
		filling.Points = append(filling.Points, ChartPoint{shoe, speed})
	}
	chart.Curves = []ChartCurve{closed, filling}
	chart.Marks = []ChartMark{{"last shoe", depths[0]}, {"setting depth", depths[1]}}
	return chart
}
