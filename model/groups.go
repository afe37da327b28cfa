package model

import "sync"

// Groups returns every group of fields in the order in which the file holds them. The slice is shared: it must not be
// changed.
func Groups() []*Group { return groups() }

var groups = sync.OnceValue(func() []*Group {
	rig := rigGroup()
	pumpGroup(rig)
	ramGroup(rig)
	pipePupGroup(rig)
	linerGroup(rig)
	trajectory := trajectoryGroup()
	surveyGroup(trajectory)
	prognosis := prognosisGroup()
	windowGroup(prognosis)
	status := statusGroup()
	abnormalGroup(status)
	section := sectionGroup()
	recipeGroup(section)
	treatmentGroup(section)
	riserlessGroup(section)
	volumesGroup(section)
	casingGroup(section)
	tallyGroup(section)
	landingGroup(section)
	pupGroup(section)
	jointGroup(section)
	downholeGroup(section)
	circulatingGroup(section)
	loadsGroup(section)
	holeLoadsGroup(section)
	centringGroup(section)
	rheologyGroup(section)
	stringGroup(section)
	tripGroup(section)
	swabGroup(section)
	dragGroup(section)
	dragReadingGroup(section)
	stringLoadsGroup(section)
	spaceOutGroup(section)
	nozzleGroup(section)
	cleaningGroup(section)
	spacerGroup(section)
	slurryGroup(section)
	pumpingGroup(section)
	cementFluidsGroup(section)
	cementPlugGroup(section)
	shallowGroup(section)
	shoeTestGroup(section)
	testPointGroup(section)
	kickGroup(section)
	rangesGroup(section)
	killGroup(section)
	slowRateGroup(section)
	stackTestGroup(section)
	caliperGroup(section)
	stepGroup(section)
	ratesGroup(section)
	builtGroup(section)
	builtSlurryGroup(section)
	useGroup(section)
	doneGroup(section)
	return []*Group{
		wellGroup(), unitsGroup(), wellheadGroup(), rig, trajectory, prognosis, formationGroup(), limitsGroup(), seatsGroup(), scheduleGroup(), stockGroup(),
		status, handoverGroup(), section, trialGroup(),
	}
})

// SectionGroup returns the list of hole sections.
func SectionGroup() *Group { return sectionList() }

// JointList returns the list of measured joints within a section.
func JointList() *Group { return jointList() }

// TestPointList returns the list of readings of a shoe test within a section.
func TestPointList() *Group { return testPointList() }

// SlowRateList returns the list of slow circulating pressures of a section.
func SlowRateList() *Group { return slowRateList() }

var (
	sectionList   = sync.OnceValue(func() *Group { return atTop("section") })
	jointList     = sync.OnceValue(func() *Group { return within("joint") })
	testPointList = sync.OnceValue(func() *Group { return within("test_point") })
	handoverList  = sync.OnceValue(func() *Group { return atTop("handover") })
	statusTable   = sync.OnceValue(func() *Group { return atTop("status") })
	slowRateList  = sync.OnceValue(func() *Group { return within("slow_rate") })
	builtSlurries = sync.OnceValue(func() *Group { return within("built_slurry") })
	builtTable    = sync.OnceValue(func() *Group { return within("built") })
)

// HandoverList returns the list of handovers.
func HandoverList() *Group { return handoverList() }

// StatusGroup returns the table of how the well stands.
func StatusGroup() *Group { return statusTable() }

// atTop returns the group of a name at the top of the file.
func atTop(name string) *Group {
	for _, g := range Groups() {
		if g.Name == name {
			return g
		}
	}
	panic("model: internal error: a plan has no " + name)
}

// BuiltGroup returns the table of what a section came to be.
func BuiltGroup() *Group { return builtTable() }

// BuiltSlurryList returns the list of what was pumped of each slurry of a section.
func BuiltSlurryList() *Group { return builtSlurries() }

// within returns the list or the table of a name within a section.
func within(name string) *Group {
	for _, g := range SectionGroup().Lists {
		if g.Name == name {
			return g
		}
	}
	panic("model: internal error: a section has no list or table of " + name)
}

// Walk calls visit for every group at every place of the plan, outer rows before the rows within them, until visit
// returns false.
func Walk(plan *Plan, visit func(g *Group, at Place) bool) { walk(plan, Groups(), Place{}, visit) }

func walk(plan *Plan, groups []*Group, outer Place, visit func(*Group, Place) bool) bool {
	for _, g := range groups {
		for i := range g.Len(plan, outer) {
			at := outer
			if g.List {
				at = g.At(outer, i)
			}
			if !visit(g, at) || !walk(plan, g.Lists, at, visit) {
				return false
			}
		}
	}
	return true
}
