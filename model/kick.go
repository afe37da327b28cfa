package model

import "borewalk/model/quantity"

// What the intensity of a kick is counted from.
const (
	OverPore = "pore pressure"
	OverMud  = "mud"
)

// Whether the friction of the choke line counts against the shoe while a kick is circulated.
const (
	LineCounts = "counts"
	LineNot    = "held off by the choke"
)

// The equations of the compressibility factor, by the names that calc knows them by.
const (
	ZDranchukAbouKassem = "Dranchuk and Abou-Kassem"
	ZHallYarborough     = "Hall and Yarborough"
	ZBrillBeggs         = "Brill and Beggs"
)

// Kick is the influx that a section is planned for.
type Kick struct {
	Over, Equation, Line            string
	Intensity, Least, Volume        quantity.Value
	Gravity, Density                quantity.Value
	Allowance, Detected, StackTraps quantity.Value
}

func kickGroup(section *Group) *Group {
	type d = declaration[Kick]
	real := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Kick.Density.IsSet() {
			return "an influx of one density is taken"
		}
		return ""
	}
	g := part("kick", "Kick planned for", "The influx that the shoe is to stand.", TopicControl, section, func(s *Section) *Kick { return &s.Kick },
		d{Key: "intensity", Label: "Kick intensity", Name: "Kick intensity, as EMW at TD", Topic: TopicControl, Kind: quantity.EMW, Range: "0 sg to 0.5 sg",
			Help: "Formation pressure at TD over the next entry; never taken as less than the mud's, which is a swabbed kick. Blank: none.", At: func(k *Kick) any { return &k.Intensity }},
		d{Key: "over", Label: "Intensity over", Name: "What the intensity is counted from", Topic: TopicControl, Choices: []string{OverPore, OverMud}, Default: OverPore,
			Help: "Over the prognosis' pore pressure, of which mud above it uses up a part, or over the mud.", At: func(k *Kick) any { return &k.Over }},
		d{Key: "least", Label: "Least tolerance", Name: "Least kick tolerance wanted", Topic: TopicControl, Kind: quantity.Volume, Range: "0.5 m3 to 100 m3",
			Help: "Volume at TD, shut in. Blank: by the size of the hole (common practice, from memory).", At: func(k *Kick) any { return &k.Least }},
		d{Key: "volume", Label: "Influx planned", Name: "Volume of the influx on the kill sheet", Topic: TopicControl, Kind: quantity.Volume, Range: "0.5 m3 to 100 m3",
			Help: "Taken in before the well is shut in. Blank: the least tolerance. Gain and pressures read, on the kill sheet, go before it.", At: func(k *Kick) any { return &k.Volume }},
		d{Key: "gravity", Label: "Gas gravity", Name: "Gravity of the gas, air 1", Topic: TopicControl, Kind: quantity.Number, Range: "0.55 to 1.2", Default: "0.65", Inside: real,
			Help: "Density over that of air. Blank: 0.65 (common practice, from memory).", At: func(k *Kick) any { return &k.Gravity }},
		d{Key: "z_by", Label: "Z by", Name: "Compressibility factor by", Topic: TopicControl, Choices: []string{ZDranchukAbouKassem, ZHallYarborough, ZBrillBeggs}, Default: ZDranchukAbouKassem, Inside: real,
			Help: "With pseudo-critical values by Sutton, for sweet gas.", At: func(k *Kick) any { return &k.Equation }},
		d{Key: "density", Label: "Influx density", Name: "One density of the influx", Topic: TopicControl, Kind: quantity.Density, Range: "0.05 sg to 1.2 sg",
			Help: "The simple model: this weight everywhere, volume by Boyle. Blank: real gas by pressure and temperature.", At: func(k *Kick) any { return &k.Density }},
		d{Key: "line", Label: "Choke line", Name: "Choke-line friction while the kick is circulated", Topic: TopicControl, Choices: []string{LineCounts, LineNot}, Default: LineCounts,
			Help: "Counts: with that of the annulus above, it presses on the shoe on top of what is to be held. Held off: the choke is opened by as much while there is pressure to give away.", At: func(k *Kick) any { return &k.Line }},
		d{Key: "allowance", Label: "Choke allowance", Name: "Allowance for working the choke", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 50 bar",
			Help: "Kept back at the shoe for the operator's error. Blank: none.", At: func(k *Kick) any { return &k.Allowance }},
		d{Key: "detected", Label: "Gain noticed at", Name: "Gain that the rig surely notices", Topic: TopicControl, Kind: quantity.Volume, Range: "0.1 m3 to 20 m3",
			Help: "With the well shut in. Blank: not compared with the tolerance.", At: func(k *Kick) any { return &k.Detected }},
		d{Key: "trapped", Label: "Trapped in stack", Name: "Volume below the closed preventer that traps gas", Topic: TopicControl, Kind: quantity.Volume, Range: "0 m3 to 10 m3",
			Help: "Between the choke outlet and the preventer that was closed. Blank: the bore over the wellhead up to the top of the stack.", At: func(k *Kick) any { return &k.StackTraps }},
	)
	onlyBehindStack(g)
	return g
}

// onlyBehindStack marks the fields of a table as counting with BOP and riser only, beside what else keeps them from counting.
func onlyBehindStack(g *Group) {
	for _, f := range g.Fields {
		otherwise := f.inside
		f.inside = func(p *Plan, at Place) string {
			switch {
			case p.Sections[at.Outer].Returns != ToRig:
				return "there is no stack while returns go to the seabed"
			case otherwise != nil:
				return otherwise(p, at)
			}
			return ""
		}
	}
}
