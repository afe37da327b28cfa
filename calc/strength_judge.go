package calc

import (
	"strconv"

	"borewalk/calc/strength"
	"borewalk/model"
	"borewalk/model/quantity"
)

// judgeFactors compares the factors with the rules: of the string's own loads the lowest by each rule, and the lowest that
// each hole below lays on it. What a hole lays on a string stands on both sections, since the mud that is to be changed is
// the hole's.
func (e *evaluation) judgeFactors(f *factors) {
	for k := range f.cases {
		j := &f.cases[k]
		if j.at.loaded() && f.governs(k) {
			e.judgeFactor(f, j.rule, j.at.factor, j.words, j.at.part, j.at.md, j.hole, j.mend)
		}
	}
	if t := &f.tri; t.factor > 0 && !f.short.open() {
		mend := partPath(f.s.section, &f.s.casing.parts[t.part], "grade")
		e.judgeFactor(f, model.RuleTriaxial, t.factor, t.words, t.part, t.md, t.hole, mend)
	}
}

// governs reports whether no other case of the same rule and hole is nearer to failure than case k; of equals the first.
func (f *factors) governs(k int) bool {
	for n := range f.cases {
		a, b := &f.cases[n], &f.cases[k]
		if n != k && a.at.loaded() && a.rule == b.rule && a.hole == b.hole && (a.at.factor < b.at.factor || n < k && a.at.factor == b.at.factor) {
			return false
		}
	}
	return true
}

func (e *evaluation) judgeFactor(f *factors, rule model.RuleID, factor float64, words string, part int, md float64, hole int, mend model.Path) {
	i := f.s.section
	mode := [...]string{"Collapse", "Burst", "Tension", "Tension", "Triaxial"}[rule-model.RuleCollapse]
	where := ""
	if len(f.s.parts) > 1 {
		where = "casing part " + strconv.Itoa(f.s.casing.parts[part].row+1)
	}
	e.judge(rule, i, factor, mode+", "+words, where, md, mend)
	if hole != i {
		e.judge(rule, hole, factor, mode+" of section "+strconv.Itoa(i+1)+"'s string, "+words, where, md, mend)
	}
	if factor >= 1 {
		return
	}
	// Whatever factor is asked for, this is more than the pipe stands.
	e.judge(model.RuleWithinRating, i, factor, mode+", "+words, where, md, mend)
	if hole != i {
		e.judge(model.RuleWithinRating, hole, factor, mode+" of section "+strconv.Itoa(i+1)+"'s string, "+words, where, md, mend)
	}
}

// governingFigures adds the lowest factor of each mode and the case that it comes from.
func (e *evaluation) governingFigures(p *page, f *factors) {
	p.group = "Governing case"
	for _, mode := range [...]struct {
		key, name string
		rule      model.RuleID
	}{{"collapse", "Collapse", model.RuleCollapse}, {"burst", "Burst", model.RuleBurst}, {"tension", "Tension", model.RuleTension}} {
		var least *judged
		for k := range f.cases {
			if c := &f.cases[k]; c.rule == mode.rule && c.at.loaded() && (least == nil || c.at.factor < least.at.factor) {
				least = c
			}
		}
		if least == nil && !f.short.open() {
			continue
		}
		if least == nil {
			least = &judged{}
		}
		why := func(w *Working) {
			w.Formula = "least of the cases' factors"
			for k := range f.cases {
				if c := &f.cases[k]; c.rule == mode.rule && c.at.loaded() {
					w.in("factor", c.words, quantity.Number, c.at.factor)
				}
			}
			w.Source = "common practice in casing design"
		}
		p.put("casing.governing."+mode.key, mode.name, quantity.Number, least.at.factor, f.short, why).Note = least.words + e.notLooked(f.s.section, mode.rule)
		p.also("casing.governing."+mode.key+".at", "at TVD", quantity.Length, least.at.tvd, f.short, why)
	}
}

