package calc

import (
	"errors"
	"math"
	"slices"

	"borewalk/calc/bore"
	"borewalk/calc/thermal"
	"borewalk/model"
	"borewalk/model/quantity"
)

// How mud passes heat on. Across the string it is what Holmes and Swift (1970) take, 30 Btu/(h ft2 °F), from memory; others
// take a third of it. Films are of the order found in the literature, from memory: fast flow in a pipe, slow flow along the
// wall of an annulus, a current of some tenths of a metre a second in the sea.
const (
	pipePasses = 170.0 // W/(m2 K), between the mud in a string and that round it
	pipeFilm   = 500.0 // of mud to the pipe that it flows in
	mudFilm    = 60.0  // of mud in an annulus to the wall
	seaFilm    = 500.0 // of a riser or pipe to the sea
	airFilm    = 10.0  // of them to the air
	foamPasses = 0.12  // W/(m K), of the buoyancy round a riser
	rockStores = 2.3e6 // J/(m3 K), of rock: conductivity over this is its diffusivity
	rockPasses = 2.3   // W/(m K), where the plan gives none
)

// What pits take from the mud where the plan does not say, K: common pits without a cooler, from memory; and how much of a kelvin
// more may come back before the mud is said not to settle.
const (
	usualCooling = 1.0
	mostKept     = 0.98
)

// mixedAt is what a cement job's fluids are pumped in at where neither the plan nor the mud in the pits is warmer, K: 27 °C,
// at which a laboratory's schedule usually starts, from memory. What is taken too cool makes a thickening time look long.
const mixedAt = 273.15 + 27

// How long mud goes round where the plan does not say, s.
const (
	drilledFor  = 24 * 3600.0
	cementedFor = 4 * 3600.0
)

// Into how many lengths a well is cut, about: for figures, and for a chart.
const (
	figureCells = 24
	chartCells  = 80
)

// round is mud going round a well: what goes in, and the temperatures that come of it at the ends of the lengths that the
// well is cut into, down from the rotary.
type round struct {
	thermal.Circulation
	thermal.Profile
	md, tvd  []float64
	flow     float64
	boosting float64 // flow down the booster line
	density  float64
	heat     float64 // capacity of the mud, J/(kg K)
	time     float64
	spent    float64 // pump pressure whose heat counts, Pa
	given    float64 // temperature pumped in where it does not settle by itself, K
	cooled   float64 // by the pits, where the inlet follows from that, K
	rock     float64 // conductivity
	foot     float64 // TVD of the end of the string
}

// bottom returns the temperature at the end of the string.
func (r *round) bottom() float64 { return r.String[len(r.String)-1] }

// top returns the temperature with which the mud leaves the well.
func (r *round) top() float64 {
	for _, t := range r.Annulus {
		if !math.IsNaN(t) {
			return t
		}
	}
	return math.NaN()
}

// hottest returns the highest temperature of the mud and its TVD.
func (r *round) hottest() (temperature, tvd float64) {
	for k := range r.String {
		for _, t := range [...]float64{r.String[k], r.Annulus[k]} {
			if t > temperature {
				temperature, tvd = t, r.tvd[k]
			}
		}
	}
	return temperature, tvd
}

// working writes down what went into a circulating temperature.
func (r *round) working(w *Working) {
	w.Formula = "w dTs/dz = U (Ta - Ts) down the string; w dTa/dz = U (Ta - Ts) + K (Ta - Te) up the annulus; both equal at the end of the string"
	w.in("flow", "down the string", quantity.Flow, r.flow)
	if r.boosting > 0 {
		w.in("booster", "joins below the riser, cooled by the sea", quantity.Flow, r.boosting)
		w.in("Tb", "of it there", quantity.Temperature, r.Boost)
	}
	w.in("rho", "mud", quantity.Density, r.density)
	w.in("c", "heat of the mud, J/(kg K)", quantity.Number, r.heat)
	w.in("Tin", "pumped in", quantity.Temperature, r.Inlet)
	if r.cooled > 0 {
		w.in("cooled", "by the pits, where the sea's surface is not warmer", quantity.TemperatureRise, r.cooled)
	}
	w.in("spent", "pump pressure, half of its heat in the string, half at the bit", quantity.Pressure, r.spent)
	w.in("t", "gone round for", quantity.Hours, r.time)
	w.in("k", "of the rock, W/(m K)", quantity.Number, r.rock)
	last := &r.Cells[len(r.Cells)-1]
	w.in("U", "at the bottom, across the string, W/(m K)", quantity.Number, last.Across)
	w.in("K", "at the bottom, to the rock, W/(m K)", quantity.Number, last.Outside)
	w.in("Te", "static at the bottom", quantity.Temperature, last.Bottom)
	w.in("TVD", "of the end of the string", quantity.Length, r.foot)
	w.Source = "steady heat balance of Holmes and Swift (J. Pet. Tech., June 1970), the rock's share by Hasan and Kabir (SPE Prod. & Facil., August 1994), the riser in the sea added; from memory"
	w.Note = "A model's estimate, steady, good to perhaps 15 °C: walls are taken to pass 170 W/(m² K) across the string and 60 to the wall, rock as the same everywhere, and no heat of friction counts but that of the pump pressure given. Measured temperatures and the laboratory's schedule count."
}

