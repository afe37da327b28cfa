package calc

import (
	"math"

	"borewalk/calc/steel"
	"borewalk/calc/strength"
	"borewalk/calc/tally"
	"borewalk/model"
	"borewalk/model/quantity"
)

// hungPart is a length of pipe as it hangs in the well, between two depths along hole in m.
type hungPart struct {
	top, bottom float64
	pipe        model.Pipe
	mass        float64 // per length, kg/m
}

// landing is a string landed on its shoulder, with all that carries it; weights in the fluid, N.
type landing struct {
	missing gap
	pipe    model.Pipe
	mass    float64 // per length of the landing string, kg/m
	casing  hung
	inner   hung // inner string below the hanger
	string  hung // landing string, hanger to rotary
	rating  float64
	unrated gap
}

// weight returns what hangs from the rotary, in N.
func (l *landing) weight() float64 { return l.casing.weight + l.inner.weight + l.string.weight }

// landed reports whether the string of section i is carried to where it hangs, rather than jetted or driven with its hole.
func (e *evaluation) landed(i int) bool {
	return e.strings[i].present && e.plan.Sections[i].Method == model.Cemented
}

// readLanding works out what hangs from the rotary when the string of section i lands.
func (e *evaluation) readLanding(i int) landing {
	c, s := &e.strings[i], &e.plan.Sections[i]
	var l landing
	l.pipe, l.mass, l.missing = e.landingPipe(i)
	l.rating, l.unrated = s.Landing.Rating.SI, l.missing
	if !s.Landing.Rating.IsSet() {
		l.rating = steel.Area(l.pipe.OD, l.pipe.ID) * l.pipe.Yield
		if l.pipe.Yield == 0 {
			l.unrated = first(l.missing, gap{model.PathOf(i, "landing.rating"), "neither rating nor grade of the landing string is known"})
		}
	}
	if s.Cement.Placement == model.ByInnerString {
		l.missing = first(l.missing, lacks(s.Cement.InnerAboveShoe, i, "inner_above_shoe", "end of the inner string above the shoe"))
	}
	if l.missing.open() {
		e.fault(l.missing)
	}
	if l.missing = first(c.missing, e.columnGap(i), l.missing); l.missing.open() {
		return l
	}
	fluids := e.hanging(i, nil, e.leftInHole(i))
	l.casing = e.hang(fluids, casingParts(c), 0)
	if s.Cement.Placement == model.ByInnerString && s.Cement.InnerAboveShoe.SI < c.shoe-c.top {
		l.inner = e.hang(fluids, []hungPart{{c.top, c.shoe - s.Cement.InnerAboveShoe.SI, l.pipe, l.mass}}, 0)
	}
	l.string = e.hang(fluids, []hungPart{{0, c.top, l.pipe, l.mass}}, l.casing.weight+l.inner.weight)
	return l
}

// landingPipe returns the pipe that carries the string of section i, and its mass per length in kg/m.
func (e *evaluation) landingPipe(i int) (model.Pipe, float64, gap) {
	l := &e.plan.Sections[i].Landing
	if l.OD.IsSet() {
		part := model.StringPart{Item: model.ItemPipe, Size: l.OD, ID: l.ID, LinearMass: l.LinearMass, Grade: l.Grade}
		pipe := part.Pipe()
		switch {
		case pipe.ID == 0:
			return pipe, 0, gap{model.PathOf(i, "landing.id"), "ID of the landing string is blank"}
		case pipe.ID >= pipe.OD:
			return pipe, 0, gap{model.PathOf(i, "landing.id"), "ID of the landing string is not smaller than its OD"}
		case pipe.LinearMass == 0:
			return pipe, 0, gap{model.PathOf(i, "landing.linear_mass"), "weight of the landing string is blank"}
		}
		return pipe, pipe.LinearMass, gap{}
	}
	d := &e.drills[i]
	if d.missing.open() || len(d.parts) == 0 {
		return model.Pipe{}, 0, first(d.missing, gap{model.PathOf(i, "landing.od"), "the landing string's pipe is not known"})
	}
	part := &d.parts[0]
	row := *part.row
	override(&row.ID, l.ID)
	override(&row.LinearMass, l.LinearMass)
	if l.Grade != "" {
		row.Grade = l.Grade
	}
	own := stringPart{row: &row, pipe: row.Pipe()}
	if own.pipe.ID >= own.pipe.OD {
		return own.pipe, 0, gap{model.PathOf(i, "landing.id"), "ID of the landing string is not smaller than its OD"}
	}
	return own.pipe, own.mass(), gap{}
}

// override takes an entry in place of another where it is not blank.
func override(v *quantity.Value, own quantity.Value) {
	if own.IsSet() {
		*v = own
	}
}

// casingParts returns the parts of a string as they hang, top down.
func casingParts(c *casing) []hungPart {
	parts := make([]hungPart, len(c.parts))
	for k := range c.parts {
		p := &c.parts[k]
		parts[k] = hungPart{p.top, p.bottom, p.pipe, p.pipe.LinearMass}
	}
	return parts
}

// hung is what a string comes to as it hangs in fluids: its weight in them in N, and by how much in m it is longer by what
// hangs from it and shorter by the pressure of the fluids than it lay on deck.
type hung struct {
	weight, stretch, squeeze float64
}

