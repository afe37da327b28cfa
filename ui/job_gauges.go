package ui

import (
	"borewalk/calc"
	"borewalk/model/quantity"
)

// gauge is a line of the page: a figure with its name, and a second one beside it. Without a first figure the name has half of the
// line.
type gauge struct{ name, value, second string }

// gauges returns what the gauges show at the moment.
func (u *player) gauges(p *Planner) []gauge {
	switch u.job.Kind {
	case calc.KillJob:
		return u.killGauges(p)
	case calc.DisconnectJob:
		return u.disconnectGauges(p)
	}
	return u.cementGauges(p)
}

// pumpedOf says how much has been pumped of how much in all.
func (u *player) pumpedOf(p *Planner) string {
	return p.show(u.frame().Pumped, quantity.Volume) + " of " + p.amount(u.job.Frames[len(u.job.Frames)-1].Pumped, quantity.Volume)
}

// strokes returns the pump strokes of the moment with a space before them, nothing where they are not known.
func (u *player) strokes(p *Planner) string {
	if u.frame().Strokes > 0 {
		return " " + p.show(u.frame().Strokes, quantity.Strokes)
	}
	return ""
}

func (u *player) cementGauges(p *Planner) []gauge {
	f := u.frame()
	stage, volume := "pumps stand", p.show(f.Of, quantity.Volume)
	switch {
	case f.Fluid < 0 && f.Rate > 0:
		stage = "pumps stop"
	case f.Fluid >= 0 && f.Behind > 0: // what is counted to the bump
		stage, volume = "displaced", p.show(f.Behind, quantity.Volume)+u.strokes(p)
	case f.Fluid >= 0:
		stage = "of " + p.glyphs.Translate(u.name(f.Fluid))
	}
	level, returns, static := "full", p.amount(f.Returns, quantity.CementRate), ""
	switch {
	case !u.job.Dynamic: // how the fluids run ahead is not worked out
		level, returns, static = "-", "-", "static"
	case f.Level > 0:
		level = p.show(f.Level, quantity.Length)
	}
	return []gauge{
		{"Pumped", u.pumpedOf(p), ""},
		{stage, "", volume},
		{"Time", p.show(f.Time, quantity.Time), "Level " + level},
		{"Rate", p.show(f.Rate, quantity.CementRate) + ", returns " + returns, ""},
		{"Pressure", p.show(f.Pressure, quantity.Pressure), static},
	}
}

func (u *player) killGauges(p *Planner) []gauge {
	f := u.frame()
	stage, rate := "pumps stand", p.show(f.Rate, quantity.Flow)
	if f.Fluid >= 0 {
		stage, rate = p.show(f.Of, quantity.Volume)+u.strokes(p), rate+", "+p.glyphs.Translate(u.name(f.Fluid))
	}
	return []gauge{
		{"Pumped", u.pumpedOf(p), ""},
		{"Stage", stage, ""},
		{"Time", p.show(f.Time, quantity.Time), ""},
		{"Rate", rate, ""},
		{"Standpipe", p.show(f.Pressure, quantity.Pressure), "Choke " + p.show(f.Choke, quantity.Pressure)},
		{"Pit gain", p.show(f.Gain, quantity.Volume), "Gas " + p.show(f.Gas, quantity.Volume)},
	}
}

func (u *player) disconnectGauges(p *Planner) []gauge {
	f := u.frame()
	riser, pipe, stack := "gone", "hung off in the stack", "closed round the string"
	if len(f.Riser) > 0 && !u.state().Gone() {
		riser = "full of " + p.glyphs.Translate(u.name(f.Riser[0].Fluid))
	}
	if f.Parted {
		pipe, stack = "cut in the stack", "closed over the cut"
	}
	return []gauge{{"Riser", riser, ""}, {"String", pipe, ""}, {"Stack", stack, ""}}
}
