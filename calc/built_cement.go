package calc

import (
	"strconv"

	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// pumpedCement is where the slurries that were pumped stand: volumes in m3, depths along hole in m.
type pumpedCement struct {
	missing gap
	pumped  float64
	inside  float64 // of it left in the string
	past    float64 // fluid displaced past the shoe
	annulus float64 // of the slurry, outside the string
	top     float64 // in the hole as it is, nothing lost
	lost    float64 // top with what was lost
}

// pumpedCement lays the slurries that were pumped into the hole as it is.
func (e *evaluation) pumpedCement(i int, job *cementJob) pumpedCement {
	s := &e.plan.Sections[i]
	p := pumpedCement{missing: job.missing}
	if p.missing.open() {
		return p
	}
	for k := range s.Slurries {
		path := model.PathOf(i, "built_slurry["+strconv.Itoa(k+1)+"].volume")
		if k >= len(s.BuiltSlurries) {
			p.missing = gap{model.PathOf(i, "built_slurry"), "what was pumped of slurry " + strconv.Itoa(k+1) + " is not entered"}
			return p
		}
		if p.missing = needs(s.BuiltSlurries[k].Volume, path, "volume of a slurry that was pumped"); p.missing.open() {
			return p
		}
		p.pumped += s.BuiltSlurries[k].Volume.SI
	}
	p.inside, p.past = e.leftInside(i, job)
	p.annulus = max(p.pumped-p.inside, 0)
	p.top, _ = bore.DepthAbove(job.hole, job.shoe, p.past+p.annulus)
	p.lost, _ = bore.DepthAbove(job.hole, job.shoe, p.past+max(p.annulus-s.Built.Lost.SI, 0))
	return p
}

// leftInside returns the slurry that the displacement left in the string, and what of the displacing fluid went past the shoe. A
// plug that bumped leaves the shoe track, as does a displacement that is not entered.
func (e *evaluation) leftInside(i int, job *cementJob) (inside, past float64) {
	b := &e.plan.Sections[i].Built
	last := &job.slurries[len(job.slurries)-1]
	if !b.Displaced.IsSet() || b.Bumped == model.PlugBumped && job.inner == nil {
		return last.inside + last.slack, 0
	}
	into := b.Displaced.SI / e.compression(i, job, displacerFluid)
	return max(job.holds()-into, 0), max(into-job.holds(), 0)
}

// builtCement compares the cement job as pumped with the plan, and finds where its cement stands.
func (e *evaluation) builtCement(i int, p *page) {
	if !e.cemented(i) {
		return
	}
	job, was := e.cementOf(i), e.planned().cementOf(i)
	e.builtNeed(p, job, was)
	e.builtVolumes(i, p, job, was)
	e.builtTop(i, p, job, was)
	e.builtBump(i, p)
}

// builtNeed adds what was ordered as planned, and what the hole and string as built ask for.
func (e *evaluation) builtNeed(p *page, job, was *cementJob) {
	p.group = "Cement ordered"
	missing := first(job.missing, was.missing)
	if missing.open() {
		p.put("built.need", "Slurries", quantity.Volume, 0, missing, func(*Working) {})
		return
	}
	for k := range job.slurries {
		key, name := "built.need."+strconv.Itoa(k+1), slurryName(job.slurries[k].row, k)
		p.asked(key, name, was.slurries[k].volume(), job.slurries[k].volume())
	}
	p.asked("built.need.displacement", "Displacement", e.planned().displaced(p.section, was).pumped, e.displaced(p.section, job).pumped)
}

// asked adds a volume as planned, as hole and string as built ask for it, and by how much that is more.
func (p *page) asked(key, name string, planned, now float64) {
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula, w.Source = formula, "geometry; see the cement page"
			w.in("ordered", "as planned, without actuals", quantity.Volume, planned)
			w.in("asks", "hole and string as built, planned tops and excess", quantity.Volume, now)
		}
	}
	p.put(key, name, quantity.Volume, planned, gap{}, why("as the plan has it without anything as built"))
	p.also(key+".now", "hole asks", quantity.Volume, now, gap{}, why("as hole and string as built ask for it"))
	p.also(key+".more", "more", quantity.Volume, now-planned, gap{}, why("more = hole asks - ordered"))
}

// builtVolumes compares what was pumped.
func (e *evaluation) builtVolumes(i int, p *page, job, was *cementJob) {
	s := &e.plan.Sections[i]
	p.group = "Pumped, planned"
	for k := range s.BuiltSlurries {
		key := "built.slurry." + strconv.Itoa(k+1)
		if k >= len(s.Slurries) {
			e.note(i, Caution, gap{model.PathOf(i, "built_slurry["+strconv.Itoa(k+1)+"].volume"), "more slurries were pumped than are planned: the last rows do not count"})
			break
		}
		var planned float64
		if !was.missing.open() {
			planned = was.slurries[k].volume()
		}
		p.compared(key, slurryName(&s.Slurries[k], k), quantity.Volume, planned, was.missing, s.BuiltSlurries[k].Volume)
	}
	var planned float64
	if !was.missing.open() {
		planned = e.planned().displaced(i, was).pumped
	}
	p.compared("built.displaced", "Displacement", quantity.Volume, planned, was.missing, s.Built.Displaced)
	if s.Built.Displaced.IsSet() && !job.missing.open() {
		now := e.displaced(i, job).pumped
		p.also("built.displaced.over", "over need", quantity.Volume, s.Built.Displaced.SI-now, gap{}, func(w *Working) {
			w.Formula, w.Source = "over = pumped - what the string as built asks for", "geometry"
			w.in("pumped", "as entered", quantity.Volume, s.Built.Displaced.SI)
			w.in("asks", "string as built", quantity.Volume, now)
		})
	}
}

