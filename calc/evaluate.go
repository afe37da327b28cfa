// Package calc computes everything that follows from a plan: the figures of the well and of each hole section, the
// findings, and the geometry that a schematic draws.
//
// Start with [Evaluate]; [Explain] shows how one figure was got. The package is pure: the same plan gives the same
// result, and nothing here reads a file, a clock or a global, or knows a screen. The physics lies in the small packages
// below, which know no plan. What is too costly for every keystroke is worked out when asked for: [Play], [Charts],
// [Proposals].
//
// Nothing here says that a well is safe: a finding says which limit was compared.
package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/trajectory"
	"borewalk/model"
)

// Result is everything that a plan gives.
type Result struct {
	Well     Sheet
	Sections []Sheet
	Findings []Finding
	Datum    Datum
	Sketch   Sketch
	Window   []WindowPoint
	Traces   []Trace
}

// Sheet returns the figures of a section, or of the well for section -1.
func (r *Result) Sheet(section int) *Sheet {
	if section < 0 || section >= len(r.Sections) {
		return &r.Well
	}
	return &r.Sections[section]
}

// evaluation is the state of one run over a plan.
type evaluation struct {
	plan     *model.Plan
	result   *Result
	datum    Datum
	gaps     datumGaps
	path     trajectory.Path
	pathGap  gap
	window   window
	flows    []flowLaw // how the fluid of each section flows
	pumps    []pumpGroup
	pumpGap  gap
	sections []hole
	strings  []casing
	tallies  []stringTally // of the sections whose casing page is worked out
	drills   []drillString
	bores    []bore.Profile // the outer bores of each section, once they are known
	cements  []*cementJob   // of each section, as they are asked for
	worked   []*workedJob   // likewise, with what they come to
	explain  *explanation
}

// explanation is the wish for the working of one figure.
type explanation struct {
	section int
	key     string
	working Working
	found   bool
}

// Evaluate computes a plan. It never fails: what cannot be computed is blank, and the figure says which entry to mend.
func Evaluate(plan *model.Plan) *Result { return run(plan, nil).result }

// Explain returns the working of the figure with the given key in the sheet of a section, or of the well for section
// -1, and whether there is such a figure.
func Explain(plan *model.Plan, section int, key string) (Working, bool) {
	wish := explanation{section: section, key: key}
	run(plan, &wish)
	return wish.working, wish.found
}

func run(plan *model.Plan, wish *explanation) *evaluation {
	e := &evaluation{plan: plan, result: &Result{}, explain: wish}
	e.result.Sections = make([]Sheet, len(plan.Sections))
	e.result.Findings = make([]Finding, 0, findingsPerSection*len(plan.Sections))
	for i := range e.result.Sections {
		e.result.Sections[i].Figures = make([]Figure, 0, figuresPerSection)
	}
	e.readDatum()
	e.readPath()
	e.readWindow()
	e.readPumps()
	e.readFlows()
	e.readHoles()
	e.readCasings()
	e.readDrillStrings()
	if len(plan.Sections) == 0 {
		e.fault(gap{"section", "the plan has no hole section: add one on the hole page"})
	}
	e.wellPage()
	for i := range plan.Sections {
		e.holePage(i)
		e.stringPage(i)
		e.mudPage(i)
		e.hydraulicsPage(i)
		e.casingPage(i)
		e.cementPage(i)
		e.plugFigures(i)
	}
	e.result.Datum = e.datum
	e.result.Sketch = e.sketch()
	e.result.Window = e.windowPoints()
	e.result.Traces = e.traces()
	return e
}

// About how many figures and findings a section has; more only cost an allocation.
const (
	figuresPerSection  = 440
	findingsPerSection = 50
)

// page returns a collector for one topic of a section's sheet, or of the well's for section -1.
func (e *evaluation) page(section int, topic model.Topic) *page {
	return &page{e: e, sheet: e.result.Sheet(section), section: section, topic: topic}
}
