package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/state"
	"borewalk/model"
)

// briefSteps is in how many steps a job is played for its figures: enough that highs and lows are met to a percent, few
// enough that every keystroke can afford it. Where the margin is near its limit it is played again in closeSteps. Playing
// on the screen is finer.
const (
	briefSteps = 18
	closeSteps = 150
	narrow     = 4 // kg/m3 from the limit
)

// extreme is a value and the moment at which it was met.
type extreme struct {
	value  float64
	stage  int
	pumped float64 // since the start
	where  int     // of the points; nowhere for none
}

// nowhere stands for no point: no strength is known.
const nowhere = -1

// jobResult is what a job comes to in the hole as planned, and how it ends in a hole in gauge.
type jobResult struct {
	points  []JobPoint
	highest []float64 // equivalent density at each point through the job
	atRest  []float64 // after it
	least   extreme   // margin below fracture
	inflow  extreme   // least margin over pore pressure
	pump    extreme   // highest pump pressure
	final   float64   // pump pressure at the end of displacement
	holds   float64   // by the float, when bled off
	level   extreme   // lowest level in the string
	returns extreme   // fastest returns, from the first slurry on
	weight  float64   // of the casing with what it holds, less what it displaces
	beyond  float64   // volume that ran out of a string without a plug after the stop
	tag     float64   // top of the last slurry inside, where no plug tells it; zero else
	gauge   gaugeEnd
}

// gaugeEnd is the end of a job in a hole in gauge, where the cement stands higher.
type gaugeEnd struct {
	highest []float64 // at each point, at the end of a stage at its rate
	atRest  []float64
	least   extreme
	pump    float64 // highest pump pressure at the end of a stage
	final   float64 // at the end of displacement
	holds   float64 // by the float, when bled off
	weight  float64
}

// runJob plays a job for its figures.
func (e *evaluation) runJob(i int, job *cementJob, dynamic bool) (r jobResult, err error) {
	limit, _ := e.plan.Limit(model.Rules()[model.RuleCementMargin])
	if r, err = e.runIn(i, job, dynamic, briefSteps); err != nil {
		return r, err
	}
	if dynamic && math.Abs(r.least.value-limit.SI) < narrow {
		close, err := e.runIn(i, job, dynamic, closeSteps)
		if err != nil {
			return r, err
		}
		r.least, r.inflow = close.least, close.inflow
	}
	r.gauge, err = e.endInGauge(i, job, r.points, dynamic)
	return r, err
}

// runIn plays a job in the hole as planned, in about so many steps.
func (e *evaluation) runIn(i int, job *cementJob, dynamic bool, steps int) (jobResult, error) {
	none := extreme{value: math.Inf(1), where: nowhere}
	r := jobResult{points: e.jobPoints(i, job), least: none, inflow: none}
	r.highest, r.atRest = make([]float64, len(r.points)), make([]float64, len(r.points))
	fluids, _ := e.cementFluids(i, job)
	well, err := e.cementWell(i, job, job.planned, fluids, dynamic, steps)
	if err != nil {
		return r, err
	}
	err = e.play(i, job, well, playing{dynamic: dynamic, steps: steps, visit: func(m *moment) { r.look(m, job) }})
	if err != nil {
		return r, err
	}
	r.holds, r.weight = well.Differential(), e.weightLeft(i, job, well)
	if job.inner != nil {
		r.beyond = well.Empty()
		last := len(fluids) - 1
		r.tag = job.shoe - well.Volume(state.Inside, last)/boreAt(job.string, job.shoe)
	}
	return r, nil
}

// look takes in one moment.
func (r *jobResult) look(m *moment, job *cementJob) {
	now := extreme{stage: m.stage, pumped: job.before(m.stage) + m.of}
	for k := range r.points {
		at := &r.points[k]
		density := emwAt(m.well, at.MD)
		if m.landed {
			r.atRest[k] = density
		}
		r.highest[k] = max(r.highest[k], density)
		r.least.lower(at.Fracture > 0, at.Fracture-density, k, now)
		r.inflow.lower(at.Pore > 0, density-at.Pore, k, now)
	}
	if m.landed {
		return
	}
	r.final = m.step.Pressure
	r.pump.higher(m.step.Pressure, now)
	r.level.higher(m.step.Level, now)
	if m.stage >= job.spacers {
		r.returns.higher(m.step.Rate, now)
	}
}