// drilling returns the drilling fluid of section i going round at its flow with the bit at TD, in about so many lengths.
func (e *evaluation) drilling(i, cells int) (round, gap) {
	s := &e.plan.Sections[i]
	way, missing := e.outside(i, e.sections[i].td)
	missing = first(missing, e.pathGap, e.flowGap(i))
	if missing.open() {
		return round{}, missing
	}
	annulus := make([]bore.Interval, len(way))
	for k, g := range way {
		annulus[k] = bore.Interval{Top: g.top, Bottom: g.bottom, Outer: g.bore}
		if g.part != nil {
			annulus[k].Inner = g.part.pipe.OD
		} else if k > 0 {
			annulus[k].Inner = annulus[k-1].Inner // a bit's way down is about the last pipe's
		}
	}
	r := round{flow: s.Flow.SI, time: usual(s.Circulating.Time, drilledFor), spent: e.pumpHeat(i), given: s.Circulating.Inlet.SI}
	if !s.Circulating.Inlet.IsSet() && !e.sections[i].rig {
		r.given = e.heat.surface // nothing comes back
	}
	if e.sections[i].rig && !e.gaps.bop.open() {
		r.boosting = s.Booster.SI
	}
	missing = e.goRound(i, &r, annulus, e.drills[i].bodies, cells)
	return r, missing
}

// pumpHeat returns the pump pressure in Pa whose work warms the mud of section i while it drills: as entered, else the standpipe
// pressure worked out, less what the columns take of it.
func (e *evaluation) pumpHeat(i int) float64 {
	if own := e.plan.Sections[i].Circulating.PumpPressure; own.IsSet() {
		return own.SI
	}
	c := e.circulating(i)
	if c.missing.open() || c.loop.noString.open() {
		return 0
	}
	return c.loop.parasitic(c.flow) + c.loop.lossBit(c.flow)
}

// drillingRound is drilling in the lengths that figures take, worked out once.
func (e *evaluation) drillingRound(i int) (*round, gap) {
	if e.rounds == nil {
		e.rounds = make([]*drilledRound, len(e.sections))
	}
	if e.rounds[i] == nil {
		r, missing := e.drilling(i, figureCells)
		e.rounds[i] = &drilledRound{r, missing}
	}
	return &e.rounds[i].round, e.rounds[i].missing
}

// drilledRound is a round, or what is missing for it.
type drilledRound struct {
	round
	missing gap
}

// cementRound returns the mud going round the string of section i at the rate of mixing or of displacing, whichever leaves the
// end of the string hotter. Where the cement goes down an inner string, it is taken to fill the casing.
func (e *evaluation) cementRound(i int, job *cementJob, cells int) (round, gap) {
	c := &e.plan.Sections[i].Cement
	missing := first(job.missing, e.pathGap, e.rateGap(i))
	inlet, unknown := e.cementInlet(i)
	missing = first(missing, unknown)
	if missing.open() {
		return round{}, missing
	}
	at := func(rate float64) (round, gap) {
		r := round{flow: rate, time: usual(e.plan.Sections[i].Circulating.Cementing, cementedFor), given: inlet}
		missing := e.goRound(i, &r, job.gauge, job.string, cells)
		return r, missing
	}
	r, missing := at(c.DisplaceRate.SI)
	if missing.open() || c.MixRate.SI == c.DisplaceRate.SI {
		return r, missing
	}
	mixing, missing := at(c.MixRate.SI)
	if missing.open() || mixing.bottom() > r.bottom() {
		return mixing, missing
	}
	return r, gap{}
}

// cementInlet returns the temperature in K with which a cement job is pumped in: as entered, else the mud's in the suction, and
// no less than what a laboratory starts at.
func (e *evaluation) cementInlet(i int) (float64, gap) {
	if own := e.plan.Sections[i].Circulating.CementInlet; own.IsSet() {
		return own.SI, gap{}
	}
	r, missing := e.drillingRound(i)
	if missing.open() {
		return 0, missing
	}
	return math.Max(mixedAt, r.Inlet), gap{}
}

