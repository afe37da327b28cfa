package calc

import (
	"math"
	"strconv"

	"borewalk/calc/column"
	"borewalk/calc/leakoff"
	"borewalk/model"
	"borewalk/model/quantity"
)

// shoeTestFigures adds the shoe test that counts, and what was read in it.
func (e *evaluation) shoeTestFigures(i int, p *page) {
	t, s := &e.tests[i], &e.plan.Sections[i]
	p.group = "Shoe test"
	if t.counts > 0 || t.run {
		missing := first(t.missing, e.pathGap, e.shoeGap(i))
		p.put("control.test", "Shoe test", quantity.EMW, t.counts, missing, func(w *Working) { e.testWorking(w, i) }).Note = e.testOrigin(i)
		p.also("control.test.pressure", "at shoe", quantity.Pressure, column.PressureOf(t.counts, t.tvd), missing, shoePressure("test that counts", t.counts, t.tvd))
	}
	e.strengthFigure(i, p)
	e.gaugeFigure(i, p)
	if t.run {
		e.measuredFigures(i, p, s)
	}
	e.judgeTest(i)
}

// strengthFigure adds what the shoe above section i is taken to stand.
func (e *evaluation) strengthFigure(i int, p *page) {
	t, missing := &e.tests[i], e.testGap(i)
	strength, from, _ := e.shoeStrength(i)
	p.put("control.shoe", "Shoe stands", quantity.EMW, strength, missing, func(w *Working) {
		w.Formula = "measured test, else the lesser of planned test and fracture prognosis"
		w.in("counts", from, quantity.EMW, strength)
		if t.counts > 0 {
			w.in("test", e.testOrigin(i), quantity.EMW, t.counts)
		}
		if fracture, ok := e.window.fracture.At(t.tvd); ok {
			w.in("fracture", "prognosis at the shoe", quantity.EMW, fracture)
		}
		w.Source = "common practice"
	}).Note = from
	p.also("control.shoe.pressure", "at shoe", quantity.Pressure, column.PressureOf(strength, t.tvd), missing, shoePressure(from, strength, t.tvd))
}

// shoePressure shows how the pressure at a shoe of an equivalent density was got.
func shoePressure(from string, emw, tvd float64) func(*Working) {
	return func(w *Working) {
		w.Formula = "p = EMW × g × TVD"
		w.in("EMW", from, quantity.EMW, emw)
		w.in("TVD", "of the shoe", quantity.Length, tvd)
		w.Source = "hydrostatics"
	}
}

// testWorking shows where the strength of the shoe above section i comes from.
func (e *evaluation) testWorking(w *Working, i int) {
	t, test := &e.tests[i], &e.plan.Sections[i].ShoeTest
	if !t.run {
		w.Formula = "as planned"
		w.in("test", "planned", quantity.EMW, t.counts)
		w.Source = "the plan; a measured pressure replaces it"
		return
	}
	w.Formula = "test = (gauge - lost + mud × g × (TVD + height)) / (g × TVD), rounded down"
	w.in("gauge", "picked", quantity.Pressure, t.gauge)
	w.in("lost", "to move and break the mud", quantity.Pressure, test.Breaking.SI)
	w.in("mud", "in the test", quantity.Density, t.mud)
	w.in("TVD", "of the shoe", quantity.Length, t.tvd)
	w.in("height", "of the gauge above the rotary", quantity.Length, test.Gauge.SI)
	w.in("exact", "before rounding", quantity.EMW, t.exact)
	w.Source = "hydrostatics; drillingformulas.com, formation integrity test; leak-off is where the straight line is left (common practice)"
	w.Note = "Rounded down to 0.01 sg, or 0.1 ppg where the plan shows ppg. Curve and volumes are kept; a test in doubt is repeated."
}

// gaugeFigure adds the gauge pressure at which the planned or counted test is reached with the section's mud.
func (e *evaluation) gaugeFigure(i int, p *page) {
	t, s := &e.tests[i], &e.plan.Sections[i]
	missing := first(e.pathGap, e.shoeGap(i), e.testMudGap(i))
	if !s.LeakOff.IsSet() {
		return
	}
	test := e.testColumnOf(i, t.tvd)
	var value float64
	if !missing.open() {
		var err error
		if value, err = test.Gauge(s.LeakOff.SI); err != nil {
			missing = gap{model.PathOf(i, "leak_off"), err.Error()}
		}
	}
	p.put("control.test.gauge", "Gauge, planned", quantity.Pressure, value, missing, func(w *Working) {
		w.Formula = "gauge = (planned - mud) × g × TVD - mud × g × height + lost"
		w.in("planned", "shoe test", quantity.EMW, s.LeakOff.SI)
		w.in("mud", "in the test", quantity.Density, test.Mud)
		w.in("TVD", "of the shoe", quantity.Length, t.tvd)
		w.in("height", "of the gauge above the rotary", quantity.Length, s.ShoeTest.Gauge.SI)
		w.in("lost", "to move and break the mud", quantity.Pressure, s.ShoeTest.Breaking.SI)
		w.Source = "hydrostatics; drillingformulas.com, formation integrity test"
		w.Note = "Weakest of pump, lines, BOP and casing is looked at before it is pumped to."
	})
}

