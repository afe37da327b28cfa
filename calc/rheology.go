package calc

import (
	"strconv"

	"borewalk/calc/friction"
	"borewalk/calc/rheology"
	"borewalk/model"
	"borewalk/model/quantity"
)

// flowLaw is how the drilling fluid of a section flows: its law, as a fluid without a density, and what is missing for it.
type flowLaw struct {
	fluid   friction.Fluid
	missing gap
	odd     gap // readings that cannot be
}

// readFlows works out how the fluids flow.
func (e *evaluation) readFlows() {
	e.flows = make([]flowLaw, len(e.plan.Sections))
	for i := range e.flows {
		e.flows[i] = e.readFlow(i)
		if odd := e.flows[i].odd; odd.open() {
			severity := Caution
			if e.plan.Sections[i].Rheology.Given == model.ByReadings {
				severity = Stop
			}
			e.note(i, severity, odd)
		}
	}
}

func (e *evaluation) readFlow(i int) (flow flowLaw) {
	s := &e.plan.Sections[i]
	r := &s.Rheology
	flow.odd = oddReading(i, r)
	var law rheology.Law
	switch r.Given {
	case model.ByReadings:
		if law, flow.missing = fitted(i, r, r.Law); !flow.missing.open() {
			flow.missing = flow.odd
		}
	case model.ByNK:
		flow.missing = first(lacks(r.N, i, "rheology.n", "flow behaviour index"), lacks(r.K, i, "rheology.k", "consistency"),
			lacks(r.Tau0, i, "rheology.tau0", "yield stress"))
		law = rheology.Law{Yield: r.Tau0.SI, Consistency: r.K.SI, Index: r.N.SI}
	default:
		flow.missing = first(lacks(s.PV, i, "pv", "plastic viscosity"), lacks(s.YP, i, "yp", "yield point"))
		law = rheology.Law{Yield: s.YP.SI, Consistency: s.PV.SI, Index: 1}
	}
	if flow.missing.open() {
		return flow
	}
	flow.fluid = friction.HerschelBulkley(0, law.Yield, law.Consistency, law.Index)
	if err := flow.fluid.Check(); err != nil {
		flow.missing = gap{model.PathOf(i, "rheology.given"), "the fluid's law: " + err.Error()}
	}
	return flow
}

// taken returns the readings that were taken.
func taken(r *model.Rheology) []rheology.Reading {
	var list []rheology.Reading
	for _, x := range r.Readings() {
		if x.Dial.IsSet() {
			if list == nil {
				list = make([]rheology.Reading, 0, 6)
			}
			list = append(list, rheology.Reading{Speed: x.Speed, Dial: x.Dial.SI})
		}
	}
	return list
}

// fitted returns the named law fitted to the readings of section i, and what is missing for it.
func fitted(i int, r *model.Rheology, name string) (law rheology.Law, missing gap) {
	fit := rheology.HerschelBulkley
	switch name {
	case model.LawBingham:
		fit = rheology.Bingham
	case model.LawPower:
		fit = rheology.PowerLaw
	}
	law, err := fit(taken(r))
	if err == nil {
		return law, gap{}
	}
	for _, x := range r.Readings() {
		if !x.Dial.IsSet() {
			return law, gap{model.PathOf(i, "rheology."+x.Key), err.Error()}
		}
	}
	return law, gap{model.PathOf(i, "rheology.r600"), err.Error()}
}

// oddReading returns the first reading of section i that is above that of a faster speed: no fluid does that.
func oddReading(i int, r *model.Rheology) gap {
	faster := model.Reading{}
	for _, x := range r.Readings() {
		if !x.Dial.IsSet() {
			continue
		}
		if faster.Speed > 0 && x.Dial.SI > faster.Dial.SI {
			return gap{model.PathOf(i, "rheology."+x.Key), "the reading at " + rpm(x.Speed) + " is above that at " + rpm(faster.Speed)}
		}
		faster = x
	}
	return gap{}
}

// rpm names a speed of the viscometer.
func rpm(speed float64) string { return strconv.FormatFloat(speed, 'f', -1, 64) + " rpm" }

// rheologyFigures adds how the fluid of section i flows, and what was read against the law that counts.
func (e *evaluation) rheologyFigures(i int, p *page) {
	p.group = "Rheology"
	flow := &e.flows[i]
	f, missing := flow.fluid, flow.missing
	line := func(w *Working) {
		w.Formula = "PV = (stress at 1022 1/s - stress at 511 1/s) / 511, YP = stress at 511 1/s - PV × 511"
		w.law(f)
		w.Source = "API RP 13B-1: the line through the stresses at 600 and 300 rpm"
	}
	why := func(w *Working) { e.lawWorking(i, w) }
	if f.IsBingham() {
		line = why
	}
	p.put("mud.rheology.pv", "PV", quantity.Viscosity, f.PlasticViscosity(), missing, line)
	p.also("mud.rheology.yp", "YP", quantity.YieldPoint, f.YieldPoint(), missing, line)
	n := p.put("mud.rheology.n", "Index n", quantity.Number, f.Index(), missing, why)
	if !missing.open() && !f.IsBingham() && e.rubbing(i) == (friction.BinghamSlot{}) {
		n.Note = "friction takes PV and YP"
	}
	p.also("mud.rheology.k", "K", quantity.Consistency, f.Consistency(), missing, why)
	p.also("mud.rheology.tau0", "yield stress", quantity.YieldPoint, f.Yield(), missing, why)
	e.readingFigures(i, p)
}

