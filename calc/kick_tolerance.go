package calc

import (
	"math"

	"borewalk/calc/gas"
	"borewalk/calc/influx"
	"borewalk/calc/killsheet"
	"borewalk/calc/root"
	"borewalk/model"
	"borewalk/model/quantity"
)

// toleranceCaution goes with every kick tolerance.
const toleranceCaution = "One bubble that neither mixes, slips nor dissolves (in oil mud it may hide), undisturbed temperatures, rounded down. Not a limit to keep drilling on: the operator's manual and competent people decide."

// borne is the least tolerance of a kick at the places of a section.
type borne struct {
	missing gap
	influx.Tolerance
	at     kickPlace
	atShoe influx.Tolerance
	shoe   kickPlace
	weak   bool // rock below the shoe bears less
}

// bears returns what the shoe and weaker rock of section i bear of a kick.
func (e *evaluation) bears(i int, k *kick) borne {
	b := borne{missing: first(k.missing, k.noGas, e.testGap(i))}
	if b.missing.open() {
		return b
	}
	a := e.against(i)
	if b.missing = a.missing; b.missing.open() {
		return b
	}
	shoe, weaker := e.kickPlaces(i, k.bit)
	b.shoe = shoe
	if b.atShoe, b.missing = k.tolerance(shoe, a); b.missing.open() {
		return b
	}
	b.Tolerance, b.at = b.atShoe, shoe
	for _, place := range weaker {
		t, missing := k.tolerance(place, a)
		if b.missing = missing; missing.open() {
			return b
		}
		if t.Volume < b.Volume {
			b.Tolerance, b.at, b.weak = t, place, true
		}
	}
	return b
}

// words says when the influx presses hardest.
func (b *borne) words() string {
	where := "at the shoe"
	if b.weak {
		where = "at the weakest row"
	}
	switch b.Case {
	case influx.None:
		return "no influx at all " + where
	case influx.AtBottom:
		return "shut in, round the BHA; " + where
	case influx.OnTheWay:
		return "on its way up; " + where
	case influx.Whole:
		return "the whole hole may be gas"
	}
	return "top " + where
}

// toleranceFigures adds what kicks the shoe and the rock below it bear, drilled and swabbed, and by the simple model.
func (e *evaluation) toleranceFigures(i int, p *page) {
	s := &e.plan.Sections[i]
	k := e.kickAt(i, e.sections[i].td, s.Kick.Intensity.SI)
	p.group = "Kick tolerance, bit at TD"
	drilled := e.bears(i, &k)
	e.toleranceFigure(i, p, "control.tolerance", "Drilled kick", &k, &drilled)
	swabbed := k
	swabbed.formation = k.mud
	b := drilled
	if swabbed.formation != k.formation {
		b = e.bears(i, &swabbed)
	}
	e.toleranceFigure(i, p, "control.tolerance.swabbed", "Swabbed kick", &swabbed, &b)
	if drilled.weak && !drilled.missing.open() {
		volume := e.roundedVolume(drilled.atShoe.Volume)
		p.put("control.tolerance.shoe", "Shoe alone", quantity.Volume, volume, gap{}, func(w *Working) { e.toleranceWorking(w, i, &k, &drilled.atShoe, drilled.shoe) })
	}
	p.group = "Least tolerance wanted"
	e.reachedFigure(i, p, &drilled)
	p.group = "Kick taken"
	e.formationFigure(i, p, &k)
	p.group = "Simple model beside it"
	e.simpleFigure(i, p, &k, &drilled)
	e.judgeTolerance(i, &drilled)
	e.judgeInflux(i, &k, &drilled)
}

// formationFigure adds the pressure that is taken to flow.
func (e *evaluation) formationFigure(i int, p *page, k *kick) {
	s := &e.plan.Sections[i].Kick
	f := p.put("control.kick", "Formation", quantity.EMW, k.formation, k.missing, func(w *Working) {
		w.Formula = "pf = pore pressure at TD + intensity, no less than the mud"
		if s.Over == model.OverMud {
			w.Formula = "pf = mud + intensity"
		} else {
			w.in("pore", "prognosis at TD", quantity.EMW, k.pore)
		}
		w.in("intensity", "as planned", quantity.EMW, s.Intensity.SI)
		w.in("mud", "static", quantity.Density, k.mud)
		w.Source = "drillingformulas.com, kick tolerance for well design; no less than the mud is a swabbed kick"
	})
	if f.OK && k.formation == k.mud {
		f.Note = "the mud's: swabbed"
	}
	p.also("control.kick.pressure", "at TD", quantity.Pressure, k.pressure(), k.missing, func(w *Working) {
		w.Formula, w.Source = "p = EMW × g × TVD", "hydrostatics"
		w.in("EMW", "taken", quantity.EMW, k.formation)
		w.in("TVD", "of the foot", quantity.Length, k.tvd)
	})
}

