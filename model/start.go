package model

import (
	"math"
	"slices"

	"borewalk/model/quantity"
)

// Start holds the answers to the few questions from which a new plan is made.
type Start struct {
	Name, UnitSet, Programme string
	AirGap, WaterDepth       quantity.Value
	Sections                 quantity.Value
}

// Casing programmes that a new plan can start with, by the sizes of their strings.
const (
	ProgrammeUsual = "36, 20, 13 3/8, 9 5/8, 7, 4 1/2"
	ProgrammeWide  = "36, 22, 16, 13 5/8, 9 7/8, 7"
)

// StartGroup declares the questions over the answers in s, for the same editor that edits a plan.
func StartGroup(s *Start) *Group {
	type d = declaration[Start]
	well := wellGroup()
	copied := func(key string, at func(*Start) any) d {
		f := well.Field(key)
		return d{Key: f.Key, Label: f.Label, Name: f.Name, Kind: f.Kind, Type: f.Type, Choices: f.Choices, Default: f.Default, Help: f.Help,
			Range: rangeOf(f), At: at}
	}
	g := table("start", "New plan", func(*Plan) *Start { return s },
		copied("name", func(s *Start) any { return &s.Name }),
		copied("units", func(s *Start) any { return &s.UnitSet }),
		copied("air_gap", func(s *Start) any { return &s.AirGap }),
		copied("water_depth", func(s *Start) any { return &s.WaterDepth }),
		d{Key: "sections", Label: "Sections", Name: "Number of hole sections", Kind: quantity.Count, Range: "1 to 6", Default: "5",
			Help: "From the conductor down. Sections can be added and taken away later.", At: func(s *Start) any { return &s.Sections }},
		d{Key: "programme", Label: "Strings, in", Name: "Sizes of the strings", Choices: []string{ProgrammeUsual, ProgrammeWide}, Default: ProgrammeUsual,
			Help: "Common subsea programmes; every size can be changed later.", At: func(s *Start) any { return &s.Programme }},
	)
	for _, f := range g.Fields {
		f.set(s, f.DefaultEntry())
	}
	return g
}

func rangeOf(f *Field) string {
	if !f.Min.IsSet() {
		return ""
	}
	return f.Min.Text() + " to " + f.Max.Text()
}

// outline is one section of a programme that a new plan starts with. Depths are m below the mudline. Sizes follow common
// subsea practice, from memory; all of it is a start to be edited, not a proposal.
type outline struct {
	hole, bit, casing, purpose, hung string // bit only where an opener enlarges the hole
	weight, grade                    string
	special                          bool
	below                            float64
	density                          string
	liner                            bool
}

func programme(name string) []outline {
	usual := []outline{
		{hole: "42", casing: "36", purpose: Conductor, hung: InLPHousing, weight: "552.69 lb/ft", grade: "X56", below: 80, density: "1.03 sg"},
		{hole: "26", casing: "20", purpose: Surface, hung: InHPHousing, weight: "133 lb/ft", grade: "K55", below: 600, density: "1.03 sg"},
		{hole: "17.5", casing: "13.375", purpose: Intermediate, hung: InWellhead, weight: "72 lb/ft", grade: "P110", special: true, below: 1600, density: "1.2 sg"},
		{hole: "12.25", casing: "9.625", purpose: Production, hung: InWellhead, weight: "53.5 lb/ft", grade: "P110", special: true, below: 2600, density: "1.3 sg"},
		{hole: "8.5", casing: "7", purpose: Production, weight: "32 lb/ft", grade: "P110", special: true, below: 3200, density: "1.3 sg", liner: true},
		{hole: "6", casing: "4.5", purpose: Production, weight: "15.1 lb/ft", grade: "P110", below: 3600, density: "1.3 sg", liner: true},
	}
	if name != ProgrammeWide {
		return usual
	}
	return []outline{
		usual[0],
		{hole: "26", casing: "22", purpose: Surface, hung: InHPHousing, weight: "224 lb/ft", grade: "X80", below: 800, density: "1.03 sg"},
		{hole: "20", bit: "17.5", casing: "16", purpose: Intermediate, hung: InWellhead, weight: "97 lb/ft", grade: "P110", below: 1600, density: "1.2 sg"},
		{hole: "16", bit: "14.5", casing: "13.625", purpose: Intermediate, hung: InWellhead, weight: "88.2 lb/ft", grade: "Q125", special: true, below: 2600, density: "1.3 sg"},
		{hole: "12.25", casing: "9.875", purpose: Production, hung: InWellhead, weight: "62.8 lb/ft", grade: "Q125", special: true, below: 3600, density: "1.4 sg"},
		{hole: "8.5", casing: "7", purpose: Production, weight: "32 lb/ft", grade: "P110", special: true, below: 4200, density: "1.4 sg", liner: true},
	}
}

// NewPlan makes a plan from the answers: defaults everywhere, sections at round depths below the mudline, and no
// prognosis, since that nobody can guess.
func NewPlan(s Start) *Plan {
	plan := new(Plan)
	for _, g := range Groups() {
		if !g.List {
			for _, f := range g.Fields {
				f.set(g.row(plan, Place{}), f.DefaultEntry())
			}
		}
	}
	plan.Well.Name, plan.Well.UnitSet = s.Name, s.UnitSet
	plan.Well.AirGap, plan.Well.WaterDepth = s.AirGap, s.WaterDepth
	plan.Pumps = []Pump{*pumpList().fresh().(*Pump)}
	plan.Well.Revision = "start values, to be checked"
	round := rounding(s.UnitSet)
	mudline := s.AirGap.SI + s.WaterDepth.SI
	outlines := programme(s.Programme)
	for i := range min(int(s.Sections.SI), len(outlines)) {
		above := 0.0
		if i > 0 {
			above = mudline + outlines[i-1].below
		}
		section := outlines[i].section(i, round(mudline+outlines[i].below), round(above-lap))
		section.startCement(mudline, above, round)
		plan.Sections = append(plan.Sections, section)
	}
	return plan
}

