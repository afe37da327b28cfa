package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/pump"
	"borewalk/model/quantity"
)

// displacement is what is pumped behind the cement, in m3.
type displacement struct {
	running float64 // inside of the running pipe, to the top of the casing
	below   float64 // from there to where the way down ends
	pumped  float64 // with what compression takes, less what is kept back
	most    float64 // at which to stop when no plug has landed
}

// displaced works out the displacement of a job.
func (e *evaluation) displaced(i int, job *cementJob) displacement {
	c := &e.plan.Sections[i].Cement
	d := displacement{running: bore.Volume(bore.Inside(job.string, 0, job.top))}
	if job.inner != nil {
		d.below = bore.Volume(bore.Inside(job.inner, job.top, job.end))
		d.pumped = max(d.running+d.below-c.StopShort.SI, 0)
		return d
	}
	d.below = bore.Volume(bore.Inside(job.string, job.top, job.end))
	d.pumped = (d.running + d.below) * (1 + c.Compressibility.SI)
	d.most = d.pumped + bore.Volume(bore.Inside(job.string, job.end, job.shoe))/2
	return d
}

// displacementFiguresOf adds the displacement of a cement job, by pump and by event.
func (e *evaluation) displacementFiguresOf(i int, p *page, job *cementJob) {
	p.group = "Displacement"
	s := &e.plan.Sections[i]
	var d displacement
	if !job.missing.open() {
		d = e.displaced(i, job)
	}
	count := func(key, name string, volume float64, why func(*Working)) {
		p.put(key, name, quantity.Volume, volume, job.missing, why)
		e.pumped(p, key, volume, job.missing)
	}
	pipe := func(key, name string) {
		count(key, name, d.running, func(w *Working) {
			w.Formula = "V = pi/4 × ID² × L of the running pipe"
			w.intervals(bore.Inside(job.string, 0, job.top))
			w.Source = "geometry; tool joints and the running tool left out"
			w.Note = "For a string that is full. Empty at the top, it lets the dart arrive earlier and without pressure: the count is not set back."
		})
	}
	if e.byInnerString(i) {
		pipe("cement.displacement.running", "To casing top")
		count("cement.displacement", "Displacement", d.pumped, func(w *Working) {
			w.Formula = "V = running pipe + inner string - kept short"
			w.in("running", "to the casing's top", quantity.Volume, d.running)
			w.in("inner", "to its end", quantity.Volume, d.below)
			w.in("short", "kept back", quantity.Volume, s.Cement.StopShort.SI)
			w.Source = "geometry"
			w.Note = "No plug tells the end: one person counts, another checks. Lines from the pump to the rotary come on top."
		})
		return
	}
	pipe("cement.displacement.running", "Dart to plug")
	count("cement.displacement.below", "Plug to its seat", d.below, func(w *Working) {
		w.Formula = "V = pi/4 × ID² × L from the casing's top to the collar"
		w.intervals(bore.Inside(job.string, job.top, job.end))
		w.Source = "geometry"
	})
	count("cement.displacement", "To bump", d.pumped, func(w *Working) {
		w.Formula = "V = (running pipe + casing to the collar) × (1 + compression)"
		w.in("running", "to the casing's top", quantity.Volume, d.running)
		w.in("casing", "to the collar", quantity.Volume, d.below)
		w.in("compression", "share pumped on top", quantity.Ratio, s.Cement.Compressibility.SI)
		w.Source = "geometry; compression and leakage as the last job showed"
		w.Note = "Lines from the pump to the rotary come on top. A second person reproduces it before the job."
	})
	p.also("cement.displacement.percent", "1 % is", quantity.Volume, d.pumped/100, job.missing, func(w *Working) {
		w.Formula = "V = volume to bump / 100: what one per cent of pump efficiency is worth"
		w.Source = "common practice"
	})
	if c := &s.Cement; c.SlowLast.SI > 0 {
		count("cement.displacement.slow", "Slow down at", max(d.pumped-c.SlowLast.SI, 0), func(w *Working) {
			w.Formula = "V = volume to bump - last volume at the slow rate"
			w.in("bump", "volume to bump", quantity.Volume, d.pumped)
			w.in("last", "at the slow rate", quantity.Volume, c.SlowLast.SI)
			w.Source = "common practice"
		})
	}
	count("cement.displacement.most", "No bump: stop at", d.most, func(w *Working) {
		w.Formula = "V = volume to bump + half of the shoe track"
		w.in("bump", "volume to bump", quantity.Volume, d.pumped)
		w.in("track", "shoe track", quantity.Volume, bore.Volume(bore.Inside(job.string, job.end, job.shoe)))
		w.Source = "common practice: at most half the shoe track, then stop"
		w.Note = "More would leave no cement round the shoe. The operator's own decision volume goes before this."
	})
	if e.strings[i].liner {
		count("cement.reverse_out", "Reverse out", d.running, func(w *Working) {
			w.Formula = "V = inside of the running pipe to the liner's top: what must come back up it at least"
			w.intervals(bore.Inside(job.string, 0, job.top))
			w.Source = "common practice"
			w.Note = "Continue until the returns are clean; commonly half as much again."
		})
	}
}

// stage is one pumping stage of a job, or a stop.
type stage struct {
	name   string
	fluid  int // of the job's fluids; -1 for a stop
	volume float64
	rate   float64
	stop   float64 // s without pumping
}

func (s stage) time() float64 {
	if s.fluid < 0 {
		return s.stop
	}
	t, ok := pump.Time(s.volume, s.rate)
	if !ok {
		return math.NaN()
	}
	return t
}

// rateGap says which rate of a job is missing.
func (e *evaluation) rateGap(i int) gap {
	c := &e.plan.Sections[i].Cement
	missing := first(lacks(c.MixRate, i, "pumping.mix_rate", "mixing rate"), lacks(c.DisplaceRate, i, "pumping.displace_rate", "displacing rate"))
	if c.SlowLast.SI > 0 {
		missing = first(missing, lacks(c.SlowRate, i, "pumping.slow_rate", "slow rate"))
	}
	return missing
}

// stages returns a job in the order of pumping: spacers, slurries, the stop for plugs and lines, the displacement, the last
// of it slow. Fluids are numbered as in [evaluation.cementFluids].
func (e *evaluation) stages(i int, job *cementJob) []stage {
	s := &e.plan.Sections[i]
	c := &s.Cement
	var list []stage
	for k := range s.Spacers {
		list = append(list, stage{name: spacerName(&s.Spacers[k], k), fluid: firstSpacer + k, volume: s.Spacers[k].Volume.SI, rate: c.MixRate.SI})
	}
	for k := range job.slurries {
		list = append(list, stage{name: slurryName(job.slurries[k].row, k), fluid: firstSpacer + len(s.Spacers) + k, volume: job.slurries[k].volume(), rate: c.MixRate.SI})
	}
	if c.LineTime.SI > 0 {
		list = append(list, stage{name: "plug and lines", fluid: -1, stop: c.LineTime.SI})
	}
	d := e.displaced(i, job)
	fast := max(d.pumped-c.SlowLast.SI, 0)
	if fast > 0 {
		list = append(list, stage{name: "displacement", fluid: displacerFluid, volume: fast, rate: c.DisplaceRate.SI})
	}
	if slow := d.pumped - fast; slow > 0 {
		list = append(list, stage{name: "displacement, slow", fluid: displacerFluid, volume: slow, rate: c.SlowRate.SI})
	}
	return list
}
