package sheet

import (
	"slices"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// wellEntries returns the entries of a group that is no section's, and of the lists within it.
func (p *printer) wellEntries(g *model.Group) []part {
	var parts []part
	switch {
	case g.List:
		return p.listParts(g.Title, g, model.Place{})
	case followsWhenBlank(g):
		parts = append(parts, part{title: g.Title + ", the plan's own", pairs: p.setPairs(g)})
		if len(parts[0].pairs) == 0 {
			parts[0].remarks = []string{"None."}
		}
	default:
		parts = append(parts, part{title: g.Title, pairs: p.pairs(g, model.Place{}, model.TopicWell)})
	}
	for _, list := range g.Lists {
		parts = append(parts, p.listParts(list.Title, list, model.Place{})...)
	}
	return parts
}

// followsWhenBlank reports whether a group holds only what the plan does its own way, so that a blank entry there says
// nothing: none of its entries is needed, and none starts with a value.
func followsWhenBlank(g *model.Group) bool {
	return len(g.Fields) > 0 && !slices.ContainsFunc(g.Fields, func(f *model.Field) bool {
		return f.Required || f.Default != "" || f.Type == model.TextField
	})
}

// sectionEntries returns what is entered for one topic of a section.
func (p *printer) sectionEntries(i int, topic model.Topic) []part {
	group, at := model.SectionGroup(), model.Place{Outer: i}
	title := capital(topic.String())
	var parts []part
	if pairs := p.pairs(group, at, topic); len(pairs) > 0 {
		parts = append(parts, part{title: title + ": entered", pairs: pairs})
	}
	for _, list := range group.Lists {
		switch {
		case list.Topic != topic:
		case list.List:
			parts = append(parts, p.listParts(title+": entered, "+list.Title, list, at)...)
		default:
			if pairs := p.pairs(list, at, topic); len(pairs) > 0 {
				parts = append(parts, part{title: title + ": entered, " + list.Title, pairs: pairs})
			}
		}
	}
	return parts
}

// pairs returns the entries of one row of a group that count just now, blank ones too, and planned ones with what counts in their
// place because it is as built.
func (p *printer) pairs(g *model.Group, at model.Place, topic model.Topic) []pair {
	var pairs []pair
	for _, f := range g.Fields {
		ref := model.Ref{Group: g, Field: f, Place: at}
		switch built := ref.AsBuilt(p.plan); {
		case f.Topic != topic:
		case built != "":
			pairs = append(pairs, pair{f.Name, "planned " + p.entryText(ref) + "; " + built})
		case ref.Idle(p.plan) == "":
			pairs = append(pairs, pair{f.Name, p.entryText(ref)})
		}
	}
	return pairs
}

// setPairs returns the entries of a single table that count and are not blank.
func (p *printer) setPairs(g *model.Group) []pair {
	var pairs []pair
	for _, f := range g.Fields {
		ref := model.Ref{Group: g, Field: f}
		if ref.Idle(p.plan) == "" && ref.Get(p.plan).IsSet() {
			pairs = append(pairs, pair{f.Name, p.entryText(ref)})
		}
	}
	return pairs
}

// listParts returns a list as a table of one row each; nothing when its rows do not count. A column that is blank all
// the way down is left out, unless it must be filled.
func (p *printer) listParts(title string, g *model.Group, at model.Place) []part {
	table := part{title: title, rowHead: "No."}
	n := g.Len(p.plan, at)
	used := make([]bool, len(g.Fields))
	counts := n == 0
	for i := range n {
		for k, f := range g.Fields {
			ref := model.Ref{Group: g, Field: f, Place: g.At(at, i)}
			if ref.Idle(p.plan) == "" {
				counts = true
				used[k] = used[k] || f.Required || ref.Get(p.plan).IsSet()
			}
		}
	}
	if !counts || idle(p.plan, g) {
		return nil
	}
	for i := range n {
		r := row{name: strconv.Itoa(i + 1)}
		for k, f := range g.Fields {
			ref := model.Ref{Group: g, Field: f, Place: g.At(at, i)}
			if !used[k] || ref.Idle(p.plan) != "" {
				continue
			}
			entry := ref.Get(p.plan)
			r.cells = append(r.cells, cell{
				label: f.Label, value: dash(f.ScreenText(entry, p.System)), number: f.Type == model.QuantityField,
				spare: !entry.IsSet() && !f.Required,
			})
		}
		table.rows = append(table.rows, r)
	}
	if n == 0 {
		table.remarks = []string{"None."}
	}
	return []part{table}
}

// idle reports whether a whole list does not count: survey stations while the path is given in another way.
func idle(plan *model.Plan, g *model.Group) bool {
	return g.Path() == "trajectory.survey" && plan.Trajectory.Method != model.SurveyList
}

// entryText returns an entry with its unit. A quantity that was entered in the unit shown keeps the digits it was entered
// with; one that was entered in another is followed by what was entered. Densities stand in a second unit too, since a
// mud weight that is read in the wrong one is wrong by far.
func (p *printer) entryText(ref model.Ref) string {
	entry := ref.Get(p.plan)
	f, v := ref.Field, entry.Quantity
	if f.Type != model.QuantityField || !v.IsSet() {
		return dash(f.ScreenText(entry, p.System))
	}
	unit := p.System.Unit(f.Kind)
	if v.Unit != unit {
		return quantity.FormatUnit(v.SI, f.Kind, unit) + " (entered " + v.Text() + ")"
	}
	text := quantity.FormatValue(v, f.Kind, unit)
	if symbol := unit.Symbol(); symbol != "" {
		text += " " + symbol
	}
	if f.Kind == quantity.Density || f.Kind == quantity.EMW {
		text += " (" + p.second(v.SI, f.Kind) + ")"
	}
	return text
}

// second formats a quantity in the unit that the other half of the trade uses for it.
func (p *printer) second(si float64, kind quantity.Kind) string {
	for _, set := range []quantity.Set{quantity.Field, quantity.Metric} {
		if unit := quantity.NewSystem(set, nil).Unit(kind); unit != p.System.Unit(kind) {
			return quantity.FormatUnit(si, kind, unit)
		}
	}
	return quantity.FormatUnit(si, kind, p.System.Unit(kind))
}

// counting calls visit for every entry of the chosen sheets that counts just now.
func (p *printer) counting(visit func(section int, ref model.Ref)) {
	model.Walk(p.plan, func(g *model.Group, at model.Place) bool {
		section := -1
		if g == model.SectionGroup() || g.Parent == model.SectionGroup() {
			section = at.Outer
		}
		if (p.Section >= 0 && section != p.Section) || idle(p.plan, g) {
			return true
		}
		for _, f := range g.Fields {
			if ref := (model.Ref{Group: g, Field: f, Place: at}); ref.Idle(p.plan) == "" {
				visit(section, ref)
			}
		}
		return true
	})
}
