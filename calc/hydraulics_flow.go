package calc

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// flowLimit is something that asks for at least or at most a flow through the bit of a section.
type flowLimit struct {
	key, name string
	most      bool // it is the most, else the least
	flow      float64
	free      bool // the pumps do not come as far
	missing   gap
	note      string
	why       func(*Working)
}

// flowLimits returns what limits the flow of section i: page, bar, paper and proposals follow from this list. Both ends of one
// tool's range stand together.
func (e *evaluation) flowLimits(i int, c *circulation) []flowLimit {
	list := make([]flowLimit, 0, 8)
	list = e.cleanLimit(i, list)
	list = e.toolLimits(i, list)
	list = e.fractureLimit(i, c, list)
	return e.pumpLimits(c, list)
}

// toolLimits adds the flow ranges of the tools in the string.
func (e *evaluation) toolLimits(i int, list []flowLimit) []flowLimit {
	d := &e.drills[i]
	for k := len(d.parts) - 1; k >= 0; k-- {
		part := &d.parts[k]
		add := func(suffix string, most bool, v quantity.Value) {
			if v.IsSet() {
				list = append(list, flowLimit{key: "tool." + strconv.Itoa(part.number) + suffix, name: part.label(), most: most, flow: v.SI, why: func(w *Working) {
					w.Formula = "flow range as entered"
					w.Source = "as entered: maker's range of the tool"
				}})
			}
		}
		add(".least", false, part.row.FlowLeast)
		add(".most", true, part.row.FlowMost)
	}
	return list
}

// fractureLimit adds the flow at which circulating takes the margin below fracture and shoe test.
func (e *evaluation) fractureLimit(i int, c *circulation, list []flowLimit) []flowLimit {
	l := c.loop
	limit := flowLimit{key: "fracture", name: "ECD margin", most: true, missing: first(l.noAnnulus, l.noFracture, e.pumpGap)}
	wanted := e.ecdMarginWanted(i)
	var at weakPlace
	var least float64
	if !limit.missing.open() && len(l.places) == 0 {
		limit.missing = gap{"prognosis.row", "no prognosis is known for the open hole"}
	}
	if !limit.missing.open() {
		flow, found := lastFlow(func(q float64) float64 {
			least, _ := l.spare(q)
			return wanted - least
		}, 0, max(e.mostFlow()-l.booster, 0))
		limit.flow, limit.free = flow, !found
		least, at = l.spare(flow)
		limit.note = at.name
		if flow == 0 {
			limit.note = "none is left at rest"
		}
	}
	limit.why = func(w *Working) {
		w.Formula = "flow at which limit - ECD is the margin wanted, or what all pumps give less the booster where that is less"
		w.in("limit", "fracture or shoe test", quantity.EMW, at.limit)
		w.in("ECD", "there at the flow found", quantity.EMW, at.limit-least)
		w.in("wanted", "margin", quantity.EMW, wanted)
		w.in("TVD", "where it is least", quantity.Length, at.tvd)
		w.Source = by(l.rub) + "; looked for in steps"
		w.Note = stillPipe
	}
	return append(list, limit)
}

// pumpLimits adds what the pumps give and what pressure they may be used up to.
func (e *evaluation) pumpLimits(c *circulation, list []flowLimit) []flowLimit {
	l := c.loop
	given := flowLimit{key: "pumps", name: "All pumps", most: true, missing: e.pumpGap, flow: max(e.mostFlow()-l.booster, 0)}
	given.why = func(w *Working) {
		w.Formula = "flow = what all pumps give - booster"
		w.in("given", "all pumps at their highest rate", quantity.Flow, e.mostFlow())
		w.in("booster", "into the riser's foot", quantity.Flow, l.booster)
		w.Source = "common practice"
	}
	list = append(list, given)
	fitted := e.liners()[0]
	if fitted.limit == 0 {
		return list
	}
	pressed := flowLimit{key: "pressure", name: "Pump pressure", most: true, missing: first(fitted.missing, l.noString)}
	flow, found := e.mostThrough(l, &fitted, pressed.missing)
	pressed.flow, pressed.free = flow, !found && !pressed.missing.open()
	pressed.why = func(w *Working) { e.mostWorking(w, l, &fitted, flow) }
	return append(list, pressed)
}

