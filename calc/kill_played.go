package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/friction"
	"borewalk/calc/kill"
	"borewalk/calc/state"
	"borewalk/model"
	"borewalk/model/quantity"
)

// In how many steps a kill is played for its figures, and in how many pieces its gas is cut: what stands out is found apart from the
// steps, and so few give peaks within 0.2 % of those of many.
const (
	figureSteps   = 2
	figureParcels = 3
)

// killJob returns the kick of section i as it is to be circulated out, by one circulation or two, and what is missing.
func (e *evaluation) killJob(i int, k *killing, one bool) (kill.Job, gap) {
	missing := first(k.missing, k.in.noGas, k.line.missing, k.noAnnular, k.in.noSICP)
	if !missing.open() && !k.in.real {
		missing = gap{model.PathOf(i, "kick.density"), "an influx of one density is not played: leave its density blank"}
	}
	fluid, bad := e.drillingFluid(i, e.sections[i].td)
	if missing = first(missing, bad); missing.open() {
		return kill.Job{}, missing
	}
	heavy := fluid
	heavy.Density = k.mud
	return kill.Job{Layout: e.killLayout(i, k, fluid), Mud: fluid, KillMud: heavy, Flow: k.killFlow, Overbalance: k.over + k.annular, OneCirculation: one,
		Kick: kill.Kick{Volume: k.in.bySICP, Formation: k.in.pressure(), Gas: k.in.gas,
			Temperature:     func(md float64) float64 { return e.heat.at(e.path.TVD(md)) },
			LineTemperature: func(md float64) float64 { return e.heat.at(e.path.TVD(md)) }}}, gap{}
}

// killLayout is the well of section i under its closed stack, with the line as one pipe that holds and rubs as much.
func (e *evaluation) killLayout(i int, k *killing, fluid friction.Fluid) state.Layout {
	bores := make(bore.Profile, 0, len(e.bores[i]))
	for _, span := range e.bores[i] {
		span.Bottom = min(span.Bottom, k.in.bit)
		if span.Top = max(span.Top, e.datum.BOPTop); span.Top < span.Bottom {
			bores = append(bores, span)
		}
	}
	stack := e.datum.BOPTop
	length := k.line.pipes[0].length
	width := diameterOf(k.line.volume() / stack) // lines longer than the riser stand beside it, wider by as much
	l := state.Layout{Bore: bores, String: e.killString(i, k.in.bit), TVD: e.path.TVD, Friction: k.line.rub,
		Return: state.Return{MD: stack, Line: bore.Profile{{Top: 0, Bottom: stack, Diameter: width, Label: k.line.name}}}}
	if rubs := k.line.rub.Pipe(fluid, k.killFlow, width) * stack; rubs > 0 && length > 0 {
		l.Return.Rub = k.line.loss / rubs
	}
	return l
}

// killString returns the string of section i whole, from the rotary to the bit at a depth along hole: what cuts counts as what is
// above it.
func (e *evaluation) killString(i int, bit float64) []bore.Body {
	bodies := append([]bore.Body(nil), lifted(e.drills[i].bodies, e.sections[i].td-bit)...)
	for k := range bodies {
		if k+1 < len(bodies) {
			bodies[k].Bottom = bodies[k+1].Top
		} else {
			bodies[k].Bottom = bit
		}
	}
	return bodies
}

// killPlaces returns where the pressure is followed while a kick of section i is circulated out: the last shoe and the weakest row.
func (e *evaluation) killPlaces(i int) (places []kickPlace) {
	if _, _, ok := e.lastShoe(i); !ok || e.testGap(i).open() {
		return nil
	}
	shoe, weaker := e.kickPlaces(i, usual(e.plan.Sections[i].Kill.Bit, e.sections[i].td))
	places = append(places, shoe)
	least := 0.0
	for _, at := range weaker {
		if room := at.Stands - column.PressureOf(e.plan.Sections[i].Density.SI, at.tvd); len(places) == 1 || room < least {
			places, least = append(places[:1], at), room
		}
	}
	return places
}

// played is a kill played through for its figures.
type played struct {
	missing gap
	kill.Summary
	places []kickPlace
}

// playFor plays the kill of section i in few steps.
func (e *evaluation) playFor(i int, k *killing, one bool) played {
	r := played{}
	job, missing := e.killJob(i, k, one)
	if r.missing = missing; missing.open() {
		return r
	}
	r.places = e.killPlaces(i)
	for _, at := range r.places {
		job.Places = append(job.Places, at.MD)
	}
	job.Steps, job.Parcels = figureSteps, figureParcels
	summary, err := kill.Run(job, nil)
	if err != nil {
		r.missing = gap{model.PathOf(i, "kick.volume"), err.Error()}
	}
	r.Summary = summary
	return r
}

