package model

import "borewalk/model/quantity"

// Whether the valve in the shoe track keeps the hole's fluid out while the string is run.
const (
	FloatHolds = "holds"
	FloatFills = "fills by itself"
)

// What a pup joint is for.
const (
	ForCasing  = "casing"
	ForLanding = "landing string"
)

// Whether a joint on deck is run.
const (
	JointSound    = "no"
	JointRejected = "yes"
)

// Tally says what a string is put together from, from the shoe to what it hangs on. Lengths are made-up lengths.
type Tally struct {
	JointLength, Aboard                     quantity.Value
	Shoe, FloatCollar, LandingCollar        quantity.Value
	TrackJoints, TrackLength                quantity.Value
	AboveJoints, AboveLength                quantity.Value
	Marker, MarkerDepth, Crossovers, Hanger quantity.Value
	Float                                   string
	FillEvery                               quantity.Value
	Packer, Slips                           quantity.Value
}

// Landing says what carries the string to where it hangs.
type Landing struct {
	OD, ID, LinearMass                 quantity.Value
	Grade                              string
	Stand, Tool                        quantity.Value
	StickUp, StickUpLeast, StickUpMost quantity.Value
	Rating                             quantity.Value
}

// Pup is a length of pup joint aboard, and how many there are.
type Pup struct {
	Row
	For           string
	Length, Count quantity.Value
}

// Span returns what measured joints come to together, and the shortest and the longest of them, in m; rejected ones count.
func Span(joints []Joint) (total, shortest, longest float64) {
	for k, j := range joints {
		length := j.Length.SI
		total += length
		if k == 0 || length < shortest {
			shortest = length
		}
		longest = max(longest, length)
	}
	return total, shortest, longest
}

// Joint is a measured joint of casing on deck, in the order of running.
type Joint struct {
	Row
	Number   string
	Length   quantity.Value
	Rejected string
}

