package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// when names a moment of a job.
func (job *cementJob) when(x extreme) string {
	list := job.stages
	if x.stage >= len(list) || x.value == 0 {
		return ""
	}
	return "in " + list[x.stage].name
}

// played returns the source of what is read off a job.
func (p *page) played() string {
	return "the job played in steps on the well's columns, friction by " + by(p.e.rubbing(p.section)) + "; no gel strength, no eccentricity"
}

func (e *evaluation) leastCementMargin(i int, p *page, r *jobResult, static, pumping gap) {
	p.group = "Margins on the rock"
	top := slurryPath(i, 0, "top")
	under := func(key, name string, x extreme, hole string) {
		at, missing := e.pointOf(i, r, x, static)
		f := p.put(key, name, quantity.EMW, x.value, missing, func(w *Working) {
			w.Formula = "margin = fracture or shoe test - equivalent density, least at the last shoe, every row of the prognosis, shoe and TD: " + hole
			w.in("limit", "there, from RKB", quantity.EMW, at.Fracture)
			w.in("EMW", "of the job", quantity.EMW, at.Fracture-x.value)
			w.Source = p.played()
		})
		where := at.Name
		if pumping.open() {
			where += ", at rest"
		}
		f.Note = where
		e.wherefigures(p, key, x, at, missing)
		if !missing.open() {
			what := "Cement job below fracture"
			if key != "cement.margin" {
				what += ", hole in gauge"
			}
			e.judge(model.RuleCementMargin, i, x.value, what, where, at.MD, top)
			if key == "cement.margin" { // a hole in gauge is what may be found, not what is planned
				e.judge(model.RuleBelowBreakdown, i, x.value, what, where, at.MD, top)
			}
		}
	}
	under("cement.margin", "Least margin", r.least, "through the job in the hole as planned, with the excess")
	under("cement.margin.gauge", "Margin, in gauge", r.gauge.least, "at the ends of the stages in a hole in gauge, where the cement stands higher")
	at, missing := e.pointOf(i, r, r.inflow, static)
	p.put("cement.inflow", "Least over pore", quantity.EMW, r.inflow.value, missing, func(w *Working) {
		w.Formula = "margin = equivalent density - pore, least through the job"
		w.in("EMW", "of the job", quantity.EMW, at.Pore+r.inflow.value)
		w.in("pore", "prognosis there", quantity.EMW, at.Pore)
		w.Source = p.played()
		w.Note = "Gelling cement hands on less than its column later; that is not modelled."
	}).Note = at.Name
	e.wherefigures(p, "cement.inflow", r.inflow, at, missing)
	if !missing.open() {
		rule := model.RuleAboveInflow
		if !e.sections[i].rig {
			rule = model.RuleRiserlessInflow
		}
		mend := "spacer[1].density"
		if len(e.plan.Sections[i].Spacers) == 0 {
			mend = "spacer"
		}
		e.judge(rule, i, r.inflow.value, "Cement job over pore", at.Name, at.MD, model.PathOf(i, mend))
	}
}

// pointOf returns the point at which an extreme was met, and what is missing when there is none.
func (e *evaluation) pointOf(i int, r *jobResult, x extreme, static gap) (JobPoint, gap) {
	if static.open() {
		return JobPoint{}, static
	}
	if x.where == nowhere || len(r.points) == 0 {
		return JobPoint{}, first(e.prognosisGap(i), gap{"prognosis.row", "no prognosis is known for the open hole"})
	}
	return r.points[x.where], gap{}
}

// wherefigures adds where and when an extreme was met.
func (e *evaluation) wherefigures(p *page, key string, x extreme, at JobPoint, missing gap) {
	p.also(key+".at", "at depth", quantity.Length, at.MD, missing, func(w *Working) {
		w.Formula = "depth along hole at which it is met"
		w.Source = p.played()
	})
	p.also(key+".pumped", "after", quantity.Volume, x.pumped, missing, func(w *Working) {
		w.Formula = "volume pumped since the start when it is met"
		w.Source = p.played()
	})
}

// emwFigures adds the equivalent densities of a job at each depth that is followed.
func (e *evaluation) emwFigures(i int, p *page, r *jobResult, pumping gap) {
	p.group = "On the rock"
	for k := range r.points {
		at := &r.points[k]
		key := at.Key
		value := func(column, suffix string, value float64, missing gap, formula string) {
			p.also(key+suffix, column, quantity.EMW, value, missing, func(w *Working) {
				w.Formula = formula
				w.in("depth", "along hole", quantity.Length, at.MD)
				w.in("TVD", "from RKB", quantity.Length, at.TVD)
				w.Source = p.played()
			})
		}
		p.put(key, "EMW "+at.Name, quantity.EMW, r.atRest[k], gap{}, func(w *Working) {
			w.Formula = "EMW = sum of density × g × vertical height above, at rest after the job / (g × TVD)"
			w.in("depth", "along hole", quantity.Length, at.MD)
			w.in("TVD", "from RKB", quantity.Length, at.TVD)
			w.Source = "hydrostatics; heights as the fluids stand in the planned hole"
			w.Note = "Gelling cement hands on less than its column later; that is not modelled."
		}).Note = "at rest"
		value("pumping", ".highest", r.highest[k], pumping, "highest equivalent density through the job, friction above counted")
		value("in gauge", ".gauge", max(r.gauge.highest[k], r.gauge.atRest[k]), gap{}, "highest at the ends of the stages in a hole in gauge")
		p.also(key+".at", "at depth", quantity.Length, at.MD, gap{}, func(w *Working) {
			w.Formula = "depth along hole"
			w.Source = "as planned"
		})
		p.also(key+".limit", "limit", quantity.EMW, at.Fracture, e.prognosisGap(i), func(w *Working) {
			w.Formula = "limit = fracture prognosis, at the last shoe its measured test, or the planned one where that is less"
			w.Source = "as entered, from RKB"
		})
	}
}
