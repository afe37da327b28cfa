package calc

import (
	"slices"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/state"
	"borewalk/model"
)

// run brings the section's own string down: first its joints, then the running string on top of them.
func (w *walker) run(s *Step) {
	if w.e.plan.Sections[w.i].Method != model.Cemented || !w.e.cemented(w.i) {
		w.take(moments{time: s.Likely})
		return
	}
	if s.Key != "run_casing" {
		w.addInner(s.From)
	}
	for k := 1; k <= moves && !w.fault.open(); k++ {
		share := float64(k) / moves
		md := s.From + (s.To-s.From)*share
		w.shoeTo(md)
		w.take(moments{time: s.Likely * share, gauges: w.runGauges(md)})
	}
	if s.To == w.e.strings[w.i].shoe {
		w.at.Set = true
	}
}

// shoeTo moves the section's string so that its shoe is at a depth.
func (w *walker) shoeTo(md float64) {
	c := &w.e.strings[w.i]
	profile := w.casingBores()
	entry := w.outlet(profile).MD + clear
	up := c.shoe - md
	w.at.Top, w.at.Shoe, w.casing = max(c.top-up, 0), md, true
	w.at.Pipe = w.at.Top
	switch {
	case w.well == nil && md <= entry:
	case w.well == nil:
		if up = c.shoe - entry; w.inner { // the joints were all made up in the sea
			up = c.shoe - max(md, entry)
			entry = c.shoe - up
		}
		if w.hangCasing(profile, up); !w.fault.open() {
			w.move(md - entry)
		}
	default:
		w.move(md - w.well.End())
	}
}

// casingBores returns the open well as the cement job takes it to be: with the excess on the open hole.
func (w *walker) casingBores() bore.Profile {
	job := w.e.cementOf(w.i)
	profile := w.e.cementBore(w.i, job, job.planned)
	return slices.DeleteFunc(profile, func(s bore.Span) bool { return s.Bottom-s.Top < 1e-6 })
}

// hangCasing makes the well with the section's string lifted off its place by a length in m. Its fluids are the job's, with
// the walk's behind them.
func (w *walker) hangCasing(profile bore.Profile, up float64) {
	e, i := w.e, w.i
	job := e.cementOf(i)
	fluids, roles := e.cementFluids(i, job)
	w.local = w.local[:0]
	for k, f := range fluids {
		role := roles[k]
		if k == seaFluid {
			role = SeaRole
		}
		w.local = append(w.local, w.fluid(w.called(k, f.Name), f.Density, role))
	}
	for k := range w.fluids {
		if !slices.Contains(w.local, k) {
			w.local = append(w.local, k)
			fluids = append(fluids, state.Fluid{Name: w.fluids[k].Name, Fluid: friction.Newton(w.fluids[k].Density, 0)})
		}
	}
	layout := state.Layout{Bore: profile, String: lifting(job.string, up), Inner: w.innerBodies(up), Float: true, TVD: e.path.TVD, Return: w.outlet(profile)}
	if !e.frictionGap(i, job).open() {
		layout.Friction = e.rubbing(i)
		layout.Coarse = min(max(job.pumped()/playSteps/job.holds(), 0.05), 1)
	}
	inside := holeFluid
	if e.plan.Sections[i].Cement.Filled.IsSet() {
		inside = casingFluid
	}
	w.hangIn(layout, fluids, inside)
}

// called returns the walk's name for a fluid of the cement job: what the hole is full of is the mud, or what was spotted.
func (w *walker) called(k int, name string) string {
	switch k {
	case holeFluid:
		return w.fluids[w.leftBehind()].Name
	case ratholeFluid:
		if !w.e.plan.Sections[w.i].Cement.Rathole.IsSet() {
			return w.fluids[w.leftBehind()].Name
		}
	}
	return name
}

// lifting returns bodies lifted by a length in m; what comes above the rotary is kept.
func lifting(bodies []bore.Body, up float64) []bore.Body {
	bodies = slices.Clone(bodies)
	for k := range bodies {
		bodies[k].Top -= up
		bodies[k].Bottom -= up
	}
	bodies[0].Top = min(bodies[0].Top, 0)
	return bodies
}

// innerBodies returns the inner string with the casing lifted off its place by a length in m, once it hangs in it.
func (w *walker) innerBodies(up float64) []bore.Body {
	job := w.e.cementOf(w.i)
	if !w.inner || job.inner == nil {
		return nil
	}
	bodies := lifting(job.inner, up)
	bodies[0].Top = max(job.inner[0].Top-up, 0)
	return bodies
}

// addInner hangs the inner string in the casing when all its joints are made up.
func (w *walker) addInner(shoe float64) {
	job := w.e.cementOf(w.i)
	w.inner = job.inner != nil
	if !w.inner || w.well == nil {
		return
	}
	annulus, pocket, inside := w.stands(state.Annulus), w.stands(state.Pocket), w.stands(state.Inside)
	w.open = append(annulus, pocket...)
	if w.hangCasing(w.casingBores(), job.shoe-shoe); w.fault.open() {
		return
	}
	w.lay(state.Inside, inside)
	w.lay(state.Between, inside)
}

