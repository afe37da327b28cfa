package calc

import (
	"strconv"
	"strings"

	"borewalk/calc/column"
	"borewalk/model"
	"borewalk/model/quantity"
)

// handoverPage adds what a relief reads first, in the order in which he needs it: how the well stands, what is in it, what holds
// it, what limits it at its present depth, how a kick would be killed, and what he is to work out by himself. Without a watch there is
// nothing to hand over.
func (e *evaluation) handoverPage() {
	if !e.plan.OnWatch() {
		return
	}
	p := e.page(-1, model.TopicHandover)
	s := e.standsNow()
	e.statusFigures(p, s)
	if e.workGap().open() {
		return
	}
	if s.e != nil {
		e.result.Present = e.presentFindings(s)
		e.inHoleFigures(p, s)
		e.barrierFigures(p, s)
		e.presentLimits(p, s)
		e.killReadyFigures(p, s)
	}
	e.reliefFigures(p, s)
	if s.e != nil {
		e.pumpedFigures(p, s)
	}
}

// statusFigures adds where the work stands.
func (e *evaluation) statusFigures(p *page, s *standing) {
	p.group = "Well status"
	status := &e.plan.Status
	none := e.workGap()
	p.put("handover.section", "Section in work", quantity.Count, status.Section.SI, none, func(w *Working) { w.Formula, w.Source = "as entered", "the plan" })
	if none.open() {
		return
	}
	i, _ := e.plan.InWork()
	e.operationNow(p, i)
	hole, bit := status.Hole.SI, usual(status.Bit, status.Hole.SI)
	noHole := first(e.sections[i].missing, needs(status.Hole, "status.hole", "hole depth now"))
	const entered = "as entered"
	e.alongAndTVD(p, "hole", "Hole now", hole, noHole, entered)
	p.also("handover.hole.left", "to TD", quantity.Length, e.sections[i].td-hole, noHole, func(w *Working) {
		w.Formula, w.Source = "left = TD as planned - hole now", "geometry"
		w.in("TD", "as planned", quantity.Length, e.sections[i].td)
		w.in("hole", "now", quantity.Length, hole)
	})
	e.alongAndTVD(p, "bit", "Bit now", bit, first(noHole, s.misplaced()), entered)
	p.also("handover.bit.off", "off bottom", quantity.Length, hole-bit, first(noHole, s.misplaced()), func(w *Working) {
		w.Formula, w.Source = "off bottom = hole now - bit now", "geometry"
		w.in("hole", "now", quantity.Length, hole)
		w.in("bit", "now", quantity.Length, bit)
	})
	if shoe, _, ok := e.lastShoe(i); ok {
		e.alongAndTVD(p, "shoe", "Last shoe", shoe, e.shoeGap(i), "as planned")
		p.also("handover.shoe.open", "open below", quantity.Length, hole-shoe, first(noHole, e.shoeGap(i)), func(w *Working) {
			w.Formula, w.Source = "open hole = hole now - shoe", "geometry"
			w.in("hole", "now", quantity.Length, hole)
			w.in("shoe", "last", quantity.Length, shoe)
		})
	}
}

// misplaced is what is wrong with the depth of the bit alone.
func (s *standing) misplaced() gap {
	if s.missing.path == "status.bit" {
		return s.missing
	}
	return gap{}
}

// operationNow adds which operation of section i is being done.
func (e *evaluation) operationNow(p *page, i int) {
	list, missing := e.result.Steps[i], gap{}
	if list == nil {
		list, missing = e.stepsOf(i)
	}
	key := e.plan.Status.Step
	at := stepAt(list, key)
	switch {
	case key == "":
		missing = first(missing, gap{"status.step", "step now is blank"})
	case at < 0:
		missing = first(missing, gap{"status.step", "the section has no operation " + strconv.Quote(key)})
		e.note(i, Caution, missing)
	}
	why := func(w *Working) {
		w.Formula, w.Source = "place in the list of the section's operations", "the steps page"
	}
	p.put("handover.step", "Step now", quantity.Count, float64(at+1), missing, why)
	if at >= 0 {
		p.sheet.Figures[len(p.sheet.Figures)-1].Note = list[at].Name
	}
	p.also("handover.step.of", "of", quantity.Count, float64(len(list)), missing, why)
}

