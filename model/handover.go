package model

import "borewalk/model/quantity"

// Handover is one relief: who hands over to whom, when, and what the relief worked out by himself.
type Handover struct {
	Row
	From, To, Time, Remarks  string
	ToBit, BottomsUp, ToBump quantity.Value
	KillMud, Initial         quantity.Value
}

// LastHandover returns the latest handover and its row from 0, and false where there is none.
func (p *Plan) LastHandover() (h *Handover, row int, ok bool) {
	row = len(p.Handovers) - 1
	if row < 0 {
		return nil, row, false
	}
	return &p.Handovers[row], row, true
}

func handoverGroup() *Group {
	type d = declaration[Handover]
	text := func(key, label, name, help string, at func(*Handover) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Type: TextField, Help: help, At: at}
	}
	const own = "By hand, from the tally and the mud report, not from this program: its own value is shown once this is entered. "
	strokes := func(key, label, name, help string, at func(*Handover) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Kind: quantity.Strokes, Range: "1 stk to 100000 stk", Help: own + help, At: at}
	}
	noKill := func(p *Plan, _ *Handover) string {
		if i, ok := p.InWork(); ok && p.Sections[i].Returns == ToSeabed {
			return "there is no stack while returns go to the seabed"
		}
		return ""
	}
	noBump := func(p *Plan, _ *Handover) string {
		if i, ok := p.InWork(); ok && (p.Sections[i].Completion == OpenHole || p.Sections[i].Method != Cemented) {
			return "the section in work has no string that is cemented"
		}
		return ""
	}
	bump := strokes("to_bump", "To bump", "Strokes to bump the plug, recomputed", "While casing is run and cemented.", func(h *Handover) any { return &h.ToBump })
	mud := d{Key: "kill_mud", Label: "Kill mud", Name: "Density of the kill mud, recomputed", Topic: TopicHandover, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg",
		Help: own + "For the kick on the kill sheet.", At: func(h *Handover) any { return &h.KillMud }}
	initial := d{Key: "icp", Label: "ICP", Name: "Initial circulating pressure, recomputed", Topic: TopicHandover, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
		Help: own + "For the kick on the kill sheet.", At: func(h *Handover) any { return &h.Initial }}
	bump.When, mud.When, initial.When = noBump, noKill, noKill
	from := text("from", "Handed over by", "Handed over by", "Name and post.", func(h *Handover) any { return &h.From })
	to := text("to", "Taken over by", "Taken over by", "Name and post of the relief.", func(h *Handover) any { return &h.To })
	from.Brief, to.Brief = true, true
	return list("handover", "Handover", "A relief: from whom to whom, when, and what the relief worked out by himself. H shows the page and signs it.", TopicHandover, nil,
		func(p *Plan, _ Place) *[]Handover { return &p.Handovers },
		from, to,
		text("time", "When", "Day and time", "As year-month-day and hour, 2026-11-29 06:00.", func(h *Handover) any { return &h.Time }),
		strokes("to_bit", "Surface to bit", "Strokes from surface to bit, recomputed", "Of the first kind of pump.", func(h *Handover) any { return &h.ToBit }),
		strokes("bottoms_up", "Bottoms-up", "Strokes for bottoms-up, recomputed", "From the bit to where returns leave the hole, booster as planned; of the first kind of pump.", func(h *Handover) any { return &h.BottomsUp }),
		bump, mud, initial,
		text("remarks", "Remarks", "Remarks", "What was agreed at the handover.", func(h *Handover) any { return &h.Remarks }),
	)
}
