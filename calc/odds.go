package calc

import (
	"math"

	"borewalk/calc/chance"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Odds asks how the outcomes of a section spread when what has a range is drawn from it, and in how many of the trials each limit is
// met. It costs hundreds of runs over the section, and is worked out on demand. The plan is not changed by it.
type Odds struct {
	Section int
	Ranges  []Range // those that are varied

	plan   *model.Plan // a copy that nobody else holds
	ranges [rangeCount]Range
	meant  []float64 // slurry meant for the annulus in the planned hole, which is pumped whatever the hole; nil without a job
	asked  []asked
}

// oddsSeed begins the draws: the same plan gives the same odds.
const oddsSeed = 1927

// oddsTrials are enough for an odds of one half to be known to 3 in 100, 19 times in 20, within a second or two.
const oddsTrials = 1024

// NewOdds prepares the trials of a section. Where there are none to make, why says so and mend names the entry to put right.
func NewOdds(plan *model.Plan, section int) (o *Odds, why string, mend model.Path) {
	if why, mend = NoOdds(plan, section); why != "" {
		return nil, why, mend
	}
	ranges, _ := rangesOf(plan, section)
	o = &Odds{Section: section, plan: plan.Clone(), ranges: ranges}
	for _, r := range ranges {
		if r.Entered {
			o.Ranges = append(o.Ranges, r)
		}
	}
	e := begin(o.plan, nil, findingsPerSection)
	if missing := e.sections[section].missing; missing.open() {
		return nil, missing.why, missing.path
	}
	if e.cemented(section) && !e.cementOf(section).missing.open() {
		for _, q := range e.cementOf(section).slurries {
			o.meant = append(o.meant, q.annulus)
		}
	}
	if o.ask(); len(o.asked) == 0 {
		return nil, "nothing of the section can be worked out: see the findings", model.PathOf(section, "density")
	}
	return o, "", ""
}

// NoOdds says at little cost why a section's ranges give nothing to draw, and which entry to put right; nothing where they do.
func NoOdds(plan *model.Plan, section int) (why string, mend model.Path) {
	if section < 0 || section >= len(plan.Sections) {
		return "there is no such section", ""
	}
	ranges, wrong := rangesOf(plan, section)
	if wrong.open() {
		return wrong.why, wrong.path
	}
	for k := range ranges {
		if ranges[k].Entered {
			return "", ""
		}
	}
	return "no entry has a range: give low and high ends on the control page, Ranges", model.PathOf(section, "ranges.washout_high")
}

// Cautions say what stands behind the odds.
func (o *Odds) Cautions() []string {
	return []string{
		"Each range is drawn by itself, from a triangle between its ends with its peak at the plan's entry. In truth weak rock, losses and a wide hole may come together: then bad ends are likelier than shown.",
		"Pore and fracture pressure move as a whole, fracture not below pore. A planned shoe test still caps what the shoe stands; a measured one stays as it is.",
		"The cement pumped is the plan's, whatever the hole; the hole is as drilled with washout and excess as drawn. Losses lower the top; the pressures of the job are worked out as if none was lost. In gauge: without washout and excess, whatever is drawn.",
		"One section at a time. Not varied: densities, rates, rheology, temperatures, depths, strings, the least mud for stability.",
		"P10: a tenth of the trials gives less, P90: nine tenths do. Odds: the share of trials that meet one limit, with between what it would lie in endless trials, 19 times in 20 (Wilson 1927). The ranges are as good as who gave them.",
	}
}

// Blocks returns how many pieces the trials come in.
func (o *Odds) Blocks() int { return chance.Blocks(oddsTrials) }

// Trials returns how many trials there are in so many blocks.
func (o *Odds) Trials(blocks int) int { return blocks * chance.Block }

// Try makes the trials of blocks, the last not counted, and returns their outcomes for [Odds.Rows]: each over the trials. Blocks tried
// apart are put together outcome by outcome.
func (o *Odds) Try(from, to int) [][]float64 {
	return chance.Run(oddsSeed, from, to, len(o.asked), func() chance.Trial {
		plan := o.plan.Clone()
		return func(d *chance.Draw, outcomes []float64) {
			var drawn [rangeCount]float64
			for k := range drawn {
				drawn[k] = d.Triangle(o.ranges[k].Triangle)
			}
			o.answer(o.workOut(plan, drawn), outcomes)
		}
	})
}

// planned returns what is drawn when everything turns out as it is likely.
func (o *Odds) planned() (drawn [rangeCount]float64) {
	for k := range drawn {
		drawn[k] = o.ranges[k].Likely
	}
	return drawn
}

// workOut enters what is drawn into a plan that is the own one but for what was drawn before, and works out what is asked.
func (o *Odds) workOut(plan *model.Plan, drawn [rangeCount]float64) tried {
	s := &plan.Sections[o.Section]
	for k, to := range [rangeCount]*quantity.Value{ofWashout: &s.Washout, ofExcess: &s.Cement.Excess, ofIntensity: &s.Kick.Intensity} {
		if to != nil && o.ranges[k].Entered {
			*to = quantity.Value{SI: drawn[k], Unit: o.ranges[k].unit}
		}
	}
	o.movePrognosis(plan, drawn[ofPore], drawn[ofFracture])
	e := begin(plan, nil, findingsPerSection)
	e.poured = &poured{section: o.Section, annulus: o.meant}
	if o.ranges[ofLosses].Entered {
		e.poured.lost = drawn[ofLosses]
	}
	return e.oddsPages(o.Section)
}

// movePrognosis lays the prognosis so much off the own plan's. Fracture pressure does not fall below pore pressure.
func (o *Odds) movePrognosis(plan *model.Plan, pore, fracture float64) {
	if !o.ranges[ofPore].Entered {
		pore = 0
	}
	if !o.ranges[ofFracture].Entered {
		fracture = 0
	}
	for k := range plan.Window {
		row, as := &plan.Window[k], &o.plan.Window[k]
		row.Pore.SI = as.Pore.SI + pore
		if row.Fracture.SI = as.Fracture.SI + fracture; as.Fracture.SI >= as.Pore.SI {
			row.Fracture.SI = max(row.Fracture.SI, row.Pore.SI)
		}
	}
}

// tried is a section worked out as far as the odds ask for.
type tried struct {
	*evaluation
	kick borne // of the planned one
}

// oddsPages works out of the pages of a section what the odds ask for.
func (e *evaluation) oddsPages(i int) tried {
	e.marginFigures(i, e.page(i, model.TopicMud))
	e.ecdMargin(i, e.page(i, model.TopicHydraulics), e.circulating(i))
	if len(e.poured.annulus) > 0 {
		w := e.workedJob(i)
		e.leastCementMargin(i, e.page(i, model.TopicCement), &w.result, w.static, first(w.static, w.pumping))
		if !w.cementJob.missing.open() {
			e.judgeTops(i, w.cementJob)
		}
	}
	t := tried{e, e.drilledKick(i)}
	e.judgeTolerance(i, &t.kick)
	return t
}

// drilledKick returns what section i bears of the kick that it is planned for, its bit at TD.
func (e *evaluation) drilledKick(i int) borne {
	if _, _, ok := e.lastShoe(i); !ok || !e.sections[i].rig {
		return borne{missing: gap{model.PathOf(i, "returns"), "there is no stack or no shoe above"}}
	}
	k := e.kickAt(i, e.sections[i].td, e.plan.Sections[i].Kick.Intensity.SI)
	return e.bears(i, &k)
}

// poured is a cement job that is pumped as another hole was to take it.
type poured struct {
	section int
	annulus []float64 // of each slurry, meant for the annulus
	lost    float64   // share of it that does not stay there
}

// settle lays the slurries where they come to stand, when they are poured as meant for another hole.
func (e *evaluation) settle(i int, job *cementJob) {
	if e.poured == nil || e.poured.section != i {
		return
	}
	for k := range job.slurries {
		job.slurries[k].annulus = e.poured.annulus[k]
	}
	tops, _ := e.laid(i, job, job.planned, e.poured.lost)
	for k := range job.slurries {
		job.slurries[k].top = tops[k].top
		if k > 0 {
			job.slurries[k-1].bottom = tops[k].top
		}
	}
}

// none is an outcome that a trial does not have.
func none() float64 { return math.NaN() }
