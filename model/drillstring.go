package model

import "borewalk/model/quantity"

// Items of a drill string.
const (
	ItemBit        = "bit"
	ItemOpener     = "opener"
	ItemReamer     = "underreamer"
	ItemNearBit    = "near-bit stabiliser"
	ItemStabiliser = "stabiliser"
	ItemCollar     = "collar"
	ItemMotor      = "motor"
	ItemSteerable  = "rotary steerable"
	ItemMeasuring  = "MWD/LWD"
	ItemJar        = "jar"
	ItemCrossover  = "crossover"
	ItemHeavy      = "heavy-weight"
	ItemPipe       = "drill pipe"
	ItemTool       = "tool"
	ItemOther      = "other"
)

// StringItems returns the items of a drill string, about in the order in which they stand, bottom up.
func StringItems() []string {
	return []string{ItemBit, ItemOpener, ItemReamer, ItemNearBit, ItemStabiliser, ItemCollar, ItemMotor, ItemSteerable, ItemMeasuring, ItemJar,
		ItemCrossover, ItemHeavy, ItemPipe, ItemTool, ItemOther}
}

// Classes of drill pipe by its wear.
const (
	ClassNew     = "new"
	ClassPremium = "premium"
	Class2       = "class 2"
)

func stringGroup(section *Group) *Group {
	type d = declaration[StringPart]
	return list("string", "String part", "A component of the drill string; bottom up, the highest reaches to the rotary.", TopicString, section,
		func(p *Plan, at Place) *[]StringPart { return &p.Sections[at.Outer].String },
		d{Key: "item", Brief: true, Label: "Item", Name: "Item", Topic: TopicString,
			Choices: StringItems(), Default: ItemPipe,
			Help: "Collars, heavy-weight and drill pipe take what is blank from the catalogue. An underreamer goes down folded: give its body.", At: func(c *StringPart) any { return &c.Item }},
		d{Key: "name", Label: "Name", Name: "Name", Topic: TopicString, Type: TextField, Help: "Own name of the component.", At: func(c *StringPart) any { return &c.Name }},
		d{Key: "size", Brief: true, Label: "OD", Name: "OD", Topic: TopicString, Kind: quantity.Diameter, Range: "2 in to 60 in",
			Help: "Body of the pipe, tool or stabiliser; cutting size of a bit or opener, blank for the section's. Enter opens the catalogue.", At: func(c *StringPart) any { return &c.Size }},
		d{Key: "weight", Label: "Weight", Name: "Nominal weight", Topic: TopicString, Kind: quantity.LinearMass, Range: "5 kg/m to 800 kg/m",
			Help: "Name weight of drill pipe, without tool joints.", At: func(c *StringPart) any { return &c.Weight }},
		d{Key: "grade", Label: "Grade", Name: "Grade", Topic: TopicString, Type: TextField, Help: "Such as S135.", At: func(c *StringPart) any { return &c.Grade }},
		d{Key: "class", Label: "Class", Name: "Class of the pipe by its wear", Topic: TopicString, Choices: []string{ClassNew, ClassPremium, Class2}, Default: ClassPremium,
			Help: "Premium keeps 80 % of the wall, class 2 70 %, as inspected.", At: func(c *StringPart) any { return &c.Class },
			When: func(_ *Plan, c *StringPart) string {
				if c.Item != ItemPipe {
					return "counts for drill pipe only"
				}
				return ""
			}},
		d{Key: "length", Brief: true, Label: "Length", Name: "Length", Topic: TopicString, Kind: quantity.Length, Range: "0.05 m to 15000 m",
			Help: "Blank for the highest part: it reaches to the rotary. Blank and counted: joints times the length of one.", At: func(c *StringPart) any { return &c.Length }},
		d{Key: "count", Label: "Joints", Name: "Number of joints or stands", Topic: TopicString, Kind: quantity.Count, Range: "1 to 1500",
			Help: "Gives the length where that is blank, with the length of one below.", At: func(c *StringPart) any { return &c.Count },
			When: func(_ *Plan, c *StringPart) string {
				if c.Length.IsSet() {
					return "the length is given"
				}
				return ""
			}},
		d{Key: "id", Label: "ID", Name: "ID", Topic: TopicString, Kind: quantity.Diameter, Range: "0.5 in to 20 in", Help: "Blank: the catalogue's.",
			At: func(c *StringPart) any { return &c.ID }},
		d{Key: "joint_od", Label: "Tool joint OD", Name: "Tool joint OD", Topic: TopicString, Kind: quantity.Diameter, Range: "2 in to 20 in",
			Help: "Largest diameter, over tool joints or blades: what must pass. Blank: the catalogue's.", At: func(c *StringPart) any { return &c.JointOD }},
		d{Key: "joint_id", Label: "Tool joint ID", Name: "Tool joint ID", Topic: TopicString, Kind: quantity.Diameter, Range: "0.5 in to 20 in",
			Help: "Least bore, through the tool joints: what drops through must pass it. Blank: the catalogue's, else the body's.", At: func(c *StringPart) any { return &c.JointID }},
		d{Key: "joint_length", Label: "Tool joints", Name: "Length of a tool joint, pin and box together", Topic: TopicString, Kind: quantity.Length, Range: "0 m to 3 m",
			Help: "Per joint of pipe: the share of the length that is as wide as the tool joint. Blank: 0.5 m, common practice, from memory.",
			At:   func(c *StringPart) any { return &c.JointLength }},
		d{Key: "joint_every", Label: "Joint of pipe", Name: "Length of a joint of pipe", Topic: TopicString, Kind: quantity.Length, Range: "1 m to 45 m",
			Help: "From tool joint to tool joint, or of each piece that is counted. Blank: 9.6 m, range 2, not for counting.", At: func(c *StringPart) any { return &c.JointEvery }},
		d{Key: "linear_mass", Label: "Weight, actual", Name: "Mass per length with tool joints", Topic: TopicString, Kind: quantity.LinearMass, Range: "5 kg/m to 2000 kg/m",
			Help: "Blank: the catalogue's with tool joints, or the steel of the body.", At: func(c *StringPart) any { return &c.LinearMass }},
		d{Key: "neck", Label: "Fishing neck", Name: "OD of the fishing neck", Topic: TopicString, Kind: quantity.Diameter, Range: "1 in to 20 in",
			Help: "What an overshot would take hold of. Measured before it goes in.", At: func(c *StringPart) any { return &c.Neck }},
		d{Key: "connection", Label: "Connection", Name: "Connection", Topic: TopicString, Type: TextField,
			Help: "Of the upper end, such as NC50 box.", At: func(c *StringPart) any { return &c.Connection }},
		d{Key: "drop", Label: "Pressure loss", Name: "Pressure loss through the part", Topic: TopicString, Kind: quantity.Pressure, Range: "0 bar to 300 bar",
			Help: "Maker's, at the flow and in the fluid below; goes with density and flow squared, in place of friction in the bore. Blank: friction in the bore.",
			At:   func(c *StringPart) any { return &c.Drop }},
		d{Key: "drop_flow", Label: "Loss at flow", Name: "Flow at which the loss is stated", Topic: TopicString, Kind: quantity.Flow, Range: "0.05 m3/min to 10 m3/min",
			Help: "Of the maker's curve.", At: func(c *StringPart) any { return &c.DropFlow }, When: lossless},
		d{Key: "drop_density", Label: "Loss in fluid", Name: "Density of the fluid in which the loss is stated", Topic: TopicString, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "Often water.", At: func(c *StringPart) any { return &c.DropDensity }, When: lossless},
		d{Key: "flow_least", Label: "Least flow", Name: "Least flow of the tool", Topic: TopicString, Kind: quantity.Flow, Range: "0.05 m3/min to 10 m3/min",
			Help: "With less it does not work. Blank: not compared.", At: func(c *StringPart) any { return &c.FlowLeast }},
		d{Key: "flow_most", Label: "Most flow", Name: "Most flow of the tool", Topic: TopicString, Kind: quantity.Flow, Range: "0.05 m3/min to 10 m3/min",
			Help: "With more it wears or breaks. Blank: not compared.", At: func(c *StringPart) any { return &c.FlowMost }},
	)
}

// lossless is the reason why the entries about a stated loss do not count for a part without one.
func lossless(_ *Plan, c *StringPart) string {
	if !c.Drop.IsSet() {
		return "no pressure loss is stated"
	}
	return ""
}
