package ui

import (
	"fmt"
	"path/filepath"

	"borewalk/model"
	"borewalk/model/jointfile"
	"borewalk/model/pointfile"
	"borewalk/model/quantity"
)

// readList is a list of a section that can be read from a file, in place of the one that is there and as one edit.
type readList struct {
	title, what, note string // "Measured joints", "joints", how the file is written
	there             int    // how many there are
	read              func(path string) (listRead, error)
}

// listRead is what a file gave.
type listRead struct {
	changes []model.Change
	n       int
	summary string
	left    string // what of the file is left out, and what to do about it; empty for nothing
}

// noFile says why no list can be read here.
func (p *Planner) noFile() string {
	switch {
	case p.topic != model.TopicCasing && p.topic != model.TopicControl:
		return "measured joints are read on the casing page, a shoe test on the control page"
	case len(p.plan.Sections) == 0:
		return "there is no section yet"
	case p.topic == model.TopicCasing && p.plan.Sections[p.section].Completion == model.OpenHole:
		return "the section stays open hole"
	}
	return ""
}

// askList asks for the file of the page's list.
func (p *Planner) askList() {
	list := p.joints()
	if p.topic == model.TopicControl {
		list = p.testPoints()
	}
	note := list.note
	if list.there > 0 {
		note += fmt.Sprintf(" They take the place of the %d that are there; u brings those back.", list.there)
	}
	p.overlay = newPrompt(list.title+" from a file", note, "", func(p *Planner, path string) string {
		if path == "" {
			return "Type the name of the file, or press esc."
		}
		got, err := list.read(path)
		if err != nil {
			return model.Clean(err.Error())
		}
		name := fmt.Sprintf("section %d: %d %s from %s", p.section+1, got.n, list.what, model.Clean(filepath.Base(path)))
		p.do(model.Edit{Name: name, Changes: got.changes})
		p.message = name + ": " + got.summary
		if got.left != "" { // before the file's name, which may take the line
			p.message = fmt.Sprintf("%d %s; %s", got.n, list.what, got.left)
		}
		return ""
	})
}

// joints is the list of the casing page.
func (p *Planner) joints() readList {
	unit := p.system.Unit(quantity.TallyLength)
	return readList{
		title: "Measured joints", what: "joints", there: len(p.plan.Sections[p.section].Joints),
		note: fmt.Sprintf("One joint a line: number, length, and yes where it is rejected. A length without a unit is in %s.", unit.Symbol()),
		read: func(path string) (listRead, error) {
			joints, err := jointfile.Open(path, unit)
			if err != nil {
				return listRead{}, err
			}
			total, shortest, longest := model.Span(joints)
			show := func(m float64) string { return quantity.Format(m, quantity.TallyLength, unit) }
			return listRead{changes: model.ReplacingJoints(p.plan, p.section, joints), n: len(joints),
				summary: fmt.Sprintf("%s %s, from %s to %s", show(total), unit.Symbol(), show(shortest), show(longest))}, nil
		},
	}
}

// testPoints is the list of the control page.
func (p *Planner) testPoints() readList {
	volume, pressure := p.system.Unit(quantity.Volume), p.system.Unit(quantity.Pressure)
	return readList{
		title: "Shoe test", what: "readings", there: len(p.plan.Sections[p.section].TestPoints),
		note: fmt.Sprintf("One reading a line: volume pumped so far, gauge pressure. Without a unit, or one in the heading, they are in %s and %s. Headings tell them from a time.",
			p.glyphs.Translate(volume.Symbol()), p.glyphs.Translate(pressure.Symbol())),
		read: func(path string) (listRead, error) {
			test, err := pointfile.Open(path, p.system)
			if err != nil {
				return listRead{}, err
			}
			rows, most := make([]model.TestPoint, len(test.Points)), 0.0
			for k, at := range test.Points {
				rows[k] = model.TestPoint{Volume: at.Volume, Pressure: at.Pressure}
				most = max(most, at.Pressure.SI)
			}
			got := listRead{changes: model.ReplacingTestPoints(p.plan, p.section, rows), n: len(rows), summary: "up to " + p.show(most, quantity.Pressure)}
			if test.LeftOut > 0 {
				got.left = fmt.Sprintf("%d after pump stop left out: enter shut-in pressures by hand", test.LeftOut)
			}
			return got, nil
		},
	}
}
