package model

import "slices"

// Net returns the changes that take back what has become of a section's entries since the plan was opened or saved, and whether
// more than that was edited. Entries that changed in one go with others, and those of lists whose rows came or went, are left.
func (h *History) Net(plan *Plan, section int) (back []Change, more bool) {
	since := h.done[max(0, min(h.saved, len(h.done))):]
	was, mixed := map[Ref]Entry{}, map[Ref]bool{}
	var order []Ref
	var shifted []*Group
	for _, edit := range since {
		var refs []Ref
		whole := true
		for _, c := range edit.Changes {
			here := c.Ref.Group.under(SectionGroup()) && c.Ref.Place.Outer == section
			switch {
			case c.Ref.Group.Topic == TopicTrial:
			case c.Kind != SetEntry && c.Ref.Group == SectionGroup():
				return nil, true
			case c.Kind != SetEntry || !here:
				whole = false
				if c.Kind != SetEntry && here {
					shifted = append(shifted, c.Ref.Group)
				}
			default:
				refs = append(refs, c.Ref)
				if _, known := was[c.Ref]; !known {
					was[c.Ref], order = c.Old, append(order, c.Ref)
				}
			}
		}
		for _, ref := range refs {
			mixed[ref] = mixed[ref] || !whole
		}
		more = more || !whole
	}
	for _, ref := range order {
		if mixed[ref] || slices.ContainsFunc(shifted, ref.Group.under) {
			continue
		}
		if c := Setting(plan, ref, was[ref]); c.Old != c.New {
			back = append(back, c)
		}
	}
	return back, more
}

// Keeping returns the edit that takes changes back and keeps what they lead from as a trial of a section.
func Keeping(plan *Plan, section int, name string, back []Change) Edit {
	then := plan.Clone() // sections go by the names that they have again
	for _, c := range back {
		apply(then, &c)
	}
	t := Trial{Name: name, Section: SectionLabel(then, section)}
	for _, c := range back {
		value := c.Ref.Field.TrialText(TrialValue{Entry: c.Old})
		t.Changes = append(t.Changes, TrialChange{Path: TrialPath(then, c.Ref), Value: value})
	}
	return Edit{Name: "keep trial " + name, Changes: append(slices.Clone(back), AddingTrial(plan, t))}
}
