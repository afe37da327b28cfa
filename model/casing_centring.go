package model

import "borewalk/model/quantity"

// Kinds of centraliser.
const (
	BowSpring = "bow"
	RigidBody = "rigid"
)

// Centring says how the string of a section is held off the wall.
type Centring struct {
	Kind        string
	Open, Cased quantity.Value // spacing in the open hole and in the last string
	OD, Force   quantity.Value
}

func centringFields() []declaration[Section] {
	type d = declaration[Section]
	of := func(kind, otherwise string) func(*Plan, *Section) string {
		return func(p *Plan, s *Section) string {
			if why := cementing(p, s); why != "" {
				return why
			}
			if s.Centring.Kind != kind {
				return otherwise
			}
			return ""
		}
	}
	const spacing = "From the shoe up, the lowest half a spacing above the foot; up to the top of cement. Blank: none are compared."
	return []d{
		{Key: "centraliser", Label: "Centralisers", Name: "Kind of centraliser", Topic: TopicCasing, Choices: []string{BowSpring, RigidBody}, Default: BowSpring, When: cementing,
			Help: "A bow gives way under load, a rigid one leaves what its size leaves.", At: func(s *Section) any { return &s.Centring.Kind }},
		{Key: "spacing_open", Label: "Spacing, open", Name: "Spacing of centralisers in the open hole", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 200 m", When: cementing,
			Help: spacing, At: func(s *Section) any { return &s.Centring.Open }},
		{Key: "spacing_cased", Label: "Spacing, cased", Name: "Spacing of centralisers in the last string", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 200 m", When: cementing,
			Help: spacing, At: func(s *Section) any { return &s.Centring.Cased }},
		{Key: "centraliser_od", Label: "Rigid OD", Name: "Outside diameter of the rigid centralisers", Topic: TopicCasing, Kind: quantity.Diameter, Range: "4 in to 60 in",
			When: of(RigidBody, "counts for rigid centralisers only"), Required: true, Help: "Over the blades.", At: func(s *Section) any { return &s.Centring.OD }},
		{Key: "centraliser_force", Label: "Bow force", Name: "Restoring force of a bow at 67 % standoff", Topic: TopicCasing, Kind: quantity.Force, Range: "0.1 kN to 100 kN",
			When: of(BowSpring, "counts for bow centralisers only"),
			Help: "Maker's, in this hole. Blank: the least of API Spec 10D, from memory: the weight of 40 ft of casing, half of it above 9 5/8 in.",
			At:   func(s *Section) any { return &s.Centring.Force }},
	}
}
