package model

import "borewalk/model/quantity"

// Shallow is a flow that a riserless section may meet, and with what it is met.
type Shallow struct {
	Sand, Base, Pressure quantity.Value
	Gas                  quantity.Value
	Pilot                quantity.Value
	Flow, Hours          quantity.Value
}

func shallowGroup(section *Group) *Group {
	type d = declaration[Shallow]
	g := part("shallow", "Shallow flow", "A shallow sand that may flow while there is no riser, and how it is met: never shut in.", TopicControl, section,
		func(s *Section) *Shallow { return &s.Shallow },
		d{Key: "sand", Moves: WithWell, Label: "Top of the sand", Name: "Top of the shallow sand, along hole", Topic: TopicControl, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Blank: nothing is looked at.", At: func(s *Shallow) any { return &s.Sand }},
		d{Key: "base", Label: "Gas column", Name: "Height of the gas column in the sand", Topic: TopicControl, Kind: quantity.Length, Range: "0 m to 500 m",
			Help: "From the gas-water contact up to the top. The sea's gradient counts at the contact. Blank: none.", At: func(s *Shallow) any { return &s.Base }},
		d{Key: "pressure", Label: "Sand's pressure", Name: "Pressure of the sand at its top, as EMW", Topic: TopicControl, Kind: quantity.EMW, Range: "0.9 sg to 2 sg",
			Help: "From RKB. Blank: the sea's gradient from MSL to the contact, less the gas above it.", At: func(s *Shallow) any { return &s.Pressure }},
		d{Key: "gas", Label: "Gas density", Name: "Density of the gas in the sand", Topic: TopicControl, Kind: quantity.Density, Range: "0.001 sg to 0.3 sg",
			Help: "Blank: by pressure and the seabed's temperature, gravity 0.6.", At: func(s *Shallow) any { return &s.Gas }},
		d{Key: "pilot", Label: "Pilot hole", Name: "Size of the pilot hole", Topic: TopicControl, Kind: quantity.Diameter, Range: "6 in to 20 in",
			Help: "Drilled through the sand first; 12 1/4 in or less where gas is possible. Blank: the section's hole as planned.", At: func(s *Shallow) any { return &s.Pilot }},
		d{Key: "flow", Label: "Kill flow", Name: "Flow of the dynamic kill", Topic: TopicControl, Kind: quantity.Flow, Range: "0.1 m3/min to 15 m3/min",
			Help: "Blank: all that the pumps give.", At: func(s *Shallow) any { return &s.Flow }},
		d{Key: "hours", Label: "Mud for", Name: "Time for which kill mud is to last", Topic: TopicControl, Kind: quantity.Hours, Range: "0 h to 48 h",
			Help: "At the kill flow. Blank: not compared.", At: func(s *Shallow) any { return &s.Hours }},
	)
	onlyThere(g, ToSeabed, "counts without a riser only")
	return g
}
