package model

import "borewalk/model/quantity"

// What becomes of the volume while a mud is treated.
const (
	VolumeGrows = "grows"
	VolumeKept  = "kept"
)

// Treatment says to what the mud of a section is to be brought, and with what.
type Treatment struct {
	Density, Volume             quantity.Value
	Keep                        string
	Wetting                     quantity.Value
	SecondDensity, SecondVolume quantity.Value
	Step                        quantity.Value
}

func treatmentGroup(section *Group) *Group {
	type d = declaration[Treatment]
	return part("treatment", "Weight-up, dilution", "To what the mud is to be brought, and with what.", TopicMud, section, func(s *Section) *Treatment { return &s.Treatment },
		d{Key: "density", Label: "Wanted density", Name: "Density wanted after treatment", Topic: TopicMud, Kind: quantity.Density, Range: "0.7 sg to 2.6 sg",
			Help: "Above the mud density it is weighted up, below it is diluted with the base fluid of the recipe. Blank: no treatment.",
			At:   func(t *Treatment) any { return &t.Density }},
		d{Key: "volume", Label: "Volume treated", Name: "Volume of mud that is treated", Topic: TopicMud, Kind: quantity.Volume, Range: "0.1 m3 to 5000 m3",
			Help: "Blank: the active volume with the bit at TD.", At: func(t *Treatment) any { return &t.Volume }},
		d{Key: "keep", Label: "Volume", Name: "What becomes of the volume", Topic: TopicMud, Choices: []string{VolumeGrows, VolumeKept}, Default: VolumeGrows,
			Help: "Grows: the pits take what is added. Kept: as much mud is dumped first, or moved to reserve.", At: func(t *Treatment) any { return &t.Keep }},
		d{Key: "wetting", Label: "Wetting liquid", Name: "Base fluid poured in with the weighting material", Topic: TopicMud, Kind: quantity.MixWater, Range: "0 L/100kg to 50 L/100kg",
			Help: "Keeps the mud from thickening; a gallon to a 100 lb sack is 8.3 L/100kg. Blank: none.", At: func(t *Treatment) any { return &t.Wetting }},
		d{Key: "second_density", Label: "Second mud", Name: "Density of a second mud to blend in", Topic: TopicMud, Kind: quantity.Density, Range: "0.7 sg to 2.6 sg",
			Help: "Such as kill mud or old reserve. Blank: no blend.", At: func(t *Treatment) any { return &t.SecondDensity }},
		d{Key: "second_volume", Label: "Second volume", Name: "Volume of the second mud", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 5000 m3",
			Help: "Blended with the volume treated. Blank: only the part that the wanted density needs is worked out.", At: func(t *Treatment) any { return &t.SecondVolume }},
		d{Key: "step", Label: "Step in hand", Name: "Step of density to have weighting material for", Topic: TopicMud, Kind: quantity.Density, Range: "0.01 sg to 0.6 sg", Default: "1 ppg",
			Help: "What is aboard is to lift the active system by so much.", At: func(t *Treatment) any { return &t.Step }},
	)
}