func tallyGroup(section *Group) *Group {
	type d = declaration[Tally]
	finished := func(p *Plan, at Place) string { return cased(p, &p.Sections[at.Outer]) }
	liner := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Completion != WithLiner {
			return "counts for a liner only"
		}
		return ""
	}
	length := func(key, label, name, span, help string, at func(*Tally) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicCasing, Kind: quantity.TallyLength, Range: span, Inside: finished, Help: help, At: at}
	}
	count := func(key, label, name, span, help string, at func(*Tally) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicCasing, Kind: quantity.Count, Range: span, Inside: finished, Help: help, At: at}
	}
	const average = "Blank: the average joint."
	mean := length("joint_length", "Joint, average", "Average length of a joint", "2 m to 18 m",
		"Made up, without the pin's thread. Counts until joints are measured. Blank, and none measured: no tally.", func(t *Tally) any { return &t.JointLength })
	mean.Default = "12.2 m"
	marker := length("marker_depth", "Marker wanted", "Wanted depth of the marker joint's top", "1 m to 15000 m",
		"From RKB; it comes to stand at the joint nearest to it. Blank: below the topmost pieces.", func(t *Tally) any { return &t.MarkerDepth })
	marker.Moves = WithWell
	packer := length("packer", "Packer below top", "Liner top packer, below the liner's top", "0 m to 60 m",
		"Its elements keep off the couplings of the string around it.", func(t *Tally) any { return &t.Packer })
	slips := length("slips", "Slips below top", "Hanger slips, below the liner's top", "0 m to 60 m",
		"They keep off the couplings of the string around them.", func(t *Tally) any { return &t.Slips })
	packer.Inside, slips.Inside = liner, liner
	return part("tally", "Tally", "What the string is put together from, shoe to hanger.", TopicCasing, section, func(s *Section) *Tally { return &s.Tally },
		mean,
		count("aboard", "Joints aboard", "Joints aboard, at the average", "0 to 2000",
			"Without those of the shoe track. Blank: as many as are needed. Measured joints count themselves.", func(t *Tally) any { return &t.Aboard }),
		length("shoe", "Shoe", "Length of the shoe", "0 m to 15 m", "Guide or float shoe, with its joint if it is one piece.", func(t *Tally) any { return &t.Shoe }),
		count("track_joints", "Track joints", "Joints between shoe and float collar", "0 to 10",
			"With shoe and collar they make up the shoe track.", func(t *Tally) any { return &t.TrackJoints }),
		length("track_length", "Track joint", "Length of a joint of the shoe track", "2 m to 18 m", average, func(t *Tally) any { return &t.TrackLength }),
		length("float_collar", "Float collar", "Length of the float collar", "0 m to 15 m", "Blank: none.", func(t *Tally) any { return &t.FloatCollar }),
		count("above_joints", "Above the float", "Joints between float and landing collar", "0 to 10", "Where the plugs land on a collar of its own.",
			func(t *Tally) any { return &t.AboveJoints }),
		length("above_length", "Joint above it", "Length of a joint between float and landing collar", "2 m to 18 m", average, func(t *Tally) any { return &t.AboveLength }),
		length("landing_collar", "Landing collar", "Length of the landing collar", "0 m to 15 m", "Blank: the plugs land on the float collar.",
			func(t *Tally) any { return &t.LandingCollar }),
		length("marker", "Marker joint", "Length of the marker joint", "0.3 m to 18 m", "A short joint that is found again on a log. Blank: none.", func(t *Tally) any { return &t.Marker }),
		marker,
		length("crossovers", "Crossovers", "Length of the crossovers below the hanger", "0 m to 30 m", "All of them together.", func(t *Tally) any { return &t.Crossovers }),
		length("hanger", "Hanger", "Length of the hanger, below where it lands", "0 m to 40 m",
			"From the landing shoulder to the pin of its pup; a housing or liner hanger with its joint from its top.", func(t *Tally) any { return &t.Hanger }),
		d{Key: "float", Label: "Float", Name: "Float while running", Topic: TopicCasing, Choices: []string{FloatHolds, FloatFills}, Default: FloatHolds, Inside: finished,
			Help: "A float that holds keeps the hole's fluid out: the string is filled from the top.", At: func(t *Tally) any { return &t.Float }},
		count("fill_every", "Filled every", "Joints run between fillings", "1 to 50",
			"Up to so many joints hang empty. Blank: kept full. Counts while the float holds.", func(t *Tally) any { return &t.FillEvery }),
		packer, slips,
	)
}

func landingGroup(section *Group) *Group {
	type d = declaration[Landing]
	run := func(p *Plan, at Place) string { return cementing(p, &p.Sections[at.Outer]) }
	field := func(key, label, name string, kind quantity.Kind, span, help string, at func(*Landing) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicCasing, Kind: kind, Range: span, Inside: run, Help: help, At: at}
	}
	const own = "Blank: the highest pipe of the drill string."
	return part("landing", "Landing string", "What carries the string to where it hangs.", TopicCasing, section, func(s *Section) *Landing { return &s.Landing },
		field("od", "Pipe OD", "OD of the landing string's pipe", quantity.Diameter, "2 in to 20 in", own+" Given: ID and weight go with it.", func(l *Landing) any { return &l.OD }),
		field("id", "Pipe ID", "ID of the landing string's pipe", quantity.Diameter, "1 in to 18 in", own, func(l *Landing) any { return &l.ID }),
		field("linear_mass", "Pipe weight", "Mass per length of the landing string", quantity.LinearMass, "5 kg/m to 500 kg/m", "With tool joints. "+own, func(l *Landing) any { return &l.LinearMass }),
		d{Key: "grade", Label: "Pipe grade", Name: "Grade of the landing string's pipe", Topic: TopicCasing, Type: TextField, Inside: run,
			Help: "Such as S135; its yield strength rates the body where no rating is given. " + own, At: func(l *Landing) any { return &l.Grade }},
		field("stand", "Stand", "Length of a stand of the landing string", quantity.TallyLength, "5 m to 45 m", "Blank: the rig's stand.", func(l *Landing) any { return &l.Stand }),
		field("tool", "Running tool", "Length of the running tool", quantity.TallyLength, "0 m to 30 m", "From where the hanger lands to the first stand.", func(l *Landing) any { return &l.Tool }),
		field("stick_up", "Stick-up", "Wanted stick-up at mean sea level", quantity.TallyLength, "0 m to 30 m",
			"Top of the landing string over the rotary when the hanger has landed. Blank: it is not spaced out.", func(l *Landing) any { return &l.StickUp }),
		field("stick_up_least", "Stick-up, least", "Least stick-up at any tide", quantity.TallyLength, "0 m to 30 m", "What the slips or the cement head need. Blank: none.",
			func(l *Landing) any { return &l.StickUpLeast }),
		field("stick_up_most", "Stick-up, most", "Greatest stick-up at any tide", quantity.TallyLength, "0 m to 30 m", "What can be reached over the rotary. Blank: no limit.",
			func(l *Landing) any { return &l.StickUpMost }),
		field("rating", "Rating", "Tension rating of the landing string", quantity.Force, "10 tf to 2500 tf",
			"Of its weakest part, slips counted. Blank: the pipe's body at its yield strength, new.", func(l *Landing) any { return &l.Rating }),
	)
}

