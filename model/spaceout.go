package model

import "borewalk/model/quantity"

// What a ram does.
const (
	RamPipe    = "on pipe"
	RamShear   = "shears"
	RamAnnular = "annular"
)

// Whether the string may be hung off on a ram.
const (
	HangsNot = "no"
	HangsOff = "yes"
)

// Ram is a preventer of the subsea stack.
type Ram struct {
	Row
	Name, Closes, HangOff string
	Height                quantity.Value
}

// PipePup is a length of pup joint of drill pipe aboard, and how many there are.
type PipePup struct {
	Row
	Length, Count quantity.Value
}

// SpaceOut says where the string of a section stands when rams may be shut on it.
type SpaceOut struct {
	Bit, StickUp, Joint quantity.Value
}

func ramGroup(rig *Group) *Group {
	type d = declaration[Ram]
	return list("ram", "Ram", "A preventer of the stack, the highest first, which tool joints are kept off.", TopicWell, rig, func(p *Plan, _ Place) *[]Ram { return &p.Rams },
		d{Key: "name", Brief: true, Label: "Name", Name: "Name of the preventer", Type: TextField, Help: "Such as upper pipe ram.", At: func(r *Ram) any { return &r.Name }},
		d{Key: "height", Brief: true, Label: "Height", Name: "Height above the wellhead datum", Kind: quantity.Length, Range: "0 m to 30 m", Required: true,
			Help: "Of the middle of the block, from the stack's drawing.", At: func(r *Ram) any { return &r.Height }},
		d{Key: "closes", Brief: true, Label: "Closes", Name: "What it closes on", Choices: []string{RamPipe, RamShear, RamAnnular}, Default: RamPipe,
			Help: "Rams are kept off tool joints; an annular is shown and not compared.", At: func(r *Ram) any { return &r.Closes }},
		d{Key: "hang_off", Label: "Hang-off", Name: "The string is hung off on it", Choices: []string{HangsNot, HangsOff}, Default: HangsNot,
			Help: "The first that says yes counts. Its rating, and the size of pipe it takes, are the maker's.", At: func(r *Ram) any { return &r.HangOff },
			When: func(_ *Plan, r *Ram) string {
				if r.Closes != RamPipe {
					return "nothing hangs on it"
				}
				return ""
			}},
	)
}

func pipePupGroup(rig *Group) *Group {
	type d = declaration[PipePup]
	return list("pup", "Drill pipe pup", "A length of pup joint of drill pipe aboard, for spacing out.", TopicWell, rig, func(p *Plan, _ Place) *[]PipePup { return &p.PipePups },
		d{Key: "length", Brief: true, Label: "Length", Name: "Length of the pup joint", Kind: quantity.TallyLength, Range: "0.5 m to 10 m", Required: true,
			Help: "Made up.", At: func(u *PipePup) any { return &u.Length }},
		d{Key: "count", Brief: true, Label: "Aboard", Name: "How many there are", Kind: quantity.Count, Range: "0 to 12", Default: "1", Required: true,
			Help: "Pup joints of this length.", At: func(u *PipePup) any { return &u.Count }},
	)
}

func spaceOutGroup(section *Group) *Group {
	type d = declaration[SpaceOut]
	rigged := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Returns != ToRig {
			return "there is no stack while returns go to the seabed"
		}
		return ""
	}
	return part("space_out", "Space-out", "Where the string stands when rams may be shut on it.", TopicString, section, func(s *Section) *SpaceOut { return &s.SpaceOut },
		d{Key: "bit", Moves: WithWell, Label: "Bit at", Name: "Depth of the bit", Topic: TopicString, Kind: quantity.Length, Range: "100 m to 15000 m", Inside: rigged,
			Help: "From RKB; the deepest that it may hang at. Blank: the shoe above the section, and no finding.", At: func(s *SpaceOut) any { return &s.Bit }},
		d{Key: "stick_up", Label: "Stick-up, least", Name: "Least stick-up at mean sea level", Topic: TopicString, Kind: quantity.Length, Range: "0 m to 15 m", Inside: rigged,
			Default: "1 m", Help: "Top of the string over the rotary. Blank: none.", At: func(s *SpaceOut) any { return &s.StickUp }},
		d{Key: "joint", Label: "Joint of pipe", Name: "Mean length of a joint in the stack", Topic: TopicString, Kind: quantity.TallyLength, Range: "5 m to 16 m", Inside: rigged,
			Help: "As strapped. Blank: the string part's, else the rig's stand in equal joints of about 9.6 m.", At: func(s *SpaceOut) any { return &s.Joint }},
	)
}
