package calc

import (
	"borewalk/model"
)

// cementProposals looks for the highest top of cement and the fastest displacement that keep the plan's margin, and for
// the excess with which cement just comes out where the returns leave.
func cementProposals(plan *model.Plan, i int) []Proposal {
	e := runPages(plan, i, nil)
	if !e.cemented(i) {
		return nil
	}
	job := e.cementOf(i)
	if job.missing.open() {
		return nil
	}
	limit, _ := plan.Limit(model.Rules()[model.RuleCementMargin])
	margin := func(r *Result) bool {
		for _, key := range [...]string{"cement.margin", "cement.margin.gauge"} {
			if f, ok := r.Sheet(i).Find(key); !ok || !f.OK || f.Value < limit.SI {
				return false
			}
		}
		return true
	}
	propose := func(title, gives, why, note string, s search) Proposal {
		return e.proposed(i, Proposal{Title: title, Gives: gives, Note: note, Why: why}, s)
	}
	first := &job.slurries[0]
	list := []Proposal{propose("Highest top of cement that keeps the margin", "cement.margin",
		"the margin is not kept however low the top stands: look at rates and densities", "in the hole as planned and in gauge",
		search{path: slurryPath(i, 0, "top"), from: first.bottom - 1, to: e.highestTop(i, job), keeps: margin})}
	if !e.rateGap(i).open() {
		displacing, mixing := model.PathOf(i, "pumping.displace_rate"), model.PathOf(i, "pumping.mix_rate")
		list = append(list, propose("Fastest displacement that keeps the margin", "cement.margin",
			"the margin is not kept however slow the displacement: look at the mixing rate, the top and the densities",
			"mixing and slow rates stay; the cement may run ahead by itself", search{path: displacing, from: slowest, to: fastest(plan, displacing, e.mostFlow()), keeps: margin}))
		list = append(list, propose("Fastest mixing that keeps the margin", "cement.margin",
			"the margin is not kept however slow the mixing: look at the displacement, the top and the densities",
			"the slurry runs ahead by itself where it is heavy", search{path: mixing, from: slowest, to: fastest(plan, mixing, plan.Rig.UnitRate.SI), keeps: margin}))
	}
	reaches := func(r *Result) bool {
		f, ok := r.Sheet(i).Find("cement.over")
		return ok && f.OK && f.Value <= 0
	}
	where := "the seabed"
	if e.sections[i].rig {
		where = "the rig"
	}
	excess := propose("Most excess before cement comes to "+where+", hole in gauge", "cement.over",
		"cement comes back from a hole in gauge with no excess at all", "with more, cement is seen in the returns",
		search{path: model.PathOf(i, "excess"), from: 0, to: mostExcess, keeps: reaches})
	if excess.OK && excess.Entry.Quantity.SI >= mostExcess {
		excess.OK, excess.Why = false, "not even 500 % brings cement there"
	}
	return append(list, excess)
}

// highestTop returns the highest top of cement looked at: the hanger, for a liner as far above its top as the rule lets it
// stand, and without a riser where returns leave.
func (e *evaluation) highestTop(i int, job *cementJob) float64 {
	switch above, _ := e.plan.Limit(model.Rules()[model.RuleAboveLiner]); {
	case e.strings[i].liner:
		return max(job.outlet, job.top-above.SI, 1)
	case e.sections[i].rig:
		return job.top
	}
	return max(job.outlet, 1)
}

// mostExcess is the most excess looked at.
const mostExcess = 5

// slowest is the least rate looked at, in m3/s.
const slowest = 0.1 / 60

// fastest returns the highest rate looked at: what the machine gives, or the end of the entry's range.
func fastest(plan *model.Plan, path model.Path, machine float64) float64 {
	ref, _ := model.Find(plan, path)
	most := ref.Field.Max.SI
	if machine > 0 {
		most = min(most, machine)
	}
	return most
}
