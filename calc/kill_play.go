package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/kill"
	"borewalk/calc/state"
	"borewalk/model"
	"borewalk/model/quantity"
)

// killPlaySteps is in how many steps a kill is played for a person to look at.
const killPlaySteps = 200

// Fluids of a kill as a Job names them: the gas in the well is one of them, however it is cut into parcels.
const (
	oldMud = iota
	killMud
	kickGas
	riserMud
)

// PlayKill plays how the kick on a section's kill sheet is circulated out, from the shut-in well to kill mud all round, by the plan's
// method or the other. Where there is nothing to play, why says so and mend names the entry to put right.
func PlayKill(plan *model.Plan, section int, other bool) (job Job, why string, mend model.Path) {
	if section < 0 || section >= len(plan.Sections) {
		return Job{}, "there is no such section", ""
	}
	e := runPages(plan, section, nil)
	if !e.sections[section].rig {
		return Job{}, "without riser and BOP a kick is not circulated out: a shallow flow is never shut in", model.PathOf(section, "returns")
	}
	job, missing := e.playKill(section, other)
	return job, missing.why, missing.path
}

// playKill plays a kill in fine steps and keeps every moment.
func (e *evaluation) playKill(i int, other bool) (Job, gap) {
	k := e.killOf(i)
	one := (e.plan.Sections[i].Kill.Method == model.WaitAndWeight) != other
	plan, missing := e.killJob(i, k, one)
	if missing.open() {
		return Job{}, missing
	}
	r := killRecorder{e: e, kill: k, one: one, inside: plan.Layout.TVD, places: e.killPlaces(i)}
	r.job = Job{Kind: KillJob, Dynamic: true, String: killBodies(plan.Layout.String), Points: e.killPoints(i, r.places),
		Fluids: []JobFluid{
			oldMud:   {Name: "mud", Density: k.in.mud, Role: MudRole},
			killMud:  {Name: "kill mud", Density: k.mud, Role: DisplacerRole},
			kickGas:  {Name: "gas", Role: GasRole},
			riserMud: {Name: "mud in the riser", Density: k.in.mud, Role: MudRole},
		}}
	for _, at := range r.job.Points {
		plan.Places = append(plan.Places, at.MD)
	}
	plan.Steps = killPlaySteps
	summary, err := kill.Run(plan, r.take)
	if err != nil {
		return Job{}, gap{model.PathOf(i, "kick.volume"), err.Error()}
	}
	r.peaks(&summary)
	return r.job, gap{}
}

// killBodies returns the string as a job shows it.
func killBodies(bodies []bore.Body) (list []JobBody) {
	for _, b := range bodies {
		list = append(list, JobBody{Top: b.Top, Bottom: b.Bottom, OD: b.OD, ID: b.ID})
	}
	return list
}

// killPoints returns where the equivalent density is followed: the last shoe, the weakest row, and TD.
func (e *evaluation) killPoints(i int, places []kickPlace) (points []JobPoint) {
	for n, at := range places {
		p := JobPoint{Name: "at last shoe", Key: "shoe", MD: at.MD, TVD: at.tvd, Fracture: at.emw, Pore: e.poreAlong(i, at.MD)}
		if n > 0 {
			p.Name, p.Key = "at the weakest row", "weak"
		}
		points = append(points, p)
	}
	td := e.killOf(i).in.bit
	return append(points, JobPoint{Name: "at TD", Key: "td", MD: td, TVD: e.path.TVD(td), Fracture: e.strength(i, td), Pore: e.killOf(i).in.formation})
}

// killRecorder turns the moments of a kill into the frames and events of a job.
type killRecorder struct {
	e      *evaluation
	kill   *killing
	one    bool // by one circulation
	inside func(md float64) float64
	places []kickPlace
	job    Job
	stage  kill.Stage
	layers []state.Layer
	before float64 // pumped in the circulations before
}

// take records one moment.
func (r *killRecorder) take(m *kill.Moment) {
	j := &r.job
	first := len(j.Frames) == 0
	if first || m.Stage != r.stage {
		r.begin(m)
	}
	if name := r.marked(m); name != "" {
		j.Events = append(j.Events, JobEvent{Name: name, Frame: len(j.Frames), Rate: r.rate(m)})
	}
	f := JobFrame{Event: len(j.Events) - 1, Time: m.Time, Pumped: m.Pumped, Of: m.Pumped - r.before, Behind: m.Pumped - r.before, Fluid: r.pumping(m), Rate: r.rate(m), Returns: r.rate(m),
		Choke: m.Choke, Gain: m.Gain, Gas: m.GasVolume, EMW: make([]float64, len(j.Points))}
	f.Strokes = quotient(f.Behind, r.kill.stroke)
	f.Pressure = r.standpipe(m)
	for n := range j.Points {
		f.EMW[n], _ = column.EMW(m.At[n], j.Points[n].TVD)
	}
	f.Inside, f.Annulus = r.stands(m, state.Inside), r.stands(m, state.Annulus)
	f.Riser = []JobStand{{Top: 0, Bottom: r.e.datum.BOPTop, Fluid: riserMud}}
	j.Frames = append(j.Frames, f)
}

