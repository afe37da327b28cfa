package ui

import (
	"math"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/catalogue"
	"borewalk/model/quantity"
)

// size is an offer of the catalogue: how it is listed, and the entries of its row that taking it sets.
type size struct {
	text    string
	entries map[string]model.Entry
}

// sizesFor returns what the catalogue offers for a field, and false for a field that it knows nothing of.
func (p *Planner) sizesFor(ref model.Ref) ([]size, bool) {
	switch ref.Group.Path() + "." + ref.Field.Key {
	case "section.hole", "section.bit":
		return p.bitSizes(ref), true
	case "section.string.size", "section.string.weight", "section.string.grade", "section.string.id":
		return p.partSizes(ref)
	case "rig.riser_id":
		return p.lineSizes(catalogue.Risers(), "", ref.Field.Key), true
	case "rig.bop_bore":
		return p.lineSizes(catalogue.StackBores(), "", ref.Field.Key), true
	case "rig.choke_id":
		return p.lineSizes(catalogue.Lines(), "choke line", ref.Field.Key), true
	case "rig.kill_id":
		return p.lineSizes(catalogue.Lines(), "kill line", ref.Field.Key), true
	case "rig.booster_id":
		return p.lineSizes(catalogue.Lines(), "booster line", ref.Field.Key), true
	}
	return nil, false
}

// newSizes offers sizes of the catalogue, the nearest to the present entry in focus, and typing instead.
func newSizes(p *Planner, ref model.Ref, sizes []size) overlay {
	u := &menu{title: ref.Field.Name}
	nearest := math.Inf(1)
	for i, s := range sizes {
		if off := p.distance(ref, s.entries); off < nearest {
			nearest, u.at = off, i
		}
		u.items = append(u.items, item{text: s.text})
	}
	u.items = append(u.items, item{text: "type " + ref.Field.Name + " instead"})
	u.pick = func(p *Planner, i int) {
		if i == len(sizes) {
			p.startTyping(ref, p.typedText(ref))
			return
		}
		p.takeEntries(ref, sizes[i].entries, p.editName(ref, sizes[i].entries[ref.Field.Key]))
	}
	return u
}

// distance says how far entries are from those of the row that a field stands in: the relative differences of the numbers, and
// a little for another word.
func (p *Planner) distance(ref model.Ref, entries map[string]model.Entry) (off float64) {
	for _, f := range ref.Group.Fields {
		to, offered := entries[f.Key]
		if !offered || !to.IsSet() {
			continue
		}
		now := model.Ref{Group: ref.Group, Field: f, Place: ref.Place}.Get(p.plan)
		if !now.IsSet() && (f.Key == "bit" || f.Key == "size") {
			now.Quantity = p.plan.Sections[ref.Place.Outer].Hole // a bit that is blank drills the full size
		}
		if f.Type == model.QuantityField {
			off += math.Abs(to.Quantity.SI/max(now.Quantity.SI, to.Quantity.SI/10) - 1)
		} else if catalogue.NormalGrade(now.Text) != catalogue.NormalGrade(to.Text) {
			off += 1e-3
		}
	}
	return off
}

// bitSizes offers the bits and, for the hole, openers of the catalogue: for a bit those that pass what stands above.
func (p *Planner) bitSizes(ref model.Ref) []size {
	bore, name, bounded := calc.LeastBore(p.plan, ref.Place.Outer)
	var list []size
	for _, b := range catalogue.Bits() {
		text := p.show(b.Size, quantity.Diameter) + " " + b.Kind
		switch {
		case bounded && b.Size <= bore:
			text += "   clears " + name + " by " + p.show(bore-b.Size, quantity.Diameter)
		case bounded && ref.Field.Key != "hole":
			continue
		case bounded:
			text += "   larger than " + name + ": by an underreamer only"
		}
		list = append(list, size{text, map[string]model.Entry{ref.Field.Key: inches(b.Size)}})
	}
	return list
}

// partSizes offers the pipe of the catalogue for a part of the drill string, by what the part is.
func (p *Planner) partSizes(ref model.Ref) ([]size, bool) {
	var list []size
	add := func(text, seen string, entries map[string]model.Entry) {
		if seen == catalogue.Memory {
			text += "   from memory: check the maker's sheet"
		}
		for _, own := range [...]string{"joint_od", "linear_mass"} { // what was entered for another pipe
			entries[own] = model.Entry{}
		}
		list = append(list, size{text, entries})
	}
	switch p.plan.Sections[ref.Place.Outer].String[ref.Place.Inner].Item {
	case model.ItemPipe:
		for _, d := range catalogue.DrillPipes() {
			text := p.show(d.OD, quantity.Diameter) + " " + p.nameWeight(d.NominalWeight) + " " + d.Grade + "   ID " + p.show(d.ID, quantity.Diameter)
			if d.ToolJointOD > 0 {
				text += ", tool joint " + p.show(d.ToolJointOD, quantity.Diameter)
			}
			add(text, d.IDSeen, map[string]model.Entry{"size": inches(d.OD), "weight": poundsPerFoot(d.NominalWeight), "grade": {Text: d.Grade}, "id": {}})
		}
	case model.ItemHeavy:
		for _, h := range catalogue.HeavyWeights() {
			text := p.show(h.OD, quantity.Diameter) + " ID " + p.show(h.ID, quantity.Diameter) + "   " + p.nameWeight(h.Weight) + ", tool joint " + p.show(h.ToolJointOD, quantity.Diameter)
			add(text, h.Seen, map[string]model.Entry{"size": inches(h.OD), "id": inches(h.ID), "weight": {}, "grade": {}})
		}
	case model.ItemCollar:
		for _, c := range catalogue.Collars() {
			text := p.show(c.OD, quantity.Diameter) + " ID " + p.show(c.ID, quantity.Diameter) + "   " + p.nameWeight(c.Weight)
			add(text, c.Seen, map[string]model.Entry{"size": inches(c.OD), "id": inches(c.ID), "weight": {}, "grade": {}})
		}
	case model.ItemBit:
		if ref.Field.Key == "size" {
			return p.bitSizes(ref), true
		}
	}
	return list, len(list) > 0
}

// lineSizes offers bores of risers, lines or stacks; what names the kind of line, nothing all of them.
func (p *Planner) lineSizes(lines []catalogue.Line, what, key string) []size {
	var list []size
	for _, l := range lines {
		if what != "" && l.Item != what {
			continue
		}
		text := p.show(l.ID, quantity.Diameter) + "   " + l.Item
		if l.Use != "" {
			text += ", " + l.Use
		}
		entries := map[string]model.Entry{key: inches(l.ID)}
		if key == "riser_id" && l.OD > 0 {
			entries["riser_od"] = inches(l.OD)
			text += ", OD " + p.show(l.OD, quantity.Diameter)
		}
		list = append(list, size{text, entries})
	}
	return list
}
