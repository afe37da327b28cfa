package calc

import (
	"strconv"

	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// laidTop is where one fluid comes to stand in the annulus, along hole.
type laidTop struct {
	name string
	key  string
	top  float64
	over float64 // what of it left the annulus at its outlet
}

// laid returns where slurries and spacers come to stand in an annulus when a share of the slurry is lost: the slurry pumped
// last is the lowest.
func (e *evaluation) laid(i int, job *cementJob, annulus []bore.Interval, lost float64) (slurries, spacers []laidTop) {
	s := &e.plan.Sections[i]
	slurries, spacers = make([]laidTop, len(job.slurries)), make([]laidTop, len(s.Spacers))
	at := job.shoe
	for k := len(job.slurries) - 1; k >= 0; k-- {
		t := laidTop{name: slurryName(job.slurries[k].row, k), key: slurryKey(k)}
		t.top, t.over = bore.DepthAbove(annulus, at, job.slurries[k].annulus*(1-lost))
		slurries[k], at = t, t.top
	}
	for k := len(s.Spacers) - 1; k >= 0; k-- {
		t := laidTop{name: spacerName(&s.Spacers[k], k), key: "cement.spacer." + strconv.Itoa(k+1)}
		t.top, t.over = bore.DepthAbove(annulus, at, s.Spacers[k].Volume.SI)
		spacers[k], at = t, t.top
	}
	return slurries, spacers
}

// topFigures adds the tops of slurries and spacers: as planned, with the hole in gauge, and with the plan's losses.
func (e *evaluation) topFigures(i int, p *page, job *cementJob) {
	p.group = "Tops, along hole"
	lost := e.plan.Sections[i].Cement.Losses.SI
	missing, unknown := job.missing, e.spacerGap(i)
	var planned, gauge, losses [2][]laidTop
	if !missing.open() {
		planned[0], planned[1] = e.laid(i, job, job.planned, 0)
		gauge[0], gauge[1] = e.laid(i, job, job.gauge, 0)
		losses[0], losses[1] = e.laid(i, job, job.planned, lost)
	}
	for _, kind := range [...]int{1, 0} {
		var blank gap
		if kind == 1 {
			blank = unknown
		}
		for k := range planned[kind] {
			t := planned[kind][k]
			e.depth(p, t.key+".top", t.name, t.top, blank, topWorking(job, t.top, job.planned, "planned hole, excess counted"))
			column := func(suffix, column string, top float64, annulus []bore.Interval, hole string) {
				p.also(t.key+suffix, column, quantity.Length, top, blank, topWorking(job, top, annulus, hole))
			}
			column(".top.gauge", "in gauge", gauge[kind][k].top, job.gauge, "hole in gauge: the excess goes up")
			if lost > 0 {
				column(".top.lost", "with losses", losses[kind][k].top, job.planned, "planned hole, a share of the slurry lost")
			}
		}
	}
	if e.strings[i].liner {
		e.pulledFigure(i, p, job)
	}
	e.overFigure(p, job, gauge, missing)
}

// pulledFigure adds where the cement above a liner's top stands when the running pipe has left it and nothing is reversed
// out.
func (e *evaluation) pulledFigure(i int, p *page, job *cementJob) {
	var above float64
	var empty []bore.Interval
	top := job.top
	if !job.missing.open() {
		above = bore.Volume(between(job.planned, job.topOfCement(), job.top))
		empty = bore.Intervals(e.bores[i], nil, job.outlet, job.top)
		top, _ = bore.DepthAbove(empty, job.top, above)
	}
	p.put("cement.top.pulled", "Top, pipe pulled", quantity.Length, top, job.missing, func(w *Working) {
		w.Formula = "top = liner top - V / bore without pipe"
		w.in("V", "cement above the liner's top", quantity.Volume, above)
		w.in("liner top", "along hole", quantity.Length, job.top)
		w.intervals(between(empty, top, job.top))
		w.Source = "geometry"
		w.Note = "Nothing reversed out, and what stands in the pipe stays in it."
	})
}

// topWorking returns the working of a top: the annulus below it, whose volume is what was pumped.
func topWorking(job *cementJob, top float64, annulus []bore.Interval, hole string) func(*Working) {
	return func(w *Working) {
		w.Formula = "top = depth above which the annulus has held all that stands below: " + hole
		below := between(annulus, top, job.shoe)
		w.intervals(below)
		w.in("V", "sum, from the top to the shoe", quantity.Volume, bore.Volume(below))
		w.Source = "geometry"
	}
}

// overFigure adds what of slurry and spacer leaves the annulus when the hole is in gauge.
func (e *evaluation) overFigure(p *page, job *cementJob, gauge [2][]laidTop, missing gap) {
	var over float64
	for _, t := range gauge[0] {
		over += t.over
	}
	where := "at the seabed"
	if job.outlet == 0 {
		where = "at the rig"
	}
	f := p.put("cement.over", "Cement returns", quantity.Volume, over, missing, func(w *Working) {
		w.Formula = "V = slurry in the annulus - annulus in gauge from the shoe to where returns leave, not below zero"
		w.in("slurry", "in the annulus", quantity.Volume, job.inAnnulus())
		w.in("annulus", "in gauge", quantity.Volume, bore.Volume(job.gauge))
		w.Source = "geometry"
	})
	f.Note = where + ", hole in gauge"
}

// inAnnulus returns the slurry that is meant to stand in the annulus.
func (job *cementJob) inAnnulus() (sum float64) {
	for k := range job.slurries {
		sum += job.slurries[k].annulus
	}
	return sum
}

// slurryTop returns the depth along hole at which slurry k of a section has its top: as planned, but the cement ends where its top
// was found.
func slurryTop(s *model.Section, k int) float64 {
	top, found := s.Slurries[k].Top.SI, s.Built.CementTop
	if found.IsSet() && (k == 0 || top < found.SI) {
		return found.SI
	}
	return top
}

// cementTop returns the top of cement that counts, as found or as planned, and the entry that says so.
func (e *evaluation) cementTop(i int, job *cementJob) (md float64, mend model.Path) {
	if found := e.plan.Sections[i].Built.CementTop; found.IsSet() {
		return found.SI, model.PathOf(i, "built.cement_top")
	}
	return job.topOfCement(), slurryPath(i, 0, "top")
}

// judgeTops compares the top of cement with the rules.
func (e *evaluation) judgeTops(i int, job *cementJob) {
	s := &e.plan.Sections[i]
	top, mend := e.cementTop(i, job)
	shoe, _, above := e.lastShoe(i)
	height := job.shoe - top
	if s.Purpose != model.Conductor { // which is cemented to the seabed, however short it is
		e.judge(model.RuleCementHeight, i, height, "Cement above the shoe", "", top, mend)
	}
	switch s.Purpose {
	case model.Conductor:
		e.judge(model.RuleUSCementConductor, i, e.datum.Mudline-top, "Conductor cemented to the seabed", "", top, mend)
	case model.Surface:
		if above {
			e.judge(model.RuleUSCementSurface, i, shoe-top, "Cement above the conductor's shoe", "", top, mend)
			e.judge(model.RuleCementInConductor, i, shoe-top, "Cement above the conductor's shoe", "", top, mend)
		} else { // no conductor: to the seabed
			e.judge(model.RuleCementInConductor, i, e.datum.Mudline-top, "Surface string cemented to the seabed", "", top, mend)
		}
	default:
		e.judge(model.RuleUSCementHeight, i, height, "Cement above the shoe", "", top, mend)
	}
	if e.sections[i].rig && !e.strings[i].liner {
		e.judge(model.RuleDepthOrder, i, top-job.top, "Top of cement below the hanger", "", top, mend)
	}
	if e.sections[i].rig && !e.strings[i].liner && !s.Built.CementTop.IsSet() { // what the gauge would give is past once it is found
		gauge, _ := e.laid(i, job, job.gauge, 0)
		e.judge(model.RuleCementInStack, i, gauge[0].top-job.top, "Cement below the hanger, hole in gauge", "", gauge[0].top, model.PathOf(i, "excess"))
	}
	if e.strings[i].liner {
		e.judge(model.RuleAboveLiner, i, job.top-top, "Cement above the liner's top", "", top, mend)
	}
	e.judgeZones(i, job, top, mend)
	sealed := e.sections[i].rig && !e.strings[i].liner
	if above && sealed && top > e.datum.Mudline {
		e.judge(model.RuleTrappedAnnulus, i, top-shoe, "Top of cement below the last shoe, annulus left open", "", top, mend)
	}
}

// judgeZones compares a top of cement with the zones to be isolated that stand open behind the string. A production
// string is held against the uppermost with hydrocarbons, an intermediate one against each with hydrocarbons or abnormal
// pressure as well.
func (e *evaluation) judgeZones(i int, job *cementJob, top float64, mend model.Path) {
	shoe, _, above := e.lastShoe(i)
	purpose := e.plan.Sections[i].Purpose
	if e.pathGap.open() || purpose == model.Conductor || purpose == model.Surface {
		return
	}
	for k := range e.plan.Formations {
		f := &e.plan.Formations[k]
		if !f.Top.IsSet() || f.Isolate != model.Hydrocarbons && (f.Isolate != model.AbnormalPressure || purpose == model.Production) {
			continue
		}
		md, ok := e.path.MDAtTVD(e.toRKB(f.Top.SI))
		if !ok || md <= shoe || md > job.shoe {
			continue
		}
		height := md - top
		what := "Cement above a zone to be isolated"
		e.judge(model.RuleUSCementZone, i, height, what, f.Name, md, mend)
		if !above || top > shoe { // into the last string is enough
			e.judge(model.RuleCementInflow, i, height, what, f.Name, md, mend)
		}
		if purpose == model.Production {
			return
		}
	}
}
