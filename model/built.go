package model

import "borewalk/model/quantity"

// How the top of cement was found.
const (
	TopByLog      = "log"
	TopByTag      = "tag"
	TopByPressure = "pressure"
)

// Whether the plug bumped.
const (
	PlugBumped = "yes"
	PlugMissed = "no"
)

// What was seen of the returns while cementing.
const (
	ReturnsFull    = "full"
	ReturnsPartial = "partial"
	ReturnsNone    = "none"
)

// Built is what a section came to be: what was measured or done, blank for what was not yet.
type Built struct {
	Started, Reached, Landed, Cemented, Tested string
	TD, Diameter, Density                      quantity.Value
	Top, Shoe                                  quantity.Value
	TiltOne, TiltOther                         quantity.Value
	CementTop                                  quantity.Value
	CementTopBy                                string
	Displaced, Lost                            quantity.Value
	Bumped                                     string
	BumpPressure                               quantity.Value
	Returns                                    string
	TestPressure                               quantity.Value
}

// BuiltSlurry is what was pumped of the slurry in the same place of the plan's list.
type BuiltSlurry struct {
	Row
	Volume quantity.Value
}

func builtGroup(section *Group) *Group {
	type d = declaration[Built]
	const (
		day    = "As year-month-day, 2026-11-29."
		counts = "It counts from here on in place of the planned one."
	)
	date := func(key, label, name string, inside func(*Plan, Place) string, at func(*Built) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicBuilt, Type: TextField, Inside: inside, Help: day, At: at}
	}
	tilt := func(key, label, name string, at func(*Built) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicBuilt, Kind: quantity.Angle, Range: "-10 deg to 10 deg", Inside: of(housed),
			Help: "As the bullseye or the tool reads it, landed and before the weight is taken off.", At: at}
	}
	return part("built", "As built", "What the section came to be.", TopicBuilt, section, func(s *Section) *Built { return &s.Built },
		date("started", "Begun", "Date on which the section was begun", nil, func(b *Built) any { return &b.Started }),
		d{Key: "td", Moves: WithWell, Over: "td", Aside: []string{"depth_by", "shoe"}, Label: "Hole TD", Name: "Total depth of the bit as drilled, along hole", Topic: TopicBuilt,
			Kind: quantity.Length, Range: "1 m to 15000 m", Help: counts + " The shoe follows by the rathole until it is as built too.", At: func(b *Built) any { return &b.TD }},
		date("reached", "TD reached", "Date on which TD was reached", nil, func(b *Built) any { return &b.Reached }),
		d{Key: "density", Over: "density", Label: "Mud at TD", Name: "Mud density at TD as weighed", Topic: TopicBuilt, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: counts, At: func(b *Built) any { return &b.Density }},
		d{Key: "diameter", Aside: []string{"washout"}, Label: "Hole diameter", Name: "Mean diameter of the full-size hole", Topic: TopicBuilt, Kind: quantity.Diameter, Range: "3 in to 80 in",
			Inside: of(uncalipered), Help: "That gives the hole's volume; the washout does not count then. Rows of a caliper, on the hole page, go before it.",
			At: func(b *Built) any { return &b.Diameter }},
		d{Key: "top", Moves: WithWell, Over: "top", Label: "String's top", Name: "Top of the string as set, along hole", Topic: TopicBuilt, Kind: quantity.Length, Range: "1 m to 15000 m",
			Inside: of(hungAtDepth), Help: "From RKB: top of the liner, or the hanger at depth. " + counts, At: func(b *Built) any { return &b.Top }},
		d{Key: "shoe", Moves: WithWell, Over: "shoe", Aside: []string{"rathole"}, Label: "Shoe", Name: "Shoe as set, along hole", Topic: TopicBuilt, Kind: quantity.Length, Range: "1 m to 15000 m",
			Inside: of(cased), Help: counts + " What is open below it follows; alone it leaves the hole as planned. Measured joints stand on the casing page.",
			At: func(b *Built) any { return &b.Shoe }},
		date("landed", "Landed", "Date on which the string was landed", of(cased), func(b *Built) any { return &b.Landed }),
		tilt("tilt", "Tilt, one way", "Inclination of the housing along one axis", func(b *Built) any { return &b.TiltOne }),
		tilt("tilt_across", "Tilt, across", "Inclination of the housing across that axis", func(b *Built) any { return &b.TiltOther }),
		d{Key: "displaced", Label: "Displaced", Name: "Displacement pumped behind the cement", Topic: TopicBuilt, Kind: quantity.Volume, Range: "0 m3 to 500 m3", Inside: of(cementing),
			Help: "From the rotary, lines left out, as the plan counts it. Slurries pumped are rows below.", At: func(b *Built) any { return &b.Displaced }},
		d{Key: "bumped", Label: "Plug bumped", Name: "Plug bumped", Topic: TopicBuilt, Choices: []string{PlugBumped, PlugMissed},
			Inside: of(placed(ByPlugs, "there is no plug to land")), Help: "Yes: the shoe track is taken to be full of the last slurry.", At: func(b *Built) any { return &b.Bumped }},
		d{Key: "bump_pressure", Label: "Bump pressure", Name: "Pressure to which the plug was bumped", Topic: TopicBuilt, Kind: quantity.Pressure, Range: "0 bar to 1000 bar",
			Inside: of(placed(ByPlugs, "there is no plug to land")), Help: "At the cement unit.", At: func(b *Built) any { return &b.BumpPressure }},
		d{Key: "returns", Label: "Returns seen", Name: "Returns seen while cementing", Topic: TopicBuilt, Choices: []string{ReturnsFull, ReturnsPartial, ReturnsNone}, Inside: of(cementing),
			Help: "In the pits, or by camera at the seabed.", At: func(b *Built) any { return &b.Returns }},
		d{Key: "lost", Label: "Lost in it", Name: "Volume lost while cementing", Topic: TopicBuilt, Kind: quantity.Volume, Range: "0 m3 to 500 m3", Inside: of(cementing),
			Help: "By the pits. The top of cement is worked out with it and without. Blank: none.", At: func(b *Built) any { return &b.Lost }},
		date("cemented", "Cemented", "Date on which the string was cemented", of(cementing), func(b *Built) any { return &b.Cemented }),
		d{Key: "cement_top", Moves: WithWell, Label: "Top of cement", Name: "Top of cement as found, along hole", Topic: TopicBuilt, Kind: quantity.Length, Range: "1 m to 15000 m", Inside: of(cementing),
			Help: "From RKB. Rules and loads take it in place of the planned top; what is pumped stays as planned.", At: func(b *Built) any { return &b.CementTop }},
		d{Key: "cement_top_by", Label: "Found by", Name: "How the top of cement was found", Topic: TopicBuilt, Choices: []string{TopByLog, TopByTag, TopByPressure}, Inside: of(cementing),
			Help: "Log; tagged with pipe; or from the pressure at the end of displacement, which is an estimate.", At: func(b *Built) any { return &b.CementTopBy }},
		d{Key: "test_pressure", Over: "loads.test_pressure", Label: "Tested to", Name: "Pressure to which the string was tested, at the rig", Topic: TopicBuilt, Kind: quantity.Pressure,
			Range: "0 bar to 1500 bar", Inside: of(cased), Help: counts, At: func(b *Built) any { return &b.TestPressure }},
		date("tested", "Tested", "Date on which the string was tested", of(cased), func(b *Built) any { return &b.Tested }),
	)
}