// lower takes a value that is known and less.
func (x *extreme) lower(known bool, value float64, where int, now extreme) {
	if known && value < x.value {
		*x = extreme{value, now.stage, now.pumped, where}
	}
}

// higher takes a value that is more.
func (x *extreme) higher(value float64, now extreme) {
	if value > x.value {
		*x = extreme{value, now.stage, now.pumped, nowhere}
	}
}

// before returns what is pumped before a stage.
func (job *cementJob) before(stage int) (sum float64) {
	for k := range stage {
		sum += job.stages[k].volume
	}
	return sum
}

// endInGauge lays the fluids of a job into a hole in gauge and reads the ends of the stages at their rates, and the well at
// rest. How the fluids run on the way is left to the hole as planned: it is at the end that the fuller annulus presses.
func (e *evaluation) endInGauge(i int, job *cementJob, points []JobPoint, dynamic bool) (gaugeEnd, error) {
	g := gaugeEnd{highest: make([]float64, len(points)), atRest: make([]float64, len(points)), least: extreme{value: math.Inf(1), where: nowhere}}
	fluids, _ := e.cementFluids(i, job)
	well, err := e.cementWell(i, job, job.gauge, fluids, dynamic, briefSteps)
	if err != nil {
		return g, err
	}
	read := func(stage int, into []float64) {
		now := extreme{stage: stage, pumped: job.before(stage + 1)}
		for k := range points {
			density := emwAt(well, points[k].MD)
			into[k] = max(into[k], density)
			g.least.lower(points[k].Fracture > 0, points[k].Fracture-density, k, now)
		}
	}
	for k, s := range job.stages {
		if s.fluid < 0 {
			continue
		}
		if _, err := well.Pump(s.volume/e.compression(i, job, s.fluid), s.fluid); err != nil {
			return g, err
		}
		if dynamic {
			if err := well.SetFlow(s.rate); err != nil {
				return g, err
			}
		}
		read(k, g.highest)
		g.final = well.PumpPressure()
		g.pump = max(g.pump, g.final)
	}
	if err := well.SetFlow(0); err != nil {
		return g, err
	}
	read(len(job.stages)-1, g.atRest)
	g.holds, g.weight = well.Differential(), e.weightLeft(i, job, well)
	return g, nil
}

// compression returns the volume pumped at the gauge for each volume that goes in, behind the cement.
func (e *evaluation) compression(i int, job *cementJob, fluid int) float64 {
	if job.inner != nil || fluid != displacerFluid {
		return 1
	}
	return 1 + e.plan.Sections[i].Cement.Compressibility.SI
}

// weightLeft returns the weight in N of the casing and of what it holds, less that of what it displaces, at rest: what pulls
// at its top. Below zero it would rise.
func (e *evaluation) weightLeft(i int, job *cementJob, well *state.Well) (sum float64) {
	inside := func(md float64) float64 {
		conduit := state.Inside
		if job.inner != nil && md < job.end {
			conduit = state.Between
		}
		p, _ := well.Pressure(conduit, md)
		return p
	}
	outside := func(md float64) float64 {
		p, ok := well.Pressure(state.Annulus, md)
		if !ok { // above the outlet: in the sea
			p = e.seawater() * gravity * max(e.path.TVD(md)-e.datum.MSL, 0)
		}
		return p
	}
	for k := range e.strings[i].parts {
		part := &e.strings[i].parts[k]
		fall := e.path.TVD(part.bottom) - e.path.TVD(part.top)
		sum += part.pipe.LinearMass*gravity*fall +
			(inside(part.bottom)-inside(part.top))*bore.Area(part.pipe.ID) - (outside(part.bottom)-outside(part.top))*bore.Area(part.pipe.OD)
	}
	return sum
}
