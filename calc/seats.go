package calc

import (
	"math"
	"strconv"

	"borewalk/calc/column"
	"borewalk/calc/gas"
	"borewalk/calc/influx"
	"borewalk/calc/seats"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Seat is a depth at which a casing might be set, with what decides it: depths TVD from RKB in m, muds as EMW in kg/m3. It is a
// suggestion beside the plan's own seats.
type Seat struct {
	TVD         float64
	Least, Most float64 // mud for the hole that ends here; nothing where it is drilled without a riser
	Why         string  // why it is no shallower, or no deeper
	At          float64 // TVD that decides it; zero where none does
	Riserless   bool
	Up          bool // found from the bottom up, else from the top down
}

// findSeats looks for casing seats in the prognosis: from the bottom up the shallowest shoes, from the top down the deepest holes.
func (e *evaluation) findSeats() (up, down []Seat, missing gap) {
	window, margins, missing := e.seatWindow()
	if missing.open() {
		return nil, nil, missing
	}
	rising, err := seats.BottomUp(window, margins)
	var falling seats.Proposal
	if err == nil {
		falling, err = seats.TopDown(window, margins, window.Top)
	}
	if err != nil {
		return nil, nil, gap{"prognosis.row", err.Error()}
	}
	return seatsIn(rising, true), seatsIn(falling, false), gap{}
}

// seatFigures adds the seats to the well page, with the muds for the holes that end at them, and to what the window shows.
func (e *evaluation) seatFigures(p *page) {
	up, down, missing := e.findSeats()
	e.result.Seats = append(e.result.Seats[:0:0], up...)
	e.result.Seats = append(e.result.Seats, down...)
	list := func(group, key string, seats []Seat) {
		p.group = group
		if missing.open() {
			p.put(key+"1", "Seat 1", quantity.Length, 0, missing, nil)
		}
		for n := range seats {
			e.seatFigure(p, key+strconv.Itoa(n+1), "Seat "+strconv.Itoa(n+1)+", TVD", &seats[n])
		}
	}
	list("Casing seats, bottom up", "seats.up.", up)
	list("Casing seats, top down", "seats.down.", down)
}

// seatFigure adds one seat.
func (e *evaluation) seatFigure(p *page, key, name string, s *Seat) {
	why := func(w *Working) {
		w.Formula = "mud over pore and stability, below fracture and kick, over the whole hole; the seat is where that ends"
		m := &e.plan.Seats
		w.in("trip", "mud over pore", quantity.EMW, usual(m.Trip, e.limit(model.RuleTripMargin, 0)))
		w.in("below", "fracture", quantity.EMW, usual(m.Fracture, e.staticMargin()))
		if m.Kick.IsSet() {
			w.in("kick", "at TD", quantity.EMW, m.Kick.SI)
		}
		if s.At > 0 {
			w.in("at", "TVD that decides", quantity.Length, s.At)
		}
		w.Source = "common practice; kick at the shoe by Ghalambor and Guo, lecture slides 2005"
		w.Note = "Seat stands here: " + s.Why + ". A suggestion from the prognosis and these margins alone; soil, trajectory, hazards and what is aboard are not in it. The plan's own seats stay until they are changed."
	}
	p.put(key, name, quantity.Length, s.TVD, gap{}, why).Note = s.Why
	if s.Riserless {
		return // its fluid is the sea's, or what is dumped
	}
	p.also(key+".least", "least mud", quantity.EMW, s.Least, gap{}, why)
	p.also(key+".most", "most mud", quantity.EMW, s.Most, gap{}, why)
}

// seatsIn turns holes into the seats at their bottoms; what decides a seat of the bottom-up way stops the hole below it.
func seatsIn(p seats.Proposal, up bool) (list []Seat) {
	for n, hole := range p.Holes {
		s := Seat{TVD: hole.Bottom, Least: hole.Least.Mud, Most: hole.Most.Mud, Riserless: hole.Riserless, Up: up}
		stop := hole.Stop
		switch {
		case up && n+1 < len(p.Holes):
			stop = p.Holes[n+1].Stop
		case up:
			stop = seats.Stop{Reason: seats.AtBottom}
		}
		s.Why, s.At = because(stop)
		list = append(list, s)
	}
	return list
}

// because says in a few words what stops a hole, and the TVD that decides it.
func because(stop seats.Stop) (why string, tvd float64) {
	if stop.Reason == seats.Closed {
		return stop.Needs.By.String() + " below asks for more than " + stop.Stands.By.String() + " at the shoe stands", stop.Needs.TVD
	}
	return stop.Reason.String(), stop.Needs.TVD
}

// seatWindow returns the window and the margins with which seats are looked for.
func (e *evaluation) seatWindow() (w seats.Window, m seats.Margins, missing gap) {
	missing = first(e.window.missing, e.gaps.sea, e.pathGap)
	if missing.open() {
		return w, m, missing
	}
	s := &e.plan.Seats
	bottom := 0.0
	for i := range e.sections {
		if missing = e.sections[i].missing; missing.open() {
			return w, m, missing
		}
		bottom = max(bottom, e.deepest(i))
	}
	first0, last, _ := e.window.pore.Ends()
	top := max(e.datum.Mudline+e.plan.Prognosis.JudgeBelow.SI, first0)
	w = seats.Window{Pore: e.window.pore.At, Fracture: e.window.fracture.At, Depths: e.window.depths, Top: top, Bottom: min(bottom, last)}
	if e.window.hasStability {
		w.Stability = e.window.stability.At
	}
	if w.Bottom <= w.Top {
		return w, m, gap{"prognosis.row", "the prognosis does not reach down the well"}
	}
	w.Riserless = e.seaInHole(w.Bottom)
	m = seats.Margins{Trip: usual(s.Trip, e.limit(model.RuleTripMargin, 0)), Fracture: usual(s.Fracture, e.staticMargin()),
		Kick: s.Kick.SI, Differential: s.Differential.SI, Riserless: e.limit(model.RuleRiserlessInflow, 0)}
	if s.Tolerance.IsSet() {
		if m.Tolerance, missing = e.seatTolerance(s.Tolerance.SI); missing.open() {
			return w, m, missing
		}
	}
	return w, m, gap{}
}

// seaInHole returns the equivalent density of a hole open to the sea and full of the densest fluid that the plan drills one with,
// seawater where there is none.
func (e *evaluation) seaInHole(bottom float64) seats.Curve {
	density := e.seawater()
	for i := range e.plan.Sections {
		if s := &e.plan.Sections[i]; !e.sections[i].rig {
			density = max(density, s.Density.SI, s.WeightedDensity.SI)
		}
	}
	return e.underSea(density, bottom).EMW
}

// The annulus that a seat's kick tolerance is worked out in, before its section has a hole of its own: 12 1/4 in round 5 in.
const (
	seatHole = 12.25 * 0.0254
	seatPipe = 5 * 0.0254
)

// seatTolerance returns the condition that a hole tolerates a swabbed kick of a volume.
func (e *evaluation) seatTolerance(least float64) (func(shoe, bottom, mud float64) bool, gap) {
	g, err := gas.Natural(usualGravity, gas.DranchukAbouKassem)
	if err != nil {
		return nil, gap{"seats.tolerance", err.Error()}
	}
	if missing := first(e.heat.sea, e.heat.rock); missing.open() {
		return nil, missing
	}
	const area = math.Pi / 4 * (seatHole*seatHole - seatPipe*seatPipe)
	return func(shoe, bottom, mud float64) bool {
		fracture, ok := e.window.fracture.At(shoe)
		if !ok || bottom <= shoe {
			return ok
		}
		cell := influx.Cell{Top: shoe, Bottom: bottom, TopTVD: shoe, BottomTVD: bottom, Area: area, TopTemperature: e.heat.at(shoe), BottomTemperature: e.heat.at(bottom)}
		well := influx.Well{Cells: []influx.Cell{cell}, Mud: mud, Fluid: influx.Gas(g)}
		t, err := well.Tolerance(column.PressureOf(mud, bottom), influx.Place{MD: shoe, Stands: column.PressureOf(fracture, shoe)}, 0)
		return err == nil && (t.Volume >= least || t.Case == influx.Whole)
	}, gap{}
}

// seatProposals looks for the depth of section i's seat: the deepest hole from the shoe above it, and the shallowest shoe from which
// the next section can be drilled to its TD.
func seatProposals(plan *model.Plan, i int) []Proposal {
	e := runPages(plan, i, nil)
	window, margins, missing := e.seatWindow()
	if missing.open() || e.sections[i].missing.open() || !e.strings[i].present {
		return nil
	}
	path := e.depthField(i)
	list := []Proposal{{Title: "Deepest seat from the shoe above", By: "from the shoe above"}, {Title: "Shallowest seat for the next hole", By: "for the next hole"}}
	for n := range list {
		list[n].Ref, _ = model.Find(plan, path)
		list[n].Gives, list[n].Kind = "Shoe, TVD", quantity.Length
	}
	e.deepestSeat(i, &list[0], window, margins)
	e.shallowestSeat(i, &list[1], window, margins)
	return list
}

// deepestSeat fills in how deep section i's hole may go from the shoe above it.
func (e *evaluation) deepestSeat(i int, to *Proposal, w seats.Window, m seats.Margins) {
	shoe, _, ok := e.lastShoe(i)
	from := w.Top
	if ok {
		from = max(from, e.path.TVD(shoe))
	}
	if from >= w.Bottom {
		to.Why = "the shoe above is at the bottom of the prognosis"
		return
	}
	down, err := seats.TopDown(w, m, from)
	switch {
	case err != nil:
		to.Why = err.Error()
	case len(down.Holes) == 0:
		why, _ := because(down.Stop)
		to.Why = "no hole can be drilled from there: " + why
	case down.Holes[0].Stop.Reason == seats.AtBottom:
		to.Why = "no seat is needed: from that shoe the hole may go to the bottom of the well"
	default:
		hole := down.Holes[0]
		why, _ := because(hole.Stop)
		e.takeSeat(i, to, hole.Bottom, math.Floor, why)
	}
}

// shallowestSeat fills in how shallow the shoe of section i may stand for the hole below it to reach its TD.
func (e *evaluation) shallowestSeat(i int, to *Proposal, w seats.Window, m seats.Margins) {
	if i+1 >= len(e.sections) || e.sections[i+1].missing.open() {
		to.Why = "there is no hole below this section"
		return
	}
	w.Bottom = min(w.Bottom, e.deepest(i+1))
	if w.Bottom <= w.Top {
		to.Why = "the hole below lies above the prognosis"
		return
	}
	up, err := seats.BottomUp(w, m)
	switch {
	case err != nil:
		to.Why = err.Error()
	case len(up.Holes) == 0:
		why, _ := because(up.Stop)
		to.Why = "no shoe is strong enough: " + why
	default:
		hole := up.Holes[len(up.Holes)-1]
		why, _ := because(hole.Stop)
		e.takeSeat(i, to, hole.Shoe, math.Ceil, why)
	}
}

// takeSeat proposes a TVD as the shoe of section i, by the entry that decides how deep it goes, rounded to the side that keeps the
// margins, and counts what that does.
func (e *evaluation) takeSeat(i int, to *Proposal, tvd float64, rounded func(float64) float64, why string) {
	md, ok := e.path.MDAtTVD(tvd)
	if !ok {
		to.Why = "the well path does not reach that depth"
		return
	}
	h := &e.sections[i]
	below := h.td - e.strings[i].shoe // rathole, and opener behind the bit
	if string(e.depthField(i)) == string(model.PathOf(i, "shoe")) {
		below = 0
	}
	unit := search{plan: e.plan}.unit(to.Ref)
	entry := model.Entry{Quantity: quantity.Of(tidy(rounded(unit.FromSI(md+below))), unit)}
	trial := e.plan.Clone()
	to.Ref.Set(trial, entry)
	to.OK, to.Entry, to.Value, to.Note = true, entry, tvd, why+"; prognosis and margins alone, the mud is to follow"
	e.count(i, to, runPages(trial, i, nil).result)
}
