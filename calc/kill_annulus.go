package calc

// rubbingAnnulus is how much the annulus of a section rubs at the kill rate, bit at TD.
type rubbingAnnulus struct {
	missing gap
	parts   []rubbingPart
}

// rubbingPart is a length of annulus along hole, below the stack, with its friction in Pa over a metre.
type rubbingPart struct{ top, bottom, gradient float64 }

// above returns the friction in Pa from a depth along hole up to the stack.
func (r *rubbingAnnulus) above(md float64) (loss float64) {
	for _, part := range r.parts {
		loss += part.gradient * max(min(part.bottom, md)-part.top, 0)
	}
	return loss
}

// annulusRubs returns how much section i's annulus rubs at the kill rate in its mud, worked out once.
func (e *evaluation) annulusRubs(i int) *rubbingAnnulus {
	if e.rubs == nil {
		e.rubs = make([]*rubbingAnnulus, len(e.sections))
	}
	if e.rubs[i] == nil {
		e.rubs[i] = e.rubsWith(i, e.sections[i].td)
	}
	return e.rubs[i]
}

// rubsWith works it out with the bit at a depth along hole.
func (e *evaluation) rubsWith(i int, bit float64) *rubbingAnnulus {
	var r rubbingAnnulus
	line := e.killLine(i)
	fluid, missing := e.drillingFluid(i, e.sections[i].td)
	if r.missing = missing; missing.open() {
		return &r
	}
	way, missing := e.outside(i, bit)
	r.missing = missing
	for n := range way {
		if g := &way[n]; g.bottom > e.datum.BOPTop {
			r.parts = append(r.parts, rubbingPart{max(g.top, e.datum.BOPTop), g.bottom, g.rubOutside(line.rub, fluid, line.flow)})
		}
	}
	return &r
}
