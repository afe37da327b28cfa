package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// dragProposals looks for the friction factor that gives the deepest reading of a section, gauge by gauge.
func dragProposals(plan *model.Plan, i int) (list []Proposal) {
	e := runPages(plan, i, nil)
	k, ok := e.deepestReading(i)
	if !ok {
		return nil
	}
	r := e.stringRead(i, k)
	if r.missing.open() {
		return nil
	}
	where, entry := r.where()
	for _, g := range gauges(&plan.Sections[i].DragReadings[k]) {
		if !g.read.IsSet() || g.key == "rotating" {
			continue
		}
		p := Proposal{Title: "Friction, " + where + ", that matches the deepest reading " + g.name, By: "by " + g.name, Kind: g.kind, Note: "the other factors stay",
			Why: "no friction factor from 0 to 1 gives this reading: look at weights, mud and the gauge"}
		p.Ref, _ = model.Find(plan, model.PathOf(i, entry))
		if mu, found := g.matches(&r); found {
			p.OK = true
			p.Entry = model.Entry{Quantity: quantity.Of(tidy(math.Round(mu/frictionStep)*frictionStep), quantity.Bare)}
			trial := plan.Clone()
			p.Ref.Set(trial, p.Entry)
			with := runPages(trial, i, nil)
			matched := with.stringRead(i, k)
			p.Gives, p.Value = "Expected "+g.name, g.of(&matched)
			e.count(i, &p, with.result)
		}
		list = append(list, p)
	}
	return list
}

// frictionStep is to what a friction factor that matches a reading is rounded: readings are no finer.
const frictionStep = 0.01

// deepestReading returns the reading of section i that was taken deepest in its hole, and false where there is none.
func (e *evaluation) deepestReading(i int) (deepest int, ok bool) {
	rows := e.plan.Sections[i].DragReadings
	for k := range rows {
		depth := rows[k].Depth
		if depth.IsSet() && depth.SI <= e.sections[i].td && (!ok || depth.SI > rows[deepest].Depth.SI) {
			deepest, ok = k, true
		}
	}
	return deepest, ok
}
