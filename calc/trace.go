package calc

// Trace is what a plot of the pressure window shows besides the prognosis: the mud of one section over its open hole and
// the shoe above it. Depths are TVD from RKB in m, densities equivalent from RKB in kg/m3.
type Trace struct {
	Section int
	Mud     []TracePoint // at rest, from the last shoe, or the mudline, to TD; empty when it cannot be worked out
	Pumped  []TracePoint // circulating at the planned flow with the bit at TD; likewise
	Moved   []TraceBand  // drawn down and pressed up by the planned trip, with the bit at the depth; likewise
	Shoe    float64      // TVD of the string set in the section; zero for none
	OD      float64      // of that string
	Test    float64      // test of the shoe above the section, planned or measured; zero for none
	TestAt  float64      // TVD of that shoe
}

// TracePoint is the equivalent density of a mud at a depth.
type TracePoint struct {
	TVD, EMW float64
}

// TraceBand is the equivalent densities between which a string on its way takes a mud at a depth: swab and surge.
type TraceBand struct {
	TVD, Swab, Surge float64
}

// tracePoints is how finely a riserless column, whose equivalent density is not constant, is followed.
const tracePoints = 12

// traces returns what the sections add to a plot of the window.
func (e *evaluation) traces() []Trace {
	traces := make([]Trace, 0, len(e.sections))
	for i := range e.sections {
		t := Trace{Section: i}
		if c := &e.strings[i]; c.present && !c.noShoe.open() && !e.pathGap.open() {
			t.Shoe, t.OD = e.path.TVD(c.shoe), c.largestBelow(0)
		}
		if !e.columnGap(i).open() && !e.shoeGap(i).open() {
			e.follow(i, &t)
		}
		traces = append(traces, t)
	}
	return traces
}

func (e *evaluation) follow(i int, t *Trace) {
	from := e.datum.Mudline
	if shoe, _, ok := e.lastShoe(i); ok {
		from = shoe
	}
	top, bottom := e.path.TVD(from), e.path.TVD(e.sections[i].td)
	t.Test, t.TestAt = e.tests[i].counts, top
	stack := e.well(i, e.density(i, e.sections[i].td))
	for k := range tracePoints + 1 {
		tvd := top + (bottom-top)*float64(k)/tracePoints
		if density, ok := stack.EMW(tvd); ok {
			t.Mud = append(t.Mud, TracePoint{tvd, density})
		}
	}
	e.followMoving(i, from, t)
}

// followMoving adds what pumping and tripping make of the mud, along the open hole from a depth down.
func (e *evaluation) followMoving(i int, from float64, t *Trace) {
	c := e.circulating(i)
	for k := range tracePoints + 1 {
		md := from + (e.sections[i].td-from)*float64(k)/tracePoints
		tvd := e.path.TVD(md)
		if !c.missing.open() && tvd > 0 {
			t.Pumped = append(t.Pumped, TracePoint{tvd, c.emwAt(md)})
		}
		if swab, surge, ok := e.swabbed(i, md); ok {
			t.Moved = append(t.Moved, TraceBand{tvd, swab, surge})
		}
	}
}
