package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/steel"
	"borewalk/calc/tripping"
	"borewalk/model"
	"borewalk/model/quantity"
)

// trip is the drill string of a section pulled out of its hole: lengths in m.
type trip struct {
	missing gap
	level   gap     // what is missing for how far the level falls
	stand   float64 // length of a stand
	hole    float64 // area of the bore at the level, m2
	density float64 // of the fluid that falls
	wet     bool    // no slug is pumped: the bore's fluid leaves with the pipe
	parts   []tripPart
}

// tripPart is a part of the string as it is pulled, and the length of it between two fills.
type tripPart struct {
	part  *stringPart
	pipe  tripping.Pipe
	every float64 // stands
	batch float64 // their length, no more than the part's
}

// usualFill is how many stands of drill pipe are pulled between fills where the plan does not say (30 CFR 250.456 asks for
// no more), and usualAssemblyFill the same of the BHA (common practice, from memory).
const (
	usualFill         = 5.0
	usualAssemblyFill = 1.0
)

// readTrip lays out the trip of section i.
func (e *evaluation) readTrip(i int) trip {
	d, rig, own := &e.drills[i], &e.plan.Rig, &e.plan.Sections[i].Trip
	t := trip{missing: first(d.missing, needs(rig.StandLength, "rig.stand_length", "stand length")), stand: rig.StandLength.SI, wet: !own.SlugDensity.IsSet()}
	if t.level = first(t.missing, e.boreGap(i), e.columnGap(i)); t.missing.open() {
		return t
	}
	if !t.level.open() {
		t.hole, t.density = bore.Area(e.bores[i][0].Diameter), e.density(i, e.sections[i].td)
	}
	pipe, assembly := usual(own.FillEvery, usualFill), usual(own.FillEveryAssembly, usualAssemblyFill)
	t.parts = make([]tripPart, 0, len(d.parts))
	for k := range d.parts {
		p := &d.parts[k]
		if p.row.Cuts() {
			continue
		}
		x := tripPart{part: p, pipe: tripping.Pipe{Steel: steel.Displacement(p.mass()), Bore: bore.Area(p.pipe.ID)}, every: assembly}
		if p.row.Item == model.ItemPipe {
			x.every = pipe
		}
		x.batch = min(x.every*t.stand, p.bottom-p.top)
		t.parts = append(t.parts, x)
	}
	return t
}

// tripFigures adds to the string page what the hole takes while the string is pulled.
func (e *evaluation) tripFigures(i int, p *page) {
	t := e.readTrip(i)
	p.group = "Trip"
	e.standFigures(i, p, &t)
	if !e.sections[i].rig {
		return
	}
	e.wholeTrip(p, &t, "trip.whole.open", "Whole trip, dry", false)
	e.wholeTrip(p, &t, "trip.whole.closed", "Whole trip, wet", true)
	p.group = "Trip: a stand, dry"
	for k := range t.parts {
		x := &t.parts[k]
		e.tripPerStand(p, &t, x, "open", false)
		e.tripPerStand(p, &t, x, "closed", true)
	}
	e.tripFillFigures(p, &t, "Trip: a fill, dry", "open", false)
	e.tripFillFigures(p, &t, "Trip: a fill, wet", "closed", true)
	e.slugFigures(i, p, &t)
	e.judgeTrip(i, &t)
}

