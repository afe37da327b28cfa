package model

import "sync"

// Trial is a named what-if of a section: changes that are tried on a copy of the plan and become the plan's own only when the
// trial is promoted.
type Trial struct {
	Row
	Name    string
	Section string // the name of the section that it is of where no other has it, else its number
	Note    string
	Changes []TrialChange
}

// TrialChange is what a trial makes of one entry: the entry's path, in which a section may go by its name, and a value as
// [Field.ParseTrial] reads it.
type TrialChange struct {
	Row
	Path, Value string
}

func trialGroup() *Group {
	type d = declaration[Trial]
	g := list("trial", "Trial", "A what-if of a section, kept beside the plan. T on a section's page shows them side by side.", TopicTrial, nil,
		func(p *Plan, _ Place) *[]Trial { return &p.Trials },
		d{Key: "name", Brief: true, Label: "Trial", Name: "Name of the trial", Topic: TopicTrial, Type: TextField, Required: true,
			Help: "What is tried, in a few words.", At: func(t *Trial) any { return &t.Name }},
		d{Key: "section", Brief: true, Label: "Of section", Name: "Section of the trial", Topic: TopicTrial, Type: TextField, Required: true,
			Help: "The section's name where no other has it, else its number; a name survives sections that come and go.",
			At:   func(t *Trial) any { return &t.Section }},
		d{Key: "note", Label: "Note", Name: "Note on the trial", Topic: TopicTrial, Type: TextField,
			Help: "Why it is tried, or what came of it.", At: func(t *Trial) any { return &t.Note }},
	)
	trialChangeGroup(g)
	return g
}

func trialChangeGroup(trial *Group) {
	type d = declaration[TrialChange]
	list("change", "Change", "An entry that the trial changes.", TopicTrial, trial,
		func(p *Plan, at Place) *[]TrialChange { return &p.Trials[at.Outer].Changes },
		d{Key: "path", Brief: true, Label: "Entry", Name: "Path of the entry", Topic: TopicTrial, Type: TextField, Required: true,
			Help: "As section[3].density, or with the section's name in the brackets.", At: func(c *TrialChange) any { return &c.Path }},
		d{Key: "value", Brief: true, Label: "Value", Name: "Value in the trial", Topic: TopicTrial, Type: TextField, Required: true,
			Help: "With + or - before it a difference from the plan's entry, else what stands there; blank empties the entry, = before it takes it as written.",
			At:   func(c *TrialChange) any { return &c.Value }},
	)
}

// TrialGroup returns the list of trials.
func TrialGroup() *Group { return trialList() }

// TrialChangeList returns the list of changes within a trial.
func TrialChangeList() *Group { return trialList().Lists[0] }

var trialList = sync.OnceValue(func() *Group { return atTop("trial") })

// AddingTrial returns the change that puts a trial behind the others.
func AddingTrial(plan *Plan, t Trial) Change {
	return Change{Kind: AddRow, Ref: Ref{Group: TrialGroup(), Place: Place{Outer: len(plan.Trials)}}, row: &t}
}

// AddingTrialChange returns the change that puts a further change into a trial.
func AddingTrialChange(plan *Plan, trial int, c TrialChange) Change {
	at := Place{Outer: trial, Inner: len(plan.Trials[trial].Changes)}
	return Change{Kind: AddRow, Ref: Ref{Group: TrialChangeList(), Place: at}, row: &c}
}
