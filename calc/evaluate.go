// Package calc computes everything that follows from a plan: the figures of the well and of each hole section, the
// findings, and the geometry that a schematic draws.
//
// Start with [Evaluate]; [Explain] shows how one figure was got. The package is pure: the same plan gives the same
// result, and nothing here reads a file, a clock or a global, or knows a screen. The physics lies in the small packages
// below, which know no plan. What is too costly for every keystroke is worked out when asked for: [Play], [Charts],
// [Proposals], [Sweep].
//
// Nothing here says that a well is safe: a finding says which limit was compared.
package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/trajectory"
	"borewalk/model"
	"borewalk/model/quantity"
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
	Steps    [][]Step  // the operations of each section, in order
	Present  []Finding // of the section in work with its hole as deep as it is now
	Seats    []Seat    // that the prognosis would allow, beside the plan's own
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
	plan         *model.Plan     // that counts: as built, where it is
	given        *model.Plan     // as entered
	before       *evaluation     // over the plan as planned, once it is asked for
	units        quantity.System // that the plan shows, for what is rounded as it is quoted
	result       *Result
	datum        Datum
	gaps         datumGaps
	heat         heat
	ocean        ocean
	path         trajectory.Path
	pathGap      gap
	bends        []trajectory.Point // the stations of the path
	window       window
	flows        []flowLaw // how the fluid of each section flows
	pumps        []pumpGroup
	pumpGap      gap
	sections     []hole
	strings      []casing
	tests        []shoeTest  // of the shoe above each section
	lines        []*killLine // of each section, as they are asked for
	kills        []*killing  // likewise
	rubs         []*rubbingAnnulus
	tallies      []*stringTally // of each section, as they are asked for
	drills       []drillString
	bores        []bore.Profile      // the outer bores of each section, once they are known
	cements      []*cementJob        // of each section, as they are asked for
	worked       []*workedJob        // likewise, with what they come to
	moves        []*moving           // the drill strings on their way, likewise
	loops        []*loop             // the ways of the fluid, likewise
	circulations []*circulation      // likewise, at the planned flow
	rounds       []*drilledRound     // likewise, with the temperatures
	fitted       []liner             // the liners, once they are asked for, with those on board
	poured       *poured             // a cement job pumped as another hole was to take it; nil for as planned
	stepTexts    map[string]stepText // once they are asked for
	operations   []*operations       // of each section, as they are asked for
	clocked      *timeline           // of the whole well, once it is asked for
	taken        [][]stockUse        // of the stocks by each section, once they are asked for
	explain      *explanation
}

// explanation is the wish for the workings of figures of one sheet, and what has come of it.
type explanation struct {
	section  int
	wants    func(key string) bool
	workings []Working
}

// Evaluate computes a plan. It never fails: what cannot be computed is blank, and the figure says which entry to mend.
func Evaluate(plan *model.Plan) *Result { return run(plan).result }

// Explain returns the working of the figure with the given key in the sheet of a section, or of the well for section
// -1, and whether there is such a figure.
func Explain(plan *model.Plan, section int, key string) (Working, bool) {
	wish := explanation{section: section, wants: func(k string) bool { return k == key }}
	runPages(plan, section, &wish)
	if len(wish.workings) == 0 {
		return Working{}, false
	}
	return wish.workings[0], true
}

// run works out everything.
func run(plan *model.Plan) *evaluation {
	e := begin(plan, nil, findingsPerSection*len(plan.Sections))
	e.wellPage()
	for i := range plan.Sections {
		e.sectionPages(i)
	}
	for i := range plan.Sections {
		e.timePage(i)
	}
	e.handoverPage()
	e.result.Datum = e.datum
	e.result.Sketch = e.sketch()
	e.result.Window = e.windowPoints()
	e.result.Traces = e.traces()
	e.sendToActuals()
	return e
}

// runPages works out the pages of one section alone, or the well's for section -1: its sheet is what [Evaluate] gives, at a
// fraction of the cost. Other sheets stay empty, and what their pages find is missing, even where it is about this section.
func runPages(plan *model.Plan, section int, wish *explanation) *evaluation {
	e := begin(plan, wish, findingsPerSection)
	switch {
	case section < 0:
		e.wellPage()
		e.handoverPage()
	case section < len(plan.Sections):
		e.sectionPages(section)
		e.timePage(section)
	}
	e.sendToActuals()
	return e
}

// runTopic works out one topic of one section alone, or the well's page for section -1: its figures are those of [Evaluate].
func runTopic(plan *model.Plan, section int, topic model.Topic) *Sheet {
	e := begin(plan, nil, findingsPerSection)
	switch {
	case topic == model.TopicHandover:
		e.handoverPage()
		section = -1
	case section < 0:
		e.wellPage()
	case section < len(plan.Sections):
		e.topicPage(section, topic)
	}
	return e.result.Sheet(section)
}

// begin reads what all pages stand on. A page never needs that another page was worked out before it: what several of them
// use is worked out here, or by the first that asks.
func begin(plan *model.Plan, wish *explanation, findings int) *evaluation {
	given := plan
	plan = asBuilt(given)
	e := &evaluation{plan: plan, given: given, result: &Result{}, explain: wish}
	set, _ := quantity.ParseSet(plan.Well.UnitSet)
	e.units = plan.System(set, true)
	e.result.Sections = make([]Sheet, len(plan.Sections))
	e.result.Steps = make([][]Step, len(plan.Sections))
	e.result.Findings = make([]Finding, 0, findings)
	e.tallies = make([]*stringTally, len(plan.Sections))
	e.readDatum()
	e.readPath()
	e.bends = e.path.Stations()
	e.readWindow()
	e.readPumps()
	e.readFlows()
	e.readHoles()
	e.readCasings()
	e.readShoeTests()
	e.readDrillStrings()
	if len(plan.Sections) == 0 {
		e.fault(gap{"section", "the plan has no hole section: add one on the hole page"})
	}
	return e
}

// sectionPages works out the pages of one section, but for that of time, which looks at the operations of all.
func (e *evaluation) sectionPages(i int) {
	e.result.Sections[i].Figures = make([]Figure, 0, figuresPerSection)
	for _, topic := range model.Topics() {
		if topic != model.TopicTime {
			e.topicPage(i, topic)
		}
	}
}

// topicPage works out the page of one topic of one section.
func (e *evaluation) topicPage(i int, topic model.Topic) {
	switch topic {
	case model.TopicHole:
		e.holePage(i)
	case model.TopicString:
		e.stringPage(i)
	case model.TopicMud:
		e.mudPage(i)
	case model.TopicHydraulics:
		e.hydraulicsPage(i)
	case model.TopicCasing:
		e.casingPage(i)
	case model.TopicCement:
		e.cementPage(i)
		e.plugFigures(i)
	case model.TopicControl:
		e.controlPage(i)
	case model.TopicSteps:
		e.stepsPage(i)
	case model.TopicTime:
		e.timePage(i)
	case model.TopicBuilt:
		e.builtPage(i)
	}
}

// About how many figures and findings a section has; more only cost an allocation.
const (
	figuresPerSection  = 1250
	findingsPerSection = 110
)

// page returns a collector for one topic of a section's sheet, or of the well's for section -1.
func (e *evaluation) page(section int, topic model.Topic) *page {
	return &page{e: e, sheet: e.result.Sheet(section), section: section, topic: topic}
}
