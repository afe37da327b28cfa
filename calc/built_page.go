package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// builtPage holds what a section came to be against what was planned, and names what was measured before something that it
// depends on was changed.
func (e *evaluation) builtPage(i int) {
	p := e.page(i, model.TopicBuilt)
	if e.plan.Sections[i].HasActuals() {
		e.builtDepths(i, p)
		e.builtCement(i, p)
		e.builtHousing(i, p)
		e.builtTest(i, p)
		e.builtDays(i, p)
		e.judgeBuilt(i)
	}
	e.staleFigures(i, p)
	e.measuredElsewhere(i, p)
}

// compared adds what was planned, what was built, and by how much that is more; nothing where it is not as built.
func (p *page) compared(key, name string, kind quantity.Kind, planned float64, unplanned gap, actual quantity.Value) {
	if !actual.IsSet() {
		return
	}
	p.put(key, name, kind, planned, unplanned, func(w *Working) {
		w.Formula, w.Source = "as the plan has it without anything as built", "the plan"
		w.in("planned", "without actuals", kind, planned)
	})
	p.also(key+".actual", "as built", kind, actual.SI, gap{}, func(w *Working) {
		w.Formula, w.Source = "as entered", "the plan"
		w.in("built", "as entered", kind, actual.SI)
	})
	p.also(key+".off", "difference", kind, actual.SI-planned, unplanned, func(w *Working) {
		w.Formula, w.Source = "difference = as built - planned", "arithmetic"
		w.in("built", "as entered", kind, actual.SI)
		w.in("planned", "without actuals", kind, planned)
	})
}

// builtDepths compares depths, mud and the hole's diameter.
func (e *evaluation) builtDepths(i int, p *page) {
	b, was := &e.plan.Sections[i].Built, e.planned()
	h, c, s := &was.sections[i], &was.strings[i], &was.plan.Sections[i]
	p.group = "Hole and string, planned"
	p.compared("built.td", "Hole TD", quantity.Length, h.td, h.missing, b.TD)
	if c.present {
		p.compared("built.shoe", "Shoe", quantity.Length, c.shoe, c.noShoe, b.Shoe)
	}
	if e.strings[i].liner || s.Hung == model.OnHangerDeep {
		p.compared("built.top", "String's top", quantity.Length, c.top, c.missing, b.Top)
	}
	p.compared("built.density", "Mud at TD", quantity.Density, s.Density.SI, lacks(s.Density, i, "density", "mud density"), b.Density)
	if len(s.Caliper) == 0 {
		p.compared("built.diameter", "Hole diameter", quantity.Diameter, was.meanDiameter(i), h.missing, b.Diameter)
	}
}

// meanDiameter returns the diameter that gives the volume of the full-size hole of section i.
func (e *evaluation) meanDiameter(i int) float64 {
	h := &e.sections[i]
	if h.missing.open() {
		return 0
	}
	volume := bore.Volume(bore.Intervals(e.openHole(i, h.start, h.opened), nil, h.start, h.opened))
	return math.Sqrt(volume / (h.opened - h.start) * 4 / math.Pi)
}

// builtHousing adds how far a housing stands off the vertical.
func (e *evaluation) builtHousing(i int, p *page) {
	b := &e.plan.Sections[i].Built
	if housed := e.plan.Sections[i].CarriesHousing(); !housed || !b.TiltOne.IsSet() && !b.TiltOther.IsSet() {
		return
	}
	one := model.PathOf(i, "built.tilt")
	missing := first(needs(b.TiltOne, one, "inclination of the housing along one axis"), needs(b.TiltOther, model.PathOf(i, "built.tilt_across"), "inclination of the housing across that axis"))
	tilt := math.Atan(math.Hypot(math.Tan(b.TiltOne.SI), math.Tan(b.TiltOther.SI)))
	most := e.limit(model.RuleHousingTilt, tilt)
	why := func(w *Working) {
		w.Formula = "tan² I = tan² a + tan² b"
		w.in("a", "along one axis", quantity.Angle, b.TiltOne.SI)
		w.in("b", "across it", quantity.Angle, b.TiltOther.SI)
		w.Source = "geometry, of two planes at right angles"
	}
	p.group = "Housing"
	p.put("built.tilt", "Off the vertical", quantity.Angle, tilt, missing, why)
	p.also("built.tilt.left", "left", quantity.Angle, most-tilt, missing, func(w *Working) {
		why(w)
		w.Formula = "left = limit - I"
		w.in("limit", "of the rule", quantity.Angle, most)
	})
	if !missing.open() {
		e.judge(model.RuleHousingTilt, i, tilt, "Housing off the vertical", "", 0, one)
	}
}