// builtTop compares the top of cement as found, and finds it from the volumes pumped.
func (e *evaluation) builtTop(i int, p *page, job, was *cementJob) {
	s := &e.plan.Sections[i]
	b := &s.Built
	p.group = "Top of cement, planned"
	p.compared("built.cement_top", "Found", quantity.Length, was.topOfCement(), was.missing, b.CementTop)
	if b.CementTop.IsSet() && b.CementTop.SI >= job.shoe && !job.missing.open() {
		e.note(i, Caution, gap{model.PathOf(i, "built.cement_top"), "the top of cement as found is not above the shoe"})
	}
	if len(s.BuiltSlurries) == 0 {
		return
	}
	c := e.pumpedCement(i, job)
	p.group = "Top of cement by volume"
	p.put("built.volume_top", "Nothing lost", quantity.Length, c.top, c.missing, e.volumeTopWorking(job, &c, c.top, 0))
	if b.Lost.IsSet() {
		p.also("built.volume_top.lost", "with losses", quantity.Length, c.lost, c.missing, e.volumeTopWorking(job, &c, c.lost, b.Lost.SI))
	}
	if c.missing.open() {
		return
	}
	p.noted("built.volume_top", e.volumeTopStands(i))
	if c.past > 0 {
		e.note(i, Caution, gap{model.PathOf(i, "built.displaced"), "more was displaced than the string holds: there is no cement round the shoe by the volumes entered"})
	}
	if b.CementTop.IsSet() {
		e.builtLost(p, job, &c, b.CementTop.SI)
	}
}

// volumeTopStands says what of the hole a top of cement by volume is worked out with is planned only.
func (e *evaluation) volumeTopStands(i int) string {
	s := &e.plan.Sections[i]
	switch {
	case !s.Built.Shoe.IsSet():
		return "with the shoe as planned"
	case len(s.Caliper) == 0 && !s.Built.Diameter.IsSet():
		return "hole not measured: washout as planned"
	}
	return ""
}

// volumeTopWorking shows how high slurry stands that was pumped.
func (e *evaluation) volumeTopWorking(job *cementJob, c *pumpedCement, top, lost float64) func(*Working) {
	return func(w *Working) {
		w.Formula = "top = depth above which the annulus has held: pumped - left in the string - lost + displaced past the shoe"
		w.in("pumped", "all slurries", quantity.Volume, c.pumped)
		w.in("inside", "left in the string", quantity.Volume, c.inside)
		w.in("lost", "while cementing", quantity.Volume, lost)
		w.in("past", "displaced past the shoe", quantity.Volume, c.past)
		w.intervals(between(job.hole, top, job.shoe))
		w.Source = "geometry; hole as measured or washed out, without excess"
		w.Note = "A plug that bumped leaves the shoe track in the string, else what the displacement has not filled. Mixing with the mud is left out."
	}
}

// builtLost adds what the annulus up to the top of cement as found does not account for.
func (e *evaluation) builtLost(p *page, job *cementJob, c *pumpedCement, found float64) {
	holds := bore.Between(job.hole, found, job.shoe)
	p.group = "Cement not accounted for"
	p.put("built.unaccounted", "Lost or over", quantity.Volume, c.annulus+c.past-holds, gap{}, func(w *Working) {
		w.Formula = "V = pumped - left in the string + displaced past the shoe - annulus from the top found to the shoe"
		w.in("pumped", "all slurries", quantity.Volume, c.pumped)
		w.in("inside", "left in the string", quantity.Volume, c.inside)
		w.in("past", "displaced past the shoe", quantity.Volume, c.past)
		w.in("annulus", "top found to shoe", quantity.Volume, holds)
		w.intervals(between(job.hole, found, job.shoe))
		w.Source = "geometry"
		w.Note = "Above zero: lost, or the hole is larger than it is taken to be. Below: the hole is smaller, or the cement channelled past mud."
	}).Note = e.plan.Sections[p.section].Built.CementTopBy
	p.also("built.unaccounted.share", "of slurry", quantity.Ratio, (c.annulus+c.past-holds)/c.pumped, gap{}, func(w *Working) {
		w.Formula, w.Source = "share = not accounted for / pumped", "arithmetic"
		w.in("V", "not accounted for", quantity.Volume, c.annulus+c.past-holds)
		w.in("pumped", "all slurries", quantity.Volume, c.pumped)
	})
}

// builtBump compares the pressure to which the plug was bumped with the planned one, and with what it takes to lift the cement.
func (e *evaluation) builtBump(i int, p *page) {
	b := &e.plan.Sections[i].Built
	if e.byInnerString(i) || !b.BumpPressure.IsSet() {
		return
	}
	now, was := e.workedJob(i), e.planned().workedJob(i)
	p.group = "Bump, planned"
	p.compared("built.bump", "Bumped to", quantity.Pressure, was.result.final+e.plan.Sections[i].Cement.BumpOver.SI, first(was.static, was.pumping), b.BumpPressure)
	missing := first(now.static, now.pumping)
	p.also("built.bump.over", "over lift", quantity.Pressure, b.BumpPressure.SI-now.result.final, missing, func(w *Working) {
		w.Formula = "over = bump - pressure that lifts the cement, just before the end"
		w.in("bump", "as entered", quantity.Pressure, b.BumpPressure.SI)
		w.in("lift", "as worked out, pumping", quantity.Pressure, now.result.final)
		w.in("at rest", "of it without friction", quantity.Pressure, now.result.holds)
		w.Source = "the job played on the hole as built, with the planned tops and excess"
	})
}