// cement plays the section's cement job on the well as it hangs.
func (w *walker) cement(s *Step) {
	e, i := w.e, w.i
	job := e.cementOf(i)
	if w.well == nil {
		w.take(moments{time: s.Likely})
		return
	}
	if e.plan.Sections[i].Cement.Rathole.IsSet() {
		w.lay(state.Pocket, []JobStand{{job.shoe, w.at.Hole, w.local[ratholeFluid]}})
	}
	local := Job{Points: e.jobPoints(i, job), Dynamic: !e.frictionGap(i, job).open()}
	for _, k := range w.local {
		local.Fluids = append(local.Fluids, w.fluids[k])
	}
	r := e.newRecorder(i, job, &local, w.well)
	if err := e.play(i, job, w.well, playing{local.Dynamic, playSteps, r.take, r.passed}); err != nil {
		w.fail(err)
		return
	}
	w.adopt(local)
}

// adopt takes the moments of a cement job over as those of the operation in hand, by the walk's fluids.
func (w *walker) adopt(local Job) {
	job := &w.jobs[len(w.jobs)-1]
	job.Points, job.Dynamic, job.Events, job.Frames = local.Points, local.Dynamic, local.Events, local.Frames
	for k := range job.Frames {
		f := &job.Frames[k]
		for _, stands := range [...][]JobStand{f.Inside, f.Annulus, f.Between, f.Pocket} {
			for n := range stands {
				if stands[n].Fluid >= 0 {
					stands[n].Fluid = w.local[stands[n].Fluid]
				}
			}
		}
		if f.Fluid >= 0 {
			f.Fluid = w.local[f.Fluid]
		}
		at := w.at
		at.Gauges = cementGauges(f)
		f.At = &at
	}
}

// letGo parts the running string from the section's own: what is outside it and below its end stays as it is from here on.
func (w *walker) letGo() {
	if w.well == nil || !w.casing {
		return
	}
	e, i := w.e, w.i
	job, c := e.cementOf(i), &e.strings[i]
	annulus, pocket, inside, round := w.stands(state.Annulus), w.stands(state.Pocket), w.stands(state.Inside), w.stands(state.Between)
	w.behind = standIn(annulus, c.top, c.shoe)
	reach := w.reach(job, inside)
	w.solid = joinedStands(append(standIn(inside, reach, c.shoe), pocket...))
	w.casing = false
	end, pipe := c.top, job.string[0]
	if job.inner != nil {
		end = job.end
	}
	w.open = joinedStands(slices.Concat(standIn(annulus, 0, c.top), round, standIn(inside, end, reach)))
	profile := w.insideBores()
	if outlet := w.outlet(profile).MD; end <= outlet+clear { // let go at the seabed: the string hangs in the sea
		w.well, w.local, w.at.Pipe = nil, nil, end
		return
	}
	w.hang(profile, []bore.Body{{Top: 0, Bottom: end, OD: pipe.OD, ID: pipe.ID}}, nil, false, w.leftBehind())
	if !w.fault.open() {
		w.lay(state.Inside, standIn(inside, 0, end))
		w.at.Pipe = end
	}
}

// reach returns how deep the inside of the string can be reached after its cement job: to the plug, or to the cement.
func (w *walker) reach(job *cementJob, inside []JobStand) float64 {
	if job.inner == nil {
		return job.end
	}
	if tag := w.e.workedJob(w.i).result.tag; tag > job.end {
		return tag
	}
	return job.end
}

// insideBores returns the open well with the section's own string set, down to what can be reached in it.
func (w *walker) insideBores() bore.Profile {
	e, c := w.e, &w.e.strings[w.i]
	profile := e.throughPipe(e.casedAbove(w.i), c)
	bottom := w.bottom()
	for k := range profile {
		profile[k].Bottom = min(profile[k].Bottom, bottom)
	}
	return slices.DeleteFunc(profile, func(s bore.Span) bool { return s.Bottom-s.Top < 1e-6 })
}

// pullTool pulls the running string.
func (w *walker) pullTool(s *Step) {
	if w.casing {
		w.letGo()
	}
	from := w.at.Pipe
	for k := 1; k <= moves && !w.fault.open(); k++ {
		share := float64(k) / moves
		md := from * (1 - share)
		switch {
		case w.well == nil:
		case md <= w.outlet(w.insideBores()).MD+clear:
			w.move(-w.well.End())
			w.out()
		default:
			w.move(md - w.well.End())
		}
		w.at.Pipe = md
		w.take(moments{time: s.Likely * share, gauges: []JobGauge{{"Running tool at", lengthGauge, md}}})
	}
}
