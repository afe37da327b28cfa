package model

import "borewalk/model/quantity"

// Drag is what the friction of a section's drill string on its wall is worked out with.
type Drag struct {
	Riser, Cased, Open quantity.Value // friction factors
	BitTorque          quantity.Value
}

func dragGroup(section *Group) *Group {
	type d = declaration[Drag]
	const factor = "0 to 1"
	return part("drag", "Torque and drag", "Friction of the drill string on the wall, and what the bit takes.", TopicString, section,
		func(s *Section) *Drag { return &s.Drag },
		d{Key: "riser", Label: "Friction, riser", Name: "Friction factor in riser, BOP and wellhead", Topic: TopicString, Kind: quantity.Number, Range: factor, Default: "0.2",
			Help: "Blank: 0.2. Open water without a riser does not rub.", At: func(f *Drag) any { return &f.Riser },
			Inside: func(p *Plan, at Place) string {
				if p.Sections[at.Outer].Returns != ToRig {
					return "there is no riser"
				}
				return ""
			}},
		d{Key: "cased", Label: "Friction, cased", Name: "Friction factor in casing", Topic: TopicString, Kind: quantity.Number, Range: factor, Default: "0.2",
			Help: "Blank: 0.2, common practice in mud, from memory; match it to readings above the shoe.", At: func(f *Drag) any { return &f.Cased }},
		d{Key: "open", Label: "Friction, open", Name: "Friction factor in the open hole", Topic: TopicString, Kind: quantity.Number, Range: factor, Default: "0.3",
			Help: "Blank: 0.3, common practice in mud, from memory; a dirty hole shows a higher one. g works out what readings match.",
			At:   func(f *Drag) any { return &f.Open }},
		d{Key: "bit_torque", Label: "Bit torque", Name: "Torque at the bit while drilling", Topic: TopicString, Kind: quantity.Torque, Range: "0 kN-m to 100 kN-m",
			Help: "Blank: half the weight on bit times a third of the hole's size (Pessier and Fear 1992; the half from memory, more for a drag bit, less for a roller cone).",
			At:   func(f *Drag) any { return &f.BitTorque }},
	)
}

// DragReading is what the driller read with the bit at a depth: hook loads with blocks and top drive, torque off bottom.
type DragReading struct {
	Row
	Depth                      quantity.Value
	PickUp, SlackOff, Rotating quantity.Value
	Torque, Mud                quantity.Value
}

func dragReadingGroup(section *Group) *Group {
	type d = declaration[DragReading]
	const hook, load = "Hook load with blocks and top drive, pumps as always when it is read. ", "0 tf to 2500 tf"
	return list("drag_reading", "Drag reading", "What the gauges showed with the bit at a depth: compared with the friction factors entered.", TopicString, section,
		func(p *Plan, at Place) *[]DragReading { return &p.Sections[at.Outer].DragReadings },
		d{Key: "depth", Brief: true, Moves: WithWell, Label: "Bit at", Name: "Bit depth of the reading, along hole", Topic: TopicString, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Along hole from RKB. Without it the reading does not count.", At: func(r *DragReading) any { return &r.Depth }},
		d{Key: "pick_up", Brief: true, Label: "Picking up", Name: "Pick-up weight read", Topic: TopicString, Kind: quantity.Force, Range: load,
			Help: hook + "Moving up steadily, not at break-out.", At: func(r *DragReading) any { return &r.PickUp }},
		d{Key: "slack_off", Brief: true, Label: "Slacking off", Name: "Slack-off weight read", Topic: TopicString, Kind: quantity.Force, Range: load,
			Help: hook + "Moving down steadily, off bottom.", At: func(r *DragReading) any { return &r.SlackOff }},
		d{Key: "rotating", Label: "Rotating", Name: "Rotating weight read, off bottom", Topic: TopicString, Kind: quantity.Force, Range: load,
			Help: hook + "Friction does not change it: a difference is weight, buoyancy or the gauge.", At: func(r *DragReading) any { return &r.Rotating }},
		d{Key: "torque", Label: "Torque", Name: "Torque read, off bottom", Topic: TopicString, Kind: quantity.Torque, Range: "0 kN-m to 200 kN-m",
			Help: "Rotating off bottom at the usual speed.", At: func(r *DragReading) any { return &r.Torque }},
		d{Key: "mud", Label: "Mud then", Name: "Mud in the hole when it was read", Topic: TopicString, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "What floats the string in the reading. Blank: the section's mud at that depth.", At: func(r *DragReading) any { return &r.Mud }},
	)
}
