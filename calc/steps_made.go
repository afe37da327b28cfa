package calc

import (
	"cmp"

	"borewalk/calc/bore"
	"borewalk/calc/pump"
	"borewalk/model"
	"borewalk/model/quantity"
)

// stepMaker writes the operations of one section in the order in which they are done.
type stepMaker struct {
	e       *evaluation
	i       int
	s       *model.Section
	h       *hole
	c       *casing
	list    []Step
	missing gap     // to tell which operations there are, and between which depths
	hole    float64 // how deep it is by now
	end     float64 // of what hangs in it, 0 for nothing
}

// unknown says what is missing before the list can be made.
func (m *stepMaker) unknown() gap {
	e, i := m.e, m.i
	missing := e.shoeGap(i)
	if m.c.present {
		missing = first(missing, m.c.missing)
	}
	if m.h.rig {
		missing = first(missing, lacks(m.s.Density, i, "density", "mud density"))
		if i > 0 {
			missing = first(missing, lacks(e.plan.Sections[i-1].Density, i-1, "density", "mud density"))
		}
	}
	return missing
}

// add writes an operation after which the end of what hangs in the hole, and the hole, are at depths along it.
func (m *stepMaker) add(key string, kind StepKind, to, hole float64) *Step {
	text := m.e.stepText(m.i, key)
	s := Step{Key: key, Name: text.name, Kind: kind, Do: text.do, Who: text.who, Stops: text.stops, Contingency: text.contingency, Row: -1,
		From: m.end, To: to, HoleFrom: m.hole, HoleTo: hole}
	m.end, m.hole = to, hole
	m.list = append(m.list, s)
	return &m.list[len(m.list)-1]
}

// still writes an operation that moves neither string nor hole.
func (m *stepMaker) still(key string, kind StepKind) *Step { return m.add(key, kind, m.end, m.hole) }

// numberOf returns a figure as a number of a step.
func numberOf(f Figure) StepNumber {
	n := StepNumber{Name: f.Name, Key: f.Key, Kind: f.Kind, OK: f.OK, Value: f.Value, Why: f.Why}
	if f.Column != "" {
		n.Name += ", " + f.Column
	}
	return n
}

// number adds a number of the step's own behind those that it has.
func (s *Step) number(n StepNumber) { s.Numbers = append(s.Numbers, n) }

// depth adds a depth along hole.
func (s *Step) depth(name string, md float64) {
	s.number(StepNumber{Name: name, Kind: quantity.Length, OK: true, Value: md})
}

// entry adds an entry; a blank one adds nothing.
func (s *Step) entry(name string, kind quantity.Kind, v quantity.Value) {
	if v.IsSet() {
		s.number(StepNumber{Name: name, Kind: kind, OK: true, Value: v.SI})
	}
}

// wholeHole adds the volume of the well as deep as it is by then, without a string, and the strokes for it.
func (m *stepMaker) wholeHole(s *Step) {
	missing := m.e.boreGap(m.i)
	volume := bore.Volume(between(m.e.empty(m.i, missing), 0, s.HoleTo))
	s.number(StepNumber{Name: "Well now, no string", Kind: quantity.Volume, OK: !missing.open(), Value: volume, Why: missing.why})
	missing = first(missing, m.e.pumpGap)
	var strokes float64
	if !missing.open() {
		strokes, _ = pump.Strokes(volume, m.e.pumps[0].perStroke)
	}
	s.number(StepNumber{Name: "Well now, strokes", Kind: quantity.Strokes, OK: !missing.open(), Value: strokes, Why: missing.why})
}

// make writes the whole list.
func (m *stepMaker) make() {
	m.hole = m.h.start
	switch {
	case m.c.present && m.s.Method == model.Jetted:
		m.jetted()
		return
	case m.c.present && m.s.Method == model.Driven:
		m.driven()
		return
	}
	m.stack()
	m.still("make_up", AtRig)
	m.drillOut()
	if m.h.rig {
		m.parameters(m.add("drill", Drilling, m.h.td, m.h.td))
	} else {
		m.parameters(m.add("drill_seabed", Drilling, m.h.td, m.h.td))
	}
	m.still("clean_up", Pumping)
	if !m.h.rig && m.s.SpotDensity.IsSet() {
		m.still("spot", Pumping)
	}
	m.add("pull_out", TripOut, 0, m.hole)
	if m.s.Rates.Logging.IsSet() {
		m.still("log", AtRig)
	}
	if m.c.present && !m.c.missing.open() {
		m.casing()
	}
}

