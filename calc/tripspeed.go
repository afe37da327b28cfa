package calc

import (
	"strings"

	"borewalk/calc/column"
	"borewalk/calc/swab"
	"borewalk/model"
	"borewalk/model/quantity"
)

// tripWay is one way of a trip as its figures name it.
type tripWay struct {
	key, act, effect string // "out", "Out", "Swab"
	move             swab.Move
	places           []swab.Place
	change           func(*bitAt) float64
	limit            func(*bitAt) speedLimit
	planned          quantity.Value
	path             model.Path // of the planned speed
	rule             model.RuleID
	room, finding    string // formula; what is judged
}

// tripWays returns out and in.
func (e *evaluation) tripWays(i int, m *moving) [2]tripWay {
	own := &e.plan.Sections[i].Trip
	return [2]tripWay{
		{key: "out", act: "Out", effect: "Swab", move: m.out, places: m.drawn, planned: own.SpeedOut, path: model.PathOf(i, "swab.out"), rule: model.RulePullingSpeed,
			change: func(at *bitAt) float64 { return at.draws }, limit: func(at *bitAt) speedLimit { return at.out }, room: "static - (pore + margin) × g × TVD",
			finding: "Pulling speed that swab allows over the planned one"},
		{key: "in", act: "In", effect: "Surge", move: m.in, places: m.pressed, planned: own.SpeedIn, path: model.PathOf(i, "swab.in"), rule: model.RuleTripInSpeed,
			change: func(at *bitAt) float64 { return at.presses }, limit: func(at *bitAt) speedLimit { return at.in }, room: "(fracture or shoe test - margin) × g × TVD - static",
			finding: "Running speed that surge allows over the planned one"},
	}
}

// swabFigures adds what the planned trip does to the pressure in the hole, and how fast it may be.
func (e *evaluation) swabFigures(i int) {
	own := &e.plan.Sections[i].Trip
	if !e.sections[i].rig && (e.rheologyGap(i).open() || !own.SpeedOut.IsSet() && !own.SpeedIn.IsSet()) {
		return // what is drilled without a riser need have neither
	}
	p, m := e.page(i, model.TopicHydraulics), e.movingString(i)
	if rheology := e.rheologyGap(i); rheology.open() {
		e.note(i, Caution, gap{rheology.path, "no swab and surge: " + rheology.why})
	}
	none := bitAt{}
	shoe, td, least := &none, &none, [2]*bitAt{&none, &none}
	ways := e.tripWays(i, m)
	if !m.missing.open() {
		shoe, td = &m.at[0], &m.at[len(m.at)-1]
		for k := range ways {
			least[k] = m.least(ways[k].limit)
		}
	}
	at := e.topName(i)
	p.group = "Swab and surge, as planned"
	for k := range ways {
		e.plannedFigure(i, p, m, &ways[k], ".td", ways[k].effect+", bit at TD", td)
		e.plannedFigure(i, p, m, &ways[k], ".shoe", ways[k].effect+" "+at, shoe)
	}
	p.group = "Fastest trip speed"
	for k := range ways {
		x := &ways[k]
		e.fastestFigure(i, p, m, x, ".td", x.act+", bit at TD", td)
		e.fastestFigure(i, p, m, x, ".shoe", x.act+" "+at, shoe)
		e.fastestFigure(i, p, m, x, ".least", x.act+", least", least[k])
		p.also("swab.limit."+x.key+".bit", "bit at", quantity.Length, least[k].bit, m.missing, func(w *Working) {
			w.Formula = "depth of the bit, of those looked at, at which the string may be moved least fast"
			for _, a := range m.at {
				w.in("bit", "along hole", quantity.Length, a.bit)
				w.in("v", "fastest there", quantity.Velocity, x.limit(&a).speed)
			}
			w.Source = "geometry"
			w.Note = "Looked at: the top of the open hole, the BHA just out of it, where the window has the least room, and TD."
		})
		if !m.missing.open() && x.planned.IsSet() && e.sections[i].rig {
			e.judge(x.rule, i, x.limit(least[k]).speed-x.planned.SI, x.finding, "", least[k].bit, x.path)
		}
	}
	e.gelFigures(i, p, m)
}

