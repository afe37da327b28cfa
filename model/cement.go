package model

import "borewalk/model/quantity"

// How cement is placed.
const (
	ByPlugs       = "plugs"
	ByInnerString = "inner string"
)

// Where a slurry's density, yield and mix fluid come from.
const (
	ByLaboratory = "laboratory"
	ByRecipe     = "recipe"
)

// Cement says how the string of a section is cemented. Slurries and what goes ahead of them stand in lists of their own.
type Cement struct {
	Placement                          string
	Excess, Losses                     quantity.Value
	InnerAboveShoe, StopShort          quantity.Value
	MudPV, MudYP                       quantity.Value
	Displacing                         quantity.Value
	DisplacingPV, DisplacingYP         quantity.Value
	Filled, Rathole                    quantity.Value
	MixRate, DisplaceRate              quantity.Value
	SlowRate, SlowLast                 quantity.Value
	LineTime, Wait                     quantity.Value
	Compressibility, BumpOver, Reserve quantity.Value
	Tub, Tank                          quantity.Value
}

// Slurry is one cement slurry, in the order of pumping: the one pumped last stands round the shoe and in the shoe track.
type Slurry struct {
	Row
	Name                                string
	Density, Top                        quantity.Value
	GivenBy, Class                      string
	Yield, MixFluid, MixDensity         quantity.Value
	Water                               quantity.Value
	Bentonite, Silica, Barite, Hematite quantity.Value
	Liquid, LiquidDensity               quantity.Value
	Thickening, StrengthTime            quantity.Value
	TestTemperature                     quantity.Value
	PV, YP                              quantity.Value
}

// Spacer is a spacer or wash ahead of the cement, in the order of pumping.
type Spacer struct {
	Row
	Name                    string
	Volume, Density, PV, YP quantity.Value
}

// cementing is the reason why entries of cement do not count in a section without any.
func cementing(_ *Plan, s *Section) string {
	switch {
	case s.Completion == OpenHole:
		return "the section stays open hole"
	case s.Method != Cemented:
		return "the string is not cemented"
	}
	return ""
}

// placed returns a condition on how the cement is placed.
func placed(how, otherwise string) func(*Plan, *Section) string {
	return func(p *Plan, s *Section) string {
		if why := cementing(p, s); why != "" {
			return why
		}
		if s.Cement.Placement != how {
			return otherwise
		}
		return ""
	}
}

func cementFields() []declaration[Section] {
	type d = declaration[Section]
	return []d{
		{Key: "placement", Label: "Placed by", Name: "Cement placed by", Topic: TopicCement, Choices: []string{ByPlugs, ByInnerString}, Default: ByPlugs, When: cementing,
			Help: "Plugs that land on the collar, or an inner string below the running tool, without plugs.", At: func(s *Section) any { return &s.Cement.Placement }},
		{Key: "excess", Label: "Excess, open", Name: "Excess over the open hole", Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 500 %", When: cementing,
			Help: "More slurry than the annulus in open hole holds, washout counted. Blank: none.", At: func(s *Section) any { return &s.Cement.Excess }},
		{Key: "losses", Label: "Slurry lost", Name: "Share of the slurry that is lost", Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 95 %", When: cementing,
			Help: "What the tops come to if this share of the slurry goes into the formation. Blank: none.", At: func(s *Section) any { return &s.Cement.Losses }},
		{Key: "inner_above_shoe", Label: "Inner string end", Name: "End of the inner string above the shoe", Topic: TopicCement, Kind: quantity.Length, Range: "0 m to 200 m",
			Required: true, When: placed(ByInnerString, "counts for an inner string only"), Help: "Below it the casing stays full of the last slurry.",
			At: func(s *Section) any { return &s.Cement.InnerAboveShoe }},
		{Key: "stop_short", Label: "Stop short by", Name: "Displacement kept short by", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 10 m3",
			When: placed(ByInnerString, "counts for an inner string only"), Help: "Slurry left in the inner string, so that the shoe is not over-displaced. Blank: none.",
			At: func(s *Section) any { return &s.Cement.StopShort }},
	}
}

