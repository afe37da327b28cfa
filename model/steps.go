package model

import "borewalk/model/quantity"

// Whether a row takes an operation out of a section's list.
const (
	NotStruck = "no"
	Struck    = "yes"
)

// FirstStep stands in StepRow.After for a step that comes before all others.
const FirstStep = "first"

// StepRow changes one operation of a section's list, which is made from the plan, or adds one of the plan's own.
type StepRow struct {
	Row
	Step, After, Name, Who, Stop, Note, Struck string
	Low, Likely, High                          quantity.Value
}

// Own reports whether the row is an operation of the plan's own, and not a change to one that is made.
func (r *StepRow) Own() bool { return r.Step == "" }

func stepGroup(section *Group) *Group {
	type d = declaration[StepRow]
	text := func(key, label, name, help string, at func(*StepRow) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicSteps, Type: TextField, Help: help, At: at}
	}
	hours := func(key, label, name, help string, at func(*StepRow) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicSteps, Kind: quantity.Hours, Range: "0 h to 2000 h", Help: help, At: at}
	}
	g := list("step", "Step changed", "An operation changed or added. Easier in the walk (W): there a step is struck, moved, noted, or one is added.", TopicSteps, section,
		func(p *Plan, at Place) *[]StepRow { return &p.Sections[at.Outer].Steps },
		text("step", "Changes step", "Key of the operation that the row changes", "As the list gives it, such as drill or run_casing. Blank: an operation of the plan's own.", func(r *StepRow) any { return &r.Step }),
		text("after", "Stands after", "Key of the operation that it stands after", "Blank: where the list has it; an own one comes last. \"first\": before all others. An own operation is called own.1, own.2 by its order among the rows.", func(r *StepRow) any { return &r.After }),
		text("name", "Operation", "What is done", "Of an own operation its name; of a changed one another name.", func(r *StepRow) any { return &r.Name }),
		text("who", "Who", "Who does it", "Blank: as the list has it.", func(r *StepRow) any { return &r.Who }),
		text("stop", "Stop point", "Stop point", "Who is called, and before or at what. Comes on top of those that the list has.", func(r *StepRow) any { return &r.Stop }),
		text("note", "Note", "Note", "What the crew is to know.", func(r *StepRow) any { return &r.Note }),
		d{Key: "struck", Label: "Struck", Name: "Struck from the list", Topic: TopicSteps, Choices: []string{NotStruck, Struck}, Default: NotStruck,
			Help: "A struck operation stays in sight, takes no time, and is not done.", At: func(r *StepRow) any { return &r.Struck }},
		hours("low", "Hours, low", "Duration, low", "As short as it may take. Blank: the likely one and the spread on the time page.", func(r *StepRow) any { return &r.Low }),
		hours("likely", "Hours, likely", "Duration, likely", "Blank: from the rates on the time page.", func(r *StepRow) any { return &r.Likely }),
		hours("high", "Hours, high", "Duration, high", "As long as it may take. Blank: the likely one and the spread on the time page.", func(r *StepRow) any { return &r.High }),
	)
	g.Field("step").Brief, g.Field("name").Brief = true, true
	return g
}

// StepList returns the list of changed operations of a section.
func StepList() *Group { return within("step") }

// StepChange returns the changes that give an entry of the row of an operation a content. row is the operation's row; where it has
// none, -1, one is added behind the others.
func StepChange(plan *Plan, section, row int, step, key string, e Entry) []Change {
	g := StepList()
	if row >= 0 {
		return []Change{Setting(plan, Ref{Group: g, Field: g.Field(key), Place: Place{Outer: section, Inner: row}}, e)}
	}
	fresh := g.fresh().(*StepRow)
	fresh.Step = step
	g.Field(key).set(fresh, e)
	at := Place{Outer: section, Inner: len(plan.Sections[section].Steps)}
	return []Change{{Kind: AddRow, Ref: Ref{Group: g, Place: at}, row: fresh}}
}

// AddingStep returns the change that adds an operation of the plan's own after another.
func AddingStep(plan *Plan, section int, name, after string) Change {
	g := StepList()
	row := g.fresh().(*StepRow)
	row.Name, row.After = name, after
	return Change{Kind: AddRow, Ref: Ref{Group: g, Place: Place{Outer: section, Inner: len(plan.Sections[section].Steps)}}, row: row}
}
