package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/killsheet"
	"borewalk/calc/root"
	"borewalk/model"
	"borewalk/model/quantity"
)

// killLine is the way of the returns from the closed stack to the choke.
type killLine struct {
	missing gap
	name    string
	pipes   []linePipe
	flow    float64 // m3/s in all
	loss    float64 // Pa at that flow in the section's mud
	model   float64 // as worked out by the correlation
	fluid   friction.Fluid
	noModel gap
	from    string  // where the loss comes from; short
	at      float64 // density of the mud that it was measured in; zero where it is worked out
	read    float64 // as measured
	rub     friction.Correlation
}

// linePipe is one of the lines.
type linePipe struct{ id, length float64 }

// volume returns what the lines hold in m3.
func (l *killLine) volume() (volume float64) {
	for _, p := range l.pipes {
		volume += bore.Area(p.id) * p.length
	}
	return volume
}

// killRate returns the flow of section i's kill pump in m3/s, its output a stroke, and what is missing for them.
func (e *evaluation) killRate(i int) (flow, stroke float64, missing gap) {
	k := &e.plan.Sections[i].Kill
	if e.pumpGap.open() {
		return 0, 0, e.pumpGap
	}
	n := int(usual(k.Pump, 1))
	if n < 1 || n > len(e.pumps) {
		return 0, 0, gap{model.PathOf(i, "kill.pump"), "there is no such kind of pump on the well page"}
	}
	stroke = e.pumps[n-1].perStroke
	return stroke * usual(k.Rate, usualKillRate), stroke, gap{}
}

// usualKillRate is the rate of the kill pump in strokes a second where the plan gives none: 30 a minute, common practice.
const usualKillRate = 30.0 / 60

// killLine returns the line of section i at the kill rate, with its friction measured or worked out.
func (e *evaluation) killLine(i int) *killLine {
	if e.lines == nil {
		e.lines = make([]*killLine, len(e.sections))
	}
	if e.lines[i] == nil {
		e.lines[i] = e.readKillLine(i)
	}
	return e.lines[i]
}

func (e *evaluation) readKillLine(i int) *killLine {
	k, rig := &e.plan.Sections[i].Kill, &e.plan.Rig
	l := &killLine{name: k.Line, rub: e.rubbing(i)}
	if l.name == "" {
		l.name = model.ByChokeLine
	}
	add := func(id, length quantity.Value, path model.Path, what string) {
		l.missing = first(l.missing, needs(id, path, what))
		reach := length.SI
		if !length.IsSet() {
			reach = e.datum.BOPTop
			l.missing = first(l.missing, e.gaps.bop)
		}
		l.pipes = append(l.pipes, linePipe{id.SI, reach})
	}
	if l.name != model.ByKillLine {
		add(rig.ChokeID, rig.ChokeLength, "rig.choke_id", "choke line, ID")
	}
	if l.name != model.ByChokeLine {
		add(rig.KillID, rig.KillLength, "rig.kill_id", "kill line, ID")
	}
	var missing gap
	l.flow, _, missing = e.killRate(i)
	fluid, noFluid := e.drillingFluid(i, e.sections[i].td)
	l.missing = first(l.missing, missing, e.slowRowGap(i))
	if l.noModel = first(l.missing, noFluid); !l.noModel.open() {
		l.fluid, l.model = fluid, l.rubs(fluid, l.flow)
	}
	if !l.missing.open() {
		l.settle(e, i)
	}
	return l
}

// settle takes the friction as entered, else from the slow rates, else as worked out.
func (l *killLine) settle(e *evaluation, i int) {
	s := &e.plan.Sections[i]
	switch read, mud, ok := e.lineBySlowRates(i, l.name); {
	case s.Kill.LineLoss.IsSet():
		l.read, l.at, l.from = s.Kill.LineLoss.SI, usual(s.Kill.LineLossMud, s.Density.SI), "measured"
	case ok && read < 0:
		l.missing = gap{model.PathOf(i, "slow_rate"), "slow rates by the line are lower than by the riser, in the same mud: read them again"}
		e.fault(l.missing)
		return
	case ok:
		l.read, l.at, l.from = read, mud, "by slow rates"
	default:
		l.loss, l.from, l.missing = l.model, "worked out", l.noModel
		return
	}
	if l.missing = first(l.missing, lacks(s.Density, i, "density", "mud density")); l.at > 0 {
		l.loss = l.read * s.Density.SI / l.at
	}
}

// rubs returns the friction of the lines in Pa at a flow in all: two of them share it so that both lose the same.
func (l *killLine) rubs(f friction.Fluid, flow float64) float64 {
	one := func(p linePipe, flow float64) float64 { return l.rub.Pipe(f, flow, p.id) * p.length }
	if len(l.pipes) == 1 {
		return one(l.pipes[0], flow)
	}
	share, met := root.Crossing(func(q float64) float64 { return one(l.pipes[0], q) - one(l.pipes[1], flow-q) }, 0, flow, 1)
	if !met {
		share = flow / 2
	}
	return one(l.pipes[0], share)
}

// law returns the friction of the lines in Pa up to the kill rate: by the square of the rate from what was measured, as the correlation
// has it where that is all there is. Of what may be, the square is the least below the kill rate, so that the gauge is not let fall by
// more than the line takes.
func (l *killLine) law() func(flow float64) (float64, error) {
	if l.at > 0 {
		return killsheet.PowerLaw(l.loss, l.flow, killsheet.Square)
	}
	return func(flow float64) (float64, error) {
		if flow <= 0 {
			return 0, nil
		}
		return l.rubs(l.fluid, flow), nil
	}
}

// velocity returns how fast the mud goes up the lines in m/s, on the mean where two of them share it.
func (l *killLine) velocity() float64 {
	area := 0.0
	for _, p := range l.pipes {
		area += bore.Area(p.id)
	}
	return quotient(l.flow, area)
}

// byFormula returns the friction in Pa by the formula of the handbooks for a mud in kg/m3. Two lines are taken to share the flow by
// their areas, the more that loses counting.
func (l *killLine) byFormula(mud float64) (loss float64, missing gap) {
	for _, p := range l.pipes {
		one, err := killsheet.ChokeLine{Length: p.length, Diameter: p.id}.Loss(mud, l.velocity()*bore.Area(p.id))
		if err != nil {
			return 0, gap{"rig.choke_id", err.Error()}
		}
		loss = max(loss, one)
	}
	return loss, gap{}
}

// working shows where the line's friction comes from.
func (l *killLine) working(w *Working) {
	w.in("friction", "of the "+l.name+", "+l.from, quantity.Pressure, l.loss)
	w.in("flow", "at the kill rate", quantity.Flow, l.flow)
	if l.at > 0 {
		w.in("read", "as measured", quantity.Pressure, l.read)
		w.in("in", "mud that it was measured in", quantity.Density, l.at)
	}
	for _, p := range l.pipes {
		w.in("ID", "of a line", quantity.Diameter, p.id)
		w.in("L", "its length", quantity.Length, p.length)
	}
	w.Source = "measured with the well closed in or by slow rates, scaled with the density (Lapeyrouse, subsea considerations)"
	if l.at == 0 {
		w.Source = by(l.rub)
	}
}