// alongAndTVD adds a depth along hole with its TVD.
func (e *evaluation) alongAndTVD(p *page, key, name string, md float64, missing gap, source string) {
	p.put("handover."+key, name, quantity.Length, md, missing, func(w *Working) { w.Formula, w.Source = source, "the plan" })
	p.also("handover."+key+".tvd", "TVD", quantity.Length, e.path.TVD(md), first(missing, e.pathGap), func(w *Working) {
		w.Formula, w.Source = "TVD on the path at that depth", "geometry"
		w.in("MD", "along hole", quantity.Length, md)
	})
}

// inHoleFigures adds what hangs and stands in the well.
func (e *evaluation) inHoleFigures(p *page, s *standing) {
	p.group = "In the hole"
	section := &e.plan.Sections[s.i]
	density := s.e.density(s.i, s.bit)
	p.put("handover.mud", "Mud", quantity.Density, density, s.e.columnGap(s.i), func(w *Working) {
		w.Formula, w.Source = "as planned for this depth", "the plan"
	}).Note = section.Fluid
	p.take(s, nowFigure{"column.shoe", "Column at shoe", "", "mud.emw.shoe.pressure"}, nowFigure{"column.shoe.emw", "", "EMW", "mud.emw.shoe"})
	e.columnAtBit(p, s, density)
	p.take(s, nowFigure{"string.assembly", "BHA length", "", "string.assembly.length"})
	p.take(s, nowFigure{"string.hook", "Hook load", "", "string.hook_load"}, nowFigure{"string.pick_up", "", "picking up", "drag.pick_up"}, nowFigure{"string.slack_off", "", "slacking off", "drag.slack_off"})
}

// columnAtBit adds what the column presses with at the bit.
func (e *evaluation) columnAtBit(p *page, s *standing, density float64) {
	missing := s.e.columnGap(s.i)
	var pressure, equivalent, tvd float64
	if !missing.open() {
		tvd = s.e.path.TVD(s.bit)
		pressure, _ = s.e.well(s.i, density).Pressure(tvd)
		equivalent, _ = column.EMW(pressure, tvd)
	}
	why := func(w *Working) {
		w.Formula, w.Source = "p = mud × g × TVD; without a riser the sea stands above the mudline", "hydrostatics"
		w.in("mud", "at rest", quantity.Density, density)
		w.in("TVD", "of the bit", quantity.Length, tvd)
	}
	p.put("handover.column.bit", "Column at bit", quantity.Pressure, pressure, missing, why)
	p.also("handover.column.bit.emw", "EMW", quantity.EMW, equivalent, missing, why)
}

// barrierFigures adds what holds the well: the column first, then what stands behind it, to what it was tested and when it is due.
func (e *evaluation) barrierFigures(p *page, s *standing) {
	p.group = "Barriers"
	p.take(s, nowFigure{"primary", "Mud over pore", "", "mud.margin.pore"}, nowFigure{"primary.at", "", "at TVD", "mud.margin.pore.at"})
	p.take(s, nowFigure{"primary.riser_off", "Riser off, left", "", "mud.riser_margin"})
	if e.sections[s.i].rig {
		p.take(s, nowFigure{"shoe_stands", "Shoe stands", "", "control.shoe"}, nowFigure{"shoe_stands.pressure", "", "at shoe", "control.shoe.pressure"})
		e.casingTested(p, s.i)
		e.stackTested(p, s.i)
	}
	for _, f := range s.sheet().Figures {
		if name, ok := strings.CutPrefix(f.Key, "control.due."); ok {
			p.shown(nowFigure{key: "due." + name, name: f.Name}, f, func(w *Working) { s.explain(w, f.Key, onSheet) })
		}
	}
}

// casingTested adds to what the last string above section i is tested.
func (e *evaluation) casingTested(p *page, i int) {
	_, j, ok := e.lastShoe(i)
	if !ok {
		return
	}
	test := e.plan.Sections[j].Loads.TestPressure
	p.put("handover.casing_test", "Casing tested to", quantity.Pressure, test.SI, lacks(test, j, "loads.test_pressure", "test pressure of the last string"), func(w *Working) {
		w.Formula, w.Source = "as entered, at the pump", "the plan"
		w.Note = "As planned: the record of the test decides."
	}).Note = "planned, string " + strconv.Itoa(j+1)
}

