package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/model"
)

// hole is the geometry of one section's hole: depths along hole from RKB in m, diameters in m.
type hole struct {
	missing gap
	start   float64 // where the section begins: the mudline or the last hole's TD
	opened  float64 // end of the full-size hole
	td      float64 // depth of the bit
	size    float64 // full size, gauge
	bit     float64 // bit or pilot bit
	washout float64 // open-hole volume over gauge
	mean    float64 // mean diameter of the full-size hole as measured; zero where it is not
	caliper []calipered
	rig     bool // returns to the rig through BOP and riser
}

// calipered is a measured diameter from a depth down to the next.
type calipered struct{ from, diameter float64 }

// measured returns the hole's diameter at a depth as the caliper has it, or as it is in the mean, and false where neither is known.
func (h *hole) measured(md float64) (diameter float64, ok bool) {
	for _, c := range h.caliper {
		if md >= c.from {
			diameter, ok = c.diameter, true
		}
	}
	if !ok && h.mean > 0 && md <= h.opened {
		return h.mean, true
	}
	return diameter, ok
}

// pilot reports whether the bit is smaller than the hole, so that an opener enlarges it.
func (h *hole) pilot() bool { return h.bit < h.size }

// at returns the gauge diameter that the section drilled at a depth, zero outside it.
func (h *hole) at(md float64) float64 {
	switch {
	case h.missing.open() || md < h.start || md > h.td:
		return 0
	case md <= h.opened:
		return h.size
	}
	return h.bit
}

// readHoles works out every section's hole. Sections below one that cannot be worked out cannot either.
func (e *evaluation) readHoles() {
	e.sections = make([]hole, len(e.plan.Sections))
	for i := range e.plan.Sections {
		s, h := &e.plan.Sections[i], &e.sections[i]
		h.size, h.bit, h.washout, h.rig = s.Hole.SI, s.Bit.SI, s.Washout.SI, s.Returns == model.ToRig
		if len(s.Caliper) == 0 {
			h.mean = s.Built.Diameter.SI
		}
		if !s.Bit.IsSet() {
			h.bit = h.size
		}
		h.start = e.datum.Mudline
		h.missing = e.gaps.mudline
		if i > 0 {
			h.start = e.sections[i-1].td
			h.missing = first(e.sections[i-1].missing)
		}
		if h.missing.open() {
			continue
		}
		if h.missing = e.readDepths(i, s, h); !h.missing.open() {
			h.missing = e.readCaliper(i, s, h)
		}
		if h.missing.open() {
			e.fault(h.missing)
		}
	}
}

func (e *evaluation) readDepths(i int, s *model.Section, h *hole) gap {
	if missing := lacks(s.Hole, i, "hole", "hole size"); missing.open() {
		return missing
	}
	if h.bit > h.size {
		return gap{model.PathOf(i, "bit"), "the bit is larger than the hole"}
	}
	behind := openerBehind(s)
	if s.DepthBy == model.ByShoe && s.Completion != model.OpenHole {
		if missing := first(lacks(s.Shoe, i, "shoe", "shoe depth"), lacks(s.Rathole, i, "rathole", "rathole")); missing.open() {
			return missing
		}
		h.td = s.Shoe.SI + s.Rathole.SI + behind
	} else {
		if missing := lacks(s.TD, i, "td", "hole TD"); missing.open() {
			return missing
		}
		h.td = s.TD.SI
	}
	h.opened = h.td - behind
	if h.td <= h.start {
		return gap{e.depthField(i), "hole TD is not below where the section starts"}
	}
	if h.opened <= h.start {
		return gap{model.PathOf(i, "opener_behind"), "the opener never reaches new hole"}
	}
	return gap{}
}

// readCaliper reads the measured diameters, which go down the hole.
func (e *evaluation) readCaliper(i int, s *model.Section, h *hole) gap {
	for k := range s.Caliper {
		row := &s.Caliper[k]
		path := func(key string) model.Path { return model.PathOf(i, "caliper["+strconv.Itoa(k+1)+"]."+key) }
		if missing := first(needs(row.Depth, path("depth"), "depth of the caliper"), needs(row.Diameter, path("diameter"), "diameter of the caliper")); missing.open() {
			e.note(i, Caution, gap{missing.path, missing.why + ": the row does not count"})
			continue
		}
		if n := len(h.caliper); n > 0 && row.Depth.SI <= h.caliper[n-1].from {
			return gap{path("depth"), "the caliper's depths do not go down"}
		}
		h.caliper = append(h.caliper, calipered{row.Depth.SI, row.Diameter.SI})
	}
	return gap{}
}

// depthField returns the entry that decides how deep a section goes.
func (e *evaluation) depthField(i int) model.Path {
	if s := &e.given.Sections[i]; s.DepthBy == model.ByShoe && s.Completion != model.OpenHole {
		return model.PathOf(i, "shoe")
	}
	return model.PathOf(i, "td")
}

// casing is the string set in one section: depths along hole from RKB in m.
type casing struct {
	missing gap
	noShoe  gap  // what is missing for the shoe alone
	present bool // the section is not left open hole
	liner   bool
	top     float64
	shoe    float64
	parts   []casingPart // top down
}

