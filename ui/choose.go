package ui

import (
	"fmt"
	"math"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/catalogue"
	"borewalk/model/quantity"
)

// newChoice offers the choices of a field.
func newChoice(p *Planner, ref model.Ref) overlay {
	now := ref.Get(p.plan).Text
	u := &menu{title: ref.Field.Name}
	for i, c := range ref.Field.Choices {
		u.items = append(u.items, item{text: c})
		if c == now {
			u.at = i
		}
	}
	u.pick = func(p *Planner, i int) { p.change(ref, model.Entry{Text: ref.Field.Choices[i]}) }
	return u
}

// isCasingSize reports whether a field opens the catalogue of casing.
func isCasingSize(ref model.Ref) bool {
	if ref.Group.Path() != "section.casing" {
		return false
	}
	switch ref.Field.Key {
	case "size", "weight", "grade":
		return true
	}
	return false
}

// newCatalogue offers sizes, then weights, then grades of casing that pass the bores above; taking a grade sets all three
// as one edit.
func newCatalogue(p *Planner, ref model.Ref) overlay {
	offers := calc.Offers(p.plan, ref.Place.Outer)
	part := p.plan.Sections[ref.Place.Outer].Casing[ref.Place.Inner]
	u := &menu{title: "Casing that passes the bores above: OD"}
	var sizes []float64
	for _, o := range offers {
		if n := len(sizes); n > 0 && sizes[n-1] == o.Casing.OD {
			continue
		}
		if math.Abs(o.Casing.OD-part.Size.SI) < 1e-5 {
			u.at = len(sizes)
		}
		sizes = append(sizes, o.Casing.OD)
		text := p.show(o.Casing.OD, quantity.Diameter) + clearanceText(p, o)
		u.items = append(u.items, item{text: text})
	}
	own := len(u.items)
	u.items = append(u.items, item{text: "type " + ref.Field.Name + " instead"})
	u.pick = func(p *Planner, i int) {
		if i == own {
			p.startTyping(ref, p.typedText(ref))
			return
		}
		p.overlay = chooseWeight(p, ref, offers, sizes[i])
	}
	return u
}

func clearanceText(p *Planner, o calc.Offer) string {
	if !o.Bounded {
		return "   nothing above to pass"
	}
	if o.Casing.CouplingOD == 0 {
		return "   clears by " + p.show(o.Clearance, quantity.Diameter) + " less its connector, not in the catalogue"
	}
	return "   connector " + p.show(o.Connector, quantity.Diameter) + ", clears by " + p.show(o.Clearance, quantity.Diameter)
}

func chooseWeight(p *Planner, ref model.Ref, offers []calc.Offer, od float64) overlay {
	part := p.plan.Sections[ref.Place.Outer].Casing[ref.Place.Inner]
	u := &menu{title: p.show(od, quantity.Diameter) + ": nominal weight"}
	var weights []float64
	for _, o := range offers {
		if n := len(weights); o.Casing.OD != od || n > 0 && weights[n-1] == o.Casing.NominalWeight {
			continue
		}
		if math.Abs(o.Casing.NominalWeight-part.Weight.SI) < 0.006*part.Weight.SI {
			u.at = len(weights)
		}
		weights = append(weights, o.Casing.NominalWeight)
		text := p.nameWeight(o.Casing.NominalWeight) + "   ID " + p.show(o.Casing.ID, quantity.Diameter) + ", drift " + p.show(o.Casing.Drift, quantity.Diameter)
		if o.Casing.SpecialDrift > 0 {
			text += ", special " + p.show(o.Casing.SpecialDrift, quantity.Diameter)
		}
		u.items = append(u.items, item{text: text})
	}
	u.pick = func(p *Planner, i int) { p.overlay = chooseGrade(p, ref, offers, od, weights[i]) }
	return u
}

// nameWeight shows a nominal weight in the unit shown and as its name, in lb/ft.
func (p *Planner) nameWeight(si float64) string {
	pound, _ := quantity.ParseUnit("lb/ft", quantity.LinearMass)
	text := p.show(si, quantity.LinearMass)
	if p.system.Unit(quantity.LinearMass) != pound {
		text += " (" + quantity.FormatUnit(si, quantity.LinearMass, pound) + ")"
	}
	return text
}

