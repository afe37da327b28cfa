package dialogue

import (
	"fmt"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/ui/wording"
)

// startNew begins a new plan, after asking when something would be lost.
func (s *Session) startNew() {
	if s.history.Dirty() {
		s.confirm("the plan has changes that are not saved; lose them and start a new plan? yes or no", s.askNew)
		return
	}
	s.askNew()
}

// askNew asks the questions for a new plan, one by one.
func (s *Session) askNew() {
	answers := new(model.Start)
	s.askStart(model.StartGroup(answers), 0, func() {
		s.Close()
		s.options.Path, s.options.Title, s.options.Units = "", "new plan", ""
		s.readOnly, s.happened, s.unsaved, s.options.ReadOnly = "", "", nil, false
		s.section, s.topic = 0, model.TopicHole
		s.begin(planfile.New(model.NewPlan(*answers)), model.History{})
		s.history.Unsaved()
		s.nameEntries()
		s.where()
		s.say("sections, strings and fluids to start from: look at every entry; the prognosis is yours to enter on the well page")
	})
}

// askStart asks question i and those behind it, and then makes the plan.
func (s *Session) askStart(g *model.Group, i int, make func()) {
	if i == len(g.Fields) {
		make()
		return
	}
	ref := model.Ref{Group: g, Field: g.Fields[i]}
	usual := wording.Content(s.plan, ref, s.system)
	lines := []string{fmt.Sprintf("question %d of %d: %s? nothing for %s", i+1, len(g.Fields), ref.Field.Name, usual)}
	if r := ref.Field.RangeText(s.system); r != "" && len(ref.Field.Choices) == 0 {
		lines[0] += "; range " + r
	}
	for k, choice := range ref.Field.Choices {
		lines = append(lines, fmt.Sprintf("%d. %s", k+1, choice))
	}
	s.ask(lines, func(line string) {
		if k := chosen(line, ref.Field.Choices); k >= 0 {
			line = ref.Field.Choices[k]
		}
		if line != "" {
			entry, err := s.read(ref, line)
			if err != nil {
				s.refuse(err.Error())
				s.askStart(g, i, make)
				return
			}
			ref.Set(s.plan, entry)
		}
		if !ref.Get(s.plan).IsSet() && ref.Field.Type == model.QuantityField {
			s.refuse("a value is needed")
			s.askStart(g, i, make)
			return
		}
		s.askStart(g, i+1, make)
	})
}