// casingPart is a length of one kind of pipe.
type casingPart struct {
	top, bottom float64
	pipe        model.Pipe
	row         int // in the plan, bottom up
}

func (e *evaluation) readCasings() {
	e.strings = make([]casing, len(e.plan.Sections))
	for i := range e.plan.Sections {
		s, c := &e.plan.Sections[i], &e.strings[i]
		c.present = s.Completion != model.OpenHole
		c.liner = s.Completion == model.WithLiner
		c.noShoe = e.sections[i].missing
		c.missing = c.noShoe
		if !c.present || c.missing.open() {
			continue
		}
		c.shoe = e.sections[i].opened - s.Rathole.SI
		c.noShoe = lacks(s.Rathole, i, "rathole", "rathole")
		if s.Rathole.SI < 0 {
			c.noShoe = gap{model.PathOf(i, "built.shoe"), "the shoe as built is below the hole as it was opened"}
		}
		if c.missing = c.noShoe; !c.missing.open() {
			c.missing = e.readString(i, s, c)
		}
		if c.missing.open() {
			e.fault(c.missing)
		}
	}
}

func (e *evaluation) readString(i int, s *model.Section, c *casing) gap {
	switch {
	case c.liner || s.Hung == model.OnHangerDeep:
		if missing := first(lacks(s.Top, i, "top", "top of the string"), e.gaps.wellhead); missing.open() {
			return missing
		}
		c.top = s.Top.SI
		if c.top < e.datum.Wellhead {
			return gap{model.PathOf(i, "top"), "the top of the string is above the wellhead"}
		}
	case s.Hung == model.InLPHousing:
		if e.gaps.lp.open() {
			return e.gaps.lp
		}
		c.top = e.datum.LPTop
	default:
		missing := e.gaps.wellhead
		if s.Hung == model.InWellhead {
			missing = first(missing, lacks(s.ShoulderBelowDatum, i, "shoulder", "landing shoulder"))
			c.top = s.ShoulderBelowDatum.SI
		}
		if missing.open() {
			return missing
		}
		c.top += e.datum.Wellhead
	}
	if c.shoe <= c.top {
		return gap{model.PathOf(i, "rathole"), "the shoe is not below the top of the string"}
	}
	if len(s.Casing) == 0 {
		return gap{model.PathOf(i, "casing"), "the string has no casing: add a casing part"}
	}
	return e.readParts(i, s, c)
}

// readParts lays the casing parts from the shoe up.
func (e *evaluation) readParts(i int, s *model.Section, c *casing) gap {
	bottom := c.shoe
	last := len(s.Casing) - 1
	for k := range s.Casing {
		row := &s.Casing[k]
		path := func(key string) model.Path { return model.PathOf(i, "casing["+strconv.Itoa(k+1)+"]."+key) }
		pipe := row.Pipe()
		switch {
		case !row.Size.IsSet():
			return gap{path("size"), "casing OD is blank"}
		case !row.Weight.IsSet() && pipe.LinearMass == 0:
			return gap{path("weight"), "casing weight is blank"}
		case pipe.ID == 0:
			return gap{path("id"), "this size and weight are not in the catalogue: enter the ID"}
		case pipe.ID >= pipe.OD:
			return gap{path("id"), "casing ID is not smaller than its OD"}
		}
		top := c.top
		switch {
		case k < last && !row.Length.IsSet():
			return gap{path("length"), "only the highest casing part may have no length"}
		case k < last:
			top = bottom - row.Length.SI
		case row.Length.IsSet() && math.Abs(bottom-row.Length.SI-c.top) > 0.005:
			return gap{path("length"), "the casing parts do not end at the string's top: leave the highest part's length blank"}
		}
		if top >= bottom {
			return gap{path("length"), "the casing parts are longer than the string"}
		}
		c.parts = append(c.parts, casingPart{top: top, bottom: bottom, pipe: pipe, row: k})
		bottom = top
	}
	slices.Reverse(c.parts)
	return gap{}
}

// boreGap says what is missing for the bores that section i works in: its own hole, every string above, and riser, BOP
// and wellhead when returns go to the rig.
func (e *evaluation) boreGap(i int) gap {
	missing := e.sections[i].missing
	for j := 0; j < i && !missing.open(); j++ {
		if c := &e.strings[j]; c.present {
			missing = c.missing
		}
	}
	if e.plan.Sections[i].Method != model.Cemented && e.strings[i].present {
		missing = first(missing, e.strings[i].missing) // drilled out inside its own pipe
	}
	if missing.open() || !e.sections[i].rig {
		return missing
	}
	return first(e.gaps.bop, needs(e.plan.Rig.RiserID, "rig.riser_id", "riser ID"), needs(e.plan.Rig.BOPBore, "rig.bop_bore", "BOP bore"),
		needs(e.plan.Wellhead.Bore, "wellhead.bore", "least bore of the wellhead"))
}

// shoeGap says what is missing for the shoes above section i.
func (e *evaluation) shoeGap(i int) gap {
	for j := range i {
		if c := &e.strings[j]; c.present && c.noShoe.open() {
			return c.noShoe
		}
	}
	return gap{}
}

