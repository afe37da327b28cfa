package model

import (
	"slices"

	"borewalk/model/quantity"
)

// Status says how the well stands now, as the people on watch see it.
type Status struct {
	Section, Hole, Bit                       quantity.Value
	Step, Returns                            string
	Flow, Standpipe                          quantity.Value
	Active, Reserve, Slug, PitZero, TripTank quantity.Value
	Losses, Gas, Overpull, Drag              quantity.Value
	Alarms, Equipment, Permits, Deviations   string
	Weather, Circle                          string
	Heave                                    quantity.Value
	Abnormal                                 []Abnormal
}

// Abnormal is something that the relief would not expect.
type Abnormal struct {
	Row
	Text string
}

// PumpsOff says that nothing is pumped, so that nothing is seen of returns.
const PumpsOff = "pumps off"

// OnWatch reports whether anything is entered of how the well stands: a plan in the office has no watch.
func (p *Plan) OnWatch() bool {
	return len(p.Status.Abnormal)+len(p.Handovers) > 0 ||
		slices.ContainsFunc(StatusGroup().Fields, func(f *Field) bool { return f.get(&p.Status).IsSet() })
}

// InWork returns the index of the section that is being worked, and false where the status names none that there is.
func (p *Plan) InWork() (section int, ok bool) {
	if !p.Status.Section.IsSet() {
		return 0, false
	}
	section = int(p.Status.Section.SI) - 1
	return section, section >= 0 && section < len(p.Sections)
}

// withoutRiser is the reason why what comes up the riser does not count.
func withoutRiser(p *Plan, _ *Status) string {
	if i, ok := p.InWork(); ok && p.Sections[i].Returns == ToSeabed {
		return "returns go to the seabed"
	}
	return ""
}

func statusGroup() *Group {
	type d = declaration[Status]
	volume := func(key, label, name, help string, at func(*Status) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Kind: quantity.Volume, Range: "0 m3 to 5000 m3", Help: help, At: at}
	}
	force := func(key, label, name, help string, at func(*Status) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Kind: quantity.Force, Range: "0 tf to 500 tf", Help: help, At: at}
	}
	text := func(key, label, name, help string, at func(*Status) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Type: TextField, Help: help, At: at}
	}
	depth := func(key, label, name, help string, at func(*Status) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicHandover, Kind: quantity.Length, Range: "1 m to 15000 m", Moves: WithWell, Help: help, At: at}
	}
	trip := volume("trip_tank", "Trip tank now", "Level of the trip tank that the trip is counted from", "What the hole takes or gives is counted from it.", func(s *Status) any { return &s.TripTank })
	gas := d{Key: "gas", Label: "Background gas", Name: "Background gas", Topic: TopicHandover, Kind: quantity.Ratio, Range: "0 % to 100 %", Help: "While drilling, without connection gas.", At: func(s *Status) any { return &s.Gas }}
	trip.When, gas.When = withoutRiser, withoutRiser
	return table("status", "Status", func(p *Plan) *Status { return &p.Status },
		d{Key: "section", Label: "Section in work", Name: "Number of the section in work", Topic: TopicHandover, Kind: quantity.Count, Range: "1 to 30",
			Help: "Counted from 1. The handover is of this section; blank: there is none.", At: func(s *Status) any { return &s.Section }},
		text("step", "Step now", "Key of the operation being done", "As on the steps page, such as drill or run_casing; enter offers those of the section.", func(s *Status) any { return &s.Step }),
		depth("hole", "Hole depth now", "Depth of the hole now, along hole", "The limits of the handover are worked out for it. Blank: none is.", func(s *Status) any { return &s.Hole }),
		depth("bit", "Bit depth now", "Depth of the bit now, along hole", "Or of what hangs in the hole. Blank: on bottom.", func(s *Status) any { return &s.Bit }),
		d{Key: "returns", Label: "Returns", Name: "What comes back", Topic: TopicHandover, Choices: []string{ReturnsFull, ReturnsPartial, ReturnsNone, PumpsOff},
			Help: "Of what is pumped. Blank: not said.", At: func(s *Status) any { return &s.Returns }},
		d{Key: "flow", Label: "Flow now", Name: "Flow now", Topic: TopicHandover, Kind: quantity.Flow, Range: "0 L/min to 10000 L/min",
			Help: "Blank: pumps off, or not said.", At: func(s *Status) any { return &s.Flow }},
		d{Key: "standpipe", Label: "Standpipe now", Name: "Standpipe pressure now", Topic: TopicHandover, Kind: quantity.Pressure, Range: "0 bar to 700 bar",
			Help: "At that flow.", At: func(s *Status) any { return &s.Standpipe }},
		volume("active", "Active pits", "Mud in the active pits", "As the pit levels are read.", func(s *Status) any { return &s.Active }),
		volume("reserve", "Reserve pits", "Mud in the reserve pits", "Of the density in use, or as it is remarked.", func(s *Status) any { return &s.Reserve }),
		volume("slug", "Slug mixed", "Slug that is mixed", "Blank: none.", func(s *Status) any { return &s.Slug }),
		volume("pit_zero", "Pits zeroed at", "Active volume that gains and losses are counted from", "The zero of the pit alarm.", func(s *Status) any { return &s.PitZero }),
		trip,
		d{Key: "losses", Label: "Losses", Name: "Losses to the hole", Topic: TopicHandover, Kind: quantity.LossRate, Range: "0 m3/h to 500 m3/h",
			Help: "Blank: not said; 0: none seen.", At: func(s *Status) any { return &s.Losses }},
		gas,
		force("overpull", "Overpull seen", "Most overpull seen", "Over the free pick-up weight, since the last handover.", func(s *Status) any { return &s.Overpull }),
		force("drag", "Drag seen", "Most weight lost going down", "Under the free slack-off weight, since the last handover.", func(s *Status) any { return &s.Drag }),
		text("alarms", "Alarms off", "Alarms and trips bypassed", "Which, why and till when. Blank: not said.", func(s *Status) any { return &s.Alarms }),
		text("equipment", "Not working", "Equipment down or limited", "What does not work, and what that takes away.", func(s *Status) any { return &s.Equipment }),
		text("permits", "Permits open", "Permits and isolations open", "With their numbers.", func(s *Status) any { return &s.Permits }),
		text("deviations", "Deviations", "Deviations from the programme, as signed", "Management of change: number, and what it allows.", func(s *Status) any { return &s.Deviations }),
		text("weather", "Weather", "Weather, now and forecast", "Wind, sea, and the window.", func(s *Status) any { return &s.Weather }),
		d{Key: "heave", Label: "Heave now", Name: "Heave now, half of the stroke", Topic: TopicHandover, Kind: quantity.Length, Range: "0 m to 15 m",
			Help: "Up and down from the mean.", At: func(s *Status) any { return &s.Heave }},
		text("circle", "Watch circle", "Watch circle: offset, and where the limits lie", "And which alarm stands.", func(s *Status) any { return &s.Circle }),
	)
}

func abnormalGroup(status *Group) *Group {
	type d = declaration[Abnormal]
	return list("abnormal", "Abnormal", "Something that the relief would not expect; a line each, what matters most first.", TopicHandover, status,
		func(p *Plan, _ Place) *[]Abnormal { return &p.Status.Abnormal },
		d{Key: "text", Brief: true, Label: "What", Name: "What is abnormal", Topic: TopicHandover, Type: TextField, Required: true,
			Help: "What was seen, since when, and what is done about it.", At: func(a *Abnormal) any { return &a.Text }},
	)
}