// measuredFigures adds what was read in the test of the shoe above section i.
func (e *evaluation) measuredFigures(i int, p *page, s *model.Section) {
	t, test := &e.tests[i], &s.ShoeTest
	p.group = "Shoe test as run"
	p.put("control.test.exact", "As measured", quantity.EMW, t.exact, t.missing, func(w *Working) { e.testWorking(w, i) })
	p.also("control.test.picked", "gauge", quantity.Pressure, t.gauge, t.missing, func(w *Working) { t.pickWorking(w) })
	p.also("control.test.mud", "mud", quantity.Density, t.mud, t.missing, func(w *Working) {
		w.Formula, w.Source = "as entered, else the section's mud", "the plan"
		w.in("mud", "in the test", quantity.Density, t.mud)
	})
	if s.LeakOff.IsSet() {
		p.group = "Against the plan"
		p.put("control.test.planned", "Planned was", quantity.EMW, s.LeakOff.SI, gap{}, func(w *Working) {
			w.Formula, w.Source = "as planned; the measured test counts in its place", "the plan"
			w.in("test", "planned", quantity.EMW, s.LeakOff.SI)
		})
		p.also("control.test.short", "less plan", quantity.EMW, t.counts-s.LeakOff.SI, t.missing, func(w *Working) {
			w.Formula, w.Source = "measured - planned", "arithmetic"
			w.in("measured", "rounded down", quantity.EMW, t.counts)
			w.in("planned", "test", quantity.EMW, s.LeakOff.SI)
		})
	}
	shut := func(key, name string, v quantity.Value) {
		if !v.IsSet() {
			return
		}
		still := e.testColumnOf(i, t.tvd)
		still.Breaking = 0
		missing := t.missing
		at, err := still.Pressure(v.SI)
		if err != nil {
			missing = first(missing, gap{model.PathOf(i, "shoe_test.shut_in"), err.Error()})
		}
		value, _ := column.EMW(at, t.tvd)
		p.put(key, name, quantity.EMW, value, missing, func(w *Working) {
			w.Formula = "EMW = (gauge + mud × g × (TVD + height)) / (g × TVD)"
			w.in("gauge", "read, pump stopped", quantity.Pressure, v.SI)
			w.in("mud", "in the test", quantity.Density, t.mud)
			w.in("TVD", "of the shoe", quantity.Length, t.tvd)
			w.in("height", "of the gauge above the rotary", quantity.Length, test.Gauge.SI)
			w.Source = "hydrostatics; without flow nothing is lost to move the mud"
		})
		p.also(key+".gauge", "gauge", quantity.Pressure, v.SI, gap{}, func(w *Working) {
			w.Formula, w.Source = "as read", "the plan"
			w.in("gauge", "read", quantity.Pressure, v.SI)
		})
	}
	p.group = "Shut-in of the test"
	shut("control.test.shut_in", "Shut-in, first", test.ShutIn)
	shut("control.test.shut_in_last", "Shut-in, last", test.ShutInLast)
	t.pointFigures(p, test)
}

// pickWorking shows how the leak-off was picked: by hand, or as the last reading on the line, and how far the next is off it.
func (t *shoeTest) pickWorking(w *Working) {
	const picked = "control.test.picked"
	byPoints := len(t.points) > 0 && t.read == nil
	if w.Figure.Key == picked {
		w.in("gauge", "picked", quantity.Pressure, t.gauge)
	}
	if w.Formula, w.Source = "as picked by hand", "the plan"; !byPoints {
		return
	}
	r := &t.reading
	last := t.points[r.LeakOff]
	if w.Figure.Key != picked || t.gauge == last.Pressure {
		w.Formula = "last reading on the straight line through the build-up"
		w.Source = "departure from the straight line, common practice"
	}
	w.in("points", "on the straight line", quantity.Count, float64(r.LeakOff-r.From+1-len(r.LeftOut)))
	w.in("slope", "of the line, per m3", quantity.Pressure, r.Slope)
	w.in("last", "last on line, "+readingName(r.LeakOff), quantity.Pressure, last.Pressure)
	w.in("V", "pumped there", quantity.Volume, last.Volume)
	if r.Departed || r.Unconfirmed {
		t.departureWorking(w)
	} else {
		w.Note = "The readings never leave the line: what was held, not what the rock stands. The last on the line counts."
	}
}