// lastShoe returns the deepest shoe set before section i, the section that it belongs to, and false when there is none.
func (e *evaluation) lastShoe(i int) (shoe float64, section int, ok bool) {
	for j := i - 1; j >= 0; j-- {
		if c := &e.strings[j]; c.present && !c.noShoe.open() && c.shoe > shoe {
			shoe, section, ok = c.shoe, j, true
		}
	}
	return shoe, section, ok
}

// outer returns the bores that enclose what hangs in the well while section i stands at its TD, top down: riser, BOP and
// wellhead when returns go to the rig, then the innermost casing at each depth, then open hole.
//
// Pipe that is jetted or driven is there before its section is drilled out, so that returns rise inside it.
func (e *evaluation) outer(i int) bore.Profile {
	h := &e.sections[i]
	profile := e.casedAbove(i)
	if c := &e.strings[i]; c.present && !c.missing.open() && e.plan.Sections[i].Method != model.Cemented {
		profile = e.throughPipe(profile, c)
	}
	from := e.datum.Mudline
	if len(profile) > 0 {
		from = profile[len(profile)-1].Bottom
	}
	return append(profile, e.openHole(i, from, h.td)...)
}

// casedAbove returns the bores down to the last shoe above section i.
func (e *evaluation) casedAbove(i int) bore.Profile {
	var up bore.Profile // bottom up
	reached, _, any := e.lastShoe(i)
	for j := i - 1; j >= 0 && any; j-- {
		c := &e.strings[j]
		if !c.present || c.missing.open() {
			continue
		}
		for k := len(c.parts) - 1; k >= 0; k-- {
			p := &c.parts[k]
			bottom := min(p.bottom, reached)
			if p.top < bottom {
				up = append(up, bore.Span{Top: p.top, Bottom: bottom, Diameter: p.pipe.ID, Label: casingLabel})
			}
		}
		reached = min(reached, c.top)
	}
	if e.sections[i].rig {
		if !any {
			reached = e.datum.Mudline
		}
		if reached > e.datum.Wellhead {
			up = append(up, bore.Span{Top: e.datum.Wellhead, Bottom: reached, Diameter: e.plan.Wellhead.Bore.SI, Label: "wellhead"})
		}
		up = append(up,
			bore.Span{Top: e.datum.BOPTop, Bottom: e.datum.Wellhead, Diameter: e.plan.Rig.BOPBore.SI, Label: "BOP"},
			bore.Span{Top: 0, Bottom: e.datum.BOPTop, Diameter: e.plan.Rig.RiserID.SI, Label: "riser"})
	}
	slices.Reverse(up)
	return up
}

// throughPipe returns the bores down to the shoe of a string that is in place, from those above its top.
func (e *evaluation) throughPipe(above bore.Profile, c *casing) bore.Profile {
	var profile bore.Profile
	for _, span := range above {
		if span.Bottom = min(span.Bottom, c.top); span.Top < span.Bottom {
			profile = append(profile, span)
		}
	}
	for k := range c.parts {
		p := &c.parts[k]
		profile = append(profile, bore.Span{Top: p.top, Bottom: p.bottom, Diameter: p.pipe.ID, Label: casingLabel})
	}
	return profile
}

// openHole returns the open hole between two depths while section i stands at its TD, washed out as each section says.
// Where an earlier section left a pilot hole or a rathole, the larger of what was drilled there counts.
func (e *evaluation) openHole(i int, from, to float64) bore.Profile {
	cuts := []float64{from, to}
	for j := 0; j <= i; j++ {
		h := &e.sections[j]
		for _, md := range [...]float64{h.start, h.opened, h.td} {
			if md > from && md < to {
				cuts = append(cuts, md)
			}
		}
		for _, c := range h.caliper {
			if c.from > from && c.from < to {
				cuts = append(cuts, c.from)
			}
		}
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	spans := make(bore.Profile, 0, len(cuts))
	for k := 1; k < len(cuts); k++ {
		middle := (cuts[k-1] + cuts[k]) / 2
		spans = append(spans, bore.Span{Top: cuts[k-1], Bottom: cuts[k], Diameter: e.drilled(i, middle, true), Label: openHoleLabel})
	}
	return spans
}

// Names of bores in pipe and without.
const (
	casingLabel   = "casing"
	openHoleLabel = "open hole"
)

// drilled returns the diameter of the open hole at a depth while section i stands at its TD: as the
// caliper has it where it was measured, else washed out or in gauge.
func (e *evaluation) drilled(i int, md float64, washed bool) float64 {
	widest := 0.0
	for j := 0; j <= i; j++ {
		h := &e.sections[j]
		if d := h.at(md); d > 0 {
			if measured, ok := h.measured(md); ok {
				d = measured
			} else if washed {
				d = bore.Enlarged(d, h.washout)
			}
			widest = max(widest, d)
		}
		if j == i && md < h.start {
			widest = max(widest, h.size) // the opener passes what the last section left smaller
		}
	}
	return widest
}
