package model

import "borewalk/model/quantity"

// Where returns go.
const (
	ToSeabed = "seabed"
	ToRig    = "rig"
)

// Which depth of a section is given; the other follows.
const (
	ByTD   = "TD"
	ByShoe = "shoe"
)

// What a section is finished with.
const (
	WithCasing = "casing"
	WithLiner  = "liner"
	OpenHole   = "open hole"
)

func sectionGroup() *Group {
	fields := append(holeFields(), mudFields()...)
	fields = append(fields, hydraulicsFields()...)
	fields = append(fields, casingFields()...)
	fields = append(fields, cementFields()...)
	return list("section", "Section", "A hole section and the string set in it.", TopicHole, nil,
		func(p *Plan, _ Place) *[]Section { return &p.Sections }, fields...)
}

// cased is the reason why casing fields of an open-hole section do not count.
func cased(_ *Plan, s *Section) string {
	if s.Completion == OpenHole {
		return "the section stays open hole"
	}
	return ""
}

func holeFields() []declaration[Section] {
	type d = declaration[Section]
	return []d{
		{Key: "name", Label: "Section", Name: "Section name", Topic: TopicHole, Type: TextField, Help: "Such as: 17 1/2 in hole, 13 5/8 in casing.",
			At: func(s *Section) any { return &s.Name }},
		{Key: "returns", Label: "Returns to", Name: "Returns to", Topic: TopicHole, Choices: []string{ToSeabed, ToRig}, Default: ToRig,
			Help: "Seabed: no riser, the sea stands above the mudline. Rig: through BOP and riser.", At: func(s *Section) any { return &s.Returns }},
		{Key: "hole", Label: "Hole size", Name: "Hole size, opened", Topic: TopicHole, Kind: quantity.Diameter, Range: "3 in to 60 in", Required: true,
			Help: "Full size of the hole, after the opener if there is one. Enter opens the catalogue of bits and openers.", At: func(s *Section) any { return &s.Hole }},
		{Key: "bit", Label: "Bit", Name: "Bit or pilot bit", Topic: TopicHole, Kind: quantity.Diameter, Range: "3 in to 60 in",
			Help: "Blank: the bit drills the full size. A smaller bit drills a pilot that an opener or underreamer enlarges. Enter: bits that pass.",
			At:   func(s *Section) any { return &s.Bit }},
		{Key: "opener_behind", Label: "Opener behind", Name: "Opener behind the bit", Topic: TopicHole, Kind: quantity.Length, Range: "0 m to 80 m",
			Help: "From the bit face to the cutters of the opener or underreamer: full-size hole ends this much above the bit.",
			At:   func(s *Section) any { return &s.OpenerBehind },
			When: func(_ *Plan, s *Section) string {
				if !s.Bit.IsSet() || s.Bit.SI >= s.Hole.SI {
					return "the bit drills the full size"
				}
				return ""
			}},
		{Key: "depth_by", Label: "Depth fixed by", Name: "Depth fixed by", Topic: TopicHole, Choices: []string{ByTD, ByShoe}, Default: ByTD,
			Help: "TD: the hole's depth is given and the shoe follows. Shoe: the shoe is given and the hole's depth follows.",
			At:   func(s *Section) any { return &s.DepthBy }, When: cased},
		{Key: "td", Moves: WithWell, Label: "Hole TD", Name: "Total depth of the bit, along hole", Topic: TopicHole, Kind: quantity.Length, Range: "1 m to 15000 m",
			Required: true, Help: "Depth of the bit from RKB. The shoe follows: TD less the opener's distance less the rathole.",
			At: func(s *Section) any { return &s.TD },
			When: func(_ *Plan, s *Section) string {
				if s.DepthBy == ByShoe && s.Completion != OpenHole {
					return "follows from the shoe and the rathole"
				}
				return ""
			}},
		{Key: "shoe", Moves: WithWell, Label: "Shoe", Name: "Shoe depth, along hole", Topic: TopicHole, Kind: quantity.Length, Range: "1 m to 15000 m",
			Required: true, Help: "From RKB. The hole's TD follows: shoe plus the rathole plus the opener's distance.",
			At: func(s *Section) any { return &s.Shoe },
			When: func(_ *Plan, s *Section) string {
				if s.Completion == OpenHole {
					return "the section stays open hole"
				}
				if s.DepthBy != ByShoe {
					return "follows from the hole's TD and the rathole"
				}
				return ""
			}},
		{Key: "rathole", Label: "Rathole", Name: "Rathole below the shoe, full size", Topic: TopicHole, Kind: quantity.Length, Range: "0 m to 200 m",
			Default: "5 m", Required: true, When: cased,
			Help: "Full-size hole below the shoe, so that the hanger lands before the shoe touches bottom. The pilot below it comes on top.",
			At:   func(s *Section) any { return &s.Rathole }},
		{Key: "washout", Label: "Washout", Name: "Washout, open-hole volume over gauge", Topic: TopicHole, Kind: quantity.Ratio, Range: "0 % to 400 %",
			Help: "How much more the open hole holds than a gauge hole; from a fluid caliper, or as offsets show. A caliper goes before it where there is one. Blank: gauge.",
			At:   func(s *Section) any { return &s.Washout }},
	}
}

func caliperGroup(section *Group) *Group {
	type d = declaration[CaliperRow]
	return list("caliper", "Caliper", "Measured hole: the mean diameter from this depth down to the next row's.", TopicHole, section,
		func(p *Plan, at Place) *[]CaliperRow { return &p.Sections[at.Outer].Caliper },
		d{Key: "depth", Brief: true, Moves: WithWell, Label: "From", Name: "From depth, along hole", Topic: TopicHole, Kind: quantity.Length, Range: "1 m to 15000 m", Required: true,
			Help: "Along hole from RKB; down to the next row, the last to TD. Above the first the washout counts.", At: func(c *CaliperRow) any { return &c.Depth }},
		d{Key: "diameter", Brief: true, Label: "Mean diameter", Name: "Mean diameter of the hole", Topic: TopicHole, Kind: quantity.Diameter, Range: "3 in to 80 in", Required: true,
			Help: "That gives the hole's volume: the root of the mean square of the caliper.", At: func(c *CaliperRow) any { return &c.Diameter }},
	)
}
