package calc

import "borewalk/model"

// hydraulicsPage adds what the section's flow needs and does.
func (e *evaluation) hydraulicsPage(i int) {
	e.judgeFlow(i)
	e.swabFigures(i)
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