// pumpingGroup declares rates, times and what is kept ready for the cement job of a section.
func pumpingGroup(section *Group) *Group {
	type d = declaration[Cement]
	const pumped = "Blank: times and pressures of the job are not computed."
	return part("pumping", "Rates, times, reserve", "How the cement job is pumped.", TopicCement, section, func(s *Section) *Cement { return &s.Cement },
		d{Key: "mix_rate", Label: "Mixing rate", Name: "Rate of spacer and slurry", Topic: TopicCement, Kind: quantity.CementRate, Range: "50 L/min to 5 m3/min", Inside: of(cementing),
			Help: pumped, At: func(c *Cement) any { return &c.MixRate }},
		d{Key: "displace_rate", Label: "Displaced at", Name: "Rate of displacement", Topic: TopicCement, Kind: quantity.CementRate, Range: "50 L/min to 8 m3/min", Inside: of(cementing),
			Help: pumped, At: func(c *Cement) any { return &c.DisplaceRate }},
		d{Key: "slow_rate", Label: "Slow rate", Name: "Rate towards the bump", Topic: TopicCement, Kind: quantity.CementRate, Range: "50 L/min to 5 m3/min", Inside: of(cementing),
			Help: "Blank: no slow-down.", At: func(c *Cement) any { return &c.SlowRate }},
		d{Key: "slow_last", Label: "Slow for last", Name: "Volume displaced at the slow rate", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 100 m3", Inside: of(cementing),
			Help: "Commonly the last tenth. Blank: none.", At: func(c *Cement) any { return &c.SlowLast }},
		d{Key: "line_time", Label: "Plugs, lines", Name: "Time for plugs and lines, pumps stopped", Topic: TopicCement, Kind: quantity.Hours, Range: "0 h to 10 h", Inside: of(cementing),
			Help: "Between slurry and displacement; the slurry thickens meanwhile. Blank: none.", At: func(c *Cement) any { return &c.LineTime }},
		d{Key: "wait", Label: "Wait on cement", Name: "Planned wait on cement", Topic: TopicCement, Kind: quantity.Hours, Range: "0 h to 240 h", Inside: of(cementing),
			Help: "From bump to drill-out.", At: func(c *Cement) any { return &c.Wait }},
		d{Key: "compressibility", Label: "Compression", Name: "Displacement lost to compression and leakage", Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 5 %",
			Inside: of(placed(ByPlugs, "there is no plug to land")), Help: "Share pumped on top before the plug lands; measured on the last job that bumped. Blank: none.",
			At: func(c *Cement) any { return &c.Compressibility }},
		d{Key: "bump_over", Label: "Bump over", Name: "Bump pressure over the final pressure", Topic: TopicCement, Kind: quantity.Pressure, Range: "0 bar to 400 bar",
			Inside: of(placed(ByPlugs, "there is no plug to land")), Help: "Added to the circulating pressure at which the plug lands. Blank: none.",
			At: func(c *Cement) any { return &c.BumpOver }},
		d{Key: "reserve", Label: "Reserve", Name: "Cement to be aboard over the need", Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 300 %", Inside: of(cementing),
			Help: "100 % is material for a second job. Blank: none.", At: func(c *Cement) any { return &c.Reserve }},
		d{Key: "tub", Label: "Left in tub", Name: "Slurry left in tub and lines", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 10 m3", Inside: of(cementing),
			Help: "Mixed on top, of each slurry. Blank: none.", At: func(c *Cement) any { return &c.Tub }},
		d{Key: "tank", Label: "Dead volume", Name: "Mix fluid that the tank keeps back", Topic: TopicCement, Kind: quantity.Volume, Range: "0 m3 to 20 m3", Inside: of(cementing),
			Help: "Made up on top, of each slurry. Blank: none.", At: func(c *Cement) any { return &c.Tank }},
	)
}

// cementFluidsGroup declares the fluids of a cement job besides spacers and slurries.
func cementFluidsGroup(section *Group) *Group {
	type d = declaration[Cement]
	return part("fluids", "Other fluids", "What stands in the well when the job begins, and what displaces the cement.", TopicCement, section,
		func(s *Section) *Cement { return &s.Cement },
		d{Key: "mud_pv", Label: "PV, conditioned", Name: "Plastic viscosity of the mud as conditioned", Topic: TopicCement, Kind: quantity.Viscosity, Range: "0.5 cP to 200 cP", Inside: of(cementing),
			Help: "Of the mud in the hole before cementing. Blank: as drilled with.", At: func(c *Cement) any { return &c.MudPV }},
		d{Key: "mud_yp", Label: "YP, conditioned", Name: "Yield point of the mud as conditioned", Topic: TopicCement, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 150 lbf/100ft2", Inside: of(cementing),
			Help: "Of the mud in the hole before cementing; commonly halved. Blank: as drilled with.", At: func(c *Cement) any { return &c.MudYP }},
		d{Key: "displacing", Label: "Displaced with", Name: "Density of the displacing fluid", Topic: TopicCement, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Inside: of(cementing),
			Help: "Blank: the mud in the hole.", At: func(c *Cement) any { return &c.Displacing }},
		d{Key: "displacing_pv", Label: "PV, displacing", Name: "Plastic viscosity of the displacing fluid", Topic: TopicCement, Kind: quantity.Viscosity, Range: "0.5 cP to 200 cP", Inside: of(cementing),
			Help: "Blank: that of the mud in the hole.", At: func(c *Cement) any { return &c.DisplacingPV }},
		d{Key: "displacing_yp", Label: "YP, displacing", Name: "Yield point of the displacing fluid", Topic: TopicCement, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 150 lbf/100ft2", Inside: of(cementing),
			Help: "Blank: that of the mud in the hole.", At: func(c *Cement) any { return &c.DisplacingYP }},
		d{Key: "filled", Label: "Casing full of", Name: "Density of the fluid in the string before the job", Topic: TopicCement, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Inside: of(cementing),
			Help: "What it was filled with on its way in. Blank: the mud in the hole.", At: func(c *Cement) any { return &c.Filled }},
		d{Key: "rathole_density", Label: "Rathole fluid", Name: "Density of the fluid left in the rathole", Topic: TopicCement, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Inside: of(cementing),
			Help: "Heavy or thick, so that slurry does not swap with it. Blank: what the hole is full of.", At: func(c *Cement) any { return &c.Rathole }},
	)
}

