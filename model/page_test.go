package model_test

import (
	"testing"

	"borewalk/model"
	"borewalk/plans"
)

// TestEveryEntryThatCountsStandsOnOnePage: trials, which lie over the pages, and the stations of a path that is not given by them
// stand on none.
func TestEveryEntryThatCountsStandsOnOnePage(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		pages := map[model.Ref]int{}
		for _, topic := range model.Topics() {
			seen := map[model.Ref]bool{} // what the plan has once stands on a page of each section
			for i := range plan.Sections {
				for _, l := range model.Page(plan, topic, i) {
					if l.Kind == model.PageEntry && !seen[l.Ref] {
						seen[l.Ref] = true
						pages[l.Ref]++
					}
				}
			}
		}
		model.Walk(plan, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				ref := model.Ref{Group: g, Field: f, Place: at}
				want := 1
				if f.Topic == model.TopicTrial || ref.Idle(plan) != "" && ref.AsBuilt(plan) == "" || g.Path() == "trajectory.survey" && plan.Trajectory.Method != model.SurveyList {
					want = 0
				}
				if pages[ref] != want {
					t.Errorf("%s: %s stands on %d pages, want %d", name, ref.Path(), pages[ref], want)
				}
			}
			return true
		})
	}
}
