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
		{Key: "rop", Label: "ROP", Name: "Rate of penetration", Topic: TopicHydraulics, Kind: quantity.ROP, Range: "0.5 m/h to 300 m/h",
			Help: "Expected mean while drilling; what is pumped and lost by time follows.", At: func(s *Section) any { return &s.ROP }},
	}
}