// lawWorking shows where the law of section i's fluid comes from.
func (e *evaluation) lawWorking(i int, w *Working) {
	s := &e.plan.Sections[i]
	f := e.flows[i].fluid
	switch s.Rheology.Given {
	case model.ByReadings:
		w.Formula = s.Rheology.Law + ": stress = tau0 + K × rate^n, with the least sum of squares of stress; stress = 0.511 Pa × dial, rate = 1.7023 1/s × rpm"
		for _, r := range taken(&s.Rheology) {
			w.in("R"+strconv.FormatFloat(r.Speed, 'f', -1, 64), "dial", quantity.Dial, r.Dial)
		}
		w.Source = "API RP 13B-1 and RP 13D (what speed and dial mean, from memory); least squares"
		w.Note = "A degree is 1.067 lbf/100ft2. Reported as R300 - PV, a yield point is 6 % less than that of the line through the stresses."
	case model.ByNK:
		w.Formula = "stress = tau0 + K × rate^n, as entered"
		w.Source = "as entered"
	default:
		w.Formula = "Bingham: n = 1, K = PV, yield stress = YP, as entered"
		w.in("PV", "plastic viscosity", quantity.Viscosity, s.PV.SI)
		w.in("YP", "yield point", quantity.YieldPoint, s.YP.SI)
		w.Source = "as entered"
		return
	}
	w.law(f)
}

// readingFigures adds what the trade makes of the readings of section i, and each of them against the law that counts.
func (e *evaluation) readingFigures(i int, p *page) {
	r := &e.plan.Sections[i].Rheology
	readings := taken(r)
	if len(readings) == 0 {
		return
	}
	if r.R600.IsSet() && r.R300.IsSet() {
		pv, yp := rheology.Field(r.R600.SI, r.R300.SI)
		why := func(w *Working) {
			w.Formula = "PV = R600 - R300 in cP, YP = R300 - PV in lbf/100ft2"
			w.in("R600", "dial", quantity.Dial, r.R600.SI)
			w.in("R300", "dial", quantity.Dial, r.R300.SI)
			w.Source = "API RP 13B-1; Bourgoyne et al., Applied Drilling Engineering, ch. 2"
			w.Note = "A degree is 1.067 lbf/100ft2, which this way of the trade leaves out of YP."
		}
		p.put("mud.rheology.field.pv", "PV from readings", quantity.Viscosity, pv, gap{}, why)
		p.also("mud.rheology.field.yp", "YP", quantity.YieldPoint, yp, gap{}, why)
	}
	if r.R6.IsSet() && r.R3.IsSet() {
		p.put("mud.rheology.low_shear", "Low-shear yield", quantity.YieldPoint, rheology.LowShear(r.R6.SI, r.R3.SI), gap{}, func(w *Working) {
			w.Formula = "yield = (2 × R3 - R6) × 0.511 Pa"
			w.in("R6", "dial", quantity.Dial, r.R6.SI)
			w.in("R3", "dial", quantity.Dial, r.R3.SI)
			w.Source = "API RP 13D, from memory"
		})
	}
	e.missFigures(i, p, readings)
}

// missFigures adds by how much the law that counts misses the readings of section i.
func (e *evaluation) missFigures(i int, p *page, readings []rheology.Reading) {
	r, flow := &e.plan.Sections[i].Rheology, &e.flows[i]
	law := rheology.Law{Yield: flow.fluid.Yield(), Consistency: flow.fluid.Consistency(), Index: flow.fluid.Index()}
	miss, greatest, at := law.Miss(readings)
	why := func(w *Working) {
		w.Formula = "dial by the law = (tau0 + K × (1.7023 1/s × rpm)^n) / 0.511 Pa, less the reading: root of the mean square, and the greatest"
		for _, x := range readings {
			w.in("R"+strconv.FormatFloat(x.Speed, 'f', -1, 64), "dial", quantity.Dial, x.Dial)
		}
		w.law(flow.fluid)
		w.Source = "API RP 13D (what speed and dial mean, from memory)"
	}
	p.put("mud.rheology.error", "Law misses by", quantity.Dial, miss, flow.missing, why)
	f := p.also("mud.rheology.error.most", "at most", quantity.Dial, greatest, flow.missing, why)
	if flow.missing.open() {
		return
	}
	f.Note = "at " + rpm(readings[at].Speed)
	if r.Given == model.ByReadings {
		e.judge(model.RuleReadingFit, i, greatest, "Law misses the reading at "+rpm(readings[at].Speed), "", e.sections[i].td, model.PathOf(i, "rheology.law"))
	}
	for _, x := range readings {
		key := "mud.rheology.r" + strconv.FormatFloat(x.Speed, 'f', -1, 64)
		p.put(key, "Read at "+rpm(x.Speed), quantity.Dial, x.Dial, gap{}, func(w *Working) {
			w.Formula = "dial, as read"
			w.Source = "as entered"
		})
		p.also(key+".law", "by the law", quantity.Dial, law.Dial(x.Speed), gap{}, func(w *Working) {
			w.Formula = "dial = (tau0 + K × (1.7023 1/s × rpm)^n) / 0.511 Pa"
			w.in("rpm", "speed", quantity.Number, x.Speed)
			w.law(flow.fluid)
			w.Source = "API RP 13D (what speed and dial mean, from memory)"
		})
	}
}
