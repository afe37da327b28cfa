package model

import "borewalk/model/quantity"

func hydraulicsFields() []declaration[Section] {
	type d = declaration[Section]
	return []d{
		{Key: "flow", Label: "Flow", Name: "Flow through the bit", Topic: TopicHydraulics, Kind: quantity.Flow, Range: "0.1 m3/min to 10 m3/min",
			Help: "Planned rate; times and strokes per minute follow.", At: func(s *Section) any { return &s.Flow }},
		{Key: "booster", Label: "Booster", Name: "Flow down the booster line", Topic: TopicHydraulics, Kind: quantity.Flow, Range: "0 m3/min to 8 m3/min",
			Help: "Pumped into the foot of the riser. Blank: none.", At: func(s *Section) any { return &s.Booster },
			When: func(_ *Plan, s *Section) string {
				if s.Returns != ToRig {
					return "there is no riser"
				}
				return ""
			}},
		{Key: "rop", Label: "ROP", Name: "Rate of penetration", Topic: TopicHydraulics, Kind: quantity.ROP, Range: "0.5 m/h to 300 m/h", Default: "20 m/h",
			Help: "Expected mean while drilling; what is pumped and lost by time follows.", At: func(s *Section) any { return &s.ROP }},
		{Key: "cuttings", Label: "Cuttings", Name: "Density that cuttings add in the annulus", Topic: TopicHydraulics, Kind: quantity.Density, Range: "0 kg/m3 to 200 kg/m3",
			Help: "On top of the mud, from bit to where returns leave. Blank: what the rate of penetration makes and the flow carries; without that rate 10 kg/m3, common practice.", At: func(s *Section) any { return &s.Cuttings }},
		{Key: "standpipe", Label: "Standpipe wanted", Name: "Standpipe pressure wanted", Topic: TopicHydraulics, Kind: quantity.Pressure, Range: "20 bar to 600 bar",
			Help: "For g, which looks for nozzles that give it. Blank: none are looked for.", At: func(s *Section) any { return &s.Standpipe }},
	}
}

// Nozzles are those of a section's bit: listed, or as one area.
type Nozzles struct {
	Sizes                   string
	Area, Discharge, Number quantity.Value
}

func nozzleGroup(section *Group) *Group {
	type d = declaration[Nozzles]
	listed := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Nozzles.Sizes != "" {
			return "the nozzles are listed"
		}
		return ""
	}
	return part("nozzles", "Nozzles", "Nozzles of the bit.", TopicHydraulics, section, func(s *Section) *Nozzles { return &s.Nozzles },
		d{Key: "sizes", Label: "Nozzles", Name: "Nozzles, number x size in 32nds of an inch", Topic: TopicHydraulics, Type: TextField,
			Help: "Such as 3x16 2x18. Blank: the area below counts.", At: func(n *Nozzles) any { return &n.Sizes }},
		d{Key: "area", Label: "TFA", Name: "Total flow area of the nozzles", Topic: TopicHydraulics, Kind: quantity.Area, Range: "0.05 in2 to 10 in2",
			Inside: listed, Help: "In place of a list of nozzles.", At: func(n *Nozzles) any { return &n.Area }},
		d{Key: "number", Label: "Nozzles in bit", Name: "Number of nozzles in the bit", Topic: TopicHydraulics, Kind: quantity.Count, Range: "1 to 20",
			Inside: listed, Help: "For g, which looks for nozzles. Blank: as many as are listed.", At: func(n *Nozzles) any { return &n.Number }},
		d{Key: "discharge", Label: "Discharge", Name: "Coefficient of discharge of the nozzles", Topic: TopicHydraulics, Kind: quantity.Number, Range: "0.7 to 1.1",
			Help: "Blank: 0.95, the usual one.", At: func(n *Nozzles) any { return &n.Discharge }},
	)
}
