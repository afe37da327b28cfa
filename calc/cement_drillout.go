package calc

import (
	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// drillOutFigures adds where the next bit tags and what there is to drill out. Without a plug the tag is where the played
// job leaves the last slurry, once what was kept back has fallen out of the inner string.
func (e *evaluation) drillOutFigures(i int, p *page, job *cementJob, r *jobResult) {
	p.group = "Drill-out"
	name, tag, missing := "Tag plug", job.end, job.missing
	if job.inner != nil {
		name, tag, missing = "Tag cement", r.tag, first(job.missing, e.playGap(i, job))
	}
	e.depth(p, "cement.tag", name, tag, missing, func(w *Working) {
		w.Formula = "depth = collar on which the plug has landed"
		if job.inner != nil {
			w.Formula = "depth = shoe - slurry left inside / bore of the casing"
		}
		w.in("end", "of the way down, along hole", quantity.Length, job.end)
		w.in("shoe", "along hole", quantity.Length, job.shoe)
		w.Source = "geometry; the length of the plugs left out"
		w.Note = "Tagged higher: count what was displaced. Tagged lower or not at all: the shoe may be wet."
	})
	p.put("cement.drill_out", "To drill, inside", quantity.Length, job.shoe-tag, missing, func(w *Working) {
		w.Formula = "length = shoe - tag"
		w.in("shoe", "along hole", quantity.Length, job.shoe)
		w.in("tag", "along hole", quantity.Length, tag)
		w.Source = "geometry"
	})
	p.put("cement.rathole", "Rathole below shoe", quantity.Length, e.sections[i].td-job.shoe, job.missing, func(w *Working) {
		w.Formula = "length = TD - shoe: not cemented, full of what stood there"
		w.in("TD", "of the hole", quantity.Length, e.sections[i].td)
		w.in("shoe", "along hole", quantity.Length, job.shoe)
		w.Source = "geometry"
	})
	var pocket []bore.Interval
	if !job.missing.open() {
		pocket = bore.Intervals(e.bores[i], nil, job.shoe, e.sections[i].td)
	}
	p.also("cement.rathole.volume", "volume", quantity.Volume, bore.Volume(pocket), job.missing, func(w *Working) {
		w.Formula = "V = sum of pi/4 × D² × L"
		w.intervals(pocket)
		w.Source = "geometry"
		w.Note = "Lighter than the slurry above, it may swap with it and thin the cement round the shoe."
	})
}

// boreAt returns the area of the bore of a string at a depth, in m2.
func boreAt(bodies []bore.Body, md float64) float64 {
	for k := len(bodies) - 1; k > 0; k-- {
		if bodies[k].Top < md {
			return bore.Area(bodies[k].ID)
		}
	}
	return bore.Area(bodies[0].ID)
}

// judgeCement compares a job with the rules that look at more than one of its figures.
func (e *evaluation) judgeCement(i int, job *cementJob) {
	if job.missing.open() {
		return
	}
	e.judgeTops(i, job)
	if s := &e.plan.Sections[i]; job.inner != nil && s.ShoeTrack.SI > 0 {
		e.judge(model.RuleInnerString, i, s.Cement.InnerAboveShoe.SI-s.ShoeTrack.SI, "Inner string ends above the float collar", "", job.end, model.PathOf(i, "inner_above_shoe"))
	}
	e.judgeDensities(i, job)
	e.judgeSheets(i, job)
}

// judgeDensities compares each fluid with the one ahead of it: what is heavier pushes, what is lighter fingers through.
// Without a riser sea water goes ahead of the cement into a hole full of heavier fluid, and nobody minds.
func (e *evaluation) judgeDensities(i int, job *cementJob) {
	s := &e.plan.Sections[i]
	before, what := e.leftInHole(i), "mud"
	if e.sections[i].rig && !e.columnGap(i).open() {
		for k := range s.Spacers {
			if row := &s.Spacers[k]; row.Density.IsSet() {
				e.judge(model.RuleDensityOrder, i, row.Density.SI-before, "Spacer over "+what, "", 0, spacerPath(i, k, "density"))
				before, what = row.Density.SI, "spacer"
			}
		}
		for k := range job.slurries {
			if q := &job.slurries[k]; q.sheet.Density > 0 {
				e.judge(model.RuleDensityOrder, i, q.sheet.Density-before, "Slurry over "+what, "", 0, slurryPath(i, k, "density"))
				before, what = q.sheet.Density, "slurry"
			}
		}
	}
}

// judgeSheets asks about slurries whose density, yield and mix fluid do not belong together.
func (e *evaluation) judgeSheets(i int, job *cementJob) {
	for k := range job.slurries {
		q := &job.slurries[k]
		if q.row.GivenBy == model.ByRecipe || q.unmixed.open() {
			continue
		}
		if err := q.sheet.Check(sheetTolerance); err != nil {
			e.note(i, Caution, gap{slurryPath(i, k, "yield"), err.Error()})
		}
	}
}

// sheetTolerance is how far density, yield and mix fluid may disagree, as a share: the rounding of what is printed.
const sheetTolerance = 0.01