// stackTested adds to what the BOP is tested: for the section as planned, down to its TD.
func (e *evaluation) stackTested(p *page, i int) {
	t := e.readStackTest(i)
	p.put("handover.rams", "BOP tested to", quantity.Pressure, t.rams, t.noRams, ramsWorking(&t, &e.plan.Sections[i]))
	p.also("handover.annular", "annular", quantity.Pressure, t.annular, t.noAnnular, func(w *Working) {
		w.Formula, w.Source = "as entered, else 70 % of its rating, and no more than the rams' where no law asks for it", "the plan; 30 CFR 250.448(c) before 2016"
		w.in("rams", "tested to", quantity.Pressure, t.rams)
		w.in("rating", "of the annular", quantity.Pressure, e.plan.Rig.AnnularRating.SI)
	})
}

// presentLimits adds what limits the work at the present depth.
func (e *evaluation) presentLimits(p *page, s *standing) {
	p.group = "Limits at this depth"
	p.take(s, nowFigure{"window", "Mud over pore", "", "mud.margin.pore"}, nowFigure{"window.fracture", "", "below frac", "mud.margin.fracture"})
	p.take(s, nowFigure{"mud.most", "Max mud weight", "", "control.mud.most"})
	p.take(s, nowFigure{"maasp", "MAASP", "", "control.maasp"}, nowFigure{"maasp.circulating", "", "circulating", "control.maasp.circulating"})
	p.take(s, nowFigure{"ecd", "ECD on bottom", "", "hydraulics.ecd.td"}, nowFigure{"ecd.margin", "", "below limit", "hydraulics.margin"})
	p.take(s, nowFigure{"tolerance", "Drilled kick", "", "control.tolerance"}, nowFigure{"tolerance.swabbed", "", "swabbed", "control.tolerance.swabbed"},
		nowFigure{"tolerance.least", "", "least", "control.tolerance.least"})
	p.take(s, nowFigure{"dynamic", "Kill flow planned", "", "control.dynamic.flow"}, nowFigure{"dynamic.lasts", "", "mud lasts", "control.dynamic.lasts"})
	p.take(s, nowFigure{"trip.out", "Trip out, most", "", "swab.limit.out.least"}, nowFigure{"trip.out.stand", "", "a stand in", "swab.limit.out.least.stand"})
	p.take(s, nowFigure{"trip.in", "Trip in, most", "", "swab.limit.in.least"}, nowFigure{"trip.in.stand", "", "a stand in", "swab.limit.in.least.stand"})
	p.take(s, nowFigure{"overpull", "Overpull, most", "", "drag.overpull"})
	p.take(s, nowFigure{"standpipe", "Standpipe", "", "hydraulics.standpipe"}, nowFigure{"standpipe.limit", "", "liners' limit", "hydraulics.liner.fitted.limit"})
}

// killReadyFigures adds what a kill sheet of this depth stands on, and whether that still holds. The kill mud, the pressure to begin with
// and the strokes are left to the relief.
func (e *evaluation) killReadyFigures(p *page, s *standing) {
	if !e.sections[s.i].rig {
		return
	}
	p.group = "Kill sheet stands on"
	k := s.e.killOf(s.i)
	p.take(s, nowFigure{"slow", "Slow pressure", "", "control.kill.slow"})
	if slow, ok := p.sheet.Find("handover.slow"); ok && slow.OK {
		if s.worst(model.RuleSlowRateMud) > OK || s.worst(model.RuleSlowRateDepth) > OK {
			p.sheet.Figures[len(p.sheet.Figures)-1].Note += ", stale: record it anew"
		}
		e.slowRow(p, s, k)
	}
	p.take(s, nowFigure{"line", "Line friction", "", "control.line"})
	p.take(s, nowFigure{"trapped", "Trapped gas", "", "control.trapped"}, nowFigure{"trapped.surface", "", "at surface", "control.trapped.surface"})
}

// slowRow adds in what mud and with the bit where the slow pressure was recorded.
func (e *evaluation) slowRow(p *page, s *standing, k *killing) {
	if k.slowRow == 0 {
		return
	}
	row := &e.plan.Sections[s.i].SlowRates[k.slowRow-1]
	recorded := func(w *Working) { w.Formula, w.Source = "as recorded", "the plan" }
	p.also("handover.slow.mud", "in mud", quantity.Density, k.slowMud, gap{}, recorded)
	if row.Depth.IsSet() {
		p.also("handover.slow.bit", "bit at", quantity.Length, row.Depth.SI, gap{}, recorded)
	}
}
