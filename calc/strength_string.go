package calc

import (
	"math"

	"borewalk/calc/column"
	"borewalk/calc/strength"
	"borewalk/model"
)

// loadedString is the string of a section with what its parts withstand: parts as in the casing, top down.
type loadedString struct {
	section int
	missing gap
	casing  *casing
	parts   []strength.Casing
	fluid   column.Stack // that the string is run in, inside and outside alike
	least   float64      // dogleg to count with at least, rad/m
	bends   []float64    // greatest dogleg of the path along each part, rad/m; nil where the path is followed station by station
	cuts    []float64    // depths along hole at which the path's dogleg may change
}

// mostStations is how many stations of a path along a string are followed one by one. With more of them, the greatest
// dogleg along a part counts for the whole of it, which is the careful side.
const mostStations = 16

// loaded returns the string of section i ready to be loaded.
func (e *evaluation) loaded(i int) loadedString {
	s := loadedString{section: i, casing: &e.strings[i], least: e.plan.Sections[i].Loads.Dogleg.SI}
	s.missing = first(s.casing.missing, e.columnGap(i))
	if s.missing.open() {
		return s
	}
	s.fluid = e.well(i, e.leftInHole(i))
	s.parts = make([]strength.Casing, len(s.casing.parts))
	for k := range s.casing.parts {
		part := &s.casing.parts[k]
		if part.pipe.Yield == 0 {
			s.missing = gap{partPath(i, part, "grade"), "the grade's yield strength is not known: enter grade or yield"}
			return s
		}
		s.parts[k] = rated(part, &e.plan.Sections[i].Casing[part.row])
		if err := s.parts[k].Check(); err != nil {
			s.missing = gap{partPath(i, part, "yield"), err.Error()}
			return s
		}
	}
	e.readBends(&s)
	return s
}

// rated returns a part of a string with its wear and its connection.
func rated(part *casingPart, row *model.CasingPart) strength.Casing {
	c := strength.NewCasing(strength.Pipe{OD: part.pipe.OD, Wall: (part.pipe.OD - part.pipe.ID) / 2, Yield: part.pipe.Yield})
	c.Lost = row.Wear.SI
	for _, share := range [...]struct {
		to  *float64
		own float64
	}{{&c.Connection.Tension, row.JointTension.SI}, {&c.Connection.Burst, row.JointBurst.SI}, {&c.Connection.Collapse, row.JointCollapse.SI}} {
		if share.own > 0 {
			*share.to = share.own
		}
	}
	return c
}

// readBends finds where the path along a string may change its dogleg.
func (e *evaluation) readBends(s *loadedString) {
	if e.path.IsVertical() {
		return
	}
	c := s.casing
	for _, p := range e.path.Stations() {
		if p.MD > c.top && p.MD < c.shoe {
			s.cuts = append(s.cuts, p.MD)
		}
	}
	if len(s.cuts) <= mostStations {
		return
	}
	s.bends = make([]float64, len(c.parts))
	for k := range c.parts {
		part := &c.parts[k]
		s.bends[k] = e.path.At(part.bottom).Dogleg
		for _, md := range s.cuts {
			if md > part.top && md < part.bottom {
				s.bends[k] = max(s.bends[k], e.path.At(md).Dogleg)
			}
		}
	}
	s.cuts = nil
}

// bend returns the dogleg in rad/m that bends part k at a depth along hole: the sharper of what ends and what begins there.
func (e *evaluation) bend(s *loadedString, k int, md float64) float64 {
	const below = 1e-3 // m
	switch {
	case e.path.IsVertical():
		return s.least
	case s.bends != nil:
		return max(s.least, s.bends[k])
	}
	return max(s.least, e.path.At(md).Dogleg, e.path.At(md+below).Dogleg)
}

// hangs returns the effective tension in N that the buoyed weight of the string gives at a depth along hole in part k: what
// is below it, landed and full of the fluid that it was run in, without friction.
func (e *evaluation) hangs(s *loadedString, k int, md float64) float64 {
	force, top := 0.0, md
	for ; k < len(s.casing.parts); k++ {
		part := &s.casing.parts[k]
		from, to := e.path.TVD(top), e.path.TVD(part.bottom)
		steel := part.pipe.LinearMass / steelDensity
		force += part.pipe.LinearMass*gravity*(to-from) - steel*(pressureAt(s.fluid, to)-pressureAt(s.fluid, from))
		top = part.bottom
	}
	return force
}

// axial returns the true axial force in N of the landed string at a depth along hole in part k, and the effective tension
// that it comes from.
func (e *evaluation) axial(s *loadedString, k int, md, tvd float64) (force, effective float64) {
	effective = e.hangs(s, k, md)
	return effective - pressureAt(s.fluid, tvd)*s.parts[k].Pipe.Area(), effective
}

// pressureAt returns the pressure of a column in Pa at a true vertical depth: none above it, and no less than none.
func pressureAt(stack column.Stack, tvd float64) float64 {
	if tvd > stack.Bottom() {
		tvd = stack.Bottom()
	}
	pressure, _ := stack.Pressure(tvd)
	return math.Max(0, pressure)
}