// departureWorking shows how far the first reading past the line is off it, against how far it may be off.
func (t *shoeTest) departureWorking(w *Working) {
	r := &t.reading
	next := r.LeakOff + 1
	at, highest := t.points[next], 0.0
	for _, p := range t.points[:next+1] {
		highest = math.Max(highest, p.Pressure)
	}
	off, good, why := r.Line(at.Volume)-at.Pressure, t.within, "the gauge, as entered"
	if share := leakoff.Share * highest; share > good {
		good, why = share, strconv.FormatFloat(100*leakoff.Share, 'g', 3, 64)+" % of highest so far"
	}
	w.in("next", "after it, "+readingName(next), quantity.Pressure, at.Pressure)
	w.in("line", "at that volume", quantity.Pressure, r.Line(at.Volume))
	w.in("off", "the next below the line", quantity.Pressure, off)
	w.in("good to", why, quantity.Pressure, good)
	w.Note = "From " + readingName(next) + " on the readings fall off the line by more than they are good to: the rock begins to take mud. " +
		"So the points give " + readingName(r.LeakOff) + ", the last on the line, and not a place between two."
	if r.Unconfirmed {
		w.Note = "The last reading of all fell off the line, and none follows to confirm it. " +
			"Until one does the points give " + readingName(r.LeakOff) + ", the last on the line."
	}
	if off <= good {
		w.Note += " The next is off by less than it is good to, but leans the way of those after it."
	}
}

// readingName names a reading by its place in the test.
func readingName(k int) string { return "reading " + strconv.Itoa(k+1) }

// pointFigures adds what the points say: the pick, the volume, the line's slope, and what came back.
func (t *shoeTest) pointFigures(p *page, test *model.ShoeTest) {
	if len(t.points) == 0 {
		return
	}
	at, slope := leakoff.Point{}, 0.0
	missing := gap{}
	if t.read != nil {
		missing = gap{model.PathOf(p.section, "test_point[1].pressure"), t.read.Error()}
	} else {
		at, slope = t.points[t.reading.LeakOff], t.reading.Slope
	}
	p.group = "Points of the test"
	f := p.put("control.test.points", "By points", quantity.Pressure, at.Pressure, missing, t.pickWorking)
	switch {
	case !f.OK:
	case t.reading.Unconfirmed:
		f.Note = "by the last reading alone"
	case !t.reading.Departed:
		f.Note = "no departure seen"
	}
	p.also("control.test.points.volume", "pumped", quantity.Volume, at.Volume, missing, t.pickWorking)
	p.put("control.test.slope", "Line, over 1 m3", quantity.Pressure, slope, missing, t.pickWorking)
	last := t.points[len(t.points)-1].Volume
	if test.Returned.IsSet() && last > 0 {
		p.put("control.test.returned", "Bled back", quantity.Ratio, test.Returned.SI/last, gap{}, func(w *Working) {
			w.Formula = "share = bled back / pumped"
			w.in("back", "bled back", quantity.Volume, test.Returned.SI)
			w.in("pumped", "in all", quantity.Volume, last)
			w.Source = "common practice: what stays out has gone into the rock"
		})
	}
}

// judgeTest compares the test of the shoe above section i with what the plan and the rules want.
func (e *evaluation) judgeTest(i int) {
	t, s := &e.tests[i], &e.plan.Sections[i]
	if !e.sections[i].rig {
		return
	}
	if t.stale.open() {
		e.note(i, Caution, t.stale)
	}
	if t.run && t.missing.open() {
		e.fault(t.missing)
	}
	if len(t.points) > 0 && t.read != nil {
		e.note(i, Caution, gap{model.PathOf(i, "test_point[1].pressure"), t.read.Error()})
	}
	if t.run && !t.missing.open() {
		if fracture, ok := e.window.fracture.At(t.tvd); ok && !e.window.missing.open() {
			e.judge(model.RuleTestOver, i, t.exact-fracture, "Measured shoe test over the fracture prognosis", "", t.shoe, e.testEntry(i))
		}
		if len(t.points) > 0 && t.read == nil && !t.reading.Departed && s.ShoeTest.Kind != model.TestIntegrity {
			e.note(i, Caution, gap{model.PathOf(i, "shoe_test.kind"), "the readings do not leave the straight line for certain: an integrity test, not a leak-off"})
		}
	}
	if s.ShoeTest.Least.IsSet() && t.counts > 0 {
		what := "Planned shoe test over the least wanted"
		if t.run {
			what = "Shoe test over the least wanted"
		}
		e.judge(model.RuleTestLeast, i, t.counts-s.ShoeTest.Least.SI, what, "", t.shoe, e.testEntry(i))
	}
	if _, above, ok := e.lastShoe(i); ok && e.plan.Sections[above].Purpose != model.Conductor {
		planned := 0.0
		if t.counts > 0 {
			planned = 1
		}
		e.judge(model.RuleUSTestPlanned, i, planned, "Shoe test planned or run", "", t.shoe, model.PathOf(i, "leak_off"))
	}
	if s.ShoeTest.NewHole.IsSet() {
		mend := model.PathOf(i, "shoe_test.new_hole")
		e.judge(model.RuleUSNewHoleLeast, i, s.ShoeTest.NewHole.SI, "New hole before the shoe test", "", t.shoe, mend)
		e.judge(model.RuleUSNewHoleMost, i, s.ShoeTest.NewHole.SI, "New hole before the shoe test", "", t.shoe, mend)
	}
}
