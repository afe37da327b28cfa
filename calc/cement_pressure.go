package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/state"
	"borewalk/model"
	"borewalk/model/quantity"
)

// briefSteps is in how many steps a job is played for its figures: enough that highs and lows are met to a percent, few
// enough that every keystroke can afford it. Playing on the screen is finer.
const briefSteps = 24

// extreme is a value and the moment at which it was met.
type extreme struct {
	value  float64
	stage  int
	pumped float64 // since the start
}

// jobResult is what a job comes to.
type jobResult struct {
	points  []JobPoint
	highest []float64 // equivalent density at each point through the job
	atRest  []float64 // after it
	least   extreme   // margin below fracture
	where   int       // of the least margin, or nowhere
	pump    extreme   // highest pump pressure
	final   float64   // pump pressure at the end of displacement
	holds   float64   // by the float, when bled off
	level   extreme   // lowest level in the string
	returns extreme   // fastest returns
	weight  float64   // of the casing with what it holds, less what it displaces
}

// nowhere stands for no point: no strength is known.
const nowhere = -1

// runJob plays a job for its figures.
func (e *evaluation) runJob(i int, job *cementJob, dynamic bool) (jobResult, error) {
	r := jobResult{points: e.jobPoints(i, job), where: nowhere, least: extreme{value: math.Inf(1)}}
	r.highest, r.atRest = make([]float64, len(r.points)), make([]float64, len(r.points))
	fluids, _ := e.cementFluids(i, job)
	well, err := e.cementWell(i, job, fluids, dynamic, briefSteps)
	if err != nil {
		return r, err
	}
	pumped, stage := 0.0, 0
	before := 0.0 // pumped in earlier stages
	err = e.play(i, job, well, playing{dynamic: dynamic, steps: briefSteps, visit: func(m *moment) {
		if m.stage != stage {
			before, stage = pumped, m.stage
		}
		pumped = before + m.of
		r.look(m, pumped)
	}})
	if err == nil {
		r.holds, r.weight = well.Differential(), e.weightLeft(i, job, well)
	}
	return r, err
}

