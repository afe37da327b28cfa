package calc

import (
	"math"
	"slices"

	"borewalk/calc/state"
	"borewalk/model"
	"borewalk/model/quantity"
)

// playSteps is in about how many steps a job is played for a person to look at.
const playSteps = 200

// HoleSize is which open hole a cement job is played in.
type HoleSize uint8

// The open holes that a job is played in.
const (
	AsPlanned HoleSize = iota // enlarged by washout or as the caliper has it, with the excess
	InGauge                   // of the bit's size, or as the caliper has it, without the excess: the same fluids stand higher
)

// Play plays the cement job of a section from before the first fluid to rest. Where there is none to play, why says so and
// mend names the entry to put right.
func Play(plan *model.Plan, section int, hole HoleSize) (job Job, why string, mend model.Path) {
	if section < 0 || section >= len(plan.Sections) {
		return Job{}, "there is no such section", ""
	}
	e := runPages(plan, section, nil)
	if !e.cemented(section) {
		return Job{}, "the section has no cemented string", model.PathOf(section, "completion")
	}
	cement := e.cementOf(section)
	missing := e.playGap(section, cement)
	if !missing.open() {
		job, missing = e.playJob(section, cement, hole)
	}
	return job, missing.why, missing.path
}

// playJob plays a job in fine steps and keeps every moment.
func (e *evaluation) playJob(i int, cement *cementJob, hole HoleSize) (Job, gap) {
	fluids, roles := e.cementFluids(i, cement)
	job := Job{Points: e.jobPoints(i, cement), Dynamic: !e.frictionGap(i, cement).open(), String: e.bodiesOf(cement)}
	limit, _ := e.plan.Limit(model.Rules()[model.RuleCementMargin])
	job.Wanted = limit.SI
	for k, f := range fluids {
		job.Fluids = append(job.Fluids, JobFluid{Name: f.Name, Density: f.Density, Role: roles[k]})
	}
	annulus := cement.planned
	if hole == InGauge {
		annulus = cement.gauge
	}
	well, err := e.cementWell(i, cement, annulus, fluids, job.Dynamic, playSteps)
	if err != nil {
		return Job{}, gap{model.PathOf(i, "hole"), err.Error()}
	}
	r := e.newRecorder(i, cement, &job, well)
	if err := e.play(i, cement, well, playing{job.Dynamic, playSteps, r.take, r.passed}); err != nil {
		return Job{}, gap{model.PathOf(i, "cement"), err.Error()}
	}
	job.markLeast()
	return job, gap{}
}

// newRecorder returns what turns the moments of the cement job of section i into those of a job.
func (e *evaluation) newRecorder(i int, cement *cementJob, job *Job, well *state.Well) *recorder {
	r := &recorder{job: job, list: cement.stages, well: well, marked: map[string]bool{}, firstSlurry: firstSpacer + len(e.plan.Sections[i].Spacers)}
	r.lastShoe, _, _ = e.lastShoe(i)
	r.top, r.ahead = cement.top, cement.pumped()
	for _, s := range cement.stages {
		if s.fluid == displacerFluid {
			r.ahead -= s.volume
		}
	}
	if len(e.pumps) > 0 {
		r.stroke = e.pumps[0].perStroke
	}
	return r
}

// markLeast adds the event of the least margin, and of the first moment at which a limit is passed.
func (j *Job) markLeast() {
	least, over, at := math.Inf(1), -1, -1
	for n := range j.Frames {
		margin := j.margin(&j.Frames[n])
		if margin < 0 && over < 0 {
			over = n
		}
		if margin < least {
			least, at = margin, n
		}
	}
	j.insert("over a limit", over)
	j.insert("least margin", at)
}

// insert puts an event among the others, behind those of its frame.
func (j *Job) insert(name string, frame int) {
	if frame < 0 {
		return
	}
	k := 0
	for k < len(j.Events) && j.Events[k].Frame <= frame {
		k++
	}
	j.Events = slices.Insert(j.Events, k, JobEvent{Name: name, Frame: frame, Rate: j.Frames[frame].Rate})
	for n := frame; n < len(j.Frames); n++ {
		if j.Frames[n].Event >= k || n == frame {
			j.Frames[n].Event++
		}
	}
	for n := frame + 1; n < len(j.Frames) && (k+1 == len(j.Events) || n < j.Events[k+1].Frame); n++ {
		j.Frames[n].Event = k
	}
	j.Frames[frame].Event = k
}