func chooseGrade(p *Planner, ref model.Ref, offers []calc.Offer, od, weight float64) overlay {
	part := p.plan.Sections[ref.Place.Outer].Casing[ref.Place.Inner]
	u := &menu{title: p.show(od, quantity.Diameter) + " " + p.nameWeight(weight) + ": grade"}
	var rows []catalogue.Casing
	for _, o := range offers {
		if o.Casing.OD != od || o.Casing.NominalWeight != weight {
			continue
		}
		if catalogue.NormalGrade(part.Grade) == o.Casing.Grade {
			u.at = len(rows)
		}
		rows = append(rows, o.Casing)
		text := fmt.Sprintf("%-6s yield %s", o.Casing.Grade, p.show(o.Casing.Yield, quantity.Stress))
		if o.Casing.Seen == catalogue.Memory {
			text += "   figures from memory: check against the maker's sheet"
		}
		u.items = append(u.items, item{text: text})
	}
	u.pick = func(p *Planner, i int) { p.takeCasing(ref, rows[i]) }
	return u
}

// takeCasing sets size, weight and grade of a casing part from the catalogue, as one edit. Own properties that were entered
// for another pipe are blanked with it: a connector of the old size would pass for the new one's.
func (p *Planner) takeCasing(ref model.Ref, row catalogue.Casing) {
	part := p.plan.Sections[ref.Place.Outer].Casing[ref.Place.Inner]
	entries := map[string]model.Entry{"size": inches(row.OD), "weight": poundsPerFoot(row.NominalWeight), "grade": {Text: row.Grade}}
	newSize := math.Abs(part.Size.SI-row.OD) > 1e-5
	if newSize || math.Abs(part.Weight.SI-row.NominalWeight) > 0.006*row.NominalWeight {
		entries["id"], entries["drift"], entries["linear_mass"] = model.Entry{}, model.Entry{}, model.Entry{}
	}
	if newSize {
		entries["connector_od"] = model.Entry{}
	}
	if newSize || catalogue.NormalGrade(part.Grade) != row.Grade {
		entries["yield"] = model.Entry{}
	}
	p.takeEntries(ref, entries, fmt.Sprintf("section %d casing: %s %s %s", ref.Place.Outer+1, p.show(row.OD, quantity.Diameter),
		p.show(row.NominalWeight, quantity.LinearMass), row.Grade))
}

// takeEntries sets entries of the row that a field stands in, by key, as one edit.
func (p *Planner) takeEntries(ref model.Ref, entries map[string]model.Entry, name string) {
	edit := model.Edit{Name: name}
	for _, f := range ref.Group.Fields {
		if e, ok := entries[f.Key]; ok {
			edit.Changes = append(edit.Changes, model.Setting(p.plan, model.Ref{Group: ref.Group, Field: f, Place: ref.Place}, e))
		}
	}
	p.do(edit)
}

// inches returns a catalogue's diameter in m as an entry.
func inches(si float64) model.Entry {
	inch, _ := quantity.ParseUnit("in", quantity.Diameter)
	return model.Entry{Quantity: quantity.Of(tidy(inch.FromSI(si), 1e4), inch)}
}

// poundsPerFoot returns a catalogue's mass per length in kg/m as an entry.
func poundsPerFoot(si float64) model.Entry {
	pound, _ := quantity.ParseUnit("lb/ft", quantity.LinearMass)
	return model.Entry{Quantity: quantity.Of(tidy(pound.FromSI(si), 1e3), pound)}
}

// tidy rounds a catalogue figure to the decimals it is published with, which the way through SI has blurred.
func tidy(x, scale float64) float64 { return math.Round(x*scale) / scale }

// newMove asks what goes along when the air gap or the water depth changes.
func newMove(p *Planner, ref model.Ref, to model.Entry) overlay {
	u := &menu{title: ref.Field.Label + " to " + ref.Field.ScreenText(to, p.system) + ": what moves?"}
	explain := map[calc.Move]string{
		calc.MoveAll:          "holes, strings, prognosis and formations go with the seabed",
		calc.KeepBelowMudline: "holes and strings go with the seabed; prognosis stays",
		calc.KeepRKB:          "no depth from RKB changes",
	}
	moves := calc.Moves()
	for _, m := range moves {
		u.items = append(u.items, item{text: m.String() + " - " + explain[m]})
	}
	u.pick = func(p *Planner, i int) {
		name := p.editName(ref, to) + ", " + moves[i].String()
		p.do(model.Edit{Name: name, Changes: calc.MoveDatum(p.plan, ref, to, moves[i])})
	}
	return u
}

// show formats a quantity with its unit as the screen shows it.
func (p *Planner) show(si float64, kind quantity.Kind) string {
	return p.glyphs.Translate(quantity.FormatUnit(si, kind, p.system.Unit(kind)))
}