// goRound cuts the well into lengths, says what passes heat in each, and works the temperatures out.
func (e *evaluation) goRound(i int, r *round, annulus []bore.Interval, pipe []bore.Body, cells int) gap {
	mud, missing := e.mudOf(i)
	missing = first(missing, e.heat.sea, e.heat.rock)
	if missing.open() {
		return missing
	}
	if len(annulus) == 0 || len(pipe) == 0 {
		return gap{model.PathOf(i, "hole"), "there is no annulus to go round"}
	}
	r.density, r.heat = mud.Recipe().Density, mud.HeatCapacity()
	r.Capacity = r.flow * r.density * r.heat
	r.rock = usual(e.plan.Well.RockConductivity, rockPasses)
	e.divide(r, annulus, cells)
	r.Cells = make([]thermal.Cell, len(r.md)-1)
	a, b := 0, 0
	for k := range r.Cells {
		top, bottom := r.md[k], r.md[k+1]
		cell := thermal.Cell{Length: bottom - top, Top: e.heat.at(r.tvd[k]), Bottom: e.heat.at(r.tvd[k+1])}
		middle := (top + bottom) / 2
		for b < len(pipe)-1 && pipe[b].Bottom < middle {
			b++
		}
		for a < len(annulus)-1 && annulus[a].Bottom < middle {
			a++
		}
		at := (r.tvd[k] + r.tvd[k+1]) / 2
		if middle < annulus[0].Top {
			cell.Open, cell.Outside = true, 1/(thermal.Film(pipeFilm, pipe[b].ID)+thermal.Film(e.around(at), pipe[b].OD))
		} else {
			cell.Across = 1 / thermal.Film(pipePasses, annulus[a].Inner)
			cell.Outside = 1 / (thermal.Film(mudFilm, annulus[a].Outer) + e.beyond(annulus[a].Outer, at, r))
		}
		if annulus[a].Inner == 0 {
			cell.Across = 0
		}
		r.Cells[k] = cell
	}
	r.spend()
	if err := e.settleInlet(i, r); err != nil {
		return gap{model.PathOf(i, "flow"), err.Error()}
	}
	r.foot = r.tvd[len(r.tvd)-1]
	return gap{}
}

// spend lets half of the pump's pressure warm the mud along the string, and half at the bit.
func (r *round) spend() {
	half := r.spent / 2 * r.flow // W
	length := r.md[len(r.md)-1]
	for k := range r.Cells {
		r.Cells[k].Warmed = half / length
	}
	r.Bit = half / r.Capacity
}

// settleInlet works the temperatures out for the mud that is pumped in: at the temperature given, or with what comes back less
// what the pits take, but no colder than the sea's surface. The temperatures follow the inlet's in a straight line, so that
// two of them tell the one at which the mud has settled.
func (e *evaluation) settleInlet(i int, r *round) error {
	c := &e.plan.Sections[i].Circulating
	at := func(inlet float64) (err error) {
		r.Inlet = inlet
		if r.boosting > 0 {
			e.boost(r)
		}
		r.Profile, err = r.Solve()
		return err
	}
	if r.given > 0 {
		return at(r.given)
	}
	r.cooled = usual(c.PitsCool, usualCooling)
	const trial = 10 // K
	if err := at(e.heat.surface + trial); err != nil {
		return err
	}
	warm := *r
	if err := at(e.heat.surface); err != nil {
		return err
	}
	kept := (warm.top() - r.top()) / trial // of a kelvin more pumped in, what comes back
	if kept > mostKept {
		return errors.New("the well passes too little heat for its mud to settle: give the temperature of the mud pumped in")
	}
	rise := math.Max(0, (r.top()-r.cooled-r.Inlet)/(1-kept))
	share := rise / trial
	r.Inlet += rise
	r.Boost += (warm.Boost - r.Boost) * share
	for k := range r.String {
		r.String[k] += (warm.String[k] - r.String[k]) * share
		r.Annulus[k] += (warm.Annulus[k] - r.Annulus[k]) * share
	}
	return nil
}

