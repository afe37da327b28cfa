package calc

import (
	"cmp"

	"borewalk/calc/column"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// stackTest is to what the BOP is tested for a section: the pressure that a shut ram bears from below.
type stackTest struct {
	anticipated, pore, from, gas float64 // highest at the wellhead, inside
	over                         float64 // of it over the sea
	rams, annular                float64
	missing, noRams, noAnnular   gap
}

// overAnticipated returns by how much the rams' test exceeds the anticipated pressure: 500 psi (30 CFR 250.737(b)).
func overAnticipated() float64 { return quantity.PSI.ToSI(500) }

// annularShare is the share of its rating that the annular is tested to (30 CFR 250.448(c) before 2016).
const annularShare = 0.7

// readStackTest works out the pressures of section i's BOP test.
func (e *evaluation) readStackTest(i int) stackTest {
	s, rig := &e.plan.Sections[i].StackTest, &e.plan.Rig
	var t stackTest
	t.anticipated, t.pore, t.from, t.gas, t.missing = e.anticipated(i)
	t.missing = first(t.missing, e.gaps.sea)
	t.over = t.anticipated - e.seaAt(e.datum.Wellhead)
	switch {
	case s.Rams.IsSet():
		t.rams = s.Rams.SI
	case s.Basis == model.TestToRating:
		t.rams, t.noRams = rig.BOPRating.SI, needs(rig.BOPRating, "rig.bop_rating", "rating of the rams")
	default:
		t.rams, t.noRams = max(t.over, 0)+overAnticipated(), t.missing
	}
	if s.Annular.IsSet() {
		t.annular = s.Annular.SI
		return t
	}
	t.noAnnular = needs(rig.AnnularRating, "rig.annular_rating", "rating of the annular")
	t.annular = annularShare * rig.AnnularRating.SI
	if law := model.Rules()[model.RuleUSStackAnnular]; !law.In(e.plan.Well.RuleSet) {
		t.annular, t.noAnnular = min(t.annular, t.rams), first(t.noAnnular, t.noRams)
	}
	return t
}

// stackTestFigures adds the pressures of the BOP test of section i, at the wellhead and at the pump, and the days on which tests
// fall due.
func (e *evaluation) stackTestFigures(i int, p *page) {
	s := &e.plan.Sections[i]
	t := e.readStackTest(i)
	p.group = "Wellhead pressure anticipated"
	anticipated := func(w *Working) {
		w.Formula = "p = pore pressure - gas × g × (TVD - wellhead)"
		w.in("pore", "pressure of the gas's source", quantity.Pressure, t.pore)
		w.in("gas", "density", quantity.Density, t.gas)
		w.in("TVD", "of the source", quantity.Length, t.from)
		w.in("wellhead", "depth from RKB", quantity.Length, e.datum.Wellhead)
		w.Source = "common practice: the well full of gas from TD, or from where it presses highest"
	}
	p.put("control.anticipated", "Wellhead, most", quantity.Pressure, t.anticipated, t.missing, anticipated)
	p.also("control.anticipated.over", "over the sea", quantity.Pressure, t.over, t.missing, func(w *Working) {
		anticipated(w)
		w.Formula = "over = pore pressure - gas × g × (TVD - wellhead) - sea at the wellhead"
		w.in("sea", "at the wellhead", quantity.Pressure, e.seaAt(e.datum.Wellhead))
	})
	p.group = "BOP test"
	fluid := usual(s.StackTest.Fluid, s.Density.SI)
	e.testLine(i, p, "control.stack.rams", "Rams, high", t.rams, fluid, t.noRams, ramsWorking(&t, s))
	e.testLine(i, p, "control.stack.annular", "Annular, high", t.annular, fluid, t.noAnnular, func(w *Working) {
		w.Formula, w.Source = "as entered", "the plan"
		if !s.StackTest.Annular.IsSet() {
			w.Formula = "test = 70 % of its rating, and no more than the rams' where no law asks for it"
			w.Source = "30 CFR 250.448(c) before 2016; API Standard 53, from memory"
			w.in("rams", "tested to", quantity.Pressure, t.rams)
			w.in("rating", "of the annular", quantity.Pressure, e.plan.Rig.AnnularRating.SI)
		}
	})
	low := usual(s.StackTest.Low, quantity.PSI.ToSI(250))
	e.testLine(i, p, "control.stack.low", "Low test first", low, fluid, gap{}, func(w *Working) {
		w.Formula, w.Source = "as entered, else 250 psi", "30 CFR 250.737(b), from memory"
		w.in("low", "test", quantity.Pressure, low)
	})
	e.judgeStackTest(i, &t, low)
	e.dueFigures(i, p)
}

// ramsWorking shows where the pressure of the rams' test comes from.
func ramsWorking(t *stackTest, s *model.Section) func(*Working) {
	return func(w *Working) {
		switch {
		case s.StackTest.Rams.IsSet():
			w.Formula, w.Source = "as entered", "the plan"
			w.in("test", "of the rams", quantity.Pressure, t.rams)
		case s.StackTest.Basis == model.TestToRating:
			w.Formula, w.Source = "test = rating", "30 CFR 250.737(b)"
			w.in("rating", "of the rams", quantity.Pressure, t.rams)
		default:
			w.Formula, w.Source = "test = anticipated over the sea + 500 psi", "30 CFR 250.737(b), where approved"
			w.in("over", "anticipated, over the sea", quantity.Pressure, t.over)
			w.in("add", "500 psi", quantity.Pressure, overAnticipated())
		}
	}
}

// testLine adds a test pressure, which a shut ram bears from below over the mud in the riser above it, what the pump at the rig shows
// for it, and what body and connector bear over the sea. With one fluid in line and riser pump and ram show the same.
func (e *evaluation) testLine(i int, p *page, key, name string, test, fluid float64, missing gap, why func(*Working)) {
	p.put(key, name, quantity.Pressure, test, missing, why)
	riser, sea := column.PressureOf(e.plan.Sections[i].Density.SI, e.datum.Wellhead), e.seaAt(e.datum.Wellhead)
	pumpGap := first(missing, e.gaps.wellhead, e.gaps.sea)
	var pump float64
	if !pumpGap.open() {
		var err error
		if pump, err = (killsheet.PressureTest{Fluid: fluid}).Pump(test, e.datum.Wellhead, riser); err != nil {
			pumpGap = gap{model.PathOf(i, "bop_test.fluid"), err.Error()}
		}
	}
	p.also(key+".pump", "at the pump", quantity.Pressure, pump, pumpGap, func(w *Working) {
		w.Formula = "pump = test - (fluid - mud) × g × depth of the wellhead"
		w.in("test", "over the ram", quantity.Pressure, test)
		w.in("fluid", "in the line", quantity.Density, fluid)
		w.in("mud", "in the riser, above the ram", quantity.Density, e.plan.Sections[i].Density.SI)
		w.in("depth", "of the wellhead from RKB", quantity.Length, e.datum.Wellhead)
		w.Source = "hydrostatics from the pump, taken to stand at the rotary, to the stack"
		w.Note = "Weakest item, wear bushing, test plug and what is open below it decide. Keep people clear; ramp up; the maker's and the rig's procedures rule."
	})
	body := test + riser - sea
	p.also(key+".body", "body on sea", quantity.Pressure, body, pumpGap, func(w *Working) {
		w.Formula = "body = test + mud × g × depth of the wellhead - sea at the wellhead"
		w.in("test", "over the ram", quantity.Pressure, test)
		w.in("mud", "in the riser", quantity.Density, e.plan.Sections[i].Density.SI)
		w.in("depth", "of the wellhead from RKB", quantity.Length, e.datum.Wellhead)
		w.in("sea", "outside the stack", quantity.Pressure, sea)
		w.Source = "hydrostatics"
		w.Note = "What body, connector and wellhead bear: held against their ratings by the makers' rules."
	})
	if rating := e.plan.Rig.BOPRating; rating.IsSet() && !pumpGap.open() {
		e.judge(model.RuleStackBody, i, rating.SI-body, name+": rating of the stack over what its body bears", "", 0, "rig.bop_rating")
	}
}

// judgeStackTest compares the BOP test of section i with ratings and rules.
func (e *evaluation) judgeStackTest(i int, t *stackTest, low float64) {
	s, rig := &e.plan.Sections[i], &e.plan.Rig
	mend := func(key string) model.Path { return model.PathOf(i, "bop_test."+key) }
	if !t.missing.open() {
		if rig.BOPRating.IsSet() {
			e.judge(model.RuleStackRating, i, rig.BOPRating.SI-t.over, "Rating of the rams over the highest pressure at the wellhead", "", 0, "rig.bop_rating")
		}
		if !t.noRams.open() {
			e.judge(model.RuleUSStackHigh, i, t.rams-t.over, "Test of the rams over the pressure anticipated", "", 0, mend("rams"))
		}
	}
	if rig.BOPRating.IsSet() && !t.noRams.open() {
		e.judge(model.RuleStackTestRating, i, rig.BOPRating.SI-t.rams, "Rating of the rams over their test", "", 0, mend("rams"))
	}
	if rig.AnnularRating.IsSet() && !t.noAnnular.open() {
		e.judge(model.RuleStackTestRating, i, rig.AnnularRating.SI-t.annular, "Rating of the annular over its test", "", 0, mend("annular"))
		e.judge(model.RuleUSStackAnnular, i, t.annular/rig.AnnularRating.SI, "Annular's test of its rating", "", 0, mend("annular"))
	}
	for _, id := range [...]model.RuleID{model.RuleUSStackLowLeast, model.RuleUSStackLowMost, model.RuleNorwayStackLowLeast, model.RuleNorwayStackLowMost} {
		e.judge(id, i, low, "Low BOP test", "", 0, mend("low"))
	}
	hold := usual(s.StackTest.Hold, 300)
	e.judge(model.RuleUSStackHold, i, hold, "Each BOP test held", "", 0, mend("hold"))
	e.judge(model.RuleNorwayStackHold, i, hold, "Each BOP test held", "", 0, mend("hold"))
}

// due is a test that comes round: when it was last, after how many days it falls due, and on which day the plan looks at it.
type due struct {
	key, name, what string
	last            string // as entered
	every           float64
	rules           []model.RuleID
	day, on         model.Day // of the last test, and looked at
	dated, looked   bool      // they are days
}

// dueTests lists the tests of the stack of section i that were run.
func (e *evaluation) dueTests(i int) (list []due) {
	s := &e.plan.Sections[i].StackTest
	on, looked := model.ParseDay(cmp.Or(s.Until, e.plan.Well.Date))
	for _, d := range [...]due{
		{key: "tested", name: "BOP test due", what: "BOP's pressure test", last: s.Tested, every: 14, rules: []model.RuleID{model.RuleUSStackDays, model.RuleNorwayStackDays, model.RuleStackDays}},
		{key: "shear_tested", name: "Shear test due", what: "shear rams' test", last: s.ShearTested, every: 30, rules: []model.RuleID{model.RuleUSShearDays, model.RuleShearDays}},
		{key: "functioned", name: "Function test due", what: "function test", last: s.Functioned, every: 7, rules: []model.RuleID{model.RuleUSFunctionDays, model.RuleFunctionDays}},
	} {
		if d.last == "" {
			continue
		}
		for _, id := range d.rules {
			d.every = e.limit(id, d.every)
		}
		d.day, d.dated = model.ParseDay(d.last)
		d.on, d.looked = on, looked
		list = append(list, d)
	}
	return list
}

// dueFigures adds the days on which tests of the stack fall due, counted from the last, and judges the day that the plan looks at.
func (e *evaluation) dueFigures(i int, p *page) {
	if until := e.plan.Sections[i].StackTest.Until; until != "" {
		if _, looked := model.ParseDay(until); !looked {
			e.note(i, Caution, gap{model.PathOf(i, "bop_test.until"), "the day is not a date: write it as 2026-11-29"})
		}
	}
	for _, d := range e.dueTests(i) {
		path := model.PathOf(i, "bop_test."+d.key)
		if !d.dated {
			e.note(i, Caution, gap{path, "the day of the last " + d.what + " is not a date: write it as 2026-11-29"})
			continue
		}
		falls := d.day + model.Day(d.every)
		missing := gap{}
		if !d.looked {
			missing = gap{model.PathOf(i, "bop_test.until"), "falls due " + falls.String() + "; days left need the day that is looked at"}
		}
		p.group = "Tests due"
		f := p.put("control.due."+d.key, d.name, quantity.Count, float64(falls-d.on), missing, func(w *Working) {
			w.Formula = "days left = last + interval - day looked at"
			w.in("interval", "days", quantity.Count, d.every)
			w.Source = "30 CFR 250.737(a), 250.449(h); NORSOK D-010; by the plan's rules and limits"
			w.Note = "Last " + d.last + ", due " + falls.String() + "."
		})
		if f.OK {
			f.Note = "d left, due " + falls.String()
			for _, id := range d.rules {
				e.judge(id, i, float64(d.on-d.day), "Days since the "+d.what, "", 0, path)
			}
		}
	}
}