// parameters adds what is drilled with, as entered.
func (m *stepMaker) parameters(s *Step) {
	s.entry("Fluid", quantity.Density, m.s.Density)
	s.entry("Flow", quantity.Flow, m.s.Flow)
	s.entry("Weight on bit", quantity.Force, m.s.StringLoads.BitWeight)
	s.entry("Turning", quantity.RotarySpeed, m.s.Cleaning.Turning)
	s.entry("ROP", quantity.ROP, m.s.ROP)
}

// stack brings BOP and riser to the first section that needs them, and tests what is there in every one.
func (m *stepMaker) stack() {
	if !m.h.rig {
		return
	}
	if m.e.firstRiser(m.i) {
		m.still("prepare_stack", AtRig)
		m.still("run_stack", StackIn)
		m.still("latch_stack", StackIn)
	}
	m.still("test_stack", Testing)
}

// firstRiser reports whether section i is the first with returns to the rig.
func (e *evaluation) firstRiser(i int) bool {
	for j := range i {
		if e.sections[j].rig {
			return false
		}
	}
	return e.sections[i].rig
}

// drillOut goes from the rotary to new hole that may be drilled on: down to the tag, through what stands in the last string,
// and past the shoe test.
func (m *stepMaker) drillOut() {
	tag, inside := m.tag()
	m.add("run_in", TripIn, tag, m.hole)
	switch {
	case m.i == 0:
		m.still("tag_seabed", AtRig)
	case inside:
		s := m.still("tag", AtRig)
		s.depth("Tag, computed", tag)
		m.track(s)
	}
	if m.h.rig && m.lastString() >= 0 {
		m.stringTest()
	}
	if m.h.rig && m.otherMud() {
		s := m.still("displace", Pumping)
		s.number(StepNumber{Name: "Mud", Kind: quantity.Density, OK: m.s.Density.IsSet(), Value: m.s.Density.SI, Why: "mud density is blank"})
		s.entry("Flow", quantity.Flow, m.s.Flow)
		s.entry("Booster", quantity.Flow, m.s.Booster)
		m.wholeHole(s)
	}
	if inside || tag < m.h.start {
		s := m.add("drill_out", Drilling, m.h.start, m.hole)
		s.depth("From", tag)
		m.track(s)
		s.depth("Rathole to", m.h.start)
	}
	if shoe, _, ok := m.e.lastShoe(m.i); m.h.rig && ok {
		m.shoeTest(shoe)
	}
}

// usualNewHole is how much new hole is drilled for a shoe test where the plan does not say: common practice, from memory.
const usualNewHole = 3.0

// shoeTest drills the new hole, circulates, pulls into the casing, tests, and goes back to bottom.
func (m *stepMaker) shoeTest(shoe float64) {
	to := min(m.h.start+usual(m.s.ShoeTest.NewHole, usualNewHole), m.h.td)
	m.add("new_hole", Drilling, to, to).depth("New hole to", to)
	s := m.add("circulate_even", Pumping, shoe, to)
	s.entry("Mud", quantity.Density, m.s.Density)
	s.entry("Flow", quantity.Flow, m.s.Flow)
	m.wholeHole(s)
	s = m.still("shoe_test", Testing)
	s.entry("Mud in the test", quantity.Density, m.s.Density)
	s.entry("Least to go on with", quantity.EMW, m.s.ShoeTest.Least)
	s.entry("Rate of pumping", quantity.Flow, m.s.ShoeTest.Rate)
	s.depth("Shoe", shoe)
	s.depth("Hole", to)
}

// track adds where float collar and shoe of the last string are.
func (m *stepMaker) track(s *Step) {
	shoe, j, ok := m.e.lastShoe(m.i)
	if !ok {
		return
	}
	if track := m.e.plan.Sections[j].ShoeTrack; track.IsSet() {
		s.depth("Float collar", shoe-track.SI)
	}
	s.depth("Shoe", shoe)
}

// lastString returns the section of the last string above this one, -1 for none.
func (m *stepMaker) lastString() int {
	if _, j, ok := m.e.lastShoe(m.i); ok {
		return j
	}
	return -1
}

// tag returns how deep the bit gets before it meets something, and whether that is cement or a plug inside a string.
func (m *stepMaker) tag() (md float64, inside bool) {
	j := m.lastString()
	if j != m.i-1 || j < 0 || !m.e.cemented(j) {
		return m.h.start, false
	}
	w := m.e.workedJob(j)
	switch {
	case w.missing.open():
		m.missing = first(m.missing, w.missing)
		return m.h.start, false
	case w.inner == nil:
		return w.end, true
	case w.static.open():
		m.missing = first(m.missing, w.static)
		return m.h.start, false
	}
	return w.result.tag, w.result.tag < m.h.start
}

