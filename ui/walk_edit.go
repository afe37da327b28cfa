package ui

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// changes are the keys that change the list of operations at the step shown. Every change is an edit of the plan.
func (u *walking) changes() []binding {
	return []binding{
		on("x", "x", "strike the step, or put it back", "x strike", u.strike),
		on("a", "a", "add an operation after it", "a add", u.add),
		on(">", ">", "move it one on", "< > move", func(p *Planner) { u.move(p, u.at+1) }),
		on("<", "<", "move it one back", "", func(p *Planner) { u.move(p, u.at-2) }),
		on("e", "e", "note for the crew", "e note", u.askNote),
		on("c", "c", "stop point: who is called", "c stop point", u.askStop),
		on("t", "t", "likely duration", "t time", u.askHours),
	}
}

func (u *walking) strike(p *Planner) {
	s := u.step()
	struck, word := model.Struck, "strike "
	if s.Struck {
		struck, word = model.NotStruck, "put back "
	}
	u.set(p, word+s.Name, "struck", model.Entry{Text: struck})
}

func (u *walking) add(p *Planner) {
	s := u.step()
	u.ask(p, "An operation after: "+s.Name, "What is done. Its duration is asked for next (t).", "", func(text string) {
		if text != "" {
			u.do(p, model.Edit{Name: "add operation " + text, Changes: []model.Change{model.AddingStep(p.plan, u.section, text, s.Key)}}, "")
		}
	})
}

func (u *walking) askNote(p *Planner) {
	s := u.step()
	u.ask(p, "Note for: "+s.Name, "What the crew is to know. Blank takes it away.", s.Note, func(text string) {
		u.set(p, "note for "+s.Name, "note", model.Entry{Text: text})
	})
}

func (u *walking) askStop(p *Planner) {
	s := u.step()
	u.ask(p, "Stop point of: "+s.Name, "Who is called, and before or at what.", "", func(text string) {
		u.set(p, "stop point of "+s.Name, "stop", model.Entry{Text: text})
	})
}

// ask asks for a line of text and goes back to the walk.
func (u *walking) ask(p *Planner, title, note, text string, take func(text string)) {
	question := newPrompt(title, note, text, func(p *Planner, text string) string {
		p.overlay = u
		take(model.Clean(text))
		return ""
	})
	question.back = u
	p.overlay = question
}

// askHours asks for the likely duration.
func (u *walking) askHours(p *Planner) {
	s := u.step()
	field := model.StepList().Field("likely")
	text := ""
	if s.Timed {
		text = p.show(s.Likely, quantity.Hours)
	}
	question := newPrompt("Likely duration of: "+s.Name, "Blank: from the rates on the time page.", text, func(p *Planner, text string) string {
		entry, err := field.Parse(text, p.system.Unit(quantity.Hours))
		if err != nil {
			return withRange(err, field, p.system)
		}
		p.overlay = u
		u.set(p, "duration of "+s.Name, "likely", entry)
		return ""
	})
	question.back = u
	p.overlay = question
}

// move puts the step shown behind another one of the list, or before all others where that is -1 or less.
func (u *walking) move(p *Planner, behind int) {
	s := u.step()
	if s.From != s.To || !s.Flat() {
		p.message = "it moves the string or deepens the hole: only an operation in which both stand can stand elsewhere"
		return
	}
	after := model.FirstStep
	switch {
	case behind >= len(u.steps) || u.at == 0 && behind < 0:
		p.message = "there is nothing beyond it"
		return
	case behind >= 0:
		after = u.steps[behind].Key
	}
	u.set(p, "move "+s.Name, "after", model.Entry{Text: after})
}

// set changes an entry of the step's row.
func (u *walking) set(p *Planner, name, key string, e model.Entry) {
	s := u.step()
	u.do(p, model.Edit{Name: name, Changes: model.StepChange(p.plan, u.section, s.Row, s.Key, key, e)}, s.Key)
}

// do makes an edit and walks the well anew; the step of the key keeps the place on the screen, without one the step that was added.
func (u *walking) do(p *Planner, edit model.Edit, key string) {
	p.do(edit)
	if key == "" {
		for _, s := range p.result.Steps[u.section] {
			if s.Own {
				key = s.Key
			}
		}
	}
	p.walkFrom(key, u.scroll)
}

// undo takes the last edit back.
func (u *walking) undo(p *Planner) {
	key := u.step().Key
	p.undo()
	if p.noWalk() != "" {
		p.overlay = nil
		return
	}
	message := p.message
	p.walkFrom(key, u.scroll)
	p.message = message
}
