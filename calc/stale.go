package calc

import (
	"math"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// outdated is something that was measured before what it depends on was changed: what that was then and is now, and why it is
// to be looked at. A finding of another page may say so already.
type outdated struct {
	key, name string
	kind      quantity.Kind
	then, now float64
	unknown   bool // what it was then is not known
	why       gap
	said      bool // by a finding of the page that uses it
}

// StaleGroup is the heading of what was measured before something that it depends on was changed.
const StaleGroup = "Stale, off by"

// staleFigures names what was measured in a section before what it depends on was changed.
func (e *evaluation) staleFigures(i int, p *page) {
	p.group = StaleGroup
	list := e.outdated(i)
	e.noteStale(i, list)
	for _, o := range list {
		missing := gap{}
		if o.unknown {
			missing = o.why
		}
		why := func(w *Working) {
			w.Formula, w.Source = "off = now - then", "arithmetic"
			w.in("then", "when it was measured", o.kind, o.then)
			w.in("now", "as the plan stands", o.kind, o.now)
			w.Note = o.why.why + "."
		}
		p.put("built.stale."+o.key, o.name, o.kind, o.now-o.then, missing, why)
		p.also("built.stale."+o.key+".then", "then", o.kind, o.then, missing, why)
		p.also("built.stale."+o.key+".now", "now", o.kind, o.now, gap{}, why)
	}
}

// noteStale says of a section what is stale, and of rows of a list that are so for one reason how many they are, at the first of them.
func (e *evaluation) noteStale(i int, list []outdated) {
	rows, other := map[string]int{}, map[string]string{}
	for _, o := range list {
		if o.said {
			other[o.why.why] = "other "
		} else {
			rows[o.why.why]++
		}
	}
	for _, o := range list {
		n := rows[o.why.why]
		if o.said || n == 0 {
			continue
		}
		delete(rows, o.why.why)
		switch said := other[o.why.why]; {
		case n > 1:
			o.why.why += " (" + strconv.Itoa(n) + " " + said + "rows)"
		case said != "":
			o.why.why += " (another row)"
		}
		e.note(i, Caution, o.why)
	}
}

// outdated lists what of a section was measured before something that it depends on was changed, and says why.
func (e *evaluation) outdated(i int) (list []outdated) {
	list = e.outdatedTest(i, list)
	list = e.outdatedRates(i, list)
	list = e.outdatedReadings(i, list)
	list = e.outdatedCement(i, list)
	return e.outdatedStack(i, list)
}

// outdatedTest looks at the shoe test as run.
func (e *evaluation) outdatedTest(i int, list []outdated) []outdated {
	t, s := &e.tests[i], &e.plan.Sections[i]
	if !t.run || !t.stale.open() {
		return list
	}
	o := outdated{key: "shoe_test", why: t.stale, said: true}
	switch t.stale.path {
	case model.PathOf(i, "shoe_test.shoe"):
		o.name, o.kind, o.then, o.now = "Shoe test, shoe", quantity.Length, s.ShoeTest.Shoe.SI, t.shoe
	case model.PathOf(i, "shoe_test.date"):
		_, above, _ := e.lastShoe(i)
		tested, _ := model.ParseDay(s.ShoeTest.Date)
		cemented, _ := model.ParseDay(e.plan.Sections[above].Built.Cemented)
		o.name, o.kind, o.now = "Shoe test, days", quantity.Count, float64(cemented-tested)
	default:
		o.name, o.kind, o.now, o.unknown = "Shoe test, mud", quantity.Density, s.Density.SI, true
	}
	return append(list, o)
}

// outdatedRates looks at the slow circulating pressures: each holds for its mud and near its depth.
func (e *evaluation) outdatedRates(i int, list []outdated) []outdated {
	s := &e.plan.Sections[i]
	if !e.sections[i].rig || len(s.SlowRates) == 0 || e.sections[i].missing.open() {
		return list
	}
	bit, used := usual(s.Kill.Bit, e.sections[i].td), 0
	if _, row, ok := e.slowRate(i, model.ByRiser); ok {
		used = row // the control page looks at it
	}
	for k := range s.SlowRates {
		row, n := &s.SlowRates[k], strconv.Itoa(k+1)
		path := func(key string) model.Path { return model.PathOf(i, "slow_rate["+n+"]."+key) }
		list = e.changed(list, outdated{key: "slow_rate." + n + ".mud", name: "Slow rate " + n + ", mud", kind: quantity.Density, said: used == k+1,
			why: gap{path("mud"), "the slow rate was recorded in another mud: record it anew"}}, row.Mud, s.Density.SI, model.RuleSlowRateMud)
		list = e.changed(list, outdated{key: "slow_rate." + n + ".depth", name: "Slow rate " + n + ", bit", kind: quantity.Length, said: used == k+1,
			why: gap{path("depth"), "the slow rate was recorded with the bit at another depth: record it anew"}}, row.Depth, bit, model.RuleSlowRateDepth)
	}
	return list
}

// outdatedReadings looks at the drag readings, which the mud floats.
func (e *evaluation) outdatedReadings(i int, list []outdated) []outdated {
	s := &e.plan.Sections[i]
	for k := range s.DragReadings {
		row, n := &s.DragReadings[k], strconv.Itoa(k+1)
		if !row.Depth.IsSet() {
			continue
		}
		list = e.changed(list, outdated{key: "drag." + n + ".mud", name: "Drag read. " + n + ", mud", kind: quantity.Density,
			why: gap{readingPath(i, k, "mud"), "the drag reading was taken in another mud: compare it with the factors, not with the loads of now"}},
			row.Mud, e.density(i, row.Depth.SI), model.RuleReadingMud)
	}
	return list
}

// changed adds what is further from what it was than a rule allows; what it was then may be blank.
func (e *evaluation) changed(list []outdated, o outdated, then quantity.Value, now float64, rule model.RuleID) []outdated {
	limit, _ := e.plan.Limit(model.Rules()[rule])
	if o.then, o.now = then.SI, now; !then.IsSet() || now == 0 || math.Abs(o.now-o.then) <= limit.SI+slack(o.kind) {
		return list
	}
	return append(list, o)
}

// outdatedCement looks at a top of cement that was estimated, by volume or by pressure, before the shoe that it stands on was
// as built.
func (e *evaluation) outdatedCement(i int, list []outdated) []outdated {
	s := &e.plan.Sections[i]
	estimated := len(s.BuiltSlurries) > 0 || s.Built.CementTop.IsSet() && s.Built.CementTopBy == model.TopByPressure
	if !e.cemented(i) || !estimated || s.Built.Shoe.IsSet() || e.strings[i].noShoe.open() {
		return list
	}
	return append(list, outdated{key: "cement_top", name: "Top of cement, shoe", kind: quantity.Length, now: e.strings[i].shoe, unknown: true,
		why: gap{model.PathOf(i, "built.shoe"), "the top of cement is estimated from the shoe as planned: enter the shoe as set"}})
}

// outdatedStack looks at the tests of the stack that have fallen due.
func (e *evaluation) outdatedStack(i int, list []outdated) []outdated {
	if !e.sections[i].rig {
		return list
	}
	for _, d := range e.dueTests(i) {
		if since := float64(d.on - d.day); d.dated && d.looked && since > d.every {
			list = append(list, outdated{key: "stack." + d.key, name: d.name + ", days", kind: quantity.Count, then: d.every, now: since, said: true,
				why: gap{model.PathOf(i, "bop_test."+d.key), "the " + d.what + " has fallen due"}})
		}
	}
	return list
}
