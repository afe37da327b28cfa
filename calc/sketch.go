package calc

import "borewalk/model"

// Sketch is the geometry that a schematic draws: every section with its hole and string, depths along hole from RKB in
// m, diameters in m.
type Sketch struct {
	Datum    Datum
	Bottom   float64 // deepest hole
	Sections []SketchSection
}

// SketchSection is one section of a Sketch. A section that cannot be worked out is not OK and has no depths.
type SketchSection struct {
	OK                bool
	Riser             bool // returns to the rig through BOP and riser
	Start, Opened, TD float64
	Hole, Bit         float64 // full size and pilot, gauge
	Washout           float64 // open-hole volume over gauge
	String            bool    // a string is set in the section, and it can be drawn
	Liner             bool
	Filled            bool // the string fills its hole: jetted or driven
	Top, Shoe         float64
	OD                float64
	Cement            float64      // the planned top of the cement round the string; zero for none
	Parts             []SketchPart // top down
	Name              string
}

// SketchPart is a length of a string with one size.
type SketchPart struct {
	Top, Bottom, OD, ID float64
}

func (e *evaluation) sketch() Sketch {
	s := Sketch{Datum: e.datum, Bottom: e.datum.Mudline, Sections: make([]SketchSection, len(e.sections))}
	for i := range e.sections {
		h, c, out := &e.sections[i], &e.strings[i], &s.Sections[i]
		out.Name = e.plan.Sections[i].Name
		if h.missing.open() {
			continue
		}
		*out = SketchSection{
			OK: true, Riser: h.rig, Start: h.start, Opened: h.opened, TD: h.td, Hole: h.size, Bit: h.bit, Washout: h.washout, Name: out.Name,
			Filled: e.plan.Sections[i].Method != model.Cemented,
		}
		s.Bottom = max(s.Bottom, h.td)
		if !c.present || c.missing.open() {
			continue
		}
		out.String, out.Liner, out.Top, out.Shoe, out.OD = true, c.liner, c.top, c.shoe, c.largestBelow(0)
		if e.cemented(i) {
			if job := e.cementOf(i); !job.missing.open() {
				out.Cement = job.topOfCement()
			}
		}
		for k := range c.parts {
			part := &c.parts[k]
			out.Parts = append(out.Parts, SketchPart{part.top, part.bottom, part.pipe.OD, part.pipe.ID})
		}
	}
	return s
}
