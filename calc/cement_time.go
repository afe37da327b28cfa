package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// jobTime is how long the parts of a cement job take.
type jobTime struct {
	list                        []stage
	mixing, stopped, displacing float64
	missing                     gap
}

func (t *jobTime) whole() float64 { return t.mixing + t.stopped + t.displacing }

// jobTimeOf adds up the stages of a job.
func (e *evaluation) jobTimeOf(i int, job *cementJob) jobTime {
	t := jobTime{missing: first(job.missing, e.spacerGap(i), e.rateGap(i))}
	if t.missing.open() {
		return t
	}
	t.list = job.stages
	for _, s := range t.list {
		switch {
		case s.fluid < 0:
			t.stopped += s.time()
		case s.fluid == displacerFluid:
			t.displacing += s.time()
		default:
			t.mixing += s.time()
		}
	}
	return t
}

// cementTimes adds how long a cement job takes, what of the thickening time is left, and the wait on cement.
func (e *evaluation) cementTimes(i int, p *page, job *cementJob) {
	p.group = "Time"
	t := e.jobTimeOf(i, job)
	list, missing := t.list, t.missing
	mixing, stopped, displacing, whole := t.mixing, t.stopped, t.displacing, t.whole()
	p.put("cement.time.mixing", "Mixing", quantity.Hours, mixing, missing, func(w *Working) {
		w.Formula = "t = (spacers + slurries) / mixing rate"
		w.pumping(list, func(s stage) bool { return s.fluid >= firstSpacer })
	})
	p.put("cement.time.displacing", "Displacing", quantity.Hours, displacing, missing, func(w *Working) {
		w.Formula = "t = sum of volume / rate behind the cement"
		w.pumping(list, func(s stage) bool { return s.fluid == displacerFluid })
	})
	p.put("cement.time", "Job", quantity.Hours, whole, missing, func(w *Working) {
		w.Formula = "t = mixing + plugs and lines + displacing"
		w.in("mixing", "spacers and slurries", quantity.Hours, mixing)
		w.in("stop", "plugs and lines", quantity.Hours, stopped)
		w.in("displacing", "behind the cement", quantity.Hours, displacing)
		w.Source = "common practice"
	})
	for k := range job.slurries {
		e.thickeningFigure(i, p, job, list, k, missing)
	}
	e.waitFigure(i, p, job)
	if c, unit := &e.plan.Sections[i].Cement, e.plan.Rig.UnitRate; unit.IsSet() && c.MixRate.IsSet() {
		e.judge(model.RuleUnitRate, i, unit.SI-c.MixRate.SI, "Rate of the cement unit over the mixing rate", "", 0, model.PathOf(i, "pumping.mix_rate"))
	}
}

// pumping puts the stages that count into a working.
func (w *Working) pumping(list []stage, counts func(stage) bool) {
	for _, s := range list {
		if counts(s) {
			w.in("V", s.name, quantity.Volume, s.volume)
			w.in("rate", s.name, quantity.CementRate, s.rate)
		}
	}
	w.Source = "common practice"
}

// spacerGap says which volume of a spacer is missing.
func (e *evaluation) spacerGap(i int) (missing gap) {
	for k := range e.plan.Sections[i].Spacers {
		missing = first(missing, needs(e.plan.Sections[i].Spacers[k].Volume, spacerPath(i, k, "volume"), "volume of a spacer"))
	}
	return missing
}

// afloat returns how long slurry k has been mixed when the job ends, from the first of it.
func afloat(list []stage, number int) (seconds float64) {
	started := false
	for _, s := range list {
		started = started || s.fluid == number
		if started {
			seconds += s.time()
		}
	}
	return seconds
}

// thickeningFigure adds how long a slurry is pumped and what is left until it thickens, and judges it.
func (e *evaluation) thickeningFigure(i int, p *page, job *cementJob, list []stage, k int, missing gap) {
	q := &job.slurries[k]
	var age float64
	if !missing.open() {
		age = afloat(list, firstSpacer+len(e.plan.Sections[i].Spacers)+k)
	}
	key := slurryKey(k)
	p.put(key+".age", slurryName(q.row, k)+", age", quantity.Hours, age, missing, func(w *Working) {
		w.Formula = "t = from the first of it mixed to the end of displacement, stops counted"
		w.in("t", "at the end", quantity.Hours, age)
		w.Source = "common practice"
	})
	thickening := q.row.Thickening
	none := first(missing, needs(thickening, slurryPath(i, k, "thickening"), "thickening time"))
	p.also(key+".left", "left", quantity.Hours, thickening.SI-age, none, func(w *Working) {
		w.Formula = "left = thickening time - age at the end"
		w.in("thickening", "of the laboratory", quantity.Hours, thickening.SI)
		w.in("age", "at the end of the job", quantity.Hours, age)
		w.Source = "common practice"
		w.Note = "Trouble on the job takes from this. The laboratory's test on rig samples counts."
	})
	if !none.open() && !math.IsNaN(age) {
		e.judge(model.RuleThickening, i, thickening.SI-age, "Thickening time left, "+slurryName(q.row, k), "", 0, slurryPath(i, k, "thickening"))
	}
}

// waitFigure adds the wait on cement against the time to strength of the slowest slurry that stands in the lowest 500 ft,
// and judges both.
func (e *evaluation) waitFigure(i int, p *page, job *cementJob) {
	s := &e.plan.Sections[i]
	if len(job.slurries) == 0 {
		return
	}
	const lowest = 500 * 0.3048
	wait, waitPath := s.Cement.Wait, model.PathOf(i, "pumping.wait")
	missing := first(job.missing, needs(wait, waitPath, "planned wait on cement"))
	var slow float64
	var governs string
	for k := range job.slurries {
		q := &job.slurries[k]
		if q.bottom <= job.shoe-lowest {
			continue
		}
		missing = first(missing, needs(q.row.StrengthTime, slurryPath(i, k, "strength_time"), "time to 500 psi"))
		if q.row.StrengthTime.SI > slow {
			slow, governs = q.row.StrengthTime.SI, slurryName(q.row, k)
		}
	}
	p.put("cement.wait.over", "Wait over 500 psi", quantity.Hours, wait.SI-slow, missing, func(w *Working) {
		w.Formula = "over = planned wait - time to 500 psi of the slowest slurry that stands in the lowest 500 ft"
		w.in("wait", "planned", quantity.Hours, wait.SI)
		w.in("strength", "time to 500 psi", quantity.Hours, slow)
		w.Source = "30 CFR 250.420(c): 500 psi behind the lowest 500 ft before drilling on"
		w.Note = "The laboratory counts from mixing, the wait from the bump. Coldest place counts: cold seabed slows the upper cement."
	}).Note = governs
	if !missing.open() {
		e.judge(model.RuleCementStrength, i, wait.SI-slow, "Wait over the time to 500 psi", governs, 0, waitPath)
		e.judge(model.RuleUSCementStrength, i, wait.SI-slow, "Wait over the time to 500 psi", governs, 0, waitPath)
	}
	if !wait.IsSet() {
		return
	}
	if s.Purpose == model.Conductor {
		e.judge(model.RuleUSWaitConductor, i, wait.SI, "Wait on cement", "", 0, waitPath)
		return
	}
	e.judge(model.RuleUSWait, i, wait.SI, "Wait on cement", "", 0, waitPath)
}