func pupGroup(section *Group) *Group {
	type d = declaration[Pup]
	return list("pup", "Pup joint", "A length of pup joint aboard, that the string or its landing string may be closed with.", TopicCasing, section,
		func(p *Plan, at Place) *[]Pup { return &p.Sections[at.Outer].Pups },
		d{Key: "length", Brief: true, Label: "Length", Name: "Length of the pup joint", Topic: TopicCasing, Kind: quantity.TallyLength, Range: "0.2 m to 20 m", Required: true,
			Help: "Made up, without the pin's thread.", At: func(u *Pup) any { return &u.Length }},
		d{Key: "count", Brief: true, Label: "Aboard", Name: "How many there are", Topic: TopicCasing, Kind: quantity.Count, Range: "0 to 12", Default: "1", Required: true,
			Help: "Pup joints of this length.", At: func(u *Pup) any { return &u.Count }},
		d{Key: "for", Brief: true, Label: "For", Name: "What it is for", Topic: TopicCasing, Choices: []string{ForCasing, ForLanding}, Default: ForCasing,
			Help: "Casing thread, or that of the landing string.", At: func(u *Pup) any { return &u.For }},
	)
}

func jointGroup(section *Group) *Group {
	type d = declaration[Joint]
	return list("joint", "Joint", "A measured joint on deck, in the order of running: the first goes in above the shoe track.", TopicCasing, section,
		func(p *Plan, at Place) *[]Joint { return &p.Sections[at.Outer].Joints },
		d{Key: "number", Brief: true, Label: "Number", Name: "Number painted on the joint", Topic: TopicCasing, Type: TextField, Help: "As painted; no two alike.",
			At: func(j *Joint) any { return &j.Number }},
		d{Key: "length", Brief: true, Label: "Length", Name: "Measured length of the joint", Topic: TopicCasing, Kind: quantity.TallyLength, Range: "2 m to 18 m", Required: true,
			Help: "Made up, without the pin's thread.", At: func(j *Joint) any { return &j.Length }},
		d{Key: "rejected", Label: "Rejected", Name: "Joint rejected", Topic: TopicCasing, Choices: []string{JointSound, JointRejected}, Default: JointSound,
			Help: "Drift, thread or damage: it stays on deck.", At: func(j *Joint) any { return &j.Rejected }},
	)
}

// ReplacingJoints returns the changes that put other joints in place of a section's measured ones.
func ReplacingJoints(plan *Plan, section int, joints []Joint) []Change {
	return replacing(JointList(), section, len(plan.Sections[section].Joints), joints)
}

// replacing returns the changes that put other rows in place of the so many of a list within a section.
func replacing[T any](g *Group, section, there int, rows []T) []Change {
	var changes []Change
	for k := there - 1; k >= 0; k-- {
		changes = append(changes, Removing(g, Place{Outer: section, Inner: k}))
	}
	for k, row := range rows {
		changes = append(changes, Change{Kind: AddRow, Ref: Ref{Group: g, Place: Place{Outer: section, Inner: k}}, row: &row})
	}
	return changes
}
