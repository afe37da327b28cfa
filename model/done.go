package model

import "borewalk/model/quantity"

// DoneRow is an operation of a section as it was done.
type DoneRow struct {
	Row
	Step, Started, Ended, Note string
	Depth                      quantity.Value
}

func doneGroup(section *Group) *Group {
	type d = declaration[DoneRow]
	text := func(key, label, name, help string, at func(*DoneRow) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Type: TextField, Help: help, At: at}
	}
	const moment = "As year-month-day and hour, 2027-03-01 06:00. "
	g := list("done", "Step done", "An operation as it was done: the forecast goes on from the end of the last one.", TopicTime, section,
		func(p *Plan, at Place) *[]DoneRow { return &p.Sections[at.Outer].Done },
		text("step", "Step", "Key of the operation that was done", "As the steps page gives it, such as drill or run_casing; own.1 for the first own one.", func(r *DoneRow) any { return &r.Step }),
		text("started", "Started", "When it was started", moment+"Blank: when the operation before it had ended.", func(r *DoneRow) any { return &r.Started }),
		text("ended", "Ended", "When it had ended", moment+"Blank: it is still going on.", func(r *DoneRow) any { return &r.Ended }),
		d{Key: "depth", Moves: WithWell, Label: "Hole at", Name: "Depth of the hole when it had ended", Topic: TopicTime, Kind: quantity.Length, Range: "1 m to 15000 m",
			Help: "Along hole. Blank: as planned.", At: func(r *DoneRow) any { return &r.Depth }},
		text("note", "Note", "What held it up, or helped", "For the record.", func(r *DoneRow) any { return &r.Note }),
	)
	g.Field("step").Brief, g.Field("ended").Brief = true, true
	return g
}
