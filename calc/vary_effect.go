package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// Effect is what one natural step of an entry does to a figure.
type Effect struct {
	Ref    model.Ref
	Step   float64 // the step upwards, SI
	Change float64 // of the figure for it, SI
	Lost   bool    // the figure is blank then
}

// Handles returns the entries that hold a number which counts: those of the section first, then the well's, then the other
// sections'. For the well, section -1, they stand as in the file.
func Handles(plan *model.Plan, section int) []model.Ref {
	var own, well, others []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		list := &well
		if g == model.SectionGroup() || g.Parent == model.SectionGroup() {
			if list = &others; at.Outer == section {
				list = &own
			}
		}
		for _, f := range g.Fields {
			r := model.Ref{Group: g, Field: f, Place: at}
			if f.Type == model.QuantityField && r.Get(plan).IsSet() && r.Idle(plan) == "" {
				*list = append(*list, r)
			}
		}
		return true
	})
	return append(append(own, well...), others...)
}

// Effects returns those of the entries that move a figure of a sheet when they rise by a natural step of the unit shown. The
// plan is left as it was; nobody else may use it meanwhile.
func Effects(plan *model.Plan, sheet int, key string, refs []model.Ref, system quantity.System) (list []Effect) {
	now, ok := runPages(plan, sheet, nil).result.Sheet(sheet).Find(key)
	if !ok {
		return nil
	}
	for _, ref := range refs {
		step, to := nudged(plan, ref, system.Unit(ref.Field.Kind))
		if step == 0 {
			continue
		}
		var h model.History
		h.Do(plan, model.Edit{Changes: entering(plan, ref, to)})
		then, _ := runTopic(plan, sheet, now.Topic).Find(key)
		h.Undo(plan)
		effect := Effect{Ref: ref, Step: max(step, -step), Change: then.Value - now.Value, Lost: now.OK && !then.OK}
		if step < 0 {
			effect.Change = -effect.Change
		}
		if then.OK != now.OK || effect.Change != 0 {
			list = append(list, effect)
		}
	}
	return list
}

// nudged returns an entry's content a natural step up, or down where its range ends, and the step; zero when it can go nowhere.
func nudged(plan *model.Plan, ref model.Ref, unit quantity.Unit) (step float64, to model.Entry) {
	old := ref.Get(plan)
	for _, n := range [...]int{1, -1} {
		to = model.Entry{Quantity: quantity.Nudge(old.Quantity, ref.Field.Kind, unit, n)}
		if _, out := (model.Edit{Changes: []model.Change{model.Setting(plan, ref, to)}}).Fault(); !out && to != old {
			return to.Quantity.SI - old.Quantity.SI, to
		}
	}
	return 0, old
}

// Follower is a figure that moves with an entry.
type Follower struct {
	Sheet   int
	Figure  Figure
	Limited bool // a finding compares it with a limit
}

// Followers returns the figures that change when an entry rises by a natural step of a unit, sheet by sheet, the well's last. For
// a blank entry there are none.
func Followers(plan *model.Plan, ref model.Ref, unit quantity.Unit) (list []Follower) {
	trial := plan.Clone()
	step, to := nudged(trial, ref, unit)
	if step == 0 {
		return nil
	}
	before := Evaluate(trial)
	var h model.History
	h.Do(trial, model.Edit{Changes: entering(trial, ref, to)})
	after := Evaluate(trial)
	for i := range len(before.Sections) + 1 {
		sheet := i
		if i == len(before.Sections) {
			sheet = -1
		}
		for _, f := range before.Sheet(sheet).Figures {
			then, ok := after.Sheet(sheet).Find(f.Key)
			if ok && then.OK == f.OK && then.Value == f.Value {
				continue
			}
			list = append(list, Follower{Sheet: sheet, Figure: f, Limited: before.limits(sheet, &f)})
		}
	}
	return list
}

// limits reports whether a finding compares a figure with a limit.
func (r *Result) limits(sheet int, f *Figure) bool {
	for i := range r.Findings {
		if r.Findings[i].measures(sheet, f) {
			return true
		}
	}
	return false
}
