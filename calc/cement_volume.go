package calc

import (
	"strconv"
	"strings"

	"borewalk/calc/bore"
	"borewalk/calc/pump"
	"borewalk/calc/slurry"
	"borewalk/model"
	"borewalk/model/quantity"
)

// volumeFiguresOf adds the volume of each slurry and spacer.
func (e *evaluation) volumeFiguresOf(i int, p *page, job *cementJob) {
	p.group = "Slurry and spacer"
	for k := range job.slurries {
		e.slurryVolume(p, job, k)
	}
	e.spacerFigures(i, p, job)
}

// materialFigures adds the cement, the mix fluid and the parts of each slurry.
func (e *evaluation) materialFigures(p *page, job *cementJob) {
	p.group = "Cement and mix fluid"
	for k := range job.slurries {
		e.mixFigures(p, job, k)
	}
}

// slurryVolume adds what of a slurry is pumped.
func (e *evaluation) slurryVolume(p *page, job *cementJob, k int) {
	q := &job.slurries[k]
	key := slurryKey(k)
	p.put(key+".volume", slurryName(q.row, k), quantity.Volume, q.volume(), job.missing, func(w *Working) {
		w.Formula = "V = annulus from its top to the next slurry or the shoe, excess in open hole, + what stays in the string"
		w.intervals(between(job.planned, q.top, q.bottom))
		w.in("annulus", "sum of these", quantity.Volume, q.annulus)
		if k == len(job.slurries)-1 {
			w.in("string", "left in shoe track or casing", quantity.Volume, q.inside)
			w.in("slack", "kept in the inner string", quantity.Volume, q.slack)
		}
		w.Source = "geometry; an excess on the annulus is common practice"
		w.Note = "Couplings, centralisers and eccentricity ignored. Two people reproduce it before it is mixed."
	})
}

// spacerFigures adds the volume of each spacer and its time of contact.
func (e *evaluation) spacerFigures(i int, p *page, job *cementJob) {
	spacers := e.plan.Sections[i].Spacers
	for k := range spacers {
		row := &spacers[k]
		missing := needs(row.Volume, spacerPath(i, k, "volume"), "volume of a spacer")
		key := "cement.spacer." + strconv.Itoa(k+1)
		p.put(key+".volume", spacerName(row, k), quantity.Volume, row.Volume.SI, missing, func(w *Working) {
			w.Formula = "volume as given"
			w.Source = "as entered"
		})
		rate := e.plan.Sections[i].Cement.DisplaceRate
		contact, _ := pump.Time(row.Volume.SI, rate.SI)
		p.also(key+".contact", "contact", quantity.Time, contact, first(missing, lacks(rate, i, "pumping.displace_rate", "displacing rate")), func(w *Working) {
			w.Formula = "t = volume / displacing rate: the time that a place in the annulus sees it"
			w.in("volume", "spacer", quantity.Volume, row.Volume.SI)
			w.in("rate", "displacing", quantity.CementRate, rate.SI)
			w.Source = "common practice: ten minutes or 150 m of annulus"
		})
	}
}

// mixFigures adds the dry cement and the mix fluid of a slurry.
func (e *evaluation) mixFigures(p *page, job *cementJob, k int) {
	q := &job.slurries[k]
	key := slurryKey(k)
	missing := first(job.missing, q.unmixed)
	b := &q.batch
	p.put(key+".dry", slurryName(q.row, k)+", dry", quantity.Mass, b.Cement, missing, func(w *Working) {
		w.Formula = "m = (V + left in tub and lines) / yield"
		w.in("V", "slurry", quantity.Volume, q.volume())
		w.in("left", "in tub and lines", quantity.Volume, b.Mixed-q.volume())
		w.in("yield", "of the dry cement", quantity.SlurryYield, q.sheet.Yield)
		w.Source = "API Spec 10A terms; absolute volumes where the slurry is given by recipe"
		w.Note = "Nothing added for bulk that is lost on its way."
	})
	p.also(key+".sacks", "sacks", quantity.Count, b.Sacks, missing, func(w *Working) {
		w.Formula = "sacks = m / 94 lb, rounded up"
		w.in("m", "dry cement", quantity.Mass, b.Cement)
		w.in("sack", "94 lb", quantity.Mass, slurry.Sack)
		w.Source = "API: a sack is 94 lb"
	})
	p.also(key+".mix", "mix fluid", quantity.Volume, b.Prepared, missing, func(w *Working) {
		w.Formula = "V = m × mix fluid + dead volume"
		w.in("m", "dry cement", quantity.Mass, b.Cement)
		w.in("mix fluid", "for each mass of cement", quantity.MixWater, q.sheet.MixFluid)
		w.in("dead", "kept back by the tank", quantity.Volume, b.Prepared-b.MixFluid)
		w.Source = "as the slurry's yield"
	})
	p.also(key+".aboard", "aboard", quantity.Mass, b.Aboard*slurry.Sack, missing, func(w *Working) {
		w.Formula = "m = need × (1 + reserve), in whole sacks"
		w.in("need", "dry cement", quantity.Mass, b.Cement)
		w.in("reserve", "of the plan", quantity.Ratio, b.Reserve)
		w.Source = "common practice"
	})
	if q.row.GivenBy == model.ByRecipe {
		e.recipeFigures(p, key, q, missing)
	}
}