// standFigures counts the stands until the bit is in the last shoe, the BHA at the stack and the BHA at the rotary.
func (e *evaluation) standFigures(i int, p *page, t *trip) {
	h, d := &e.sections[i], &e.drills[i]
	pipe := 0.0 // of drill pipe
	for k := range d.parts {
		if part := &d.parts[k]; part.row.Item == model.ItemPipe {
			pipe += part.bottom - part.top
		}
	}
	count := func(key, name string, pulled float64, missing gap, formula string, inputs func(*Working)) *Figure {
		return p.put(key, name, quantity.Count, math.Ceil(max(pulled, 0)/t.stand-1e-9), missing, func(w *Working) {
			w.Formula = formula + " / stand, rounded up"
			inputs(w)
			w.in("stand", "length", quantity.Length, t.stand)
			w.Source = "geometry"
		})
	}
	if shoe, _, ok := e.lastShoe(i); ok {
		count("trip.stands.shoe", "Stands to the shoe", h.td-shoe, first(t.missing, e.shoeGap(i)), "(TD - shoe)", func(w *Working) {
			w.in("TD", "bit", quantity.Length, h.td)
			w.in("shoe", "last", quantity.Length, shoe)
		})
	}
	if h.rig {
		count("trip.stands.bop", "BHA to wellhead", pipe-e.datum.Wellhead, first(t.missing, e.gaps.wellhead), "(drill pipe - wellhead)", func(w *Working) {
			w.in("drill pipe", "above the BHA", quantity.Length, pipe)
			w.in("wellhead", "from RKB", quantity.Length, e.datum.Wellhead)
			w.Note = "From there on the BHA stands across the stack, which may not be able to shear it."
		})
	}
	f := count("trip.stands.bha", "BHA to rotary", pipe, t.missing, "drill pipe", func(w *Working) {
		w.in("drill pipe", "above the BHA", quantity.Length, pipe)
	})
	if !h.rig && f.OK {
		f.Note = "open to the sea: the hole fills itself, no trip sheet"
	}
}

// wholeTrip adds what the hole takes until the string is out, and how many trip tanks that is.
func (e *evaluation) wholeTrip(p *page, t *trip, key, name string, wet bool) {
	whole := 0.0
	for k := range t.parts {
		x := &t.parts[k]
		whole += x.pipe.Leaves(wet) * (x.part.bottom - x.part.top)
	}
	why := func(w *Working) {
		w.Formula = "V = sum of area × L; area is steel, wet with the bore"
		for k := range t.parts {
			x := &t.parts[k]
			x.show(w, wet)
			w.in("L", "of the part", quantity.Length, x.part.bottom-x.part.top)
		}
		w.Source = "common practice"
		w.Note = "Bit and opener left out."
	}
	p.put(key, name, quantity.Volume, whole, t.missing, why)
	tank := e.plan.Rig.TripTank
	missing := first(t.missing, needs(tank, "rig.trip_tank", "trip tank"))
	if !missing.open() && tank.SI == 0 {
		missing = gap{"rig.trip_tank", "the trip tank holds nothing"}
	}
	p.also(key+".tanks", "trip tanks", quantity.Count, math.Ceil(whole/tank.SI-1e-9), missing, func(w *Working) {
		w.Formula = "tanks = V / trip tank, rounded up"
		w.in("V", "whole trip", quantity.Volume, whole)
		w.in("tank", "trip tank", quantity.Volume, tank.SI)
		w.Source = "common practice"
	})
}

// show puts the cross section of a part into a working.
func (x *tripPart) show(w *Working, wet bool) {
	w.in("steel", x.part.label()+", mass / density of steel", quantity.Area, x.pipe.Steel)
	if wet {
		w.in("bore", "its inside", quantity.Area, x.pipe.Bore)
	}
}

// key begins the keys of a part's figures.
func (x *tripPart) key() string { return "trip.part." + strconv.Itoa(x.part.number) }

// tripPerStand adds what leaves the hole with a stand of a part.
func (e *evaluation) tripPerStand(p *page, t *trip, x *tripPart, suffix string, wet bool) {
	why := func(w *Working) {
		w.Formula = "V = steel × stand; wet (steel + bore) × stand"
		x.show(w, wet)
		w.in("stand", "length", quantity.Length, t.stand)
		w.Source = "common practice; tool joints by the weight with tool joints"
	}
	volume := x.pipe.Leaves(wet) * t.stand
	if wet {
		p.also(x.key()+"."+suffix, "wet", quantity.Volume, volume, t.missing, why)
		return
	}
	p.put(x.key()+"."+suffix, x.part.label(), quantity.Volume, volume, t.missing, why)
}

