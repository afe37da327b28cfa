package calc

import (
	"math"
	"strconv"

	"borewalk/calc/column"
	"borewalk/calc/killsheet"
	"borewalk/calc/leakoff"
	"borewalk/model"
	"borewalk/model/quantity"
)

// shoeTest is the test of the last shoe above a section: as planned, or as it was run. Equivalent densities in kg/m3 from RKB.
type shoeTest struct {
	shoe, tvd float64 // of the shoe, along hole and true vertical; zero where there is none
	counts    float64 // what the shoe is taken to stand; zero where there is neither plan nor test
	run       bool    // it is measured, not planned
	stale     gap     // why the measured test may no longer hold; closed where nothing says so

	gauge   float64 // picked at the gauge, Pa
	exact   float64 // before it is rounded down
	mud     float64
	points  []leakoff.Point
	within  float64 // what the gauge is good to, Pa
	reading leakoff.Reading
	read    error // why the points say nothing
	missing gap   // for the measured test
}

// readShoeTests reads the tests of the shoes above each section.
func (e *evaluation) readShoeTests() {
	e.tests = make([]shoeTest, len(e.plan.Sections))
	for i := range e.tests {
		e.tests[i] = e.readShoeTest(i)
	}
}

// readShoeTest reads what the shoe above section i stands: the measured test where there is one, else the planned one.
func (e *evaluation) readShoeTest(i int) shoeTest {
	s := &e.plan.Sections[i]
	shoe, _, ok := e.lastShoe(i)
	if !ok {
		return shoeTest{}
	}
	t := shoeTest{shoe: shoe, tvd: e.path.TVD(shoe), counts: s.LeakOff.SI}
	if !e.sections[i].rig {
		return t // without a stack no hole is closed to be tested
	}
	t.readPoints(s)
	if t.gauge = s.ShoeTest.Pressure.SI; !s.ShoeTest.Pressure.IsSet() {
		if len(t.points) == 0 || t.read != nil {
			return t
		}
		t.gauge = t.points[t.reading.LeakOff].Pressure
	}
	t.run = true
	if t.missing = first(e.pathGap, e.shoeGap(i), e.testMudGap(i), e.pointGap(i)); t.missing.open() || !(t.tvd > 0) {
		return t
	}
	test := e.testColumnOf(i, t.tvd)
	t.mud = test.Mud
	pressure, err := test.Pressure(t.gauge)
	if err != nil {
		t.missing = gap{model.PathOf(i, "shoe_test.pressure"), err.Error()}
		return t
	}
	t.exact, _ = column.EMW(pressure, t.tvd)
	t.counts = e.roundedDown(t.exact, quantity.EMW, 1)
	t.stale = e.staleTest(i, &t)
	return t
}

// testColumnOf returns what stands between the gauge and a shoe in the test above section i.
func (e *evaluation) testColumnOf(i int, shoe float64) killsheet.ShoeTest {
	s := &e.plan.Sections[i]
	mud := usual(s.ShoeTest.Mud, s.Density.SI)
	return killsheet.ShoeTest{Mud: mud, Line: mud, Shoe: shoe, Height: s.ShoeTest.Gauge.SI, Breaking: s.ShoeTest.Breaking.SI}
}

// readPoints reads the points of a test, those that are whole.
func (t *shoeTest) readPoints(s *model.Section) {
	for k := range s.TestPoints {
		if row := &s.TestPoints[k]; row.Volume.IsSet() && row.Pressure.IsSet() {
			t.points = append(t.points, leakoff.Point{Volume: row.Volume.SI, Pressure: row.Pressure.SI})
		}
	}
	if t.within = s.ShoeTest.Within.SI; len(t.points) > 0 {
		t.reading, t.read = leakoff.Read(t.points, t.within)
	}
}

// pointGap says what is missing in the readings of section i's shoe test.
func (e *evaluation) pointGap(i int) gap { return e.listGap(model.TestPointList(), i) }

// testMudGap says whether the mud in the test is known.
func (e *evaluation) testMudGap(i int) gap {
	if e.plan.Sections[i].ShoeTest.Mud.IsSet() {
		return gap{}
	}
	return lacks(e.plan.Sections[i].Density, i, "density", "mud density")
}

// staleTest says why the measured test of the shoe above section i may no longer hold.
func (e *evaluation) staleTest(i int, t *shoeTest) gap {
	const moved = 0.5 // m, a rounded depth
	test := &e.plan.Sections[i].ShoeTest
	switch {
	case test.Shoe.IsSet() && math.Abs(test.Shoe.SI-t.shoe) > moved:
		return gap{model.PathOf(i, "shoe_test.shoe"), "the shoe test was run with the shoe at another depth: is it still this shoe's?"}
	case e.testedBeforeCement(i):
		return gap{model.PathOf(i, "shoe_test.date"), "the shoe test is dated before the string above was cemented: is it this shoe's?"}
	case !test.Mud.IsSet():
		return gap{model.PathOf(i, "shoe_test.mud"), "the mud in the shoe test is not given: the section's density is taken, which may have changed since"}
	}
	return gap{}
}

// testedBeforeCement reports whether the test of the shoe above section i is dated before that string was cemented.
func (e *evaluation) testedBeforeCement(i int) bool {
	_, above, ok := e.lastShoe(i)
	if !ok {
		return false
	}
	tested, dated := model.ParseDay(e.plan.Sections[i].ShoeTest.Date)
	cemented, known := model.ParseDay(e.plan.Sections[above].Built.Cemented)
	return dated && known && tested < cemented
}

// shoeTest returns what the last shoe above section i is taken to stand, by measured or planned test, and its TVD; false when
// there is none.
func (e *evaluation) shoeTest(i int) (test, tvd float64, ok bool) {
	t := &e.tests[i]
	return t.counts, t.tvd, t.counts > 0
}

// shoeStrength returns what the last shoe above section i stands as EMW, and where that comes from: its measured test, else the weaker
// of planned test and prognosis. It is false where neither is known.
func (e *evaluation) shoeStrength(i int) (emw float64, from string, ok bool) {
	t := &e.tests[i]
	emw, from, ok = t.counts, "shoe test, "+e.testOrigin(i), t.counts > 0
	if t.run && ok || e.window.missing.open() {
		return emw, from, ok
	}
	if fracture, known := e.window.fracture.At(t.tvd); known && (!ok || fracture < emw) {
		return fracture, "fracture prognosis", true
	}
	return emw, from, ok
}

// testEntry returns the entry that decides what the shoe above section i stands.
func (e *evaluation) testEntry(i int) model.Path {
	switch t := &e.tests[i]; {
	case !t.run:
		return model.PathOf(i, "leak_off")
	case e.plan.Sections[i].ShoeTest.Pressure.IsSet():
		return model.PathOf(i, "shoe_test.pressure")
	}
	return model.PathOf(i, "test_point["+strconv.Itoa(e.tests[i].reading.LeakOff+1)+"].pressure")
}

// origin says in a few words where the strength of the shoe above section i comes from.
func (e *evaluation) testOrigin(i int) string {
	t, date := &e.tests[i], e.plan.Sections[i].ShoeTest.Date
	switch {
	case !t.run:
		return "planned"
	case t.stale.open():
		return note("measured, see findings", date)
	}
	return note("measured", date)
}