// toleranceFigure adds the influx that is borne, its height where it presses hardest, and its volume there.
func (e *evaluation) toleranceFigure(i int, p *page, key, name string, k *kick, b *borne) {
	why := func(w *Working) { e.toleranceWorking(w, i, k, &b.Tolerance, b.at) }
	if f := p.put(key, name, quantity.Volume, e.roundedVolume(b.Volume), b.missing, why); f.OK {
		f.Note = b.words()
	}
	p.also(key+".height", "height", quantity.Length, b.Worst.Height(), b.missing, why)
	p.also(key+".there", "volume there", quantity.Volume, b.Worst.Volume, b.missing, why)
}

// toleranceWorking shows how a tolerance was got.
func (e *evaluation) toleranceWorking(w *Working, i int, k *kick, t *influx.Tolerance, at kickPlace) {
	w.Formula = "gas hung from what the place stands meets the mud that stands on the formation; its mass taken to the bottom: the smaller of that and of the influx at shut-in"
	w.in("stands", "there", quantity.Pressure, at.Stands)
	w.in("place", "TVD", quantity.Length, at.tvd)
	k.working(w, e.against(i))
	w.in("mud alone", "presses there with", quantity.Pressure, t.Mud)
	w.in("top", "of the influx, TVD", quantity.Length, t.Worst.TopTVD)
	w.in("bottom", "of it, TVD", quantity.Length, t.Worst.BottomTVD)
	w.in("V there", "its volume", quantity.Volume, t.Worst.Volume)
	w.in("shut in", "borne round what hangs at TD", quantity.Volume, t.ByBottom)
	w.in("at place", "borne with its top there", quantity.Volume, t.ByPlace)
	w.in("exact", "before rounding", quantity.Volume, t.Volume)
	w.Source = "single bubble: Devereux, Practical Well Planning and Drilling Manual, appendix 1; real gas by " + gasEquation(e.plan.Sections[i].Kick.Equation).String() + ", Sutton"
	if !k.real {
		w.Source = "single bubble of one density: Devereux, Practical Well Planning and Drilling Manual, appendix 1; Boyle"
	}
	w.Note = toleranceCaution
}

// simpleFigure adds what the simple model gives, with the gas everywhere as heavy as at the bottom and volume by Boyle: what
// temperature and compressibility change is the difference.
func (e *evaluation) simpleFigure(i int, p *page, k *kick, drilled *borne) {
	if !k.real || drilled.missing.open() {
		return
	}
	plain := *k
	density, err := k.gas.Density(k.foot(e))
	missing := gap{}
	var b borne
	if err != nil {
		missing = gap{model.PathOf(i, "kick.gravity"), err.Error()}
	} else {
		plain.real, plain.fluid = false, influx.Simple(density, influx.AtEnds)
		plain.well.Fluid = plain.fluid
		b = e.bears(i, &plain)
		missing = b.missing
	}
	p.put("control.tolerance.simple", "By Boyle", quantity.Volume, e.roundedVolume(b.Volume), missing, func(w *Working) {
		e.toleranceWorking(w, i, &plain, &b.Tolerance, b.at)
		w.in("gas", "as heavy everywhere as at TD", quantity.Density, density)
	})
	p.also("control.tolerance.simple.change", "Z and heat", quantity.Volume, drilled.Volume-b.Volume, missing, func(w *Working) {
		w.Formula, w.Source = "real gas - simple model", "arithmetic"
		w.in("real", "with temperature and Z", quantity.Volume, drilled.Volume)
		w.in("simple", "one density, Boyle", quantity.Volume, b.Volume)
	})
	p.also("control.tolerance.gas", "gas at TD", quantity.Density, density, missing, func(w *Working) {
		state := k.foot(e)
		w.Formula = "rho = p × M / (z × R × T)"
		w.in("p", "absolute", quantity.Pressure, state.Pressure)
		w.in("T", "static there", quantity.Temperature, state.Temperature)
		if z, err := k.gas.Z(state); err == nil {
			w.in("z", "compressibility factor", quantity.Number, z)
		}
		w.Source = gasEquation(e.plan.Sections[i].Kick.Equation).String() + "; pseudo-critical point by Sutton, SPE 14265; from memory"
	})
}

// leastTolerance returns the tolerance that section i is to have at least, as the plan has it, else by the size of its hole; zero
// where nothing asks for any.
func (e *evaluation) leastTolerance(i int) float64 {
	if own := e.plan.Sections[i].Kick.Least; own.IsSet() {
		return own.SI
	}
	return e.limit(e.toleranceRule(i), 0)
}

