package calc

import (
	"borewalk/model"
)

// controlPage adds what a section's shoe stands, what a kick may be, and how it is killed; without a riser what a shallow flow
// takes.
func (e *evaluation) controlPage(i int) {
	p := e.page(i, model.TopicControl)
	e.judgeRanges(i)
	if !e.sections[i].rig {
		e.shallowFigures(i, p)
		return
	}
	if _, _, ok := e.lastShoe(i); ok {
		e.shoeTestFigures(i, p)
		e.limitFigures(i, p)
		e.toleranceFigures(i, p)
		e.eachLimit(i, p)
	}
	e.killSheetFigures(i, p)
	e.tripMarginFigures(i, p)
	e.riserLostFigures(i, p)
	e.stackTestFigures(i, p)
}
