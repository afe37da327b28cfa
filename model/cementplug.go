package model

import "borewalk/model/quantity"

// Where a cement plug is set.
const (
	InOpenHole = "hole"
	InCasing   = "casing"
)

// CementPlug is a balanced plug of cement, set through open-ended pipe: to kick off from, or to abandon.
type CementPlug struct {
	Row
	Name, In                 string
	Base, Top, Excess        quantity.Value
	Density, Yield, MixFluid quantity.Value
	Ahead, Short             quantity.Value
	PipeOD, PipeID           quantity.Value
}

func cementPlugGroup(section *Group) *Group {
	type d = declaration[CementPlug]
	return list("plug", "Cement plug", "A balanced plug set through open-ended pipe, to kick off from or to abandon.", TopicCement, section,
		func(p *Plan, at Place) *[]CementPlug { return &p.Sections[at.Outer].Plugs },
		d{Key: "name", Brief: true, Label: "Plug", Name: "Cement plug", Topic: TopicCement, Type: TextField, Help: "What it is for.", At: func(c *CementPlug) any { return &c.Name }},
		d{Key: "in", Label: "Set in", Name: "Plug set in", Topic: TopicCement, Choices: []string{InOpenHole, InCasing}, Default: InOpenHole,
			Help: "This section's hole before its string is run, or the string of this section and those above.", At: func(c *CementPlug) any { return &c.In }},
		d{Key: "base", Brief: true, Moves: WithWell, Label: "Base", Name: "Base of the plug, along hole", Topic: TopicCement, Kind: quantity.Length, Range: "1 m to 15000 m", Required: true,
			Help: "Where the pipe's end is; the plug must stand on something.", At: func(c *CementPlug) any { return &c.Base }},
		d{Key: "top", Brief: true, Moves: WithWell, Label: "Top", Name: "Top of the plug with the pipe out, along hole", Topic: TopicCement, Kind: quantity.Length, Range: "1 m to 15000 m", Required: true,
			Help: "With the pipe out of it.", At: func(c *CementPlug) any { return &c.Top }},
		d{Key: "excess", Label: "Excess, open", Name: "Excess over the open hole", Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 300 %",
			Help: "On the hole's volume, washout or caliper counted. Blank: none.", At: func(c *CementPlug) any { return &c.Excess }},
		d{Key: "density", Label: "Density", Name: "Slurry density", Topic: TopicCement, Kind: quantity.Density, Range: "0.9 sg to 2.8 sg",
			Help: "Printed with the plug; volumes do not depend on it.", At: func(c *CementPlug) any { return &c.Density }},
		d{Key: "yield", Label: "Yield", Name: "Slurry yield", Topic: TopicCement, Kind: quantity.SlurryYield, Range: "40 L/100kg to 400 L/100kg",
			Help: "Blank: the dry cement is not computed.", At: func(c *CementPlug) any { return &c.Yield }},
		d{Key: "mix_fluid", Label: "Mix fluid", Name: "Mix fluid", Topic: TopicCement, Kind: quantity.MixWater, Range: "20 L/100kg to 300 L/100kg",
			Help: "Blank: the mix fluid is not computed.", At: func(c *CementPlug) any { return &c.MixFluid }},
		d{Key: "ahead", Label: "Spacer ahead", Name: "Spacer ahead of the slurry", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 50 m3",
			Help: "The spacer behind follows, so that the two stand level. Blank: none.", At: func(c *CementPlug) any { return &c.Ahead }},
		d{Key: "short", Label: "Stop short by", Name: "Displacement kept short by", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 5 m3",
			Help: "So that the pipe pulls dry. Blank: none.", At: func(c *CementPlug) any { return &c.Short }},
		d{Key: "pipe_od", Label: "Pipe OD", Name: "OD of the pipe or stinger", Topic: TopicCement, Kind: quantity.Diameter, Range: "1 in to 10 in",
			Help: "All the way up. Blank: the highest pipe of the section's string.", At: func(c *CementPlug) any { return &c.PipeOD }},
		d{Key: "pipe_id", Label: "Pipe ID", Name: "ID of the pipe or stinger", Topic: TopicCement, Kind: quantity.Diameter, Range: "0.5 in to 9 in",
			Help: "Blank: of the highest pipe of the section's string.", At: func(c *CementPlug) any { return &c.PipeID }},
	)
}
