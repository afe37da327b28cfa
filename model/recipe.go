package model

import "borewalk/model/quantity"

// Salts of the water in a mud.
const (
	NoSalt   = "none"
	SaltNaCl = "NaCl"
	SaltKCl  = "KCl"
	SaltCaCl = "CaCl2"
)

// Recipe says what the mud of a section is made of: the liquid that it is built from, and what the retort shows in it.
type Recipe struct {
	Base, Oil, Water, OilDensity, Low quantity.Value
	Salt                              string
	SaltShare, BrineDensity, Brine    quantity.Value
}

func recipeGroup(section *Group) *Group {
	type d = declaration[Recipe]
	salted := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Recipe.Salt == NoSalt {
			return "there is no salt in the water"
		}
		return ""
	}
	return part("recipe", "Recipe", "What the mud is made of.", TopicMud, section, func(s *Section) *Recipe { return &s.Recipe },
		d{Key: "base", Label: "Base fluid", Name: "Density of the unweighted base fluid", Topic: TopicMud, Kind: quantity.Density, Range: "0.65 sg to 2.3 sg",
			Help: "What mud is built from with weighting material, and diluted with: premix, brine, water or base oil. Blank: neither is worked out.",
			At:   func(r *Recipe) any { return &r.Base }},
		d{Key: "oil", Label: "Oil, retort", Name: "Oil in the mud, by retort", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 98 %",
			Help: "Share of the volume. Blank: none.", At: func(r *Recipe) any { return &r.Oil }},
		d{Key: "water", Label: "Water, retort", Name: "Water in the mud, by retort", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 100 %",
			Help: "Share of the volume, distilled. Blank: solids are not worked out.", At: func(r *Recipe) any { return &r.Water }},
		d{Key: "oil_density", Label: "Oil density", Name: "Density of the oil in the mud", Topic: TopicMud, Kind: quantity.Density, Range: "0.65 sg to 1 sg", Default: "0.8 sg",
			Help: "Base oil or synthetic; counts where there is oil.", At: func(r *Recipe) any { return &r.OilDensity }},
		d{Key: "low_density", Label: "Drilled solids", Name: "Density of the low-gravity solids", Topic: TopicMud, Kind: quantity.Density, Range: "2.2 sg to 3 sg", Default: "2.6 sg",
			Help: "Drilled solids and clay.", At: func(r *Recipe) any { return &r.Low }},
		d{Key: "salt", Label: "Salt", Name: "Salt in the water of the mud", Topic: TopicMud, Choices: []string{NoSalt, SaltNaCl, SaltKCl, SaltCaCl}, Default: NoSalt,
			Help: "The one that there is most of.", At: func(r *Recipe) any { return &r.Salt }},
		d{Key: "salt_share", Label: "Salt in brine", Name: "Salt in the brine, by mass", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 40 %", Inside: salted,
			Help: "Of the mass of water and salt together. Blank: from the brine density.", At: func(r *Recipe) any { return &r.SaltShare }},
		d{Key: "brine_density", Label: "Brine density", Name: "Density of the brine", Topic: TopicMud, Kind: quantity.Density, Range: "1 sg to 1.4 sg",
			Inside: func(p *Plan, at Place) string {
				if p.Sections[at.Outer].Recipe.SaltShare.IsSet() {
					return "follows from the salt in the brine"
				}
				return salted(p, at)
			},
			Help: "At 20 degC; the salt in it follows.", At: func(r *Recipe) any { return &r.BrineDensity }},
		d{Key: "brine", Label: "Brine to mix", Name: "Volume of brine to be mixed", Topic: TopicMud, Kind: quantity.Volume, Range: "0.1 m3 to 2000 m3", Inside: salted,
			Help: "Blank: 100 m3, to be scaled.", At: func(r *Recipe) any { return &r.Brine }},
	)
}
