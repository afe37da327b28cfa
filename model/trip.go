package model

import "borewalk/model/quantity"

// Whether a float in the string keeps the fluid below it out.
const (
	FloatInString = "yes"
	NoFloat       = "no"
)

// Trip says how the drill string of a section is pulled and run.
type Trip struct {
	// What the hole is filled by.
	FillEvery, FillEveryAssembly quantity.Value
	SlugDensity, SlugVolume, Dry quantity.Value

	// How fast.
	SpeedOut, SpeedIn       quantity.Value
	Float                   string
	FlowOut, FlowIn         quantity.Value
	SwabMargin, SurgeMargin quantity.Value
}

// tripGroup declares how the hole is kept full.
func tripGroup(section *Group) *Group {
	type d = declaration[Trip]
	const open = "the hole is open to the sea: it fills itself"
	rig := func(_ *Plan, s *Section) string {
		if s.Returns != ToRig {
			return open
		}
		return ""
	}
	slugged := func(_ *Plan, s *Section) string {
		switch {
		case s.Returns != ToRig:
			return open
		case !s.Trip.SlugDensity.IsSet():
			return "no slug is pumped"
		}
		return ""
	}
	dry := func(p *Plan, s *Section) string {
		if why := slugged(p, s); why != "" || !s.Trip.SlugVolume.IsSet() {
			return why
		}
		return "follows from the volume of the slug"
	}
	return part("trip", "Trip", "How the hole is kept full while the string is pulled.", TopicString, section, func(s *Section) *Trip { return &s.Trip },
		d{Key: "fill_every", Label: "Fill every", Name: "Stands of drill pipe between fills", Topic: TopicString, Kind: quantity.Count, Range: "1 to 20", Default: "5", Inside: of(rig),
			Help: "Pulled before the hole is filled. Blank: 5.", At: func(t *Trip) any { return &t.FillEvery }},
		d{Key: "fill_every_bha", Label: "Fill every, BHA", Name: "Stands of the BHA between fills", Topic: TopicString, Kind: quantity.Count, Range: "1 to 20", Default: "1", Inside: of(rig),
			Help: "Of heavy-weight, collars and tools, which leave more room than pipe. Blank: 1, common practice, from memory.", At: func(t *Trip) any { return &t.FillEveryAssembly }},
		d{Key: "slug_density", Label: "Slug", Name: "Density of the slug", Topic: TopicString, Kind: quantity.Density, Range: "0.9 sg to 2.6 sg", Inside: of(rig),
			Help: "Heavier than the mud, pumped so that the pipe comes dry. Blank: no slug, the pipe is pulled wet.", At: func(t *Trip) any { return &t.SlugDensity }},
		d{Key: "slug_volume", Label: "Slug volume", Name: "Volume of the slug", Topic: TopicString, Kind: quantity.Volume, Range: "0.1 m3 to 50 m3", Inside: of(slugged),
			Help: "Gives how far the pipe comes dry. Blank: the dry length gives the volume.", At: func(t *Trip) any { return &t.SlugVolume }},
		d{Key: "dry", Label: "Dry pipe", Name: "Length of pipe to come dry", Topic: TopicString, Kind: quantity.Length, Range: "1 m to 1000 m", Inside: of(dry),
			Help: "Down from the rotary, two or three stands; gives the volume of the slug.", At: func(t *Trip) any { return &t.Dry }},
	)
}

// swabGroup declares how fast the string is moved.
func swabGroup(section *Group) *Group {
	type d = declaration[Trip]
	return part("swab", "Trip speed", "How fast the string is pulled and run, and what is kept from the window.", TopicHydraulics, section, func(s *Section) *Trip { return &s.Trip },
		d{Key: "out", Label: "Pulled at", Name: "Greatest speed of the string, pulled", Topic: TopicHydraulics, Kind: quantity.Velocity, Range: "0.01 m/s to 5 m/s",
			Help: "The peak within a stand, about 1.5 times the mean; not stands per hour.", At: func(t *Trip) any { return &t.SpeedOut }},
		d{Key: "in", Label: "Run at", Name: "Greatest speed of the string, run", Topic: TopicHydraulics, Kind: quantity.Velocity, Range: "0.01 m/s to 5 m/s",
			Help: "The peak within a stand, about 1.5 times the mean; not stands per hour.", At: func(t *Trip) any { return &t.SpeedIn }},
		d{Key: "float", Label: "Float", Name: "Float in the string", Topic: TopicHydraulics, Choices: []string{FloatInString, NoFloat}, Default: FloatInString,
			Help: "Yes: the string displaces its whole outside, and is taken as shut on the way out as well, as with a plugged bit. No: the flow divides between bore and annulus.",
			At:   func(t *Trip) any { return &t.Float }},
		d{Key: "flow_out", Label: "Pumped, out", Name: "Flow through the bit while pulling", Topic: TopicHydraulics, Kind: quantity.Flow, Range: "0 m3/min to 10 m3/min",
			Help: "Pumped out of the hole, without booster. Blank: pumps off.", At: func(t *Trip) any { return &t.FlowOut }},
		d{Key: "flow_in", Label: "Pumped, in", Name: "Flow through the bit while running", Topic: TopicHydraulics, Kind: quantity.Flow, Range: "0 m3/min to 10 m3/min",
			Help: "Washed down, without booster. Blank: pumps off.", At: func(t *Trip) any { return &t.FlowIn }},
		d{Key: "swab_margin", Label: "Swab margin", Name: "Margin over pore pressure while pulling", Topic: TopicHydraulics, Kind: quantity.EMW, Range: "0 sg to 0.5 sg",
			Help: "Kept from swab. Blank: none, pore pressure itself.", At: func(t *Trip) any { return &t.SwabMargin }},
		d{Key: "surge_margin", Label: "Surge margin", Name: "Margin below fracture while running", Topic: TopicHydraulics, Kind: quantity.EMW, Range: "0 sg to 0.5 sg",
			Help: "Kept from surge. Blank: 0.02 sg (common practice, from memory), none without a riser.", At: func(t *Trip) any { return &t.SurgeMargin }},
	)
}
