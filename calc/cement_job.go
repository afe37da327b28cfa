package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/state"
	"borewalk/model"
	"borewalk/model/quantity"
)

// The fluids of a cement job, by number. Spacers follow, in the order of pumping, then the slurries.
const (
	holeFluid = iota // what the hole is full of
	seaFluid         // what flows back at the outlet; none does while pumping down
	displacerFluid
	ratholeFluid
	casingFluid // what the string is full of before the job
	firstSpacer
)

// cementFluids returns the fluids of the job and what each is there for.
func (e *evaluation) cementFluids(i int, job *cementJob) ([]state.Fluid, []JobRole) {
	s := &e.plan.Sections[i]
	c := &s.Cement
	in := e.leftInHole(i)
	mud := e.conditioned(i, in)
	of := func(name string, f friction.Fluid, density quantity.Value) state.Fluid {
		if density.IsSet() {
			f.Density = density.SI
		}
		return state.Fluid{Name: name, Fluid: f}
	}
	cemented := func(name string, density float64, pv, yp quantity.Value) state.Fluid {
		return state.Fluid{Name: name, Fluid: friction.Bingham(density, pv.SI, yp.SI)}
	}
	fluids := []state.Fluid{
		of("mud", mud, quantity.Value{}), of("sea", friction.Newton(e.seawater(), 0), quantity.Value{}),
		of("displacing fluid", thinned(mud, c.DisplacingPV, c.DisplacingYP), c.Displacing),
		of("rathole fluid", mud, c.Rathole), of("fluid in the casing", mud, c.Filled),
	}
	roles := []JobRole{MudRole, MudRole, DisplacerRole, MudRole, MudRole}
	for k := range s.Spacers {
		row := &s.Spacers[k]
		fluids = append(fluids, cemented(spacerName(row, k), row.Density.SI, row.PV, row.YP))
		roles = append(roles, SpacerRole)
	}
	for k := range job.slurries {
		row := job.slurries[k].row
		fluids = append(fluids, cemented(slurryName(row, k), job.slurries[k].sheet.Density, row.PV, row.YP))
		roles = append(roles, CementRole)
	}
	return fluids, roles
}

// playGap says what is missing to lay the fluids of a job into the well.
func (e *evaluation) playGap(i int, job *cementJob) gap {
	missing := first(job.missing, e.columnGap(i))
	if !e.sections[i].rig {
		missing = first(missing, e.gaps.sea)
	}
	s := &e.plan.Sections[i]
	for k := range s.Spacers {
		missing = first(missing, needs(s.Spacers[k].Volume, spacerPath(i, k, "volume"), "volume of a spacer"),
			needs(s.Spacers[k].Density, spacerPath(i, k, "density"), "density of a spacer"))
	}
	for k := range job.slurries {
		if q := &job.slurries[k]; !(q.sheet.Density > 0) {
			missing = first(missing, q.unmixed, gap{slurryPath(i, k, "density"), "slurry density is blank"})
		}
	}
	return missing
}

// frictionGap says what is missing for the pressures of a job while it is pumped.
func (e *evaluation) frictionGap(i int, job *cementJob) gap {
	s := &e.plan.Sections[i]
	missing := first(e.playGap(i, job), e.rateGap(i))
	both := func(pv, yp bool, path func(string) model.Path, what string) {
		if !pv {
			missing = first(missing, gap{path("pv"), "PV of " + what + " is blank"})
		}
		if !yp {
			missing = first(missing, gap{path("yp"), "YP of " + what + " is blank"})
		}
	}
	if !s.Cement.MudPV.IsSet() || !s.Cement.MudYP.IsSet() {
		missing = first(missing, e.rheologyGap(i))
	}
	for k := range s.Spacers {
		both(s.Spacers[k].PV.IsSet(), s.Spacers[k].YP.IsSet(), func(key string) model.Path { return spacerPath(i, k, key) }, "a spacer")
	}
	for k := range s.Slurries {
		both(s.Slurries[k].PV.IsSet(), s.Slurries[k].YP.IsSet(), func(key string) model.Path { return slurryPath(i, k, key) }, "a slurry")
	}
	return missing
}