// stringTest tests the last string against its plug, as its loads say.
func (m *stepMaker) stringTest() {
	if m.lastString() != m.i-1 {
		return
	}
	s := m.still("casing_test", Testing)
	loads := &m.e.plan.Sections[m.i-1].Loads
	s.number(StepNumber{Name: "Test at the pump", Kind: quantity.Pressure, OK: loads.TestPressure.IsSet(), Value: loads.TestPressure.SI, Why: "test pressure is blank"})
	s.number(StepNumber{Name: "Test density", Kind: quantity.Density, OK: loads.TestDensity.IsSet(), Value: loads.TestDensity.SI, Why: "as what displaced the cement"})
}

// otherMud reports whether the section has another mud than stands in the well when it begins.
func (m *stepMaker) otherMud() bool {
	if m.i == 0 || !m.e.sections[m.i-1].rig {
		return true
	}
	before := m.e.leftInHole(m.i - 1)
	if d := m.e.plan.Sections[m.i-1].Cement.Displacing; m.e.cemented(m.i-1) && d.IsSet() {
		before = d.SI
	}
	return before != m.s.Density.SI || m.e.plan.Sections[m.i-1].Fluid != m.s.Fluid
}

// casing runs the section's string, cements it, and leaves it as the next section finds it.
func (m *stepMaker) casing() {
	e, i := m.e, m.i
	m.still("rig_up_casing", AtRig)
	m.add("run_casing", RunningIn, m.c.shoe-m.c.top, m.hole).entry("Fill, joints apart", quantity.Count, m.s.Tally.FillEvery)
	liner := m.c.liner
	if liner {
		m.add("run_on_pipe", RunningIn, m.c.shoe, m.hole)
	} else {
		m.add("run_landing", RunningIn, m.c.shoe, m.hole)
		m.still("land", AtRig)
	}
	m.still("circulate_casing", Pumping)
	if liner {
		m.still("set_hanger", AtRig)
	}
	if e.cemented(i) {
		m.rates(m.still("cement", Cementing))
	}
	hung := m.s.Hung
	switch {
	case liner:
		m.still("packer", AtRig)
		m.still("reverse_out", Pumping)
	case hung == model.InLPHousing:
		m.still("hold", Waiting)
	case hung == model.InWellhead:
		m.still("seal", Testing)
	}
	if !liner { // its tool was let go before the cement
		m.still("release", AtRig)
	}
	m.add("pull_tool", ToolOut, 0, m.hole)
	if hung != model.InLPHousing && e.cemented(i) {
		m.still("wait", Waiting)
	}
	if liner {
		m.still("liner_test", Testing).entry("Test at the pump", quantity.Pressure, m.s.Loads.TestPressure)
	}
}

// rates adds how fast the job is pumped, and how heavy what is pumped is.
func (m *stepMaker) rates(s *Step) {
	c := &m.s.Cement
	for k := range m.s.Spacers {
		s.entry(cmp.Or(m.s.Spacers[k].Name, "spacer")+", density", quantity.Density, m.s.Spacers[k].Density)
	}
	for k := range m.s.Slurries {
		s.entry(cmp.Or(m.s.Slurries[k].Name, "slurry")+", density", quantity.Density, m.s.Slurries[k].Density)
	}
	s.entry("Rate, mixing", quantity.Flow, c.MixRate)
	s.entry("Rate, displacing", quantity.Flow, c.DisplaceRate)
	s.entry("Rate, at the end", quantity.Flow, c.SlowRate)
}

// jetted brings conductor and hole down together.
func (m *stepMaker) jetted() {
	m.still("make_up", AtRig)
	m.add("run_in", TripIn, m.h.start, m.hole)
	if m.i == 0 {
		m.still("tag_seabed", AtRig)
	}
	m.add("jet", Drilling, m.h.td, m.h.td)
	m.still("soak", Waiting)
	m.still("release", AtRig)
	m.add("pull_out", TripOut, 0, m.hole)
}

// driven drives the conductor; there is no string in it.
func (m *stepMaker) driven() {
	m.add("run_casing", RunningIn, m.h.start, m.hole)
	if m.i == 0 {
		m.still("tag_seabed", AtRig)
	}
	m.add("drive", Drilling, m.h.td, m.h.td)
	m.add("pull_tool", ToolOut, 0, m.hole)
}
