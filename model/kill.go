package model

import "borewalk/model/quantity"

// How a kick is circulated out.
const (
	WaitAndWeight = "wait and weight"
	Drillers      = "driller's"
)

// The lines that returns come up while a kick is circulated out.
const (
	ByChokeLine = "choke line"
	ByKillLine  = "kill line"
	ByBothLines = "both lines"
)

// ByRiser is the way of the returns for a slow circulating pressure with the preventers open.
const ByRiser = "riser"

// Kill says how a kick in a section is killed, and what was read when the well was shut in.
type Kill struct {
	Method, Line             string
	Pump, Rate               quantity.Value
	LineLoss, LineLossMud    quantity.Value
	DrillPipe, Annulus, Gain quantity.Value
	Rise, RiseTime           quantity.Value
	Overbalance, Bit         quantity.Value
}

// Methods returns the method of the kill that is planned, and the other one.
func (k *Kill) Methods() (planned, other string) {
	if k.Method == WaitAndWeight {
		return WaitAndWeight, Drillers
	}
	return Drillers, WaitAndWeight
}

func killGroup(section *Group) *Group {
	type d = declaration[Kill]
	g := part("kill", "Kill sheet", "How a kick is circulated out, and what was read when the well was shut in.", TopicControl, section, func(s *Section) *Kill { return &s.Kill },
		d{Key: "drill_pipe", Label: "SIDPP", Name: "Shut-in drill pipe pressure read (SIDPP)", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 500 bar",
			Help: "Of a kick that has come in; opened over a float it is found by bumping. Blank: of the planned kick.", At: func(k *Kill) any { return &k.DrillPipe }},
		d{Key: "annulus", Label: "SICP", Name: "Shut-in choke pressure read (SICP)", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
			Help: "Of a kick that has come in. Blank: of the planned kick.", At: func(k *Kill) any { return &k.Annulus }},
		d{Key: "gain", Label: "Pit gain", Name: "Pit gain read", Topic: TopicControl, Kind: quantity.Volume, Range: "0.1 m3 to 100 m3",
			Help: "Of a kick that has come in. Blank: of the planned kick.", At: func(k *Kill) any { return &k.Gain }},
		d{Key: "rise", Label: "Rise, shut in", Name: "Rise of the shut-in choke pressure", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 200 bar",
			Help: "Within the time below, well shut in and nothing bled: gas on its way up. Blank: only what a formula expects is shown.", At: func(k *Kill) any { return &k.Rise }},
		d{Key: "rise_time", Label: "Within", Name: "Time within which the pressure rose", Topic: TopicControl, Kind: quantity.Time, Range: "1 min to 1440 min",
			Help: "Of the rise above.", At: func(k *Kill) any { return &k.RiseTime }},
		d{Key: "bit", Moves: WithWell, Label: "Bit at", Name: "Depth of bit and hole at the kick, along hole", Topic: TopicControl, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "On bottom where the kick comes in. Blank: the section's TD.", At: func(k *Kill) any { return &k.Bit }},
		d{Key: "method", Label: "Method", Name: "Method of the kill", Topic: TopicControl, Choices: []string{Drillers, WaitAndWeight}, Default: Drillers,
			Help: "Driller's: two circulations, the influx pumped out with the old mud, then kill mud. Wait and weight: one, kill mud from the start. The operator's manual decides.", At: func(k *Kill) any { return &k.Method }},
		d{Key: "pump", Label: "Kind of pump", Name: "Which of the rig's kinds of pump", Topic: TopicControl, Kind: quantity.Count, Range: "1 to 9", Default: "1",
			Help: "Row of the pumps on the well page. Blank: the first.", At: func(k *Kill) any { return &k.Pump }},
		d{Key: "rate", Label: "Kill rate", Name: "Rate of the kill pump", Topic: TopicControl, Kind: quantity.StrokeRate, Range: "5 spm to 80 spm", Default: "30 spm",
			Help: "One of the slow rates whose pressures are recorded. Blank: 30 spm.", At: func(k *Kill) any { return &k.Rate }},
		d{Key: "line", Label: "Returns by", Name: "Returns come up by", Topic: TopicControl, Choices: []string{ByChokeLine, ByKillLine, ByBothLines}, Default: ByChokeLine,
			Help: "From the stack to the manifold.", At: func(k *Kill) any { return &k.Line }},
		d{Key: "line_loss", Label: "Line friction", Name: "Friction of that line at the kill rate, measured", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 200 bar",
			Help: "Measured in the mud below. Blank: from slow rates by riser and by line where both are recorded, else worked out by the section's correlation.", At: func(k *Kill) any { return &k.LineLoss }},
		d{Key: "line_loss_mud", Label: "Measured in mud", Name: "Mud in which the line's friction was measured", Topic: TopicControl, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "Friction is taken to go with the density. Blank: the section's mud.", At: func(k *Kill) any { return &k.LineLossMud }},
		d{Key: "overbalance", Label: "Kept over", Name: "Pressure kept over the formation's while killing", Topic: TopicControl, Kind: quantity.Pressure, Range: "0 bar to 30 bar",
			Help: "Held at the choke; not in the kill mud. Blank: none.", At: func(k *Kill) any { return &k.Overbalance }},
	)
	onlyBehindStack(g)
	return g
}