// cementWell returns the well with the string on depth, before the job: round the string the given annulus, full of the mud.
//
// Where time counts, inner steps are as long as one of so many, or a twentieth of the string.
func (e *evaluation) cementWell(i int, job *cementJob, annulus []bore.Interval, fluids []state.Fluid, dynamic bool, steps int) (*state.Well, error) {
	layout := state.Layout{Bore: e.cementBore(i, job, annulus), String: job.string, Inner: job.inner, Float: true, TVD: e.path.TVD, Return: state.ToRig(holeFluid)}
	if !e.sections[i].rig {
		// The sea's pressure where the returns leave the well, which may be in a housing above the mudline.
		layout.Return = state.ToSea(job.outlet, job.outlet-e.datum.MSL, e.seawater(), seaFluid)
	}
	if dynamic {
		layout.Friction = e.rubbing(i)
		layout.Coarse = min(max(job.pumped()/float64(steps)/job.holds(), 0.05), 1)
	}
	well, err := state.New(layout, fluids, holeFluid)
	if err != nil {
		return nil, err
	}
	if e.plan.Sections[i].Cement.Filled.IsSet() {
		for _, conduit := range [...]state.Conduit{state.Inside, state.Between} {
			if err := well.Spot(conduit, 0, job.shoe, casingFluid); err != nil {
				return nil, err
			}
		}
	}
	return well, well.Spot(state.Pocket, job.shoe, e.sections[i].td, ratholeFluid)
}

// holds returns the volume of the way down the string.
func (job *cementJob) holds() float64 {
	if job.inner == nil {
		return bore.Volume(bore.Inside(job.string, 0, job.shoe))
	}
	return bore.Volume(bore.Inside(job.string, 0, job.top)) + bore.Volume(bore.Inside(job.inner, job.top, job.end)) +
		bore.Volume(bore.Inside(job.string, job.end, job.shoe))
}

// pumped returns the volume that a job pumps.
func (job *cementJob) pumped() (sum float64) {
	for _, s := range job.stages {
		sum += s.volume
	}
	return sum
}

// cementBore returns the bores round the string as an annulus has them, and the pocket below the shoe.
func (e *evaluation) cementBore(i int, job *cementJob, annulus []bore.Interval) bore.Profile {
	profile := make(bore.Profile, 0, len(annulus)+4)
	for _, a := range annulus {
		profile = append(profile, bore.Span{Top: a.Top, Bottom: a.Bottom, Diameter: a.Outer, Label: a.OuterLabel})
	}
	for _, span := range e.bores[i] {
		if span.Top = max(span.Top, job.shoe); span.Top < span.Bottom {
			profile = append(profile, span)
		}
	}
	return profile
}

// jobPoints returns where the equivalent densities of a job are followed: the last shoe, the rows of the prognosis in the
// open hole, the new shoe and TD.
func (e *evaluation) jobPoints(i int, job *cementJob) []JobPoint {
	from := e.openFrom(i)
	var points []JobPoint
	add := func(name, key string, md float64) {
		if md < job.outlet || md < from || md > e.sections[i].td {
			return
		}
		for k := range points {
			if math.Abs(points[k].MD-md) < 0.5 {
				return
			}
		}
		points = append(points, JobPoint{Name: name, Key: "cement.emw." + key, MD: md, TVD: e.path.TVD(md), Fracture: e.strength(i, md), Pore: e.poreAlong(i, md)})
	}
	add(e.topName(i), "last_shoe", from)
	add("at shoe", "shoe", job.shoe)
	add("at TD", "td", e.sections[i].td)
	if !e.prognosisGap(i).open() {
		for k, tvd := range e.window.fracture.AppendBreaks(nil) {
			if md, ok := e.path.MDAtTVD(tvd); ok {
				add("at row "+strconv.Itoa(k+1), "row."+strconv.Itoa(k+1), md)
			}
		}
	}
	slices.SortStableFunc(points, func(a, b JobPoint) int {
		if a.MD < b.MD {
			return -1
		}
		return 1
	})
	return points
}

// strength returns what the rock stands at a depth along hole as EMW: the fracture prognosis, or at the last shoe the
// planned or measured test where that is less; zero where the prognosis is not known.
func (e *evaluation) strength(i int, md float64) float64 {
	if e.prognosisGap(i).open() {
		return 0
	}
	const near = 0.5 // m, the shoe as the job has it
	tvd := e.path.TVD(md)
	if _, shoe, ok := e.shoeTest(i); ok && math.Abs(shoe-tvd) < near {
		tvd = shoe
	}
	limit, _ := e.stands(i)(tvd)
	return limit
}

// poreAlong returns the pore pressure at a depth along hole as EMW; zero where the prognosis is not known.
func (e *evaluation) poreAlong(i int, md float64) float64 {
	if e.prognosisGap(i).open() {
		return 0
	}
	pore, _ := e.window.pore.At(e.path.TVD(md))
	return pore
}

// emwAt returns the equivalent density at a depth of a well that is being cemented.
func emwAt(well *state.Well, md float64) float64 {
	conduit := state.Annulus
	if md > well.End() {
		conduit = state.Pocket
	}
	density, ok := well.EMW(conduit, md)
	if !ok {
		return math.NaN()
	}
	return density
}
