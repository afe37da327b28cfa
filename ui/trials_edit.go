package ui

import (
	"cmp"
	"fmt"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
)

// ask asks for a line of text and does something with it; esc goes back to the trials.
func (u *trials) ask(p *Planner, title, note, text string, take func(*Planner, string) string) {
	question := newPrompt(title, note, text, take)
	question.back = u
	p.overlay = question
}

// done makes an edit of the plan and shows the trials as they are then.
func (u *trials) done(p *Planner, edit model.Edit) {
	p.do(edit)
	message := p.message
	u.again(p)
	p.message = message
}

// trialField returns the entry of a trial's own, or of one of its changes.
func trialField(g *model.Group, key string, trial, change int) model.Ref {
	return model.Ref{Group: g, Field: g.Field(key), Place: model.Place{Outer: trial, Inner: change}}
}

// badName says why a trial cannot have a name.
func (u *trials) badName(name string) string {
	if name == "" {
		return "Type a name, or press esc."
	}
	for _, t := range u.compared.Trials {
		if t.Name == name {
			return "There is a trial of that name."
		}
	}
	return ""
}

func (u *trials) askNew(p *Planner) {
	u.ask(p, "New trial", "What is tried, in a few words.", "", func(p *Planner, name string) string {
		name = model.Clean(name)
		if wrong := u.badName(name); wrong != "" {
			return wrong
		}
		t := model.Trial{Name: name, Section: model.SectionLabel(p.plan, p.section)}
		u.at, u.trial = 0, len(u.compared.Trials)
		u.done(p, model.Edit{Name: "new trial " + name, Changes: []model.Change{model.AddingTrial(p.plan, t)}})
		return ""
	})
}

func (u *trials) askKeep(p *Planner) {
	back, more := p.history.Net(p.plan, p.section)
	if len(back) == 0 {
		p.message = "no entry of this section alone was changed since the plan was opened or saved"
		return
	}
	note := fmt.Sprintf("%d changed entries go into the trial, and the plan is as it was.", len(back))
	if more {
		note += " Other edits, and rows added or removed, stay in the plan."
	}
	u.ask(p, "Keep as a trial what was edited", note, "", func(p *Planner, name string) string {
		name = model.Clean(name)
		if wrong := u.badName(name); wrong != "" {
			return wrong
		}
		u.at, u.trial = 0, len(u.compared.Trials)
		u.done(p, model.Keeping(p.plan, p.section, name, back))
		return ""
	})
}

func (u *trials) askName(p *Planner, t *calc.Trial) {
	u.askText(p, "name", t.Number, "Name of the trial")
}

// askText asks for the name of a trial or its note.
func (u *trials) askText(p *Planner, key string, number int, title string) {
	ref := trialField(model.TrialGroup(), key, number, 0)
	was := ref.Get(p.plan).Text
	u.ask(p, title, ref.Field.Help, was, func(p *Planner, text string) string {
		if wrong := u.badName(text); key == "name" && text != was && wrong != "" {
			return wrong
		}
		e, err := ref.Field.Parse(text, 0)
		if err != nil {
			return err.Error()
		}
		u.done(p, model.Edit{Name: "trial " + key + ": " + text, Changes: []model.Change{model.Setting(p.plan, ref, e)}})
		return ""
	})
}

// enter edits what the row in focus has of a trial.
func (u *trials) enter(p *Planner, t *calc.Trial) {
	switch row := u.rows[u.at]; row.kind {
	case rowNote:
		u.askText(p, "note", t.Number, "Note on the trial")
	case rowAdd:
		u.askEntry(p, t)
	case rowEntry:
		if row.entry.Ref.Field == nil {
			p.message = "the plan has no entry " + row.entry.Path + "; d removes the change"
			return
		}
		u.askValue(p, t, row.entry.Ref)
	default:
		p.message = "a figure follows from the changes; c adds one"
	}
}

// askEntry asks which entry a trial changes: those of the section first, then the well's and other sections'.
func (u *trials) askEntry(p *Planner, t *calc.Trial) {
	var own, well, others []model.Ref
	model.Walk(p.plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			ref := model.Ref{Group: g, Field: f, Place: at}
			switch {
			case f.Topic == model.TopicTrial || ref.Idle(p.plan) != "":
			case !inSection(ref):
				well = append(well, ref)
			case at.Outer == p.section:
				own = append(own, ref)
			default:
				others = append(others, ref)
			}
		}
		return true
	})
	var refs []model.Ref
	var items []item
	for _, part := range []struct {
		title string
		refs  []model.Ref
	}{{"Of this section", own}, {"Of other sections", others}, {"Of the well", well}} {
		refs, items = append(refs, model.Ref{}), append(items, item{text: part.title, style: canvas.Heading, dead: true})
		for _, ref := range part.refs {
			now := cmp.Or(ref.Field.ScreenText(ref.Get(p.plan), p.system), "blank")
			refs, items = append(refs, ref), append(items, item{text: handleName(ref, p.section) + "  " + now, full: ref.Words() + ", now " + now})
		}
	}
	chooser := newFinder(t.Name+": which entry is another?", items, func(p *Planner, i int) { u.askValue(p, t, refs[i]) })
	chooser.back = u
	p.overlay = chooser
}