// begin adds the event of a stage.
func (r *killRecorder) begin(m *kill.Moment) {
	r.stage = m.Stage
	if n := len(r.job.Frames); n > 0 {
		r.before = r.job.Frames[n-1].Pumped // the first moment of a circulation has pumped already
	}
	name := m.Stage.String()
	if r.one && m.Stage == kill.First {
		name = "circulation"
	}
	r.job.Events = append(r.job.Events, JobEvent{Name: name, Frame: len(r.job.Frames), Rate: r.rate(m)})
}

// marked names what has come where at a moment; it is empty for one that does not stand out.
func (r *killRecorder) marked(m *kill.Moment) string {
	switch {
	case m.Mark == kill.NoMark:
		return ""
	case m.Mark == kill.GasAtPlace:
		return "gas " + r.job.Points[m.Place].Name
	}
	return m.Mark.String()
}

// rate returns what is pumped at a moment.
func (r *killRecorder) rate(m *kill.Moment) float64 {
	if m.Stage == kill.ShutIn || m.Stage == kill.Done {
		return 0
	}
	return r.kill.killFlow
}

// pumping returns the fluid that is pumped at a moment, -1 while the pumps stand.
func (r *killRecorder) pumping(m *kill.Moment) int {
	switch {
	case r.rate(m) == 0:
		return -1
	case m.Well.Volume(state.Inside, kill.KillMud) > 0 || m.Stage == kill.Second:
		return killMud
	}
	return oldMud
}

// standpipe returns what the gauge on the standpipe shows: the balance of the columns, and the slow pressure as recorded, spread
// over the string as the kill sheet has it.
func (r *killRecorder) standpipe(m *kill.Moment) float64 {
	head, filled := 0.0, 0.0
	r.layers = m.Well.AppendLayers(r.layers[:0], state.Inside)
	for _, l := range r.layers {
		if l.Fluid < 0 {
			continue
		}
		head += m.Well.Fluid(l.Fluid).Density * gravity * (r.inside(l.Bottom) - r.inside(l.Top))
		if l.Fluid == kill.KillMud {
			filled += l.Bottom - l.Top
		}
	}
	if r.rate(m) == 0 {
		return max(m.Foot-head, 0)
	}
	return max(m.Foot-head-r.kill.annular, 0) + r.kill.slow + (r.kill.rubs-r.kill.slow)*filled/m.Well.End()
}

// stands returns what stands where in a conduit; parcels of gas that touch are one.
func (r *killRecorder) stands(m *kill.Moment, c state.Conduit) (stands []JobStand) {
	r.layers = m.Well.AppendLayers(r.layers[:0], c)
	for _, l := range r.layers {
		fluid := min(l.Fluid, kickGas)
		if l.Bottom <= l.Top {
			continue
		}
		if n := len(stands); n > 0 && stands[n-1].Fluid == fluid {
			stands[n-1].Bottom = l.Bottom
			continue
		}
		stands = append(stands, JobStand{Top: l.Top, Bottom: l.Bottom, Fluid: fluid})
	}
	return stands
}

// peaks adds the events of what is highest.
func (r *killRecorder) peaks(s *kill.Summary) {
	at := func(name string, pumped float64) {
		for n := range r.job.Frames {
			if last := len(r.job.Frames) - 1; n == 0 && r.job.Frames[n].Pumped >= pumped || n == last {
				return // what stands at the start and at the end is no peak on the way
			}
			if r.job.Frames[n].Pumped >= pumped {
				r.job.insert(name, n)
				return
			}
		}
	}
	at("choke highest", s.Choke.Pumped)
	if len(s.At) > 1 { // the last is TD, where it is held
		at("shoe highest", s.At[0].Pumped)
	}
}

// killChart returns a kill against the volume pumped: choke, standpipe and what is left at shoe and rock, and the gas.
func (j *Job) killChart() Chart {
	chart := Chart{Key: "control.kill", Title: "Kick circulated out", Topic: model.TopicControl, Axis: "pumped", Along: quantity.Volume}
	over := func(name string, kind quantity.Kind, limit bool, value func(*JobFrame) float64) {
		c := ChartCurve{Name: name, Kind: kind, Limit: limit}
		for k := range j.Frames {
			c.Points = append(c.Points, ChartPoint{At: j.Frames[k].Pumped, Value: value(&j.Frames[k])})
		}
		chart.Curves = append(chart.Curves, c)
	}
	over("choke", quantity.Pressure, false, func(f *JobFrame) float64 { return f.Choke })
	over("standpipe", quantity.Pressure, false, func(f *JobFrame) float64 { return f.Pressure })
	for n := range j.Points {
		if p := &j.Points[n]; p.Key != "td" && p.Fracture > 0 {
			over(p.Name[len("at "):], quantity.EMW, false, func(f *JobFrame) float64 { return f.EMW[n] })
			over(p.Name[len("at "):]+" stands", quantity.EMW, true, func(*JobFrame) float64 { return p.Fracture })
		}
	}
	over("gas in the well", quantity.Volume, false, func(f *JobFrame) float64 { return f.Gas })
	for _, event := range j.Events {
		chart.Marks = append(chart.Marks, ChartMark{Name: event.Name, At: j.Frames[event.Frame].Pumped})
	}
	return chart
}