// bodiesOf returns the lengths of pipe of a job, top down.
func (e *evaluation) bodiesOf(job *cementJob) []JobBody {
	var list []JobBody
	for _, b := range job.string {
		list = append(list, JobBody{Top: b.Top, Bottom: b.Bottom, OD: b.OD, ID: b.ID})
	}
	for _, b := range job.inner {
		list = append(list, JobBody{Top: b.Top, Bottom: b.Bottom, OD: b.OD, ID: b.ID, Inner: true})
	}
	return list
}

// recorder turns the moments of a job that is played into its frames and events.
type recorder struct {
	job    *Job
	list   []stage
	well   *state.Well
	stroke float64
	marked map[string]bool // events that happen once and have happened
	stage  int
	rate   float64 // of the pump at the last moment
	before float64 // pumped in earlier stages
	layers []state.Layer
	riding []state.Riding

	firstSlurry int
	lastShoe    float64 // along hole; zero for none
	top         float64 // of the casing
	ahead       float64 // pumped before the displacement
}

// take records one moment.
func (r *recorder) take(m *moment) {
	j := r.job
	first := len(j.Frames) == 0
	if !first && m.stage != r.stage {
		r.before += r.list[r.stage].volume
	}
	f := JobFrame{Time: m.time, Pumped: r.before + m.of, Of: m.of, Fluid: r.list[m.stage].fluid, Level: m.step.Level, Returns: m.step.Rate,
		Pressure: m.step.Pressure, Returned: r.returned()}
	if f.Fluid == displacerFluid {
		f.Behind = f.Pumped - r.ahead
	}
	f.Strokes = quotient(f.Behind, r.stroke)
	rate := r.list[m.stage].rate
	begins := m.of == 0 && (first || m.stage != r.stage)
	switch {
	case m.landed:
		rate, f.Returns, f.Pressure = 0, 0, 0
		if j.Dynamic {
			f.Level = r.well.Level()
		}
		r.event("at rest, bled off", 0)
	case begins:
		r.plugsAway()
		r.event(r.list[m.stage].name, rate)
		rate = r.rate // the gauges still show what went before
	}
	f.Rate, r.rate = rate, r.list[m.stage].rate
	r.stage = m.stage
	r.stand(&f)
	r.landmarks(&f)
	f.Event = len(j.Events) - 1
	j.Frames = append(j.Frames, f)
}

// event adds an event that the frame about to be added shows.
func (r *recorder) event(name string, rate float64) {
	r.job.Events = append(r.job.Events, JobEvent{Name: name, Frame: len(r.job.Frames), Rate: rate})
}

// passed counts the landmarks that the well has passed.
func (r *recorder) passed() (n int) {
	r.riding = r.well.AppendPlugs(r.riding[:0])
	for _, p := range r.riding {
		if p.MD >= r.top {
			n++
		}
		if p.Landed {
			n++
		}
	}
	for fluid := r.firstSlurry; fluid < len(r.job.Fluids); fluid++ {
		if top, ok := r.well.Top(state.Annulus, fluid); ok {
			n++
			if fluid == r.firstSlurry && top < r.lastShoe {
				n++
			}
		}
	}
	return n
}

// once adds an event when it happens, unless it has happened before.
func (r *recorder) once(happened bool, name string, rate float64) {
	if happened && !r.marked[name] {
		r.marked[name] = true
		r.event(name, rate)
	}
}

// plugsAway adds the plugs that have just been let go: that is done with the pumps standing, before what drives them.
func (r *recorder) plugsAway() {
	r.riding = r.well.AppendPlugs(r.riding[:0])
	for _, p := range r.riding {
		r.once(true, p.Name+" away", 0)
	}
}

