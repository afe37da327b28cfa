package model

import "borewalk/model/quantity"

// What counts as weight for the bit.
const (
	CountCollars   = "collars"
	CountWithHeavy = "with heavy-weight"
)

// StringLoads is what the drill string of a section is to bear.
type StringLoads struct {
	BitWeight, Overpull, Torque quantity.Value
	Counted                     string
}

func stringLoadsGroup(section *Group) *Group {
	type d = declaration[StringLoads]
	return part("string_loads", "Loads on the string", "What the string is to bear besides its weight.", TopicString, section,
		func(s *Section) *StringLoads { return &s.StringLoads },
		d{Key: "bit_weight", Label: "Weight on bit", Name: "Weight on bit wanted", Topic: TopicString, Kind: quantity.Force, Range: "0 tf to 60 tf", Default: "5 tf",
			Help: "Gives the neutral point, and tension and torque while drilling. Blank: none.", At: func(l *StringLoads) any { return &l.BitWeight }},
		d{Key: "counted", Label: "Weight from", Name: "What gives weight to the bit", Topic: TopicString, Choices: []string{CountCollars, CountWithHeavy}, Default: CountCollars,
			Help: "All but drill pipe gives weight, heavy-weight only if it is counted. The share allowed is a limit on the well page.", At: func(l *StringLoads) any { return &l.Counted }},
		d{Key: "overpull", Label: "Overpull", Name: "Overpull planned", Topic: TopicString, Kind: quantity.Force, Range: "0 tf to 300 tf",
			Help: "Pull over the hanging weight with which the string is compared, and over the pick-up weight. Blank: none.", At: func(l *StringLoads) any { return &l.Overpull }},
		d{Key: "torque", Label: "Torque", Name: "Greatest torque at the rotary", Topic: TopicString, Kind: quantity.Torque, Range: "0 kN-m to 200 kN-m",
			Help: "Compared with what the pipe leaves under its pull. Blank: not compared.", At: func(l *StringLoads) any { return &l.Torque }},
	)
}
