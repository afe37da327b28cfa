package model

import "borewalk/model/quantity"

// How the density of a mud at depth is taken.
const (
	DensityAsEntered = "as entered"
	DensityAtDepth   = "by temperature and pressure"
)

// Whose law the oil of a mud follows.
const (
	DieselOil  = "diesel"
	MineralOil = "mineral oil"
	OlefinOil  = "synthetic"
)

// Downhole says how the drilling fluid of a section, made as its recipe says, changes its density under pressure and heat.
type Downhole struct {
	By, Oil              string
	Solids               quantity.Value
	WeighedAt            quantity.Value
	OilPress, OilWarming quantity.Value
}

func downholeGroup(section *Group) *Group {
	type d = declaration[Downhole]
	oily := func(p *Plan, at Place) string {
		if !p.Sections[at.Outer].Recipe.Oil.IsSet() {
			return "the recipe has no oil"
		}
		return ""
	}
	return part("downhole", "Mud at depth", "How the mud, as its recipe has it, changes under pressure and heat.", TopicMud, section, func(s *Section) *Downhole { return &s.Downhole },
		d{Key: "density", Label: "Density at depth", Name: "Density of the mud at depth", Topic: TopicMud, Choices: []string{DensityAsEntered, DensityAtDepth}, Default: DensityAsEntered,
			Help: "By temperature and pressure adds the static density at depth; a recipe without oil is a mud of water. Margins keep to the entered density.",
			At:   func(m *Downhole) any { return &m.By }},
		d{Key: "oil", Label: "Oil like", Name: "Oil whose law the oil in the mud follows", Topic: TopicMud, Choices: []string{DieselOil, MineralOil, OlefinOil}, Default: MineralOil, Inside: oily,
			Help: "Synthetic is an internal olefin. The share of oil stands in the recipe.", At: func(m *Downhole) any { return &m.Oil }},
		d{Key: "oil_press", Label: "Oil, by 100 bar", Name: "Volume that 100 bar take from the oil", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 3 %", Inside: oily,
			Help: "Own law of the base oil, in a straight line. Blank with the next: the correlation chosen.", At: func(m *Downhole) any { return &m.OilPress }},
		d{Key: "oil_warming", Label: "Oil, by 10 K", Name: "Volume that 10 K (18 degF) add to the oil", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 3 %", Inside: oily,
			Help: "Own law of the base oil, in a straight line. Blank with the one before: the correlation chosen.", At: func(m *Downhole) any { return &m.OilWarming }},
		d{Key: "solids", Label: "Solids", Name: "Mean density of the solids", Topic: TopicMud, Kind: quantity.Density, Range: "2 sg to 5.4 sg", Default: "3.5 sg",
			Inside: func(p *Plan, at Place) string {
				if p.Sections[at.Outer].Recipe.Water.IsSet() {
					return "follows from oil and water of the recipe"
				}
				return ""
			},
			Help: "The share of water follows from it. Clay and cuttings 2.6, barite 4.2; blank 3.5, common practice, from memory.", At: func(m *Downhole) any { return &m.Solids }},
		d{Key: "weighed_at", Label: "Weighed at", Name: "Temperature at which the mud is weighed", Topic: TopicMud, Kind: quantity.Temperature, Range: "0 C to 90 C", Default: "20 C",
			Help: "Which temperature the entered density belongs to. Blank: 20 degC.", At: func(m *Downhole) any { return &m.WeighedAt }},
	)
}
