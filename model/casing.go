package model

import "borewalk/model/quantity"

// What a string is for.
const (
	Conductor    = "conductor"
	Surface      = "surface"
	Intermediate = "intermediate"
	Production   = "production"
)

// How a string gets into the ground.
const (
	Cemented = "cemented"
	Jetted   = "jetted"
	Driven   = "driven"
)

// Where a casing string hangs.
const (
	InLPHousing  = "LP housing"
	InHPHousing  = "HP housing"
	InWellhead   = "wellhead"
	OnHangerDeep = "hanger at depth"
)

// Which drift a length of casing is made to.
const (
	APIDrift     = "API"
	SpecialDrift = "special"
)

func casingFields() []declaration[Section] {
	type d = declaration[Section]
	hangs := func(_ *Plan, s *Section) string {
		if s.Completion != WithCasing {
			return "counts for casing only"
		}
		return ""
	}
	return []d{
		{Key: "completion", Label: "Finished with", Name: "Section finished with", Topic: TopicCasing, Choices: []string{WithCasing, WithLiner, OpenHole},
			Default: WithCasing, Help: "Casing to the wellhead, a liner hung in the last string, or open hole.", At: func(s *Section) any { return &s.Completion }},
		{Key: "purpose", Label: "Purpose", Name: "Purpose of the string", Topic: TopicCasing, Choices: []string{Conductor, Surface, Intermediate, Production},
			Default: Intermediate, When: cased, Help: "Decides which rules are compared.", At: func(s *Section) any { return &s.Purpose }},
		{Key: "method", Label: "Set by", Name: "How the string is set", Topic: TopicCasing, Choices: []string{Cemented, Jetted, Driven}, Default: Cemented, When: cased,
			Help: "Jetted or driven pipe fills its hole: no annulus, no clearance to compare.", At: func(s *Section) any { return &s.Method }},
		{Key: "hung", Label: "Hangs in", Name: "Casing hangs in", Topic: TopicCasing, Choices: []string{InLPHousing, InHPHousing, InWellhead, OnHangerDeep},
			Default: InWellhead, When: hangs,
			Help: "Conductor: low-pressure housing. Surface string: high-pressure housing. Later ones: a shoulder in the wellhead, or a hanger at depth.",
			At:   func(s *Section) any { return &s.Hung }},
		{Key: "shoulder", Label: "Shoulder", Name: "Landing shoulder below wellhead datum", Topic: TopicCasing, Kind: quantity.Length, Range: "0 m to 5 m",
			Required: true, Help: "Maker's drawing. The string is measured from here to its shoe.", At: func(s *Section) any { return &s.ShoulderBelowDatum },
			When: func(_ *Plan, s *Section) string {
				if s.Completion != WithCasing || s.Hung != InWellhead {
					return "counts for casing landed in the wellhead only"
				}
				return ""
			}},
		{Key: "top", Moves: WithWell, Label: "Top", Name: "Top of the string, along hole", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 15000 m", Required: true,
			Help: "From RKB: top of the liner, or the hanger of a string hung at depth.", At: func(s *Section) any { return &s.Top },
			When: func(_ *Plan, s *Section) string {
				if s.Completion == WithLiner || (s.Completion == WithCasing && s.Hung == OnHangerDeep) {
					return ""
				}
				return "follows from where the casing hangs"
			}},
		{Key: "shoe_track", Label: "Shoe track", Name: "Shoe track, shoe to float collar", Topic: TopicCasing, Kind: quantity.Length, Range: "0 m to 150 m",
			When: cased, Help: "Stays full of cement. Blank or zero: no float collar, such as an inner-string job.", At: func(s *Section) any { return &s.ShoeTrack }},
	}
}

func casingGroup(section *Group) *Group {
	type d = declaration[CasingPart]
	g := list("casing", "Casing part", "A length of one size, weight and grade; bottom up, the highest reaches to the top.", TopicCasing, section,
		func(p *Plan, at Place) *[]CasingPart { return &p.Sections[at.Outer].Casing },
		d{Key: "size", Brief: true, Label: "Casing OD", Name: "Casing OD", Topic: TopicCasing, Kind: quantity.Diameter, Range: "4 in to 48 in", Required: true,
			Help: "Enter opens the catalogue: sizes, weights and grades that pass the bores above.", At: func(c *CasingPart) any { return &c.Size }},
		d{Key: "weight", Brief: true, Label: "Weight", Name: "Nominal weight", Topic: TopicCasing, Kind: quantity.LinearMass, Range: "5 kg/m to 1500 kg/m", Required: true,
			Help: "The name weight: with threads and coupling for casing, plain end for conductor pipe.", At: func(c *CasingPart) any { return &c.Weight }},
		d{Key: "grade", Brief: true, Label: "Grade", Name: "Grade", Topic: TopicCasing, Type: TextField,
			Help: "Such as P110 or X56; the number is the yield strength in ksi.", At: func(c *CasingPart) any { return &c.Grade }},
		d{Key: "length", Brief: true, Label: "Length", Name: "Length of this part", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Blank for the highest part: it reaches to the top of the string.", At: func(c *CasingPart) any { return &c.Length }},
		d{Key: "drift_class", Label: "Drift", Name: "Drift", Topic: TopicCasing, Choices: []string{APIDrift, SpecialDrift}, Default: APIDrift,
			Help: "Special: the larger drift that must be ordered and gauged.", At: func(c *CasingPart) any { return &c.DriftClass }},
		d{Key: "connector_od", Label: "Connector OD", Name: "Connector OD", Topic: TopicCasing, Kind: quantity.Diameter, Range: "4 in to 60 in",
			Help: "Blank: the catalogue's coupling.", At: func(c *CasingPart) any { return &c.ConnectorOD }},
		d{Key: "id", Label: "ID, actual", Name: "Actual ID, over the catalogue", Topic: TopicCasing, Kind: quantity.Diameter, Range: "3 in to 47 in",
			Help: "Blank: the catalogue's.", At: func(c *CasingPart) any { return &c.ID }},
		d{Key: "drift", Label: "Drift, actual", Name: "Actual drift, over the catalogue", Topic: TopicCasing, Kind: quantity.Diameter, Range: "3 in to 47 in",
			Help: "Blank: the catalogue's, of the class above.", At: func(c *CasingPart) any { return &c.Drift }},
		d{Key: "linear_mass", Label: "Weight, actual", Name: "Actual mass per length, over the catalogue", Topic: TopicCasing, Kind: quantity.LinearMass, Range: "5 kg/m to 2000 kg/m",
			Help: "Blank: the nominal weight.", At: func(c *CasingPart) any { return &c.LinearMass }},
		d{Key: "yield", Label: "Yield, actual", Name: "Actual yield strength, over the catalogue", Topic: TopicCasing, Kind: quantity.Stress, Range: "150 MPa to 1200 MPa",
			Help: "Blank: the grade's.", At: func(c *CasingPart) any { return &c.Yield }},
	)
	g.Fields = append(g.Fields, partStrengthFields()...)
	return g
}
