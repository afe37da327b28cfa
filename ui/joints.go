package ui

import (
	"fmt"
	"path/filepath"

	"borewalk/model"
	"borewalk/model/jointfile"
	"borewalk/model/quantity"
)

// noJoints says why measured joints cannot be read here.
func (p *Planner) noJoints() string {
	switch {
	case p.topic != model.TopicCasing:
		return "measured joints are read on the casing page"
	case len(p.plan.Sections) == 0:
		return "there is no section yet"
	case p.plan.Sections[p.section].Completion == model.OpenHole:
		return "the section stays open hole"
	}
	return ""
}

// askJoints asks for a file of measured joints and puts them in place of the section's, as one edit.
func (p *Planner) askJoints() {
	unit := p.system.Unit(quantity.TallyLength)
	note := fmt.Sprintf("One joint a line: number, length, and yes where it is rejected. A length without a unit is in %s.", unit.Symbol())
	if n := len(p.plan.Sections[p.section].Joints); n > 0 {
		note += fmt.Sprintf(" They take the place of the %d that are there; u brings those back.", n)
	}
	p.overlay = newPrompt("Measured joints from a file", note, "", func(p *Planner, path string) string {
		if path == "" {
			return "Type the name of the file, or press esc."
		}
		joints, err := jointfile.Open(path, unit)
		if err != nil {
			return model.Clean(err.Error())
		}
		name := fmt.Sprintf("section %d: %d joints from %s", p.section+1, len(joints), model.Clean(filepath.Base(path)))
		p.do(model.Edit{Name: name, Changes: model.ReplacingJoints(p.plan, p.section, joints)})
		total, shortest, longest := model.Span(joints)
		show := func(m float64) string { return quantity.Format(m, quantity.TallyLength, unit) }
		p.message = fmt.Sprintf("%s: %s %s, from %s to %s", name, show(total), unit.Symbol(), show(shortest), show(longest))
		return ""
	})
}
