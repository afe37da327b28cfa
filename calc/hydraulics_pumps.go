package calc

import (
	"strconv"

	"borewalk/calc/pump"
	"borewalk/calc/root"
	"borewalk/model"
	"borewalk/model/quantity"
)

// liner is what all pumps together give and stand with one set of liners.
type liner struct {
	missing   gap
	key, name string
	size      float64 // zero where the pumps have several
	most      float64 // m3/s of all pumps at their highest rate
	perTurn   float64 // m3 of all pumps with one stroke of each
	limit     float64 // Pa; zero where it is not given
}

// fittedKey is the key of the liners as fitted; those on board have their numbers.
const fittedKey = "fitted"

// liners returns the liners as fitted, then those on board that are not, worked out once.
func (e *evaluation) liners() []liner {
	if e.fitted == nil {
		e.fitted = e.readLiners()
	}
	return e.fitted
}

func (e *evaluation) readLiners() []liner {
	if e.pumpGap.open() {
		return []liner{{missing: e.pumpGap, key: fittedKey, name: "Liners as fitted"}}
	}
	fitted := liner{key: fittedKey, name: "Liners as fitted", size: e.plan.Pumps[0].Liner.SI}
	for k := range e.plan.Pumps {
		row := &e.plan.Pumps[k]
		fitted.most += e.pumps[k].most
		fitted.perTurn += e.pumps[k].perStroke * row.Count.SI
		if row.Liner.SI != fitted.size {
			fitted.size = 0
		}
		if x := row.PressureLimit; x.IsSet() && (fitted.limit == 0 || x.SI < fitted.limit) {
			fitted.limit = x.SI
		}
	}
	list := append(make([]liner, 0, 1+len(e.plan.Liners)), fitted)
	for k := range e.plan.Liners {
		if row := &e.plan.Liners[k]; !row.Size.IsSet() || row.Size.SI != fitted.size {
			list = append(list, e.fit(k, row))
		}
	}
	return list
}

// fit returns what the pumps give with liner k of those on board.
func (e *evaluation) fit(k int, row *model.Liner) liner {
	n := strconv.Itoa(k + 1)
	l := liner{key: n, name: "Liners, kind " + n, size: row.Size.SI, limit: row.PressureLimit.SI}
	path := model.Path("rig.liner[" + n + "].size")
	if l.missing = needs(row.Size, path, "size of a liner"); l.missing.open() {
		return l
	}
	for i := range e.plan.Pumps {
		p := &e.plan.Pumps[i]
		out, err := pump.Triplex(row.Size.SI, p.Stroke.SI, p.Efficiency.SI)
		if p.Action == model.Duplex {
			out, err = pump.Duplex(row.Size.SI, p.Rod.SI, p.Stroke.SI, p.Efficiency.SI)
		}
		if err != nil {
			l.missing = gap{path, err.Error()}
			return l
		}
		l.perTurn += out * p.Count.SI
		l.most += out * p.Count.SI * p.MaxRate.SI
	}
	return l
}

// usable returns the standpipe pressure in Pa up to which a liner is used: its limit, or the share of it that the rule set in
// use asks for.
func (e *evaluation) usable(l *liner) float64 { return l.limit * e.limit(model.RulePumpLoad, 1) }