// plannedFigure adds the equivalent density at the bit that a planned move comes to, and the pressure that it adds.
func (e *evaluation) plannedFigure(i int, p *page, m *moving, x *tripWay, suffix, name string, at *bitAt) {
	missing := first(m.missing, needs(x.planned, x.path, "planned speed"))
	tvd := e.path.TVD(at.bit)
	density := 0.0
	if !missing.open() {
		density, _ = column.EMW(pressureAt(m.rest, tvd)+x.change(at), tvd)
	}
	why := func(w *Working) {
		w.Formula = "EMW = (static + p) / (g × TVD); p = sum of friction(v × A + q + K × v × annulus) × L; A is the whole pipe, at a tool joint the joint, v below zero on the way out"
		if x.move.End == swab.Open && x.move.Pumped == 0 {
			w.Formula = "EMW = (static + p) / (g × TVD); p = sum of friction(v × A - q + K × v × annulus) × L; A at a tool joint is the joint; q enters the bore and loses as much there"
		}
		w.in("static", "fluid at rest", quantity.Pressure, pressureAt(m.rest, tvd))
		w.in("TVD", "of the bit", quantity.Length, tvd)
		w.in("p", "in all", quantity.Pressure, x.change(at))
		w.in("v", "speed", quantity.Velocity, x.move.Speed)
		w.in("q", "pumped", quantity.Flow, x.move.Pumped)
		w.moved(&at.string, x.move, at.bit)
		e.swabSource(i, w)
	}
	p.put("swab."+x.key+suffix, name, quantity.EMW, density, missing, why)
	p.also("swab."+x.key+suffix+".pressure", "pressure", quantity.Pressure, x.change(at), missing, why)
}

// fastestFigure adds the speed at which a move takes all the room that the window leaves, the time of a stand at that speed,
// and where it does so first.
func (e *evaluation) fastestFigure(i int, p *page, m *moving, x *tripWay, suffix, name string, at *bitAt) {
	found := x.limit(at)
	why := func(w *Working) {
		w.Formula = "room = " + x.room + " = sum of friction(v × A + q + K × v × annulus) × L down to there or to the bit; A is the whole pipe, at a tool joint the joint"
		move := x.move
		move.Speed = found.speed
		if x.key == "out" {
			move.Speed = -found.speed
		}
		w.in("v", "speed", quantity.Velocity, found.speed)
		w.in("bit", "along hole", quantity.Length, at.bit)
		w.in("TVD", "where the room is taken first", quantity.Length, e.path.TVD(found.place.MD))
		w.in("room", "over the static column", quantity.Pressure, found.place.Room)
		w.in("q", "pumped", quantity.Flow, x.move.Pumped)
		w.moved(&at.string, move, found.place.MD)
		e.swabSource(i, w)
	}
	key := "swab.limit." + x.key + suffix
	f := p.put(key, name, quantity.Velocity, found.speed, m.missing, why)
	if !m.missing.open() {
		f.Note = found.note(strings.ToLower(x.effect))
	}
	p.also(key+".at", "at TVD", quantity.Length, e.path.TVD(found.place.MD), m.missing, why)
	if stand := e.plan.Rig.StandLength; !m.missing.open() && stand.IsSet() && found.speed > 0 && found.speed < fastestRun {
		p.also(key+".stand", "a stand in", quantity.Time, stand.SI/found.speed, gap{}, func(w *Working) {
			w.Formula = "time = stand / v"
			w.in("stand", "length", quantity.Length, stand.SI)
			w.in("v", "fastest", quantity.Velocity, found.speed)
			w.Source = "geometry"
			w.Note = "At that speed all the way: no less than this."
		})
	}
}

// swabSource names what stands behind swab and surge, and what they leave out.
func (e *evaluation) swabSource(i int, w *Working) {
	w.Source = "friction as for circulation, " + by(e.rubbing(i)) + "; clinging constant of Burkhardt 1961, laminar, from memory"
	w.Note = "Steady speed, pipe in the middle. Gel, acceleration, heave, a balled bit or stabilisers and gas in the mud are left out. " +
		"With a float the string is shut on the way out as well, as with a plugged bit."
}
