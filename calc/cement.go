package calc

import (
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/slurry"
	"borewalk/model"
)

// cementJob is how the string of a section is cemented: depths along hole in m, volumes in m3.
type cementJob struct {
	missing   gap
	string    []bore.Body     // running pipe and casing, from the rotary to the shoe
	inner     []bore.Body     // inner string, if the job has one
	outlet    float64         // where returns leave the annulus
	shoe, top float64         // of the casing
	end       float64         // of the way down: the collar on which the plug lands, or the end of the inner string
	hole      []bore.Interval // as it is, washed out or measured
	planned   []bore.Interval // with the excess
	gauge     []bore.Interval
	slurries  []slurryJob
	spacers   int     // stages before the first slurry's
	stages    []stage // in the order of pumping; rates and volumes that are blank are none
}

// slurryJob is one slurry of a job.
type slurryJob struct {
	row         *model.Slurry
	top, bottom float64 // as planned, in the annulus
	annulus     float64 // volume there, with the excess
	inside      float64 // volume left in the string
	slack       float64 // kept back in the inner string
	sheet       slurry.Slurry
	recipe      slurry.Recipe // empty when the laboratory gives the slurry
	unmixed     gap           // what is missing for dry cement and mix fluid
	batch       slurry.Batch
}

func (s *slurryJob) volume() float64 { return s.annulus + s.inside + s.slack }

// cemented reports whether section i has a string that is cemented.
func (e *evaluation) cemented(i int) bool {
	return e.strings[i].present && e.plan.Sections[i].Method == model.Cemented
}

// byInnerString reports whether section i is cemented through an inner string.
func (e *evaluation) byInnerString(i int) bool {
	return e.plan.Sections[i].Cement.Placement == model.ByInnerString
}

// workedJob is a section's cement job with what it comes to.
type workedJob struct {
	*cementJob
	result          jobResult
	static, pumping gap // what is missing for its pressures at rest, and while it is pumped
}

// workedJob returns the cement job of a section with what it comes to, worked out once.
func (e *evaluation) workedJob(i int) *workedJob {
	if e.worked == nil {
		e.worked = make([]*workedJob, len(e.plan.Sections))
	}
	if e.worked[i] == nil {
		w := e.workJob(i)
		e.worked[i] = &w
	}
	return e.worked[i]
}

// workJob works out the cement job of a section.
func (e *evaluation) workJob(i int) workedJob {
	w := workedJob{cementJob: e.cementOf(i)}
	w.static, w.pumping = e.playGap(i, w.cementJob), e.frictionGap(i, w.cementJob)
	if w.static.open() {
		return w
	}
	var err error
	if w.result, err = e.runJob(i, w.cementJob, !w.pumping.open()); err != nil {
		w.static = gap{model.PathOf(i, "hole"), err.Error()}
		w.pumping, w.result = w.static, jobResult{}
	}
	return w
}

// cementPage adds the cement job of a section.
func (e *evaluation) cementPage(i int) {
	if !e.cemented(i) {
		return
	}
	w := e.workedJob(i)
	job := w.cementJob
	if missing := first(job.missing, w.static); missing.open() {
		e.fault(missing)
	}
	if !job.missing.open() {
		e.judgeRunningPipe(i, job)
	}
	p := e.page(i, model.TopicCement)
	pumping := first(w.static, w.pumping)
	if pumping.open() && !w.static.open() {
		e.note(i, Caution, gap{pumping.path, "the cement job is compared at rest only, without friction: " + pumping.why})
	}
	// What decides stands first: a small screen shows no more.
	e.leastCementMargin(i, p, &w.result, w.static, pumping)
	e.volumeFiguresOf(i, p, job)
	e.displacementFiguresOf(i, p, job)
	e.topFigures(i, p, job)
	e.slurryIntervals(i, p, job)
	e.materialFigures(p, job)
	e.cementTimes(i, p, job)
	e.cementTemperatures(i, p, job)
	e.emwFigures(i, p, &w.result, pumping)
	e.pumpFiguresOf(i, p, job, &w.result, w.static, pumping)
	e.drillOutFigures(i, p, job, &w.result)
	e.judgeCement(i, job)
}

// cementOf returns the geometry and the volumes of a section's cement job, worked out once.
func (e *evaluation) cementOf(i int) *cementJob {
	if e.cements == nil {
		e.cements = make([]*cementJob, len(e.plan.Sections))
	}
	if e.cements[i] == nil {
		job := e.readCement(i)
		e.cements[i] = &job
	}
	return e.cements[i]
}

