package model

import "borewalk/model/quantity"

// What a shoe test is taken to.
const (
	TestLeakOff   = "leak-off"
	TestIntegrity = "integrity"
)

// ShoeTest is the test of the shoe above a section as it was run; without a pressure, picked or in points, it has not been.
type ShoeTest struct {
	Kind, Date                     string
	Shoe, NewHole                  quantity.Value
	Mud, Gauge                     quantity.Value
	Pressure, Breaking             quantity.Value
	ShutIn, ShutInLast, ShutInTime quantity.Value
	Rate, Returned                 quantity.Value
	Least                          quantity.Value
	Within                         quantity.Value
}

func shoeTestGroup(section *Group) *Group {
	type d = declaration[ShoeTest]
	g := part("shoe_test", "Shoe test as run", "The leak-off or integrity test of the shoe above, as it was measured.", TopicControl, section,
		func(s *Section) *ShoeTest { return &s.ShoeTest },
		d{Key: "least", Label: "Least wanted", Name: "Least shoe test to go on with, as EMW", Topic: TopicControl, Kind: quantity.EMW, Range: "0.9 sg to 3 sg",
			Help: "Stop point of the plan: below it the office is called before drilling on. Blank: not compared.", At: func(t *ShoeTest) any { return &t.Least }},
		d{Key: "kind", Label: "Taken to", Name: "Shoe test taken to", Topic: TopicControl, Choices: []string{TestLeakOff, TestIntegrity}, Default: TestLeakOff,
			Help: "Integrity: stopped at a pressure without leak-off; it is what was held, not what the rock stands.", At: func(t *ShoeTest) any { return &t.Kind }},
		d{Key: "date", Label: "Date", Name: "Date of the shoe test", Topic: TopicControl, Type: TextField, Help: "Shown with the figures that come from it.", At: func(t *ShoeTest) any { return &t.Date }},
		d{Key: "pressure", Label: "Gauge, picked", Name: "Pressure picked at the gauge", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
			Help: "Where the line is left, rounded down; it overrules the points. Blank: picked from the points. With it the measured test replaces the planned one everywhere.",
			At:   func(t *ShoeTest) any { return &t.Pressure }},
		d{Key: "mud", Label: "Mud in the test", Name: "Density of the mud in the test", Topic: TopicControl, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "What really stood between gauge and shoe, even in and out. Blank: the mud density of the section, and that is marked.", At: func(t *ShoeTest) any { return &t.Mud }},
		d{Key: "gauge", Label: "Gauge above RKB", Name: "Height of the gauge above the rotary", Topic: TopicControl, Kind: quantity.Length, Range: "-60 m to 60 m",
			Help: "The column counts from the gauge; below the rotary it is negative. Blank: at the rotary.", At: func(t *ShoeTest) any { return &t.Gauge }},
		d{Key: "breaking", Label: "Lost to move mud", Name: "Pressure that only moves and breaks the mud", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 100 bar",
			Help: "Read at the test's rate before the hole is closed: friction and gel between gauge and shoe. Taken off. Blank: none.", At: func(t *ShoeTest) any { return &t.Breaking }},
		d{Key: "shoe", Moves: WithWell, Label: "Shoe then at", Name: "Depth of the shoe at the test, along hole", Topic: TopicControl, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Blank: the plan's. When the plan's shoe moves away from it, the test is marked as stale.", At: func(t *ShoeTest) any { return &t.Shoe }},
		d{Key: "new_hole", Label: "New hole", Name: "New hole drilled before the test", Topic: TopicControl, Kind: quantity.Length, Range: "0 m to 50 m",
			Help: "Below the shoe, rathole not counted. 3 to 5 m are common.", At: func(t *ShoeTest) any { return &t.NewHole }},
		d{Key: "rate", Label: "Pumped at", Name: "Rate of the shoe test", Topic: TopicControl, Kind: quantity.CementRate, Range: "5 L/min to 500 L/min",
			Help: "40 to 80 L/min are common: slow enough to see the line.", At: func(t *ShoeTest) any { return &t.Rate }},
		d{Key: "shut_in", Label: "Shut-in, first", Name: "Pressure just after the pump stopped", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
			Help: "Instantaneous shut-in at the gauge.", At: func(t *ShoeTest) any { return &t.ShutIn }},
		d{Key: "shut_in_last", Label: "Shut-in, last", Name: "Pressure at the end of the shut-in", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
			Help: "At the gauge, before it is bled off.", At: func(t *ShoeTest) any { return &t.ShutInLast }},
		d{Key: "shut_in_time", Label: "Shut in for", Name: "Time of the shut-in", Topic: TopicControl, Kind: quantity.Time, Range: "0 min to 120 min",
			Help: "About 10 min is common.", At: func(t *ShoeTest) any { return &t.ShutInTime }},
		d{Key: "returned", Label: "Bled back", Name: "Volume bled back", Topic: TopicControl, Kind: quantity.Volume, Range: "0 m3 to 20 m3",
			Help: "Compared with what was pumped.", At: func(t *ShoeTest) any { return &t.Returned }},
		d{Key: "gauge_within", Label: "Gauge good to", Name: "What the gauge is good to", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 20 bar",
			Help: "How far off a reading may be before it has left the line: half a division, or all of it where the needle moves. Blank: half a percent of the reading.", At: func(t *ShoeTest) any { return &t.Within }},
	)
	onlyBehindStack(g)
	return g
}

// TestPoint is one reading of a shoe test.
type TestPoint struct {
	Row
	Volume, Pressure quantity.Value
}

func testPointGroup(section *Group) *Group {
	type d = declaration[TestPoint]
	g := list("test_point", "Test point", "A reading of the shoe test, in the order of pumping. i reads them from a file.", TopicControl, section,
		func(p *Plan, at Place) *[]TestPoint { return &p.Sections[at.Outer].TestPoints },
		d{Key: "volume", Brief: true, Label: "Pumped", Name: "Volume pumped", Topic: TopicControl, Kind: quantity.Volume, Range: "0 m3 to 20 m3", Required: true,
			Help: "Since the hole was closed.", At: func(t *TestPoint) any { return &t.Volume }},
		d{Key: "pressure", Brief: true, Label: "Gauge", Name: "Pressure at the gauge", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 700 bar", Required: true,
			Help: "While pumping.", At: func(t *TestPoint) any { return &t.Pressure }},
	)
	onlyBehindStack(g)
	return g
}

// ReplacingTestPoints returns the changes that put other readings in place of those of a section's shoe test.
func ReplacingTestPoints(plan *Plan, section int, points []TestPoint) []Change {
	return replacing(TestPointList(), section, len(plan.Sections[section].TestPoints), points)
}
