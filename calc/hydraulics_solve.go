package calc

import (
	"math"

	"borewalk/calc/nozzle"
	"borewalk/model"
	"borewalk/model/quantity"
)

// hydraulicsProposals looks for the highest flow that keeps all limits, and for nozzles that can be bought: for most power at
// the bit, most impact of its jets, and the standpipe pressure that the plan wants.
func hydraulicsProposals(plan *model.Plan, i int) []Proposal {
	e := runPages(plan, i, nil)
	c := e.circulating(i)
	if c.missing.open() {
		return nil
	}
	p := adviser{e: e, plan: plan, section: i, loop: c.loop, flow: c.flow}
	p.flows()
	list := []Proposal{p.highestFlow()}
	list = append(list, p.optimum("Nozzles and flow for most power at the bit", "for most power", "hydraulics.bit.power", nozzle.PowerShare),
		p.optimum("Nozzles and flow for most impact of the jets", "for most impact", "hydraulics.bit.impact", nozzle.ImpactShare))
	return append(list, p.wanted())
}

// adviser works proposals out for the hydraulics of a section.
type adviser struct {
	e           *evaluation
	plan        *model.Plan
	section     int
	loop        *loop
	flow        float64
	least, most float64 // of the flow, but for the standpipe's pressure
}

// flows finds between which flows everything but the standpipe's pressure keeps its limit.
func (p *adviser) flows() {
	c := p.e.circulating(p.section)
	p.most = math.Inf(1)
	for _, x := range p.e.flowLimits(p.section, c) {
		switch {
		case x.missing.open() || x.key == "pressure":
		case x.most:
			p.most = min(p.most, x.flow)
		default:
			p.least = max(p.least, x.flow)
		}
	}
}

// take looks what the plan comes to with entries of its section changed, and fills the proposal.
func (p *adviser) take(to *Proposal, gives string) {
	trial := p.plan.Clone()
	to.Ref.Set(trial, to.Entry)
	for _, more := range to.More {
		more.Ref.Set(trial, more.Entry)
	}
	result := runPages(trial, p.section, nil).result
	figure, _ := result.Sheet(p.section).Find(gives)
	to.OK, to.Gives, to.Kind, to.Value = figure.OK, figure.Name, figure.Kind, figure.Value
	p.e.count(p.section, to, result)
	if !figure.OK {
		to.Why = figure.Why
	}
}

// entry returns an entry of the section's table or row, by its key.
func (p *adviser) entry(key string) model.Ref {
	ref, _ := model.Find(p.plan, model.PathOf(p.section, key))
	return ref
}

// flowEntry returns a flow rounded down by the natural step of the entry's unit, or up where it would fall below the least flow
// that its limits ask for.
func (p *adviser) flowEntry(flow float64) model.Entry {
	ref := p.entry("flow")
	unit := search{plan: p.plan}.unit(ref)
	step := quantity.Step(ref.Field.Kind, unit)
	rounded := math.Floor(unit.FromSI(flow)/step+1e-9) * step
	if rounded < unit.FromSI(p.least)-1e-9 {
		rounded += step
	}
	return model.Entry{Quantity: quantity.Of(tidy(rounded), unit)}
}

// highestFlow looks for the most flow that keeps the limits of tools, rock and pumps, the standpipe's pressure among them.
func (p *adviser) highestFlow() Proposal {
	to := Proposal{Title: "Highest flow within ECD, tools and pumps", Ref: p.entry("flow"), Note: "pump pressure as the rules let it be used"}
	to.Gives = "hydraulics.standpipe"
	most, by := p.most, ""
	for _, x := range p.e.flowLimits(p.section, p.e.circulating(p.section)) {
		if x.missing.open() {
			to.Why = x.name + " is not known: " + x.missing.why
			return to
		}
		if x.most && !x.free && x.flow <= most {
			most, by = x.flow, x.name
		}
	}
	switch {
	case math.IsInf(most, 1):
		to.Why = "nothing that limits the flow is known: pumps, prognosis"
		return to
	case most < p.least || most <= 0:
		to.Why = "no flow keeps all limits: " + by + " allows less than a tool needs"
		return to
	}
	if by != "" {
		to.Note = by + " limits it; " + to.Note
	}
	to.Entry = p.flowEntry(most)
	p.take(&to, "hydraulics.standpipe")
	return to
}