// landmarks adds what happens once: plugs reach the casing and land, slurries turn at the end of the string, and cement
// enters the last shoe.
func (r *recorder) landmarks(f *JobFrame) {
	for _, p := range f.Plugs {
		r.once(p.MD >= r.top, p.Name+" in csg", f.Rate)
		r.once(p.Landed, p.Name+" lands", f.Rate)
	}
	for _, s := range f.Annulus {
		if s.Fluid >= r.firstSlurry {
			r.once(true, r.job.Fluids[s.Fluid].Name+" at shoe", f.Rate)
			r.once(s.Fluid == r.firstSlurry && r.lastShoe > 0 && s.Top < r.lastShoe, "cement at last shoe", f.Rate)
		}
	}
}

// stand records what stands where.
func (r *recorder) stand(f *JobFrame) {
	read := func(c state.Conduit) (stands []JobStand) {
		r.layers = r.well.AppendLayers(r.layers[:0], c)
		for _, l := range r.layers {
			if l.Bottom > l.Top {
				stands = append(stands, JobStand{Top: l.Top, Bottom: l.Bottom, Fluid: l.Fluid})
			}
		}
		return stands
	}
	f.Inside, f.Annulus, f.Pocket, f.Between = read(state.Inside), read(state.Annulus), read(state.Pocket), read(state.Between)
	r.riding = r.well.AppendPlugs(r.riding[:0])
	for _, p := range r.riding {
		f.Plugs = append(f.Plugs, JobPlug{Name: p.Name, MD: p.MD, Landed: p.Landed})
	}
	f.EMW = make([]float64, len(r.job.Points))
	for k := range r.job.Points {
		f.EMW[k] = emwAt(r.well, r.job.Points[k].MD)
	}
}

// returned returns what has come back in all.
func (r *recorder) returned() (sum float64) {
	for k := range r.job.Fluids {
		sum += r.well.Account(k).Returned
	}
	return sum
}

// margin returns the least margin of a moment below what the rock stands.
func (j *Job) margin(f *JobFrame) float64 {
	least := math.Inf(1)
	for k, at := range j.Points {
		if at.Fracture > 0 {
			least = min(least, at.Fracture-f.EMW[k])
		}
	}
	return least
}

// quotient returns a over b, zero where b is none.
func quotient(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}

// cementCharts returns the chart of the section's cement job in the hole as planned.
func (e *evaluation) cementCharts(i int) []Chart {
	if !e.cemented(i) {
		return nil
	}
	cement := e.cementOf(i)
	if e.playGap(i, cement).open() {
		return nil
	}
	job, missing := e.playJob(i, cement, AsPlanned)
	if missing.open() {
		return nil
	}
	return []Chart{job.Chart()}
}

// Chart returns a job against the volume pumped: pump pressure, margins on the rock, pump rate and returns.
func (j *Job) Chart() Chart {
	if j.Kind != CementJob {
		return j.killChart()
	}
	chart := Chart{Key: "cement.job", Title: "Cement job", Topic: model.TopicCement, Axis: "pumped", Along: quantity.Volume}
	if !j.Dynamic {
		chart.Title = "Cement job, static"
	}
	over := func(name string, kind quantity.Kind, limit bool, value func(*JobFrame) float64) {
		c := ChartCurve{Name: name, Kind: kind, Limit: limit}
		for k := range j.Frames {
			c.Points = append(c.Points, ChartPoint{At: j.Frames[k].Pumped, Value: value(&j.Frames[k])})
		}
		chart.Curves = append(chart.Curves, c)
	}
	over("pump", quantity.Pressure, false, func(f *JobFrame) float64 { return f.Pressure })
	if len(j.Points) > 0 && j.Points[0].Fracture > 0 {
		over("least margin", quantity.EMW, false, j.margin)
		over("margin at last shoe", quantity.EMW, false, func(f *JobFrame) float64 { return j.Points[0].Fracture - f.EMW[0] })
		over("margin wanted", quantity.EMW, true, func(*JobFrame) float64 { return j.Wanted })
	}
	if j.Dynamic {
		over("pump rate", quantity.CementRate, false, func(f *JobFrame) float64 { return f.Rate })
		over("returns", quantity.CementRate, false, func(f *JobFrame) float64 { return f.Returns })
	}
	for _, event := range j.Events {
		chart.Marks = append(chart.Marks, ChartMark{Name: event.Name, At: j.Frames[event.Frame].Pumped})
	}
	return chart
}
