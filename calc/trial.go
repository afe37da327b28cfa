package calc

import (
	"errors"
	"slices"

	"borewalk/model"
)

// Trial is one of a section's trials, worked out on a copy of the plan.
type Trial struct {
	Number     int // among the plan's trials
	Name, Note string
	Changes    []Tried
	Why        string  // why it is not worked out; empty when it is
	Result     *Result // of the plan with all its changes; nil when it is not worked out
}

// Tried is what a trial does to one entry.
type Tried struct {
	Path    string    // as the trial has it
	Ref     model.Ref // the entry; none where the plan has none
	Was, To model.Entry
	Fault   string // why the change cannot be made; empty when it can
	Idle    string // why the entry does not count with the trial's changes
}

// TrialsOf returns which of the plan's trials are of a section, and those whose section is not there: they belong to none and are
// not to be lost from sight.
func TrialsOf(plan *model.Plan, section int) (numbers []int) {
	for k := range plan.Trials {
		if i, ok := model.SectionCalled(plan, plan.Trials[k].Section); i == section || !ok {
			numbers = append(numbers, k)
		}
	}
	return numbers
}

// mostTrials is how many trials of a section are worked out: more fit no screen, and each is a whole result to be held.
const mostTrials = 24

// ReadTrials reads all trials of a section, to be worked out one by one.
func ReadTrials(plan *model.Plan, section int) (list []Trial) {
	for k, number := range TrialsOf(plan, section) {
		if k < mostTrials {
			list = append(list, ReadTrial(plan, number))
		} else {
			list = append(list, Trial{Number: number, Name: plan.Trials[number].Name, Why: "too many trials of one section; remove some"})
		}
	}
	return list
}

// Trials works out all trials of a section.
func Trials(plan *model.Plan, section int) SideBySide {
	c := SideBySide{Section: section, Now: Evaluate(plan), Trials: ReadTrials(plan, section)}
	for k := range c.Trials {
		c.Trials[k].WorkOut(plan)
	}
	return c
}

// TryTrial reads one of the plan's trials and works it out. The plan is not changed by it.
func TryTrial(plan *model.Plan, number int) Trial {
	t := ReadTrial(plan, number)
	t.WorkOut(plan)
	return t
}

// ReadTrial says what one of the plan's trials changes. One of which a change cannot be made is not to be worked out: with the others
// alone it would be another trial.
func ReadTrial(plan *model.Plan, number int) Trial {
	t := Trial{Number: number, Name: plan.Trials[number].Name, Note: plan.Trials[number].Note}
	_, t.Changes = TrialChanges(plan, number)
	if _, ok := model.SectionCalled(plan, plan.Trials[number].Section); !ok {
		t.Why = "no single section is called " + plan.Trials[number].Section
	}
	for _, c := range t.Changes {
		if t.Why == "" && c.Fault != "" {
			t.Why = c.Path + ": " + c.Fault
		}
	}
	return t
}

// WorkOut gives a trial that was read its result, where it can have one.
func (t *Trial) WorkOut(plan *model.Plan) {
	if t.Why != "" {
		return
	}
	own := plan.Clone()
	changes, _ := TrialChanges(plan, t.Number)
	var h model.History
	h.Do(own, model.Edit{Changes: changes})
	t.Result = Evaluate(own)
}

// TrialChanges returns the changes that make a trial's contents the plan's own, and what becomes of each of the trial's own changes.
// They are made in the order in which they stand, so that a difference is from what those before have left; one that cannot be made
// is passed over, and says so.
func TrialChanges(plan *model.Plan, number int) (changes []model.Change, list []Tried) {
	own := plan.Clone()
	var h model.History
	for _, c := range plan.Trials[number].Changes {
		tried := Tried{Path: c.Path}
		step, err := tried.change(plan, own, c.Value)
		if slices.ContainsFunc(list, func(before Tried) bool { return before.Ref.Field != nil && before.Ref == tried.Ref }) {
			err = errors.New("it is changed twice in this trial")
		}
		if err != nil {
			tried.Fault = err.Error()
		} else {
			h.Do(own, model.Edit{Changes: slices.Clone(step)})
			changes = append(changes, step...)
		}
		list = append(list, tried)
	}
	for k := range list {
		if t := &list[k]; t.Fault == "" {
			t.Idle = t.Ref.Idle(own)
		}
	}
	return changes, list
}

// change reads what the trial makes of its entry, and returns the changes to a plan that holds what went before.
func (t *Tried) change(plan, own *model.Plan, text string) ([]model.Change, error) {
	ref, ok := model.TrialEntry(plan, t.Path)
	if !ok {
		return nil, errors.New("the plan has no such entry")
	}
	t.Ref, t.Was = ref, ref.Get(plan)
	value, err := ref.Field.ParseTrial(text, 0)
	if err != nil {
		return nil, err
	}
	if t.To, err = value.On(ref.Field, ref.Get(own)); err != nil {
		return nil, err
	}
	step := entering(own, ref, t.To)
	if at, out := (model.Edit{Changes: step}).Fault(); out {
		return nil, errors.New(at.Words() + " would leave its range")
	}
	return step, nil
}

// Promotion returns the edit that makes a trial's contents the plan's own, and takes it from the trials: a difference would now be
// from what it has led to.
func Promotion(plan *model.Plan, number int) model.Edit {
	changes, _ := TrialChanges(plan, number)
	gone := model.Removing(model.TrialGroup(), model.Place{Outer: number})
	return model.Edit{Name: "trial " + plan.Trials[number].Name, Changes: append(changes, gone)}
}