// pumpPressureFigures adds what each liner on board would give and stand at the planned flow, and judges those fitted.
func (e *evaluation) pumpPressureFigures(i int, p *page, c *circulation) {
	l := c.loop
	p.group = "Liners on board"
	missing := first(c.missing, l.noString)
	var standpipe float64
	if !missing.open() {
		standpipe = max(l.standpipe(c.flow), 0)
	}
	wanted := c.flow + l.booster
	list := e.liners()
	for k := range list {
		x := &list[k]
		key := "hydraulics.liner." + x.key
		if x.missing.open() {
			e.fault(x.missing)
		}
		p.put(key, x.name, quantity.Diameter, x.size, first(x.missing, several(x)), func(w *Working) {
			w.Formula = "liner as entered"
			w.Source = "as entered"
		})
		p.also(key+".flow", "most flow", quantity.Flow, x.most, x.missing, func(w *Working) {
			w.Formula = "flow = sum of output × highest stroke rate × pumps, all with this liner"
			w.in("V", "all pumps, one stroke of each", quantity.StrokeVolume, x.perTurn)
			w.Source = "common practice"
		})
		p.also(key+".rate", "strokes needed", quantity.StrokeRate, wanted/x.perTurn, first(x.missing, e.flowGap(i)), func(w *Working) {
			w.Formula = "rate = (flow + booster) / output of all pumps with one stroke of each"
			w.in("flow", "through the bit", quantity.Flow, c.flow)
			w.in("booster", "into the riser's foot", quantity.Flow, l.booster)
			w.in("V", "all pumps, one stroke of each", quantity.StrokeVolume, x.perTurn)
			w.Source = "common practice"
			w.Note = "All pumps on line, the booster's among them, at one rate."
		})
		if x.limit == 0 {
			continue
		}
		p.also(key+".limit", "limit", quantity.Pressure, x.limit, x.missing, func(w *Working) {
			w.Formula = "pressure limit as entered"
			w.Source = "as entered: relief valve setting for this liner"
		})
		p.also(key+".margin", "margin", quantity.Pressure, x.limit-standpipe, first(x.missing, missing), func(w *Working) {
			w.Formula = "margin = limit - standpipe"
			w.in("limit", "of this liner", quantity.Pressure, x.limit)
			w.in("standpipe", "at the planned flow", quantity.Pressure, standpipe)
			w.Source = "common practice"
		})
		flow, _ := e.mostThrough(l, x, first(x.missing, l.noString))
		p.also(key+".most", "most to bit", quantity.Flow, flow, first(x.missing, l.noString), func(w *Working) { e.mostWorking(w, l, x, flow) })
	}
	if fitted := &list[0]; fitted.limit > 0 && !missing.open() {
		path := model.PathOf(i, "flow")
		e.judge(model.RulePumpPressure, i, fitted.limit-standpipe, "Limit of the liners over the standpipe pressure", "", 0, path)
		e.judge(model.RulePumpLoad, i, standpipe/fitted.limit, "Standpipe pressure over the liners' limit", "", 0, path)
	}
}

// several says that the pumps have liners of several sizes.
func several(x *liner) gap {
	if x.size == 0 {
		return gap{"rig.pump", "the pumps have liners of several sizes"}
	}
	return gap{}
}

// mostThrough returns the highest flow through the bit that the pumps give with a liner, what they give and the pressure that
// they may both counted, and whether the pressure is what limits it.
func (e *evaluation) mostThrough(l *loop, x *liner, missing gap) (flow float64, byPressure bool) {
	if missing.open() {
		return 0, false
	}
	given := max(x.most-l.booster, 0)
	if x.limit == 0 {
		return given, false
	}
	usable := e.usable(x)
	find := func() (float64, bool) {
		return lastFlow(func(q float64) float64 { return l.standpipe(q) - usable }, 0, given)
	}
	if x.key != fittedKey {
		return find()
	}
	if l.pressed == nil { // asked for as a liner and as a limit of the flow
		flow, byPressure = find()
		l.pressed = &usedUp{flow, byPressure}
	}
	return l.pressed.flow, l.pressed.byPressure
}

// usedUp is the flow at which the liners as fitted are used up, and whether their pressure is what does so.
type usedUp struct {
	flow       float64
	byPressure bool
}

// mostWorking shows that the standpipe's pressure at the flow found is the one that may be used, or that the pumps end first.
func (e *evaluation) mostWorking(w *Working, l *loop, x *liner, flow float64) {
	w.Formula = "flow at which the standpipe takes what the liner is used up to, or what all pumps give less the booster where that is less"
	w.in("given", "all pumps at their highest rate", quantity.Flow, x.most)
	w.in("booster", "into the riser's foot", quantity.Flow, l.booster)
	w.in("used", "pressure up to which the liner is used", quantity.Pressure, e.usable(x))
	w.in("standpipe", "at the flow found", quantity.Pressure, max(l.standpipe(flow), 0))
	w.Source = by(l.rub) + "; looked for in steps"
	w.Note = stillPipe
}

// lastFlow returns the highest flow in m3/s between two that keeps what grows with the flow at or below zero, and true; the
// higher of the two, and false, where all of them keep it. Where not even the lower one does, that is it.
func lastFlow(over func(flow float64) float64, least, most float64) (flow float64, found bool) {
	const near = 1e-5 // of what is over at the least flow
	switch below := over(least); {
	case below > 0:
		return least, true
	case !(over(most) > 0):
		return most, false
	default:
		flow, _ = root.Crossing(over, least, most, near*-below)
		return flow, true
	}
}
