package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/friction"
	"borewalk/calc/swab"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	usualSurgeMargin = 20.0 // kg/m3 below fracture where the plan gives none (common practice, from memory)
	fastestRun       = 5.0  // m/s; nobody runs casing faster, so that a limit above it is none
)

// running is a string on its way with its foot at a depth along hole, and the places in the open hole that limit it.
type running struct {
	foot   float64
	string swab.String
	places []swab.Place
}

// speedLimit is the speed in m/s at which a move takes all the room of a place in the open hole.
type speedLimit struct {
	speed float64
	place swab.Place
}

// limit returns the fastest speed of a move that leaves each of some places its room: none where a crawl is too fast,
// [fastestRun] where that is slow enough.
func limit(s *swab.String, m swab.Move, places []swab.Place) speedLimit {
	if len(places) == 0 {
		return speedLimit{}
	}
	speed, k := s.Limit(m, places, fastestRun)
	return speedLimit{speed, places[k]}
}

// note says in short why a fastest speed is none, or no limit to what surge or swab does.
func (f speedLimit) note(effect string) string {
	switch {
	case f.speed >= fastestRun:
		return "or more: not limited by " + effect
	case f.speed == 0 && f.place.Room <= 0:
		return "no margin is left at rest"
	case f.speed == 0:
		return "its yield point alone takes the margin"
	}
	return ""
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
	line := func(key, name, displaced string, end swab.End) {
		var r running
		at := speedLimit{speed: math.Inf(1)}
		for k := range places {
			if v := limit(&places[k].string, swab.Move{Speed: 1, End: end}, places[k].places); v.speed < at.speed {
				at, r = v, places[k]
			}
		}
		why := func(w *Working) { e.surgeWorking(i, w, &r, displaced, at.place, swab.Move{Speed: at.speed, End: end}) }
		f := p.put(key, name, quantity.Velocity, at.speed, missing, why)
		if !missing.open() {
			f.Note = at.note("surge")
		}
		p.also(key+".at", "at TVD", quantity.Length, e.path.TVD(at.place.MD), missing, why)
		p.also(key+".shoe", "shoe at", quantity.Length, r.foot, missing, func(w *Working) {
			w.Formula = "depth of the string's shoe along hole, leaving the last shoe or at its setting depth, where the speed is least"
			w.Source = "geometry"
		})
		if !missing.open() && key == "casing.surge.closed" {
			e.judge(model.RuleRunningSpeed, i, at.speed, "Running speed that surge leaves, float closed", "", r.foot, model.PathOf(i, "loads.surge_margin"))
		}
	}
	line("casing.surge.closed", "Float closed", "the whole pipe", swab.Closed)
	line("casing.surge.filling", "Filling itself", "the steel", swab.Filling)
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
	r := running{foot: shoe, string: swab.String{Fluid: e.conditioned(i, e.leftInHole(i)), Model: e.rubbing(i)}}
	margin := e.surgeMargin(i, e.plan.Sections[i].Loads.SurgeMargin)
	r.places = e.weakPlaces(i, c.shoe, e.surgeRoom(i, e.well(i, e.leftInHole(i)), margin))
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
		r.string.Add(swab.Reach{Bottom: a.Bottom, Length: a.Bottom - a.Top, Outer: a.Outer, Inner: a.Inner, ID: body})
	}
	return r, gap{}
}

// surgeMargin returns the margin in kg/m3 that surge leaves below fracture in section i: what is entered, else the usual one,
// and none without a riser, where near the seabed the window is next to nothing and the circulating margin is waived too.
func (e *evaluation) surgeMargin(i int, own quantity.Value) float64 {
	switch {
	case own.IsSet():
		return own.SI
	case !e.sections[i].rig:
		return 0
	}
	return usualSurgeMargin
}

// weakPlaces returns where in the open hole of section i down to a depth along hole a string on its way is held against the
// window, top down.
func (e *evaluation) weakPlaces(i int, bottom float64, room func(tvd float64) (float64, bool)) []swab.Place {
	open := e.openPlaces(i, bottom, nil)
	places := make([]swab.Place, 0, len(open))
	for _, at := range open {
		if left, ok := room(at.tvd); ok {
			places = append(places, swab.Place{MD: at.md, Room: left})
		}
	}
	return places
}

// surgeRoom returns what surge may add to a column of fluid at rest in section i at a TVD: up to what the hole stands less a
// margin in kg/m3.
func (e *evaluation) surgeRoom(i int, rest column.Stack, margin float64) func(tvd float64) (float64, bool) {
	stands := e.stands(i)
	return func(tvd float64) (float64, bool) {
		limit, ok := stands(tvd)
		return column.PressureOf(limit-margin, tvd) - pressureAt(rest, tvd), ok
	}
}

// surgeWorking shows the surge at the limit, length by length.
func (e *evaluation) surgeWorking(i int, w *Working, r *running, displaced string, at swab.Place, m swab.Move) {
	w.Formula = "room = (fracture - margin) × g × TVD - static = sum of friction(v × A + K × v × annulus) × L down to there; A is " + displaced
	w.in("v", "speed", quantity.Velocity, m.Speed)
	w.in("TVD", "where the room is taken first", quantity.Length, e.path.TVD(at.MD))
	w.in("room", "over the static column", quantity.Pressure, at.Room)
	w.moved(&r.string, m, at.MD)
	w.Source = "friction as for circulation, " + by(e.rubbing(i)) + "; clinging constant of Burkhardt 1961, laminar, from memory"
	w.Note = "String at its setting depth, landing string of the section's drill pipe. Steady speed; gel, couplings, acceleration and eccentricity left out. " +
		"Filling: as fast as it goes down, without loss in the float."
}

// moved shows what a move adds to the fluid at rest in each length of annulus down to a depth along hole.
func (w *Working) moved(s *swab.String, m swab.Move, to float64) {
	w.fluid(s.Fluid)
	for k, x := range s.Lengths() {
		length := min(x.Length, to-(x.Bottom-x.Length))
		if x.Inner == 0 || length <= 0 {
			continue
		}
		n := strconv.Itoa(k + 1)
		w.in("L "+n, "length", quantity.Length, length)
		w.in("D "+n, "bore", quantity.Diameter, x.Outer)
		w.in("d "+n, "body", quantity.Diameter, x.Inner)
		if x.Share > 0 {
			w.in("j "+n, "tool joints", quantity.Diameter, x.Joint)
			w.in("share "+n, "of the length", quantity.Ratio, x.Share)
		}
		w.in("K "+n, "clinging", quantity.Number, friction.Clinging(x.Inner/x.Outer))
		w.in("p "+n, "of the length", quantity.Pressure, s.Gradient(m, k)*length)
	}
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
		closed.Points = append(closed.Points, ChartPoint{shoe, limit(&r.string, swab.Move{Speed: 1, End: swab.Closed}, r.places).speed})
		filling.Points = append(filling.Points, ChartPoint{shoe, limit(&r.string, swab.Move{Speed: 1, End: swab.Filling}, r.places).speed})
	}
	chart.Curves = []ChartCurve{closed, filling}
	chart.Marks = []ChartMark{{"last shoe", depths[0]}, {"setting depth", depths[1]}}
	return chart
}
