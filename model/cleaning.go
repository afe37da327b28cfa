package model

import "borewalk/model/quantity"

// Methods of working out how fast cuttings slip.
const (
	SlipChien = "Chien 1971"
	SlipMoore = "Moore 1974"
	SlipDrag  = "drag curve"
)

// Cleaning says what cuttings the section makes. What its hole is held to be clean by are rules.
type Cleaning struct {
	Slip                            string
	Size, Rock, Sphericity, Turning quantity.Value
}

func cleaningGroup(section *Group) *Group {
	type d = declaration[Cleaning]
	return part("cleaning", "Hole cleaning", "What cuttings the flow has to carry, and how well.", TopicHydraulics, section,
		func(s *Section) *Cleaning { return &s.Cleaning },
		d{Key: "slip", Label: "Slip by", Name: "Slip of cuttings by the method of", Topic: TopicHydraulics, Choices: []string{SlipChien, SlipMoore, SlipDrag}, Default: SlipChien,
			Help: "Published methods differ by a factor of two and more; all are shown, this one counts upright; in a slant Moore's always does.", At: func(c *Cleaning) any { return &c.Slip }},
		d{Key: "size", Label: "Cuttings", Name: "Size of the cuttings", Topic: TopicHydraulics, Kind: quantity.Diameter, Range: "0.5 mm to 50 mm", Default: "6 mm",
			Help: "Of the coarse ones that the flow must carry; 6 mm, a quarter of an inch, is common practice.", At: func(c *Cleaning) any { return &c.Size }},
		d{Key: "rock", Label: "Rock density", Name: "Density of the cuttings", Topic: TopicHydraulics, Kind: quantity.Density, Range: "1.5 sg to 3.5 sg", Default: "2.6 sg",
			Help: "Of the rock itself, without its pores.", At: func(c *Cleaning) any { return &c.Rock }},
		d{Key: "sphericity", Label: "Sphericity", Name: "Sphericity of the cuttings", Topic: TopicHydraulics, Kind: quantity.Number, Range: "0.4 to 1", Default: "0.8",
			Help: "Surface of a sphere of the same volume over the cutting's own: 1 a ball, 0.8 crushed grains. The drag curve alone uses it.",
			At:   func(c *Cleaning) any { return &c.Sphericity }},
		d{Key: "turning", Label: "String turns", Name: "Rotary speed while drilling", Topic: TopicHydraulics, Kind: quantity.RotarySpeed, Range: "0 rpm to 300 rpm",
			Help: "Stirs the low side of a slanted hole. Blank: none, as while sliding.", At: func(c *Cleaning) any { return &c.Turning }},
	)
}
