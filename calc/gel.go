package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/calc/swab"
	"borewalk/model"
	"borewalk/model/quantity"
)

// gelled returns the strength in Pa of the gel of section i's mud after the longest rest that is known, and that rest in
// words with the entry; zero where none is.
func (e *evaluation) gelled(i int) (strength float64, rest string, entry model.Path) {
	r := &e.plan.Sections[i].Rheology
	for _, gel := range [...]struct {
		strength quantity.Value
		rest     string
		key      string
	}{{r.GelThirty, "after 30 min", "gel_30min"}, {r.GelTen, "after 10 min", "gel_10min"}, {r.GelSeconds, "after 10 s", "gel_10s"}} {
		if gel.strength.IsSet() {
			return gel.strength.SI, gel.rest, model.PathOf(i, "rheology."+gel.key)
		}
	}
	return 0, "", ""
}

// gelFigures adds what it takes to break circulation with the bit at TD: at the pump, and at the hole as an equivalent
// density. The most that the annulus holds is pressed on the hole before anything moves.
func (e *evaluation) gelFigures(i int, p *page, m *moving) {
	strength, rest, entry := e.gelled(i)
	if rest == "" {
		return
	}
	missing := first(e.drills[i].missing, e.columnGap(i), e.boreGap(i))
	td, top := e.sections[i].td, e.openFrom(i)
	var s swab.String
	if !missing.open() {
		s, missing = e.laidOut(i, td, true)
	}
	gel := s.Break(strength, td)
	why := func(w *Working) {
		w.Formula = "p = sum of 4 × gel × L / ID in the string + sum of 4 × gel × L / (D - d) in the annulus"
		w.in("gel", rest, quantity.YieldPoint, strength)
		for _, b := range s.Bores {
			w.in("L", "in the string", quantity.Length, b.Length)
			w.in("ID", "bore", quantity.Diameter, b.ID)
			w.joint(b.Joint, b.Share)
		}
		for _, r := range s.Lengths() {
			w.in("L", "in the annulus", quantity.Length, r.Length)
			w.in("D", "hole or casing", quantity.Diameter, r.Outer)
			w.in("d", "string", quantity.Diameter, r.Inner)
			w.joint(r.Joint, r.Share)
		}
		w.Source = "balance of pressure and shear at the walls; Bourgoyne et al., Applied Drilling Engineering, ch. 4, pressure to break circulation (from memory)"
		w.Note = "All of it breaks at once, at the pump's first stroke: the careful side. Turning the string first, and pumping slowly, takes less. Pressure and temperature change a gel."
	}
	p.group = "Breaking the gel, bit at TD"
	f := p.put("swab.gel", "At the pump", quantity.Pressure, gel.Inside+gel.Outside, missing, why)
	if !missing.open() {
		f.Note = rest
	}
	p.also("swab.gel.inside", "string", quantity.Pressure, gel.Inside, missing, why)
	p.also("swab.gel.outside", "annulus", quantity.Pressure, gel.Outside, missing, why)
	at := func(key, name string, md float64, missing gap) {
		tvd, density, static := 0.0, 0.0, 0.0
		if !missing.open() {
			tvd = e.path.TVD(md)
			static = pressureAt(e.well(i, e.leftInHole(i)), tvd)
			density, _ = column.EMW(static+s.Break(strength, md).Outside, tvd)
		}
		p.put(key, name, quantity.EMW, density, missing, func(w *Working) {
			w.Formula = "EMW = (static + annulus above) / (g × TVD)"
			w.in("static", "fluid at rest", quantity.Pressure, static)
			w.in("annulus", "its gel down to there", quantity.Pressure, s.Break(strength, md).Outside)
			w.in("TVD", "from RKB", quantity.Length, tvd)
			w.Source = "hydrostatics, and the gel as at the pump"
		})
	}
	at("swab.gel.td", "EMW at TD", td, missing)
	at("swab.gel.shoe", "EMW "+e.topName(i), top, missing)
	if m.missing.open() || missing.open() || !e.sections[i].rig {
		return
	}
	left, where := math.Inf(1), top
	for _, place := range e.weakPlaces(i, td, e.surgeRoom(i, m.rest, 0)) {
		if density, ok := column.EMW(place.Room-s.Break(strength, place.MD).Outside, e.path.TVD(place.MD)); ok && density < left {
			left, where = density, place.MD
		}
	}
	e.judge(model.RuleGelBreak, i, left, "Fracture or shoe test over the pressure that breaks the gel "+rest, "", where, entry)
}

// joint adds a tool joint and its share of a length to the working, where there is one.
func (w *Working) joint(diameter, share float64) {
	if share > 0 && diameter > 0 {
		w.in("j", "tool joints", quantity.Diameter, diameter)
		w.in("share", "of the length", quantity.Ratio, share)
	}
}