func slurryGroup(section *Group) *Group {
	type d = declaration[Slurry]
	recipe := func(_ *Plan, s *Slurry) string {
		if s.GivenBy != ByRecipe {
			return "counts for a slurry by recipe only"
		}
		return ""
	}
	laboratory := func(_ *Plan, s *Slurry) string {
		if s.GivenBy == ByRecipe {
			return "follows from the recipe"
		}
		return ""
	}
	share := func(key, label, name string, at func(*Slurry) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicCement, Kind: quantity.Ratio, Range: "0 % to 150 %", When: recipe,
			Help: "By weight of cement, dry blended.", At: at}
	}
	return list("slurry", "Slurry", "A cement slurry; in the order of pumping, the last one stands round the shoe.", TopicCement, section,
		func(p *Plan, at Place) *[]Slurry { return &p.Sections[at.Outer].Slurries },
		d{Key: "name", Brief: true, Label: "Slurry", Name: "Slurry", Topic: TopicCement, Type: TextField, Help: "Such as lead or tail.", At: func(s *Slurry) any { return &s.Name }},
		d{Key: "density", Brief: true, Label: "Density", Name: "Slurry density", Topic: TopicCement, Kind: quantity.Density, Range: "0.9 sg to 2.8 sg", Required: true,
			Help: "By recipe: the water follows from it; blank takes the water that is given, or the class's.", At: func(s *Slurry) any { return &s.Density }},
		d{Key: "top", Moves: WithWell, Brief: true, Label: "Top", Name: "Top of the slurry, along hole", Topic: TopicCement, Kind: quantity.Length, Range: "1 m to 15000 m", Required: true,
			Help: "Planned, from RKB; the slurry reaches down to the next one's top, the last to the shoe.", At: func(s *Slurry) any { return &s.Top }},
		d{Key: "given_by", Label: "Given by", Name: "Slurry given by", Topic: TopicCement, Choices: []string{ByLaboratory, ByRecipe}, Default: ByLaboratory,
			Help: "Laboratory: yield and mix fluid are entered. Recipe: they follow from absolute volumes.", At: func(s *Slurry) any { return &s.GivenBy }},
		d{Key: "yield", Label: "Yield", Name: "Slurry yield", Topic: TopicCement, Kind: quantity.SlurryYield, Range: "40 L/100kg to 400 L/100kg", When: laboratory,
			Help: "Slurry from each mass of dry cement.", At: func(s *Slurry) any { return &s.Yield }},
		d{Key: "mix_fluid", Label: "Mix fluid", Name: "Mix fluid", Topic: TopicCement, Kind: quantity.MixWater, Range: "20 L/100kg to 300 L/100kg", When: laboratory,
			Help: "Water with its additives for each mass of dry cement.", At: func(s *Slurry) any { return &s.MixFluid }},
		d{Key: "mix_density", Label: "Mix fluid dens.", Name: "Density of the mix water", Topic: TopicCement, Kind: quantity.Density, Range: "0.95 sg to 1.3 sg",
			Help: "Sea water 1.025. Blank: fresh water.", At: func(s *Slurry) any { return &s.MixDensity }},
		d{Key: "class", Label: "Class", Name: "API class of the cement", Topic: TopicCement, Choices: []string{"A", "C", "G", "H"}, When: recipe,
			Help: "Its water for a neat slurry (API Spec 10A). Blank: class G.", At: func(s *Slurry) any { return &s.Class }},
		d{Key: "water", Label: "Water", Name: "Mix water", Topic: TopicCement, Kind: quantity.MixWater, Range: "0 L/100kg to 300 L/100kg", When: recipe,
			Help: "Counts when no density is given. Blank: the class's.", At: func(s *Slurry) any { return &s.Water }},
		share("bentonite", "Bentonite", "Bentonite", func(s *Slurry) any { return &s.Bentonite }),
		share("silica", "Silica", "Silica flour", func(s *Slurry) any { return &s.Silica }),
		share("barite", "Barite", "Barite", func(s *Slurry) any { return &s.Barite }),
		share("hematite", "Hematite", "Hematite", func(s *Slurry) any { return &s.Hematite }),
		d{Key: "liquid", Label: "Liquids", Name: "Liquid additives", Topic: TopicCement, Kind: quantity.MixWater, Range: "0 L/100kg to 100 L/100kg", When: recipe,
			Help: "All of them together.", At: func(s *Slurry) any { return &s.Liquid }},
		d{Key: "liquid_density", Label: "Liquids, density", Name: "Density of the liquid additives", Topic: TopicCement, Kind: quantity.Density, Range: "0.7 sg to 2 sg", When: recipe,
			Help: "Mean density. Blank: that of water.", At: func(s *Slurry) any { return &s.LiquidDensity }},
		d{Key: "thickening", Label: "Thickening", Name: "Thickening time", Topic: TopicCement, Kind: quantity.Hours, Range: "0.5 h to 48 h",
			Help: "Of the laboratory, on rig samples, at the temperature and pressure of the job.", At: func(s *Slurry) any { return &s.Thickening }},
		d{Key: "test_temperature", Label: "Tested at", Name: "Temperature of the thickening test", Topic: TopicCement, Kind: quantity.Temperature, Range: "0 C to 250 C",
			Help: "Of the laboratory: circulating temperature at the bottom, BHCT. Compared with the hotter of those worked out here; a cooler test shows too long a time.", At: func(s *Slurry) any { return &s.TestTemperature }},
		d{Key: "strength_time", Label: "Time to 500 psi", Name: "Time to a strength of 500 psi", Topic: TopicCement, Kind: quantity.Hours, Range: "0.5 h to 240 h",
			Help: "Of the laboratory, at the coldest temperature that it will have: the seabed's near the top.", At: func(s *Slurry) any { return &s.StrengthTime }},
		d{Key: "pv", Label: "PV", Name: "Plastic viscosity", Topic: TopicCement, Kind: quantity.Viscosity, Range: "0.5 cP to 500 cP",
			Help: "For friction. Blank: pressures while pumping are not computed.", At: func(s *Slurry) any { return &s.PV }},
		d{Key: "yp", Label: "YP", Name: "Yield point", Topic: TopicCement, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 200 lbf/100ft2",
			Help: "For friction. Blank: pressures while pumping are not computed.", At: func(s *Slurry) any { return &s.YP }},
	)
}

