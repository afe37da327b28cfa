package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// linerTest is what a rule asks of the pressure test of a liner and its lap.
type linerTest struct {
	rule    model.RuleID
	words   string
	md, tvd float64 // where the pressure is compared, m
	rock    float64 // EMW in kg/m³ that the rock there stands, or is expected to leak off at
	missing gap
}

// linerTestOf returns the rule that holds for the liner of section i: a drilling liner is held to the leak-off of the rock
// below its own shoe, a production liner to the fracture pressure at the shoe that it is lapped into.
func (e *evaluation) linerTestOf(i int) linerTest {
	if e.plan.Sections[i].Purpose == model.Production {
		t := linerTest{rule: model.RuleUSTestProductionLiner, words: "Production liner's test over fracture at the shoe it is lapped into"}
		t.md, _, _ = e.lastShoe(i)
		return e.onRock(t, i)
	}
	t := linerTest{rule: model.RuleUSTestLiner, words: "Liner's test over the leak-off expected below its shoe", md: e.strings[i].shoe}
	for j := i + 1; j < len(e.sections); j++ {
		if _, at, ok := e.lastShoe(j); ok && at == i {
			return e.onRock(t, j)
		}
	}
	return e.onRock(t, i)
}

// onRock fills in what the rock stands, as the prognosis and the shoe test of section i have it.
func (e *evaluation) onRock(t linerTest, i int) linerTest {
	if t.missing = e.prognosisGap(i); !t.missing.open() {
		t.tvd, t.rock = e.path.TVD(t.md), e.strength(i, t.md)
	}
	return t
}

// linerTestFigure adds the pressure at the pump that the rule on liner tests asks, where the plan's rules hold it, and
// judges the planned test.
func (e *evaluation) linerTestFigure(p *page, s *loadedString) {
	i := s.section
	if !s.casing.liner {
		return
	}
	t := e.linerTestOf(i)
	rule := model.Rules()[t.rule]
	if !rule.In(e.plan.Well.RuleSet) {
		return
	}
	over := func(pump float64) float64 { return pressureAt(e.testColumn(i, pump), t.tvd) - t.rock*gravity*t.tvd }
	p.group = "Test by the rule"
	// The pressure goes up by as much as that at the pump, everywhere.
	p.put("casing.test.liner", "Pump, liner and lap", quantity.Pressure, max(0, rule.Limit.SI-over(0)), t.missing, func(w *Working) {
		w.Formula = "p = EMW × g × TVD + over - test fluid × g × TVD, no less than none"
		w.in("EMW", "of the rock: fracture, or the shoe test where it is less", quantity.EMW, t.rock)
		w.in("TVD", "where it is compared", quantity.Length, t.tvd)
		w.in("over", rule.Name, quantity.Pressure, rule.Limit.SI)
		w.in("column", "test fluid alone", quantity.Pressure, pressureAt(e.testColumn(i, 0), t.tvd))
		w.Source = rule.Source
		w.Note = "Within what liner, lap and host string stand: see the factors."
	})
	if test := e.plan.Sections[i].Loads.TestPressure; test.IsSet() && !t.missing.open() {
		e.judge(t.rule, i, over(test.SI), t.words, "", t.md, model.PathOf(i, "loads.test_pressure"))
	}
}