// tripFillFigures adds what fills the hole for what was pulled of each part since the last fill, and how far level and pressure
// have fallen by then.
func (e *evaluation) tripFillFigures(p *page, t *trip, group, suffix string, wet bool) {
	p.group = group
	limit, _ := e.plan.Limit(model.Rules()[model.RuleUSTripFill])
	for k := range t.parts {
		x := &t.parts[k]
		key := x.key() + ".fill." + suffix
		e.fillVolume(p, t, x, key, wet)
		drop, fits := x.pipe.Drop(wet, x.batch, t.hole)
		missing := t.level
		if !missing.open() && !fits {
			missing = gap{"rig.riser_id", "the string leaves no room at the level"}
		}
		why := func(w *Working) {
			w.Formula = "level = area × batch / (hole - area); pressure = rho × g × level"
			x.show(w, wet)
			w.in("batch", "pulled", quantity.Length, x.batch)
			w.in("hole", "bore at the level", quantity.Area, t.hole)
			w.in("rho", "fluid", quantity.Density, t.density)
			w.Source = "Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, pulling dry and wet pipe"
			w.Note = "The same part hangs at the level. Not filled in between."
		}
		p.also(key+".level", "level falls", quantity.Length, drop, missing, why)
		p.also(key+".pressure", "pressure", quantity.Pressure, t.density*gravity*drop, missing, why)
		length, any := x.pipe.LengthFor(wet, limit.SI/(t.density*gravity), t.hole)
		if !missing.open() && !any {
			missing = gap{why: "nothing leaves the hole with this part"}
		}
		p.also(key+".most", "most stands", quantity.Count, math.Floor(length/t.stand+1e-9), missing, func(w *Working) {
			w.Formula = "stands = limit / (rho × g) × (hole - area) / area / stand, rounded down"
			w.in("limit", "pressure drop", quantity.Pressure, limit.SI)
			x.show(w, wet)
			w.in("hole", "bore at the level", quantity.Area, t.hole)
			w.in("rho", "fluid", quantity.Density, t.density)
			w.in("stand", "length", quantity.Length, t.stand)
			w.Source = "30 CFR 250.456(c), 2015 edition: filled before the pressure has dropped by 75 psi, or every five stands of drill pipe, whichever is less"
			w.Note = "Not capped at the stands that there are."
		})
	}
}

// fillVolume adds the volume of a fill and its strokes.
func (e *evaluation) fillVolume(p *page, t *trip, x *tripPart, key string, wet bool) {
	volume := x.pipe.Leaves(wet) * x.batch
	p.put(key, x.part.label(), quantity.Volume, volume, t.missing, func(w *Working) {
		w.Formula = "V = area × stands × stand, no more than the part; area is steel, wet with the bore"
		x.show(w, wet)
		w.in("stands", "between fills", quantity.Count, x.every)
		w.in("stand", "length", quantity.Length, t.stand)
		w.in("part", "length", quantity.Length, x.part.bottom-x.part.top)
		w.Source = "common practice"
	})
	e.pumped(p, key, volume, t.missing)
}

// judgeTrip compares the fills with what the law allows and with the trip tank, as the string is pulled: dry with a slug,
// else wet.
func (e *evaluation) judgeTrip(i int, t *trip) {
	if t.level.open() {
		return
	}
	worst, fill, stands := 0.0, 0.0, 0.0
	name := ""
	for k := range t.parts {
		x := &t.parts[k]
		if drop, ok := x.pipe.Drop(t.wet, x.batch, t.hole); ok && drop*t.density*gravity > worst {
			worst, name = drop*t.density*gravity, x.part.label()
		}
		fill = max(fill, x.pipe.Leaves(t.wet)*x.batch)
		if x.part.row.Item == model.ItemPipe {
			stands = max(stands, x.every)
		}
	}
	every := model.PathOf(i, "trip.fill_every")
	way := "pulled dry"
	if t.wet {
		way = "pulled wet"
	}
	e.judge(model.RuleUSTripFill, i, worst, "Pressure drop before the hole is filled, "+way, name, 0, every)
	e.judge(model.RuleUSTripStands, i, stands, "Stands of drill pipe between fills", "", 0, every)
	if tank := e.plan.Rig.TripTank; tank.IsSet() {
		e.judge(model.RuleTripTank, i, tank.SI-fill, "Trip tank left after the largest fill, "+way, "", 0, "rig.trip_tank")
	}
}
