package calc

import (
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// The steps page is worked out after those whose figures it names: an operation shows what the crew needs for it.

// stepsPage puts the figures of section i into its operations, and adds what they come to.
func (e *evaluation) stepsPage(i int) {
	o := e.operationsOf(i)
	list, missing := o.list, o.missing
	figures := e.numbersOf(i, list)
	for k := range list {
		e.numberStep(i, &list[k], figures)
	}
	e.result.Steps[i] = list
	p := e.page(i, model.TopicSteps)
	p.group = "Operations, likely"
	after, unlisted := 0.0, missing
	for k := range list {
		s := &list[k]
		own := gap{why: s.Why, path: model.Path(s.Mend)}
		if s.Counts() {
			after += s.Likely
			missing = first(missing, own)
		}
		e.operationFigures(p, s, after, own, missing, unlisted)
	}
	p.group = "Section"
	p.put("steps.hours", "All steps", quantity.Hours, after, missing, func(w *Working) {
		w.Formula = "t = sum of the likely durations of all steps that are not struck"
		for k := range list {
			if s := &list[k]; s.Counts() {
				w.in("", s.Name, quantity.Hours, s.Likely)
			}
		}
		w.Source = "common practice"
		w.Note = "Without weather."
	})
	flat := 0.0
	for k := range list {
		if s := &list[k]; s.Counts() && s.Flat() {
			flat += s.Likely
		}
	}
	p.also("steps.hours.flat", "flat", quantity.Hours, flat, missing, func(w *Working) {
		w.Formula = "t = sum of the durations of the steps in which the hole gets no deeper"
		w.in("t", "all steps", quantity.Hours, after)
		w.Source = "common practice"
	})
}

// operationFigures adds the line of one operation: how long it takes, when it is over, and where hole and string end stand then.
func (e *evaluation) operationFigures(p *page, s *Step, after float64, own, sum, listed gap) {
	p.put("steps."+s.Key, s.Name, quantity.Hours, s.Likely, own, func(w *Working) {
		w.Formula = s.By
		w.in("low", "duration", quantity.Hours, s.Low)
		w.in("high", "duration", quantity.Hours, s.High)
		w.in("from", "end of what hangs in the hole", quantity.Length, s.From)
		w.in("to", "end of what hangs in the hole", quantity.Length, s.To)
		w.Source = "common practice, from memory; the rates are the plan's"
		w.Note = s.Do
	}).Note = s.noted()
	p.also("steps."+s.Key+".after", "over at", quantity.Hours, after, sum, func(w *Working) {
		w.Formula = "t = sum of the likely durations down to this step"
		w.in("t", "this step", quantity.Hours, s.Likely)
		w.Source = "common practice"
	})
	depth := func(key, column, what string, md float64) {
		p.also("steps."+s.Key+key, column, quantity.Length, md, listed, func(w *Working) {
			w.Formula = what + ", along hole, when the step is done"
			w.Source = "the plan's depths"
		})
	}
	depth(".bit", "bit or shoe", "end of what hangs in the hole, 0 for nothing", s.To)
	depth(".hole", "hole", "depth of the hole", s.HoleTo)
}

// noted returns the short note that a step's line carries.
func (s *Step) noted() string {
	switch {
	case s.Struck:
		return "struck: not done"
	case s.Note != "":
		return s.Note
	}
	return ""
}

// numbersOf returns the figures of section i that its operations name, by their keys.
func (e *evaluation) numbersOf(i int, list []Step) map[string]*Figure {
	figures := map[string]*Figure{}
	for k := range list {
		for _, figure := range e.stepText(i, list[k].Key).figures {
			key, _, _ := strings.Cut(figure, " ")
			figures[key] = nil
		}
	}
	sheet := &e.result.Sections[i]
	for k := range sheet.Figures {
		f := &sheet.Figures[k]
		if found, named := figures[f.Key]; named && found == nil {
			figures[f.Key] = f
		}
	}
	return figures
}

// numberStep adds the figures of its section, by their keys, that an operation names.
func (e *evaluation) numberStep(i int, s *Step, figures map[string]*Figure) {
	if s.Own {
		return
	}
	for _, figure := range e.stepText(i, s.Key).figures {
		key, called, _ := strings.Cut(figure, " ")
		if f := figures[key]; f != nil {
			n := numberOf(*f)
			if called != "" {
				n.Name = strings.Replace(called, "*", f.Name, 1)
			}
			s.Numbers = append(s.Numbers, n)
		}
	}
}

// stepText returns the text of an operation of section i. All of them are written out once for a run.
func (e *evaluation) stepText(i int, key string) stepText {
	if e.stepTexts == nil {
		e.stepTexts = stepTexts()
	}
	if text, ok := e.stepTexts[key+atSeabed]; ok && !e.sections[i].rig {
		return text
	}
	return e.stepTexts[key]
}

// operations are those of a section in order, and what is missing to tell which there are and between which depths.
type operations struct {
	list    []Step
	missing gap
}

// operationsOf returns the operations of section i, made once; their figures are put in by its steps page.
func (e *evaluation) operationsOf(i int) *operations {
	if e.operations == nil {
		e.operations = make([]*operations, len(e.plan.Sections))
	}
	if e.operations[i] == nil {
		list, missing := e.stepsOf(i)
		e.operations[i] = &operations{list, missing}
	}
	return e.operations[i]
}

// stepsOf returns the operations of section i in order, as made from the plan and changed by its rows, and what is missing to
// tell which operations there are and between which depths: then none of them has a number. Without depths of the hole there
// are none.
func (e *evaluation) stepsOf(i int) ([]Step, gap) {
	if missing := e.sections[i].missing; missing.open() {
		return nil, missing
	}
	m := stepMaker{e: e, i: i, s: &e.plan.Sections[i], h: &e.sections[i], c: &e.strings[i]}
	m.missing = m.unknown()
	m.make()
	list := e.changedSteps(i, m.list)
	for k := range list {
		if s := &list[k]; m.missing.open() {
			s.From, s.To, s.HoleFrom, s.HoleTo = 0, 0, 0, 0
			e.spread(i, s, 0, "", m.missing)
		}
	}
	return list, m.missing
}