// limit returns the standpipe pressure in Pa that may be used with the liners as fitted, and false where none is given.
func (p *adviser) limit() (float64, bool) {
	fitted := p.e.liners()[0]
	return p.e.usable(&fitted), !fitted.missing.open() && fitted.limit > 0
}

// number returns how many nozzles are looked for.
func (p *adviser) number() (n int, why string) {
	row := &p.plan.Sections[p.section].Nozzles
	switch {
	case p.loop.bit.set.Count() > 0:
		return p.loop.bit.set.Count(), ""
	case row.Sizes == "" && row.Number.IsSet():
		return int(math.Round(row.Number.SI)), ""
	}
	return 0, "say how many nozzles the bit has"
}

// withoutBit says what is missing for all that is lost outside the bit.
func (p *adviser) withoutBit() string {
	if missing := p.loop.noString; missing.open() && missing != p.loop.bit.missing {
		return missing.why
	}
	return ""
}

// optimum looks for the flow at which the parasitic loss has its share of the pressure, and for nozzles that take the rest.
func (p *adviser) optimum(title, by, gives string, share func(m float64) float64) Proposal {
	to := Proposal{Title: title, By: by, Ref: p.entry("nozzles.sizes"), Gives: gives}
	n, why := p.number()
	limit, given := p.limit()
	if why == "" {
		why = p.withoutBit()
	}
	if !given {
		why = "no pressure limit of the liners is given"
	}
	if why != "" {
		to.Why = why
		return to
	}
	l := p.loop
	available := limit - l.columns()
	// The loss is no pure power of the flow: the slope is taken anew where the last one led to.
	flow := p.flow
	var split nozzle.Split
	for range 4 {
		var ok bool
		m := l.slope(flow)
		if split, ok = nozzle.Optimum(share(m), available, flow, l.parasitic(flow), m, max(p.least, 1e-6), p.most); !ok {
			to.Why = "within the limits of the flow nothing is left for the bit"
			return to
		}
		flow = split.Flow
	}
	entry := p.flowEntry(flow)
	flow = entry.Quantity.SI
	to.More = []Setting{{p.entry("flow"), entry}}
	bound := "the pressure of the pumps is shared as is best"
	if split.Bound {
		bound = "the flow stands at the end of its range, the bit has the rest of the pressure"
	}
	p.buy(&to, n, flow, limit, bound)
	if to.Why == "" {
		p.take(&to, gives)
	}
	return to
}

// buy takes the nozzles nearest to the area with which the standpipe has a pressure at a flow, on the side of less pressure.
func (p *adviser) buy(to *Proposal, n int, flow, standpipe float64, note string) {
	l := p.loop
	left := standpipe - l.columns() - l.parasitic(flow)
	if left <= 0 {
		to.Why = "all else takes that pressure already: nothing is left for the bit"
		return
	}
	area := nozzle.Area(l.fluid.Density, flow, left, l.bit.discharge)
	below, above := nozzle.Neighbours(n, area)
	if above == nil {
		to.Why = "the nozzles would have to be larger than are made"
		return
	}
	to.Entry, to.Note = model.Entry{Text: above.String()}, note
	if below != nil && below.String() != above.String() {
		to.Note += "; " + below.String() + " would take more than that pressure"
	}
}

// wanted looks for the nozzles that give the standpipe pressure that the plan wants, at the planned flow.
func (p *adviser) wanted() Proposal {
	to := Proposal{Title: "Nozzles for the standpipe pressure wanted", By: "for the wanted standpipe", Ref: p.entry("nozzles.sizes"), Gives: "hydraulics.standpipe"}
	want := p.plan.Sections[p.section].Standpipe
	n, why := p.number()
	if why == "" {
		why = p.withoutBit()
	}
	if !want.IsSet() {
		why = "no standpipe pressure is wanted: enter one"
	}
	if why != "" {
		to.Why = why
		return to
	}
	if p.buy(&to, n, p.flow, want.SI, "at the planned flow"); to.Why == "" {
		p.take(&to, "hydraulics.standpipe")
	}
	return to
}