// look takes in one moment.
func (r *jobResult) look(m *moment, pumped float64) {
	for k := range r.points {
		density := emwAt(m.well, r.points[k].MD)
		if m.landed {
			r.atRest[k] = density
		}
		r.highest[k] = max(r.highest[k], density)
		if limit := r.points[k].Fracture; limit > 0 && limit-density < r.least.value {
			r.least, r.where = extreme{limit - density, m.stage, pumped}, k
		}
	}
	if m.landed {
		return
	}
	r.final = m.step.Pressure
	for _, x := range [...]struct {
		at    *extreme
		value float64
	}{{&r.pump, m.step.Pressure}, {&r.level, m.step.Level}, {&r.returns, m.step.Rate}} {
		if x.value > x.at.value {
			*x.at = extreme{x.value, m.stage, pumped}
		}
	}
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
			p = e.plan.Well.Seawater.SI * gravity * max(e.path.TVD(md)-e.datum.MSL, 0)
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

// cementPressures adds the pressures of a cement job: equivalent densities against the rock, pump, bump, float, lift.
func (e *evaluation) cementPressures(i int, p *page, job *cementJob) {
	static, pumping := e.playGap(i, job), e.frictionGap(i, job)
	if static.open() {
		e.fault(static)
	}
	r := jobResult{where: nowhere}
	if !static.open() {
		var err error
		if r, err = e.runJob(i, job, !pumping.open()); err != nil {
			static = gap{model.PathOf(i, "hole"), err.Error()}
			e.fault(static)
		}
	}
	pumping = first(static, pumping)
	e.leastCementMargin(i, p, &r, static, pumping)
	e.emwFigures(i, p, &r, pumping)
	e.pumpFiguresOf(i, p, job, &r, static, pumping)
}

// when names a moment of a job.
func (job *cementJob) when(x extreme) string {
	list := job.stages
	if x.stage >= len(list) || x.value == 0 {
		return ""
	}
	return "in " + list[x.stage].name
}

const played = "the job played in steps on the well's columns, Bingham friction (package friction); no gel strength, no eccentricity"

func (e *evaluation) leastCementMargin(i int, p *page, r *jobResult, static, pumping gap) {
	p.group = "Pressures on the rock"
	missing := static
	if r.where < 0 {
		missing = first(missing, e.prognosisGap(i), gap{"prognosis.row", "no fracture prognosis is known for the open hole"})
	}
	var at JobPoint
	if r.where >= 0 {
		at = r.points[r.where]
	}
	f := p.put("cement.margin", "Least margin", quantity.EMW, r.least.value, missing, func(w *Working) {
		w.Formula = "margin = fracture or shoe test - equivalent density, least through the job at the last shoe, every row of the prognosis, shoe and TD"
		w.in("limit", "there, from RKB", quantity.EMW, at.Fracture)
		w.in("EMW", "of the job", quantity.EMW, at.Fracture-r.least.value)
		w.in("depth", "along hole", quantity.Length, at.MD)
		w.in("pumped", "since the start", quantity.Volume, r.least.pumped)
		w.Source = played
		w.Note = "Hole as planned, with the excess: a hole in gauge stands fuller and is pressed harder."
	})
	f.Note = at.Name
	if pumping.open() {
		f.Note += ", static"
	}
	p.also("cement.margin.at", "at depth", quantity.Length, at.MD, missing, func(w *Working) {
		w.Formula = "depth along hole at which the margin is least"
		w.Source = played
	})
	p.also("cement.margin.pumped", "after", quantity.Volume, r.least.pumped, missing, func(w *Working) {
		w.Formula = "volume pumped since the start when the margin is least"
		w.Source = played
	})
	if !missing.open() {
		e.judge(model.RuleCementMargin, i, r.least.value, "Cement job below fracture and shoe test", at.Name, at.MD, slurryPath(i, 0, "top"))
		e.judge(model.RuleBelowBreakdown, i, r.least.value, "Cement job below fracture and shoe test", at.Name, at.MD, slurryPath(i, 0, "top"))
	}
}

// emwFigures adds the equivalent densities of a job at each depth that is followed.
func (e *evaluation) emwFigures(i int, p *page, r *jobResult, pumping gap) {
	row := 0
	for k := range r.points {
		at := &r.points[k]
		key := "cement.emw."
		var name string
		switch at.Name {
		case "at last shoe", "near seabed":
			key, name = key+"last_shoe", "EMW "+at.Name
		case "at shoe":
			key, name = key+"shoe", "EMW at shoe"
		case "at TD":
			key, name = key+"td", "EMW at TD"
		default:
			row++
			key, name = key+"row."+strconv.Itoa(row), "EMW, row "+strconv.Itoa(row)
		}
		p.put(key, name, quantity.EMW, r.atRest[k], gap{}, func(w *Working) {
			w.Formula = "EMW = sum of density × g × vertical height above, at rest after the job / (g × TVD)"
			w.in("depth", "along hole", quantity.Length, at.MD)
			w.in("TVD", "from RKB", quantity.Length, at.TVD)
			w.Source = "hydrostatics; heights as the fluids stand in the planned hole"
			w.Note = "Gelling cement hands on less than its column later; that is not modelled."
		}).Note = "at rest"
		p.also(key+".highest", "pumping", quantity.EMW, r.highest[k], pumping, func(w *Working) {
			w.Formula = "highest equivalent density through the job, friction above counted"
			w.in("depth", "along hole", quantity.Length, at.MD)
			w.Source = played
		})
		p.also(key+".at", "at depth", quantity.Length, at.MD, gap{}, func(w *Working) {
			w.Formula = "depth along hole"
			w.Source = "as planned"
		})
		p.also(key+".limit", "limit", quantity.EMW, at.Fracture, e.prognosisGap(i), func(w *Working) {
			w.Formula = "limit = fracture prognosis, at the last shoe the planned test where that is less"
			w.Source = "as entered, from RKB"
		})
	}
}

// linesOver is what lines are tested to over the highest pressure of a job, in Pa: 1000 psi.
const linesOver = 1000 * 4.4482216152605 / (0.0254 * 0.0254)

// pumpFiguresOf adds what the gauges show: pump, bump, float, level, returns, and what is left of the string's weight.
func (e *evaluation) pumpFiguresOf(i int, p *page, job *cementJob, r *jobResult, static, pumping gap) {
	p.group = "At the pump and the string"
	c := &e.plan.Sections[i].Cement
	simple := func(key, name string, kind quantity.Kind, x extreme, formula, note string) {
		p.put(key, name, kind, x.value, pumping, func(w *Working) {
			w.Formula = formula
			w.in("pumped", "since the start", quantity.Volume, x.pumped)
			w.Source, w.Note = played, note
		}).Note = job.when(x)
	}
	simple("cement.pump.most", "Highest pump", quantity.Pressure, r.pump, "p = columns outside - columns inside + friction of both ways, highest through the job",
		"Surface lines, plugs bursting and tool joints left out.")
	p.put("cement.pump.final", "Final, pumping", quantity.Pressure, r.final, pumping, func(w *Working) {
		w.Formula = "p = columns outside - columns inside + friction, just before the end"
		w.Source = played
	})
	if job.inner == nil {
		p.put("cement.pump.bump", "Bump to", quantity.Pressure, r.final+c.BumpOver.SI, pumping, func(w *Working) {
			w.Formula = "p = final pumping pressure + bump over it"
			w.in("final", "pumping", quantity.Pressure, r.final)
			w.in("over", "of the plan", quantity.Pressure, c.BumpOver.SI)
			w.Source = "common practice"
			w.Note = "Within what plug, collar, head and casing stand, by their makers."
		})
	}
	p.put("cement.float", "Float holds", quantity.Pressure, r.holds, static, func(w *Working) {
		w.Formula = "p = columns outside - columns inside at the end of the string, bled off"
		w.Source = "hydrostatics"
		w.Note = "Below zero the inside is the heavier side and nothing flows back. It loads the casing from outside until the cement sets."
	})
	most := r.pump.value
	if job.inner == nil {
		most = max(most, r.final+c.BumpOver.SI)
	}
	p.put("cement.pump.test", "Test lines to", quantity.Pressure, most+linesOver, pumping, func(w *Working) {
		w.Formula = "p = highest pressure of the job, bump counted, + 1000 psi"
		w.in("highest", "pump or bump", quantity.Pressure, most)
		w.in("over", "1000 psi", quantity.Pressure, linesOver)
		w.Source = "drillingforgas.com, cementing standards: 1000 psi above the highest pressure expected"
		w.Note = "Within the rating of the weakest of lines, head and unit; the operator's procedure goes before this."
	})
	if rig := &e.plan.Rig; !pumping.open() && rig.UnitPressure.IsSet() {
		e.judge(model.RuleUnitPressure, i, rig.UnitPressure.SI-most, "Rating of the cement unit over the job's highest pressure", "", 0, "rig.unit_pressure")
	}
	simple("cement.level", "Lowest level", quantity.Length, r.level, "depth of the fluid in the string where it runs ahead of the pump; none is full",
		"Free fall: fluid inside heavier than the balance allows, no pump pressure meanwhile.")
	simple("cement.returns", "Fastest returns", quantity.CementRate, r.returns, "flow at the shoe that balances columns and friction while the string is not full, else the pump's rate",
		"Returns run ahead of the pump while the level falls, and behind it while it rises: neither is a gain or a loss.")
	p.put("cement.weight", "Weight left", quantity.Force, r.weight, static, func(w *Working) {
		w.Formula = "W = sum over parts of m × g × fall + rise of pressure inside × bore area - rise of pressure outside × OD area, at rest"
		for k := range e.strings[i].parts {
			part := &e.strings[i].parts[k]
			w.in("m", "mass per length", quantity.LinearMass, part.pipe.LinearMass)
			w.in("fall", "vertical length", quantity.Length, e.path.TVD(part.bottom)-e.path.TVD(part.top))
		}
		w.Source = "pressure-area method; closed at the shoe"
		w.Note = "The casing alone. Friction in the annulus lifts on top while pumping."
	})
	if !static.open() {
		e.judge(model.RuleLift, i, r.weight, "Casing and contents heavier than what they displace", "", 0, slurryPath(i, len(job.slurries)-1, "density"))
	}
}