// longer returns by how much in m the string is longer than it lay on deck.
func (h hung) longer() float64 { return h.stretch - h.squeeze }

// hang hangs parts of a string, top down, in fluids, with a load in N on their lower end. The string is full of what
// surrounds it: with the same pressure p inside and outside, a wall of area A strains by
//
//	F/(E A) - (1 - 2 nu) p/E
//
// F being the buoyed weight below. The second term is what remains of the end forces of the pressure and of its squeeze:
// Hooke's law with the stresses of Lamé. Of a string that hangs alone both together give the self-stretch of the trade's
// handbooks, g L²/(2 E) × (steel - 2 (1 - nu) fluid). Friction and warming are left out.
func (e *evaluation) hang(fluids []layer, parts []hungPart, load float64) (h hung) {
	for k := len(parts) - 1; k >= 0; k-- {
		part := &parts[k]
		s := e.length(part.top, part.bottom, part.pipe, part.mass)
		w := buoyed(fluids, s)
		along := part.bottom - part.top
		stretch, _ := strength.Stretch(load+h.weight+w/2, along, steel.Area(part.pipe.OD, part.pipe.ID))
		pressure := (pressureIn(fluids, s.Top) + pressureIn(fluids, s.Bottom)) / 2
		h.stretch += stretch
		h.squeeze += (1 - 2*strength.Poisson) * pressure * along / strength.Modulus
		h.weight += w
	}
	return h
}

// buoyed returns the weight in N of a length of pipe in the fluids that it hangs in.
func buoyed(fluids []layer, s steel.Section) (weight float64) {
	if len(fluids) == 1 {
		return (s.Bottom - s.Top) * fluids[0].perMetre(s.LinearMass, s.ID)
	}
	for k := range fluids {
		f := &fluids[k]
		if fall := min(s.Bottom, f.bottom) - max(s.Top, f.top); fall > 0 {
			weight += fall * f.perMetre(s.LinearMass, s.ID)
		}
	}
	return weight
}

// pressureIn returns the pressure in Pa of standing fluids at a true vertical depth.
func pressureIn(fluids []layer, tvd float64) (p float64) {
	for _, f := range fluids {
		p += f.density * gravity * max(0, min(tvd, f.bottom)-f.top)
	}
	return p
}

// ownStretch returns by how much in m the string of section i stretches as it hangs from its top.
func (e *evaluation) ownStretch(i int) (longer float64, missing gap) {
	c := &e.strings[i]
	if missing := first(c.missing, e.columnGap(i)); missing.open() {
		return 0, missing
	}
	return e.hang(e.hanging(i, nil, e.leftInHole(i)), casingParts(c), 0).longer(), gap{}
}

// spaceOut closes the landing string of section i to its stick-up, and counts its stands; the gap says why it cannot.
func (e *evaluation) spaceOut(i int) (out tally.Landed, stands int, missing gap) {
	s, c, w := &e.plan.Sections[i], &e.strings[i], &e.plan.Well
	l := &s.Landing
	stand := or(l.Stand.SI, e.plan.Rig.StandLength.SI)
	most := l.StickUpMost.SI
	if !l.StickUpMost.IsSet() {
		most = noLimit
	}
	missing = first(c.missing, pupGap(i, s, model.ForLanding))
	switch {
	case missing.open():
	case stand <= 0:
		missing = gap{"rig.stand_length", "stand length is blank"}
	case l.StickUp.SI < l.StickUpLeast.SI || l.StickUp.SI > most:
		missing = gap{model.PathOf(i, "landing.stick_up"), "the wanted stick-up is not between the least and the greatest"}
	case l.Tool.SI >= c.top:
		missing = gap{model.PathOf(i, "landing.tool"), "the running tool is longer than the way to the rotary"}
	}
	if missing.open() {
		return out, 0, missing
	}
	pups := landingPups(s)
	length := c.top + l.StickUp.SI - l.Tool.SI
	base := sure(length, stand, pups)
	landing := tally.Landing{
		Fixed:  appendItem(appendItem(nil, tally.Other, 1, l.Tool.SI), tally.Other, base, stand),
		Stands: tally.Average(int(math.Ceil(length/stand))+1-base, stand),
		Pups:   pups, Shoulder: c.top, HighTide: w.TideHigh.SI, LowTide: -w.TideLow.SI,
		Least: l.StickUpLeast.SI, Most: most, Wanted: l.StickUp.SI, Tolerance: closeEnough,
	}
	out, err := tally.Land(landing)
	if err != nil {
		missing = gap{model.PathOf(i, "landing.stand"), "the landing string cannot be spaced out: " + err.Error()}
	}
	return out, base + len(out.Stands), missing
}

// noLimit is a stick-up in m that no string has.
const noLimit = 100

// landingPups returns the pups that the landing string may be closed with.
func landingPups(s *model.Section) []tally.DeckPup {
	var pups []tally.DeckPup
	for k := range s.Pups {
		if u := &s.Pups[k]; u.For == model.ForLanding && u.Count.SI > 0 {
			pups = append(pups, tally.DeckPup{Length: u.Length.SI, Count: int(u.Count.SI)})
		}
	}
	return pups
}