// recipeFigures adds density and yield of a slurry that is given by recipe, and its parts.
func (e *evaluation) recipeFigures(p *page, key string, q *slurryJob, missing gap) {
	why := func(w *Working) {
		w.Formula = "density = sum of masses / sum of absolute volumes, yield = sum of volumes / mass of cement"
		parts, _ := q.recipe.PerVolume()
		for _, part := range parts {
			w.in("m", part.Label+", in 1 m3 of slurry", quantity.Mass, part.Mass)
			w.in("v", part.Label+", absolute", quantity.Volume, part.Volume)
		}
		w.Source = "absolute volumes (Lapeyrouse, Formulas and Calculations, ch. 2, from memory)"
		w.Note = "The laboratory decides whether such a slurry can be mixed, and what it does."
	}
	p.put(key+".density", " by recipe", quantity.Density, q.sheet.Density, missing, why)
	p.also(key+".yield", "yield", quantity.SlurryYield, q.sheet.Yield, missing, why)
	p.also(key+".mix_fluid", "mix fluid", quantity.MixWater, q.sheet.MixFluid, missing, why)
	if missing.open() {
		return
	}
	needs, err := q.recipe.Needs(q.batch)
	if err != nil {
		return
	}
	for n, need := range needs[1:] {
		p.put(key+".part."+strconv.Itoa(n+1), " "+need.Label, quantity.Mass, need.Mass, gap{}, func(w *Working) {
			w.Formula = "m = share of the recipe × dry cement"
			w.in("cement", "dry", quantity.Mass, q.batch.Cement)
			w.Source = "as entered"
		})
	}
}

// slurryIntervals adds where the cement goes: open hole, cased annulus, above a liner's top, and what stays inside.
func (e *evaluation) slurryIntervals(i int, p *page, job *cementJob) {
	p.group = "Where the cement goes"
	missing := job.missing
	top := job.topOfCement()
	var open, excess, cased, above float64
	for _, a := range between(job.planned, top, job.shoe) {
		if a.OuterLabel == openHoleLabel {
			open += a.Volume()
		} else {
			cased += bore.Between([]bore.Interval{a}, job.top, job.shoe)
			above += bore.Between([]bore.Interval{a}, job.outlet, job.top)
		}
	}
	for _, a := range between(job.gauge, top, job.shoe) {
		if a.OuterLabel == openHoleLabel {
			excess -= a.Volume()
		}
	}
	excess += open
	sum := func(key, name string, volume float64, formula string, intervals []bore.Interval) {
		p.put(key, name, quantity.Volume, volume, missing, func(w *Working) {
			w.Formula = formula
			w.intervals(intervals)
			w.Source = "geometry"
		})
	}
	planned := between(job.planned, top, job.shoe)
	sum("cement.open", "Open hole", open, "V = pi/4 × (hole² - OD²) × L × (1 + excess)", labelled(planned, true))
	sum("cement.open.excess", "of it over gauge", excess, "V = open hole with washout and excess - open hole in gauge", labelled(between(job.gauge, top, job.shoe), true))
	if !missing.open() && cased > 0 {
		sum("cement.cased", "Cased annulus", cased, "V = pi/4 × (bore² - OD²) × L, no excess", labelled(planned, false))
	}
	if e.strings[i].liner {
		sum("cement.above_liner", "Above liner top", above, "V = pi/4 × (bore² - running pipe²) × L, with the pipe in", between(planned, job.outlet, job.top))
	}
	name := "Below plug's seat"
	if job.inner != nil {
		name = "Casing, inner end"
	}
	var inside float64
	if n := len(job.slurries); n > 0 {
		inside = job.slurries[n-1].inside
	}
	sum("cement.inside", name, inside, "V = pi/4 × ID² × L, from where the displacement ends to the shoe", bore.Inside(job.string, job.end, job.shoe))
	var total float64
	for k := range job.slurries {
		total += job.slurries[k].volume()
	}
	p.put("cement.volume", "Slurry in all", quantity.Volume, total, missing, func(w *Working) {
		w.Formula = "V = sum of the slurries"
		for k := range job.slurries {
			w.in("V", slurryName(job.slurries[k].row, k), quantity.Volume, job.slurries[k].volume())
		}
		w.Source = "geometry"
	})
}

// labelled returns the intervals in open hole, or the others.
func labelled(list []bore.Interval, open bool) []bore.Interval {
	var part []bore.Interval
	for _, a := range list {
		if (a.OuterLabel == openHoleLabel) == open {
			part = append(part, a)
		}
	}
	return part
}

// topOfCement returns the planned top of the first slurry.
func (job *cementJob) topOfCement() float64 {
	if len(job.slurries) == 0 {
		return job.shoe
	}
	return job.slurries[0].top
}

func slurryKey(k int) string { return "cement.slurry." + strconv.Itoa(k+1) }

// slurryName returns what a slurry is called, short enough to say more on a figure's line.
func slurryName(row *model.Slurry, k int) string { return called(row.Name, "Slurry", k, 13) }

// spacerName returns what a spacer is called.
func spacerName(row *model.Spacer, k int) string { return called(row.Name, "Spacer", k, 18) }

// called returns an own name up to its first comma, cut to a number of columns, or the kind of thing with its number.
func called(name, kind string, k, columns int) string {
	name, _, _ = strings.Cut(name, ",")
	if name = strings.TrimSpace(name); name == "" {
		return kind + " " + strconv.Itoa(k+1)
	}
	if letters := []rune(name); len(letters) > columns {
		name = strings.TrimSpace(string(letters[:columns]))
	}
	return name
}