func spacerGroup(section *Group) *Group {
	type d = declaration[Spacer]
	return list("spacer", "Spacer", "A spacer or wash ahead of the cement; in the order of pumping.", TopicCement, section,
		func(p *Plan, at Place) *[]Spacer { return &p.Sections[at.Outer].Spacers },
		d{Key: "name", Brief: true, Label: "Spacer", Name: "Spacer or wash", Topic: TopicCement, Type: TextField, Help: "Own name.", At: func(s *Spacer) any { return &s.Name }},
		d{Key: "volume", Brief: true, Label: "Volume", Name: "Volume", Topic: TopicCement, Kind: quantity.Volume, Range: "0.1 m3 to 200 m3", Required: true,
			Help: "Common practice: 150 m of annulus or ten minutes of contact.", At: func(s *Spacer) any { return &s.Volume }},
		d{Key: "density", Brief: true, Label: "Density", Name: "Density", Topic: TopicCement, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Required: true,
			Help: "Between mud and slurry.", At: func(s *Spacer) any { return &s.Density }},
		d{Key: "pv", Label: "PV", Name: "Plastic viscosity", Topic: TopicCement, Kind: quantity.Viscosity, Range: "0.5 cP to 300 cP",
			Help: "For friction. Blank: pressures while pumping are not computed.", At: func(s *Spacer) any { return &s.PV }},
		d{Key: "yp", Label: "YP", Name: "Yield point", Topic: TopicCement, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 150 lbf/100ft2",
			Help: "For friction. Blank: pressures while pumping are not computed.", At: func(s *Spacer) any { return &s.YP }},
	)
}