// divide puts the ends of the lengths into a round: where annulus, water and rock change, and evenly between.
func (e *evaluation) divide(r *round, annulus []bore.Interval, cells int) {
	bottom := annulus[len(annulus)-1].Bottom
	ends := make([]float64, 0, cells+len(annulus)+12)
	ends = append(ends, 0, bottom)
	for _, a := range annulus {
		ends = append(ends, a.Top)
	}
	if r.boosting > 0 {
		ends = append(ends, e.datum.BOPTop)
	}
	for _, tvd := range e.heat.corners(nil) {
		if md, ok := e.path.MDAtTVD(tvd); ok {
			ends = append(ends, md)
		}
	}
	for k := 1; k < cells; k++ {
		ends = append(ends, bottom*float64(k)/float64(cells))
	}
	slices.Sort(ends)
	const least = 0.01 // m, so that depths found along different ways leave no slivers
	r.md = ends[:0]
	for _, md := range ends {
		if md >= 0 && md <= bottom && (len(r.md) == 0 || md-r.md[len(r.md)-1] > least) {
			r.md = append(r.md, md)
		}
	}
	r.tvd = make([]float64, len(r.md))
	for k, md := range r.md {
		r.tvd[k] = e.path.TVD(md)
	}
}

// around returns the film of what a pipe or riser hangs in above the mudline, W/(m2 K).
func (e *evaluation) around(tvd float64) float64 {
	if tvd < e.datum.MSL {
		return airFilm
	}
	return seaFilm
}

// beyond returns the resistance in m K/W from the wall of a bore outwards: through the riser's foam into sea or air, or into
// rock that has been drawing heat for some time.
func (e *evaluation) beyond(wall, tvd float64, r *round) float64 {
	if tvd >= e.datum.Mudline {
		return thermal.Rock(r.rock, r.rock/rockStores, wall, r.time)
	}
	od := math.Max(e.plan.Rig.RiserOD.SI, wall)
	foamed := od + 2*e.plan.Rig.RiserFoam.SI
	return thermal.Shell(foamPasses, od, foamed) + thermal.Film(e.around(tvd), foamed)
}

// boost lets the booster's flow down its line through the sea and into the foot of the riser.
func (e *evaluation) boost(r *round) {
	r.BoostCapacity = r.boosting * r.density * r.heat
	id := e.plan.Rig.BoosterID.SI
	line := thermal.Circulation{Capacity: r.BoostCapacity, Inlet: r.Inlet}
	for k := range r.Cells {
		if r.md[k] >= e.datum.BOPTop-1e-6 {
			break
		}
		r.Joins = k + 1
		cell := thermal.Cell{Length: r.Cells[k].Length, Top: r.Cells[k].Top, Bottom: r.Cells[k].Bottom, Open: true}
		if id > 0 {
			cell.Outside = 1 / (thermal.Film(pipeFilm, id) + thermal.Film(e.around((r.tvd[k]+r.tvd[k+1])/2), id))
		}
		line.Cells = append(line.Cells, cell)
	}
	r.Boost = r.Inlet
	if p, err := line.Solve(); err == nil {
		r.Boost = p.String[len(line.Cells)]
	}
}

// otherWells is what measurements in other wells say of the circulating temperature at a depth.
type otherWells struct {
	static, gradient float64
	value            float64 // K; 0 where they say nothing
	silent           error   // why they say nothing
}

// otherWells asks them about a TVD, if that is known.
func (e *evaluation) otherWells(foot float64, missing gap) (o otherWells) {
	if !missing.open() {
		o.static, o.gradient = e.heat.steel(foot), e.heat.gradient(foot)
		o.value, o.silent = thermal.Empirical(o.static, o.gradient)
	}
	return o
}

// silence writes down why a circulating temperature has no second opinion.
func (o *otherWells) silence(w *Working) {
	if o.silent != nil {
		w.Note += " Other wells give no second opinion: " + o.silent.Error() + "."
	}
}

// figure adds what other wells say beside the circulating temperature, where they reach.
func (o *otherWells) figure(p *page, key string) {
	if o.value == 0 {
		return
	}
	p.also(key, "other wells", quantity.Temperature, o.value, gap{}, func(w *Working) {
		w.Formula = "T = -50.64 °C + 804.9 m × G + (1.342 - 12.22 m/°C × G) × Ts"
		w.in("Ts", "static there", quantity.Temperature, o.static)
		w.in("G", "mean gradient of the rock", quantity.TemperatureGradient, o.gradient)
		w.Source = "Kutasov and Targhi, Oil and Gas Journal, 25 May 1987, from memory; for 74 to 212 °C and 1.51 to 4.45 °C/100 m"
		w.Note = "A second opinion from 79 wells: it knows neither flow nor riser. Where the two part, believe neither without a measurement, and plan cement for the hotter."
	})
}
