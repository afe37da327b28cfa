package wording

import (
	"cmp"
	"slices"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// View is where somebody looks: the page, and the section being worked.
type View struct {
	Topic   model.Topic
	Section int
}

// Findings returns the findings of a severity and above: the worst first, then those that the page in view mends, then those
// of the section being worked, then by what hangs on them.
func Findings(plan *model.Plan, result *calc.Result, view View, least calc.Severity) []calc.Finding {
	type placed struct {
		calc.Finding
		elsewhere, near int
	}
	var list []placed
	for _, f := range result.Findings {
		if f.Severity >= least {
			list = append(list, placed{Finding: f, elsewhere: view.elsewhere(plan, f.Mend), near: view.Nearness(f.Section)})
		}
	}
	slices.SortStableFunc(list, func(a, b placed) int {
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(a.elsewhere, b.elsewhere), cmp.Compare(a.near, b.near),
			cmp.Compare(consequence(a.Finding), consequence(b.Finding)))
	})
	findings := make([]calc.Finding, len(list))
	for k := range list {
		findings[k] = list[k].Finding
	}
	return findings
}

// elsewhere is 0 for the path of an entry, or of a list, that stands on the page in view, 1 for another.
func (v View) elsewhere(plan *model.Plan, path model.Path) int {
	ref, ok := model.Find(plan, path)
	topic := model.Topic(0)
	if ok {
		topic = ref.Field.Topic
	} else if ref.Group, ref.Place, ok = model.FindList(plan, path); ok {
		topic = ref.Group.Topic
	}
	if !ok || topic != v.Topic || InSection(ref) && ref.Place.Outer != v.Section {
		return 1
	}
	return 0
}

// InSection reports whether an entry or a row stands in a section.
func InSection(ref model.Ref) bool {
	return ref.Group == model.SectionGroup() || ref.Group.Parent == model.SectionGroup()
}

// Nearness orders sections: the one being worked first.
func (v View) Nearness(section int) int {
	if section == v.Section {
		return -2
	}
	return section
}

// consequence orders findings of one severity by what they hang on: pressures and strengths first, then loads, then times,
// rates and fits. An entry that is missing goes with the first.
func consequence(f calc.Finding) int {
	switch f.Kind {
	case quantity.EMW, quantity.Pressure, quantity.Number, quantity.Density:
		return 0
	case quantity.Force, quantity.Velocity, quantity.Hours:
		return 1
	}
	if !f.HasLimit {
		return 0
	}
	return 2
}
