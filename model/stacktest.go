package model

import "borewalk/model/quantity"

// What the pressures of a BOP test are taken from.
const (
	TestToRating      = "rating"
	TestToAnticipated = "anticipated pressure"
)

// StackTest says to what the BOP is tested for a section, and when it was last.
type StackTest struct {
	Basis, Tested, ShearTested, Functioned, Until string
	Low, Rams, Annular, Hold                      quantity.Value
	Fluid, GasGradient                            quantity.Value
}

func stackTestGroup(section *Group) *Group {
	type d = declaration[StackTest]
	const day = "As year-month-day, 2026-11-29. "
	g := part("bop_test", "BOP test", "To what the BOP is tested for this hole, and when it was last.", TopicControl, section, func(s *Section) *StackTest { return &s.StackTest },
		d{Key: "basis", Label: "Tested to", Name: "What the test pressures are taken from", Topic: TopicControl, Choices: []string{TestToAnticipated, TestToRating}, Default: TestToAnticipated,
			Help: "Anticipated: highest pressure at the wellhead and 500 psi. Rating: of the rams. The regulator's approval decides.", At: func(t *StackTest) any { return &t.Basis }},
		d{Key: "rams", Label: "Rams, high", Name: "High test of the rams", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 1400 bar",
			Help: "What a shut ram bears from below. Blank: what the basis asks for.", At: func(t *StackTest) any { return &t.Rams }},
		d{Key: "annular", Label: "Annular, high", Name: "High test of the annular", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 1400 bar",
			Help: "What it bears from below when shut. Blank: 70 % of its rating, and no more than the rams' test where the rules in force ask for no share of it.", At: func(t *StackTest) any { return &t.Annular }},
		d{Key: "low", Label: "Low test", Name: "Low test", Topic: TopicControl, Kind: quantity.Pressure, Range: "5 bar to 50 bar", Default: "250 psi",
			Help: "First, before the high one. Blank: 250 psi.", At: func(t *StackTest) any { return &t.Low }},
		d{Key: "hold", Label: "Held for", Name: "Time that each test is held", Topic: TopicControl, Kind: quantity.Time, Range: "1 min to 60 min", Default: "5 min",
			Help: "Blank: 5 min.", At: func(t *StackTest) any { return &t.Hold }},
		d{Key: "fluid", Label: "Test fluid", Name: "Density of the test fluid", Topic: TopicControl, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "In the line from the rig to the stack. Blank: the section's mud.", At: func(t *StackTest) any { return &t.Fluid }},
		d{Key: "gas", Label: "Gas gradient", Name: "Gradient of gas for the anticipated pressure", Topic: TopicControl, Kind: quantity.Gradient, Range: "0.2 kPa/m to 8 kPa/m",
			Help: "From TD to the wellhead. Blank: that of the hole's loads on the casing page.", At: func(t *StackTest) any { return &t.GasGradient }},
		d{Key: "tested", Label: "BOP tested", Name: "Date of the last BOP pressure test", Topic: TopicControl, Type: TextField, Help: day + "Blank: not compared.", At: func(t *StackTest) any { return &t.Tested }},
		d{Key: "shear_tested", Label: "Shears tested", Name: "Date of the last blind shear ram test", Topic: TopicControl, Type: TextField, Help: day + "Blank: not compared.", At: func(t *StackTest) any { return &t.ShearTested }},
		d{Key: "functioned", Label: "Functioned", Name: "Date of the last function test", Topic: TopicControl, Type: TextField, Help: day + "Blank: not compared.", At: func(t *StackTest) any { return &t.Functioned }},
		d{Key: "until", Label: "Looked at on", Name: "Day for which the tests are looked at", Topic: TopicControl, Type: TextField,
			Help: day + "Today, or the day on which the section is to be cased. Blank: the date on the well page.", At: func(t *StackTest) any { return &t.Until }},
	)
	onlyBehindStack(g)
	return g
}