func builtSlurryGroup(section *Group) *Group {
	type d = declaration[BuiltSlurry]
	return list("built_slurry", "Slurry pumped", "What was pumped of a slurry; in the order of the cement page.", TopicBuilt, section,
		func(p *Plan, at Place) *[]BuiltSlurry { return &p.Sections[at.Outer].BuiltSlurries },
		d{Key: "volume", Brief: true, Label: "Pumped", Name: "Volume of the slurry that was pumped", Topic: TopicBuilt, Kind: quantity.Volume, Range: "0 m3 to 500 m3", Required: true,
			Inside: of(cementing), Help: "By the cement unit. Row 1 is the first slurry of the cement page.", At: func(b *BuiltSlurry) any { return &b.Volume }},
	)
}

// CarriesHousing reports whether a housing of the wellhead lands with the string of a section.
func (s *Section) CarriesHousing() bool {
	return s.Completion == WithCasing && (s.Hung == InLPHousing || s.Hung == InHPHousing)
}

// housed is the reason why the inclination of a housing does not count.
func housed(_ *Plan, s *Section) string {
	if !s.CarriesHousing() {
		return "no housing lands with this string"
	}
	return ""
}

// hungAtDepth is the reason why the top of a string is not measured.
func hungAtDepth(_ *Plan, s *Section) string {
	if s.Completion == WithLiner || (s.Completion == WithCasing && s.Hung == OnHangerDeep) {
		return ""
	}
	return "follows from where the casing hangs"
}

// uncalipered is the reason why one mean diameter does not count.
func uncalipered(_ *Plan, s *Section) string {
	if len(s.Caliper) > 0 {
		return "the caliper on the hole page counts"
	}
	return ""
}
