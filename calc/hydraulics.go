package calc

import "borewalk/model"

// hydraulicsPage adds what the section's flow needs and does, with the bit at TD.
func (e *evaluation) hydraulicsPage(i int) {
	e.judgeFlow(i)
	c := e.circulating(i)
	e.noteHydraulics(i, c)
	p := e.page(i, model.TopicHydraulics)
	limits := e.flowLimits(i, c)
	p.group = "Circulating, bit at TD"
	e.standpipeFigure(p, c)
	e.ecdMargin(i, p, c)
	flowEnds(p, limits)
	e.ecdFigures(i, p, c)
	limitFigures(p, limits)
	e.cleaningFigures(i, p)
	e.partFlowFigures(i, p, c)
	e.bitFigures(i, p, c)
	e.pumpPressureFigures(i, p, c)
	e.annulusFlowFigures(p, c)
	e.judgeTools(i, c)
	e.swabFigures(i)
}

// noteHydraulics says which entry keeps the pressures from being worked out, where no other page does.
func (e *evaluation) noteHydraulics(i int, c *circulation) {
	if c.loop.noAnnulus.open() || !c.loop.noString.open() {
		return
	}
	missing := c.loop.noString
	if c.loop.bit.missing == missing && e.plan.Sections[i].Nozzles.Sizes == "" {
		e.note(i, Caution, gap{missing.path, "no standpipe pressure: " + missing.why})
		return
	}
	e.fault(missing)
}

// judgeFlow compares what the section pumps with what the pumps can give.
func (e *evaluation) judgeFlow(i int) {
	s := &e.plan.Sections[i]
	if missing := e.flowGap(i); missing.open() {
		e.note(i, Caution, gap{missing.path, "no flow is given: times are blank"})
		return
	}
	if e.pumpGap.open() {
		return
	}
	wanted := s.Flow.SI
	if e.sections[i].rig {
		wanted += s.Booster.SI
	}
	e.judge(model.RulePumpsGiveFlow, i, e.mostFlow()-wanted, "Pump output left over flow and booster", "", 0, model.PathOf(i, "flow"))
}
