package sheet

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// shoeTestCard makes the sheet of the test of the shoe above a section; why says what keeps it from being made.
func (p *printer) shoeTestCard(i int) (c card, why string) {
	if p.plan.Sections[i].Returns != model.ToRig {
		return card{}, "without a BOP the hole cannot be closed in: the shoe above is not tested"
	}
	if _, shoe := p.result.Sheet(i).Find("control.shoe"); !shoe {
		return card{}, "there is no shoe above to test"
	}
	if why = p.lacking(i, "control.test", "no shoe test is planned or measured (section["+strconv.Itoa(i+1)+"].leak_off)"); why != "" {
		return card{}, why
	}
	c = card{section: i, title: "Shoe test sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	points := p.testPoints(i)
	if len(points.rows) == 0 && !p.testRun(i) {
		points = testForm()
	}
	c.tables = filled(p.testPlanned(i), points, p.testRead(i), p.testCounts(i), p.testLimits(i))
	c.notes = p.testNotes(i)
	return c, ""
}

// testRun reports whether the test has been run.
func (p *printer) testRun(i int) bool {
	_, run := p.result.Sheet(i).Find("control.test.exact")
	return run
}

// testPlanned lists to what is pumped and what with.
func (p *printer) testPlanned(i int) table {
	s, section := p.result.Sheet(i), &p.counts.Sections[i]
	test := &section.ShoeTest
	t := table{title: "Planned", rowHead: "What"}
	t.figures(s, "Gauge at the plan", shown{"", "control.test.gauge"})
	t.entry("Shoe test planned", section.LeakOff, quantity.EMW, "to "+cmp.Or(test.Kind, model.TestLeakOff))
	t.entry("Least to go on with", test.Least, quantity.EMW, "below it: stop, and call before drilling on")
	t.figures(s, "Fracture prognosis", shown{"", "mud.fracture.shoe"})
	t.figures(s, "Shoe at TVD", shown{"", "control.maasp.shoe.at"})
	t.entry("New hole below it", test.NewHole, quantity.Length, "circulated clean, mud even in and out")
	if test.Mud.IsSet() {
		t.entry("Mud", test.Mud, quantity.Density, "as weighed in the test")
	} else {
		t.entry("Mud", section.Density, quantity.Density, "the section's: weigh it in and out")
	}
	t.entry("Gauge above the rotary", test.Gauge, quantity.Length, "")
	t.entry("Gauge good to", test.Within, quantity.Pressure, "")
	t.entry("Pumped at", test.Rate, quantity.CementRate, "steady, from the first stroke")
	return t
}

// testPoints lists the readings.
func (p *printer) testPoints(i int) table {
	s, rows := p.result.Sheet(i), p.plan.Sections[i].TestPoints
	pressure, volume := figureOf(s, "control.test.points"), figureOf(s, "control.test.points.volume")
	t := table{title: "As read, in the order of pumping", rowHead: "Reading", columns: []heading{{"pumped", quantity.Volume}, {"gauge", quantity.Pressure}}}
	for k := range rows {
		l := line{name: fmt.Sprint(k + 1), values: []float64{given(rows[k].Volume), given(rows[k].Pressure)}}
		if l.values[0] == volume && l.values[1] == pressure {
			l.note = "last on the straight line"
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// readings is how many lines there are to write readings in.
const readings = 20

// testForm is where readings are written by hand.
func testForm() table {
	t := table{title: "Readings, the last ones with the pump stopped, a minute apart", rowHead: "reading", tall: true, form: true,
		columns: []heading{{"pumped", quantity.Volume}, {"gauge", quantity.Pressure}}, byHand: []string{"time"}}
	for k := range readings {
		t.add(strconv.Itoa(k+1), "")
	}
	return t
}

// testRead lists what was picked and read beside the points, with room for it before the test is run.
func (p *printer) testRead(i int) table {
	s, test, run := p.result.Sheet(i), &p.plan.Sections[i].ShoeTest, p.testRun(i)
	t := table{title: "Picked and read", rowHead: "What"}
	if !run {
		t.byHand = []string{"read"}
	}
	put := func(name string, kind quantity.Kind, value float64, note string) {
		if run && !finite(value) {
			return
		}
		t.add(name, note)
		t.set("", kind, value)
	}
	put("Gauge, picked", quantity.Pressure, p.value(i, "control.test.picked"), p.testPick(i))
	t.figures(s, "Last on the line", shown{"", "control.test.points"}, shown{"pumped", "control.test.points.volume"})
	if f, ok := s.Find("control.test.slope"); ok {
		t.figures(s, f.Name, shown{"", f.Key})
	}
	put("Lost to move the mud", quantity.Pressure, given(test.Breaking), "read before the hole is closed, taken off")
	put("Mud in the test", quantity.Density, p.value(i, "control.test.mud"), "")
	shut := func(name, key string) {
		put(name, quantity.Pressure, p.value(i, key+".gauge"), "")
		if emw := p.value(i, key); finite(emw) {
			t.set("EMW", quantity.EMW, emw)
		}
	}
	shut("Pump stopped, first", "control.test.shut_in")
	shut("Shut in, last", "control.test.shut_in_last")
	put("Shut in for", quantity.Time, given(test.ShutInTime), "")
	put("Bled back", quantity.Volume, given(test.Returned), "")
	if share := p.value(i, "control.test.returned"); finite(share) {
		t.set("of what was pumped", quantity.Ratio, share)
	}
	return t
}

// testPick says how the gauge's pressure was picked.
func (p *printer) testPick(i int) string {
	switch test := &p.plan.Sections[i].ShoeTest; {
	case !p.testRun(i):
		return "last reading on the straight line"
	case test.Pressure.IsSet():
		return "by hand: it overrules the points"
	}
	return "last reading on the straight line through the build-up"
}

// testCounts lists what the shoe is taken to stand.
func (p *printer) testCounts(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "What the shoe is taken to stand", rowHead: "What"}
	t.figures(s, "Counts", shown{"", "control.test"}, shown{"at the shoe", "control.test.pressure"})
	if !p.testRun(i) {
		t.remark("until the test is run")
		return t
	}
	t.remark("rounded down")
	t.remark(p.staleTest(i))
	t.figures(s, "As measured", shown{"", "control.test.exact"})
	t.figures(s, "Planned was", shown{"", "control.test.planned"}, shown{"measured less planned", "control.test.short"})
	return t
}

// testLimits lists what follows from it.
func (p *printer) testLimits(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "What follows, with this section's mud", rowHead: "Limit"}
	t.entry("Mud", p.counts.Sections[i].Density, quantity.Density, "")
	p.mostMud(i, &t)
	p.mostAtChoke(i, &t, "Choke, pump off (MAASP)", "Choke, at the kill rate")
	t.figures(s, "Kick margin at TD", shown{"", "control.kick_margin"})
	t.figures(s, "Kick tolerance, drilled", shown{"", "control.tolerance"})
	return t
}

// onTest tells the findings on a section's shoe test.
func onTest(i int) func(calc.Finding) bool {
	return func(f calc.Finding) bool {
		for _, key := range []string{"leak_off", "shoe_test.", "test_point["} {
			if strings.HasPrefix(string(f.Mend), string(model.PathOf(i, key))) {
				return true
			}
		}
		return false
	}
}

// testNotes are how to read a shoe test sheet, the findings on the test beyond limits met, and the cautions that go with it.
func (p *printer) testNotes(i int) []part {
	reading := part{title: "How to read it", remarks: []string{
		"Gauge at the plan: at which the planned test is reached with the mud given. Another mud, another gauge: work it out anew before pumping.",
		"Picked: where readings leave the straight line, the last one on it; it counts rounded down, to 0.01 sg, or 0.1 ppg where the plan shows ppg. " +
			"Readings that never leave the line say what was held, not what the rock stands.",
		"Bled back: what stays out has gone into the rock, or into lines that were not full.",
	}}
	cautions := part{title: "Cautions", remarks: append([]string{
		"Before pumping: the weakest of pump, lines, wellhead, BOP, plugs and casing is looked at for the gauge that is planned. Relief valves set, lines tested, people clear.",
		"Pumping: slow, steady, by a small pump and a gauge that reads well at these pressures. Stop at the plan, or where the line is left; do not chase the rock.",
		"Curve, volumes, mud weights and times are kept with the well's papers, bad ones too.",
		"In doubt the test is repeated; a better figure is not picked. Gel, friction, air in lines, cement left in the hole or a leak each bend the curve.",
		"It is the shoe's, on the day. Weaker rock below, wear and depletion are not in it.",
		"The operator's manual, the people in charge and local rules decide how the test is run, what counts, and whether to drill on.",
	}, p.cautionsOn(i, map[quantity.Kind]bool{quantity.Volume: true}, "control.maasp", "control.tolerance")...)}
	return []part{reading, p.beyondMet("Findings on the shoe test", i, onTest(i)), cautions, signed()}
}