// flowEnds adds the range of flows that keeps all limits, and says where there is none.
func flowEnds(p *page, list []flowLimit) {
	least, asks := flowEnd(p, list, "hydraulics.flow.least", "Least flow", false)
	most, allows := flowEnd(p, list, "hydraulics.flow.most", "Most flow", true)
	if asks != "" && allows != "" && least > most {
		p.e.note(p.section, Caution, gap{model.PathOf(p.section, "flow"), "no flow keeps all its limits: " + asks + " asks for more than " + allows + " allows"})
	}
}

// limitFigures adds the limits of the flow one by one.
func limitFigures(p *page, list []flowLimit) {
	p.group = "Limits of the flow"
	for k := range list {
		x := &list[k]
		key := "hydraulics.limit." + x.key
		var f *Figure
		if k > 0 && list[k-1].name == x.name {
			f = p.also(key, "at most", quantity.Flow, x.flow, x.missing, x.why) // the other end of a tool's range
		} else {
			f = p.put(key, x.name, quantity.Flow, x.flow, x.missing, x.why)
		}
		switch {
		case x.missing.open():
		case x.free:
			f.Note = "not reached by all pumps"
		case x.most:
			f.Note = note("at most", x.note)
		default:
			f.Note = note("at least", x.note)
		}
	}
}

// note joins two notes.
func note(a, b string) string {
	if b == "" {
		return a
	}
	return a + ", " + b
}

// flowEnd adds the least or the most flow that keeps all limits, and returns it with the name of the limit that decides, none
// where it is not known, which it is not where one of them is not.
func flowEnd(p *page, list []flowLimit, key, name string, most bool) (flow float64, by string) {
	counts := func(x *flowLimit) bool { return x.most == most && !x.free }
	at := -1
	var missing gap
	for k := range list {
		x := &list[k]
		if !counts(x) {
			continue
		}
		missing = first(missing, x.missing)
		if at < 0 || most && x.flow < list[at].flow || !most && x.flow > list[at].flow {
			at = k
		}
	}
	if at < 0 {
		return 0, ""
	}
	f := p.put(key, name, quantity.Flow, list[at].flow, missing, func(w *Working) {
		w.Formula = "the highest of the least flows"
		if most {
			w.Formula = "the lowest of the most flows"
		}
		for k := range list {
			if x := &list[k]; counts(x) {
				w.in("q", x.name, quantity.Flow, x.flow)
			}
		}
		w.Source = "the limits one by one"
	})
	if missing.open() {
		return 0, ""
	}
	f.Note = list[at].name
	return f.Value, f.Note
}

// judgeTools compares the planned flow with the flow range of each tool.
func (e *evaluation) judgeTools(i int, c *circulation) {
	if c.missing.open() {
		return
	}
	d := &e.drills[i]
	for k := range d.parts {
		part := &d.parts[k]
		inside, path := math.Inf(1), model.Path("")
		if v := part.row.FlowLeast; v.IsSet() {
			inside, path = c.flow-v.SI, stringEntry(i, part, "flow_least")
		}
		if v := part.row.FlowMost; v.IsSet() && v.SI-c.flow < inside {
			inside, path = v.SI-c.flow, stringEntry(i, part, "flow_most")
		}
		if path != "" {
			e.judge(model.RuleToolFlow, i, inside, "Flow inside the range of "+part.label(), "", 0, path)
		}
	}
}

// flowBar returns the flow of section i among what limits it.
func (e *evaluation) flowBar(i int) Bar {
	c := e.circulating(i)
	b := Bar{Key: "hydraulics.flow", Title: "Flow range", Topic: model.TopicHydraulics, Kind: quantity.Flow,
		Planned: c.flow, HasPlanned: !e.flowGap(i).open()}
	for _, x := range e.flowLimits(i, c) {
		switch {
		case x.missing.open():
			b.Blank = append(b.Blank, x.name+": "+x.missing.why)
		case !x.free:
			b.Limits = append(b.Limits, BarLimit{x.name, x.flow, x.most, x.note})
		}
	}
	slices.SortStableFunc(b.Limits, func(a, b BarLimit) int {
		if a.Most != b.Most {
			if b.Most {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.At, b.At)
	})
	return b
}