// testFigure adds what the rule on casing tests asks, where the plan's rules hold it: the pressure at the pump with which
// the difference at the weakest depth is 70 % of the least internal yield, what that much at the pump itself would leave,
// and judges the difference that the planned test makes. Liners have rules of their own.
func (e *evaluation) testFigure(p *page, s *loadedString) {
	i := s.section
	rule := model.Rules()[model.RuleUSTest]
	if !rule.In(e.plan.Well.RuleSet) || e.plan.Sections[i].Purpose == model.Conductor || s.casing.liner {
		return
	}
	share := rule.Limit // the law's, whatever departure the plan has
	weakest, part := 0.0, 0
	for k := range s.parts {
		burst, err := strength.InternalYield(s.parts[k].Pipe, strength.WallTolerance)
		burst *= min(1, s.parts[k].Connection.Burst)
		if err == nil && (weakest == 0 || burst < weakest) {
			weakest, part = burst, k
		}
	}
	asked := loadCase{top: s.casing.top, bottom: s.casing.shoe, mode: strength.InBurst, mend: model.PathOf(i, "loads.test_pressure")}
	asked.inside.stack = e.testColumn(i, share.SI*weakest)
	asked.outside, asked.missing = e.outsideBurst(i)
	least, missing := strain{}, asked.missing
	if !missing.open() {
		least, _, missing = e.worst(s, &asked)
	}
	p.group = "Test by the rule"
	// The difference goes up by as much as the pressure at the pump, everywhere.
	p.put("casing.test.weakest", "Pump for 70 %", quantity.Pressure, 2*share.SI*weakest-least.acts, missing, func(w *Working) {
		w.Formula = "p = share × least internal yield - what the columns add at the weakest depth"
		w.in("share", rule.Name, quantity.Ratio, share.SI)
		w.in("yield", "internal, new pipe or connection", quantity.Pressure, weakest)
		w.in("add", "inside less outside, without pump", quantity.Pressure, least.acts-share.SI*weakest)
		w.in("TVD", "weakest under test", quantity.Length, least.tvd)
		w.Source = rule.Source
		w.Note = "Within what the string stands: see the factor of the planned test."
	})
	p.put("casing.test.asked", "70 % at the pump", quantity.Pressure, share.SI*weakest, gap{}, func(w *Working) {
		w.Formula = "p = share × least internal yield, at the pump"
		w.in("share", rule.Name, quantity.Ratio, share.SI)
		w.in("yield", "internal, new pipe", quantity.Pressure, weakest)
		w.Source = rule.Source
	})
	p.also("casing.test.asked.factor", "factor", quantity.Number, least.factor, missing, func(w *Working) {
		w.Formula = "factor = rating / load, with that test"
		w.burst(s, &asked, &least)
	})
	p.also("casing.test.asked.at", "at TVD", quantity.Length, least.tvd, missing, func(w *Working) {
		w.Formula = "TVD at which rating / load is least, with that test"
		w.burst(s, &asked, &least)
	})
	planned, ok := e.pressureTest(i)
	if !ok || weakest == 0 || planned.missing.open() {
		return
	}
	planned.top, planned.bottom = s.casing.top, s.casing.shoe
	if least, _, missing := e.worst(s, &planned); !missing.open() {
		e.judge(model.RuleUSTest, i, least.acts/weakest, "Pressure test over least internal yield, at the weakest depth", "", s.casing.parts[part].bottom,
			model.PathOf(i, "loads.test_pressure"))
	}
}

// notLooked says which usual load of a production string is not among the cases, since its entry is blank.
func (e *evaluation) notLooked(i int, rule model.RuleID) string {
	s := &e.plan.Sections[i]
	switch {
	case s.Purpose != model.Production:
		return ""
	case rule == model.RuleBurst && !s.Loads.PackerFluid.IsSet():
		return "; no tubing leak is entered"
	case rule == model.RuleCollapse && !s.Loads.Emptied.IsSet():
		return "; no evacuation is entered"
	}
	return ""
}
