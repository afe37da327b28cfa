package model

import "borewalk/model/quantity"

// Circulating says how mud goes round while its temperature is asked for.
type Circulating struct {
	Inlet, PitsCool quantity.Value
	CementInlet     quantity.Value
	PumpPressure    quantity.Value
	Time, Cementing quantity.Value
}

func circulatingGroup(section *Group) *Group {
	type d = declaration[Circulating]
	return part("circulating", "Circulating", "How the mud goes round, for its temperature.", TopicMud, section, func(s *Section) *Circulating { return &s.Circulating },
		d{Key: "inlet", Label: "Mud in", Name: "Temperature of the mud pumped in", Topic: TopicMud, Kind: quantity.Temperature, Range: "-2 C to 90 C",
			Help: "At the suction. Blank: with a riser, what comes back less what the pits take; without one, the sea surface's.", At: func(c *Circulating) any { return &c.Inlet }},
		d{Key: "pits_cool", Label: "Pits cool by", Name: "What the mud cools by between flowline and suction", Topic: TopicMud, Kind: quantity.TemperatureRise, Range: "0 K to 60 K", Default: "1 K",
			Inside: func(p *Plan, at Place) string {
				s := &p.Sections[at.Outer]
				switch {
				case s.Returns != ToRig:
					return "no mud comes back"
				case s.Circulating.Inlet.IsSet():
					return "the temperature of the mud pumped in is given"
				}
				return ""
			},
			Help: "Never below the sea surface's temperature. Blank: 1 K, common pits without a cooler, from memory.", At: func(c *Circulating) any { return &c.PitsCool }},
		d{Key: "pump_pressure", Label: "Heat of pumping", Name: "Pump pressure whose heat counts", Topic: TopicMud, Kind: quantity.Pressure, Range: "0 bar to 600 bar",
			Help: "While drilling: half of it is taken to warm the mud in the string, half at the bit. Blank: the standpipe pressure as worked out on the hydraulics page, else none, which is too cool.", At: func(c *Circulating) any { return &c.PumpPressure }},
		d{Key: "time", Label: "Drilling, for", Name: "Time that the mud has gone round while drilling", Topic: TopicMud, Kind: quantity.Hours, Range: "1 h to 1000 h", Default: "24 h",
			Help: "The longer, the cooler the rock at the bottom, and the warmer that above. Blank: 24 h.", At: func(c *Circulating) any { return &c.Time }},
		d{Key: "cement_inlet", Label: "Cement in", Name: "Temperature of what a cement job pumps in", Topic: TopicMud, Kind: quantity.Temperature, Range: "-2 C to 90 C", Inside: of(cementing),
			Help: "Blank: 27 degC, at which a laboratory's schedule usually starts (from memory), or the mud's while drilling if that is hotter.", At: func(c *Circulating) any { return &c.CementInlet }},
		d{Key: "cementing", Label: "Cementing, for", Name: "Time that mud and cement have gone round the string", Topic: TopicMud, Kind: quantity.Hours, Range: "0.5 h to 100 h", Default: "4 h", Inside: of(cementing),
			Help: "Circulating before the job and the job. Blank: 4 h.", At: func(c *Circulating) any { return &c.Cementing }},
	)
}
