package sheet

import (
	"cmp"
	"fmt"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// killCard makes the kill sheet of a section; why says what keeps it from being made.
func (p *printer) killCard(i int) (c card, why string) {
	if p.plan.Sections[i].Returns != model.ToRig {
		return card{}, "without riser and BOP a kick is not circulated out, and a shallow flow is never shut in: the limits card has what one takes"
	}
	if why = p.lacking(i, "control.kill.initial", "no kill is worked out"); why != "" {
		return card{}, why
	}
	c = card{section: i, title: "Kill sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = filled(p.killHolds(i), p.killShutIn(i), killForm(), p.killPressures(i), p.chokeTable(i), p.killStart(i), p.killSteps(i),
		p.killWays(i), p.killPlayed(i), p.killAfter(i), p.slowRates(i))
	c.notes = p.killNotes(i)
	return c, ""
}

// killHolds says for what a kill sheet holds: with anything of it changed it is another well's.
func (p *printer) killHolds(i int) table {
	s, figures := &p.counts.Sections[i], p.result.Sheet(i)
	t := table{title: "Holds for this and nothing else", rowHead: "What"}
	t.entry("Mud", s.Density, quantity.Density, s.Fluid)
	if s.Kill.Bit.IsSet() {
		t.entry("Bit at", s.Kill.Bit, quantity.Length, "as entered, not at TD")
	} else {
		t.figures(figures, "Bit at TD", shown{"", "hole.td"}, shown{"TVD", "hole.td.tvd"}, shown{"BHA", "string.assembly.length"})
	}
	t.figures(figures, "Shoe test", shown{"", "control.test"}, shown{"in mud", "control.test.mud"}, shown{"shoe at TVD", "control.maasp.shoe.at"})
	t.figures(figures, "Shoe stands", shown{"", "control.shoe"}, shown{"at the shoe", "control.shoe.pressure"})
	t.remark(p.staleTest(i))
	p.killPump(i, &t)
	t.figures(figures, "Slow pressure, this mud", shown{"", "control.kill.slow"})
	t.figures(figures, "Line friction, this mud", shown{"", "control.line"})
	t.entry("Held over formation", s.Kill.Overbalance, quantity.Pressure, "not in the kill mud")
	method, _ := p.plan.Sections[i].Kill.Methods()
	t.add("Method", method+", returns by "+cmp.Or(s.Kill.Line, model.ByChokeLine))
	return t
}

// killPump adds the pump, its rate and its output.
func (p *printer) killPump(i int, t *table) {
	kill, kind := &p.plan.Sections[i].Kill, 1
	if kill.Pump.IsSet() {
		kind = int(kill.Pump.SI)
	}
	t.add("Kill pump", "")
	if len(p.plan.Pumps) > 1 {
		t.remark("kind " + strconv.Itoa(kind))
	}
	t.set("", quantity.StrokeRate, given(kill.Rate))
	if !kill.Rate.IsSet() {
		t.remark("at the usual slow rate: none is entered")
	}
	t.set("output", quantity.StrokeVolume, p.value(-1, "pump."+strconv.Itoa(kind)+".output"))
	t.set("flow", quantity.Flow, p.value(i, "control.kill.flow"))
}

// killShutIn lists the kick on the sheet, with room for what is read.
func (p *printer) killShutIn(i int) table {
	s, kill := p.result.Sheet(i), &p.plan.Sections[i].Kill
	origin := func(v quantity.Value) string {
		if v.IsSet() {
			return "read"
		}
		return "planned"
	}
	t := table{title: "Shut in", rowHead: "What", byHand: []string{"now"}}
	add := func(name, key, note string) {
		t.add(name, note)
		if f, ok := s.Find(key); ok && f.OK {
			t.set("", f.Kind, f.Value)
		}
	}
	add("Drill pipe (SIDPP)", "control.kill.pipe", origin(kill.DrillPipe))
	if kill.Annulus.IsSet() {
		add("Choke (SICP)", "control.kill.choke.read", "read")
		add("SICP, bubble of gas", "control.kill.choke", "worked out for that gain")
		t.told()
	} else {
		add("Choke (SICP)", "control.kill.choke", "planned, a bubble of gas")
	}
	add("Pit gain", "control.kill.volume", origin(kill.Gain))
	if f, ok := s.Find("control.kill.influx"); ok {
		t.figures(s, f.Name, shown{"", f.Key})
		t.remark("treat it as gas")
		t.told()
	}
	return t
}

// killForm is what is written down on the shut-in well.
func killForm() table {
	t := table{title: "Written down on the shut-in well", rowHead: "What", form: true, byHand: []string{"at", "is"}}
	for _, name := range []string{"Well shut in", "Gauges steady", "Trapped pressure bled, SIDPP", "Bit depth", "Mud weighed in, out", "Kill mud weighed", "Pump started"} {
		t.add(name, "")
	}
	return t
}

// killPressures lists kill mud, what weighs it up, and the pressures at the standpipe that circulate.
func (p *printer) killPressures(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Kill mud and standpipe", rowHead: "What", byHand: []string{"now"}}
	t.figures(s, "Kill mud", shown{"", "control.kill.mud"}, shown{"exact", "control.kill.mud.exact"})
	if mud := given(p.counts.Sections[i].Density); figureOf(s, "control.kill.mud") <= mud {
		t.remark("no heavier than the mud")
	}
	t.figures(s, "ICP, kill rate reached", shown{"", "control.kill.initial"})
	t.figures(s, "FCP, kill mud at the bit", shown{"", "control.kill.final"})
	t.figures(s, "Weighting material", shown{"", "control.kill.barite"}, shown{"sacks", "control.kill.barite.sacks"},
		shown{"gains", "control.kill.barite.volume"}, shown{"mixing", "control.kill.barite.time"})
	if _, ok := s.Find("control.kill.barite"); ok {
		t.told()
	}
	return t
}

// killStart lists the choke gauge while the pump is brought up.
func (p *printer) killStart(i int) table {
	t := table{title: "Pump brought up: choke gauge let fall by the line's friction", rowHead: "Step", byHand: []string{"read"}}
	t.series(p.result.Sheet(i), "control.kill.start.", shown{"rate", ".rate"}, shown{"choke", ""}, shown{"too much", ".over"})
	return t
}

// killSteps lists the standpipe's pressure while kill mud goes down the string.
func (p *printer) killSteps(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Standpipe while kill mud goes to the bit", rowHead: "Kill mud", byHand: []string{"read"}}
	t.series(s, "control.kill.step.", shown{"strokes", ".strokes"}, shown{"standpipe", ""}, shown{"pumped", ".volume"})
	return t
}

// killWays lists what is counted in strokes.
func (p *printer) killWays(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Ways of the mud at the kill rate", rowHead: "Way"}
	for _, way := range []string{"lines", "string", "open", "cased", "line", "annulus", "whole"} {
		key := "control.kill.way." + way
		if f, ok := s.Find(key); ok {
			t.figures(s, capital(f.Name), shown{"", key}, shown{"strokes", key + ".strokes"}, shown{"time", key + ".time"})
		}
	}
	return t
}

// killPlayed lists what the kick does on its way out, by the method planned and by the other.
func (p *printer) killPlayed(i int) table {
	s := p.result.Sheet(i)
	method, other := p.plan.Sections[i].Kill.Methods()
	t := table{title: "Kick on its way out, by both methods", rowHead: "What"}
	for _, key := range []string{"choke", "choke.at", "shoe", "weak", "gas", "arrives", "gone", "time", "over"} {
		key = "control.out." + key
		if f, ok := s.Find(key); ok {
			if t.figures(s, capital(f.Name), shown{method, key}, shown{other, key + ".other"}, shown{"stands", key + ".stands"}); !f.OK {
				break // the others for the same reason
			}
		}
	}
	return t
}

// killAfter lists what is left to do when the well is dead: gas in the stack, the old mud in the riser.
func (p *printer) killAfter(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Before the stack is opened", rowHead: "What"}
	t.figures(s, "Gas trapped in the stack", shown{"", "control.trapped"}, shown{"at the surface", "control.trapped.surface"}, shown{"drives out", "control.trapped.displaced"})
	t.figures(s, "Riser to kill mud", shown{"", "control.kill.way.riser"}, shown{"strokes", "control.kill.way.riser.strokes"}, shown{"time", "control.kill.way.riser.time"})
	return t
}

// slowRates lists the slow rates as recorded.
func (p *printer) slowRates(i int) table {
	t := table{title: "Slow rates as recorded", rowHead: "Row"}
	rows := p.plan.Sections[i].SlowRates
	for k := range rows {
		r := &rows[k]
		t.add(strconv.Itoa(k+1), cmp.Or(r.Path, model.ByRiser))
		t.set("rate", quantity.StrokeRate, given(r.Rate))
		t.set("pressure", quantity.Pressure, given(r.Pressure))
		t.set("mud", quantity.Density, given(r.Mud))
		t.set("bit at", quantity.Length, given(r.Depth))
		if r.Pump.IsSet() && len(p.plan.Pumps) > 1 {
			t.remark("pump kind " + strconv.Itoa(int(r.Pump.SI)))
		}
		t.remark(r.Time)
	}
	return t
}

// killNotes are how to read a kill sheet, the findings on control beyond limits met, and the cautions that go with it.
func (p *printer) killNotes(i int) []part {
	s := &p.plan.Sections[i]
	reading := part{title: "How to read it", remarks: []string{
		"now, read, at, is: by hand. What is read on the well replaces what is planned, and the sheet is worked out anew with it.",
		"Pump brought up: bottom-hole pressure is kept while the choke gauge falls by what the line takes: by the square of the rate from what was measured, by the mud's flow where it is worked out. A static line's gauge, open to the well, is the check: it stays as it stood.",
		"too much: what then stands on the well over that, where the gauge is at none already.",
		"Standpipe: by how far down the path as planned the kill mud has come. " + p.straightText(i),
		"Peaks: one bubble, pumped out at the pressure held at TD. Volumes and time are counted from the start of the pump.",
	}}
	if len(s.SlowRates) == 0 {
		reading.remarks = append(reading.remarks, "Slow rates: none is recorded, so friction is worked out. Record them by riser and by line, and work the sheet out anew.")
	}
	cautions := part{title: "Cautions", remarks: append([]string{
		"Changed mud, bit depth, string, nozzles, liner or shoe test: this sheet no longer holds.",
		"Choke: from the start of the pump the line's friction presses on the shoe. The gauge of a static line, where that is open to the well, is kept as it stood.",
		"Count and pressure: a second person keeps the strokes and reproduces this sheet. Where they disagree, stop and look for washout, plugging, a lost pump or losses before the choke is moved for it.",
		"Gas: in oil mud it hides in solution until it is near the surface. The riser is watched and the diverter lined up all the while; what is in riser or stack cannot be shut in below them.",
		"Left out: losses while killing, gas that migrates or strings out, stripping, bullheading, volumetric methods, hydrates in lines at seabed cold. They need their own plan.",
		"The operator's well-control manual, the people in charge on the rig and local rules decide. This sheet is one of the things they look at.",
	}, p.cautionsOn(i, map[quantity.Kind]bool{quantity.Strokes: true}, "control.maasp", "control.kill")...)}
	return []part{p.killMethod(i), p.beyondMet("Findings on well control", i, p.onControl()), reading, cautions, signed()}
}

// straightText says how far a straight line from ICP to FCP is off the schedule.
func (p *printer) straightText(i int) string {
	over, ok := p.result.Sheet(i).Find("control.kill.straight")
	under, also := p.result.Sheet(i).Find("control.kill.straight.under")
	if !ok || !also || !over.OK || !under.OK {
		return ""
	}
	return "A straight line from ICP to FCP would be up to " + p.figureText(over) + " over it and " + p.figureText(under) + " under."
}