// toleranceRule returns the rule of practice for the size of a section's hole.
func (e *evaluation) toleranceRule(i int) model.RuleID {
	switch size := quantity.Inch.FromSI(e.sections[i].size); {
	case size >= 16:
		return model.RuleKickLarge
	case size >= 9:
		return model.RuleKickMedium
	case size >= 7:
		return model.RuleKickSmall
	}
	return model.RuleKickSlim
}

// judgeTolerance compares the tolerance with what is wanted.
func (e *evaluation) judgeTolerance(i int, b *borne) {
	if b.missing.open() {
		return
	}
	s := &e.plan.Sections[i].Kick
	if s.Least.IsSet() {
		e.judge(model.RuleKickTolerance, i, b.Volume-s.Least.SI, "Kick tolerance at TD over the least wanted", b.words(), b.at.MD, model.PathOf(i, "kick.least"))
	} else {
		e.judge(e.toleranceRule(i), i, b.Volume, "Kick tolerance at TD", b.words(), b.at.MD, model.PathOf(i, "kick.least"))
	}
	if s.Detected.IsSet() && s.Detected.SI > 0 {
		e.judge(model.RuleKickDetected, i, b.Volume/s.Detected.SI, "Kick tolerance over the gain that is noticed", b.words(), b.at.MD, model.PathOf(i, "kick.detected"))
	}
}

// judgeInflux compares the kick on the kill sheet with what is borne of just that one: of the planned one, where it is that.
func (e *evaluation) judgeInflux(i int, planned *kick, drilled *borne) {
	in := &e.killOf(i).in
	if first(in.missing, in.noGas, in.noSICP).open() {
		return
	}
	b := *drilled
	if in.bit != planned.bit || in.formation != planned.formation {
		b = e.bears(i, &in.kick)
	}
	if !b.missing.open() {
		e.judge(model.RuleInfluxTolerance, i, b.Volume-in.bySICP, "Kick tolerance over the influx on the kill sheet", b.words(), b.at.MD, in.volumeEntry(i, e))
	}
}

// reachedFigure adds the depth of the bit at which the tolerance has come down to the least wanted.
func (e *evaluation) reachedFigure(i int, p *page, atTD *borne) {
	least := e.leastTolerance(i)
	if least == 0 {
		return
	}
	depth, missing := e.sections[i].td, atTD.missing
	kept := !missing.open() && atTD.Volume >= least
	if !missing.open() && !kept {
		depth, missing = e.toleranceEnds(i, least)
	}
	f := p.put("control.tolerance.ends", "Least at", quantity.Length, depth, missing, func(w *Working) {
		w.Formula = "depth of the bit at which the tolerance of a drilled kick is the least wanted"
		w.in("least", "wanted", quantity.Volume, least)
		w.in("at TD", "tolerance", quantity.Volume, atTD.Volume)
		w.Source = "the tolerance along the hole, looked for between the last shoe and TD"
		w.Note = toleranceCaution
	})
	if f.OK && kept {
		f.Note = "not above TD"
	}
	p.also("control.tolerance.least", "least", quantity.Volume, least, gap{}, func(w *Working) {
		w.Formula, w.Source = "as planned", "the plan"
		w.in("least", "wanted", quantity.Volume, least)
		if !e.plan.Sections[i].Kick.Least.IsSet() {
			w.Formula, w.Source = "by the size of the hole", "common practice, from memory"
		}
	})
}

// tooNear is how far below the last shoe the bit is at least when a tolerance is asked for, m.
const tooNear = 1

// toleranceEnds returns the depth of the bit at which the tolerance of section i has come down to a volume. Where it is less from the
// shoe on, that is the shoe.
func (e *evaluation) toleranceEnds(i int, least float64) (float64, gap) {
	from, to := e.openFrom(i)+tooNear, e.sections[i].td
	var missing gap
	short := func(bit float64) float64 {
		k := e.kickAt(i, bit, e.plan.Sections[i].Kick.Intensity.SI)
		b := e.bears(i, &k)
		if missing = b.missing; missing.open() {
			return math.NaN()
		}
		if b.Case == influx.Whole {
			return -least // as much as the hole holds: not what ends it
		}
		return least - b.Volume
	}
	if from >= to {
		return to, gap{}
	}
	if over := short(from); over > 0 || missing.open() {
		return from, missing
	}
	const near = 0.01 // m3
	depth, _ := root.Crossing(short, from, to, near)
	return depth, missing
}

// foot returns the state of the gas at the foot of the hole.
func (k *kick) foot(e *evaluation) gas.State {
	return gas.State{Pressure: k.pressure() + killsheet.Atmosphere, Temperature: e.heat.at(k.tvd)}
}
