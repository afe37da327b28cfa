package model

import "borewalk/model/quantity"

// What the well is full of when a section begins.
const (
	SameMud = "stays"
	NewMud  = "changed"
)

// Volumes says what mud a section with a riser starts with, loses and is to have.
type Volumes struct {
	Start                               quantity.Value
	InWell                              string
	Surface, Reserve                    quantity.Value
	LossRate, LossPerMetre              quantity.Value
	Removal, Solids, OnCuttings, Behind quantity.Value
}

func volumesGroup(section *Group) *Group {
	type d = declaration[Volumes]
	g := part("volumes", "Pit budget", "What mud the section starts with, loses and is to have.", TopicMud, section, func(s *Section) *Volumes { return &s.Volumes },
		d{Key: "start", Label: "Pits at start", Name: "Mud in the pits when the section begins", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 5000 m3",
			Help: "Of the section's mud, from the last section, the boat or the base. Blank: none.", At: func(v *Volumes) any { return &v.Start }},
		d{Key: "in_well", Label: "Mud in the well", Name: "Mud in the well when the section begins", Topic: TopicMud, Choices: []string{SameMud, NewMud}, Default: SameMud,
			Help: "Stays: it is drilled on with, treated or not. Changed: riser, well and lines are displaced, as they are after a riserless section.",
			At:   func(v *Volumes) any { return &v.InWell }},
		d{Key: "surface", Label: "Active, surface", Name: "Mud in the active pits while drilling", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 2000 m3",
			Help: "Blank: the rig's active pits full.", At: func(v *Volumes) any { return &v.Surface }},
		d{Key: "reserve", Label: "Reserve mud", Name: "Reserve mud to have at TD", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 5000 m3",
			Help: "Besides the active pits. Blank: as much as the new hole holds, washed out.", At: func(v *Volumes) any { return &v.Reserve }},
		d{Key: "loss_rate", Label: "Losses, hourly", Name: "Losses while drilling, by time", Topic: TopicMud, Kind: quantity.Flow, Range: "0 m3/h to 100 m3/h",
			Help: "Downhole, expected. Over the drilling time at the section's rate of penetration. Blank: none.", At: func(v *Volumes) any { return &v.LossRate }},
		d{Key: "loss_per_metre", Label: "Losses, by hole", Name: "Losses for each length of new hole", Topic: TopicMud, Kind: quantity.Capacity, Range: "0 m3/m to 2 m3/m",
			Help: "Filtration, seepage and surface together. Blank: none.", At: func(v *Volumes) any { return &v.LossPerMetre }},
		d{Key: "removal", Label: "Solids removed", Name: "Drilled solids removed by the equipment", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 100 %",
			Help: "Shakers and centrifuges together, of all that is drilled. Blank: dilution is not worked out.", At: func(v *Volumes) any { return &v.Removal }},
		d{Key: "solids", Label: "Solids allowed", Name: "Drilled solids allowed in the mud", Topic: TopicMud, Kind: quantity.Ratio, Range: "1 % to 20 %", Default: "5 %",
			Help: "Share of the volume to be kept by dilution.", At: func(v *Volumes) any { return &v.Solids }},
		d{Key: "on_cuttings", Label: "On cuttings", Name: "Mud lost on the cuttings, of their volume", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 300 %",
			Help: "For each volume of solids removed; with half to once their volume is common. Blank: none.", At: func(v *Volumes) any { return &v.OnCuttings }},
		d{Key: "behind", Label: "Left behind", Name: "Mud left behind pipe at the section's end", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 1000 m3",
			Help: "Above the cement, and below it in the rathole. Blank: the annulus above the planned top of cement.", At: func(v *Volumes) any { return &v.Behind }},
	)
	onlyThere(g, ToRig, "there is no riser: mud does not come back")
	return g
}