// builtTest compares the pressure to which the string was tested.
func (e *evaluation) builtTest(i int, p *page) {
	if !e.strings[i].present {
		return
	}
	planned := e.planned().plan.Sections[i].Loads.TestPressure
	p.group = "String's test, planned"
	p.compared("built.test", "Tested to", quantity.Pressure, planned.SI, lacks(planned, i, "loads.test_pressure", "pressure test of the string"), e.plan.Sections[i].Built.TestPressure)
}

// builtDay is one of the days of a section.
type builtDay struct{ key, name, what, date string }

// builtDaysOf returns the days of a section in the order in which they come.
func builtDaysOf(b *model.Built) [5]builtDay {
	return [5]builtDay{
		{"started", "Begun", "the section was begun", b.Started},
		{"reached", "TD reached", "TD was reached", b.Reached},
		{"landed", "String landed", "the string was landed", b.Landed},
		{"cemented", "Cemented", "the string was cemented", b.Cemented},
		{"tested", "String tested", "the string was tested", b.Tested},
	}
}

// builtDays counts the days of a section from its first, and notes those that do not come in their order.
func (e *evaluation) builtDays(i int, p *page) {
	days := builtDaysOf(&e.plan.Sections[i].Built)
	begun, counted := model.ParseDay(days[0].date)
	missing := gap{}
	if !counted {
		missing = gap{model.PathOf(i, "built.started"), "the day on which the section was begun is not known"}
	}
	p.group = "Days since it was begun"
	var last model.Day
	after := ""
	for _, d := range days {
		if d.date == "" {
			continue
		}
		path := model.PathOf(i, "built."+d.key)
		day, ok := model.ParseDay(d.date)
		if !ok {
			e.note(i, Caution, gap{path, "the day on which " + d.what + " is not a date: write it as 2026-11-29"})
			continue
		}
		if after != "" && day < last {
			e.note(i, Caution, gap{path, d.what + " before " + after + ": look at the dates"})
		}
		last, after = day, d.what
		if d.key != "started" {
			p.put("built.days."+d.key, d.name, quantity.Count, float64(day-begun), missing, func(w *Working) {
				w.Formula, w.Source = "days = date - date on which the section was begun", "calendar"
				w.Note = "Begun " + begun.String() + ", " + d.what + " " + day.String() + "."
			}).Note = d.date
		}
	}
}

// judgeBuilt compares what a section came to be with the plan and the rules.
func (e *evaluation) judgeBuilt(i int) {
	s, was := &e.plan.Sections[i], &e.planned().strings[i]
	b, mend := &s.Built, func(key string) model.Path { return model.PathOf(i, "built."+key) }
	if c := &e.strings[i]; c.present && b.Shoe.IsSet() && !was.noShoe.open() && !c.noShoe.open() {
		e.judge(model.RuleShoeOff, i, math.Abs(c.shoe-was.shoe), "Shoe as set off the planned one", "", c.shoe, mend("shoe"))
	}
	if !e.cemented(i) {
		return
	}
	yes := func(it bool) float64 {
		if it {
			return 1
		}
		return 0
	}
	if b.Bumped != "" && !e.byInnerString(i) {
		e.judge(model.RulePlugBumped, i, yes(b.Bumped == model.PlugBumped), "Plug bumped", "", 0, mend("bumped"))
	}
	job := e.cementOf(i)
	if toSeabed := !job.missing.open() && job.topOfCement() <= e.datum.Mudline+nearSeabed; toSeabed && b.Returns != "" {
		e.judge(model.RuleCementReturns, i, yes(b.Returns != model.ReturnsNone), "Returns seen on a string to be cemented to the seabed", "", job.topOfCement(), mend("returns"))
	}
}

// measuredElsewhere counts what of a section is measured on other pages and counts there.
func (e *evaluation) measuredElsewhere(i int, p *page) {
	s := &e.plan.Sections[i]
	p.group = "Measured on other pages"
	for _, m := range [...]struct {
		key, name, where string
		rows             int
	}{
		{"caliper", "Caliper, rows", "hole page", len(s.Caliper)},
		{"drag", "Drag readings", "string page", len(s.DragReadings)},
		{"joints", "Measured joints", "casing page", len(s.Joints)},
		{"shoe_test", "Shoe test, points", "control page", len(s.TestPoints)},
		{"slow_rates", "Slow rates", "control page", len(s.SlowRates)},
	} {
		if m.rows > 0 {
			p.put("built.elsewhere."+m.key, m.name, quantity.Count, float64(m.rows), gap{}, func(w *Working) {
				w.Formula, w.Source = "rows entered on the "+m.where, "count"
				w.in("rows", "on that page", quantity.Count, float64(m.rows))
			}).Note = m.where
		}
	}
}
