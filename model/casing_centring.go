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

func centringGroup(section *Group) *Group {
	type d = declaration[Centring]
	with := func(kind, otherwise string) func(*Plan, Place) string {
		return func(p *Plan, at Place) string {
			s := &p.Sections[at.Outer]
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
	return part("centralisers", "Centralisers", "What holds the string off the wall.", TopicCasing, section, func(s *Section) *Centring { return &s.Centring },
		d{Key: "kind", Label: "Centralisers", Name: "Kind of centraliser", Topic: TopicCasing, Choices: []string{BowSpring, RigidBody}, Default: BowSpring, Inside: of(cementing),
			Help: "A bow gives way under load, a rigid one leaves what its size leaves.", At: func(c *Centring) any { return &c.Kind }},
		d{Key: "open", Label: "Spacing, open", Name: "Spacing of centralisers in the open hole", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 200 m", Inside: of(cementing),
			Help: spacing, At: func(c *Centring) any { return &c.Open }},
		d{Key: "cased", Label: "Spacing, cased", Name: "Spacing of centralisers in the last string", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 200 m", Inside: of(cementing),
			Help: spacing, At: func(c *Centring) any { return &c.Cased }},
		d{Key: "od", Label: "Rigid OD", Name: "Outside diameter of the rigid centralisers", Topic: TopicCasing, Kind: quantity.Diameter, Range: "4 in to 60 in",
			Inside: with(RigidBody, "counts for rigid centralisers only"), Required: true, Help: "Over the blades.", At: func(c *Centring) any { return &c.OD }},
		d{Key: "force", Label: "Bow force", Name: "Restoring force of a bow at 67 % standoff", Topic: TopicCasing, Kind: quantity.Force, Range: "0.1 kN to 100 kN",
			Inside: with(BowSpring, "counts for bow centralisers only"),
			Help:   "Maker's, in this hole. Blank: the least of API Spec 10D, from memory: the weight of 40 ft of casing, half of it above 9 5/8 in.",
			At:     func(c *Centring) any { return &c.Force }},
	)
}