// pumpList returns the list of pumps.
func pumpList() *Group {
	for _, g := range Groups() {
		if g.Name == "rig" {
			return g.Lists[0]
		}
	}
	panic("model: internal error: the rig has no pumps")
}

// lap is how far in m a liner reaches into the last string in a new plan.
const lap = 120

// rounding returns what rounds a depth in m for a set of units: to 5 m, or to 10 ft.
func rounding(set string) func(depth float64) quantity.Value {
	unit, step := mustUnit("m", quantity.Length), 5.0
	if set == quantity.Field.String() {
		unit, step = mustUnit("ft", quantity.Length), 10
	}
	return func(depth float64) quantity.Value { return quantity.Of(math.Round(unit.FromSI(depth)/step)*step, unit) }
}

func mustUnit(text string, kind quantity.Kind) quantity.Unit {
	u, err := quantity.ParseUnit(text, kind)
	if err != nil {
		panic("model: internal error: " + err.Error())
	}
	return u
}

func must(text string, kind quantity.Kind) quantity.Value {
	v, err := quantity.Parse(text, kind, 0)
	if err != nil {
		panic("model: internal error: " + err.Error())
	}
	return v
}

// section makes section i of a new plan, to a TD, with a liner's top where there is one.
func (o outline) section(i int, td, top quantity.Value) Section {
	s := *SectionGroup().fresh().(*Section)
	size := must(o.casing+" in", quantity.Diameter)
	s.Name = quantity.FormatUnit(must(o.hole+" in", quantity.Diameter).SI, quantity.Diameter, size.Unit) + " hole, " +
		quantity.FormatUnit(size.SI, quantity.Diameter, size.Unit) + " " + o.purpose
	s.Hole = must(o.hole+" in", quantity.Diameter)
	if o.bit != "" {
		s.Bit = must(o.bit+" in", quantity.Diameter)
		s.OpenerBehind = must("30 m", quantity.Length)
	}
	s.TD = td
	if td.Unit == quantity.Foot {
		s.Tally.JointLength = must("40 ft", quantity.TallyLength)
	}
	s.Density = must(o.density, quantity.Density)
	s.Flow = must("3000 L/min", quantity.Flow)
	s.Purpose, s.Hung = o.purpose, o.hung
	s.Completion = WithCasing
	if i < 2 {
		s.Returns = ToSeabed
		s.Fluid = "seawater with sweeps"
	} else {
		s.ShoeTrack = must("25 m", quantity.Length)
	}
	if o.hung == InWellhead {
		s.ShoulderBelowDatum = must("0.5 m", quantity.Length)
	}
	if o.liner {
		s.Completion, s.Hung = WithLiner, InWellhead
		s.Top = top
	}
	part := CasingPart{Size: size, Weight: must(o.weight, quantity.LinearMass), Grade: o.grade, DriftClass: APIDrift}
	if o.special {
		part.DriftClass = SpecialDrift
	}
	s.Casing = []CasingPart{part}
	s.String = startString(s.Hole, s.Bit)
	s.Nozzles.Sizes = startNozzles(s.Hole)
	return s
}

// startNozzles returns nozzles to begin with for a hole.
func startNozzles(hole quantity.Value) string {
	switch {
	case hole.SI < must("7 in", quantity.Diameter).SI:
		return "5x11"
	case hole.SI < must("10 in", quantity.Diameter).SI:
		return "6x13"
	}
	return "8x16"
}

// startString returns a plain drill string for a hole: bit, collars, heavy-weight and drill pipe from the catalogue, and an
// underreamer, which goes down folded, where the bit is smaller than the hole.
func startString(hole, bit quantity.Value) []StringPart {
	collar, collarID, heavy, pipe, weight := "8 in", "2.8125 in", "5.5 in", "5.5 in", "21.9 lb/ft"
	if hole.SI < must("10 in", quantity.Diameter).SI {
		collar, collarID, heavy, pipe, weight = "6.5 in", "2.8125 in", "5 in", "5 in", "19.5 lb/ft"
	}
	if hole.SI < must("7 in", quantity.Diameter).SI {
		collar, collarID, heavy, pipe, weight = "4.75 in", "2.25 in", "3.5 in", "3.5 in", "13.3 lb/ft"
	}
	length, diameter, mass := quantity.Length, quantity.Diameter, quantity.LinearMass
	heavyPart := StringPart{Item: ItemHeavy, Size: must(heavy, diameter), Length: must("110 m", length)}
	if heavy == "3.5 in" {
		heavyPart.ID = must("2.0625 in", diameter)
	}
	parts := []StringPart{
		{Item: ItemBit, Size: hole, Length: must("0.5 m", length)},
		{Item: ItemCollar, Size: must(collar, diameter), ID: must(collarID, diameter), Length: must("55 m", length)},
		heavyPart,
		{Item: ItemPipe, Size: must(pipe, diameter), Weight: must(weight, mass), Grade: "S135"},
	}
	if bit.IsSet() {
		parts[0].Size = bit
		below := parts[1]
		below.Length = must("27.5 m", length) // so that the reamer's cutters stand 30 m behind the bit
		parts[1].Length = must("27.5 m", length)
		reamer := StringPart{Item: ItemReamer, Name: "underreamer, folded", Size: must("9.5 in", diameter), ID: must("3 in", diameter), Length: must("4 m", length)}
		parts = slices.Insert(parts, 1, below, reamer)
	}
	for k := range parts {
		parts[k].Class = ClassPremium
	}
	return parts
}