// askValue asks what a trial makes of an entry.
func (u *trials) askValue(p *Planner, t *calc.Trial, ref model.Ref) {
	text := ""
	for n, c := range t.Changes {
		if c.Ref == ref {
			text = p.plan.Trials[t.Number].Changes[n].Value
		}
	}
	if ref.Field.Type == model.ChoiceField {
		u.chooseValue(p, t, ref)
		return
	}
	note := "In the plan: " + cmp.Or(ref.Field.ScreenText(ref.Get(p.plan), p.system), "blank") + ". "
	if ref.Field.Type == model.QuantityField {
		note += "With + or - before it a difference from that, = before a number below zero, blank empties it. Range " + ref.Field.RangeText(p.system) + "."
	}
	u.ask(p, t.Name+": "+ref.Field.Name, note, text, func(p *Planner, typed string) string { return u.take(p, t, ref, typed) })
}

// chooseValue offers the choices of a field.
func (u *trials) chooseValue(p *Planner, t *calc.Trial, ref model.Ref) {
	choices := &menu{title: t.Name + ": " + ref.Field.Name, back: u}
	for _, c := range ref.Field.Choices {
		choices.items = append(choices.items, item{text: c})
	}
	choices.pick = func(p *Planner, i int) { u.take(p, t, ref, ref.Field.Choices[i]) }
	p.overlay = choices
}

// take puts what was typed for an entry into a trial and returns what is wrong with it, or nothing.
func (u *trials) take(p *Planner, t *calc.Trial, ref model.Ref, typed string) string {
	value, err := ref.Field.ParseTrial(typed, p.system.Unit(ref.Field.Kind))
	if err == nil {
		_, err = value.On(ref.Field, ref.Get(p.plan))
	}
	if err != nil {
		return withRange(err, ref.Field, p.system)
	}
	text := ref.Field.TrialText(value)
	change := model.AddingTrialChange(p.plan, t.Number, model.TrialChange{Path: model.TrialPath(p.plan, ref), Value: text})
	for n, c := range t.Changes {
		if c.Ref == ref {
			change = model.Setting(p.plan, trialField(model.TrialChangeList(), "value", t.Number, n), model.Entry{Text: text})
		}
	}
	u.done(p, model.Edit{Name: "trial " + t.Name + ": " + ref.Field.Label + " " + text, Changes: []model.Change{change}})
	return ""
}

// askPromote shows what a trial changes before it becomes the plan's.
func (u *trials) askPromote(p *Planner, t *calc.Trial) {
	switch {
	case t.Why != "":
		p.message = "not promoted: " + t.Why
		return
	case len(t.Changes) == 0:
		p.message = "this trial changes nothing"
		return
	}
	question := &menu{title: "Promote " + t.Name + "? The plan gets", back: u}
	for _, c := range t.Changes {
		question.items = append(question.items, item{text: p.editName(c.Ref, c.To), dead: true})
	}
	changes, _ := calc.TrialChanges(p.plan, t.Number)
	if n := len(changes) - len(t.Changes); n > 0 {
		question.items = append(question.items, item{text: fmt.Sprintf("and %d entries that go along", n), dead: true})
	}
	for _, row := range u.rows {
		if text := u.findingChange(p, row, u.trial+1); text != "" {
			question.items = append(question.items, item{text: text + ": " + row.finding.Text, style: severityStyle(row.finding.Severity), dead: true})
		}
	}
	question.at = len(question.items)
	question.items = append(question.items, item{text: "make it the plan's; undo brings the trial back"}, item{text: "leave the plan as it is"})
	yes := question.at
	question.pick = func(p *Planner, i int) {
		if i != yes {
			u.again(p)
			return
		}
		u.done(p, calc.Promotion(p.plan, t.Number))
	}
	p.overlay = question
}

// askRemove asks what is to go: the change in focus, or the trial.
func (u *trials) askRemove(p *Planner, t *calc.Trial) {
	var edits []model.Edit
	question := &menu{title: "Remove", back: u}
	if row := u.rows[u.at]; row.kind == rowEntry && row.entry.Tried[u.trial] >= 0 {
		n := row.entry.Tried[u.trial]
		question.items = append(question.items, item{text: "the change of " + u.entryName(row.entry)})
		edits = append(edits, model.Edit{Name: "trial " + t.Name + ": change of " + u.entryName(row.entry) + " removed",
			Changes: []model.Change{model.Removing(model.TrialChangeList(), model.Place{Outer: t.Number, Inner: n})}})
	}
	question.items = append(question.items, item{text: "the trial " + t.Name})
	edits = append(edits, model.Edit{Name: "trial " + t.Name + " removed",
		Changes: []model.Change{model.Removing(model.TrialGroup(), model.Place{Outer: t.Number})}})
	question.items = append(question.items, item{text: "nothing"})
	question.pick = func(p *Planner, i int) {
		if i < len(edits) {
			u.done(p, edits[i])
			return
		}
		u.again(p)
	}
	p.overlay = question
}

// entryName names an entry that is changed, with its section where that is another, or gives its path where the plan has none.
func (u *trials) entryName(e calc.ComparedEntry) string {
	switch {
	case e.Ref.Field == nil:
		return e.Path
	case !inSection(e.Ref) || e.Ref.Place.Outer == u.compared.Section:
		return handleName(e.Ref, u.compared.Section)
	}
	return sectionWord(e.Ref.Place.Outer) + handleName(e.Ref, e.Ref.Place.Outer)
}
