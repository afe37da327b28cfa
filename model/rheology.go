package model

import "borewalk/model/quantity"

// How the flow of a section's drilling fluid is given.
const (
	ByPVYP     = "PV and YP"
	ByReadings = "readings"
	ByNK       = "n, K and yield stress"
)

// The laws of flow that readings are fitted with.
const (
	LawBingham         = "Bingham"
	LawPower           = "power law"
	LawHerschelBulkley = "Herschel-Bulkley"
)

// The correlations of friction, by the names that calc knows them by.
const (
	FrictionBinghamSlot  = "Bingham slot"
	FrictionRP13D        = "RP 13D"
	FrictionDodgeMetzner = "Dodge-Metzner"
)

// Rheology says how the drilling fluid of a section flows, beyond its PV and YP, and by what its friction is worked out.
type Rheology struct {
	Given, Law                     string
	R600, R300, R200, R100, R6, R3 quantity.Value
	N, K, Tau0                     quantity.Value
	GelSeconds, GelTen, GelThirty  quantity.Value // after 10 s, 10 min and 30 min
	Friction                       string
}

// Reading is what the dial of the viscometer shows at a speed.
type Reading struct {
	Key   string // of its entry
	Speed float64
	Dial  quantity.Value
}

// Readings returns the viscometer's speeds in revolutions a minute, the fastest first, with what was read there.
func (r *Rheology) Readings() [6]Reading {
	return [...]Reading{{"r600", 600, r.R600}, {"r300", 300, r.R300}, {"r200", 200, r.R200}, {"r100", 100, r.R100}, {"r6", 6, r.R6}, {"r3", 3, r.R3}}
}

// byPVYP is the reason why PV and YP of a section's fluid do not count.
func byPVYP(_ *Plan, s *Section) string {
	switch s.Rheology.Given {
	case ByReadings:
		return "follows from the readings"
	case ByNK:
		return "follows from n, K and yield stress"
	}
	return ""
}

func rheologyGroup(section *Group) *Group {
	type d = declaration[Rheology]
	with := func(given, otherwise string) func(*Plan, Place) string {
		return func(p *Plan, at Place) string {
			if p.Sections[at.Outer].Rheology.Given != given {
				return otherwise
			}
			return ""
		}
	}
	number := with(ByNK, "counts where n, K and yield stress give the flow")
	reading := func(key, label string, at func(*Rheology) any) d {
		return d{Key: key, Label: label, Name: "Dial reading at " + label, Topic: TopicMud, Kind: quantity.Dial, Range: "0 deg to 400 deg",
			Help: "Viscometer with R1, B1 and F1, in degrees. Two speeds make a Bingham or power law, three a Herschel-Bulkley. Shown against the law that counts in any case.", At: at}
	}
	gel := func(key, label, after string, at func(*Rheology) any) d {
		return d{Key: key, Label: label, Name: "Gel strength after " + after, Topic: TopicMud, Kind: quantity.YieldPoint, Range: "0 lbf/100ft2 to 200 lbf/100ft2",
			Help: "The highest reading at 3 rpm after the rest. For breaking circulation.", At: at}
	}
	return part("rheology", "Rheology", "How the drilling fluid flows, and what its friction is worked out by.", TopicMud, section,
		func(s *Section) *Rheology { return &s.Rheology },
		d{Key: "given", Label: "Flow given by", Name: "Flow of the fluid given by", Topic: TopicMud, Choices: []string{ByPVYP, ByReadings, ByNK}, Default: ByPVYP,
			Help: "PV and YP stand on the mud page and make a Bingham fluid. Readings are fitted with the law below.", At: func(r *Rheology) any { return &r.Given }},
		d{Key: "law", Label: "Law fitted", Name: "Law that the readings are fitted with", Topic: TopicMud, Choices: []string{LawHerschelBulkley, LawBingham, LawPower},
			Default: LawHerschelBulkley, Inside: with(ByReadings, "counts where readings give the flow"),
			Help: "By least squares of the shear stresses. Herschel-Bulkley holds the other two.", At: func(r *Rheology) any { return &r.Law }},
		d{Key: "friction", Label: "Friction by", Name: "Correlation of friction", Topic: TopicMud,
			Choices: []string{FrictionBinghamSlot, FrictionRP13D, FrictionDodgeMetzner}, Default: FrictionBinghamSlot,
			Help: "For all that flows in this section. Bingham slot takes of any law its stresses at 511 and 1022 1/s; RP 13D and Dodge-Metzner take the whole law.",
			At:   func(r *Rheology) any { return &r.Friction }},
		reading("r600", "600 rpm", func(r *Rheology) any { return &r.R600 }),
		reading("r300", "300 rpm", func(r *Rheology) any { return &r.R300 }),
		reading("r200", "200 rpm", func(r *Rheology) any { return &r.R200 }),
		reading("r100", "100 rpm", func(r *Rheology) any { return &r.R100 }),
		reading("r6", "6 rpm", func(r *Rheology) any { return &r.R6 }),
		reading("r3", "3 rpm", func(r *Rheology) any { return &r.R3 }),
		d{Key: "n", Label: "Index n", Name: "Flow behaviour index n", Topic: TopicMud, Kind: quantity.Number, Range: "0.1 to 1.5", Inside: number,
			Help: "1 for Bingham, less for a fluid that thins.", At: func(r *Rheology) any { return &r.N }},
		d{Key: "k", Label: "Consistency K", Name: "Consistency K", Topic: TopicMud, Kind: quantity.Consistency, Range: "0.0001 Pa.s^n to 100 Pa.s^n", Inside: number,
			Help: "Stress less yield at 1 1/s.", At: func(r *Rheology) any { return &r.K }},
		d{Key: "tau0", Label: "Yield stress", Name: "Yield stress of the Herschel-Bulkley law", Topic: TopicMud, Kind: quantity.YieldPoint, Range: "0 Pa to 75 Pa", Inside: number,
			Help: "0 makes it a power law.", At: func(r *Rheology) any { return &r.Tau0 }},
		gel("gel_10s", "Gel, 10 s", "10 seconds", func(r *Rheology) any { return &r.GelSeconds }),
		gel("gel_10min", "Gel, 10 min", "10 minutes", func(r *Rheology) any { return &r.GelTen }),
		gel("gel_30min", "Gel, 30 min", "30 minutes", func(r *Rheology) any { return &r.GelThirty }),
	)
}