// SlowRate is a slow circulating pressure as recorded.
type SlowRate struct {
	Row
	Path, Time                       string
	Pump, Rate, Pressure, Mud, Depth quantity.Value
}

func slowRateGroup(section *Group) *Group {
	type d = declaration[SlowRate]
	g := list("slow_rate", "Slow rate", "A slow circulating pressure as recorded, for each pump and way of the returns.", TopicControl, section,
		func(p *Plan, at Place) *[]SlowRate { return &p.Sections[at.Outer].SlowRates },
		d{Key: "rate", Brief: true, Label: "Rate", Name: "Slow pump rate", Topic: TopicControl, Kind: quantity.StrokeRate, Range: "5 spm to 80 spm", Required: true,
			Help: "20, 30 and 40 spm are common.", At: func(r *SlowRate) any { return &r.Rate }},
		d{Key: "pressure", Brief: true, Label: "Pressure", Name: "Slow circulating pressure", Topic: TopicControl, Kind: quantity.Pressure, Range: "0.5 bar to 300 bar", Required: true,
			Help: "At the gauge of the choke panel.", At: func(r *SlowRate) any { return &r.Pressure }},
		d{Key: "path", Brief: true, Label: "Returns by", Name: "Way of the returns", Topic: TopicControl, Choices: []string{ByRiser, ByChokeLine, ByKillLine, ByBothLines}, Default: ByRiser,
			Help: "By the riser with the preventers open, or by a line with one closed.", At: func(r *SlowRate) any { return &r.Path }},
		d{Key: "pump", Label: "Kind of pump", Name: "Which of the rig's kinds of pump", Topic: TopicControl, Kind: quantity.Count, Range: "1 to 9", Default: "1",
			Help: "Row of the pumps on the well page. Blank: the first.", At: func(r *SlowRate) any { return &r.Pump }},
		d{Key: "mud", Label: "Mud", Name: "Mud in the hole when it was recorded", Topic: TopicControl, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
			Help: "When the mud has changed since, the pressure is scaled with it and marked: record it anew. Blank: the section's mud.", At: func(r *SlowRate) any { return &r.Mud }},
		d{Key: "depth", Moves: WithWell, Label: "Bit at", Name: "Depth of the bit when it was recorded", Topic: TopicControl, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Along hole.", At: func(r *SlowRate) any { return &r.Depth }},
		d{Key: "time", Label: "Recorded", Name: "When it was recorded", Topic: TopicControl, Type: TextField, Help: "Date and time.", At: func(r *SlowRate) any { return &r.Time }},
	)
	onlyBehindStack(g)
	return g
}