// readCement works out the geometry and the volumes of a cement job.
func (e *evaluation) readCement(i int) cementJob {
	s, c := &e.plan.Sections[i], &e.strings[i]
	job := cementJob{missing: first(c.missing, e.boreGap(i))}
	if job.missing.open() {
		return job
	}
	running, _, missing := e.landingPipe(i)
	if job.missing = missing; missing.open() {
		return job
	}
	job.shoe, job.top = c.shoe, c.top
	job.string = append([]bore.Body{{Top: 0, Bottom: c.top, OD: running.OD, ID: running.ID, Label: "running pipe"}}, e.casingBodies(c)...)
	job.end = c.shoe - s.ShoeTrack.SI - aboveFloat(&s.Tally)
	if e.byInnerString(i) {
		if job.missing = lacks(s.Cement.InnerAboveShoe, i, "inner_above_shoe", "end of the inner string above the shoe"); job.missing.open() {
			return job
		}
		job.end = c.shoe - s.Cement.InnerAboveShoe.SI
		job.inner = []bore.Body{{Top: c.top, Bottom: job.end, OD: running.OD, ID: running.ID, Label: "inner string"}}
	}
	if job.end <= c.top {
		job.missing = gap{model.PathOf(i, "shoe_track"), "the shoe track is longer than the string"}
		if e.byInnerString(i) {
			job.missing = gap{model.PathOf(i, "inner_above_shoe"), "the inner string ends above the top of the casing"}
		}
		return job
	}
	if !e.sections[i].rig {
		job.outlet = e.returnDepth(i)
	}
	job.hole = bore.Intervals(e.bores[i], job.string, job.outlet, c.shoe)
	if err := bore.Fit(job.hole); err != nil {
		job.missing = gap{model.PathOf(i, "hole"), "the string does not fit: " + err.Error()}
		return job
	}
	job.planned = enlarged(job.hole, s.Cement.Excess.SI)
	job.gauge = bore.Intervals(e.inGauge(i), job.string, job.outlet, c.shoe)
	if job.missing = e.readSlurries(i, &job); !job.missing.open() {
		job.spacers, job.stages = len(s.Spacers), e.stages(i, &job)
	}
	return job
}

// aboveFloat returns the length in m from the float collar up to where the plugs land: none where they land on the float
// collar itself.
func aboveFloat(t *model.Tally) float64 {
	return t.AboveJoints.SI*or(t.AboveLength.SI, t.JointLength.SI) + t.LandingCollar.SI
}

// judgeRunningPipe asks for the landing string's pipe where the drill string that stands in for it changes size above the
// casing's top: displacement is counted by it.
func (e *evaluation) judgeRunningPipe(i int, job *cementJob) {
	if e.plan.Sections[i].Landing.OD.IsSet() || e.drills[i].missing.open() {
		return
	}
	for k, part := range e.drills[i].parts[1:] {
		if part.row.Item == model.ItemPipe && part.top < job.top && part.pipe.ID != e.drills[i].parts[k].pipe.ID {
			e.note(i, Caution, gap{model.PathOf(i, "landing.od"),
				"displacement counts the highest drill pipe all the way to the casing's top, but the drill string changes size above it: enter the landing string's pipe"})
			return
		}
	}
}

// enlarged returns an annulus with the open hole enlarged so that it holds an excess more.
func enlarged(annulus []bore.Interval, excess float64) []bore.Interval {
	annulus = slices.Clone(annulus)
	for k := range annulus {
		if a := &annulus[k]; a.OuterLabel == openHoleLabel {
			a.Outer = bore.EnlargedAround(a.Outer, a.Inner, excess)
		}
	}
	return annulus
}

// inGauge returns the bores of section i with its open hole in gauge.
func (e *evaluation) inGauge(i int) bore.Profile {
	profile := slices.Clone(e.bores[i])
	for k := range profile {
		if span := &profile[k]; span.Label == openHoleLabel {
			span.Diameter = e.drilled(i, (span.Top+span.Bottom)/2, false)
		}
	}
	return profile
}