// chokeMost is the key of the highest pressure at the choke while a kick is circulated out.
const chokeMost = "control.out.choke"

// playedFigures adds what a kick does on its way out: by the method planned, and beside it by the other.
func (e *evaluation) playedFigures(i int, p *page, k *killing) {
	p.group = "Kick on its way out"
	method, otherMethod := e.plan.Sections[i].Kill.Methods()
	one := method == model.WaitAndWeight
	planned, other := e.playFor(i, k, one), e.playFor(i, k, !one)
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula = formula
			w.in("V", "influx at TD, no less than SICP as read asks for", quantity.Volume, k.in.bySICP)
			w.in("pf", "formation pressure", quantity.Pressure, k.in.pressure())
			w.in("overbalance", "held over it", quantity.Pressure, k.over)
			w.in("annulus", "friction from bit to stack, carried by the bottom as by the slow pressure", quantity.Pressure, k.annular)
			w.in("mud", "old", quantity.Density, k.in.mud)
			w.in("kill", "mud", quantity.Density, k.mud)
			w.in("flow", "kill rate", quantity.Flow, k.killFlow)
			w.in("line", "friction in the old mud", quantity.Pressure, k.line.loss)
			w.Source = "one bubble at the pressure held at TD, grown by the real gas law (" + gasEquation(e.plan.Sections[i].Kick.Equation).String() + ", Sutton), moved by what is pumped"
			w.Note = "Without mixing, slip, migration or gas in solution: real kicks string out, and oil mud hides gas. " + killCaution
		}
	}
	both := func(key, name string, kind quantity.Kind, formula string, value func(*played) float64) {
		if f := p.put(key, name, kind, value(&planned), planned.missing, why(formula)); f.OK && key == chokeMost {
			f.Note = "gas above the shoe: MAASP no longer holds"
		}
		p.also(key+".other", otherMethod, kind, value(&other), other.missing, why(formula))
	}
	both(chokeMost, "Choke, most", quantity.Pressure, "highest pressure at the choke", func(r *played) float64 { return r.Choke.Value })
	both("control.out.choke.at", "after pumping", quantity.Volume, "pumped when the choke is highest", func(r *played) float64 { return r.Choke.Pumped })
	p.group = "Shoe and rock, kick on its way"
	for n := range planned.places {
		name, key := "Shoe, most", "control.out.shoe"
		if n > 0 {
			name, key = "Weak row, most", "control.out.weak"
		}
		at := planned.places[n]
		emw := func(r *played) float64 {
			if n >= len(r.At) {
				return 0
			}
			x, _ := column.EMW(r.At[n].Value, at.tvd)
			return x
		}
		both(key, name, quantity.EMW, "highest pressure there / (g × TVD)", emw)
		p.also(key+".stands", "stands", quantity.EMW, at.emw, planned.missing, why("what shoe test or prognosis gives there"))
	}
	p.group = "Gas on its way out"
	both("control.out.gas", "Gas, most", quantity.Volume, "largest volume of gas in the well", func(r *played) float64 { return r.Gas.Value })
	both("control.out.arrives", "Gas at choke", quantity.Volume, "pumped when gas comes to the choke", func(r *played) float64 { return r.GasAtChoke })
	both("control.out.gone", "Gas out", quantity.Volume, "pumped when all of the gas is out", func(r *played) float64 { return r.GasOut })
	both("control.out.time", "In all", quantity.Hours, "time from the start to kill mud all round", func(r *played) float64 { return r.Time })
	over := func(r *played) float64 { return r.Foot.Value - k.in.pressure() - k.over - k.annular }
	both("control.out.over", "Over target", quantity.Pressure, "most that stands on the bottom over what is to be held: where line friction is more than the choke can give away", over)
	e.judgePlayed(i, k, &planned)
}

// judgePlayed compares the pressures of a kick on its way out with what shoe, rock and stack stand.
func (e *evaluation) judgePlayed(i int, k *killing, r *played) {
	if r.missing.open() {
		return
	}
	rule, mend := model.RuleKillShoe, k.in.volumeEntry(i, e)
	if k.in.measured || k.in.hasRead {
		rule = model.RuleKillShoeRead
	}
	for n, at := range r.places {
		emw, _ := column.EMW(r.At[n].Value, at.tvd)
		what := "Shoe over the kick on its way out"
		if n > 0 {
			what = "Weakest rock over the kick on its way out"
		}
		e.judge(rule, i, at.emw-emw, what, "", at.MD, mend)
	}
}

// diameterOf returns the diameter in m of a circle of an area in m2.
func diameterOf(area float64) float64 { return 2 * math.Sqrt(area/math.Pi) }
