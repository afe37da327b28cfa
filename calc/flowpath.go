package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/model"
)

// stretch is a length of the way that fluid takes past or through the drill string, with one bore and one part of the string:
// depths along hole in m, diameters in m.
type stretch struct {
	top, bottom float64
	bore        float64     // what encloses it: the hole or casing outside the string, zero inside it
	label       string      // of the bore
	part        *stringPart // nil where nothing hangs in the bore
}

// length returns the length along hole in m.
func (g *stretch) length() float64 { return g.bottom - g.top }

// outside returns the annulus of section i's drill string with its bit at a depth, from the top down, and what is missing for
// it. Bit and opener, which have the hole's size, leave the bore free.
func (e *evaluation) outside(i int, bit float64) ([]stretch, gap) {
	d := &e.drills[i]
	if missing := first(d.missing, e.boreGap(i)); missing.open() {
		return nil, missing
	}
	lift := e.sections[i].td - bit
	annuli := bore.Intervals(e.bores[i], lifted(d.bodies, lift), e.bores[i][0].Top, bit)
	if err := bore.Fit(annuli); err != nil {
		return nil, gap{model.PathOf(i, "hole"), "the drill string does not fit: " + err.Error()}
	}
	way := make([]stretch, 0, len(annuli))
	for _, a := range annuli {
		g := stretch{top: a.Top, bottom: a.Bottom, bore: a.Outer, label: a.OuterLabel}
		if a.Inner > 0 {
			g.part = d.partAt((a.Top+a.Bottom)/2 + lift)
		}
		way = append(way, g)
	}
	return way, gap{}
}

// inside returns the bore of section i's drill string with its bit at a depth, from the rotary down, and what is missing.
func (e *evaluation) inside(i int, bit float64) ([]stretch, gap) {
	d := &e.drills[i]
	if d.missing.open() {
		return nil, d.missing
	}
	lift := e.sections[i].td - bit
	way := make([]stretch, 0, len(d.parts))
	for k := range d.parts {
		part := &d.parts[k]
		if top, bottom := max(part.top-lift, 0), part.bottom-lift; bottom > top && !part.row.Cuts() {
			way = append(way, stretch{top: top, bottom: bottom, part: part})
		}
	}
	return way, gap{}
}

// lifted returns bodies raised by a distance, without what has left the rotary.
func lifted(bodies []bore.Body, lift float64) []bore.Body {
	if lift == 0 {
		return bodies
	}
	up := make([]bore.Body, 0, len(bodies))
	for _, b := range bodies {
		if b.Top, b.Bottom = max(b.Top-lift, 0), b.Bottom-lift; b.Bottom > b.Top {
			up = append(up, b)
		}
	}
	return up
}

// partAt returns the part of the string that is at a depth while the bit is at TD.
func (d *drillString) partAt(md float64) *stringPart {
	for k := range d.parts {
		if p := &d.parts[k]; p.top <= md && md <= p.bottom {
			return p
		}
	}
	return nil
}

// rubOutside returns the friction in Pa/m of a flow in m3/s up the stretch outside the string, tool joints by their share.
func (g *stretch) rubOutside(m friction.Model, f friction.Fluid, flow float64) float64 {
	if g.part == nil {
		return m.Annulus(f, flow, g.bore, 0)
	}
	pipe := &g.part.pipe
	body := m.Annulus(f, flow, g.bore, pipe.OD)
	if share := g.part.jointShare(); share > 0 && pipe.Widest > pipe.OD && pipe.Widest < g.bore {
		body += share * (m.Annulus(f, flow, g.bore, pipe.Widest) - body)
	}
	return body
}

// rubInside returns the friction in Pa/m of a flow in m3/s down the stretch inside the string, tool joints by their share.
func (g *stretch) rubInside(m friction.Model, f friction.Fluid, flow float64) float64 {
	body := m.Pipe(f, flow, g.part.pipe.ID)
	if narrow := g.part.pipe.Drift; narrow > 0 && narrow < g.part.pipe.ID {
		body += g.part.jointShare() * (m.Pipe(f, flow, narrow) - body)
	}
	return body
}

// Tool joints where the plan does not give them: common practice, from memory (pin and box of range 2 pipe).
const (
	usualJointLength = 0.5 // m
	usualJointEvery  = 9.6 // m
)

// jointShare returns the share of a part's length that is as wide as its tool joints: none but of pipe.
func (p *stringPart) jointShare() float64 {
	if p.row.Item != model.ItemPipe && p.row.Item != model.ItemHeavy {
		return 0
	}
	return min(usual(p.row.JointLength, usualJointLength)/p.jointEvery(), 1)
}

// jointEvery returns the length of a joint of pipe in m.
func (p *stringPart) jointEvery() float64 {
	return usual(p.row.JointEvery, usualJointEvery)
}