// readSlurries lays the slurries between their planned tops.
func (e *evaluation) readSlurries(i int, job *cementJob) gap {
	s := &e.plan.Sections[i]
	if len(s.Slurries) == 0 {
		return gap{model.PathOf(i, "slurry"), "the string is cemented but there is no slurry: add one on the cement page"}
	}
	job.slurries = make([]slurryJob, len(s.Slurries))
	for k := range s.Slurries {
		job.slurries[k].row = &s.Slurries[k]
	}
	for k := range s.Slurries {
		q := &job.slurries[k]
		row := q.row
		q.top, q.bottom = max(row.Top.SI, job.outlet), job.shoe
		if k+1 < len(s.Slurries) {
			if missing := needs(s.Slurries[k+1].Top, slurryPath(i, k+1, "top"), "top of a slurry"); missing.open() {
				return missing
			}
			q.bottom = s.Slurries[k+1].Top.SI
		}
		switch {
		case !row.Top.IsSet():
			return gap{slurryPath(i, k, "top"), "top of a slurry is blank"}
		case q.bottom <= q.top:
			return gap{slurryPath(i, k, "top"), "the slurry's top is not above the next one's, or above the shoe"}
		}
		q.annulus = bore.Between(job.planned, q.top, q.bottom)
		if k == len(s.Slurries)-1 {
			q.inside = bore.Volume(bore.Inside(job.string, job.end, job.shoe))
			if job.inner != nil {
				q.slack = s.Cement.StopShort.SI
			}
		}
		e.readSheet(i, k, q)
	}
	e.settle(i, job)
	return gap{}
}

// readSheet works out what a slurry is mixed of.
func (e *evaluation) readSheet(i, k int, q *slurryJob) {
	row, c := q.row, &e.plan.Sections[i].Cement
	var err error
	if row.GivenBy == model.ByRecipe {
		q.recipe = recipeOf(row)
		if row.Density.IsSet() {
			q.recipe, err = q.recipe.WithWaterFor(row.Density.SI)
		}
		if err == nil {
			q.sheet, err = q.recipe.Slurry()
		}
	} else {
		q.unmixed = first(needs(row.Density, slurryPath(i, k, "density"), "slurry density"), needs(row.Yield, slurryPath(i, k, "yield"), "slurry yield"),
			needs(row.MixFluid, slurryPath(i, k, "mix_fluid"), "mix fluid of a slurry"))
		q.sheet = slurry.Slurry{Density: row.Density.SI, Yield: row.Yield.SI, MixFluid: row.MixFluid.SI, FluidDensity: waterOf(row), Dry: 1}
	}
	if err == nil && !q.unmixed.open() {
		q.batch, err = q.sheet.Batch(slurry.Job{Volume: q.volume(), Reserve: c.Reserve.SI, Tub: c.Tub.SI, Tank: c.Tank.SI})
	}
	if err != nil {
		q.unmixed = gap{slurryPath(i, k, "density"), err.Error()}
	}
}

// waterOf returns the density of a slurry's mix water.
func waterOf(row *model.Slurry) float64 {
	return usual(row.MixDensity, slurry.FreshWater)
}

// recipeOf returns the recipe of a slurry as entered.
func recipeOf(row *model.Slurry) slurry.Recipe {
	class := row.Class
	if class == "" {
		class = "G"
	}
	neat, _ := slurry.NeatOf(class)
	r := neat.Recipe()
	if row.Water.IsSet() {
		r.Water = row.Water.SI
	}
	r.WaterDensity = waterOf(row)
	for _, powder := range []slurry.Powder{
		{Label: "bentonite", Share: row.Bentonite.SI, Density: slurry.BentoniteDensity, Water: slurry.BentoniteWater},
		{Label: "silica flour", Share: row.Silica.SI, Density: slurry.SilicaDensity, Water: slurry.SilicaWater},
		{Label: "barite", Share: row.Barite.SI, Density: slurry.BariteDensity},
		{Label: "hematite", Share: row.Hematite.SI, Density: slurry.HematiteDensity, Water: slurry.HematiteWater},
	} {
		if powder.Share > 0 {
			r.Powders = append(r.Powders, powder)
		}
	}
	if row.Liquid.SI > 0 {
		density := row.LiquidDensity.SI
		if !row.LiquidDensity.IsSet() {
			density = slurry.FreshWater
		}
		r.Liquids = []slurry.Liquid{{Label: "liquids", Dose: row.Liquid.SI, Density: density}}
	}
	return r
}

// slurryPath returns the path of an entry of a slurry, counted from 0.
func slurryPath(i, k int, key string) model.Path {
	return model.PathOf(i, "slurry["+strconv.Itoa(k+1)+"]."+key)
}

// spacerPath returns the path of an entry of a spacer, counted from 0.
func spacerPath(i, k int, key string) model.Path {
	return model.PathOf(i, "spacer["+strconv.Itoa(k+1)+"]."+key)
}
