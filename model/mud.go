package model

import "borewalk/model/quantity"

func mudFields() []declaration[Section] {
	type d = declaration[Section]
	riserless := func(_ *Plan, s *Section) string {
		if s.Returns != ToSeabed {
			return "counts without a riser only"
		}
		return ""
	}
	spotted := func(p *Plan, s *Section) string {
		if why := riserless(p, s); why != "" {
			return why
		}
		if !s.SpotDensity.IsSet() {
			return "no fluid is spotted"
		}
		return ""
	}
	return []d{
		{Key: "fluid", Label: "Fluid", Name: "Drilling fluid", Topic: TopicMud, Type: TextField, Help: "What the section is drilled with.",
			At: func(s *Section) any { return &s.Fluid }},
		{Key: "density", Label: "Mud density", Name: "Mud density", Topic: TopicMud, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Required: true,
			Help: "Static density of the drilling fluid; cuttings and friction come on top.", At: func(s *Section) any { return &s.Density }},
		{Key: "pv", Label: "PV", Name: "Plastic viscosity", Topic: TopicMud, Kind: quantity.Viscosity, Range: "0.5 cP to 200 cP",
			Help: "The 600 less the 300 reading; 1 degree is 1 cP.", At: func(s *Section) any { return &s.PV }, When: byPVYP},
		{Key: "yp", Label: "YP", Name: "Yield point", Topic: TopicMud, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 150 lbf/100ft2",
			Help: "The 300 reading less PV; 1 degree is 1 lbf/100ft2.", At: func(s *Section) any { return &s.YP }, When: byPVYP},
		{Key: "weighted_from", Moves: WithWell, Label: "Weighted from", Name: "Weighted mud from depth", Topic: TopicMud, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Riserless: from this depth of the bit the hole is drilled with weighted mud that does not come back. Blank: not used.",
			At:   func(s *Section) any { return &s.WeightedFrom }, When: riserless},
		{Key: "weighted_density", Label: "Weighted mud", Name: "Density of the weighted mud", Topic: TopicMud, Kind: quantity.Density, Range: "1 sg to 2.6 sg",
			Help: "Riserless pump-and-dump mud.", At: func(s *Section) any { return &s.WeightedDensity }, When: riserless},
		{Key: "spot_density", Label: "Spot fluid", Name: "Density of the fluid spotted at TD", Topic: TopicMud, Kind: quantity.Density, Range: "1 sg to 2.6 sg",
			Help: "Riserless: what the hole is filled with before the string is run. Blank: the drilling fluid stays.",
			At:   func(s *Section) any { return &s.SpotDensity }, When: riserless},
		{Key: "spot_pv", Label: "Spot PV", Name: "Plastic viscosity of the fluid spotted at TD", Topic: TopicMud, Kind: quantity.Viscosity, Range: "0.5 cP to 200 cP",
			Help: "What the casing is run and cemented in. Blank: the drilling fluid's.", At: func(s *Section) any { return &s.SpotPV }, When: spotted},
		{Key: "spot_yp", Label: "Spot YP", Name: "Yield point of the fluid spotted at TD", Topic: TopicMud, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 150 lbf/100ft2",
			Help: "What the casing is run and cemented in. Blank: the drilling fluid's.", At: func(s *Section) any { return &s.SpotYP }, When: spotted},
		{Key: "leak_off", Label: "Shoe test", Name: "Shoe test at the last shoe, planned", Topic: TopicControl, Kind: quantity.EMW, Range: "0.9 sg to 3 sg",
			Help: "Planned leak-off or integrity test at the shoe above this section; one that is measured, below, counts in its place. Blank: the fracture curve alone limits the mud.",
			At:   func(s *Section) any { return &s.LeakOff }},
	}
}
